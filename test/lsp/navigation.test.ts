import * as lsp from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { atMark, editedFiles, talk, wordsIn, type Client } from './talking.ts';

const sets = 'file:///club/sets.play';
const shared = 'file:///club/shared.play';
const texts: Readonly<Record<string, string>> = {
  [sets]: `notation 1
use "shared.play"

play "Pier"
  from "Wide box", ball with 1
  against man

  step "Zip"
    1 passes to 3
    3 cuts to "dock"
    look 3 "corner": three

  step "Back" instead of "zip" when X1 denies 3
    1 passes to 2
    look 2 "corner": jumper

play "Pier left" mirrors "Pier"

play "Pier late" continues "Pier" after "Zip"
  step "Late"
    3 passes to 1
`,
  [shared]: `notation 1
spot "dock" is 1 m below left wing

alignment "Wide box"
  1 top
  2 at right wing
  3 at left wing
  4 at right block
  5 at left block

roster "Club"
  3 "Mia"

book "All"
  section "Last": "Pier"
`,
};

let client: Client;
beforeAll(async () => {
  client = await talk({ capabilities: { textDocument: { definition: { linkSupport: true } } } });
  for (const [uri, text] of Object.entries(texts)) await client.open(uri, text);
});
afterAll(() => client.close());

/** Where the mark in these words of a file stands. */
function at(words: string, uri = sets) {
  const plain = words.replace('|', '');
  expect(texts[uri]!.split(plain).length, `${plain} stands once`).toBe(2);
  return { textDocument: { uri }, position: atMark(texts[uri]!.replace(plain, words)).position };
}

const lineOf = ({ uri, range }: lsp.Location): string => `${uri.slice(uri.lastIndexOf('/') + 1)}: ${texts[uri]!.split('\n')[range.start.line]!.trim()}`;

describe('where a name is given', () => {
  test.each([
    ['instead of "z|ip"', 'sets.play: step "Zip"'],
    ['after "Zi|p"', 'sets.play: step "Zip"'],
    ['mirrors "Pie|r"', 'sets.play: play "Pier"'],
    ['cuts to "do|ck"', 'shared.play: spot "dock" is 1 m below left wing'],
    ['from "Wide |box"', 'shared.play: alignment "Wide box"'],
    ['look 3 "cor|ner"', 'sets.play: look 3 "corner": three'],
  ] as const)('%s', async (words, where) => {
    const found = (await client.connection.sendRequest(lsp.DefinitionRequest.type, at(words))) as lsp.LocationLink[];
    expect(found.map(({ targetUri, targetRange }) => lineOf({ uri: targetUri, range: targetRange }))).toEqual([where]);
    expect(wordsIn(texts[found[0]!.targetUri]!, found[0]!.targetSelectionRange)).not.toContain('"');
  });

  test('a used file opens at its top', async () => {
    const [found] = (await client.connection.sendRequest(lsp.DefinitionRequest.type, at('use "shared|.play"'))) as lsp.LocationLink[];
    expect(found).toMatchObject({ targetUri: shared, targetRange: { start: { line: 0, character: 0 } } });
  });

  test('a man comes from his place at the start', async () => {
    const [found] = (await client.connection.sendRequest(lsp.DefinitionRequest.type, at('|3 cuts to'))) as lsp.LocationLink[];
    expect(wordsIn(texts[sets]!, found!.targetSelectionRange)).toContain('from');
  });

  test.each(['|notation 1', '1 pas|ses to 3'])('nothing is given for %s', async (words) => {
    expect(await client.connection.sendRequest(lsp.DefinitionRequest.type, at(words))).toEqual([]);
  });
});

describe('everywhere it is used', () => {
  test.each([
    ['step "Zi|p"', sets, ['sets.play: step "Zip"', 'sets.play: step "Back" instead of "zip" when X1 denies 3', 'sets.play: play "Pier late" continues "Pier" after "Zip"']],
    ['spot "do|ck"', shared, ['shared.play: spot "dock" is 1 m below left wing', 'sets.play: 3 cuts to "dock"']],
    ['alignment "Wide| box"', shared, ['shared.play: alignment "Wide box"', 'sets.play: from "Wide box", ball with 1']],
    ['mirrors "Pie|r"', sets, ['sets.play: play "Pier"', 'sets.play: play "Pier left" mirrors "Pier"', 'sets.play: play "Pier late" continues "Pier" after "Zip"']],
    ['|3 cuts to', sets, ['sets.play: 1 passes to 3', 'sets.play: 3 cuts to "dock"', 'sets.play: look 3 "corner": three', 'sets.play: step "Back" instead of "zip" when X1 denies 3']],
    ['look 2 "cor|ner"', sets, ['sets.play: look 2 "corner": jumper']],
  ] as const)('%s', async (words, uri, where) => {
    const found = await client.connection.sendRequest(lsp.ReferencesRequest.type, { ...at(words, uri), context: { includeDeclaration: true } });
    expect(found!.map(lineOf)).toEqual(where);
  });

  test('without its own place if the editor asks so', async () => {
    const found = await client.connection.sendRequest(lsp.ReferencesRequest.type, { ...at('alignment "Wide| box"', shared), context: { includeDeclaration: false } });
    expect(found!.map(lineOf)).toEqual(['sets.play: from "Wide box", ball with 1']);
  });

  test('a man is marked in his own play: stronger where he acts', async () => {
    const found = await client.connection.sendRequest(lsp.DocumentHighlightRequest.type, at('|3 cuts to'));
    expect(found!.map(({ kind }) => kind)).toEqual([lsp.DocumentHighlightKind.Read, lsp.DocumentHighlightKind.Write, lsp.DocumentHighlightKind.Write, lsp.DocumentHighlightKind.Read]);
    for (const { range } of found!) expect(wordsIn(texts[sets]!, range)).toBe('3');
  });
});

describe('a name changed', () => {
  test.each([
    ['step "Zi|p"', sets, 'Zap', [/step "Zap"\n/, /instead of "Zap"/, /after "Zap"/]],
    ['after "Zi|p"', sets, 'Zap', [/step "Zap"\n/, /instead of "Zap"/, /after "Zap"/]],
    ['from "Wide| box"', sets, 'Narrow', [/from "Narrow"/, /alignment "Narrow"/]],
    ['look 3 "cor|ner"', sets, 'deep', [/look 3 "deep": three/, /look 2 "corner": jumper/]],
    ['play "Pie|r"\n', sets, 'Molo', [/play "Molo"\n/, /mirrors "Molo"/, /continues "Molo"/]],
    ['3 "Mi|a"', shared, 'Zoë 🏀', [/3 "Zoë 🏀"/]],
  ] as const)('%s', async (words, uri, newName, after) => {
    const place = at(words, uri);
    const ready = (await client.connection.sendRequest(lsp.PrepareRenameRequest.type, place)) as { range: lsp.Range; placeholder: string };
    expect(wordsIn(texts[uri]!, ready.range)).toBe(ready.placeholder);
    const edit = await client.connection.sendRequest(lsp.RenameRequest.type, { ...place, newName });
    const files = Object.values(editedFiles(texts, edit!)).join('\n');
    for (const part of after) expect(files).toMatch(part);
  });

  test.each([
    ['step "Zi|p"', 'Back', /“Back” is taken here/],
    ['play "Pie|r"\n', 'pier LEFT', /“pier LEFT” is taken here/],
    ['step "Zi|p"', ' ', /at least one letter/],
    ['step "Zi|p"', 'a "b"', /quotation mark/],
  ] as const)('%s cannot be called %j', async (words, newName, why) => {
    await expect(client.connection.sendRequest(lsp.RenameRequest.type, { ...at(words), newName })).rejects.toThrow(why);
  });

  test.each([
    ['|3 cuts to', /swap two players/],
    ['1 pas|ses to 3', /Only names in quotation marks/],
    ['use "shared|.play"', /Rename the file itself/],
  ] as const)('%s has no name to change', async (words, why) => {
    await expect(client.connection.sendRequest(lsp.PrepareRenameRequest.type, at(words))).rejects.toThrow(why);
  });

  test.each([
    [shared, 'file:///club/alignments.play', /use "alignments.play"/],
    [shared, 'file:///club/more/a%20b.play', /use "more\/a b.play"/],
    [sets, 'file:///club/deep/sets.play', /use "..\/shared.play"/],
    ['file:///club', 'file:///team', /use "shared.play"/],
  ] as const)('%s moved to %s: use follows', async (oldUri, newUri, after) => {
    const edit = await client.connection.sendRequest(lsp.WillRenameFilesRequest.type, { files: [{ oldUri, newUri }] });
    expect(editedFiles(texts, edit!)[sets]).toMatch(after);
  });
});
