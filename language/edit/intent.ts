import type { Point } from '../court/point.ts';
import type { Message, Words } from '../message/message.ts';
import type { BlockEdit } from '../checks/finding.ts';
import type { ActionId, PlayerNumber, StepKey } from '../play/play.ts';

/** What somebody does to a play on the floor or on a lane. Points in metres, times in seconds. */
export type Intent =
  | { readonly kind: 'move-start'; readonly player: PlayerNumber; readonly to: Point }
  | { readonly kind: 'move-end'; readonly action: ActionId; readonly to: Point }
  | { readonly kind: 'move-screen'; readonly action: ActionId; readonly to: Point }
  /** `via` counts from 0 in the order they are passed. */
  | { readonly kind: 'move-via'; readonly action: ActionId; readonly via: number; readonly to: Point }
  | { readonly kind: 'add-via'; readonly action: ActionId; readonly to: Point }
  /** A way is taken hold of at `from` and drawn to `to`: the spot it passes there is moved, or a new one written. */
  | { readonly kind: 'bend'; readonly action: ActionId; readonly from: Point; readonly to: Point }
  /** The wait before an action, whole. */
  | { readonly kind: 'set-wait'; readonly action: ActionId; readonly seconds: number }
  /** So much later than now, or earlier. */
  | { readonly kind: 'shift-wait'; readonly action: ActionId; readonly by: number }
  /** At the end of the step; who has the ball there dribbles. */
  | { readonly kind: 'add-cut'; readonly player: PlayerNumber; readonly step: StepKey; readonly to: Point }
  | { readonly kind: 'add-pass'; readonly from: PlayerNumber; readonly to: PlayerNumber; readonly step: StepKey }
  /** Two players change their places at the start. */
  | { readonly kind: 'swap'; readonly a: PlayerNumber; readonly b: PlayerNumber }
  /** The play is mirrored: left and right swapped. */
  | { readonly kind: 'mirror' };

/**
 * Edits of the block's text that do it, with the words they bring (`left wing`, `1.5 seconds later`) and where the words put a man; or why
 * it cannot be done, in a sentence.
 */
export type Outcome = { readonly edits: readonly BlockEdit[]; readonly words: Words; readonly at?: Point } | { readonly refused: Message };
