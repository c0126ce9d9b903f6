import { describe, expect, test } from 'vitest';
import { legProfile } from '../../language/motion/legs.ts';
import { LEVELS, levelIds } from '../../language/motion/levels.ts';
import { paceShare } from '../../language/motion/own-pace.ts';

describe('a player’s own pace', () => {
  test.each(levelIds)('%s: fast and slow are one standard deviation of the level, average is the level', (id) => {
    const level = LEVELS[id];
    expect(paceShare(level, { kind: 'word', word: 'fast' })).toBeCloseTo(1 + level.legsSpread, 3);
    expect(paceShare(level, { kind: 'word', word: 'slow' })).toBeCloseTo(1 - level.legsSpread, 3);
    expect(paceShare(level, { kind: 'word', word: 'average' })).toBe(1);
  });

  test('with a top speed he has that top speed', () => {
    expect(paceShare(LEVELS.u14, { kind: 'speed', metresPerSecond: 6 }) * LEVELS.u14.vmax).toBeCloseTo(6, 2);
  });

  test.each([[20, 3.6], [20, 4.2], [18.288, 3.3], [10, 2.3]])('who runs %s m in %s s does so in the model, to a hundredth', (metres, seconds) => {
    const { vmax, tau, brake } = LEVELS.u14;
    const share = paceShare(LEVELS.u14, { kind: 'sprint', metres, seconds });
    expect(legProfile({ distance: metres, v0: 0, v1: 99, vmax: vmax * share, tau, brake }).seconds).toBeCloseTo(seconds, 2);
  });

  test('a slip of the pen makes nobody a rocket or a statue', () => {
    for (const seconds of [0, 0.1, 300]) {
      const share = paceShare(LEVELS.u14, { kind: 'sprint', metres: 20, seconds });
      expect(share).toBeGreaterThanOrEqual(0.6);
      expect(share).toBeLessThanOrEqual(1.5);
    }
  });
});
