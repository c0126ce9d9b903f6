// The same few answers through what is shipped: the bundled server over real stdio, and in a real worker.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { CodeActionRequest, CompletionRequest, HoverRequest, LSPErrorCodes, type CodeAction, type CompletionList, type MarkupContent } from 'vscode-languageserver-protocol';
import { AbstractMessageReader, AbstractMessageWriter, createProtocolConnection, StreamMessageReader, StreamMessageWriter, type DataCallback, type Message, type ProtocolConnection } from 'vscode-languageserver-protocol/node';
import { build as bundle } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildServer, root } from '../../scripts/build.ts';
import { frameMethod, readFrame, showMethod, type UnreadFrame } from '../../server/lsp/protocol.ts';
import { clientOn, until, uri, type Client } from './talking.ts';

const text = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8').replace('    5 screens down for 3', '    1 screens down for 3');
const line = text.split('\n').findIndex((one) => one.includes('1 screens down'));

/** Bundled from the source as it stands, with the build's own settings for the place: dist/ may be older. */
async function bundledWorker(): Promise<string> {
  const outfile = join(root, 'test/out/lsp/worker.cjs');
  await bundle({ absWorkingDir: root, entryPoints: ['server/lsp/worker.ts'], bundle: true, outfile, logLevel: 'silent', platform: 'browser', format: 'iife' });
  return outfile;
}

async function overStdio(): Promise<{ connection: ProtocolConnection; end: () => void }> {
  const server = spawn(process.execPath, [await buildServer('test/out/lsp/node'), '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  return { connection: createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin)), end: () => void server.kill() };
}

/** Node's workers speak like a browser's once they are given a `self` that posts and listens. */
async function inWorker(): Promise<{ connection: ProtocolConnection; end: () => void }> {
  const script = readFileSync(await bundledWorker(), 'utf8');
  const shim = `const { parentPort } = require('node:worker_threads');
    globalThis.self = globalThis;
    globalThis.postMessage = (data) => parentPort.postMessage(data);
    globalThis.addEventListener = () => undefined;
    parentPort.on('message', (data) => globalThis.onmessage?.({ data }));`;
  const worker = new Worker(`${shim}\n${script}`, { eval: true });
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
  const frames: UnreadFrame[] = [];

  beforeAll(async () => {
    const started = await start();
    end = started.end;
    started.connection.onNotification(frameMethod, (value: unknown) => void frames.push(readFrame(value)!));
    client = await clientOn(started.connection);
    await client.open(uri, text);
  });
  afterAll(() => {
    client.close();
    end();
  });

  test('says what cannot work', async () => {
    expect((await client.diagnosticsOf(uri, 1)).map(({ code }) => code)).toContain('screen-with-ball');
  });

  test('offers what can be written', async () => {
    const position = { line, character: 6 };
    const list = (await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList;
    expect(list.items.map(({ label }) => label)).toContain('passes to');
  });

  test('tells what stands under the pointer', async () => {
    const hover = await client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line, character: 8 } });
    expect((hover!.contents as MarkupContent).value).toContain('1 screens down for 3');
  });

  test('offers the mend', async () => {
    const diagnostics = await client.diagnosticsOf(uri, 1);
    const { range } = diagnostics.find(({ code }) => code === 'screen-with-ball')!;
    const actions = (await client.connection.sendRequest(CodeActionRequest.type, { textDocument: { uri }, range, context: { diagnostics } })) as CodeAction[];
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
    await client.connection.sendNotification(showMethod, { version: 1, panel: 'p', uri, what: { kind: 'follow', line } });
    await until(() => frames.length === 1);
    expect(frames[0]).toMatchObject({ panel: 'p', playKey: 'play:lighthouse', title: 'Lighthouse', firstLine: 4, stale: false, documentVersion: 1 });
    await client.change(uri, 2, [{ range: { start: { line, character: 4 }, end: { line, character: 5 } }, text: '5' }]);
    await until(() => frames.length === 2);
    expect(frames[1]!.seq).toBeGreaterThan(frames[0]!.seq);
  });

  test('answers -32800 to a request that is called off, and goes on', async () => {
    const { CancellationTokenSource } = await import('vscode-languageserver-protocol/node');
    const source = new CancellationTokenSource();
    const asked = client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line, character: 8 } }, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect(await client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position: { line, character: 8 } })).not.toBeNull();
  });
});
