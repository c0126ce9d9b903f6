// Runs inside VS Code beside the extension, in every place it can run in (scripts/host-suite.ts bundles it). What only the
// extension's own side can see is tested here; what a coach sees is tested in test/e2e.
import { commands, extensions, Uri, workspace, type Hover } from 'vscode';
import type { Setwright } from '../../client/activate.ts';

type Tests = Readonly<Record<string, () => Promise<void>>>;

function must(holds: boolean, otherwise: string): asserts holds {
  if (!holds) throw new Error(otherwise);
}

async function openLighthouse() {
  const folder = workspace.workspaceFolders?.[0];
  must(folder !== undefined, 'no folder is open');
  return workspace.openTextDocument(Uri.joinPath(folder.uri, 'lighthouse.play'));
}

const tests: Tests = {
  async 'a .play file is a play'() {
    const { languageId } = await openLighthouse();
    must(languageId === 'setwright', `its language is ${languageId}`);
  },

  async 'opening a play starts the extension and its language server'() {
    await openLighthouse();
    const extension = extensions.getExtension<Setwright>('setwright.setwright');
    must(extension !== undefined, 'the extension is not here');
    const client = await (await extension.activate()).ready;
    const version: unknown = extension.packageJSON.version;
    const server = client.initializeResult?.serverInfo;
    must(server?.version === version, `the server says version ${server?.version}, the extension is ${String(version)}`);
  },

  async 'it starts within 100 ms of its own time'() {
    const { loading, activation } = await extensions.getExtension<Setwright>('setwright.setwright')!.activate();
    console.log(`activation: ${activation.toFixed(1)} ms, its code loaded in ${loading.toFixed(1)} ms`);
    must(activation <= 100, `it took ${activation.toFixed(1)} ms`);
  },

  async 'a word of a play can be pointed at'() {
    const { uri } = await openLighthouse();
    const hovers = await commands.executeCommand<Hover[]>('vscode.executeHoverProvider', uri, { line: 4, character: 2 });
    must(Array.isArray(hovers), 'the server did not answer');
  },
};

/** Called by VS Code; a rejection is a failure. Each line it writes starts with `pass` or `FAIL`. */
export async function run(): Promise<void> {
  const failed: string[] = [];
  for (const [title, test] of Object.entries(tests)) {
    const problem = await test().then(() => undefined, (reason: unknown) => (reason instanceof Error ? reason.message : String(reason)));
    console.log(problem === undefined ? `pass  ${title}` : `FAIL  ${title}: ${problem}`);
    if (problem !== undefined) failed.push(title);
  }
  if (failed.length > 0) throw new Error(`failed: ${failed.join('; ')}`);
}
