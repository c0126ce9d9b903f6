// A mend keeps what the coach named, or there is none: no deed is changed into another, none is dropped without a word.
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';

const mendsOf = (line: string): readonly string[] => parseLine(line).fault!.fixes.map(({ edits }) => applyEdits(line, edits));

describe('a mend', () => {
  it('takes out only what names nothing on the floor', () => {
    expect(mendsOf('4 flashes into the gap at the nail')[0]).toBe('4 flashes to the nail');
  });

  it.each([
    '4 flashes into the gap', '4 hides from 5 and dives to the rim', '2 gets it in to 4, or to 5 if they switch', 'when X5 comes up to 4, 5 ducks in behind him',
  ])('none for %s', (line) => expect(mendsOf(line)).toEqual([]));

  it('says what is written for the thrower, and of a defender that he is a step', () => {
    expect(inEnglish(parseLine('2 gets it in to 4, or to 5 if they switch').fault!.message)).toContain('"inbounds to 4"');
    expect(inEnglish(parseLine('when X5 comes up to 4, 5 ducks in behind him').fault!.message)).toContain('step "…" instead of "…" when X5 closes out on 4');
  });

  it('is still there for a slip of the pen', () => {
    for (const [line, mended] of [['1 pases to 2', '1 passes to 2'], ['2 cuts to left elbo', '2 cuts to left elbow'], ['3 curls arround 5', '3 curls around 5'], ['4 scren for 2', '4 screens for 2']] as const) expect(mendsOf(line)[0]).toBe(mended);
  });
});

describe('a line that once had a mend that lost something', () => {
  const plain: readonly (readonly [string, string])[] = [
    ['2 runs off a staggered screen from 4 and then 1 to the top', '2 runs off 4 and 1 to the top'],
    ['3 steps on the court and runs off 5 toward the left corner', '3 steps in and runs off 5 toward the left corner'],
    ['1 gets two dribbles downhill to the left elbow', '1 dribbles to the left elbow'],
  ];
  it.each(plain)('%s is read as %s', (line, same) => expect(withoutColumns(parseLine(line).tree)).toEqual(withoutColumns(parseLine(same).tree)));

  it.each([
    ['5 turns and looks up the floor, then drives to the free throw line', 'not-drawn', 'and looks up the floor'],
    ['1 dribbles over to the left slot to change the angle', 'not-drawn', 'to change the angle'],
    ['1 stops on two feet at the left elbow', 'not-drawn', 'on two feet'],
    ['3 reads the screen and comes over the top to the left slot', 'not-drawn', 'reads the screen and', 'over the top'],
    ['3 pump-fakes and dribbles once to the baseline', 'not-drawn', 'pump-fakes and'],
    ['1 dribbles toward the right wing and waves 2 through', 'not-drawn', 'and waves 2 through'],
  ])('%s is read, and told what is passed over (%s: %s)', (line, code, ...words) => {
    const { fault, warnings } = parseLine(line);
    expect(fault).toBeUndefined();
    expect(warnings.map((one) => [one.code, line.slice(one.at, one.to)])).toEqual(words.map((each) => [code, each]));
  });
});

/** Of a tree what it says, whatever words it was said with. */
function withoutColumns(tree: unknown): unknown {
  return JSON.parse(JSON.stringify(tree, (key, value: unknown) => (key === 'spans' || ((key === 'at' || key === 'to') && typeof value === 'number') || key === 'screen' ? undefined : value)));
}
