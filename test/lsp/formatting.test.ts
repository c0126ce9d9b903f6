import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as lsp from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { atMark, edited, talk, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const options = { tabSize: 8, insertSpaces: false };
let client: Client;
let files = 0;
beforeAll(async () => void (client = await talk()));
afterAll(() => client.close());

async function open(text: string): Promise<lsp.TextDocumentIdentifier> {
  const uri = `file:///plays/set-${files++}.play`;
  await client.open(uri, text);
  return { uri };
}

test.each(['\n', '\r\n'])('a document without any indentation is set as it was printed (line ends %j)', async (eol) => {
  const flat = lighthouse.replace(/^ +/gm, '').replace(/^\n(?=step)/gm, '').replaceAll('\n', eol);
  const textDocument = await open(flat);
  const edits = await client.connection.sendRequest(lsp.DocumentFormattingRequest.type, { textDocument, options });
  expect(edited(flat, edits!)).toBe(lighthouse.replaceAll('\n', eol));
});

test('what is set already gets no edits', async () => {
  const textDocument = await open(lighthouse);
  expect(await client.connection.sendRequest(lsp.DocumentFormattingRequest.type, { textDocument, options })).toEqual([]);
});

test('a range is the lines it touches', async () => {
  const text = 'play "A"\n from horns\n against man\n tags b\n';
  const textDocument = await open(text);
  const edits = await client.connection.sendRequest(lsp.DocumentRangeFormattingRequest.type, { textDocument, options, range: { start: { line: 1, character: 3 }, end: { line: 2, character: 0 } } });
  expect(edited(text, edits!)).toBe('play "A"\n  from horns\n against man\n tags b\n');
});

test.each([
  ['play "A"\nfrom horns\n|', 'play "A"\n  from horns\n  '],
  ['play "A"\n  step "B"\n    4 screen for 2\n|', 'play "A"\n  step "B"\n    4 screens for 2\n    '],
  ['play "A"\n  step "B"\n    4 screen for\n|', 'play "A"\n  step "B"\n    4 screen for\n    '],
])('behind Enter: %j', async (marked, set) => {
  const { text, position } = atMark(marked);
  const textDocument = await open(text);
  const edits = await client.connection.sendRequest(lsp.DocumentOnTypeFormattingRequest.type, { textDocument, options, position, ch: '\n' });
  expect(edited(text, edits!)).toBe(set);
});

test('behind the quote that begins a step’s name the line comes out to the steps', async () => {
  expect(client.capabilities.documentOnTypeFormattingProvider?.moreTriggerCharacter).toContain('"');
  const { text, position } = atMark('play "A"\n  step "B"\n    look 1: three\n    step "|"');
  const textDocument = await open(text);
  const edits = await client.connection.sendRequest(lsp.DocumentOnTypeFormattingRequest.type, { textDocument, options, position, ch: '"' });
  expect(edited(text, edits!)).toBe('play "A"\n  step "B"\n    look 1: three\n  step ""');
});
