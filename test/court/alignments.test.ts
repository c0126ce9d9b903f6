import { describe, expect, test } from 'vitest';
import { alignment, alignmentNames, alignmentPlaces, alignmentPoints, playerNumbers, stackAlongLaneLine } from '../../language/court/alignments.ts';
import { courtOf, inBounds, inLane } from '../../language/court/court.ts';
import { mirrorPoint } from '../../language/court/mirror.ts';
import type { Point } from '../../language/court/point.ts';
import { distance } from '../../language/court/point.ts';
import { ruleSet, ruleSets } from '../../language/court/rule-sets.ts';
import { spotPoint } from '../../language/court/spots.ts';

const courts = ruleSets.map((set) => [set.id, courtOf(set)] as const);
const throwers = [undefined, ...playerNumbers];

function smallestGap(points: readonly Point[]): number {
  return Math.min(...points.flatMap((a, index) => points.slice(index + 1).map((b) => distance(a, b))));
}

describe.each(courts)('on the %s floor', (_, court) => {
  describe.each(alignmentNames)('%s', (name) => {
    test.each(throwers)('keeps everyone in bounds and 0.9 m apart, thrower %s', (thrower) => {
      const points = alignmentPoints(court, name, { thrower })!;
      expect([...points.keys()]).toEqual(playerNumbers.filter((player) => player !== thrower));
      expect(smallestGap([...points.values()])).toBeGreaterThanOrEqual(0.9);
      for (const [player, point] of points) expect(inBounds(court, point), `${player}`).toBe(true);
    });

    test('stands outside the lane with a live ball, the diamond’s low man apart', () => {
      for (const [player, point] of alignmentPoints(court, name)!) {
        expect(inLane(court, point), `${player}`).toBe(name === 'diamond' && player === 4);
      }
    });

    test('mirrored, has left for right', () => {
      const plain = alignmentPoints(court, name)!;
      for (const [player, point] of alignmentPoints(court, name, { mirrored: true })!) expect(point).toEqual(mirrorPoint(plain.get(player)!));
    });
  });

  test('a listed stack goes up the lane line from the block, a body apart', () => {
    const right = stackAlongLaneLine(court, 'right', 4);
    expect(right[0]).toEqual(spotPoint(court, 'block', 'right'));
    expect(smallestGap(right)).toBeGreaterThanOrEqual(0.9);
    expect(right.map((point) => point.y)).toEqual([...right.map((point) => point.y)].sort((a, b) => a - b));
    expect(stackAlongLaneLine(court, 'left', 4)).toEqual(right.map(mirrorPoint));
  });
});

test('from a stack 5 stands above 3 to screen down for him, 2 has a clear way to the right corner, 4 comes up on the right', () => {
  const points = alignmentPoints(courtOf(ruleSet('fiba')), 'stack')!;
  const at = (player: 1 | 2 | 3 | 4 | 5): Point => points.get(player)!;
  expect(at(5).x).toBe(at(3).x);
  expect(at(5).y).toBeGreaterThan(at(3).y + 0.9);
  expect(at(3).x).toBeLessThan(0);
  expect(at(2).x).toBeGreaterThan(0);
  expect(at(4).x).toBeGreaterThan(0);
  expect(at(1)).toEqual(spotPoint(courtOf(ruleSet('fiba')), 'top', undefined));
});

test('in a throw-in form the four others take the places in the order of their numbers', () => {
  const box = alignment('box')!;
  const withThree = alignmentPlaces(box, 3);
  expect([...withThree]).toEqual([1, 2, 4, 5].map((player, index) => [player, box.throwIn![index]]));
  // Horns has no form of its own: the others keep their places.
  expect(alignmentPlaces(alignment('horns')!, 3).get(4)).toEqual({ spot: 'elbow', side: 'right' });
});

test('an alignment is found by the words coaches use, and no other word finds one', () => {
  expect(alignment('HORNS')?.name).toBe('horns');
  expect(alignment('1-4')?.name).toBe('1-4 high');
  expect(alignment('2-3')?.name).toBe('2-3 high');
  expect(alignment('__proto__')).toBeUndefined();
  expect(alignmentPoints(courtOf(ruleSet('fiba')), 'zigzag')).toBeUndefined();
});
