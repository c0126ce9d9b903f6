/** Places worked out when their line starts: what is settled then is the situation they are asked in (rules 7, 22). */
import type { Point } from '../court/point.ts';
import { distance } from '../court/point.ts';
import type { BodyId, Place } from '../play/play.ts';
import type { Situation } from '../play/places.ts';
import { resolvePlace } from '../play/places.ts';
import type { Branch } from './branch.ts';
import { bodyOf } from './branch.ts';

export interface Standing {
  readonly who: BodyId;
  readonly own: Point;
  readonly ball: Point;
}

export function standingOf(branch: Branch, who: BodyId, holder: BodyId | undefined): Standing {
  return { who, own: bodyOf(branch, who).place, ball: ballPlace(branch, holder) };
}

/** Where the ball is by what is settled: with its holder. */
export function ballPlace(branch: Branch, holder: BodyId | undefined): Point {
  const body = holder === undefined ? undefined : branch.bodies.get(holder);
  return body?.place ?? { x: 0, y: branch.scene.court.freeThrowLineY };
}

/** The point of a place for a man who stands like this. */
export function pointOf(branch: Branch, place: Place, standing: Standing): Point {
  return resolvePlace(place, situationOf(branch, standing));
}

export function situationOf(branch: Branch, standing: Standing): Situation {
  const positions: Partial<Record<BodyId, Point>> = {};
  for (const [who, body] of branch.bodies) positions[who] = body.place;
  positions[standing.who] = standing.own;
  return { court: branch.scene.court, positions, ball: standing.ball, who: standing.who, spots: branch.scene.play.spots };
}

/** Left or right of the middle; the first that leans. */
export function leaning(...points: readonly Point[]): 'left' | 'right' | undefined {
  const found = points.find(({ x }) => Math.abs(x) > 0.05);
  if (found === undefined) return undefined;
  return found.x < 0 ? 'left' : 'right';
}

/** `metres` from `from`, straight away from `other`; towards it where negative. */
export function away(from: Point, other: Point, metres: number): Point {
  const gap = distance(from, other);
  if (gap < 0.001) return { x: from.x, y: from.y + Math.abs(metres) };
  return { x: from.x + ((from.x - other.x) / gap) * metres, y: from.y + ((from.y - other.y) / gap) * metres };
}
