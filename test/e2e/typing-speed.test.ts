import { expect, test } from 'vitest';
import { inRealVsCode } from './window.ts';
import { untilOneHolds } from '../support/rounds.ts';
import { playOf } from '../support/typed-play.ts';
import { measureTyping, percentile, sayTyping } from './typing-speed.ts';

/** ms. 50 where nothing else runs, three times that was measured on a slow day; a picture that waits for a pause in the typing would be far above. */
const limit = 250;

inRealVsCode(
  'the picture keeps up with the typing',
  (editor) => {
    test.each([['31 lines', 'short.play'], ['5,000 lines', 'long.play']])('in a file of %s', { timeout: 240_000 }, async (lines, file) => {
      const rounds = await untilOneHolds(() => measureTyping(editor(), file, 60), ({ after }) => percentile(after, 50) < limit, { most: 3 });
      for (const speed of rounds) console.log(`key to picture, ${lines}, ${editor().place}: ${sayTyping(speed)}`);
      expect(Math.min(...rounds.map(({ after }) => percentile(after, 50)))).toBeLessThan(limit);
    });
  },
  { files: { 'short.play': playOf(31), 'long.play': playOf(5000) } },
);
