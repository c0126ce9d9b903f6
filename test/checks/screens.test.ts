import { describe, expect, test } from 'vitest';
import { codesIn, messageOf } from './codes.ts';

describe('a screen set too late', () => {
  const at = (clock: number) => `call with 20 on the clock\nalready set\nfrom 5-out\n5 screens for 2\nat ${clock} on the clock, 2 cuts off 5 to rim\nlook 2: layup`;
  test('is told as that, and not as a time not kept', () => {
    expect(messageOf('screen-too-late', at(19))).toMatch(/^5’s screen is set [\d.]+ s too late for the time at which 2 is to come off it/);
    expect(codesIn(at(19))).not.toContain('time-not-kept');
  });
  test('in time is silent', () => expect(codesIn(at(14))).not.toContain('screen-too-late'));
  test('without a written time its user just waits', () => expect(codesIn('from 5-out\n5 screens for 2\n2 cuts off 5 to rim\nlook 2: layup')).toEqual([]));
});

describe('up and down', () => {
  test('against the screener’s own way', () => expect(messageOf('screen-direction', 'from 5-out\n5 screens down for 3\n3 cuts off 5 to rim\nlook 3: layup')).toMatch(/5 is to screen down, and his way to 3 leads \d\.\d m up the floor/));
  test('along it is silent', () => expect(codesIn('from 5-out\n3 screens down for 5\n5 cuts off 3 to top\n1 dribbles to right slot\nlook 5: three')).not.toContain('screen-direction'));
  test('a screen without the word says nothing of it', () => expect(codesIn('from 5-out\n5 screens for 3\n3 cuts off 5 to rim\nlook 3: layup')).not.toContain('screen-direction'));
  test('a step or less decides nothing', () => expect(codesIn('from 1 top, 2 right wing, 3 left wing, 4 right elbow, 5 left elbow\n5 screens down for 4\n4 cuts off 5 to left corner\nlook 4: jumper')).not.toContain('screen-direction'));
});

describe('room for a player who cannot see it', () => {
  const back = (place: string, defence = 'against man\n') => `${defence}from 4-out 1-in\n1 dribbles to left slot\n5 back-screens for 2${place}\n2 cuts off 5 to rim\nlook 2: layup`;
  test('is asked where the place is written', () => expect(messageOf('screen-no-room', back(' at (1, 5.1) m'))).toMatch(/0\.\d m from X2, who cannot see him; a normal step, about 0\.7 m/));
  test('a step away is enough', () => expect(codesIn(back(' at (0.6, 4.3) m'))).not.toContain('screen-no-room'));
  test('a place that the tool has chosen is not the coach’s to mend', () => expect(codesIn(back(''))).not.toContain('screen-no-room'));
  test('nothing is said where no defence is drawn', () => expect(codesIn(back(' at (1, 5.1) m', ''))).not.toContain('screen-no-room'));
  test('in front of his eyes a screen may stand as close as it likes', () => expect(codesIn('against man\nfrom 4-out 1-in\n1 dribbles to left slot\n5 screens for 2 at (1.6, 6.5) m\n2 cuts off 5 to rim\nlook 2: layup')).not.toContain('screen-no-room'));
});
