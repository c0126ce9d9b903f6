import { describe, expect, test } from 'vitest';
import { courtOf, inBounds, inFrontcourt, inLane, metresBehindThree } from '../../language/court/court.ts';
import { ruleSet, ruleSets } from '../../language/court/rule-sets.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

// Own arithmetic from the books' radius and corner distance, tolerance 0.05 degrees.
test.each([['nba', 67.87], ['ncaa-men', 77.93], ['fiba', 77.9]] as const)('the %s arc meets its straight part %s degrees off the middle', (id, angle) => {
  expect(Math.abs(degrees(courtOf(ruleSet(id)).three!.halfAngle) - angle)).toBeLessThan(0.05);
});

test.each([
  ['fiba', 28, 15, -1.575, 4.225], ['nba', 28.651, 15.24, -1.6, 4.191], ['ncaa-men', 28.651, 15.24, -1.6, 4.191], ['nfhs', 25.603, 15.24, -1.6, 4.191], ['mini', 28, 15, -1.575, 3.625],
] as const)('the %s floor is %s by %s m, its baseline at %s and its free-throw line at %s', (id, length, width, baseline, freeThrow) => {
  const court = courtOf(ruleSet(id));
  expect(court.farBaselineY - court.baselineY).toBeCloseTo(length, 3);
  expect(court.boundary.right - court.boundary.left).toBeCloseTo(width, 3);
  expect(court.baselineY).toBeCloseTo(baseline, 3);
  expect(court.freeThrowLineY).toBeCloseTo(freeThrow, 3);
  expect(court.halfLineY).toBeCloseTo((court.farBaselineY + court.baselineY) / 2, 9);
  expect(court.farBaselineY - court.farRing.y).toBeCloseTo(-court.baselineY, 9);
});

test('the free-throw line is as far from the board as the book says', () => {
  for (const set of ruleSets) {
    const court = courtOf(set);
    expect(court.freeThrowLineY - court.boardY, set.id).toBeCloseTo(set.court.freeThrowLineToBoard.value, 3);
  }
});

test('the straight part of the line leaves the room beside the sideline that the book says', () => {
  const room = (id: 'fiba' | 'nba'): number => courtOf(ruleSet(id)).boundary.right - courtOf(ruleSet(id)).three!.corner;
  expect(room('fiba')).toBeCloseTo(0.9, 6);
  expect(room('nba')).toBeCloseTo(3 * 0.3048, 6);
});

describe('a three on the FIBA floor', () => {
  const court = courtOf(ruleSet('fiba'));
  test.each([
    [0, 6.75, false], [0, 6.76, true], [6.6, 0, false], [6.61, 0, true], [6.61, -1.5, true], [-6.61, 1, true], [4.7, 4.7, false], [4.8, 4.8, true], [6.65, 1.2, true], [6.62, 1.42, true],
    [6.5, 1.6, false], [0, 20, true],
  ])('from (%s, %s): %s', (x, y, three) => {
    expect(metresBehindThree(court, { x, y })! > 0).toBe(three);
  });

  test('is measured to the line’s outer edge', () => {
    expect(metresBehindThree(court, { x: 0, y: 7.15 })).toBeCloseTo(0.4, 9);
    expect(metresBehindThree(court, { x: 7, y: 0 })).toBeCloseTo(0.4, 9);
  });
});

test('the same corner is a two in one book and a three in another', () => {
  const spot = { x: 6.3, y: 0 };
  expect(metresBehindThree(courtOf(ruleSet('nfhs')), spot)).toBeGreaterThan(0);
  expect(metresBehindThree(courtOf(ruleSet('fiba')), spot)).toBeLessThan(0);
  expect(metresBehindThree(courtOf(ruleSet('mini')), { x: 0, y: 10 })).toBeUndefined();
});

test('the lines are out, the lane’s lines are in the lane, the half line is backcourt', () => {
  const court = courtOf(ruleSet('fiba'));
  expect(inBounds(court, { x: 7.5, y: 0 })).toBe(false);
  expect(inBounds(court, { x: 7.49, y: 0 })).toBe(true);
  expect(inBounds(court, { x: 0, y: court.baselineY })).toBe(false);
  expect(inLane(court, { x: 2.45, y: 4.225 })).toBe(true);
  expect(inLane(court, { x: 2.46, y: 4 })).toBe(false);
  expect(inLane(court, { x: 0, y: 4.24 })).toBe(false);
  expect(inFrontcourt(court, { x: 0, y: court.halfLineY })).toBe(false);
  expect(inFrontcourt(court, { x: 0, y: court.halfLineY - 0.03 })).toBe(true);
});
