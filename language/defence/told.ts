/** What a line or a condition makes a defender do. Seconds and metres are common practice, no source. */
import { distance, type Point } from '../court/point.ts';
import { resolvePlace } from '../play/places.ts';
import { DEFENCE, type BodyId } from '../play/play.ts';
import type { Cue } from './cues.ts';
import type { Floor } from './floor.ts';
import { closeTo, ring, towards } from './floor.ts';

/** A show lasts about two slides out; then he is back with his man. So does a jump at a cutter. */
const showMs = 1200;
/** Round a screen, at most so long. */
const roundScreenMs = 1800;
const screenNear = 2.5;
/** He comes from a screen as far away as this, also when its man has slipped out of it by now. */
const showsWithin = 6;
/** A trap is over when the ball has gone from it. */
const trapComesMs = 600;

/** Where his latest cue sends him; `undefined` where it lets him guard as usual. `told` are the cues so far, `own` is his man's place. */
export function toldGoal(floor: Floor, index: number, told: readonly Cue[], own: Point): Point | undefined {
  const cue = latestFor(DEFENCE[index]!, told);
  if (cue === undefined) return undefined;
  const { level, ball } = floor;
  const close = closeTo(level);
  const on = placeOf(floor, cue.on) ?? own;
  const since = floor.now - cue.at;
  switch (cue.verb) {
    case 'show':
      return since < showMs ? showing(floor, cue, own) : undefined;
    case 'jump':
      return since < showMs ? towards(own, ball, close) : undefined;
    case 'trap':
      return trapping(floor, cue, since, own);
    case 'deny':
    case 'front':
      return towards(on, ball, Math.min(close, distance(on, ball) / 2));
    case 'help':
      return cue.to === undefined ? towards(ring, ball, 1.6) : spotOf(floor, cue, own);
    case 'trail':
      return towards(on, ring, -close);
    case 'go-under':
    case 'go-through':
      return roundScreen(floor, cue, own, since, close);
    case 'go-behind':
      return roundScreen(floor, cue, own, since, 2 * close);
    case 'go-over':
      return since < roundScreenMs ? towards(own, ring, 0.8 * close) : undefined;
    case 'drop':
      return towards(ring, ball, Math.min(2.6, distance(ball, ring) / 2));
    case 'sag':
      return towards(own, ring, distance(own, ring) / 2);
    case 'stay-home':
      return towards(own, ring, close);
    default:
      return cue.to === undefined ? undefined : spotOf(floor, cue, own);
  }
}

/** Asked for each of five at every step. */
function latestFor(defender: BodyId, told: readonly Cue[]): Cue | undefined {
  for (let at = told.length - 1; at >= 0; at--) if (told[at]!.who === defender) return told[at];
  return undefined;
}

function placeOf(floor: Floor, who: BodyId | undefined): Point | undefined {
  return who === undefined || who.startsWith('X') ? undefined : floor.men[Number(who) - 1];
}

function spotOf({ court, ball, men, spots }: Floor, { who, to }: Cue, own: Point): Point {
  const positions = Object.fromEntries(men.map((place, index) => [String(index + 1), place]));
  return resolvePlace(to!, { court, positions: { ...positions, [who]: own }, ball, who, spots });
}

/** Out beside the man with the ball, on the side on which he would come off the screen. */
function showing(floor: Floor, { on }: Cue, own: Point): Point {
  const user = placeOf(floor, on) ?? floor.ball;
  const gap = distance(user, ring);
  if (distance(user, own) > showsWithin || gap < 1) return towards(user, ring, closeTo(floor.level));
  const [x, y] = [-user.x / gap, -user.y / gap];
  const side = (own.x - user.x) * y - (own.y - user.y) * x < 0 ? -1 : 1;
  return { x: user.x + side * y * 1.4 + x * 0.4, y: user.y - side * x * 1.4 + y * 0.4 };
}

/** One keeps him from the ring, the other comes from his side. */
function trapping(floor: Floor, { on, who }: Cue, since: number, own: Point): Point | undefined {
  const trapped = placeOf(floor, on) ?? floor.ball;
  if (on !== undefined && floor.holder !== Number(on) && since > trapComesMs) return undefined;
  const close = closeTo(floor.level);
  if (who.slice(1) === on) return towards(trapped, ring, close);
  const toRing = towards(trapped, ring, close);
  const [x, y] = [toRing.x - trapped.x, toRing.y - trapped.y];
  // A good right angle aside, so that there are two walls.
  const left = { x: trapped.x - 0.3 * x - y, y: trapped.y - 0.3 * y + x };
  const right = { x: trapped.x - 0.3 * x + y, y: trapped.y - 0.3 * y - x };
  return distance(own, left) <= distance(own, right) ? left : right;
}

/** On the ring's side of the screener until his man is past him. */
function roundScreen(floor: Floor, { on }: Cue, own: Point, since: number, metres: number): Point | undefined {
  const screener = placeOf(floor, on);
  if (screener === undefined || since > roundScreenMs || distance(screener, own) > screenNear) return undefined;
  return towards(screener, ring, metres);
}
