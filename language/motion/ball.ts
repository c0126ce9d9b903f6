/** How long the ball is in the air, and how high: passes at their kind's speed, shots as thrown bodies with a little drag. */
import type { Source } from '../court/point.ts';
import { commonPractice, computed, fromMemory, read, secondHand } from '../court/sources.ts';
import type { PassKind, ShotKind } from '../play/play.ts';
import type { Level } from './levels.ts';
import { passSpeed } from './levels.ts';

/** m/s² and metres. */
export const gravity = 9.81;
export const ballRadius = 0.12;
const shortestFlight = 0.05;

/** The numbers of this file that are not a level's, each with its source. */
export const ballFacts = {
  launchAngle: { value: (50 * Math.PI) / 180, source: commonPractice('common practice: a shot leaves the hand at about 50 degrees; the best free throw near 52 (Tran and Silverberg 2008, press account)') },
  flatter: { value: (4 * Math.PI) / 180, source: commonPractice('common practice: near the ring a jump shot rises to 4 degrees under the angle of least force, which meets 50 degrees at about 3 m') },
  nearest: { value: 0.3, source: commonPractice('common practice: from under the ring the ball is put up an arm aside') },
  dragPerMetre: { value: 0.0041, source: computed('flights with and without drag (Cd 0.47) of 3.0 to 7.24 m, release 2.3 m, 50 degrees: longer by 0.41 % a metre') },
  bounceShare: { value: 2 / 3, source: secondHand('coaching pages: a bounce pass meets the floor about two thirds of the way') },
  dunkSeconds: { value: 0.1, source: commonPractice('common practice: a dunk or a tap is through at once') },
  minimumSpeedAngle: { value: undefined, source: read('Brancazio 1981, abstract: the least force also leaves the widest margin; the formula 45 degrees and half the climb is standard') },
  passHeights: { value: { chest: 1.2, waist: 0.9, overhead: 1.9, high: 2.5 }, source: fromMemory('hand heights of a grown player') },
} as const satisfies Readonly<Record<string, { readonly value: unknown; readonly source: Source }>>;

/** The ball in the air from hand to hand, or from hand to ring: plain data. Heights and lengths in metres. */
export interface Flight {
  /** Along the floor. */
  readonly distance: number;
  readonly durationMs: number;
  readonly fromHeight: number;
  readonly toHeight: number;
  /** The share of the way, and of the time, at which the ball meets the floor. */
  readonly bounceAt?: number;
}

export interface ShotFlight extends Flight {
  /** Angle in radians above the floor and speed in m/s as the ball leaves the hand; 0 for a dunk. */
  readonly angle: number;
  readonly speed: number;
}

/** Seconds of a pass that flies straight: distance over speed. */
export function passSeconds(distance: number, speed: number): number {
  return Math.max(0, distance) / Math.max(0.1, speed);
}

/** A pass of a level's players over a distance along the floor; a hand-off takes no time and has no flight. */
export function passFlight(kind: PassKind, distance: number, level: Level): Flight {
  const way = Number.isFinite(distance) ? Math.max(0, distance) : 0;
  const heights = passHeights(kind, level);
  const length = kind === 'bounce' ? bouncePath(way, heights.from, heights.to) : way;
  const seconds = Math.max(shortestFlight, passSeconds(length, passSpeed(level, kind)));
  return {
    distance: way,
    durationMs: Math.round(seconds * 1000),
    fromHeight: heights.from,
    toHeight: heights.to,
    ...(kind === 'bounce' && { bounceAt: ballFacts.bounceShare.value }),
  };
}

function bouncePath(way: number, from: number, to: number): number {
  const share = ballFacts.bounceShare.value;
  return Math.hypot(way * share, from - ballRadius) + Math.hypot(way * (1 - share), to - ballRadius);
}

function passHeights(kind: PassKind, level: Level): { readonly from: number; readonly to: number } {
  const grown = ballFacts.passHeights.value;
  const scale = level.releaseHeight / 2.4;
  if (kind === 'bounce') return { from: grown.chest * scale, to: grown.waist * scale };
  if (kind === 'lob') return { from: grown.overhead * scale, to: grown.high * scale };
  if (kind === 'tip') return { from: grown.high * scale, to: grown.chest * scale };
  if (kind === 'overhead' || kind === 'skip' || kind === 'baseball') return { from: grown.overhead * scale, to: grown.chest * scale };
  return { from: grown.chest * scale, to: grown.chest * scale };
}

/** Metres of the hand above a jump shot's release, by kind; common practice, no source. */
const releaseLift: Readonly<Record<ShotKind, number>> = { layup: 0.25, dunk: 0.6, jumper: 0, three: -0.05, hook: 0.1, 'tip-in': 0.4, shot: 0 };

/**
 * A shot from this far along the floor from the ring's centre. `releaseHeight` is that of a jump shot; a layup leaves higher and
 * by the least effort. Drag makes the flight a little longer, as computed once and kept in `ballFacts`.
 */
export function shotFlight(kind: ShotKind, distance: number, releaseHeight: number, ringHeight = 3.05): ShotFlight {
  const way = Number.isFinite(distance) ? Math.max(0, distance) : 0;
  const from = Math.min(releaseHeight + releaseLift[kind], ringHeight + 0.3);
  if (kind === 'dunk') {
    return { distance: way, durationMs: ballFacts.dunkSeconds.value * 1000, fromHeight: Math.max(from, ringHeight), toHeight: ringHeight, angle: 0, speed: 0 };
  }
  const flown = Math.max(way, ballFacts.nearest.value);
  const leastForce = Math.PI / 4 + Math.atan2(ringHeight - from, flown) / 2;
  const fromNear = kind === 'layup' || kind === 'tip-in';
  const angle = fromNear ? leastForce : Math.max(ballFacts.launchAngle.value, leastForce - ballFacts.flatter.value);
  const { speed, seconds } = throwAt(flown, ringHeight - from, angle);
  const slowed = Math.max(shortestFlight, seconds * (1 + ballFacts.dragPerMetre.value * flown));
  return { distance: way, durationMs: Math.round(slowed * 1000), fromHeight: from, toHeight: ringHeight, angle, speed };
}

/** A thrown body without drag: the speed at which it passes a point this far and this much higher, and when. */
export function throwAt(distance: number, climb: number, angle: number): { readonly speed: number; readonly seconds: number } {
  const cos = Math.cos(angle);
  const room = Math.max(0.01, distance * Math.tan(angle) - climb);
  const speed = distance * Math.sqrt(gravity / (2 * room)) / cos;
  return { speed, seconds: distance / (speed * cos) };
}

/** Height of the ball in metres at this many seconds after it left the hand, for pictures; never under the floor. */
export function ballHeight(flight: Flight, seconds: number): number {
  const whole = flight.durationMs / 1000;
  if (!(seconds > 0) || whole === 0) return flight.fromHeight;
  if (seconds >= whole) return flight.toHeight;
  if (flight.bounceAt === undefined) return arc(flight.fromHeight, flight.toHeight, whole, seconds);
  const down = whole * flight.bounceAt;
  if (seconds <= down) return arc(flight.fromHeight, ballRadius, down, seconds);
  return arc(ballRadius, flight.toHeight, whole - down, seconds - down);
}

/** The fall of a thrown body between two heights it has at 0 and at `whole` seconds. */
function arc(from: number, to: number, whole: number, seconds: number): number {
  const rise = (to - from) / whole + (gravity * whole) / 2;
  return Math.max(ballRadius, from + rise * seconds - (gravity * seconds * seconds) / 2);
}
