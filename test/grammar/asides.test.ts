import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';

/** The tree without columns. */
const shape = (line: string): unknown => JSON.parse(JSON.stringify(parseLine(line).tree, (key, value: unknown) => (key === 'at' || key === 'to' || key === 'spans' ? undefined : value)) ?? 'null');

/** The line, the words that nothing comes of, how they are told, and the line without them. */
const rows: readonly (readonly [line: string, words: string, code: 'not-drawn' | 'words-not-read', plain: string])[] = [
  // what for
  ['3 slides up to the top to keep his man busy', 'to keep his man busy', 'not-drawn', '3 slides up to the top'],
  ['1 dribbles over to the left slot to change the angle', 'to change the angle', 'not-drawn', '1 dribbles over to the left slot'],
  ['2 clears to the weak side to pull X2 away', 'to pull X2 away', 'not-drawn', '2 clears to the weak side'],
  ['2 clears to the weak side so 3 has room to drive', 'so 3 has room to drive', 'not-drawn', '2 clears to the weak side'],
  ['2 clears to the weak side so that X2 cannot help', 'so that X2 cannot help', 'not-drawn', '2 clears to the weak side'],
  ['3 steps out to the right corner for an easy catch', 'for an easy catch', 'not-drawn', '3 steps out to the right corner'],
  ['2 spots up at the top in case it comes back out', 'in case it comes back out', 'not-drawn', '2 spots up at the top'],
  ['5 stays on the left block for the rebound', 'for the rebound', 'not-drawn', '5 stays on the left block'],
  ['3 fakes it to 1 and throws it to 2', 'fakes it to 1 and', 'not-drawn', '3 throws it to 2'],
  ['1 breaks toward half court as a decoy', 'as a decoy', 'not-drawn', '1 breaks toward half court'],
  ['2 runs at 1 as if to screen, then slips', 'as if to screen', 'not-drawn', '2 runs at 1, then slips'],
  ['2 cuts to the rim looking for the lob', 'looking for the lob', 'not-drawn', '2 cuts to the rim'],
  ['3 stays in the left corner, ready to shoot', ', ready to shoot', 'not-drawn', '3 stays in the left corner'],
  ['1 passes to 5 before the trap closes', 'before the trap closes', 'not-drawn', '1 passes to 5'],
  // how
  ['5 takes it to the basket with his left', 'with his left', 'not-drawn', '5 takes it to the basket'],
  ['1 stops on two feet at the left elbow', 'on two feet', 'not-drawn', '1 stops at the left elbow'],
  ['2 jogs through the lane like he has all day', 'like he has all day', 'not-drawn', '2 jogs through the lane'],
  ['3 fakes low, then pops out to the left corner', 'fakes low, then', 'not-drawn', '3 pops out to the left corner'],
  ['4 turns and looks up the floor, then drives', 'and looks up the floor', 'not-drawn', '4 turns, then drives'],
  ['1 dribbles to the right wing and waves 2 through', 'and waves 2 through', 'not-drawn', '1 dribbles to the right wing'],
  ['look 5 behind X5: layup', 'behind X5', 'not-drawn', 'look 5: layup'],
  ['look 3: skip to the corner, three', 'to the corner', 'not-drawn', 'look 3: skip, three'],
  ['3 looks inside, then skips it to 2', 'looks inside, then', 'not-drawn', '3 skips it to 2'],
  ['1 looks at 5, then passes to 2', 'looks at 5, then', 'not-drawn', '1 passes to 2'],
  ['1 passes to 3 there', 'there', 'not-drawn', '1 passes to 3'],
  ['3 stays there', 'there', 'not-drawn', '3 stays'],
  ['3 shoots to beat the clock', 'to beat the clock', 'not-drawn', '3 shoots'],
  ['4 steps to the ball instead', 'instead', 'not-drawn', '4 steps to the ball'],
  ['2 stays high to keep it honest', 'to keep it honest', 'not-drawn', '2 stays high'],
  // what may have meant something
  ['5 seals the little guy on his back', 'on his back', 'not-drawn', '5 seals the little guy'],
  ['1 passes to 2, 5 is the second option', ', 5 is the second option', 'words-not-read', '1 passes to 2'],
  ['1 dribbles to left slot by the scorers', 'by the scorers', 'words-not-read', '1 dribbles to left slot'],
];

describe('words that nothing comes of', () => {
  it.each(rows)('%s: the line is read without “%s”, which is told', (line, words, code, plain) => {
    const { fault, warnings } = parseLine(line);
    expect(fault).toBeUndefined();
    expect(warnings.map((warning) => [warning.code, line.slice(warning.at, warning.to)])).toEqual([[code, words]]);
    expect(shape(line)).toEqual(shape(plain));
    expect(parseLine(plain).warnings).toEqual([]);
  });

  it.each(rows)('%s: left out, the line is the same', (line) => {
    const after = applyEdits(line, parseLine(line).warnings[0]!.fixes[0]!.edits);
    expect(parseLine(after).fault).toBeUndefined();
    expect(shape(after)).toEqual(shape(line));
    expect(parseLine(after).warnings).toEqual([]);
  });

  it.each(rows)('%s: the columns are those of the coach’s words', (line) => {
    const { tree } = parseLine(line);
    expect(tree!.at).toBe(line.search(/\S/));
    expect(tree!.to).toBeLessThanOrEqual(line.length);
  });
});

describe('what is never passed over', () => {
  it.each([
    // it turns the line round, or makes it hang on something
    '4 rolls unless X4 drops', '1 and 5 run a two-man game on the left side', '4 carries on to the left block if he does not get it', '2 cuts to the rim, not to the corner', '2 stays and never cuts', '3 cuts to rim without the ball screen', '4 passes to 2 when the defence collapses',
    '2 cuts to the rim instead of the corner', '1 drives only to his right', 'look 3: jumper unless X3 helps', '5 rolls except when X5 drops', '3 either pops or rolls', '2 curls or fades',
    // an action, a man, a place or a time may be meant
    '1 passes to 2 and flarbs for 3', '1 dribbles to the left slot and 3 flies', '2 cuts to the left squirrel', '5 flies 3', '1 gets two', '2 cuts high', '3 sprints blargh', '3 cuts to rim in about no time with 4', '4 screens low for 2',
    'look 2 cornr', '3 cuts to rimm', '4 rolls thn 5 pops', '1 waits for the double drag to be set',
    // it is being typed
    '4 rolls, th', '3 cuts to the rim to', '3 cuts to the rim wh',
  ])('%s', (line) => {
    expect(parseLine(line).fault, line).toBeDefined();
  });
});
