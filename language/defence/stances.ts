/** Where a defender wants to be. Distances in metres; common practice, no source. */
import type { Point } from '../court/point.ts';
import type { Level } from '../motion/levels.ts';
import type { BodyId } from '../play/play.ts';
import type { Cue } from './cues.ts';
import { manOf } from './cues.ts';

export interface Floor {
  /** 1–5 as the defenders see them, a reaction ago. */
  readonly men: readonly Point[];
  /** 1–5 as they are. */
  readonly bodies: readonly Point[];
  readonly ball: Point;
  readonly holder: BodyId | undefined;
  /** The ball is out of bounds with a thrower. */
  readonly out: boolean;
}

const ring: Point = { x: 0, y: 0 };
/** A pass away from the ball: farther men are given more room. */
const onePass = 5;
const sagPerMetre = 0.06;
const mostSag = 0.45;
const towardsBall = 0.15;
/** A show lasts about two slides out; then he is back with his man. */
const showMs = 1200;

export function goalOf(floor: Floor, level: Level, who: BodyId, cues: readonly Cue[], now: number): Point {
  const man = manOf(who, cues, now);
  const place = floor.men[Number(man) - 1] ?? ring;
  const cue = cues.filter((entry) => entry.who === who && entry.at <= now).at(-1);
  const told = cue && toldGoal(floor, level, cue, place, now);
  if (told !== undefined) return told;
  if (man === floor.holder) return floor.out ? between(place, ring, 1) : between(place, ring, closeTo(level));
  return sagging(floor, place, level);
}

function closeTo(level: Level): number {
  return level.reach + 0.2;
}

/** Between man and rim, and a little towards the ball, by how far the ball is. */
function sagging(floor: Floor, place: Point, level: Level): Point {
  const far = Math.hypot(floor.ball.x - place.x, floor.ball.y - place.y);
  const share = Math.min(mostSag, 0.15 + Math.max(0, far - onePass) * sagPerMetre);
  const toRim = Math.hypot(place.x, place.y);
  const depth = Math.max(Math.min(closeTo(level), toRim / 2), toRim * share);
  const guardPlace = between(place, ring, depth);
  return { x: guardPlace.x + (floor.ball.x - guardPlace.x) * towardsBall, y: guardPlace.y + (floor.ball.y - guardPlace.y) * towardsBall };
}

function toldGoal(floor: Floor, level: Level, cue: Cue, place: Point, now: number): Point | undefined {
  const on = cue.on === undefined || cue.on.startsWith('X') ? undefined : floor.men[Number(cue.on) - 1];
  switch (cue.verb) {
    case 'show':
    case 'hedge':
      return on !== undefined && now - cue.at < showMs ? between(on, ring, closeTo(level)) : undefined;
    case 'trap':
      return between(on ?? floor.ball, ring, -closeTo(level) * 0.8);
    case 'deny':
    case 'front':
      return between(on ?? place, floor.ball, closeTo(level));
    case 'help':
      return { x: ring.x, y: 1.2 };
    case 'trail':
    case 'follow':
      return between(on ?? place, ring, -0.7);
    case 'go':
      return between(on ?? place, ring, 2 * closeTo(level));
    default:
      return undefined;
  }
}

/** `metres` from `from` on the line to `to`, not past it. */
function between(from: Point, to: Point, metres: number): Point {
  const gap = Math.hypot(to.x - from.x, to.y - from.y);
  if (gap < 0.001) return { x: from.x, y: from.y + 0.5 };
  const share = Math.min(1, metres / gap);
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}
