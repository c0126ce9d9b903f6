import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import type { Diagnostic, TextDocumentContentChangeEvent } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { expect, test } from 'vitest';
import { textOf } from '../../language/book/book.ts';
import { root } from '../../scripts/build.ts';
import { createServer } from '../../server/lsp/server.ts';
import { nodeHost } from '../../server/lsp/node-host.ts';
import { cursorMethod } from '../../server/lsp/protocol.ts';
import { PassThrough } from 'node:stream';
import { createConnection, createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { clientOn, uri } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const rounds = 20;
const editsARound = 100;

const piece = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom('1 passes to 3', '    4 screens for 2\n', 'to left wing', ' ', '\n', '\r\n', '\r', '#', '"', 'step "Middle"', 'play "Lighthouse"\n', 'look 3: jumper\n', '16', 'from horns', 'X4 shows on 3') },
  { weight: 2, arbitrary: fc.string({ maxLength: 6 }) },
  { weight: 1, arbitrary: fc.constantFrom('🏀', 'é', 'e\u0301', '\u2028', '\uFEFF', '日本', '\uD83C') },
  { weight: 2, arbitrary: fc.constant('') },
);
const edit = fc.record({ from: fc.nat(), length: fc.oneof(fc.nat(12), fc.nat(200)), text: piece, whole: fc.integer({ min: 0, max: 99 }) });

/** An editor's own copy of a text, changed as the protocol says. */
function editorOf(text: string) {
  let document = TextDocument.create(uri, 'setwright', 1, text);
  return {
    text: () => document.getText(),
    version: () => document.version,
    change({ from, length, text: words, whole }: { from: number; length: number; text: string; whole: number }): TextDocumentContentChangeEvent {
      const size = document.getText().length;
      const start = from % (size + 1);
      const change = whole === 0 ? { text: `${lighthouse}${words}` } : { range: { start: document.positionAt(start), end: document.positionAt(Math.min(size, start + length)) }, text: words };
      document = TextDocument.update(document, [change], document.version + 1);
      return change;
    },
  };
}

async function pair() {
  const [there, back] = [new PassThrough(), new PassThrough()];
  const server = createServer(createConnection(new StreamMessageReader(there), new StreamMessageWriter(back)), nodeHost);
  server.listen();
  return { server, client: await clientOn(createProtocolConnection(new StreamMessageReader(back), new StreamMessageWriter(there)), { settings: { checks: { settle: 0 } } }) };
}

test(`after ${rounds * editsARound} random edits the server has the editor's text, and says what a cold read says`, { timeout: 120_000 }, async () => {
  const edits = fc.sample(edit, { numRuns: rounds * editsARound, seed: 7 });
  const { server, client } = await pair();
  const editor = editorOf(lighthouse);
  await client.open(uri, lighthouse);
  for (let round = 0; round < rounds; round++) {
    for (let n = 0; n < editsARound; n++) {
      const change = editor.change(edits[round * editsARound + n]!);
      await client.change(uri, editor.version(), [change]);
    }
    await client.diagnosticsOf(uri, editor.version());
    // What is being written is told more quietly, until it is left.
    await client.connection.sendNotification(cursorMethod, { version: 1, uri });
    expect(textOf(server.documents.get(uri)!.file)).toBe(editor.text());
    const cold = await pair();
    await cold.client.open(uri, editor.text());
    const read: Diagnostic[] = await cold.client.diagnosticsOf(uri, 1);
    await expect.poll(() => client.published.at(-1)!.diagnostics, { timeout: 10_000 }).toEqual(read);
    cold.client.close();
  }
  client.close();
});
