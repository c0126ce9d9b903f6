import type { Court } from './court.ts';
import type { Point } from './point.ts';
import { mirrorPoint } from './mirror.ts';

export const spotNames = [
  'rim', 'lane', 'lane line', 'block', 'low post', 'mid-post', 'high post', 'elbow', 'nail', 'free-throw line', 'dunker spot',
  'short corner', 'corner', 'wing', 'slot', 'top', 'side', 'hash', 'half court', 'backcourt', 'backcourt top', 'backcourt wing', 'backcourt elbow', 'backcourt block', 'backcourt corner', 'far free-throw line', 'sideline',
  'baseline', 'far sideline', 'far baseline',
] as const;
/** The canonical words of the notation. */
export type SpotName = (typeof spotNames)[number];

export function isSpotName(name: string): name is SpotName {
  return (spotNames as readonly string[]).includes(name);
}

export type Side = 'left' | 'right' | 'middle';

/** What a spot asks of a side: `never` has none, `optional` stands without one, `needed` is nowhere without left or right. */
export type TakesSide = 'never' | 'optional' | 'needed';

interface SpotKind {
  readonly takesSide: TakesSide;
  /** A throw-in place: the body stands outside the lines. */
  readonly outOfBounds: boolean;
  /** x is written for the right; the left is its mirror. `outward` is 1 on a side and 0 in the middle. */
  readonly place: (court: Court, outward: 0 | 1) => Point;
}

// Room for a shooter's feet behind the line; common practice, no source.
const behindLine = 0.4;
// A body's half breadth clear of the lane line, and a thrower's place behind the boundary; common practice, no source.
const besideLane = 0.35;
export const outsideCourt = 0.5;
// From the baseline: the block between the first lane mark and the neutral zone, between the books (FIBA 2.60-3.00 m, others 7-8 ft; from memory).
const blockFromBaseline = 2.4;
const cornerFromBaseline = 1.2;
// Where no three-point line is drawn, children space about this far from the ring; common practice, no source.
const perimeterWithoutLine = 5.6;

/** How far from the ring the spots of the perimeter lie: behind the arc, with room for the feet. */
function perimeterRadius(court: Court): number {
  return court.three === undefined ? perimeterWithoutLine : court.three.radius + behindLine;
}

function besideLaneX(court: Court): number {
  return court.lane.right + besideLane;
}

function blockY(court: Court): number {
  return court.baselineY + blockFromBaseline;
}

/** Behind the straight part of the line, in the middle of the strip where the strip is narrow. */
function cornerX(court: Court): number {
  const { right } = court.boundary;
  if (court.three === undefined) return Math.min(perimeterWithoutLine, right - behindLine);
  return Math.min(court.three.corner + behindLine + 0.05, (court.three.corner + right) / 2);
}

/** On the free-throw line extended, behind the arc. */
function wing(court: Court): Point {
  const radius = perimeterRadius(court);
  const y = court.freeThrowLineY;
  return { x: Math.sqrt(Math.max(0, radius * radius - y * y)), y };
}

/** The two slots part the way from wing to wing into three equal gaps. */
function slot(court: Court): Point {
  const radius = perimeterRadius(court);
  const place = wing(court);
  const angle = Math.atan2(place.x, place.y) / 3;
  return { x: radius * Math.sin(angle), y: radius * Math.cos(angle) };
}

function sidelineX(court: Court): number {
  return court.boundary.right + outsideCourt;
}

/** The halves are alike: the half line is the mirror. */
function atTheOtherEnd(court: Court, { x, y }: Point): Point {
  return { x, y: 2 * court.halfLineY - y };
}

const inTheMiddle = (y: number): Point => ({ x: 0, y });

const kinds: Readonly<Record<SpotName, SpotKind>> = {
  // A body stands in front of the ring, not under it.
  rim: { takesSide: 'optional', outOfBounds: false, place: (_, outward) => ({ x: outward * 0.7, y: outward === 0 ? 0.6 : 0.3 }) },
  lane: { takesSide: 'optional', outOfBounds: false, place: (court, outward) => ({ x: (outward * court.lane.right) / 2, y: court.freeThrowLineY / 2 }) },
  'lane line': { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: besideLaneX(court), y: court.freeThrowLineY / 2 }) },
  block: { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: besideLaneX(court), y: blockY(court) }) },
  'low post': { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: besideLaneX(court), y: blockY(court) + 0.5 }) },
  'mid-post': { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: besideLaneX(court), y: (blockY(court) + court.freeThrowLineY) / 2 }) },
  'high post': { takesSide: 'optional', outOfBounds: false, place: (court, outward) => ({ x: (outward * court.lane.right) / 2, y: court.freeThrowLineY + 0.7 }) },
  elbow: { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: besideLaneX(court), y: court.freeThrowLineY }) },
  // The middle of the free-throw line, the toes behind it, so that no three seconds run.
  nail: { takesSide: 'never', outOfBounds: false, place: (court) => inTheMiddle(court.freeThrowLineY + 0.15) },
  'free-throw line': { takesSide: 'optional', outOfBounds: false, place: (court, outward) => ({ x: (outward * court.lane.right) / 2, y: court.freeThrowLineY + 0.15 }) },
  'dunker spot': { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: court.lane.right + 0.6, y: court.baselineY + 0.9 }) },
  'short corner': { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: (court.lane.right + cornerX(court)) / 2, y: court.baselineY + 0.9 }) },
  corner: { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: cornerX(court), y: court.baselineY + cornerFromBaseline }) },
  wing: { takesSide: 'needed', outOfBounds: false, place: wing },
  slot: { takesSide: 'needed', outOfBounds: false, place: slot },
  top: { takesSide: 'never', outOfBounds: false, place: (court) => inTheMiddle(perimeterRadius(court)) },
  side: { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: court.boundary.right - 0.6, y: (court.freeThrowLineY + court.throwInMarkY) / 2 }) },
  hash: { takesSide: 'needed', outOfBounds: false, place: (court) => ({ x: court.boundary.right - 0.6, y: court.throwInMarkY }) },
  // On the front side of the line, so that nobody stands in the backcourt by it.
  'half court': { takesSide: 'optional', outOfBounds: false, place: (court, outward) => ({ x: outward * 4, y: court.halfLineY - 0.5 }) },
  backcourt: { takesSide: 'optional', outOfBounds: false, place: (court, outward) => ({ x: outward * 4, y: court.halfLineY + 3 }) },
  // What a press is broken from: as on the front court, seen from the other end.
  'backcourt top': { takesSide: 'never', outOfBounds: false, place: (court) => atTheOtherEnd(court, inTheMiddle(perimeterRadius(court))) },
  'backcourt wing': { takesSide: 'needed', outOfBounds: false, place: (court) => atTheOtherEnd(court, wing(court)) },
  'backcourt elbow': { takesSide: 'needed', outOfBounds: false, place: (court) => atTheOtherEnd(court, { x: besideLaneX(court), y: court.freeThrowLineY }) },
  'backcourt block': { takesSide: 'needed', outOfBounds: false, place: (court) => atTheOtherEnd(court, { x: besideLaneX(court), y: blockY(court) }) },
  'backcourt corner': { takesSide: 'needed', outOfBounds: false, place: (court) => atTheOtherEnd(court, { x: cornerX(court), y: court.baselineY + cornerFromBaseline }) },
  'far free-throw line': { takesSide: 'optional', outOfBounds: false, place: (court, outward) => ({ x: (outward * court.lane.right) / 2, y: court.farFreeThrowLineY }) },
  sideline: { takesSide: 'needed', outOfBounds: true, place: (court) => ({ x: sidelineX(court), y: court.throwInMarkY }) },
  baseline: { takesSide: 'optional', outOfBounds: true, place: (court, outward) => ({ x: outward * (court.lane.right + 1), y: court.baselineY - outsideCourt }) },
  'far sideline': { takesSide: 'needed', outOfBounds: true, place: (court) => ({ x: sidelineX(court), y: court.farFreeThrowLineY }) },
  'far baseline': { takesSide: 'optional', outOfBounds: true, place: (court, outward) => ({ x: outward * (court.lane.right + 1), y: court.farBaselineY + outsideCourt }) },
};

export function takesSide(name: SpotName): TakesSide {
  return kinds[name].takesSide;
}

/** Whether the spot is a throw-in place, outside the lines. */
export function isThrowInPlace(name: SpotName): boolean {
  return kinds[name].outOfBounds;
}

/** "Extended" is said of the free-throw line and the elbow: the same height, out behind the arc, left or right. */
export function takesExtended(name: SpotName): boolean {
  return name === 'free-throw line' || name === 'elbow';
}

/**
 * Where a spot is on this court, in metres; `undefined` where the words name no place (a wing without a side, a left top, an
 * extended block). `extended` is for the free-throw line and the elbow.
 */
export function spotPoint(court: Court, name: SpotName, side: Side | undefined, extended = false): Point | undefined {
  const kind = kinds[name];
  const sideways = side === 'left' || side === 'right';
  if (extended) return takesExtended(name) && sideways ? onSide(wing(court), side) : undefined;
  if (kind.takesSide === 'needed' && !sideways) return undefined;
  if (kind.takesSide === 'never' && sideways) return undefined;
  return sideways ? onSide(kind.place(court, 1), side) : kind.place(court, 0);
}

function onSide(right: Point, side: 'left' | 'right'): Point {
  return side === 'right' ? right : mirrorPoint(right);
}

/** A spot as the notation writes it, without an article: "left wing", "nail", "left free-throw line extended". */
export function spotLabel(name: SpotName, side?: Side, extended = false): string {
  const words = extended ? `${name} extended` : name;
  return side === undefined || (side === 'middle' && kinds[name].takesSide !== 'optional') ? words : `${side} ${words}`;
}

/** A spot as one says it in a sentence: "left wing", "the nail". */
export function speakSpot(name: SpotName, side?: Side, extended = false): string {
  const label = spotLabel(name, side, extended);
  if (side === 'left' || side === 'right') return label;
  return name === 'half court' ? label : `the ${label}`;
}

export interface Spot {
  readonly name: SpotName;
  /** `undefined` for a spot in the middle of the floor. */
  readonly side: 'left' | 'right' | undefined;
  readonly point: Point;
  /** As the notation writes it. */
  readonly label: string;
}

/** Every spot of a court, once a side; those in the middle have no side. */
export function allSpots(court: Court): readonly Spot[] {
  return spotNames.flatMap((name) => sidesOf(name).map((side) => spotOf(court, name, side)));
}

function sidesOf(name: SpotName): readonly ('left' | 'right' | undefined)[] {
  if (kinds[name].takesSide === 'never') return [undefined];
  return kinds[name].takesSide === 'needed' ? ['left', 'right'] : [undefined, 'left', 'right'];
}

function spotOf(court: Court, name: SpotName, side: 'left' | 'right' | undefined): Spot {
  const place = kinds[name].place(court, side === undefined ? 0 : 1);
  return { name, side, point: side === undefined ? place : onSide(place, side), label: spotLabel(name, side) };
}
