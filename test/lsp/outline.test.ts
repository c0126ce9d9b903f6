import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CodeLensRequest, DocumentSymbolRequest, FoldingRangeRequest, type DocumentSymbol } from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { talk, uri, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const textDocument = { uri };
let client: Client;
beforeAll(async () => {
  client = await talk({ options: { commands: true } });
  await client.open(uri, `${lighthouse}\nalignment "Wide"\n  1 top\n`);
});
afterAll(() => client.close());

test('the outline has the play, its steps and their looks', async () => {
  const found = (await client.connection.sendRequest(DocumentSymbolRequest.type, { textDocument })) as DocumentSymbol[];
  const names = (list: readonly DocumentSymbol[] | undefined): unknown => (list ?? []).map(({ name, children }) => (children ? [name, names(children)] : name));
  expect(names(found)).toEqual([['Lighthouse', ['Zip', ['Middle', ['pull-up', 'corner']], 'Slip']], 'Wide']);
});

test('a play and each step fold, without the blank lines behind them', async () => {
  const lines = lighthouse.split('\n');
  const folds = await client.connection.sendRequest(FoldingRangeRequest.type, { textDocument });
  const at = (words: string) => lines.findIndex((line) => line.includes(words));
  expect(folds).toContainEqual({ startLine: at('step "Zip"'), endLine: at('2 clears') });
  expect(folds).toContainEqual({ startLine: at('play "Lighthouse"'), endLine: at('look 4: lob') });
});

test('above the play stands when to call it, and ways to see it, draw it and make a page of it', async () => {
  const found = await client.connection.sendRequest(CodeLensRequest.type, { textDocument });
  const line = lighthouse.split('\n').findIndex((one) => one.startsWith('play'));
  expect(found!.map(({ command }) => command!.title)).toEqual(['▶ Show', expect.stringMatching(/^First look at \d+\.\d s, last \d+\.\d s$/), expect.stringMatching(/^Call it with \d+ s or more, \d+ for every look$/), 'Draw', 'Page']);
  expect(found![0]).toMatchObject({ range: { start: { line } }, command: { command: 'setwright.showPlay', arguments: [uri, line] } });
});

test('an editor without those commands is told the times alone', async () => {
  const plain = await talk();
  await plain.open(uri, lighthouse);
  const found = (await plain.connection.sendRequest(CodeLensRequest.type, { textDocument }))!;
  expect(found.map(({ command }) => [command!.title.split(' ')[0], command!.command])).toEqual([['First', ''], ['Call', '']]);
  plain.close();
});
