import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CodeLensRequest, DocumentSymbolRequest, FoldingRangeRequest, type DocumentSymbol } from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { talk, uri, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
const textDocument = { uri };
const german = JSON.parse(readFileSync(join(root, 'l10n/bundle.l10n.de.json'), 'utf8')) as Record<string, string>;
let client: Client;
beforeAll(async () => {
  client = await talk({ options: { commands: true } });
  await client.open(uri, `${lighthouse}\nalignment "Wide"\n  1 top\n`);
});
afterAll(() => client.close());

test('the outline has the play, its steps and their looks', async () => {
  const found = (await client.connection.sendRequest(DocumentSymbolRequest.type, { textDocument })) as DocumentSymbol[];
  const names = (list: readonly DocumentSymbol[] | undefined): unknown => (list ?? []).map(({ name, children }) => (children ? [name, names(children)] : name));
  expect(names(found)).toEqual([['Lighthouse', ['Zip', ['Middle', ['pull-up', '4 on the roll: layup', 'corner']], ['Slip', ['4: lob, layup']]]], 'Wide']);
});

test('a play and each step fold, without the blank lines behind them', async () => {
  const lines = lighthouse.split('\n');
  const folds = await client.connection.sendRequest(FoldingRangeRequest.type, { textDocument });
  const at = (words: string) => lines.findIndex((line) => line.includes(words));
  expect(folds).toContainEqual({ startLine: at('step "Zip"'), endLine: at('2 clears') });
  expect(folds).toContainEqual({ startLine: at('play "Lighthouse"'), endLine: at('look 4: lob') });
});

test('above the play stand ways to see it, draw it and make a page of it, then when to call it and when its looks come', async () => {
  const found = await client.connection.sendRequest(CodeLensRequest.type, { textDocument });
  const line = lighthouse.split('\n').findIndex((one) => one.startsWith('play'));
  expect(found!.map(({ command }) => command!.title)).toEqual(['▶ Show', 'Draw', 'Page', expect.stringMatching(/^Call with \d+ s, all looks \d+ s$/), expect.stringMatching(/^Looks \d+\.\d to \d+\.\d s$/)]);
  expect(found![0]).toMatchObject({ range: { start: { line } }, command: { command: 'setwright.showPlay', arguments: [uri, line] } });
});

test('they fit beside the panel in a window of 1,280 px, in each language: some 70 letters', async () => {
  for (const words of [undefined, german]) {
    const one = await talk({ options: { commands: true, ...(words !== undefined && { words }) } });
    await one.open(uri, lighthouse);
    const titles = (await one.connection.sendRequest(CodeLensRequest.type, { textDocument }))!.map(({ command }) => command!.title);
    expect(titles.slice(0, 4).join(' | ').length, titles.join(' | ')).toBeLessThanOrEqual(70);
    one.close();
  }
});

test('an editor without those commands is told the times alone', async () => {
  const plain = await talk();
  await plain.open(uri, lighthouse);
  const found = (await plain.connection.sendRequest(CodeLensRequest.type, { textDocument }))!;
  expect(found.map(({ command }) => [command!.title.split(' ')[0], command!.command])).toEqual([['Call', ''], ['Looks', '']]);
  plain.close();
});
