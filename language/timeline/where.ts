/** Places worked out when their line starts: what is settled then is the situation they are asked in (rules 7, 22). */
import type { Point } from '../court/point.ts';
import { distance } from '../court/point.ts';
import type { BodyId, Place } from '../play/play.ts';
import type { Situation } from '../play/places.ts';
import { resolvePlace, sideOfNumber, sideSign } from '../play/places.ts';
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
  const place = (who: BodyId): Point => bodyOf(branch, who).place;
  // Written out: a loop would grow the object five times, and every place that is asked for makes one.
  const positions: Partial<Record<BodyId, Point>> = { 1: place('1'), 2: place('2'), 3: place('3'), 4: place('4'), 5: place('5') };
  positions[standing.who] = standing.own;
  return { court: branch.scene.court, positions, ball: standing.ball, who: standing.who, spots: branch.scene.play.spots, evenSide: branch.scene.evenSide };
}

/**
 * `fills for 1`: the place 1 leaves. Where he stood as the step opened if he has left it since, else where he stood before his last way.
 */
export function placeLeft(branch: Branch, who: BodyId, open: number): Point {
  const body = bodyOf(branch, who);
  const { stretches } = body;
  const last = stretches[stretches.length - 1]?.segment;
  if (last === undefined) return body.place;
  const first = stretches.find(({ segment }) => segment.t1 > open)?.segment ?? stretches.find(({ segment }) => segment.action === last.action)!.segment;
  return first.path[0]!;
}

/** A man stands at a place, or comes by it, within this many metres; common practice, no source. */
export const atThePlace = 1;
/** Who seals or posts up on the block at the edge of the lane is in it, metres from its middle; at an elbow he is not. Common practice, no source. */
export const inTheLane = 3.2;

/** The men a place speaks of: it is known once they are settled. */
export function menIn(place: Place): readonly BodyId[] {
  if (place.kind === 'player' || place.kind === 'beside' || place.kind === 'behind') return [place.who];
  if (place.kind === 'offset') return menIn(place.from);
  if (place.kind === 'either') return place.options[0] === undefined ? [] : menIn(place.options[0]);
  if (place.kind !== 'between') return [];
  return [place.a, place.b].flatMap((end) => (typeof end === 'string' ? [end] : menIn(end)));
}

/** Left or right of the middle; the first that leans. */
export function leaning(...points: readonly Point[]): 'left' | 'right' | undefined {
  const found = points.find(({ x }) => Math.abs(x) > 0.05);
  if (found === undefined) return undefined;
  return found.x < 0 ? 'left' : 'right';
}

/** 1 along `across`, -1 against it, for a man with nothing else to choose by: the side his number has, else away from the baseline. */
export function sideWhereNothingLeans(branch: Branch, who: BodyId, across: Point): 1 | -1 {
  const towards = Math.abs(across.x) > 0.001 ? across.x * sideSign(sideOfNumber(who, branch.scene.evenSide)) : across.y;
  return towards > 0 ? 1 : -1;
}

/** `metres` from `from`, straight away from `other`; towards it where negative. */
export function away(from: Point, other: Point, metres: number): Point {
  const gap = distance(from, other);
  if (gap < 0.001) return { x: from.x, y: from.y + Math.abs(metres) };
  return { x: from.x + ((from.x - other.x) / gap) * metres, y: from.y + ((from.y - other.y) / gap) * metres };
}
