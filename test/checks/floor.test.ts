import { compileText } from './compiled.ts';
import { describe, expect, test } from 'vitest';
import { codesIn, messageOf } from './codes.ts';

const bringUp = (lines: string) => `from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots\nalready set\n${lines}\nlook 1: three`;

describe('the count in the backcourt', () => {
  test('is eight seconds from the call under FIBA rules', () => {
    expect(messageOf('backcourt-count', bringUp('1 holds for 8 seconds\n1 dribbles to top'))).toMatch(/only over half court \d+(\.\d)? s after the call; the count in the backcourt is 8 s/);
  });
  test('ten in high school', () => {
    const slow = bringUp('1 holds for 6.5 seconds\n1 dribbles to top');
    expect(codesIn(slow)).toContain('backcourt-count');
    expect(codesIn(slow, 'level u14\nrules nfhs')).not.toContain('backcourt-count');
  });
  test('is not made of mini-basketball, whose rule was not seen', () => expect(codesIn(bringUp('1 holds for 12 seconds\n1 dribbles to top'), 'level u10\nrules mini')).not.toContain('backcourt-count'));
  test('is kept by who just brings it up', () => expect(codesIn(bringUp('1 dribbles to top'))).toEqual([]));
  test('runs from the touch on a throw-in', () => {
    const press = (hold: string) => `4 inbounds from the far baseline\nfrom 1 backcourt middle, 2 right corner, 3 left corner, 5 right dunker spot\n4 inbounds to 1\n${hold}1 dribbles to top\nlook 1: three`;
    expect(messageOf('backcourt-count', press('1 holds for 10 seconds\n'))).toContain('after the touch');
    expect(codesIn(press(''))).not.toContain('backcourt-count');
  });
  test('is over for good once the ball is in front', () => expect(codesIn('from 5-out\nalready set\n1 keeps his dribble\n1 holds for 12 seconds\nlook 1: three')).not.toContain('backcourt-count'));
});

describe('over and back', () => {
  test('a pass behind the half line gives the ball away', () => expect(messageOf('over-and-back', 'from 5-out\n1 passes to 2\n1 clears to backcourt middle\n2 passes to 1\nlook 1: three')).toContain('1 catches the ball behind the half line'));
  test('and so does a dribble', () => expect(messageOf('over-and-back', 'from 5-out\n1 dribbles to backcourt middle\n1 dribbles to top\nlook 1: three')).toContain('1 takes the ball behind'));
  test('a pass from the backcourt to the front does not', () => expect(codesIn(bringUp('1 passes to 2\n2 passes to 1').replace('look 1', '1 sprints to top\nlook 1'))).not.toContain('over-and-back'));
  test('nor does a throw-in from the front straight into the backcourt', () =>
    expect(codesIn('3 inbounds from the left sideline\nfrom 1 backcourt middle, 2 right corner, 4 and 5 dunker spots\n3 inbounds to 1\n1 dribbles to top\nlook 1: three')).not.toContain('over-and-back'));
});

describe('closely guarded', () => {
  const held = (seconds: number, against = 'against man\n') => `from 4-out 1-in\n${against}1 passes to 3\n3 holds for ${seconds} seconds\n3 drives to rim\nlook 3: layup`;
  test('who stands with the ball and a man near', () => expect(messageOf('closely-guarded', held(6), 'level u14\nrules nfhs')).toMatch(/3 holds the ball for [\d.]+ s with X3 within 6 ft: after 5 s/));
  test('not for four seconds', () => expect(codesIn(held(3), 'level u14\nrules nfhs')).not.toContain('closely-guarded'));
  test('not where the rule set has no such count', () => expect(codesIn(held(6), 'level u14\nrules nba')).not.toContain('closely-guarded'));
  test('where no defence is drawn it says whom it means', () => expect(messageOf('closely-guarded', held(6, ''))).toContain('a man within 1 m is near enough'));
  test('a dribbler is not counted by FIBA', () => expect(codesIn('from 4-out 1-in\nagainst man\n1 dribbles to left slot\n1 keeps his dribble\n1 holds for 8 seconds\nlook 1: three')).not.toContain('closely-guarded'));
  test('a pass that waits is told as that, once', () => {
    const waiting = codesIn('from 5-out\n1 passes to 2\n3 cuts to rim, then clears to left corner, then cuts to rim, then cuts to left elbow\n2 passes to 3\nlook 3: jumper');
    expect(waiting).toContain('pass-waits');
    expect(waiting).not.toContain('closely-guarded');
  });
});

describe('the lines', () => {
  test('a man who stands outside is told, the thrower is not', () => {
    expect(codesIn('from 1 top, 2 right wing, 3 left wing, 4 right corner, 5 at (8, 1) m\n1 passes to 2\nlook 2: three')).toContain('out-of-bounds');
    for (const [place, line] of [['left sideline', '3 inbounds from the left sideline'], ['(2, -2) m', '3 inbounds from the right baseline']] as const) {
      const found = compileText(`play "A"\n  from box, 3 at ${place}\n  1 passes to 2\n  look 2: three\n`).findings.find(({ code }) => code === 'out-of-bounds');
      expect(found?.message).toContain(`write below this line: ${line}`);
    }
    expect(codesIn('3 inbounds from the left baseline\nfrom 1 top, 2 right wing, 4 right corner, 5 left wing\n3 inbounds to 1\nlook 1: three')).not.toContain('out-of-bounds');
  });
  test('a foot on the line is told with its distance', () => expect(messageOf('foot-on-line', 'from 5-out\n1 dribbles to (-7.43, 2) m\nlook 1: three')).toContain('0.07 m from the line'));
  test('the corner has room for the feet on every floor', () => {
    for (const rules of ['fiba', 'nba', 'ncaa-men', 'ncaa-women', 'nfhs', 'mini']) expect(codesIn('from 4-out 1-in\n2 cuts to right corner\n1 passes to 2\nlook 2: jumper', `level u14\nrules ${rules}`)).not.toContain('foot-on-line');
  });
});

describe('the three-point line', () => {
  test('a three from inside it counts two', () => expect(messageOf('three-inside-line', 'from 5-out\n1 dribbles to left elbow\nlook 1: three')).toMatch(/1 stands \d\.\d m inside/));
  test('the spots behind it are behind it on every floor that has one', () => {
    for (const rules of ['fiba', 'nba', 'ncaa-men', 'ncaa-women', 'nfhs']) expect(codesIn('from 5-out\n1 passes to 4\nlook 4: three\nlook 2: three\nlook 3: three', `level u14\nrules ${rules}`)).toEqual([]);
  });
  test('mini-basketball has none', () => expect(messageOf('no-three-line', 'from 5-out\n1 passes to 2\nlook 2: three', 'level u12\nrules mini')).toContain('counts two'));
});

test('a pass too long for young arms is told, and a grown player throws it', () => {
  const long = 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots\n1 throws a baseball pass to 2\nlook 2: jumper';
  expect(messageOf('pass-too-far', long, 'level u10\nrules mini')).toMatch(/it is 1\d\.\d m through the air.*under 10.*about 9 m/);
  expect(codesIn(long, 'level pro\nrules fiba')).not.toContain('pass-too-far');
});

test('a pass to a defender names whom is meant', () => {
  expect(messageOf('pass-to-defender', 'from 5-out\n1 passes to X2\nlook 1: three')).toContain('Write 2');
  expect(codesIn('from 5-out\n1 passes to 2\nX2 denies 2\nlook 2: three')).not.toContain('pass-to-defender');
});

describe('a hand-off', () => {
  test('to a man a line has stay far away', () => expect(messageOf('hand-off-apart', 'from 5-out\n1 dribbles to left slot\n2 stays\n1 hands off to 2\nlook 2: three')).toContain('a line has 2 stay'));
  test('at a time that he cannot make', () => expect(messageOf('hand-off-apart', 'from 5-out\ncall with 20 on the clock\nalready set\n1 dribbles to left slot\nat 19 on the clock, 1 hands off to 4\nlook 4: jumper')).toMatch(/4 comes [\d.]+ s after the time written/));
  test('he comes to by himself is said without a word', () => expect(codesIn('from 5-out\n1 dribbles to left slot\n1 hands off to 3\nlook 3: three')).not.toContain('hand-off-apart'));
  test('behind a dribble at him too', () => expect(codesIn('from 5-out\n1 dribbles at 3, then hands off to 3\nlook 3: three')).not.toContain('hand-off-apart'));
});
