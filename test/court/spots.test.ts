import { describe, expect, test } from 'vitest';
import { courtOf, inBounds, inFrontcourt, inLane, metresBehindThree } from '../../language/court/court.ts';
import type { Point } from '../../language/court/point.ts';
import { distance } from '../../language/court/point.ts';
import { mirrorPoint, mirrorSide } from '../../language/court/mirror.ts';
import { ruleSets } from '../../language/court/rule-sets.ts';
import type { SpotName } from '../../language/court/spots.ts';
import { readingOf } from '../support/timeline-of.ts';
import { allSpots, isSpotName, isThrowInPlace, speakSpot, spotLabel, spotNames, spotPoint, takesSide } from '../../language/court/spots.ts';

const courts = ruleSets.map((set) => [set.id, courtOf(set)] as const);
const feet = 0.3048;

describe.each(courts)('on the %s floor', (id, court) => {
  const place = (name: SpotName, side?: 'left' | 'right'): Point => spotPoint(court, name, side)!;

  test.each(['left', 'right'] as const)('the %s corner leaves 0.3 m for the feet, behind the line and in bounds', (side) => {
    const corner = place('corner', side);
    expect(Math.abs(corner.x) + 0.3).toBeLessThan(court.boundary.right);
    expect(corner.y - 0.3).toBeGreaterThan(court.baselineY);
    if (id === 'mini') return expect(metresBehindThree(court, corner)).toBeUndefined();
    expect(metresBehindThree(court, corner)).toBeGreaterThanOrEqual(0.3);
  });

  test.each(['wing', 'slot', 'top'] as const)('a shot from the %s is a three where there is a line', (name) => {
    const point = place(name, name === 'top' ? undefined : 'left');
    if (id === 'mini') return expect(metresBehindThree(court, point)).toBeUndefined();
    expect(metresBehindThree(court, point)).toBeGreaterThanOrEqual(0.3);
  });

  test.each(['elbow', 'block', 'mid-post', 'low post', 'lane line', 'dunker spot', 'short corner'] as const)('the %s lies just outside the lane', (name) => {
    const point = place(name, 'right');
    expect(inLane(court, point)).toBe(false);
    expect(inBounds(court, point)).toBe(true);
  });

  test('nobody at the nail or the high post stands in the lane, and the wing is on the free-throw line extended', () => {
    expect(inLane(court, place('nail'))).toBe(false);
    expect(inLane(court, place('high post'))).toBe(false);
    expect(place('wing', 'right').y).toBe(court.freeThrowLineY);
    expect(spotPoint(court, 'free-throw line', 'right', true)).toEqual(place('wing', 'right'));
  });

  test('throw-in places lie outside the lines and every other spot inside', () => {
    for (const spot of allSpots(court)) expect(inBounds(court, spot.point), spot.label).toBe(!isThrowInPlace(spot.name));
  });

  test('every spot is written as it is named', () => {
    for (const { name, side, label } of allSpots(court)) expect(readingOf(`play "A"\n  3 cuts to ${label}`).play.steps[0]?.actions[0], label).toMatchObject({ to: { value: { name, ...(side !== undefined && { side }) } } });
  });

  test('left is the mirror of right', () => {
    for (const name of spotNames) {
      const right = spotPoint(court, name, 'right');
      const left = spotPoint(court, name, 'left');
      if (takesSide(name) === 'never') expect(right ?? left, name).toBeUndefined();
      else expect(left, name).toEqual(mirrorPoint(right!));
    }
  });

  test('half court is in the frontcourt, the backcourt is not', () => {
    expect(inFrontcourt(court, place('half court'))).toBe(true);
    expect(inFrontcourt(court, place('backcourt'))).toBe(false);
  });

  test('the perimeter is spaced as coaches teach it, 12 to 18 feet where a line is drawn', () => {
    // Two college coaches' pages: 15-18 ft, 12-18 and 12-15 ft also taught.
    const gaps = [
      distance(place('slot', 'left'), place('slot', 'right')),
      distance(place('slot', 'right'), place('wing', 'right')),
      distance(place('wing', 'right'), place('corner', 'right')),
    ];
    // The shortest arcs give a little less; a child's strides are shorter too.
    const least = id === 'mini' ? 10 : id === 'nfhs' ? 11.5 : 12;
    for (const gap of gaps) {
      expect(gap).toBeGreaterThan(least * feet);
      expect(gap).toBeLessThan(18 * feet);
    }
    expect(gaps[0]).toBeCloseTo(gaps[1]!, 9);
  });
});

test('words without a place give none', () => {
  const court = courtOf(ruleSets[0]!);
  expect(spotPoint(court, 'wing', undefined)).toBeUndefined();
  expect(spotPoint(court, 'wing', 'middle')).toBeUndefined();
  expect(spotPoint(court, 'top', 'left')).toBeUndefined();
  expect(spotPoint(court, 'block', 'left', true)).toBeUndefined();
  expect(spotPoint(court, 'free-throw line', undefined, true)).toBeUndefined();
  expect(spotPoint(court, 'top', undefined)).toBeDefined();
  expect(spotPoint(court, 'backcourt', 'middle')).toEqual(spotPoint(court, 'backcourt', undefined));
  expect(isSpotName('toString')).toBe(false);
});

test('a spot is said as a coach says it', () => {
  expect(spotLabel('wing', 'left')).toBe('left wing');
  expect(spotLabel('free-throw line', 'left', true)).toBe('left free-throw line extended');
  expect(speakSpot('wing', 'left')).toBe('left wing');
  expect(speakSpot('nail')).toBe('the nail');
  expect(speakSpot('half court')).toBe('half court');
  expect(mirrorSide('left')).toBe('right');
  expect(mirrorSide('middle')).toBe('middle');
});
