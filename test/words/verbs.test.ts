import { describe, expect, test } from 'vitest';
import { verbs } from '../../language/grammar/verbs.ts';
import { past, thirdPerson } from '../../language/words/verbs.ts';

describe('a coach’s verbs are built as he says them', () => {
  test.each([
    ['cut', 'cuts', 'cut'], ['dribble', 'dribbles', 'dribbled'], ['pass', 'passes', 'passed'], ['back-screen', 'back-screens', 'back-screened'],
    ['basket-cut', 'basket-cuts', 'basket-cut'], ['hand-off', 'hands off', 'handed off'], ['post-up', 'posts up', 'posted up'], ['drive', 'drives', 'drove'],
    ['slip', 'slips', 'slipped'], ['flash', 'flashes', 'flashed'], ['throw', 'throws', 'threw'], ['deny', 'denies', 'denied'], ['lob', 'lobs', 'lobbed'],
    ['step-out', 'steps out', 'stepped out'], ['pick-up', 'picks up his dribble', 'picked up his dribble'], ['bring-the-ball-up', 'brings the ball up', 'brought the ball up'],
  ])('%s: %s, %s', (base, third, told) => {
    expect(thirdPerson(base)).toBe(third);
    expect(past(base)).toBe(told);
  });

  test('what is said of a verb reads back to the same verb', () => {
    for (const { base } of verbs.values()) expect(verbs.get(thirdPerson(base))?.base).toBe(base);
  });
});
