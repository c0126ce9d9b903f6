import type { Court } from './court.ts';
import type { Point } from './point.ts';
import { mirrorPoint } from './mirror.ts';
import type { Side, SpotName } from './spots.ts';
import { spotPoint } from './spots.ts';

export type PlayerNumber = 1 | 2 | 3 | 4 | 5;
export const playerNumbers: readonly PlayerNumber[] = [1, 2, 3, 4, 5];

/** A place of an alignment: a spot, and at most a few steps from it. */
export interface AlignmentPlace {
  readonly spot: SpotName;
  readonly side?: 'left' | 'right';
  /** Metres from the spot, x to the right, y towards half court. */
  readonly offset?: Point;
}

export interface Alignment {
  readonly name: string;
  /** Who stands where with a live ball, the ball with 1. */
  readonly places: Readonly<Record<PlayerNumber, AlignmentPlace>>;
  /**
   * Where the other four stand when one of the five throws the ball in: they take these places in the order of their numbers.
   * `undefined`: everyone but the thrower keeps his own place.
   */
  readonly throwIn?: readonly [AlignmentPlace, AlignmentPlace, AlignmentPlace, AlignmentPlace];
}

function at(spot: SpotName, side?: 'left' | 'right', offset?: Point): AlignmentPlace {
  return { spot, ...(side && { side }), ...(offset && { offset }) };
}

// Four abreast, the two in the middle in front of the lane and none inside it.
const acrossFreeThrowLine = (x: number): AlignmentPlace => at('nail', undefined, { x, y: 0.15 });
// One behind the other along the lane line, an arm apart, from the baseline up.
const upLaneLine = (fromBlock: number): AlignmentPlace => at('block', 'right', { x: 0, y: fromBlock });
const stackGap = 1.1;

/** Places and numbers are common practice, no source: 2 and 4 take the right where a pair divides, 3 and 5 the left, unless said. */
const list: readonly Alignment[] = [
  {
    name: 'box',
    places: { 1: at('top'), 2: at('block', 'right'), 3: at('block', 'left'), 4: at('elbow', 'right'), 5: at('elbow', 'left') },
    throwIn: [at('elbow', 'right'), at('elbow', 'left'), at('block', 'right'), at('block', 'left')],
  },
  {
    name: 'horns',
    places: { 1: at('top'), 2: at('corner', 'right'), 3: at('corner', 'left'), 4: at('elbow', 'right'), 5: at('elbow', 'left') },
  },
  {
    // Two stacks, a big above a guard on each side: the big screens down, the guard comes off him.
    name: 'stack',
    places: { 1: at('top'), 2: at('block', 'right'), 3: at('block', 'left'), 4: at('mid-post', 'right'), 5: at('mid-post', 'left') },
    throwIn: [upLaneLine(3 * stackGap), upLaneLine(2 * stackGap), upLaneLine(stackGap), upLaneLine(0)],
  },
  {
    // The man at the rim has to leave before three seconds are counted.
    name: 'diamond',
    places: { 1: at('top'), 2: at('mid-post', 'right'), 3: at('mid-post', 'left'), 4: at('rim'), 5: at('high post') },
    throwIn: [at('high post'), at('mid-post', 'right'), at('mid-post', 'left'), at('rim')],
  },
  {
    name: 'line',
    places: {
      1: at('top'), 2: acrossFreeThrowLine(2.7), 3: acrossFreeThrowLine(-2.7), 4: acrossFreeThrowLine(0.9), 5: acrossFreeThrowLine(-0.9),
    },
    throwIn: [acrossFreeThrowLine(2.7), acrossFreeThrowLine(0.9), acrossFreeThrowLine(-0.9), acrossFreeThrowLine(-2.7)],
  },
  {
    name: '1-4 high',
    places: { 1: at('top'), 2: at('wing', 'right'), 3: at('wing', 'left'), 4: at('elbow', 'right'), 5: at('elbow', 'left') },
  },
  {
    name: '1-4 low',
    places: { 1: at('top'), 2: at('corner', 'right'), 3: at('corner', 'left'), 4: at('block', 'right'), 5: at('block', 'left') },
  },
  {
    name: '4-out 1-in',
    places: { 1: at('slot', 'left'), 2: at('slot', 'right'), 3: at('wing', 'left'), 4: at('wing', 'right'), 5: at('block', 'left') },
  },
  {
    name: '5-out',
    places: { 1: at('top'), 2: at('wing', 'right'), 3: at('wing', 'left'), 4: at('corner', 'right'), 5: at('corner', 'left') },
  },
  {
    name: '3-out 2-in',
    places: { 1: at('top'), 2: at('wing', 'right'), 3: at('wing', 'left'), 4: at('block', 'right'), 5: at('block', 'left') },
  },
  {
    name: '1-3-1',
    places: { 1: at('top'), 2: at('wing', 'right'), 3: at('wing', 'left'), 4: at('nail'), 5: at('block', 'right') },
  },
  {
    name: '2-3 high',
    places: { 1: at('slot', 'left'), 2: at('slot', 'right'), 3: at('wing', 'left'), 4: at('wing', 'right'), 5: at('high post') },
  },
  {
    name: '2-1-2',
    places: { 1: at('slot', 'left'), 2: at('slot', 'right'), 3: at('corner', 'left'), 4: at('corner', 'right'), 5: at('high post') },
  },
  {
    // To keep the ball: the floor as wide as it goes, the lane empty for a back cut.
    name: 'four corners',
    places: { 1: at('top'), 2: at('hash', 'right'), 3: at('hash', 'left'), 4: at('corner', 'right'), 5: at('corner', 'left') },
  },
  {
    name: 'spread',
    places: { 1: at('top'), 2: at('corner', 'right'), 3: at('corner', 'left'), 4: at('wing', 'left'), 5: at('elbow', 'right') },
  },
];

const byName: ReadonlyMap<string, Alignment> = new Map(list.map((entry) => [entry.name, entry]));

/** Every named alignment's words, as the notation writes them. */
export const alignmentNames: readonly string[] = list.map((entry) => entry.name);

// Shorter words coaches use for the same places.
const otherNames: ReadonlyMap<string, string> = new Map([['1-4', '1-4 high'], ['2-3', '2-3 high'], ['3-2', '3-out 2-in'], ['4-1', '4-out 1-in']]);

/** The alignment of a name, upper and lower case alike; `undefined` where there is none. `1-4` is the high one. */
export function alignment(name: string): Alignment | undefined {
  const said = name.trim().toLowerCase();
  return byName.get(otherNames.get(said) ?? said);
}

export interface AlignmentOptions {
  readonly mirrored?: boolean;
  /** The man who throws the ball in: he gets no place here. */
  readonly thrower?: PlayerNumber;
}

/** Who stands at which place; the thrower is left out. */
export function alignmentPlaces(entry: Alignment, thrower?: PlayerNumber): ReadonlyMap<PlayerNumber, AlignmentPlace> {
  const standing = playerNumbers.filter((player) => player !== thrower);
  const forms = thrower === undefined ? undefined : entry.throwIn;
  return new Map(standing.map((player, index) => [player, forms?.[index] ?? entry.places[player]]));
}

/** Where everyone stands on this court, in metres; `undefined` where the name is none of an alignment. */
export function alignmentPoints(court: Court, name: string, options: AlignmentOptions = {}): ReadonlyMap<PlayerNumber, Point> | undefined {
  const entry = alignment(name);
  if (entry === undefined) return undefined;
  const points = new Map<PlayerNumber, Point>();
  for (const [player, place] of alignmentPlaces(entry, options.thrower)) {
    const point = placePoint(court, place);
    points.set(player, options.mirrored ? mirrorPoint(point) : point);
  }
  return points;
}

/** Where a place of an alignment is on this court. */
export function placePoint(court: Court, place: AlignmentPlace): Point {
  const spot = spotPoint(court, place.spot, place.side) ?? court.ring;
  return { x: spot.x + (place.offset?.x ?? 0), y: spot.y + (place.offset?.y ?? 0) };
}

/** Men one behind the other along a lane line, from the baseline up, as `from stack on right lane line: 2, 3, 4, 5` asks. */
export function stackAlongLaneLine(court: Court, side: Exclude<Side, 'middle'>, men: number): readonly Point[] {
  return Array.from({ length: men }, (_, index) => {
    const right = placePoint(court, upLaneLine(index * stackGap));
    return side === 'right' ? right : mirrorPoint(right);
  });
}
