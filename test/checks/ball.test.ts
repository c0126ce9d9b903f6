import { describe, expect, test } from 'vitest';
import { inEnglish } from '../../language/message/message.ts';
import { compileText } from './compiled.ts';
import { expectMarked } from './marked.ts';

describe('the ball', () => {
  test('a man who screens with the ball is told how he got it', () =>
    expectMarked(`play "A"
  from 5-out
  1 dribbles to left slot
  1 ball-screens for 3
  ^^^^^^^^^^^^^^^^^^^^ error screen-with-ball: 1 sets a screen while he has the ball (“1 dribbles to left slot”). Let him pass first, or let another man screen.
  3 cuts off 1 to top
  look 1: jumper
`));

  test('a pass that is written later and yet comes sooner is named, and none is offered that he cannot give', () => {
    const { findings } = compileText('play "A"\n  from 4-out 1-in, ball with 1\n  1 passes to 4\n  once 1 catches, 1 back-cuts to top\n  1 screens across for 5, then rolls\n  2 screens down for 5\n  4 skips to 1\n  look 1: three\n');
    const told = findings.filter(({ code }) => code === 'screen-with-ball' || code === 'moving-with-ball');
    expect(told.map(({ message }) => message)).toEqual(expect.arrayContaining([
      '1 back-cuts while he has the ball (“4 skips to 1” has come by then). Let him dribble or drive, or pass first.',
      '1 sets a screen while he has the ball (“4 skips to 1” has come by then). Let him pass first, or let another man screen.',
    ]));
    // 5 is the one he screens for.
    expect(told.flatMap(({ fixes }) => fixes.map(({ title }) => inEnglish(title)))).toEqual(['Let him dribble there', 'Let 3 screen']);
  });

  test('he may screen once he has passed', () =>
    expectMarked(`play "A"
  from 5-out
  1 passes to 3
  1 screens for 2
  2 cuts off 1 to top
  look 2: three
`));

  test('a pass that would have to stand within its line is not offered above it', () => {
    const { findings } = compileText('play "A"\n  from 5-out\n  1 passes to 2, 3 passes to 4\n  look 4: three\n');
    expect(findings.filter(({ code }) => code === 'ball-needed').map(({ fixes }) => fixes)).toEqual([[]]);
  });

  test('a pass by a man without the ball names who has it', () =>
    expectMarked(`play "A"
  from 5-out
  1 dribbles to left slot
  2 passes to 3
  ^^^^^^^^^^^^^ error ball-needed: 2 can’t pass to 3: 1 has the ball (“1 dribbles to left slot”).
  look 3: three
`));

  test('the same mistake on several ways is told once', () =>
    expectMarked(`play "A"
  from 5-out
  step "Start"
    2 passes to 3
    ^^^^^^^^^^^^^ error ball-needed: 1 has the ball (he starts with it)
    look 3: three
    look 1: three
`));

  test('a drive that goes on is one dribble', () =>
    expectMarked(`play "A"
  from 5-out
  1 dribbles to left slot
  1 drives to rim
  look 1: layup
`));

  test('after picking the ball up nobody dribbles again', () =>
    expectMarked(`play "A"
  from 5-out
  1 dribbles to left slot, then picks up his dribble
  1 drives to rim
  ^^^^^^^^^^^^^^^ error second-dribble: 1 dribbles again
  look 1: layup
`));

  test('nobody passes to himself', () =>
    expectMarked(`play "A"
  from 5-out
  1 passes to 1
  ^^^^^^^^^^^^^ error pass-to-self
  look 1: three
`));

  test('a cut with the ball is a walk', () =>
    expectMarked(`play "A"
  from 5-out
  1 cuts to rim
  ^^^^^^^^^^^^^ error moving-with-ball: 1 cuts while he has the ball (he starts with it)
  look 1: layup
`));

  test('a man may cut before the ball comes', () =>
    expectMarked(`play "A"
  from 5-out
  3 cuts to rim
  1 passes to 3
  look 3: layup
`));
});
