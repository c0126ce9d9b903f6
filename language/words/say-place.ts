// From a point on the floor back to a coach's words. The law: read on the same court, the words give the point they stand for
// (`wordsFor(...).point`), at most a hand away; and a point that words already name exactly is not moved by saying it again.
import type { Court } from '../court/court.ts';
import { distance, type Point } from '../court/point.ts';
import { metresPerFoot } from '../court/sources.ts';
import { allSpots, type Spot } from '../court/spots.ts';
import { message, type Words } from '../message/message.ts';
import type { Direction, Place } from '../play/play.ts';

export interface PlaceWords {
  readonly text: string;
  /** The same place as the notation reads it. */
  readonly place: Place;
  /** Where the words put a body: at most `hand` from the point asked for, or a tenth of a metre where only numbers fit. */
  readonly point: Point;
}

/** How a coach says places himself: the unit he paces off in, and the spots he has given names of his own. */
export interface OwnWords {
  readonly unit?: UnitName;
  readonly spots?: readonly OwnSpot[];
}

export type UnitName = 'm' | 'ft';

export interface OwnSpot {
  /** As he writes it. */
  readonly name: string;
  /** As a place has it. */
  readonly key: string;
  readonly point: Point;
}

/** Nobody sees a player stand this much off: two hands' breadths. */
const hand = 0.2;
/** A way of more than this from a spot is no longer said from it, nor two ways to a place that is farther off. */
const farthest = 2.5;
const farthestTwoWays = 3.5;

interface Step {
  readonly direction: Direction;
  readonly along: (spot: Point) => Point;
}

const up: Step = { direction: 'above', along: () => ({ x: 0, y: 1 }) };
const down: Step = { direction: 'below', along: () => ({ x: 0, y: -1 }) };
const left: Step = { direction: 'left of', along: () => ({ x: -1, y: 0 }) };
const right: Step = { direction: 'right of', along: () => ({ x: 1, y: 0 }) };
const steps = [up, down, left, right];

/** The words for a place: a spot's name where one is within a hand, `2 ft above left elbow`, else `(4.2, 3) m`. */
export function sayPlace(court: Court, point: Point, own?: OwnWords): string {
  return wordsFor(court, point, own).text;
}

/** To be read, not to be written: where no few words fit, the spot that is nearest. */
export function sayAbout(court: Court, point: Point): Words {
  const { text, place } = wordsFor(court, point);
  const nearest = place.kind === 'point' || isTwoWays(place) ? least(allSpots(court).filter(isUsual), (spot) => distance(spot.point, point)) : undefined;
  return nearest === undefined ? text : message('near {spot}', { spot: nearest.item.label });
}

/** To choose by: `above right elbow`, without how far. */
export function sayRoughly(court: Court, point: Point): string {
  const { text, place } = wordsFor(court, point);
  return place.kind === 'offset' ? text.replace(/[\d.]+ (?:m|ft) /g, '').replace(' of and', ' and') : text;
}

export function wordsFor(court: Court, point: Point, own: OwnWords = {}): PlaceWords {
  const unit = units[own.unit ?? unitOf(court)];
  return fewWords(court, unit, point, own) ?? twoWays(court, unit, point, own) ?? inNumbers(unit, point);
}

/** A spot's name, or one way from it. */
function fewWords(court: Court, unit: Unit, point: Point, { spots: ownSpots = [] }: OwnWords): PlaceWords | undefined {
  const spots = allSpots(court).filter((spot) => isUsual(spot) || distance(spot.point, point) < 0.002);
  const ownName = ownSpot(ownSpots, point);
  const spotName = namedSpot(spots, point);
  // His own name goes before ours, unless he means a spot to the millimetre.
  const named = ownName !== undefined && (spotName === undefined || !isThere(spotName, point)) ? ownName : spotName;
  const beside = besideSpot(unit, spots, point);
  if (named !== undefined && beside !== undefined && isThere(beside, point) && !isThere(named, point)) return beside;
  return named ?? beside;
}

/** `2 ft above and 3 ft left of left elbow`: from the nearest spot whence few words for it do not lead elsewhere. */
function twoWays(court: Court, unit: Unit, point: Point, own: OwnWords): PlaceWords | undefined {
  const inReach = allSpots(court).filter((spot) => isUsual(spot) && distance(spot.point, point) <= farthestTwoWays);
  for (const spot of inReach.toSorted((a, b) => distance(a.point, point) - distance(b.point, point))) {
    const [across, along] = [paced(point.x - spot.point.x, unit), paced(point.y - spot.point.y, unit)];
    const there = { x: spot.point.x + across.signed, y: spot.point.y + along.signed };
    if (distance(there, point) > hand || fewWords(court, unit, there, own) !== undefined) continue;
    const [upward, aside] = [along.signed > 0 ? up : down, across.signed > 0 ? right : left];
    return {
      text: `${along.printed} ${unit.name} ${upward.direction} and ${across.printed} ${unit.name} ${aside.direction} ${spot.label}`,
      place: { kind: 'offset', by: along.by, direction: upward.direction, from: { kind: 'offset', by: across.by, direction: aside.direction, from: placeOf(spot) } },
      point: there,
    };
  }
  return undefined;
}

const isTwoWays = (place: Place): boolean => place.kind === 'offset' && place.from.kind === 'offset';

/** Half a line or half a lane is a place one can write, but hardly one a coach sends a man to. */
function isUsual({ name, side }: Spot): boolean {
  if (name === 'lane line' || name === 'side') return false;
  return side === undefined || !['lane', 'free-throw line', 'rim', 'half court', 'baseline'].includes(name);
}

function isThere(words: PlaceWords, point: Point): boolean {
  return distance(words.point, point) < 0.002;
}

function namedSpot(spots: readonly Spot[], point: Point): PlaceWords | undefined {
  const nearest = least(spots, (spot) => distance(spot.point, point));
  if (nearest === undefined || nearest.cost > hand) return undefined;
  const spot = nearest.item;
  return { text: spot.label, place: placeOf(spot), point: spot.point };
}

function ownSpot(spots: readonly OwnSpot[], point: Point): PlaceWords | undefined {
  const nearest = least(spots, (spot) => distance(spot.point, point));
  if (nearest === undefined || nearest.cost > hand) return undefined;
  const { name, key, point: there } = nearest.item;
  return { text: `"${name}"`, place: { kind: 'own', name: key }, point: there };
}

function besideSpot(unit: Unit, spots: readonly Spot[], point: Point): PlaceWords | undefined {
  const inReach = spots.filter((spot) => distance(spot.point, point) <= farthest + hand);
  const candidates = inReach.flatMap((spot) => steps.map((step) => offsetWords(spot, step, point, unit))).filter((words) => words !== undefined);
  const exact = candidates.filter((words) => isThere(words, point));
  // The nearer the spot the plainer the words; a hand more or less does not matter.
  return least(exact.length > 0 ? exact : candidates, (words) => words.by)?.item;
}

interface Unit {
  readonly metres: number;
  readonly step: number;
  readonly name: UnitName;
}

/** Half a foot and a tenth of a metre are what a coach would still pace off. */
const units: Readonly<Record<UnitName, Unit>> = { m: { metres: 1, step: 0.1, name: 'm' }, ft: { metres: metresPerFoot, step: 0.5, name: 'ft' } };

/** Each rule set's readers measure in its own unit. */
const unitOf = ({ rules }: Court): UnitName => (rules === 'fiba' || rules === 'mini' ? 'm' : 'ft');

function offsetWords(spot: Spot, step: Step, point: Point, unit: Unit): (PlaceWords & { readonly by: number }) | undefined {
  const way = step.along(spot.point);
  const { printed, by, signed } = paced((point.x - spot.point.x) * way.x + (point.y - spot.point.y) * way.y, unit);
  if (by > farthest || signed < 0) return undefined;
  const there = { x: spot.point.x + way.x * by, y: spot.point.y + way.y * by };
  if (distance(there, point) > hand) return undefined;
  return {
    text: `${printed} ${unit.name} ${step.direction} ${spot.label}`,
    place: { kind: 'offset', by, direction: step.direction, from: placeOf(spot) },
    point: there,
    by,
  };
}

/** A way as it is paced off. Nearer than a hand one would say the spot itself. */
function paced(gap: number, { metres, step }: Unit): { readonly printed: number; readonly by: number; readonly signed: number } {
  const fewest = Math.floor(hand / metres / step + 1e-9) + 1;
  const count = Math.max(fewest, Math.round(Math.abs(gap) / metres / step));
  const printed = Number((count * step).toFixed(1));
  const by = printed * metres;
  return { printed, by, signed: gap < 0 ? -by : by };
}

function inNumbers({ metres, step, name }: Unit, point: Point): PlaceWords {
  const [x, y] = [point.x, point.y].map((at) => Number((Math.round(at / metres / step) * step).toFixed(1)) + 0) as [number, number];
  // The notation reads whole millimetres.
  const there = { x: Math.round(x * metres * 1000) / 1000, y: Math.round(y * metres * 1000) / 1000 };
  return { text: `(${x}, ${y}) ${name}`, place: { kind: 'point', point: there }, point: there };
}

function placeOf(spot: Spot): Place {
  return spot.side === undefined ? { kind: 'spot', name: spot.name } : { kind: 'spot', name: spot.name, side: spot.side };
}

/** The first of the cheapest. */
function least<T>(items: readonly T[], cost: (item: T) => number): { readonly item: T; readonly cost: number } | undefined {
  let best: { item: T; cost: number } | undefined;
  for (const item of items) {
    const asked = cost(item);
    if (best === undefined || asked < best.cost - 1e-9) best = { item, cost: asked };
  }
  return best;
}
