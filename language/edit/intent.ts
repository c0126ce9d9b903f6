import type { Point } from '../court/point.ts';
import type { BlockEdit } from '../checks/finding.ts';
import type { ActionId, PlayerNumber } from '../play/play.ts';

/** What somebody does to a play on the floor or on a lane. Points in metres, times in seconds. */
export type Intent =
  | { readonly kind: 'move-start'; readonly player: PlayerNumber; readonly to: Point }
  | { readonly kind: 'move-end'; readonly action: ActionId; readonly to: Point }
  | { readonly kind: 'set-wait'; readonly action: ActionId; readonly seconds: number };

/** Edits of the block's text that do it, or why it cannot be done, in a sentence. */
export type Outcome = { readonly edits: readonly BlockEdit[] } | { readonly refused: string };
