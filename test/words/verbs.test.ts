import { describe, expect, test } from 'vitest';
import { verbs } from '../../language/grammar/verbs.ts';
import { thirdPerson } from '../../language/words/verbs.ts';

describe('a coach’s verbs are built as he says them', () => {
  test.each([
    ['cut', 'cuts'], ['dribble', 'dribbles'], ['pass', 'passes'], ['back-screen', 'back-screens'],
    ['basket-cut', 'basket-cuts'], ['hand-off', 'hands off'], ['post-up', 'posts up'], ['drive', 'drives'],
    ['slip', 'slips'], ['flash', 'flashes'], ['throw', 'throws'], ['deny', 'denies'], ['lob', 'lobs'],
    ['step-out', 'steps out'], ['pick-up', 'picks up his dribble'], ['bring-the-ball-up', 'brings the ball up'],
  ])('%s: %s', (base, third) => {
    expect(thirdPerson(base)).toBe(third);
  });

  test('what is said of a verb reads back to the same verb', () => {
    for (const { base } of verbs.values()) expect(verbs.get(thirdPerson(base))?.base).toBe(base);
  });
});
