import { describe, expect, it } from 'vitest';
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
];

describe('a whole play as coaches write it', () => {
  it.each(rows)('%s: %s', (spoken, notation) => {
    expect(shape(spoken)).toEqual(shape(notation));
  });
});
