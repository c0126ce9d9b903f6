// What a coach notes is told with the play: on the panel, to a screen reader, and on paper.
import { expect, test } from 'vitest';
import { tellPlay } from '../../language/words/tell-play.ts';
import { compileText } from '../checks/compiled.ts';

test('notes of the play come before its steps, those of a step at its end, in the coach’s own words', () => {
  const { play, timeline } = compileText('play "Tide"\n  from horns\n  note "go at <b>full speed</b> to rim"\n\n  step "Go"\n    1 passes to 2\n    note 3 "look at 1 first"\n    look 2: three\n').plays[0]!;
  const told = tellPlay(play, timeline).map(({ text }) => text);
  const step = told.findIndex((text) => text.startsWith('Go'));
  expect(told.indexOf('Note: go at <b>full speed</b> to rim')).toBeGreaterThan(0);
  expect(told.indexOf('Note: go at <b>full speed</b> to rim')).toBeLessThan(step);
  expect(told.at(-1)).toBe('Note for 3: look at 1 first');
});
