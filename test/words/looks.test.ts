import { expect, it } from 'vitest';
import { compileText } from '../checks/compiled.ts';
import { tellPlay } from '../../language/words/tell-play.ts';
import { inEnglish } from '../../language/message/message.ts';
import { wayName } from '../../language/words/way-name.ts';

it('what a look waits to see of a defender is no name that is shouted', () => {
  const { play, timeline } = compileText('play "T"\n  from horns\n  1 dribbles to left slot\n  look 2 when X2 helps: kick out, three\n  look 3 "corner": kick out, three').plays[0]!;
  const told = tellPlay(play, timeline).map(({ text, untimed }) => untimed ?? text);
  expect(told).toContain('Look for 2 when X2 helps: 1 kicks out to 2, who shoots a three.');
  expect(told).toContain('Look for 3 “corner”: 1 kicks out to 3, who shoots a three.');
  expect(timeline.runs.map(({ id }) => inEnglish(wayName(play, id)))).toEqual(['2 when X2 helps', '“corner” for 3']);
});
