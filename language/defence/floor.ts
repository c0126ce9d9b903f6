/** The floor as a defender sees it, and the few bits of geometry he thinks in. */
import type { Court } from '../court/court.ts';
import { distance, type Point } from '../court/point.ts';
import type { Level } from '../motion/levels.ts';
import type { Cue } from './cues.ts';

export interface Floor {
  readonly court: Court;
  readonly level: Level;
  /** The play's own spots. */
  readonly spots: Readonly<Record<string, Point>>;
  /** ms */
  readonly now: number;
  /** 1–5 as the defenders see them, a reaction ago. */
  readonly men: readonly Point[];
  readonly ball: Point;
  /** Who has the ball or is about to catch it: 1–5; 0 for nobody. */
  readonly holder: number;
  /** The ball is out of bounds with a thrower. */
  readonly out: boolean;
}

/** Where X1–X5 want to be: one way of defending. It sees the floor, and what the text has told so far. */
export type Tactic = (floor: Floor, index: number, told: readonly Cue[]) => Point;

export const ring: Point = { x: 0, y: 0 };

/** `metres` from `from` on the line to `to`; past neither it, nor beyond, unless negative: then away from it. */
export function towards(from: Point, to: Point, metres: number): Point {
  const gap = distance(from, to);
  if (gap < 0.001) return { x: from.x, y: from.y + 0.5 };
  const share = Math.min(1, metres / gap);
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** As near as he comes to a man with the ball: an arm and a bit, and far enough for two numbers to be read in a picture. */
export function closeTo(level: Level): number {
  return Math.max(0.95, level.reach + 0.2);
}
