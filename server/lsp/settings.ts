// The settings a client sends, read from the unknown.
import * as v from 'valibot';

export interface Settings {
  /** Milliseconds the line being typed is left alone. */
  readonly settle: number;
}

export const usualSettings: Settings = { settle: 400 };

const schema = v.object({ checks: v.optional(v.object({ settle: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(5000))) })) });

/** Values that do not fit are taken as not set. */
export function readSettings(value: unknown): Settings {
  const read = v.safeParse(schema, value);
  return { settle: (read.success ? read.output.checks?.settle : undefined) ?? usualSettings.settle };
}

const optionsSchema = v.object({ manual: v.optional(v.string()), settings: v.optional(v.unknown()) });

export interface Options {
  /** What an address of the manual starts with; the code of a finding comes behind it. Without it findings carry no link. */
  readonly manual?: string;
  readonly settings: Settings;
}

/** `initializationOptions` of the protocol. */
export function readOptions(value: unknown): Options {
  const read = v.safeParse(optionsSchema, value);
  if (!read.success) return { settings: usualSettings };
  return { settings: readSettings(read.output.settings), ...(read.output.manual !== undefined && { manual: read.output.manual }) };
}
