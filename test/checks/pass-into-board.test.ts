import { describe, expect, test } from 'vitest';
import { codesIn, messageOf } from './codes.ts';

const from = 'from 1 left corner, 2 top, 3 under the basket, 4 left elbow, 5 right block';
const told = (...lines: readonly string[]) => codesIn([from, ...lines].join('\n'), 'level hs\nrules fiba').includes('pass-into-board');

describe('a pass from behind the board', () => {
  test('that rises into it is told, with the height, the board and how far to go aside', () => {
    expect(messageOf('pass-into-board', `${from}\n3 inbounds from under the basket\n3 lobs to 2\nlook 2: three`, 'level hs\nrules fiba')).toBe(
      '3 throws from behind the board, and the ball would meet it: it comes there 3.3 m up, and the board hangs from 2.90 to 3.95 m, 0.9 m to either side. Let 3 stand 1.3 m farther out to the side, or write bounce-passes: below the board there is room.');
  });

  test('that is to be dunked is caught above the ring, and meets it on the way', () => {
    expect(told('3 inbounds from under the basket', '2 clears to right wing', '4 cuts to rim', 'look 4: lob, dunk')).toBe(true);
  });

  test.each([
    ['flat, below it', ['3 inbounds from under the basket', '3 inbounds to 5', 'look 5: layup']],
    ['bounced', ['3 inbounds from under the basket', '3 bounce-passes to 2', 'look 2: three']],
    ['past it, from beside', ['3 inbounds from (4, -2) m', '3 lobs to 2', 'look 2: three']],
    ['to a man behind it as well', ['3 inbounds from under the basket', '3 lobs to 1', 'look 1: three']],
    ['flat, to a man behind it', ['2 passes to 3', 'look 3: layup']],
  ])('%s is none', (_, lines) => {
    expect(told(...lines)).toBe(false);
  });

  test('as far aside as is told it goes by', () => {
    expect(told('3 inbounds from (1.35, -2.1) m', '3 lobs to 2', 'look 2: three')).toBe(false);
    expect(told('3 inbounds from (1.1, -2.1) m', '3 lobs to 2', 'look 2: three')).toBe(true);
  });

  test.each([
    ['lobbed to a man behind it', ['ball with 2', '3 cuts to (0, -1) m', '2 lobs to 3', 'look 3: layup']],
    ['from corner to corner', ['ball with 1', '2 clears to right corner', '1 skips to 2', 'look 2: three']],
  ])('one %s is told too', (_, lines) => {
    expect(told(...lines)).toBe(true);
  });

  test('and says between whom', () => {
    expect(messageOf('pass-into-board', `${from}\nball with 1\n2 clears to right corner\n1 skips to 2\nlook 2: three`, 'level hs\nrules fiba')).toMatch(/^The ball from 1 to 2 would meet the board: it comes there \d\.\d m up,/);
  });

  test.each(['fiba', 'nba', 'ncaa-men', 'ncaa-women', 'nfhs', 'mini'])('a lob from corner to corner goes over it (%s)', (rules) => {
    expect(codesIn(`${from}\nball with 1\n2 clears to right corner\n1 lobs to 2\nlook 2: three`, `level u12\nrules ${rules}`)).not.toContain('pass-into-board');
  });
});
