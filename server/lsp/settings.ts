// The settings a client sends, read from the unknown.
import * as v from 'valibot';

/** What is shown beside the lines, each with a switch of its own. */
export interface HintSettings {
  /** When a line is done. */
  readonly clock: boolean;
  /** Where a way ends whose place is not written. */
  readonly places: boolean;
  /** Who has the ball when a step begins. */
  readonly ball: boolean;
}

export interface Settings {
  /** Milliseconds the line being typed is left alone. */
  readonly settle: number;
  readonly hints: HintSettings;
}

export const usualSettings: Settings = { settle: 400, hints: { clock: true, places: false, ball: false } };

// A value that does not fit is taken as not set, and costs no other one.
const optional = <Schema extends v.GenericSchema>(schema: Schema) => v.fallback(v.optional(schema), undefined);
const flag = optional(v.boolean());
const schema = v.object({
  checks: optional(v.object({ settle: optional(v.pipe(v.number(), v.minValue(0), v.maxValue(5000))) })),
  hints: optional(v.object({ clock: flag, places: flag, ball: flag })),
});

export function readSettings(value: unknown): Settings {
  const read = v.safeParse(schema, value);
  if (!read.success) return usualSettings;
  const { checks, hints } = read.output;
  const usual = usualSettings.hints;
  return {
    settle: checks?.settle ?? usualSettings.settle,
    hints: { clock: hints?.clock ?? usual.clock, places: hints?.places ?? usual.places, ball: hints?.ball ?? usual.ball },
  };
}

const optionsSchema = v.object({ manual: v.optional(v.string()), files: v.optional(v.boolean()), settings: v.optional(v.unknown()) });

export interface Options {
  /** What an address of the manual starts with; the code of a finding comes behind it. Without it findings carry no link. */
  readonly manual?: string;
  /** The client lists and reads files for the server. */
  readonly files?: boolean;
  readonly settings: Settings;
}

/** `initializationOptions` of the protocol. */
export function readOptions(value: unknown): Options {
  const read = v.safeParse(optionsSchema, value);
  if (!read.success) return { settings: usualSettings };
  const { manual, files } = read.output;
  return { settings: readSettings(read.output.settings), ...(manual !== undefined && { manual }), ...(files !== undefined && { files }) };
}
