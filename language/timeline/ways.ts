/** A way on the floor, run: corner points, and how the legs cover it in time. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import type { LegLimits } from '../motion/levels.ts';
import type { Profile } from '../motion/legs.ts';
import { distanceAt, legProfile, secondsAt, turnSpeed } from '../motion/legs.ts';
import type { Segment } from './timeline.ts';

/** One straight piece; `at` is when it begins, ms from the start of the way. */
export interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly profile: Profile;
  readonly at: number;
}

export interface Way {
  readonly points: readonly Point[];
  readonly pieces: readonly Piece[];
  readonly ms: number;
  /** m/s at the end. */
  readonly exit: number;
}

const sameSpot = 0.001;

/**
 * Runs through the points as fast as the limits and the turns allow, entering at `entry` m/s and leaving with at most `exit` m/s.
 * Points nearer than a millimetre to the one before are dropped; a single point is a way of no length.
 */
export function layWay(corners: readonly Point[], limits: LegLimits, entry = 0, exit = 0): Way {
  const points = apart(corners);
  const first = points[0];
  if (first === undefined || points.length === 1) return { points, pieces: [], ms: 0, exit: 0 };
  const speeds = cornerSpeeds(points, limits, exit);
  const pieces: Piece[] = [];
  let speed = entry;
  let at = 0;
  for (let index = 1; index < points.length; index++) {
    const from = points[index - 1]!;
    const to = points[index]!;
    const { vmax, tau, brake } = limits;
    const profile = legProfile({ distance: distance(from, to), v0: speed, v1: speeds[index]!, vmax, tau, brake });
    pieces.push({ from, to, profile, at });
    at += profile.durationMs;
    speed = profile.v1;
  }
  return { points, pieces, ms: at, exit: speed };
}

function apart(corners: readonly Point[]): readonly Point[] {
  const points: Point[] = [];
  let before: Point | undefined;
  for (const corner of corners) {
    const point = commit(corner);
    if (before === undefined || distance(point, before) > sameSpot) points.push(point);
    before = point;
  }
  return points;
}

/** The speed wanted at each point: what the turn allows, and no more than can be braked from by the next one. */
function cornerSpeeds(points: readonly Point[], limits: LegLimits, exit: number): readonly number[] {
  const speeds = points.map((point, index) => {
    const before = points[index - 1];
    const after = points[index + 1];
    if (before === undefined || after === undefined) return exit;
    return turnSpeed(limits.vmax, turn(before, point, after));
  });
  for (let index = points.length - 2; index > 0; index--) {
    const gap = distance(points[index]!, points[index + 1]!);
    const stoppable = Math.sqrt(speeds[index + 1]! ** 2 + 2 * limits.brake * gap);
    speeds[index] = Math.min(speeds[index]!, stoppable);
  }
  return speeds;
}

/** The angle a runner turns by at `point`, radians: 0 straight on. */
export function turn(before: Point, point: Point, after: Point): number {
  const inX = point.x - before.x;
  const inY = point.y - before.y;
  const outX = after.x - point.x;
  const outY = after.y - point.y;
  return Math.abs(Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY));
}

/** Where a runner of this way is, `ms` after its start. */
export function alongWay(way: Way, ms: number): Point {
  for (let index = way.pieces.length - 1; index >= 0; index--) {
    const piece = way.pieces[index]!;
    if (ms >= piece.at || index === 0) return alongPiece(piece.from, piece.to, piece.profile, ms - piece.at);
  }
  return way.points[0]!;
}

/** Where one is on a straight piece, `ms` after it began. */
export function alongPiece(from: Point, to: Point, profile: Profile, ms: number): Point {
  if (profile.distance === 0) return to;
  const share = Math.min(1, distanceAt(profile, ms / 1000) / profile.distance);
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** When the way first comes nearest to a point, ms from its start. */
export function msNearest(way: Way, target: Point): number {
  let best = 0;
  let bestGap = Number.POSITIVE_INFINITY;
  for (const piece of way.pieces) {
    const share = shareNearest(piece.from, piece.to, target);
    const gap = distance(target, { x: piece.from.x + (piece.to.x - piece.from.x) * share, y: piece.from.y + (piece.to.y - piece.from.y) * share });
    if (gap >= bestGap - 1e-9) continue;
    bestGap = gap;
    best = piece.at + Math.round(secondsAt(piece.profile, share * piece.profile.distance) * 1000);
  }
  return best;
}

/** The share of the line from `a` to `b` at which it is nearest to `point`. */
export function shareNearest(a: Point, b: Point, point: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  if (length === 0) return 0;
  return Math.max(0, Math.min(1, ((point.x - a.x) * dx + (point.y - a.y) * dy) / length));
}

/** How near the line from `a` to `b` comes to `point`, metres. */
export function gapToLine(a: Point, b: Point, point: Point): number {
  const share = shareNearest(a, b, point);
  return distance(point, { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
}

/** So near to a spot one is at it, metres; common practice, no source. */
export const nearSpot = 0.6;

/** When and where a man comes by a spot, at the earliest from `from` ms on. */
export function passingBy(stretches: readonly { readonly segment: Pick<Segment, 't0' | 't1' | 'path' | 'profile'> }[], spot: Point, from: number): { readonly at: Point; readonly when: number } | undefined {
  for (const { segment } of stretches) {
    if (segment.t1 < from) continue;
    const [a, b] = [segment.path[0]!, segment.path[segment.path.length - 1]!];
    const share = shareNearest(a, b, spot);
    const at = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
    if (distance(at, spot) <= nearSpot) return { at: commit(at), when: segment.t0 + Math.round(secondsAt(segment.profile, share * segment.profile.distance) * 1000) };
  }
  return undefined;
}
