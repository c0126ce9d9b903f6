import { describe, expect, it } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { shape } from './shape.ts';

/** From whole plays as coaches write them: what stands there, and the line of the notation that has the same tree. */
const rows: readonly (readonly [spoken: string, notation: string])[] = [
  // a place without its little word
  ['2 dives weak-side block', '2 dives to weak-side block'],
  ['3 holds left corner', '3 holds at left corner'],
  ['2 cuts left wing and 3 holds right corner', '2 cuts to left wing and 3 holds at right corner'],
  ['1 drives left elbow', '1 drives to left elbow'],
  ['2 clears out, left corner', '2 clears out to left corner'],
  ['4 takes it out, far baseline', '4 takes it out from far baseline'],
  // where it is thrown in
  ['3 takes it out under the basket, right side', '3 takes it out from the right baseline'],
  ['3 inbounds under the basket on the left', '3 inbounds from the left baseline'],
  // words that say something of their own
  ['5 flashes middle, just over half court', '5 flashes to half court'],
  ['1 passes back to 2, early', '1 passes back to 2 early'],
  ['1 skips it to 2, so X2 has to run back at him', '1 skips it to 2 and X2 closes out on him'],
  ['everybody else crashes', 'rebound everybody else crashes'],
  // several sentences in a line
  ['4 curls off 2 to the nail. 2 pops to top', '4 curls off 2 to the nail, 2 pops to top'],
  ['1 hits 5. 5 turns, faces up', '1 hits 5, 5 turns, faces up'],
  ['2 cuts to rim... Then 5 pops', '2 cuts to rim, then 5 pops'],
  ['2 cuts to rim. Once 4 clears, 5 ducks in', '2 cuts to rim, and once 4 clears, 5 ducks in'],
  ['4 drives down the lane; 5 backdoors', '4 drives down the lane and 5 backdoors'],
  ['look 1: pull up. Then look 5: three', 'look 1: jumper, then look 5: three'],
  ['look 4: layup and look 5: drop off, layup', 'look 4: layup, look 5: drop off, layup'],
  // signs and glued words
  ['4 + 5 stagger for 2', '4 and 5 stagger for 2'],
  ['rebound 3, 4, 5 crash, 1 & 2 get back', 'rebound 3, 4, 5 crash, 1 and 2 get back'],
  ['3 backcuts', '3 back-cuts'],
  ['3 lcuts', '3 l-cuts'],
  ['5 downscreens for 2', '5 down-screens for 2'],
  // a pass without its verb
  ['1 to 2', '1 passes to 2'],
  ['1 kicks it to 2, 2 back to 1', '1 kicks it to 2, 2 passes back to 1'],
  ['2 back out to 1, 1 skips to 3', '2 passes back out to 1, 1 skips to 3'],
  ['3 in to 2 at right corner', '3 inbounds to 2 at right corner'],
];

describe('a whole play as coaches write it', () => {
  it.each(['1, 2 to 3', '1 and 2 to 3', 'from 1 to 2', '1 to the top'])('%s leaves open what is meant', (line) => {
    expect(parseLine(line).fault).toBeDefined();
  });
  it.each(rows)('%s: %s', (spoken, notation) => {
    expect(shape(spoken)).toEqual(shape(notation));
  });
});
