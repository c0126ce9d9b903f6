/** Where a move leads when its line says nothing, corners included; the ends themselves are `play/`'s, so that text and time agree. */
import type { Point } from '../court/point.ts';
import { distance } from '../court/point.ts';
import type { Court } from '../court/court.ts';
import { spotPoint } from '../court/spots.ts';
import { endOf } from '../play/default-ends.ts';
import type { Dribble, Move } from '../play/play.ts';
import type { Situation } from '../play/places.ts';
import { sideOfMiddleMan } from '../play/places.ts';
import type { Body, Branch } from './branch.ts';
import type { Standing } from './where.ts';
import { leaning, situationOf } from './where.ts';

export interface EndOfMove {
  readonly via: readonly Point[];
  readonly to: Point;
}

/** A v-cut takes his man towards the basket first; common practice, no source. */
const vCutDepth = 0.4;

export function endOfMove(branch: Branch, action: Move | Dribble, standing: Standing): EndOfMove {
  const { court } = branch.scene;
  const { own } = standing;
  if (action.kind === 'dribble' && action.style === 'drive' && action.to === undefined && action.at === undefined) return { via: [], to: atRim(court, own) };
  const situation = situationOf(branch, standing);
  const to = besideTheDriver(branch, action, standing, endOf(action, situation));
  return { via: cornersOfCut(situation, action, own, to), to };
}

/** Where a v-cut or an l-cut turns on its way, also to a place that is written; nothing where the coach wrote the corner himself. */
export function cornersOfCut(situation: Situation, action: Move | Dribble, own: Point, to: Point): readonly Point[] {
  if (action.kind !== 'move' || action.via.length > 0) return [];
  const { court } = situation;
  if (action.style === 'v-cut') return [{ x: own.x * (1 - vCutDepth), y: own.y * (1 - vCutDepth) }];
  const elbow = action.style === 'l-cut' ? spotPoint(court, 'elbow', leaning(own, to) ?? sideOfMiddleMan(situation)) : undefined;
  return elbow === undefined || distance(own, elbow) < 0.3 ? [] : [elbow];
}

/** A roll whose man drives to the ring ends on the other side of it; common practice, no source. */
function besideTheDriver(branch: Branch, action: Move | Dribble, standing: Standing, to: Point): Point {
  const { court } = branch.scene;
  const { who, own } = standing;
  if (action.kind !== 'move' || action.to !== undefined || !rollsIn.has(action.style) || distance(to, court.ring) > atRing) return to;
  const driver = [...branch.bodies.values()].find((body) => body.who !== who && distance(body.place, court.ring) < atRing && drove(body));
  if (driver === undefined) return to;
  const side = leaning({ x: own.x - driver.stretches.at(-1)!.segment.path[0]!.x, y: 0 }, own) ?? sideOfMiddleMan(situationOf(branch, standing));
  return spotPoint(court, 'dunker spot', side) ?? to;
}

const rollsIn: ReadonlySet<string> = new Set(['roll', 'slip', 'dive']);
const atRing = 1.2;

function drove({ stretches }: Body): boolean {
  return stretches.at(-1)?.segment.withBall === true;
}

/** In front of the ring, or beside it for one who comes from the side. */
function atRim(court: Court, from: Point): Point {
  const side = Math.abs(from.x) > 1.5 ? leaning(from) : undefined;
  return spotPoint(court, 'rim', side) ?? court.ring;
}
