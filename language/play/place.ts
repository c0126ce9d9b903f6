// CONTRACT. A place in a coach's words: plain data, part of a play.
import type { BodyId } from '../court/bodies.ts';
import type { Point } from '../court/point.ts';

/** A place as written. Sides that depend on the game (`ball-side`, `near`, an omitted side) are worked out when its line starts. */
export type Place =
  | { readonly kind: 'spot'; readonly name: string; readonly side?: Side; readonly extended?: boolean; /** `2 and 3 to the wings`: they share the two sides out. */ readonly among?: readonly BodyId[]; readonly where?: WhereOnTheFloor }
  | { readonly kind: 'own'; readonly name: string }
  | { readonly kind: 'point'; readonly point: Point }
  | { readonly kind: 'offset'; readonly by: number; readonly direction: Direction; readonly from: Place }
  | { readonly kind: 'between'; readonly a: Place | BodyId; readonly b: Place | BodyId }
  | { readonly kind: 'beside' | 'behind' | 'player'; readonly who: BodyId }
  | { readonly kind: 'either'; readonly options: readonly Place[] };
/** `half`: on that half of the floor, where he stands if he is on it. `open floor`: with the ball behind half court, by half court; else as everywhere. */
/** `half`: where he is, if he is on that side. `open floor`: of that, not of the key. `over`: straight on over the line from where he is. */
export type WhereOnTheFloor = 'half' | 'open floor' | 'over';
export type Side = 'left' | 'right' | 'middle' | 'ball' | 'weak' | 'near' | 'far';
/** `toward`: from where he stands himself, on the way there. */
export type Direction = 'toward' | 'above' | 'below' | 'left of' | 'right of' | 'inside' | 'outside' | 'in front of' | 'behind';
