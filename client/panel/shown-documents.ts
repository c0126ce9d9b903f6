// Which plays were shown last in this workspace, for a window that is opened again.
import * as v from 'valibot';
import type { Memento } from 'vscode';

const key = 'setwright.shown';
const shown = v.object({ uri: v.string(), line: v.pipe(v.number(), v.integer(), v.minValue(0)), pin: v.optional(v.string()) });
const schema = v.object({ version: v.literal(2), panels: v.array(shown) });

/** `pin`: the key of the play a panel keeps to; without it the panel goes with the text. */
export type ShownDocument = v.InferOutput<typeof shown>;

export const rememberShown = (state: Memento, panels: readonly ShownDocument[]): Thenable<void> => state.update(key, panels.length === 0 ? undefined : { version: 2, panels: panels.slice(0, 10) });

export function recallShown(state: Memento): readonly ShownDocument[] {
  const read = v.safeParse(schema, state.get(key));
  return read.success ? read.output.panels : [];
}
