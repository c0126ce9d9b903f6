// Spots and alignments that every play knows: pointing at one finds the others of the file, however they are written.
import * as lsp from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { alignmentNames } from '../../language/court/alignments.ts';
import { courtOf } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { allSpots } from '../../language/court/spots.ts';
import { groundPage } from '../../server/lsp/ground-page.ts';
import { manualMethod } from '../../server/lsp/protocol.ts';
import { atMark, talk, wordsIn, type Client } from './talking.ts';

const text = `spot "dock" is 1 m below left wing

play "Pier"
  from horns, 2 at left wing

  step "Zip"
    1 passes to 2 at the Left Wing
    3 cuts to right wing
    5 cuts to hoop
    4 cuts to "dock"
    look 3: drives to rim, layup

play "Mole"
  from Horns, mirrored
  2 cuts to 1 m above left wing
  look 2: three
`;

let client: Client;
let files = 0;
beforeAll(async () => void (client = await talk()));
afterAll(() => client.close());

async function found(words: string) {
  const { position } = atMark(text.replace(words.replace('|', ''), words));
  const uri = `file:///club/ground-${files++}.play`;
  await client.open(uri, text);
  const textDocument = { uri };
  const marked = (await client.connection.sendRequest(lsp.DocumentHighlightRequest.type, { textDocument, position })) ?? [];
  const references = (await client.connection.sendRequest(lsp.ReferencesRequest.type, { textDocument, position, context: { includeDeclaration: true } })) ?? [];
  const told = ({ range }: { readonly range: lsp.Range }) => `${range.start.line + 1} ${wordsIn(text, range)}`;
  expect(references.every((one) => one.uri === uri)).toBe(true);
  expect(references.map(told)).toEqual(marked.map(told));
  return marked.map(told);
}

test.each([
  ['2 at left w|ing', ['1 left wing', '4 left wing', '7 Left Wing', '15 left wing']],
  ['cuts to right w|ing', ['8 right wing']],
  ['cuts to ho|op', ['9 hoop', '11 rim']],
  ['from ho|rns', ['4 horns', '14 Horns']],
  ['3 cu|ts to', []],
] as const)('%s', async (words, others) => expect(await found(words)).toEqual(others));

describe('going to what every play knows', () => {
  const definitionOf = async (at: Client, words: string) => {
    const { position } = atMark(text.replace(words.replace('|', ''), words));
    const uri = `file:///club/ground-${files++}.play`;
    await at.open(uri, text);
    return (await at.connection.sendRequest(lsp.DefinitionRequest.type, { textDocument: { uri }, position })) as lsp.Location[];
  };

  test.each([
    ['2 at left w|ing', 'spot left wing', /^# left wing\n\nBehind the arc, level with the free-throw line\..*to the left \|.*FIBA \| 5\.77 \| 4\.22.*data:image/s],
    ['cuts to ho|op', 'spot rim', /^# rim\n\nIn front of the ring/],
    ['from ho|rns', 'alignment horns', /^# horns\n.*- 1: top.*- 5: left elbow.*data:image/s],
  ] as const)('opens its page: %s', async (words, key, page) => {
    const asks = await talk({ options: { pages: 'pages:/{code}.md' } });
    const [found] = await definitionOf(asks, words);
    expect(found!.uri).toBe(`pages:/${encodeURIComponent(key)}.md`);
    expect(await asks.connection.sendRequest(manualMethod, key)).toMatch(page);
    asks.close();
  });

  test('without such pages it leads to the reference beside the program, and a verb nowhere', async () => {
    const [found] = await definitionOf(client, '2 at left w|ing');
    expect(found?.uri ?? 'no reference here').toMatch(/docs\/spots\.md$|no reference here/);
    expect(await definitionOf(client, '3 cu|ts to')).toEqual([]);
  });

  test('each spot with each side, and each alignment, has a page of its own', () => {
    const court = courtOf(ruleSet('fiba'));
    const keys = [...allSpots(court).map(({ name, side }) => ['spot', side, name].filter(Boolean).join(' ')), 'spot ball-side elbow', 'spot far wing', 'spot left elbow extended', ...alignmentNames.map((name) => `alignment ${name}`)];
    const titles = keys.map((key) => /^# (.+)/.exec(groundPage(key) ?? '')?.[1]);
    expect(titles).not.toContain(undefined);
    expect(new Set(titles).size).toBeGreaterThanOrEqual(keys.length - 1);
  });
});

test('a spot of one’s own has a name, and is found by it', async () => {
  const others = await found('cuts to "do|ck"');
  expect(others.map((one) => one.replace(/^\d+ /, ''))).toEqual(expect.arrayContaining(['dock']));
  expect(others.join()).not.toContain('wing');
});
