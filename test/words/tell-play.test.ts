// The play told in sentences.
import { expect, test } from 'vitest';
import { tellPlay } from '../../language/words/tell-play.ts';
import { compileText } from '../checks/compiled.ts';

test.each(['far baseline', 'right baseline', 'left sideline'])('who throws in is told once where from: %s', (line) => {
  const { play, timeline } = compileText(`play "Sluice"\n  from 1 at top, 2 at right wing, 3 at left wing, 5 at nail\n  4 inbounds from the ${line}\n  4 inbounds to 1\n  look 1: three\n`).plays[0]!;
  const [standing] = tellPlay(play, timeline).map(({ text }) => text);
  expect(standing).toMatch(new RegExp(`4 at (the )?${line}`));
  expect(standing).toMatch(/4 throws in\.$/);
  expect(standing!.match(/baseline|sideline/g)).toHaveLength(1);
});
