// Unknown data → an intent. Used where one crosses a border: from the panel to the editor, from the editor to the server.
import * as v from 'valibot';
import type { Intent } from './intent.ts';

// No floor is larger; what lies further off is a slip of the hand.
const metres = v.pipe(v.number(), v.finite(), v.minValue(-50), v.maxValue(50));
const seconds = v.pipe(v.number(), v.finite(), v.minValue(-120), v.maxValue(120));
const to = v.object({ x: metres, y: metres });
const id = v.pipe(v.string(), v.maxLength(300));
const player = v.picklist([1, 2, 3, 4, 5]);

export const intentSchema = v.variant('kind', [
  v.object({ kind: v.literal('move-start'), player, to }),
  v.object({ kind: v.literal('move-end'), action: id, to }),
  v.object({ kind: v.literal('move-screen'), action: id, to }),
  v.object({ kind: v.literal('move-via'), action: id, via: v.pipe(v.number(), v.integer(), v.minValue(0)), to }),
  v.object({ kind: v.literal('add-via'), action: id, to }),
  v.object({ kind: v.literal('bend'), action: id, from: to, to }),
  v.object({ kind: v.literal('set-wait'), action: id, seconds }),
  v.object({ kind: v.literal('shift-wait'), action: id, by: seconds }),
  v.object({ kind: v.literal('add-cut'), player, step: id, to }),
  v.object({ kind: v.literal('add-pass'), from: player, to: player, step: id }),
  v.object({ kind: v.literal('swap'), a: player, b: player }),
  v.object({ kind: v.literal('mirror') }),
]) satisfies v.GenericSchema<unknown, Intent>;
