// What the editor and the player say to each other, version 1. Both ways the other side's words are unknown until read here.
import * as v from 'valibot';
import { intentSchema } from '../../language/edit/validate.ts';

export const MESSAGES_VERSION = 1;

const version = v.literal(MESSAGES_VERSION);
const whole = v.pipe(v.number(), v.finite());

/**
 * A picture to show. The newest `seq` wins; an older one that arrives late is dropped. `playback: null` is a play without a picture
 * yet; together with `stale` it keeps the last good one; with `change` it is what that makes of the picture that `from` brought, the last one before
 * this, whole or so. Who has not that one says `missed`. The playback itself is read by `readPlayback`.
 */
const show = v.object({
  v: version,
  kind: v.literal('show'),
  seq: whole,
  /** The play's name, shown also while it has no picture. */
  title: v.string(),
  playback: v.nullable(v.unknown()),
  change: v.optional(v.object({ from: whole, to: v.unknown() })),
  /** The picture is older than the text, because `line` (counted from 1 in the file) is unfinished. */
  stale: v.boolean(),
  line: v.optional(whole),
});

/**
 * The cursor stands in the words of `part`; `t` is where that is in time, ms from the call, for a part this run does not have. `mark`: nobody
 * has moved it, as after a reload; its men light up, the time stays.
 */
const cursor = v.object({ v: version, kind: v.literal('cursor'), part: v.string(), t: v.optional(whole), mark: v.optional(v.boolean()) });

/** The answer to an `intent` or a `fix` of the same `id`. */
const outcome = v.object({
  v: version,
  kind: v.literal('outcome'),
  id: whole,
  /** What was written, or would be; or why it cannot be, both in a coach's words. */
  words: v.optional(v.string()),
  refused: v.optional(v.string()),
  /** Where the words put a man. */
  at: v.optional(v.object({ x: whole, y: whole })),
  /** Which run-throughs it changes, where it is more than one. */
  changes: v.optional(v.string()),
});

/** The team is to see it: the floor alone. */
const team = v.object({ v: version, kind: v.literal('team') });

const toPlayerSchema = v.variant('kind', [show, cursor, outcome, team]);
export type Outcome = v.InferOutput<typeof outcome>;
export type ToPlayer = v.InferOutput<typeof toPlayerSchema>;
export type Show = v.InferOutput<typeof show>;
export type Cursor = v.InferOutput<typeof cursor>;

/** `kept`: it shows again what it showed before a reload. `again`: it has said so before, and nothing came. */
const ready = v.object({ v: version, kind: v.literal('ready'), kept: v.optional(v.boolean()), again: v.optional(v.boolean()) });

const textPlace = v.object({ line: whole, at: whole, to: whole });
/** Something was picked: its words are to be selected. `part` where it has one, else (a finding on a broken line) its place in the play's text. */
const select = v.object({ v: version, kind: v.literal('select'), play: v.string(), part: v.optional(v.string()), place: v.optional(textPlace) });

/** What is going on at the time shown: the ball's action first, then the latest started. Sent when it changes; its words may be marked. */
const now = v.object({ v: version, kind: v.literal('now'), play: v.string(), part: v.nullable(v.string()), t: whole });

/** What is kept through reloads; the panel stores the same with the webview's state. */
const state = v.object({
  v: version,
  kind: v.literal('state'),
  play: v.string(),
  /** The run-through's id. */
  run: v.string(),
  /** ms from the call. */
  t: v.pipe(whole, v.minValue(0)),
  speed: v.pipe(whole, v.minValue(0.05), v.maxValue(8)),
});

/** The picture of `show` number `seq` is drawn. */
const shown = v.object({ v: version, kind: v.literal('shown'), seq: whole });

/** A `show` could not be read; `message` is for the coach, and is shown in the player too. */
const refused = v.object({ v: version, kind: v.literal('refused'), seq: whole, message: v.string() });

/** `show` number `seq` says what has changed of a picture that is not here: the whole is to be sent again. */
const missed = v.object({ v: version, kind: v.literal('missed'), seq: whole });

/** Numbers each question of one player; `play` and `seq` say on which picture it was asked, so that a later text is not changed by it. */
const asked = { v: version, id: v.pipe(whole, v.integer(), v.minValue(0)), play: v.string(), seq: whole };

/** Something was moved by hand. `dry`: only asks for the words. */
const intent = v.object({ ...asked, kind: v.literal('intent'), dry: v.boolean(), intent: intentSchema });

/** A fix of a finding was chosen: their places in the playback, and the code to be sure of it. */
const place = v.pipe(whole, v.integer(), v.minValue(0));
const fix = v.object({ ...asked, kind: v.literal('fix'), code: v.string(), finding: place, fix: place });

/** A key that is meant for the text, pressed where the panel has the keyboard: the editor itself does nothing there. */
const text = v.object({ v: version, kind: v.literal('text'), does: v.picklist(['undo', 'redo', 'save']) });
export type TextKey = v.InferOutput<typeof text>['does'];

const fromPlayerSchema = v.variant('kind', [ready, select, now, state, shown, refused, missed, intent, fix, text]);
export type FromPlayer = v.InferOutput<typeof fromPlayerSchema>;
export type Kept = v.InferOutput<typeof state>;
export const keptSchema = state;

/** A message of the editor, or `undefined` for anything else that arrives at the window. */
export function readToPlayer(value: unknown): ToPlayer | undefined {
  const read = v.safeParse(toPlayerSchema, value);
  return read.success ? read.output : undefined;
}

/** A message of the player, or `undefined`; for the extension. */
export function readFromPlayer(value: unknown): FromPlayer | undefined {
  const read = v.safeParse(fromPlayerSchema, value);
  return read.success ? read.output : undefined;
}

/** What was kept before a reload, or `undefined` when there is nothing or it is of another version. */
export function readKept(value: unknown): Kept | undefined {
  const read = v.safeParse(keptSchema, value);
  return read.success ? read.output : undefined;
}
