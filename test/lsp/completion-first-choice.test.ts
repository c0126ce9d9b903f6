// The line as it stands once the first choice of the list is taken, in each kind of block.
import { CompletionRequest, type CompletionItem, type CompletionList, type TextEdit } from 'vscode-languageserver-protocol';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { atMark, edited, talk, type Client } from './talking.ts';

let client: Client;
let files = 0;
beforeAll(async () => void (client = await talk({ capabilities: { textDocument: { completion: { completionItem: { snippetSupport: true } } } } })));
afterAll(() => client.close());

async function offered(marked: string): Promise<{ readonly text: string; readonly items: readonly CompletionItem[] }> {
  const { text, position } = atMark(marked);
  const uri = `file:///heads/${files++}.play`;
  await client.open(uri, text);
  return { text, items: ((await client.connection.sendRequest(CompletionRequest.type, { textDocument: { uri }, position })) as CompletionList).items };
}

const plain = (text: string): string => text.replace(/\$\{\d+:([^}]*)\}/g, '$1');

const roster = 'roster "Under 14"\n  4 "Wren"\n  7 "Pip"\n';
const play = 'level u14\nplay "Tide"\n  from horns, ball with 1\n';
const step = `${play}  step "Open"\n    4 ball-screens for 1, then rolls\n`;

test.each([
  ['a roster, its next shirt', `${roster}  |`, '  8 "Name"'],
  ['a roster, a name', `${roster}  9 |`, '  9 "Name"'],
  ['a roster, a pace', `${roster}  9 "Rook", f|`, '  9 "Rook", fast'],
  ['a roster, the unit of a sprint', `${roster}  9 "Rook", 20 |`, '  9 "Rook", 20 m'],
  ['a roster, the unit of its time', `${roster}  9 "Rook", 20 m in 3.7 |`, '  9 "Rook", 20 m in 3.7 seconds'],
  ['an alignment, where the next man stands', 'alignment "Dock"\n  1 top\n  2 |', '  2 left wing'],
  ['from, where the first man stands', 'play "A"\n  from 1 at |', '  from 1 at top'],
  ['from, who comes next', 'play "A"\n  from 1 at top, 2 at left wing, |', '  from 1 at top, 2 at left wing, 3'],
  ['several men crash', `${play}  rebound 3, 4, 5 |`, '  rebound 3, 4, 5 crash'],
  ['and several get back', `${play}  rebound 3, 4, 5 crash, 1, 2 |`, '  rebound 3, 4, 5 crash, 1, 2 get back'],
  ['one gets back', `${play}  rebound 3, 4, 5 crash, 1 |`, '  rebound 3, 4, 5 crash, 1 gets back'],
  ['a verb half written', `${play}  rebound 3, 4, 5 crash, 1, 2 get |`, '  rebound 3, 4, 5 crash, 1, 2 get back'],
  ['seconds of a throw-in', 'play "A"\n  3 inbounds from the left sideline\n  inbound within 5 |', '  inbound within 5 seconds'],
  ['one second', `${play}  leave 1 |`, '  leave 1 second'],
  ['seconds half written', `${play}  leave 4 se|`, '  leave 4 seconds'],
  ['what a miss leaves', `${play}  leave |`, '  leave 4 seconds after a miss'],
  ['who is the safety', `${play}  2 |\n  step "Open"\n    1 passes to 3\n`, '  2 is the safety'],
  ['who is the safety, half written', `${play}  2 is the |`, '  2 is the safety'],
  ['a spot of two words', `${step}    2 clears to right dunker |`, '    2 clears to right dunker spot'],
  ['a verb of two words', `${play}  step "Open"\n    1 hands |`, '    1 hands off to '],
  ['whose screen he comes off', `${step}    1 comes off |`, '    1 comes off 4'],
  ['what the look is read on', `${step}    look 4 on |`, '    look 4 on the roll'],
  ['what the look is read on, with its article', `${step}    look 4 on the |`, '    look 4 on the roll'],
  ['the plays of a section', 'play "Ebb"\n  1 passes to 2\nplay "Tide"\n  1 passes to 2\nbook "Club"\n  section "Last shot": "Tide", |', '  section "Last shot": "Tide", "Ebb"'],
])('%s', async (_, marked, line) => {
  const { text, items } = await offered(marked);
  const { range, newText } = items[0]!.textEdit as TextEdit;
  expect(edited(text, [{ range, newText: plain(newText) }]).split('\n')[range.start.line]).toBe(line);
});

test('the clock a play is called with is what its looks need', async () => {
  const told = async (marked: string) => (await offered(marked)).items.map(({ label, labelDetails }) => `${label}, ${labelDetails?.description}`);
  const looks = '  4 ball-screens for 1, then rolls\n  1 drives off 4 to right elbow\n  look 1: jumper\n  step "Late"\n    1 passes to 3\n    3 dribbles to left wing\n    look 3: jumper\n';
  const [all, first, ...more] = await told(`${play}  call with |\n${looks}`);
  expect([all, first].map((one) => one!.replace(/^\d+/, 'N'))).toEqual(['N on the clock, enough for every look', 'N on the clock, enough for the first look']);
  expect(parseInt(all!, 10)).toBeGreaterThan(parseInt(first!, 10));
  expect(more).toEqual([]);
  expect((await offered(`${play}  call with |`)).items.map(({ label }) => label)).toEqual(['20 on the clock', '14 to 18 on the clock']);
});

test('by when the shot has to go is when its last look comes late', async () => {
  const { items } = await offered(`${step}    look 4 on the roll: layup\n  shot within |`);
  expect(items.map(({ label }) => label)).toEqual([expect.stringMatching(/^\d+ seconds of the start$/)]);
});

test('nobody acts in a roster, in an alignment or in the head of a file', async () => {
  for (const marked of [`${roster}  9 |`, 'alignment "Dock"\n  1 |', '1 |']) {
    const { items } = await offered(marked);
    expect(items.map(({ label }) => label)).not.toEqual(expect.arrayContaining([expect.stringMatching(/^(?:cuts|passes to|holds)$/)]));
  }
});
