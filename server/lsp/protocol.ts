// What the server and a client that shows plays tell each other beyond the Language Server Protocol. Both ends read it
// through these schemas: what comes over the border is unknown until then.
import * as v from 'valibot';
import { intentSchema } from '../../language/edit/validate.ts';
import type { Change } from '../../language/playback/change.ts';
import type { Playback } from '../../language/playback/playback.ts';

export const PROTOCOL_VERSION = 1;

const whole = v.pipe(v.number(), v.integer());
const count = v.pipe(whole, v.minValue(0));
const position = v.object({ line: count, character: count });
const range = v.object({ start: position, end: position });
/** The client's own name for a place that shows a play; the server only gives it back. */
const panel = v.pipe(v.string(), v.maxLength(100));

/**
 * Notification, client to server: show a play and keep showing it, one frame at every change of the text.
 * `follow`: the play the line stands in, and then the one that is being edited; `pin`: this play, wherever it moves.
 */
export const showMethod = 'setwright/show';
const showSchema = v.object({
  version: v.literal(PROTOCOL_VERSION),
  panel,
  uri: v.string(),
  what: v.variant('kind', [v.object({ kind: v.literal('follow'), line: count }), v.object({ kind: v.literal('pin'), playKey: v.string() })]),
  /** The client keeps the last playback of the panel: a frame may say what has changed of it, instead of the whole. */
  changes: v.optional(v.boolean()),
});
export type Show = v.InferOutput<typeof showSchema>;

/** Notification, client to server: the panel is gone. */
export const hideMethod = 'setwright/hide';
const hideSchema = v.object({ version: v.literal(PROTOCOL_VERSION), panel });

/** Notification, server to client. */
export const frameMethod = 'setwright/playback';
const frameSchema = v.object({
  version: v.literal(PROTOCOL_VERSION),
  panel,
  uri: v.string(),
  documentVersion: v.nullable(whole),
  seq: count,
  playKey: v.nullable(v.string()),
  title: v.string(),
  firstLine: count,
  playback: v.unknown(),
  change: v.optional(v.object({ from: count, to: v.unknown() })),
  stale: v.boolean(),
  staleLine: v.optional(count),
});

export interface Frame {
  readonly version: typeof PROTOCOL_VERSION;
  readonly panel: string;
  readonly uri: string;
  /** Version of the document the frame was made from; null for a document that is not open. */
  readonly documentVersion: number | null;
  /** Grows by one with each frame of a panel. */
  readonly seq: number;
  /** Null where the file has no play. */
  readonly playKey: string | null;
  /** The play's name. */
  readonly title: string;
  /** Line of the file the play starts on. */
  readonly firstLine: number;
  /** Null: take `change`; else keep what is shown (with `stale`), or there is nothing to show (without). */
  readonly playback: Playback | null;
  /**
   * What has changed of the playback of frame `from`, the last one that brought any, whole or so (`withChange` of language/playback/change.ts makes
   * the new one). Only to a client that has asked for it. One that has lost that frame hides the panel and shows it again.
   */
  readonly change?: { readonly from: number; readonly to: Change };
  /** What is shown is older than the text: the line being typed is not finished. */
  readonly stale: boolean;
  /** That line of the file. */
  readonly staleLine?: number;
}

/** Notification, client to server: the cursor has gone to another line of a text; without `line`, to another text. What it has left is told of in full. */
export const cursorMethod = 'setwright/cursor';
const cursorSchema = v.object({ version: v.literal(PROTOCOL_VERSION), uri: v.string(), line: v.optional(count) });

/** Request: the part of the play that stands at a place of the text. Null where nothing of a play does. */
export const partAtMethod = 'setwright/partAt';
const partAtSchema = v.object({ version: v.literal(PROTOCOL_VERSION), uri: v.string(), position });
const partSchema = v.nullable(
  v.object({
    playKey: v.string(),
    part: v.string(),
    /** Where it is in time, ms from the call, on the first run-through that has it. */
    t: v.optional(count),
    /** Its words. */
    range,
  }),
);
export type PartAt = v.InferOutput<typeof partSchema>;

/** Request: where the words of a part stand, or a place that counts from the play's first line. Null where nothing is written. */
export const rangeOfMethod = 'setwright/rangeOf';
const textPlace = v.object({ line: count, at: count, to: count });
const rangeOfSchema = v.object({
  version: v.literal(PROTOCOL_VERSION), uri: v.string(), playKey: v.string(), part: v.optional(v.string()), place: v.optional(textPlace),
});
const rangeSchema = v.nullable(range);

/**
 * Request: something was moved by hand in the picture made from `documentVersion`, or a fix of a finding was chosen. The answer's edits are
 * to be made at once, as one step that can be undone; of another version than the server's the request is refused.
 */
export const byHandMethod = 'setwright/intent';
const byHandSchema = v.object({
  version: v.literal(PROTOCOL_VERSION),
  uri: v.string(),
  documentVersion: whole,
  playKey: v.string(),
  what: v.variant('kind', [
    v.object({ kind: v.literal('intent'), intent: intentSchema }),
    v.object({ kind: v.literal('fix'), code: v.string(), finding: count, fix: count }),
  ]),
});
export type ByHand = v.InferOutput<typeof byHandSchema>;
const metres = v.pipe(v.number(), v.finite());
const byHandAnswerSchema = v.union([
  v.object({ refused: v.string() }),
  v.object({
    edits: v.array(v.object({ range, newText: v.string() })),
    /** What is written, in a coach's words. */
    words: v.string(),
    /** Where the words put a man. */
    at: v.optional(v.object({ x: metres, y: metres })),
    /** The run-throughs it changes, where they are several. */
    changes: v.optional(v.string()),
  }),
]);
export type ByHandAnswer = v.InferOutput<typeof byHandAnswerSchema>;

/** Request: the play a line stands in, compiled, of the newest text. Null between plays. */
export const playMethod = 'setwright/play';
const atLineSchema = v.object({ version: v.literal(PROTOCOL_VERSION), uri: v.string(), line: count });
const playSchema = v.nullable(v.object({ documentVersion: whole, playKey: v.string(), title: v.string(), firstLine: count, playback: v.unknown() }));

/** Request: the same play as a drawing with one frame a step. Null between plays, and where nothing moves yet. */
export const drawnMethod = 'setwright/drawn';
const drawnSchema = v.nullable(v.object({ title: v.string(), svg: v.string() }));

/** Request with the code of a finding: its manual entry as Markdown. */
export const manualMethod = 'setwright/manual';

/** The value where it fits, else undefined: a message that cannot be read is left alone. */
function reading<const Schema extends v.GenericSchema>(schema: Schema) {
  return (value: unknown): v.InferOutput<Schema> | undefined => {
    const read = v.safeParse(schema, value);
    return read.success ? read.output : undefined;
  };
}

export const readShow = reading(showSchema);
export const readHide = reading(hideSchema);
export const readCursor = reading(cursorSchema);
export const readPartAtQuestion = reading(partAtSchema);
export const readRangeOfQuestion = reading(rangeOfSchema);
export const readByHand = reading(byHandSchema);
export const readByHandAnswer = reading(byHandAnswerSchema);
export const readAtLine = reading(atLineSchema);
/** The envelope only: the playback in it is read by whoever shows it. */
export const readPlay = reading(playSchema);
export const readDrawn = reading(drawnSchema);
export const readPart = reading(partSchema);
export const readRange = reading(rangeSchema);
/** The envelope only: the playback in it is read by whoever shows it. */
export const readFrame = reading(frameSchema);
export type UnreadFrame = NonNullable<ReturnType<typeof readFrame>>;
