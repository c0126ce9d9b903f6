/** Where a move leads when its line says nothing, corners included; the ends themselves are `play/`'s, so that text and time agree. */
import type { Point } from '../court/point.ts';
import type { Court } from '../court/court.ts';
import { spotPoint } from '../court/spots.ts';
import { endOf } from '../play/default-ends.ts';
import type { Dribble, Move } from '../play/play.ts';
import type { Branch } from './branch.ts';
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
  const to = endOf(action, situationOf(branch, standing));
  if (action.kind !== 'move' || action.via.length > 0) return { via: [], to };
  if (action.style === 'v-cut') return { via: [{ x: own.x * (1 - vCutDepth), y: own.y * (1 - vCutDepth) }], to };
  const elbow = action.style === 'l-cut' ? spotPoint(court, 'elbow', leaning(own, to) ?? 'right') : undefined;
  return { via: elbow === undefined ? [] : [elbow], to };
}

/** In front of the ring, or beside it for one who comes from the side. */
export function atRim(court: Court, from: Point): Point {
  const side = Math.abs(from.x) > 1.5 ? leaning(from) : undefined;
  return spotPoint(court, 'rim', side) ?? court.ring;
}
