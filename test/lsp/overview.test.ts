import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as lsp from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { tokenTypes } from '../../server/lsp/abilities.ts';
import { atMark, talk, uri, wordsIn, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8').replace('notation 1\n', 'notation 1\nuse "alignments.play"\n');
const textDocument = { uri };
const all = { start: { line: 0, character: 0 }, end: { line: 100, character: 0 } };
let client: Client;
beforeAll(async () => {
  client = await talk({ options: { settings: { hints: { places: true, ball: true } } } });
  await client.open(uri, lighthouse);
});
afterAll(() => client.close());

test.each([
  ['lig', ['Lighthouse']],
  ['pl', ['pull-up']],
  ['', ['Lighthouse', 'Zip', 'Middle', 'pull-up', 'corner', 'Slip']],
  ['zzz', []],
] as const)('every name is found by %j', async (query, names) => {
  const found = await client.connection.sendRequest(lsp.WorkspaceSymbolRequest.type, { query });
  expect(found!.map(({ name }) => name)).toEqual(names);
});

test('a used file is a link', async () => {
  const [link] = (await client.connection.sendRequest(lsp.DocumentLinkRequest.type, { textDocument }))!;
  expect(link!.target).toBe('file:///plays/alignments.play');
  expect(wordsIn(lighthouse, link!.range)).toBe('alignments.play');
});

describe('a selection grows', () => {
  test.each([
    ['3 cuts off 5 to to|p', ['top', 'to top', 'cuts off 5 to top', '3 cuts off 5 to top']],
    ['look 3 "pu|ll-up"', ['pull-up', 'look 3 "pull-up": jumper']],
  ] as const)('%s', async (words, steps) => {
    const { position } = atMark(lighthouse.replace(words.replace('|', ''), words));
    const [found] = (await client.connection.sendRequest(lsp.SelectionRangeRequest.type, { textDocument, positions: [position] }))!;
    const grown: string[] = [];
    for (let one: lsp.SelectionRange | undefined = found; one !== undefined; one = one.parent) grown.push(wordsIn(lighthouse, one.range));
    expect(grown.slice(0, steps.length)).toEqual(steps);
    expect(grown.at(-1)).toMatch(/^play "Lighthouse"/);
    expect(grown.at(-2)).toMatch(/^ *step "/);
  });
});

describe('colours by meaning', () => {
  const full = async () => (await client.connection.sendRequest(lsp.SemanticTokensRequest.type, { textDocument }))!;
  function unpack(text: string, data: readonly number[]): [string, string][] {
    const found: [string, string][] = [];
    let [line, character] = [0, 0];
    for (let at = 0; at < data.length; at += 5) {
      const [down, right, length, type] = data.slice(at, at + 4) as [number, number, number, number];
      line += down;
      character = down === 0 ? character + right : right;
      found.push([wordsIn(text, { start: { line, character }, end: { line, character: character + length } }), tokenTypes[type]!]);
    }
    return found;
  }

  test('men, verbs, places, names, times', async () => {
    const found = unpack(lighthouse, (await full()).data);
    expect(found).toEqual(expect.arrayContaining([['Lighthouse', 'class'], ['Zip', 'method'], ['pull-up', 'event'], ['dribbles', 'function'], ['left wing', 'enumMember'], ['stack', 'struct'], ['16 seconds', 'number'], ['X4', 'parameter'], ['5', 'variable']]));
    expect(found.find(([words]) => words.startsWith('#'))?.[1]).toBe('comment');
  });

  test('a range is the same tokens', async () => {
    const line = lighthouse.split('\n').findIndex((one) => one.includes('1 dribbles'));
    const part = await client.connection.sendRequest(lsp.SemanticTokensRangeRequest.type, { textDocument, range: { start: { line, character: 0 }, end: { line, character: 30 } } });
    expect(unpack(lighthouse, part!.data)).toEqual([['1', 'variable'], ['dribbles', 'function'], ['left wing', 'enumMember']]);
  });

  test('after an edit only what has changed is sent, and adds up to all of it', async () => {
    const before = await full();
    const line = lighthouse.split('\n').findIndex((one) => one.includes('2 clears'));
    await client.change(uri, 2, [{ range: { start: { line, character: 4 }, end: { line, character: 5 } }, text: '4 and 5' }]);
    const delta = (await client.connection.sendRequest(lsp.SemanticTokensDeltaRequest.type, { textDocument, previousResultId: before.resultId! })) as lsp.SemanticTokensDelta;
    expect(delta.edits).toHaveLength(1);
    expect(delta.edits[0]!.data!.length).toBeLessThanOrEqual(20);
    const data = [...before.data];
    for (const { start, deleteCount, data: put } of delta.edits) data.splice(start, deleteCount, ...(put ?? []));
    expect(data).toEqual((await full()).data);
    await client.change(uri, 3, [{ text: lighthouse }]);
  });
});

describe('beside the lines', () => {
  const hints = async (range = all) => (await client.connection.sendRequest(lsp.InlayHintRequest.type, { textDocument, range }))!;
  const lines = lighthouse.split('\n');

  test('the clock runs, each line of a step no earlier than its play begins', async () => {
    const found = (await hints()).filter(({ label }) => String(label).startsWith('→'));
    expect(found.map(({ position: { line } }) => lines[line]!.trim())).toEqual(lines.filter((line) => /^ {4}/.test(line)).map((line) => line.trim()));
    for (const { label, position } of found) {
      expect(label).toMatch(/^→ \d+\.\d s$/);
      expect(position.character).toBe(lines[position.line]!.trimEnd().length);
    }
  });

  test('a roll says where it ends, a step who has the ball', async () => {
    const labels = (await hints()).map(({ label, position: { line } }) => `${lines[line]!.trim()} | ${label as string}`);
    expect(labels).toContain('4 ball-screens for 3, then rolls | to rim');
    expect(labels).toContain('step "Middle" | 1 has the ball');
  });

  test('no time while where they start is just being written', async () => {
    await client.change(uri, 4, [{ text: lighthouse.replace('from stack', 'from sta') }]);
    expect((await hints()).filter(({ label }) => String(label).startsWith('→'))).toEqual([]);
    await client.change(uri, 5, [{ text: lighthouse }]);
    expect((await hints()).filter(({ label }) => String(label).startsWith('→'))).not.toEqual([]);
  });

  test('only for the lines asked for', async () => {
    const line = lines.findIndex((one) => one.includes('1 dribbles'));
    expect(await hints({ start: { line, character: 0 }, end: { line, character: 40 } })).toHaveLength(1);
  });

  test('each has its switch', async () => {
    await client.connection.sendNotification(lsp.DidChangeConfigurationNotification.type, { settings: { setwright: { hints: { clock: false, ball: true } } } });
    expect((await hints()).map(({ label }) => label)).toEqual(['1 has the ball', '1 has the ball', '1 has the ball']);
    await client.connection.sendNotification(lsp.DidChangeConfigurationNotification.type, { settings: { setwright: { hints: { clock: false } } } });
    expect(await hints()).toEqual([]);
  });
});
