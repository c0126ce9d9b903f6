// A place as a play holds it, back in the notation's words: no floor is needed, sides that depend on the game stay as they are.
import { foot } from '../play/read-places.ts';
import type { Place, Side } from '../play/play.ts';

const sideWords: Readonly<Record<Side, string>> = {
  left: 'left ', right: 'right ', middle: '', ball: 'ball-side ', weak: 'weak-side ', near: 'near ', far: 'far ',
};

/** `left wing`, `2 ft above left elbow`, `beside 5`, `left wing or left elbow`: reads back to the same place. */
export function sayWrittenPlace(place: Place): string {
  switch (place.kind) {
    case 'spot':
      // A whole side: `the weak side`.
      if (place.where === 'open floor') return 'middle';
      if (place.name === 'side' && place.side !== undefined) return `${sideWords[place.side].trim().replace('-side', '')} side`;
      return `${place.side === undefined ? '' : sideWords[place.side]}${place.name}${place.extended ? ' extended' : ''}`;
    case 'own':
      return `"${place.name}"`;
    case 'point':
      return `(${place.point.x}, ${place.point.y}) m`;
    case 'offset':
      if (isAside(place.from) && place.direction !== 'toward') return `${sayBy(place.by)} ${place.direction} and ${sayWrittenPlace(place.from)}`;
      return `${sayBy(place.by)} ${place.direction} ${sayWrittenPlace(place.from)}`;
    case 'between':
      return `between ${sayEnd(place.a)} and ${sayEnd(place.b)}`;
    case 'beside':
    case 'behind':
      return `${place.kind} ${place.who}`;
    case 'player':
      return place.who;
    case 'either':
      return place.options.map(sayWrittenPlace).join(' or ');
  }
}

/** What `and` can bring in: `2 ft above and 3 ft left of left elbow`. */
function isAside(place: Place): boolean {
  return place.kind === 'offset' && ['above', 'below', 'inside', 'outside', 'left of', 'right of'].includes(place.direction) && ['spot', 'own', 'player'].includes(place.from.kind);
}

function sayEnd(end: Place | string): string {
  return typeof end === 'string' ? end : sayWrittenPlace(end);
}

/** Metres; in feet where that is what they are the rounder number of. */
function sayBy(metres: number): string {
  const [m, ft] = [Math.round(metres * 1000) / 1000, Math.round((metres / foot) * 100) / 100];
  return String(ft).length < String(m).length ? `${ft} ft` : `${m} m`;
}
