import { expect, test } from 'vitest';
import { inRealVsCode } from './window.ts';
import { untilOneHolds } from '../support/rounds.ts';
import { playOf } from '../support/typed-play.ts';
import { echo, measureTyping, percentile, sayTyping, type TypingSpeed } from './typing-speed.ts';

/**
 * ms. What a picture may take from the letter: where the machine is slow, VS Code itself is, and the picture with it. What waits for a pause in the
 * typing comes far later.
 */
const limit = ({ least }: TypingSpeed) => 100 + 3 * percentile(least, 50);
const holds = (speed: TypingSpeed) => percentile(speed.picture, 50) < limit(speed);

inRealVsCode(
  'the picture keeps up with the typing',
  (editor) => {
    test.each([['31 lines', 'short.play'], ['5,000 lines', 'long.play']])('in a file of %s', { timeout: 300_000 }, async (lines, file) => {
      const rounds = await untilOneHolds(() => measureTyping(editor(), file, 24, 1), holds, { most: 3 });
      for (const speed of rounds) console.log(`${lines}, ${editor().place}: ${sayTyping(speed)}`);
      expect(rounds.some(holds), rounds.map(sayTyping).join('\n')).toBe(true);
    });
  },
  { files: { 'short.play': playOf(31), 'long.play': playOf(5000) }, others: [echo] },
);
