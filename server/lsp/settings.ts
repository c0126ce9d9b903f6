// The settings a client sends, read from the unknown.
import * as v from 'valibot';
import type { Translation } from '../../language/message/message.ts';

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
  /** Files that are no plays of this playbook, written as in a .gitignore at the root of each folder. */
  readonly leaveOut: readonly string[];
}

export const usualSettings: Settings = { settle: 400, hints: { clock: true, places: false, ball: false }, leaveOut: [] };

type Field = <Schema extends v.GenericSchema>(schema: Schema) => v.GenericSchema<v.InferInput<Schema> | undefined, v.InferOutput<Schema> | undefined>;
/** A value that does not fit is an error. */
const strictly: Field = (schema) => v.optional(schema);
/** A value that does not fit is taken as not set, and costs no other one. */
const optional: Field = (schema) => v.fallback(v.optional(schema), undefined);

const settingsSchema = (field: Field) =>
  v.object({
    checks: field(v.object({ settle: field(v.pipe(v.number(), v.minValue(0), v.maxValue(5000))) })),
    hints: field(v.object({ clock: field(v.boolean()), places: field(v.boolean()), ball: field(v.boolean()) })),
    files: field(v.object({ leaveOut: field(v.array(v.string())) })),
  });
const lenient = settingsSchema(optional);
const strict = settingsSchema(strictly);

export function readSettings(value: unknown): Settings {
  const read = v.safeParse(lenient, value);
  if (!read.success) return usualSettings;
  const { checks, hints, files } = read.output;
  const usual = usualSettings.hints;
  return {
    settle: checks?.settle ?? usualSettings.settle,
    hints: { clock: hints?.clock ?? usual.clock, places: hints?.places ?? usual.places, ball: hints?.ball ?? usual.ball },
    leaveOut: files?.leaveOut ?? usualSettings.leaveOut,
  };
}

/** What was set and does not fit, in a sentence each: it counts as not set. */
export function wrongSettings(value: unknown): readonly string[] {
  if (value === undefined || value === null) return [];
  const read = v.safeParse(strict, value);
  return read.success ? [] : read.issues.map((issue) => `The setting setwright.${v.getDotPath(issue) ?? ''} does not fit and counts as not set: ${issue.message}.`);
}

const paletteSchema = v.picklist(['light', 'dark', 'high-contrast']);
const optionsSchema = v.object({ manual: v.optional(v.string()), pages: v.optional(v.string()), commands: v.optional(v.boolean()), files: v.optional(v.boolean()), pictures: optional(paletteSchema), words: optional(v.record(v.string(), v.string())), settings: v.optional(v.unknown()) });

/** Notification: the editor's colours have changed. */
export const picturesMethod = 'setwright/pictures';
export type Pictures = v.InferOutput<typeof paletteSchema>;
export function readPictures(value: unknown): Pictures | undefined {
  const read = v.safeParse(paletteSchema, value);
  return read.success ? read.output : undefined;
}

export interface Options {
  /** The address of a finding’s entry in the manual, with `{code}` for its code. */
  readonly manual?: string;
  /** The address of a page about a spot or an alignment, with `{code}` for its key: the client shows what `setwright/manual` answers. */
  readonly pages?: string;
  /** The client lists and reads files for the server. */
  readonly files?: boolean;
  /** The colours of drawings; absent: the editor shows no images where it shows words. */
  readonly pictures?: Pictures;
  /** The client knows the commands of the lenses: to show a play, to draw it, to make a page of it. Without it lenses only tell times. */
  readonly commands?: boolean;
  /** The server's words in the editor's language, from the templates of its messages (`l10n/`); what is missing stays English. */
  readonly words?: Translation;
  readonly settings: Settings;
}

/** `initializationOptions` of the protocol. */
export function readOptions(value: unknown): Options {
  const read = v.safeParse(optionsSchema, value);
  if (!read.success) return { settings: usualSettings };
  const { manual, pages, commands, files, pictures, words } = read.output;
  return { settings: readSettings(read.output.settings), ...(manual !== undefined && { manual }), ...(pages !== undefined && { pages }), ...(files !== undefined && { files }), ...(commands !== undefined && { commands }), ...(pictures !== undefined && { pictures }), ...(words !== undefined && { words }) };
}
