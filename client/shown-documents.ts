// Which play was shown last in this workspace, for a window that is opened again.
import * as v from 'valibot';
import type { Memento } from 'vscode';

const key = 'setwright.shown';
const schema = v.object({ version: v.literal(1), uri: v.string(), line: v.pipe(v.number(), v.integer(), v.minValue(0)) });

export interface ShownDocument {
  readonly uri: string;
  readonly line: number;
}

export const rememberShown = (state: Memento, { uri, line }: ShownDocument): Thenable<void> => state.update(key, { version: 1, uri, line });
export const forgetShown = (state: Memento): Thenable<void> => state.update(key, undefined);

export function recallShown(state: Memento): ShownDocument | undefined {
  const read = v.safeParse(schema, state.get(key));
  return read.success ? read.output : undefined;
}
