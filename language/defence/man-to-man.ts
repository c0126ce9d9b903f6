/** Man-to-man: each between his man and the ring, close to the ball, the others sagging by how far the ball is. Common practice, no source. */
import { distance, type Point } from '../court/point.ts';
import type { BodyId } from '../play/play.ts';
import type { Cue } from './cues.ts';
import { menAfter } from './cues.ts';
import type { Floor, Tactic } from './floor.ts';
import { closeTo, ring, towards } from './floor.ts';
import { toldGoal } from './told.ts';

/** A pass away from the ball, metres: farther men are given more room, up to somewhat under half the way to the ring. */
const onePass = 5;
const leastSag = 0.15;
const sagPerMetre = 0.06;
const mostSag = 0.45;
const towardsBall = 0.15;
/** A man so near to the ring without the ball is kept from the ball, not from the ring. */
const atTheRing = 1.5;
/** Without a press the ball is met here, metres from the ring. */
const pickUp = 9;

export function manToMan(press: boolean): Tactic {
  // Whom each guards changes with the cues alone.
  let known: readonly Cue[] | undefined;
  let men: readonly BodyId[] = [];
  return (floor, index, told) => {
    if (told !== known) men = menAfter(told);
    known = told;
    const man = Number(men[index]) - 1;
    const place = floor.men[man] ?? ring;
    return toldGoal(floor, index, told, place) ?? guardGoal(floor, man + 1, place, press);
  };
}

function guardGoal(floor: Floor, man: number, place: Point, press: boolean): Point {
  const toRing = distance(place, ring);
  if (!press && toRing > pickUp) return towards(place, ring, Math.max(closeTo(floor.level), toRing - pickUp));
  if (man === floor.holder) return towards(place, ring, closeTo(floor.level));
  return toRing < atTheRing ? towards(place, floor.ball, Math.min(closeTo(floor.level), distance(place, floor.ball) / 2)) : sagging(floor, place, toRing);
}

/** Between man and ring, and a little towards the ball, by how far the ball is. */
function sagging({ ball, level }: Floor, place: Point, toRing: number): Point {
  const far = distance(ball, place);
  const share = Math.min(mostSag, leastSag + Math.max(0, far - onePass) * sagPerMetre);
  const depth = Math.max(Math.min(closeTo(level), toRing / 2), toRing * share);
  const guarding = towards(place, ring, depth);
  return { x: guarding.x + (ball.x - guarding.x) * towardsBall, y: guarding.y + (ball.y - guarding.y) * towardsBall };
}
