// What a label had better not lie on: the lines of the picture, above all their ends, and the ring with its board.
import type { Court } from '../court/court.ts';
import { END_WEIGHT, type Shy } from './labels.ts';
import { alongLine, lengthOf } from './lines.ts';
import { BAR, type Way } from './ways.ts';

// A point so often along a line stands for it, cm.
const EVERY = 40;
const LINE_REACH = 14;
// The last metre tells where he ends up: it weighs more than the way there.
const LAST_METRE = 100;
const LAST_WEIGHT = 4;
// An arrow's head is this long, and a label keeps a little more from it.
const END_REACH = 34;

const known = new WeakMap<Way, readonly Shy[]>();

/** A way as points: its stretches, and its end where the arrow or the bar says what it is. */
export function shyOfWay(way: Way): readonly Shy[] {
  const kept = known.get(way);
  if (kept !== undefined) return kept;
  const { kind, points } = way;
  const length = lengthOf(points);
  const line = Array.from({ length: Math.floor(length / EVERY) }, (_, i): Shy => ({ at: alongLine(points, i * EVERY).point, reach: LINE_REACH, weight: length - i * EVERY < LAST_METRE ? LAST_WEIGHT : 1 }));
  const made = [...line, { at: points.at(-1)!, reach: kind === 'screen' ? BAR : END_REACH, weight: END_WEIGHT }];
  known.set(way, made);
  return made;
}

const rings = new WeakMap<Court, readonly Shy[]>();

export function shyOfRing(court: Court): readonly Shy[] {
  const kept = rings.get(court);
  if (kept !== undefined) return kept;
  const { ring, boardY, boardWidth, ringRadius } = court;
  const half = (boardWidth / 2) * 100;
  const board = [-1, -0.5, 0, 0.5, 1].map((share): Shy => ({ at: [half * share, boardY * 100], reach: 12, weight: END_WEIGHT / 5 }));
  const made = [{ at: [0, ring.y * 100] as const, reach: ringRadius * 100 + 8, weight: END_WEIGHT }, ...board];
  rings.set(court, made);
  return made;
}
