import { describe, expect, test } from 'vitest';
import { legProfile } from '../../language/motion/legs.ts';
import { LEVELS, legLimits, levelIds, levelTable, passSpeed, quantities, releaseSeconds } from '../../language/motion/levels.ts';

describe.each(quantities)('%s', (quantity) => {
  const row = levelTable[quantity];

  test('says where it comes from, and what it means', () => {
    expect(row.about.length).toBeGreaterThan(4);
    expect(row.source.text.length).toBeGreaterThan(5);
    for (const id of levelIds) expect(LEVELS[id][quantity], id).toBeGreaterThan(0);
  });

  test('only grows, or only shrinks, from the youngest to the oldest', () => {
    const up = [...row.values].sort((a, b) => a - b);
    const values: readonly number[] = row.values;
    expect([up, [...up].reverse()]).toContainEqual([...values]);
  });
});

// Ranges recalled, from memory: adult passes in m/s, and the catch-to-release seconds of the levels named.
test.each([
  ['pass', 7, 11], ['bounce', 6, 9], ['lob', 6, 8], ['skip', 12, 16], ['baseball', 12, 16], ['overhead', 8, 12],
] as const)('a grown player’s %s lies between %s and %s m/s', (kind, least, most) => {
  for (const id of ['college', 'pro'] as const) {
    expect(passSpeed(LEVELS[id], kind)).toBeGreaterThanOrEqual(least);
    expect(passSpeed(LEVELS[id], kind)).toBeLessThanOrEqual(most);
  }
});

test.each([['pro', 0.55, 0.8], ['college', 0.7, 0.9], ['u16', 0.8, 1.1], ['u12', 1, 1.5]] as const)('%s shooters release a jump shot or a three %s to %s s after the catch', (id, least, most) => {
  for (const kind of ['jumper', 'three'] as const) {
    expect(releaseSeconds(LEVELS[id], kind)).toBeGreaterThanOrEqual(least);
    expect(releaseSeconds(LEVELS[id], kind)).toBeLessThanOrEqual(most);
  }
});

test('a shot off the dribble leaves the hand sooner after the last step than one off the catch, and never later', () => {
  for (const id of levelIds) {
    expect(releaseSeconds(LEVELS[id], 'layup', true)).toBeLessThan(releaseSeconds(LEVELS[id], 'layup'));
    expect(releaseSeconds(LEVELS[id], 'jumper', true)).toBeLessThan(releaseSeconds(LEVELS[id], 'jumper'));
    expect(releaseSeconds(LEVELS[id], 'tip-in', true)).toBe(releaseSeconds(LEVELS[id], 'tip-in'));
  }
});

test('one hard dribble of two metres and a shot take a professional 1.2 to 1.5 s', () => {
  // The range is common practice; he rises at 1.5 m/s, not from a full stop.
  const dribble = legProfile({ distance: 2, v0: 0, v1: 1.5, ...legLimits(LEVELS.pro, 'sprint', true) });
  const whole = dribble.seconds + releaseSeconds(LEVELS.pro, 'jumper', true);
  expect(whole).toBeGreaterThan(1.2);
  expect(whole).toBeLessThan(1.5);
});

test('walking, jogging, cutting and sprinting come in that order, and the ball slows', () => {
  for (const id of levelIds) {
    const level = LEVELS[id];
    const speeds = (['walk', 'jog', 'set', 'sprint'] as const).map((pace) => legLimits(level, pace, false).vmax);
    expect(speeds).toEqual([...speeds].sort((a, b) => a - b));
    expect(legLimits(level, 'set', true).vmax).toBeLessThan(legLimits(level, 'set', false).vmax);
    expect(legLimits(level, 'set', false, 0.9).vmax).toBeCloseTo(0.9 * level.vmax * level.cutEffort, 9);
  }
});

test('a sprint is about twice a defensive slide or more', () => {
  for (const id of levelIds) expect(LEVELS[id].vmax / LEVELS[id].slide).toBeGreaterThan(1.9);
});
