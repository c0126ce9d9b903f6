// Where a new play is written: beside the play that is open, in whichever folder of the window, else into its first folder.
import { expect, test, vi } from 'vitest';
import { registerNewPlay } from '../../client/new-play.ts';

const vscode = vi.hoisted(() => ({ open: undefined as string | undefined, written: [] as string[], run: new Map<string, (wanted: unknown) => Promise<void>>() }));

vi.mock('vscode', () => {
  class Uri {
    constructor(readonly path: string) {}
    static joinPath = ({ path }: Uri, more: string) => new Uri(more === '..' ? path.slice(0, path.lastIndexOf('/')) : `${path}/${more}`);
    toString = () => this.path;
  }
  const document = (path: string) => ({ uri: new Uri(path), languageId: 'setwright', getText: () => 'play "A"' });
  return {
    Uri,
    Position: class {},
    Range: class {},
    ViewColumn: { One: 1 },
    l10n: { t: (words: string) => words },
    commands: { registerCommand: (name: string, run: never) => void vscode.run.set(name, run), executeCommand: async () => undefined },
    window: {
      visibleTextEditors: [],
      get activeTextEditor() { return vscode.open === undefined ? undefined : { document: document(vscode.open) }; },
      showQuickPick: async ([first]: unknown[]) => first,
      showTextDocument: async () => ({ revealRange: () => undefined }),
    },
    workspace: {
      workspaceFolders: [{ uri: new Uri('/boys') }, { uri: new Uri('/girls') }],
      getWorkspaceFolder: ({ path }: Uri) => (/^\/(?:boys|girls)\//.test(path) ? {} : undefined),
      openTextDocument: async ({ path }: Uri) => document(path),
      fs: { stat: async () => Promise.reject(new Error('none')), writeFile: async ({ path }: Uri) => void vscode.written.push(path) },
    },
  };
});

const answers = { version: 1, name: 'Owl', alignment: 'horns', against: 'man', level: 'u14' };
registerNewPlay({ ask: async (method: string) => (/choices/i.test(method) ? { alignments: [], defences: [], levels: [], taken: ['A'], levelSaid: false } : 'play "Owl"') } as never, { hasWritten: async () => undefined } as never, 'setwright');

test.each([
  ['beside the play that is open', '/girls/zone/reed.play', '/girls/zone/owl.play'],
  ['into the first folder where none is open', undefined, '/boys/owl.play'],
  ['and where that lies elsewhere', '/mail/reed.play', '/boys/owl.play'],
])('%s', async (_, open, written) => {
  Object.assign(vscode, { open, written: [] });
  await vscode.run.get('setwright.newPlay')!(answers);
  expect(vscode.written).toEqual([written]);
});
