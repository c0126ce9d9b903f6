import { expect, test } from 'vitest';
import { inRealVsCode } from './editor.ts';
import { playOf } from '../support/typed-play.ts';
import { measureTyping, percentile, sayTyping } from './typing-speed.ts';

inRealVsCode(
  'the picture keeps up with the typing',
  (editor) => {
    test.each([['31 lines', 'short.play'], ['5,000 lines', 'long.play']])('in a file of %s', { timeout: 120_000 }, async (lines, file) => {
      const speed = await measureTyping(editor(), file, 60);
      console.log(`key to picture, ${lines}, ${editor().place}: ${sayTyping(speed)}`);
      // A machine that does other things besides is slow in both; that a picture waits for a pause would be far above this.
      expect(percentile(speed.after, 50)).toBeLessThan(150);
    });
  },
  { files: { 'short.play': playOf(31), 'long.play': playOf(5000) } },
);
