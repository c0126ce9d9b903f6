import type { Court } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import { isSpotName, spotPoint, takesSide } from '../court/spots.ts';
import type { BodyId, Place, Side } from './play.ts';
import { OFFENCE } from './play.ts';
import { armLength } from './read-places.ts';

/** The moment a place is asked for: who stands where, who has the ball, and who is going. */
export interface Situation {
  readonly court: Court;
  readonly positions: Readonly<Partial<Record<BodyId, Point>>>;
  /** Who has the ball, or where it is. */
  readonly ball?: BodyId | Point;
  /** Whose place it is: an omitted side is the one he is nearer to. */
  readonly who: BodyId;
  /** Own spots, `play.spots`. */
  readonly spots: Readonly<Record<string, Point>>;
  /** `evenSideOf` the places the play starts from; without it, right. */
  readonly evenSide?: 'left' | 'right';
}

/** Nearer to the middle than this, neither the ball nor a man is on a side. Common practice, no source. */
const middleWidth = 0.3;
/** Two leanings nearer to each other than this, in metres, are one. */
const sameGap = 0.001;

/** Where a place is at this moment, in whole millimetres. Any place has a point: what cannot be found is where the man stands. */
export function resolvePlace(place: Place, situation: Situation): Point {
  return commit(resolve(place, situation));
}

function resolve(place: Place, situation: Situation): Point {
  switch (place.kind) {
    case 'spot':
      return resolveSpot(place, situation);
    case 'own':
      return (Object.hasOwn(situation.spots, place.name) ? situation.spots[place.name] : undefined) ?? ownPosition(situation);
    case 'point':
      return place.point;
    case 'offset':
      return place.direction === 'toward' ? shortOf(resolve(place.from, situation), place.by, situation) : offsetPoint(resolve(place.from, situation), place.by, place.direction, situation);
    case 'between': {
      const a = resolveEnd(place.a, situation);
      const b = resolveEnd(place.b, situation);
      return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    }
    case 'player':
      return positionOf(place.who, situation);
    case 'beside': {
      const man = positionOf(place.who, situation);
      const from = ownPosition(situation);
      const side = from.x === man.x ? Math.sign(-man.x) || sideSign(sideOfMiddleMan(situation)) : Math.sign(from.x - man.x);
      return { x: man.x + side * armLength, y: man.y };
    }
    case 'behind':
      // A defender faces the ball: behind him is nearer to the basket.
      return besideTheLine(offsetPoint(positionOf(place.who, situation), armLength, place.who.startsWith('X') ? 'in front of' : 'behind', situation), positionOf(place.who, situation), situation);
    case 'either':
      return place.options[0] === undefined ? ownPosition(situation) : resolve(place.options[0], situation);
  }
}

/** Room for the feet inside the lines, in metres. Common practice, no source. */
const insideLines = 0.3;

/** Behind a man in the corner is no floor: there one stands an arm from him up the sideline. */
function besideTheLine(point: Point, man: Point, { court: { boundary } }: Situation): Point {
  const x = Math.max(boundary.left + insideLines, Math.min(boundary.right - insideLines, point.x));
  const manIsOut = man.x < boundary.left || man.x > boundary.right;
  if (x === point.x || manIsOut) return point;
  return { x, y: man.y + Math.sqrt(Math.max(0, armLength ** 2 - (x - man.x) ** 2)) };
}

function resolveEnd(end: Place | BodyId, situation: Situation): Point {
  return typeof end === 'string' ? positionOf(end, situation) : resolve(end, situation);
}

/** Where a body stands; a defender nothing is known of an arm from his man, towards the basket. One that is not on the floor counts as at the top. */
function positionOf(body: BodyId, situation: Situation): Point {
  const man = body.startsWith('X') ? situation.positions[body.slice(1) as BodyId] : undefined;
  const guard = man && pointTowards(man, situation.court.ring, Math.min(armLength, distance(man, situation.court.ring) / 2));
  return situation.positions[body] ?? guard ?? spotPoint(situation.court, 'top', undefined) ?? situation.court.ring;
}

function ownPosition(situation: Situation): Point {
  return positionOf(situation.who, situation);
}

function resolveSpot(place: Extract<Place, { readonly kind: 'spot' }>, situation: Situation): Point {
  const { name, side, extended = false, among } = place;
  if (!isSpotName(name)) return ownPosition(situation);
  const { court } = situation;
  if (place.where === 'open floor' && isInTheBackcourt(situation)) return spotPoint(court, 'half court', undefined) ?? ownPosition(situation);
  if (place.where === 'over') return overTheLine(place, situation);
  const needsSide = extended || takesSide(name) === 'needed';
  if (!needsSide && (side === undefined || side === 'middle' || takesSide(name) === 'never')) return spotPoint(court, name, undefined) ?? ownPosition(situation);
  const left = spotPoint(court, name, 'left', extended);
  const right = spotPoint(court, name, 'right', extended);
  if (left === undefined || right === undefined) return ownPosition(situation);
  const meant = side === undefined && among !== undefined && among.length > 1 ? sideAmong(among, left, right, situation) : sideMeant(side, left, right, situation);
  if (place.where === 'half') return onHalf(meant, situation);
  return meant === 'left' ? left : right;
}

/** Up the floor he does not come nearer to the sideline than this. Common practice, no source. */
const offTheSideline = 1;

/** `over half court`: straight up the floor, or on the side that is said; who is over it already has no way to go. */
function overTheLine({ side }: Extract<Place, { readonly kind: 'spot' }>, situation: Situation): Point {
  const own = ownPosition(situation);
  const { x, y } = spotPoint(situation.court, 'half court', side === 'left' || side === 'right' ? side : undefined)!;
  if (own.y <= y) return own;
  const most = situation.court.boundary.right - offTheSideline;
  return { x: side === undefined ? Math.max(-most, Math.min(most, own.x)) : x, y };
}

/** A man in the middle who is to be on one half stands this far from it. Common practice, no source. */
const wellOnHalf = 3.5;

function onHalf(side: 'left' | 'right', situation: Situation): Point {
  const own = ownPosition(situation);
  return sideOfFloor(own) === side ? own : { x: sideSign(side) * Math.max(Math.abs(own.x), wellOnHalf), y: own.y };
}

function isInTheBackcourt({ ball, court, positions }: Situation): boolean {
  const point = typeof ball === 'string' ? positions[ball] : ball;
  return point !== undefined && point.y > court.halfLineY;
}

/** Left or right, for any way of saying a side. The ball in the middle is on the man's own side. */
function sideMeant(side: Side | undefined, left: Point, right: Point, situation: Situation): 'left' | 'right' {
  const own = () => nearerSide(left, right, situation) ?? sideOfMiddleMan(situation);
  switch (side) {
    case 'left':
    case 'right':
      return side;
    case 'ball':
      return ballSide(situation) ?? own();
    case 'weak':
      return otherSide(ballSide(situation) ?? own());
    case 'near':
      return nearerSide(left, right, situation) ?? ballSide(situation) ?? sideOfMiddleMan(situation);
    case 'far': {
      const near = nearerSide(left, right, situation);
      return near === undefined ? sideOfMiddleMan(situation) : otherSide(near);
    }
    default:
      return own();
  }
}

function otherSide(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}

function ballSide(situation: Situation): 'left' | 'right' | undefined {
  const { ball } = situation;
  const point = typeof ball === 'string' ? situation.positions[ball] : ball;
  return point === undefined ? undefined : sideOfFloor(point);
}

function sideOfFloor(point: Point): 'left' | 'right' | undefined {
  if (Math.abs(point.x) < middleWidth) return undefined;
  return point.x < 0 ? 'left' : 'right';
}

/** The side a man is on; none in the middle. */
function nearerSide(left: Point, right: Point, situation: Situation): 'left' | 'right' | undefined {
  const from = ownPosition(situation);
  const gap = distance(from, left) - distance(from, right);
  if (Math.abs(gap) >= middleWidth) return gap < 0 ? 'left' : 'right';
  return sideOfFloor(from);
}

/**
 * Where a man in the middle goes whose side is not said: away from the ball; the ball in the middle too, to the side where fewer of his men
 * stand; else the one his number has in this play. All of them turn round in a mirror. Common practice, no source.
 */
export function sideOfMiddleMan(situation: Situation): 'left' | 'right' {
  const ball = ballSide(situation);
  if (ball !== undefined) return otherSide(ball);
  const others = OFFENCE.filter(body => body !== situation.who).map(body => situation.positions[body]).filter(point => point !== undefined);
  const more = others.reduce((sum, point) => sum + sideSign(sideOfFloor(point)), 0);
  if (more !== 0) return more < 0 ? 'right' : 'left';
  return sideOfNumber(situation.who, situation.evenSide);
}

/** -1 left, 1 right. */
export function sideSign(side: 'left' | 'right' | undefined): number {
  return side === undefined ? 0 : side === 'left' ? -1 : 1;
}

/** The nearest of some points; of two as near, the one on the side where a man in the middle goes. */
export function nearestTo(here: Point, points: readonly Point[], situation: Situation): Point | undefined {
  const least = Math.min(...points.map((point) => distance(point, here)));
  const near = points.filter((point) => distance(point, here) <= least + sameGap);
  if (near.length < 2) return near[0];
  const side = sideOfMiddleMan(situation);
  return near.find((point) => sideOfFloor(point) === side) ?? near[0];
}

/** Several who share one pair of spots: those farther left take the left one, so that their ways together are the shortest. */
function sideAmong(among: readonly BodyId[], left: Point, right: Point, situation: Situation): 'left' | 'right' {
  const men = among.map((body, index) => {
    const at = positionOf(body, situation);
    const [toLeft, toRight] = [distance(at, left), distance(at, right)];
    return { body, index, toLeft, toRight, lean: toLeft - toRight };
  });
  const sideOf = (body: BodyId): number => sideSign(sideOfNumber(body, situation.evenSide));
  // Of two whose numbers have the same side the one named first takes it, so that a mirror turns that round too.
  const firstOnHisSide = (a: { body: BodyId; index: number }, b: { body: BodyId; index: number }): number => sideOf(a.body) - sideOf(b.body) || (b.index - a.index) * sideOf(a.body);
  const order = men.sort((a, b) => {
    if (Math.abs(a.lean - b.lean) > sameGap) return a.lean - b.lean;
    if (a.lean < -sameGap) return a.toLeft - b.toLeft || firstOnHisSide(a, b);
    if (a.lean > sameGap) return b.toRight - a.toRight || firstOnHisSide(a, b);
    return firstOnHisSide(a, b);
  });
  const place = order.findIndex(({ body }) => body === situation.who);
  const middle = (order.length - 1) / 2;
  return place === middle || place < 0 ? sideMeant(undefined, left, right, situation) : place < middle ? 'left' : 'right';
}

/** Common practice, no source: as the alignments do it, 2 and 4 take the right where a pair divides, 3 and 5 the left. */
export function usualSide(body: BodyId): 'left' | 'right' {
  return sideOfNumber(body, 'right');
}

/** The side a number has in a play with the even ones on this side. */
export function sideOfNumber(body: BodyId, evenSide: 'left' | 'right' = 'right'): 'left' | 'right' {
  return Number(body.slice(-1)) % 2 === 0 ? evenSide : otherSide(evenSide);
}

/** The side of the even numbers in a play: where 2 starts, else 4, else across from 3, 5 or 1; a play turned round has it turned round. */
export function evenSideOf(homes: Readonly<Partial<Record<BodyId, Point>>>): 'left' | 'right' {
  for (const body of ['2', '4', '3', '5', '1'] as const) {
    const home = homes[body];
    const side = home && sideOfFloor(home);
    if (side !== undefined) return Number(body) % 2 === 0 ? side : otherSide(side);
  }
  return 'right';
}

/** `in front of` is towards the basket, `inside` towards the middle of the floor. */
function offsetPoint(from: Point, by: number, direction: string, situation: Situation): Point {
  const { ring } = situation.court;
  const outward = Math.sign(from.x) || sideSign(sideOfMiddleMan(situation));
  switch (direction) {
    case 'above':
      return { x: from.x, y: from.y + by };
    case 'below':
      return { x: from.x, y: from.y - by };
    case 'left of':
      return { x: from.x - by, y: from.y };
    case 'right of':
      return { x: from.x + by, y: from.y };
    case 'inside':
      return { x: from.x - outward * by, y: from.y };
    case 'outside':
      return { x: from.x + outward * by, y: from.y };
    default: {
      // At the rim itself nothing is nearer to the basket: in front of it is towards the free-throw line.
      const sign = direction === 'behind' ? -1 : 1;
      if (distance(from, ring) < 1) return { x: from.x, y: from.y + sign * by };
      return pointTowards(from, ring, sign * by);
    }
  }
}

/** So many metres of the way to a place, or all of it. */
function shortOf(goal: Point, metres: number, situation: Situation): Point {
  const own = ownPosition(situation);
  return pointTowards(own, goal, Math.min(metres, distance(own, goal)));
}

/** The point `metres` from `from` on the line to `to`, behind it where negative; `from` where the two are one. */
export function pointTowards(from: Point, to: Point, metres: number): Point {
  const gap = distance(from, to);
  return gap === 0 ? from : { x: from.x + ((to.x - from.x) * metres) / gap, y: from.y + ((to.y - from.y) * metres) / gap };
}
