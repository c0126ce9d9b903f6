import { mirrorPoint } from '../court/mirror.ts';
import type { BodyId, Direction, Place, Side } from './play.ts';

/** The same place with left and right exchanged. */
export function mirrorPlace(place: Place): Place {
  switch (place.kind) {
    case 'spot':
      return place.side === undefined ? place : { ...place, side: mirrorSide(place.side) };
    case 'point':
      return { ...place, point: mirrorPoint(place.point) };
    case 'offset':
      return { ...place, direction: mirrorDirection(place.direction), from: mirrorPlace(place.from) };
    case 'between':
      return { ...place, a: mirrorEnd(place.a), b: mirrorEnd(place.b) };
    case 'either':
      return { ...place, options: place.options.map(mirrorPlace) };
    default:
      return place;
  }
}

function mirrorEnd(end: Place | BodyId): Place | BodyId {
  return typeof end === 'string' ? end : mirrorPlace(end);
}

function mirrorSide(side: Side): Side {
  if (side === 'left') return 'right';
  return side === 'right' ? 'left' : side;
}

function mirrorDirection(direction: Direction): Direction {
  if (direction === 'left of') return 'right of';
  return direction === 'right of' ? 'left of' : direction;
}
