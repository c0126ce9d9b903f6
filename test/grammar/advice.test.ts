// A mend keeps what the coach named, or there is none: no deed is changed into another, none is dropped without a word.
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';

const mendsOf = (line: string): readonly string[] => parseLine(line).fault!.fixes.map(({ edits }) => applyEdits(line, edits));

describe('a mend', () => {
  it.each([
    ['3 pops out to the left wing at the same time', '3 pops out to the left wing'],
    ['2 runs off a staggered screen from 4 and then 1 to the top', '2 runs off 4 then 1 to the top'],
    ['1 hits 5 in the slot and chases it', '1 hits 5 in the slot and cuts to the ball'],
    ['3 steps on the court and runs off 5 toward the left corner', '3 steps in and runs off 5 toward the left corner'],
    ['4 flashes into the gap at the nail', '4 flashes to the nail'],
    ['5 turns and looks up the floor, then drives to the free throw line', '5 turns, then drives to the free throw line'],
    ['look 3: skip to the corner, three', 'look 3 in the corner: skip, three'],
  ])('%s → %s', (line, mended) => expect(mendsOf(line)[0]).toBe(mended));

  it.each([
    '3 reads the screen and comes over the top to the left slot', '1 dribbles toward the right wing and waves 2 through', '1 dribbles over to the left slot to change the angle', '1 stops on two feet at the left elbow',
    '4 carries on to the opposite block if he doesn\'t get it', '1 gets two dribbles downhill to the left elbow', '4 flashes into the gap', '4 hides from 5 and dives to the rim',
    '3 pump-fakes and dribbles once to the baseline', '2 gets it in to 4, or to 5 if they switch', 'when X5 comes up to 4, 5 ducks in behind him',
  ])('none for %s', (line) => expect(mendsOf(line)).toEqual([]));

  it('says what is written for the thrower, and of a defender that he is a step', () => {
    expect(inEnglish(parseLine('2 gets it in to 4, or to 5 if they switch').fault!.message)).toContain('"inbounds to 4"');
    expect(inEnglish(parseLine('when X5 comes up to 4, 5 ducks in behind him').fault!.message)).toContain('step "…" instead of "…" when X5 closes out on 4');
  });

  it('is still there for a slip of the pen', () => {
    for (const [line, mended] of [['1 pases to 2', '1 passes to 2'], ['2 cuts to left elbo', '2 cuts to left elbow'], ['3 curls arround 5', '3 curls around 5'], ['4 scren for 2', '4 screens for 2']] as const) expect(mendsOf(line)[0]).toBe(mended);
  });
});
