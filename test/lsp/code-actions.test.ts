import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as lsp from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { atMark, editedFiles, talk, type Client } from './talking.ts';

const lighthouse = readFileSync(join(root, 'examples/lighthouse.play'), 'utf8');
let waiting: Client;
let simple: Client;
let files = 0;
beforeAll(async () => {
  waiting = await talk({ capabilities: { textDocument: { codeAction: { dataSupport: true, resolveSupport: { properties: ['edit'] } } } } });
  simple = await talk();
});
afterAll(() => [waiting, simple].forEach((client) => client.close()));

/** Opens Lighthouse with the marked words in the place of the same without; what is offered from the first mark to the last. */
async function offered(client: Client, words: string, { text = lighthouse, only }: { text?: string; only?: string[] } = {}) {
  const whole = text.replace(words.replaceAll('|', ''), words);
  expect(whole).toContain('|');
  const first = atMark(whole);
  const last = first.text.includes('|') ? atMark(first.text) : first;
  const uri = `file:///plays/do-${files++}.play`;
  await client.open(uri, last.text);
  const diagnostics = await client.diagnosticsOf(uri, 1);
  const actions = (await client.connection.sendRequest(lsp.CodeActionRequest.type, { textDocument: { uri }, range: { start: first.position, end: last.position }, context: { diagnostics, ...(only && { only }) } })) as lsp.CodeAction[];
  return { uri, text: last.text, actions };
}

async function done(client: Client, words: string, title: RegExp, text = lighthouse): Promise<string> {
  const { uri, text: before, actions } = await offered(client, words, { text });
  const action = actions.find((one) => title.test(one.title));
  expect(actions.map((one) => one.title)).toContainEqual(expect.stringMatching(title));
  const resolved = action!.edit === undefined ? await client.connection.sendRequest(lsp.CodeActionResolveRequest.type, action!) : action!;
  return editedFiles({ [uri]: before }, resolved.edit!)[uri]!;
}

const rows: readonly (readonly [string, RegExp, string, string])[] = [
  ['    |3 cuts off 5 to top', /^Split “Zip” here$/, '    5 screens down for 3\n    3 cuts', '    5 screens down for 3\n\n  step "Zip 2"\n    3 cuts'],
  ['    |look 2 "corner": three', /step of its own/, '    look 4 on the roll: layup\n    look 2 "corner": three\n', '    look 4 on the roll: layup\n\n  step "Corner" after "Middle" when "2 is open"\n    look 2 "corner": three\n'],
  ['|play "Lighthouse"', /^Mirror this play: left and right swapped$/, '3 drives off 4 to right elbow', '3 drives off 4 to left elbow'],
  ['|play "Lighthouse"', /as a play of its own$/, '    look 4: lob, layup\n', '    look 4: lob, layup\n\nplay "Lighthouse, mirrored" mirrors "Lighthouse"\n'],
];

describe.each([
  ['an editor that waits for the edit', () => waiting],
  ['an editor that wants it at once', () => simple],
] as const)('for %s', (_, client) => {
  test.each(rows)('%s: %s', async (words, title, before, after) => {
    expect(lighthouse).toContain(before);
    expect(await done(client(), words, title)).toContain(after);
  });

  test('lines put in end as the file’s do', async () => {
    const text = lighthouse.replaceAll('\n', '\r\n');
    const after = await done(client(), '    |3 cuts off 5 to top', /^Split/, text);
    expect(after.replaceAll('\r\n', '')).not.toContain('\n');
    expect(after).toContain('\r\n\r\n  step "Zip 2"\r\n');
  });

  test.each(['\n', '\r\n'])('two lines of the head written as one are parted, lines ending in %j', async (eol) => {
    const text = lighthouse.replace(/  call with .*\n/, '  call with 26, shot by 4 # as at home\n').replaceAll('\n', eol);
    expect(await done(client(), 'call with 26, |shot by 4', /^Put each on a line of its own$/, text)).toContain(`  call with 26 # as at home${eol}  shot by 4 on the clock${eol}`);
  });

  test('two players swapped', async () => {
    const text = lighthouse.replace('from stack', 'from 1 at top, 2 at right wing, 3 at left block, 4 at right elbow, 5 at left elbow');
    expect(await done(client(), '|2 at right wing, 3| at left block', /^Swap 2 and 3/, text)).toMatch(/2 at left block, 3 at right wing/);
  });
});

test('a line with an “if” becomes a step of its own, among the mends of its finding', async () => {
  const text = lighthouse.replace('    4 ball-screens for 3, then rolls\n', '    4 ball-screens for 3, then rolls\n    if they trap, 3 passes to 4\n');
  const words = '    if |they trap, 3 passes to 4';
  expect((await offered(waiting, words, { text, only: ['quickfix'] })).actions.map(({ title }) => title)).toContain('Make it a step of its own, for when they trap');
  expect(await done(simple, words, /^Make it a step of its own/, text)).toContain('    look 2 "corner": three\n\n  step "If they trap" instead of "Middle" when "they trap"\n    1 passes to 3\n    4 ball-screens for 3, then rolls\n    3 passes to 4\n');
});

test('what a check warns of can be allowed, with the finding it silences', async () => {
  const { actions } = await offered(waiting, 'look 2 "|corner": three', { text: lighthouse.replace('within 16', 'within 9') });
  const allow = actions.find(({ title }) => /^Allow it in “Middle”/.test(title));
  expect(allow).toMatchObject({ kind: 'quickfix', diagnostics: [{ code: 'past-window-when-late' }] });
});

test.each([
  [['quickfix'], /^quickfix/],
  [['refactor'], /^refactor\./],
  [['refactor.extract'], /^refactor\.extract/],
  [['source'], /^source\.fixAll/],
] as const)('only the kinds asked for: %j', async (only, kind) => {
  const { actions } = await offered(waiting, '    |look 2 "corner": three', { only: [...only], text: only[0] === 'source' ? lighthouse.replace('2 clears', '2 claers') : lighthouse.replace('within 16', 'within 9') });
  expect(actions).not.toEqual([]);
  for (const action of actions) expect(action.kind).toMatch(kind);
});

describe('everything mended at once', () => {
  const text = lighthouse.replace('1 dribbles', '1 dribles').replace('5 screens down', '5 screen down').replace('instead of "Middle"', 'instead of "Midle"').replace('    4 slips', '    4 slps');
  test.each(['\n', '\r\n'])('gives Lighthouse as it was (line ends %j)', async (eol) => {
    const broken = text.replaceAll('\n', eol);
    expect(await done(waiting, '|notation 1', /^Mend everything/, broken)).toBe(lighthouse.replaceAll('\n', eol));
  });
  test('is not offered where there is nothing to mend', async () => {
    expect((await offered(waiting, '|notation 1')).actions.map(({ kind }) => kind)).not.toContain('source.fixAll.setwright');
  });
});

test('what was offered on a text that has changed since is refused, in words', async () => {
  const { uri, actions } = await offered(waiting, '    |3 cuts off 5 to top');
  await waiting.change(uri, 2, [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '\n' }]);
  await expect(waiting.connection.sendRequest(lsp.CodeActionResolveRequest.type, actions.find(({ title }) => /^Split/.test(title))!)).rejects.toThrow(/has changed/);
});
