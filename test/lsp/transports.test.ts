// The same few answers through what is shipped: the bundled server over real stdio, and in a real worker.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { CodeActionRequest, CodeActionResolveRequest, CompletionRequest, CompletionResolveRequest, HoverRequest, LSPErrorCodes, type ClientCapabilities, type CodeAction, type CompletionList, type Diagnostic, type MarkupContent, type ResponseError, type ServerCapabilities } from 'vscode-languageserver-protocol';
import { AbstractMessageReader, AbstractMessageWriter, createProtocolConnection, StreamMessageReader, StreamMessageWriter, type DataCallback, type Message, type ProtocolConnection } from 'vscode-languageserver-protocol/node';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildServer, root } from '../../scripts/build.ts';
import * as playbook from '../../server/lsp/playbook-protocol.ts';
import * as protocol from '../../server/lsp/protocol.ts';
import { picturesMethod } from '../../server/lsp/settings.ts';
import type { WorkerStart } from '../../server/lsp/worker-start.ts';
import { atMark, clientOn, editedFiles, until, uri, type Client } from './talking.ts';

const text = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8').replace('    5 screens down for 3', '    1 screens down for 3');
const line = text.split('\n').findIndex((one) => one.includes('1 screens down'));

let built: Promise<string>;
beforeAll(() => void (built = buildServer('test/out/lsp')));

async function overStdio(): Promise<{ connection: ProtocolConnection; end: () => void }> {
  const server = spawn(process.execPath, [await built, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  return { connection: createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin)), end: () => void server.kill() };
}

/** Node's workers speak like a browser's once they are given a `self` that posts, listens and loads scripts. */
async function inWorker(): Promise<{ connection: ProtocolConnection; end: () => void }> {
  const folder = join(dirname(await built), '..');
  const script = readFileSync(join(folder, 'web/server.js'), 'utf8');
  const shim = `const { parentPort } = require('node:worker_threads');
    const { readFileSync } = require('node:fs');
    const { runInThisContext } = require('node:vm');
    globalThis.self = globalThis;
    globalThis.postMessage = (data) => parentPort.postMessage(data);
    globalThis.addEventListener = () => undefined;
    globalThis.importScripts = (file) => runInThisContext(readFileSync(file, 'utf8'));
    parentPort.on('message', (data) => globalThis.onmessage?.({ data }));`;
  const worker = new Worker(`${shim}\n(() => {${script}})();`, { eval: true });
  // What is not for it changes nothing; then as the extension says it.
  for (const other of [null, 'hello', {}, { allAnswers: 3 }]) worker.postMessage(other);
  worker.postMessage({ allAnswers: join(folder, 'all-answers.js') } satisfies WorkerStart);
  class Reader extends AbstractMessageReader {
    listen(callback: DataCallback) {
      worker.on('message', (data: Message) => callback(data));
      return { dispose() {} };
    }
  }
  class Writer extends AbstractMessageWriter {
    write(message: Message) {
      worker.postMessage(message);
      return Promise.resolve();
    }
    end() {}
  }
  return { connection: createProtocolConnection(new Reader(), new Writer()), end: () => void worker.terminate() };
}

describe.each([['over stdio', overStdio], ['in a worker', inWorker]] as const)('the language server %s', (_, start) => {
  let client: Client;
  let end: () => void;
  /** Every method that went over the wire, either way. */
  const asked = new Set<string>();
  const frames: protocol.UnreadFrame[] = [];
  /** Whether the disk has the other file. */
  let isThere = true;

  beforeAll(async () => {
    const started = await start();
    end = started.end;
    const connection = remembering(started.connection, asked);
    connection.onNotification(protocol.frameMethod, (value: unknown) => void frames.push(protocol.readFrame(value)!));
    connection.onRequest(playbook.listFilesMethod, () => {
      asked.add(playbook.listFilesMethod);
      return isThere ? ['file:///plays/other.play'] : [];
    });
    connection.onRequest(playbook.readFileMethod, () => {
      asked.add(playbook.readFileMethod);
      return isThere ? 'play "Other"\n  from horns\n  1 passes to 2\n' : null;
    });
    client = await clientOn(connection, { files: true, commands: true }, whole, ['file:///plays']);
    await client.open(uri, text);
  }, 60_000);
  afterAll(() => {
    client.close();
    end();
  });

  const diagnostics = async () => ((await client.connection.sendRequest('textDocument/diagnostic', { textDocument: { uri } })) as { items: Diagnostic[] }).items;

  test('says what cannot work to one who asks', async () => {
    expect((await diagnostics()).map(({ code }) => code)).toContain('screen-with-ball');
    expect(client.published).toEqual([]);
  });

  test('and unasked to one who cannot', async () => {
    const other = await start();
    const plain = await clientOn(other.connection);
    await plain.open(uri, text);
    expect((await plain.diagnosticsOf(uri, 1)).map(({ code }) => code)).toContain('screen-with-ball');
    plain.close();
    other.end();
  });

  test('offers what can be written', async () => {
    const position = { line, character: 6 };
    const list = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList;
    expect(list.items.map(({ label }) => label)).toContain('passes to');
    const { documentation } = await client.connection.sendRequest(CompletionResolveRequest.type, list.items.find(({ label }) => label === 'passes to')!);
    expect((documentation as MarkupContent).value).toMatch(/man at rest/);
  });

  test('tells what stands under the pointer', async () => {
    const hover = await client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line, character: 8 } });
    expect((hover!.contents as MarkupContent).value).toContain('1 screens down for 3');
  });

  test('offers the mend', async () => {
    const found = await diagnostics();
    const { range } = found.find(({ code }) => code === 'screen-with-ball')!;
    const actions = (await client.connection.sendRequest(CodeActionRequest.type, { textDocument: { uri }, range, context: { diagnostics: found } })) as CodeAction[];
    expect(actions.map(({ title }) => title)).toContainEqual(expect.stringMatching(/^Pass to 3 first/));
  });

  describe('answers', () => {
    const textDocument = { uri };
    const position = { line, character: 4 };
    const range = { start: { line, character: 0 }, end: { line, character: 28 } };
    const options = { tabSize: 2, insertSpaces: true };
    const nameAt = { line: text.split('\n').findIndex((one) => one.includes('step "Middle"')), character: 10 };

    test.each([
      ['where a name is given', 'textDocument/definition', { textDocument, position: nameAt }, /"line":19/],
      ['where it is used', 'textDocument/references', { textDocument, position: nameAt, context: { includeDeclaration: true } }, /"line":27/],
      ['what belongs together', 'textDocument/documentHighlight', { textDocument, position }, /"kind":3/],
      ['what a new name changes', 'textDocument/rename', { textDocument, position: nameAt, newName: 'Centre' }, /Centre.*Centre/],
      ['that a name can be changed', 'textDocument/prepareRename', { textDocument, position: nameAt }, /"placeholder":"Middle"/],
      ['what a moved file changes', 'workspace/willRenameFiles', { files: [{ oldUri: uri, newUri: 'file:///plays/other.play' }] }, /"documentChanges":\[\]/],
      ['what is wrong everywhere', 'workspace/diagnostic', { previousResultIds: [] }, /other\.play.*no-ending|lighthouse\.play.*screen-with-ball/],
      ['the outline', 'textDocument/documentSymbol', { textDocument }, /"name":"Lighthouse"/],
      ['names in all files', 'workspace/symbol', { query: 'zip' }, /"containerName":"Lighthouse"/],
      ['folds', 'textDocument/foldingRange', { textDocument }, /"startLine":13/],
      ['what a selection grows to', 'textDocument/selectionRange', { textDocument, positions: [position] }, /"parent"/],
      ['links', 'textDocument/documentLink', { textDocument }, /^\[\]$/],
      ['lenses', 'textDocument/codeLens', { textDocument }, /▶ Show/],
      ['colours', 'textDocument/semanticTokens/full', { textDocument }, /"data":\[\d+,/],
      ['colours of some lines', 'textDocument/semanticTokens/range', { textDocument, range }, /"data":\[\d+,/],
      ['the running clock', 'textDocument/inlayHint', { textDocument, range }, /→ \d+\.\d s/],
      ['how a document is set', 'textDocument/formatting', { textDocument, options }, /^\[\]$/],
      ['how some lines are set', 'textDocument/rangeFormatting', { textDocument, options, range }, /^\[\]$/],
      ['how a new line is set', 'textDocument/onTypeFormatting', { textDocument, options, position, ch: '\n' }, /^\[\]$/],
      ['what can be done', 'textDocument/codeAction', { textDocument, range, context: { diagnostics: [], only: ['refactor'] } }, /Split “Zip” here/],
    ] as const)('%s (%s)', async (_, method, params, says) => {
      expect(JSON.stringify(await client.connection.sendRequest(method, params))).toMatch(says);
    });

    test('only the colours that have changed', async () => {
      const { resultId } = (await client.connection.sendRequest('textDocument/semanticTokens/full', { textDocument })) as { resultId: string };
      expect(await client.connection.sendRequest('textDocument/semanticTokens/full/delta', { textDocument, previousResultId: resultId })).toMatchObject({ edits: [] });
    });

    test('the edit of what was chosen', async () => {
      const waits = { uri, version: 1, id: 'split-step', range };
      expect(JSON.stringify(await client.connection.sendRequest('codeAction/resolve', { title: 'Split “Zip” here', data: waits }))).toMatch(/step \\"Zip 2\\"/);
    });
  });

  test('sends the play to whoever shows it, again at each change', async () => {
    await client.connection.sendNotification(protocol.showMethod, { version: 1, panel: 'p', uri, what: { kind: 'follow', line } });
    await until(() => frames.length === 1);
    expect(frames[0]).toMatchObject({ panel: 'p', playKey: 'play:lighthouse', title: 'Lighthouse', firstLine: 4, stale: false, documentVersion: 1 });
    await client.change(uri, 2, [{ range: { start: { line, character: 4 }, end: { line, character: 5 } }, text: '5' }]);
    await until(() => frames.length === 2);
    expect(frames[1]!.seq).toBeGreaterThan(frames[0]!.seq);
  });

  describe('serves whoever shows plays', () => {
    const common = { version: 1, uri } as const;
    const playKey = 'play:lighthouse';
    test.each([
      ['what stands at a place of the text', protocol.partAtMethod, { ...common, position: { line, character: 8 } }, /"part":"zip\/\d\.1".*"t":\d+/],
      ['where the words of a part stand', protocol.rangeOfMethod, { ...common, playKey, part: 'zip/3.1' }, /"start":\{"line":\d+/],
      ['the play of a line, compiled', protocol.playMethod, { ...common, line }, /"documentVersion":2,"playKey":"play:lighthouse","title":"Lighthouse".*"runs":\[/],
      ['the same drawn', protocol.drawnMethod, { ...common, line }, /"svg":"<svg .*Zip.*Middle.*Slip/],
      ['a place dragged by hand', protocol.byHandMethod, { ...common, documentVersion: 2, playKey, what: { kind: 'intent', intent: { kind: 'move-end', action: 'zip/2.1', to: { x: 5.75, y: 4.2 } } } }, /"words":"right wing"/],
      ['a wait', protocol.byHandMethod, { ...common, documentVersion: 2, playKey, what: { kind: 'intent', intent: { kind: 'set-wait', action: 'zip/2.1', seconds: 2 } } }, /2 seconds/],
      ['a cut added', protocol.byHandMethod, { ...common, documentVersion: 2, playKey, what: { kind: 'intent', intent: { kind: 'add-cut', player: 2, step: 'zip', to: { x: 0, y: 0.4 } } } }, /2 cuts to rim/],
      ['two players swapped', protocol.byHandMethod, { ...common, documentVersion: 2, playKey, what: { kind: 'intent', intent: { kind: 'swap', a: 2, b: 4 } } }, /swapped|"newText"/],
      ['the other side', protocol.byHandMethod, { ...common, documentVersion: 2, playKey, what: { kind: 'intent', intent: { kind: 'mirror' } } }, /"newText":"right".*"newText":"left"/],
      ['an older text is refused', protocol.byHandMethod, { ...common, documentVersion: 1, playKey, what: { kind: 'intent', intent: { kind: 'mirror' } } }, /"refused":"The text has changed/],
      ['a code explained', protocol.manualMethod, 'screen-with-ball', /cannot work/],
      ['the playbook', playbook.playbookMethod, { version: 1 }, /"name":"Lighthouse".*|"name":"Other"/],
      ['the order of a book', playbook.arrangeMethod, { ...common, from: { line: 0, index: 0 }, to: { line: 1, index: 0 } }, /null/],
      ['what a new play can start from', playbook.choicesMethod, { version: 1 }, /"horns"/],
      ['a new play', playbook.newPlayMethod, { version: 1, as: 'play', name: 'Ours', alignment: 'horns', against: 'man' }, /play \\"Ours\\"/],
    ] as const)('%s (%s)', async (_, method, params, says) => {
      expect(JSON.stringify(await client.connection.sendRequest(method, params))).toMatch(says);
    });
  });

  describe('writes what was chosen', () => {
    const written = [
      ['a name for a step', 'notation 1\nplay "Ours"\n  from horns\n\n  |1 passes to 2\n  look 2: jumper\n', /^Give this step a name$/, /\n {2}step ".+"\n.*1 passes to 2\n/],
      ['why a check is silent here', 'notation 1\nplay "Ours"\n  from horns\n  step "Go"\n    |4 screens down for 2\n    1 dribbles to left wing\n    look 1: jumper\n', /^Allow/, /\n +allow screen-unused "/],
      ['an alignment of its own', 'notation 1\nplay "Ours"\n  |from 1 top, 2 and 3 wings, 4 and 5 blocks\n  step "Go"\n    1 passes to 2\n    look 2: jumper\n', /^Make these places an alignment with a name$/, /from "[^"]+"[^]*\nalignment "[^"]+"\n +1 at top\n/],
    ] as const;
    test.each(written)('%s', async (_, marked, title, after) => {
      const { text: before, position } = atMark(marked);
      const own = `file:///plays/written-${written.findIndex((one) => one[1] === marked)}.play`;
      await client.open(own, before);
      const textDocument = { uri: own };
      const range = { start: position, end: { ...position, character: 200 } };
      const { items } = (await client.connection.sendRequest('textDocument/diagnostic', { textDocument })) as { items: Diagnostic[] };
      const actions = (await client.connection.sendRequest(CodeActionRequest.type, { textDocument, range, context: { diagnostics: items } })) as CodeAction[];
      expect(actions.map((one) => one.title)).toContainEqual(expect.stringMatching(title));
      const chosen = actions.find((one) => title.test(one.title))!;
      const { edit } = chosen.edit === undefined ? await client.connection.sendRequest(CodeActionResolveRequest.type, chosen) : chosen;
      const text = editedFiles({ [own]: before }, edit!)[own]!;
      expect(text).not.toBe(before);
      expect(text).toMatch(after);
      await client.connection.sendNotification('textDocument/didClose', { textDocument });
    });
  });

  test('a file that is deleted takes its names with it', async () => {
    const { connection } = client;
    const [user, used] = ['file:///plays/user.play', 'file:///plays/other.play'];
    await client.open(user, 'notation 1\nuse "other.play"\nplay "Again" mirrors "Other"\n');
    const codes = async () => ((await connection.sendRequest('textDocument/diagnostic', { textDocument: { uri: user } })) as { items: Diagnostic[] }).items.map(({ code }) => String(code));
    const named = async () => (await connection.sendRequest(playbook.playbookMethod, { version: 1 }) as { plays: { name: string }[] }).plays.map(({ name }) => name);
    expect(await codes()).not.toContainEqual(expect.stringMatching(/^unknown-/));
    expect(await named()).toContain('Other');
    isThere = false;
    await connection.sendNotification('workspace/didDeleteFiles', { files: [{ uri: used }] });
    // The disk is asked first.
    await expect.poll(codes).toContainEqual(expect.stringMatching(/^unknown-/));
    await expect.poll(named).not.toContain('Other');
    isThere = true;
    await connection.sendNotification('workspace/didCreateFiles', { files: [{ uri: used }] });
    await expect.poll(named).toContain('Other');
    await connection.sendNotification('textDocument/didClose', { textDocument: { uri: user } });
  });

  test('hears of what happens around it, and goes on', async () => {
    const { connection } = client;
    await connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added: [{ uri: 'file:///more', name: 'more' }], removed: [] } });
    const other = 'file:///plays/other.play';
    await connection.sendNotification('workspace/didCreateFiles', { files: [{ uri: other }] });
    await connection.sendNotification('workspace/didRenameFiles', { files: [{ oldUri: other, newUri: `${other}2` }] });
    await connection.sendNotification('workspace/didDeleteFiles', { files: [{ uri: other }] });
    await connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: other, type: 2 }] });
    await connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await connection.sendNotification(picturesMethod, 'dark');
    await connection.sendNotification(protocol.hideMethod, { version: 1, panel: 'p' });
    await connection.sendNotification(protocol.cursorMethod, { version: 1, uri, line });
    await connection.sendNotification('textDocument/willSave', { textDocument: { uri }, reason: 1 });
    await connection.sendNotification('textDocument/didOpen', { textDocument: { uri: other, languageId: 'setwright', version: 1, text: '' } });
    await connection.sendNotification('textDocument/didClose', { textDocument: { uri: other } });
    const step = text.split('\n').findIndex((one) => one.includes('step "Middle"'));
    const hover = await connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line: step, character: 10 } });
    expect((hover!.contents as MarkupContent).value).toContain('data:image/svg+xml');
  });

  test('answers -32800 to a request that is called off, and goes on', async () => {
    const { CancellationTokenSource } = await import('vscode-languageserver-protocol/node');
    const askAndCallOff = async (): Promise<unknown> => {
      const source = new CancellationTokenSource();
      const asked = client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line, character: 8 } }, source.token);
      source.cancel();
      return asked.then(() => 'answered', (error: ResponseError<unknown>) => error.code);
    };
    // Where the machine halts this process between the two messages, the answer is there before it is called off.
    let answer = await askAndCallOff();
    for (let again = 0; again < 10 && answer === 'answered'; again++) answer = await askAndCallOff();
    expect(answer).toBe(LSPErrorCodes.RequestCancelled);
    expect(await client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line, character: 8 } })).not.toBeNull();
  });

  test('was asked for everything that it says it can do', () => {
    const advertised = Object.entries(client.capabilities).filter(([, value]) => value !== undefined && value !== false);
    expect(advertised.length).toBeGreaterThan(15);
    const unasked = advertised.flatMap(([name, value]) => (waysToAsk[name as keyof ServerCapabilities]?.(value) ?? [`${name}: no way to ask is known`]).filter((method) => !asked.has(method)));
    expect(unasked).toEqual([]);
    const own = [...Object.entries(protocol), ...Object.entries(playbook)].flatMap(([name, value]) => (name.endsWith('Method') ? [value as string] : []));
    expect([...own, picturesMethod].filter((method) => !asked.has(method) && method !== protocol.frameMethod)).toEqual([]);
  });
});

/** What an editor that can do everything says of itself. */
const whole: ClientCapabilities = {
  textDocument: { diagnostic: {}, completion: { completionItem: { snippetSupport: true } }, codeAction: { resolveSupport: { properties: ['edit'] }, dataSupport: true } },
  workspace: { workspaceFolders: true, fileOperations: { willRename: true, didRename: true, didCreate: true, didDelete: true } },
};

/** For each thing a server may say it can do, the messages by which an editor asks for it. A new one without a row is red. */
const waysToAsk: { readonly [Name in keyof ServerCapabilities]?: (value: NonNullable<ServerCapabilities[Name]> | any) => readonly string[] } = {
  positionEncoding: () => [],
  textDocumentSync: () => ['textDocument/didOpen', 'textDocument/didChange', 'textDocument/willSave', 'textDocument/didClose'],
  hoverProvider: () => ['textDocument/hover'],
  definitionProvider: () => ['textDocument/definition'],
  referencesProvider: () => ['textDocument/references'],
  documentHighlightProvider: () => ['textDocument/documentHighlight'],
  selectionRangeProvider: () => ['textDocument/selectionRange'],
  completionProvider: ({ resolveProvider }) => ['textDocument/completion', ...(resolveProvider ? ['completionItem/resolve'] : [])],
  codeActionProvider: ({ resolveProvider }) => ['textDocument/codeAction', ...(resolveProvider ? ['codeAction/resolve'] : [])],
  documentFormattingProvider: () => ['textDocument/formatting'],
  documentRangeFormattingProvider: () => ['textDocument/rangeFormatting'],
  documentOnTypeFormattingProvider: () => ['textDocument/onTypeFormatting'],
  renameProvider: ({ prepareProvider }) => ['textDocument/rename', ...(prepareProvider ? ['textDocument/prepareRename'] : [])],
  documentSymbolProvider: () => ['textDocument/documentSymbol'],
  workspaceSymbolProvider: ({ resolveProvider }) => ['workspace/symbol', ...(resolveProvider ? ['workspaceSymbol/resolve'] : [])],
  foldingRangeProvider: () => ['textDocument/foldingRange'],
  codeLensProvider: ({ resolveProvider }) => ['textDocument/codeLens', ...(resolveProvider ? ['codeLens/resolve'] : [])],
  documentLinkProvider: ({ resolveProvider }) => ['textDocument/documentLink', ...(resolveProvider ? ['documentLink/resolve'] : [])],
  semanticTokensProvider: ({ full, range }) => ['textDocument/semanticTokens/full', ...(full.delta ? ['textDocument/semanticTokens/full/delta'] : []), ...(range ? ['textDocument/semanticTokens/range'] : [])],
  inlayHintProvider: ({ resolveProvider }) => ['textDocument/inlayHint', ...(resolveProvider ? ['inlayHint/resolve'] : [])],
  diagnosticProvider: ({ workspaceDiagnostics }) => ['textDocument/diagnostic', ...(workspaceDiagnostics ? ['workspace/diagnostic'] : [])],
  workspace: ({ workspaceFolders, fileOperations }) => [...(workspaceFolders?.changeNotifications ? ['workspace/didChangeWorkspaceFolders'] : []), ...Object.keys(fileOperations ?? {}).map((name) => `workspace/${name}Files`)],
};

function remembering(connection: ProtocolConnection, asked: Set<string>): ProtocolConnection {
  const noted = (send: (...args: any[]) => Promise<any>) => (type: any, ...rest: unknown[]) => {
    asked.add(typeof type === 'string' ? type : type.method);
    return send(type, ...rest);
  };
  return Object.assign(connection, { sendRequest: noted(connection.sendRequest.bind(connection)), sendNotification: noted(connection.sendNotification.bind(connection)) });
}
