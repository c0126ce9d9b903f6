import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { courtOf } from '../../language/court/court.ts';
import { distance } from '../../language/court/point.ts';
import { ruleSets } from '../../language/court/rule-sets.ts';
import { allSpots } from '../../language/court/spots.ts';
import { inEnglish, type Message } from '../../language/message/message.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { sayAbout, sayPlace, sayRoughly, wordsFor } from '../../language/words/say-place.ts';

const courts = ruleSets.map(courtOf);
const anywhere = fc.tuple(fc.constantFrom(...courts), fc.double({ min: -7.6, max: 7.6, noNaN: true }), fc.double({ min: -1.9, max: 13, noNaN: true }));
const fiba = courts[0]!;

test('a place that only two ways or numbers could write is told from the nearest spot', () => {
  const between = { x: 5.9, y: -0.1 };
  expect(sayPlace(fiba, between)).toBe('0.3 m above and 1.1 m left of right corner');
  expect(sayRoughly(fiba, between)).toBe('above and left of right corner');
  expect(sayRoughly(fiba, { x: 5.9, y: -0.4 })).toBe('left of right corner');
  expect(inEnglish(sayAbout(fiba, { x: 7.2, y: 15.5 }) as Message)).toBe('near right backcourt');
  expect(inEnglish(sayAbout(fiba, between) as Message)).toMatch(/^near [a-z -]+$/);
  expect(sayAbout(fiba, allSpots(fiba).find(({ label }) => label === 'left wing')!.point)).toBe('left wing');
});

describe('a place is said as a coach says it', () => {
  test('by the spot a player stands on, a hand more or less', () => {
    const wing = allSpots(fiba).find(({ label }) => label === 'left wing')!.point;
    expect(sayPlace(fiba, wing)).toBe('left wing');
    expect(sayPlace(fiba, { x: wing.x + 0.1, y: wing.y - 0.1 })).toBe('left wing');
  });

  test('by how far it is from a spot, in the unit of the rule set’s readers', () => {
    const above = (rules: (typeof courts)[number]) => {
      const elbow = allSpots(rules).find(({ label }) => label === 'left elbow')!.point;
      return sayPlace(rules, { x: elbow.x, y: elbow.y + 0.61 });
    };
    expect(above(fiba)).toBe('0.6 m above left elbow');
    expect(above(courts.find(({ rules }) => rules === 'nfhs')!)).toBe('2 ft above left elbow');
  });

  test('by two ways from the nearest spot where one does not lead there', () => {
    expect(sayPlace(fiba, { x: 4.16, y: 2.31 })).toBe('0.3 m below and 1.4 m right of right mid-post');
    expect(sayPlace(fiba, { x: 4.16, y: 2.31 }, { unit: 'ft' })).toBe('1 ft below and 4.5 ft right of right mid-post');
  });

  test('and in numbers where no spot is near', () => {
    expect(sayPlace(fiba, { x: 7.21, y: 15.5 })).toBe('(7.2, 15.5) m');
  });

  test('of the floor where sets are played not two places in a hundred are a pair of numbers', () => {
    for (const court of courts) {
      const all = Array.from({ length: 45 }, (_, x) => Array.from({ length: 32 }, (_, y) => wordsFor(court, { x: (x - 22) * 0.31, y: -1.2 + y * 0.33 }).place.kind)).flat();
      expect(all.filter((kind) => kind === 'point').length, court.rules).toBeLessThanOrEqual(all.length / 50);
    }
  });
});

test('no place is said more than a hand off, and saying it again does not move it', () => {
  fc.assert(
    fc.property(anywhere, ([court, x, y]) => {
      const words = wordsFor(court, { x, y });
      expect(distance(words.point, { x, y })).toBeLessThanOrEqual(0.2 + 1e-9);
      if (words.place.kind !== 'point') expect(distance(wordsFor(court, words.point).point, words.point)).toBeLessThan(0.003);
    }),
    { numRuns: 400 },
  );
});

test('every place that is said is a place the notation reads', () => {
  fc.assert(
    fc.property(anywhere, ([court, x, y]) => {
      const line = parseLine(`1 cuts to ${sayPlace(court, { x, y })}`);
      expect(line.fault, sayPlace(court, { x, y })).toBeUndefined();
    }),
    { numRuns: 400 },
  );
});
