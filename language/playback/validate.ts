// Unknown data → Playback, or a clear refusal. Used wherever a playback crosses a border: messages, the data of a page, a file.
import * as v from 'valibot';
import { PLAYBACK_VERSION, type Playback } from './playback.ts';

export type ReadPlayback = { readonly ok: true; readonly playback: Playback } | { readonly ok: false; readonly message: string };

const finite = v.pipe(v.number(), v.finite());
const point = v.object({ x: finite, y: finite });
const optional = v.optional;
const bodyId = v.picklist(['1', '2', '3', '4', '5', 'X1', 'X2', 'X3', 'X4', 'X5']);
const passKind = v.picklist(['pass', 'bounce', 'lob', 'skip', 'overhead', 'baseball', 'tip']);
const shotKind = v.picklist(['layup', 'dunk', 'jumper', 'three', 'hook', 'tip-in', 'shot']);
const rulesId = v.picklist(['fiba', 'nba', 'ncaa-men', 'ncaa-women', 'nfhs', 'mini']);
const textPlace = v.object({ line: finite, at: finite, to: finite });
const strings = v.array(v.string());

/** Parts of playbacks that have been read, or would be again: they are never changed in place. */
const known = new WeakSet<object>();
const isKnown = (value: unknown): boolean => typeof value === 'object' && value !== null && known.has(value);
const anything = v.unknown();

/** A part that is the same object as in a playback read before is not looked through again: after a key most of them are. */
const once = <Of extends v.GenericSchema>(schema: Of) => v.lazy((value) => (isKnown(value) ? anything : schema));

// A long array of places is the bulk of a playback: one loop instead of an object schema each.
const points = v.custom<readonly { x: number; y: number }[]>(
  (value) => Array.isArray(value) && value.every((p) => typeof p === 'object' && p !== null && Number.isFinite(p.x) && Number.isFinite(p.y)),
  'places as { x, y } in metres',
);
const path = v.pipe(points, v.check((p) => p.length >= 2, 'a way of at least two places'));
const profile = v.object({
  distance: finite, v0: finite, v1: finite, vmax: finite, tau: finite, brake: finite,
  rampSeconds: finite, rampDistance: finite, peak: finite, seconds: finite, durationMs: finite,
});

const segment = v.object({ t0: finite, t1: finite, action: v.string(), path, profile, withBall: v.boolean() });
const track = v.object({ start: point, segments: v.array(segment) });
const keyframes = v.object({ t0: finite, stepMs: v.pipe(finite, v.minValue(1)), points });

const flight = { t0: finite, t1: finite, from: point, to: point, by: bodyId, action: v.string() };
const ballState = v.variant('kind', [
  v.object({ kind: v.literal('held'), t0: finite, t1: finite, by: bodyId, live: v.boolean(), out: v.boolean() }),
  v.object({ kind: v.literal('flight'), ...flight, pass: passKind, receiver: bodyId }),
  v.object({ kind: v.literal('shot'), ...flight, shot: shotKind }),
]);

const eventKind = v.picklist([
  'call', 'open', 'start', 'arrive', 'set', 'use', 'free', 'release', 'catch', 'take', 'touch', 'read', 'passed-up', 'shot', 'rim', 'end',
]);
const reason = v.picklist([
  'own-last-action', 'chain', 'step-opens', 'set-up', 'reaction', 'legs', 'flight', 'screen', 'meets-cutter', 'ball-order',
  'written-wait', 'read', 'catch-to-release', 'hand-over', 'look-order',
]);
const event = v.object({
  id: v.string(), kind: eventKind, part: v.string(), who: optional(bodyId), at: finite,
  because: optional(v.object({ from: v.string(), delay: finite, reason })),
});
const screen = v.object({
  action: v.string(), by: bodyId, at: point, facing: point, from: finite, to: finite, users: v.array(bodyId),
});

const run = v.object({
  id: v.string(), label: v.string(), steps: strings, look: optional(v.string()),
  startsAt: finite, clockStartsAt: finite, releaseAt: optional(finite), end: v.pipe(finite, v.minValue(0)),
  tracks: v.record(v.string(), once(track)), defenders: v.record(v.string(), once(keyframes)),
  ball: v.array(ballState), events: v.array(once(event)), screens: v.array(screen),
});

const rectangle = v.object({ left: finite, right: finite, bottom: finite, top: finite });
const court = v.object({
  rules: rulesId, boundary: rectangle, lane: rectangle, baselineY: finite, farBaselineY: finite, halfLineY: finite,
  freeThrowLineY: finite, boardY: finite, boardWidth: finite, ring: point, ringRadius: finite, ringHeight: finite,
  farRing: point, farFreeThrowLineY: finite,
  three: optional(v.object({ radius: finite, corner: finite, joinY: finite, halfAngle: finite })),
  restrictedRadius: optional(finite), centreCircleRadius: finite, throwInMarkY: finite, lineWidth: finite,
});

const source = v.object({ text: v.string(), how: v.string() });
const edit = v.object({ ...textPlace.entries, text: v.string(), newLine: optional(v.boolean()), wholeLine: optional(v.boolean()) });
const finding = v.object({
  code: v.string(), severity: v.picklist(['error', 'warning', 'hint']), message: v.string(),
  params: v.record(v.string(), v.union([v.string(), v.number()])), place: textPlace, part: optional(v.string()),
  run: optional(v.string()), moment: optional(finite), spot: optional(point),
  related: v.array(v.object({ place: textPlace, message: v.string() })), source: optional(source),
  fixes: v.array(v.object({ title: v.string(), preferred: optional(v.boolean()), edits: v.array(edit) })),
  unfinished: optional(v.boolean()),
});

const needed = v.object({ fromCall: finite, alreadySet: finite });
const percentiles = v.object({ early: finite, typical: finite, late: finite });
const times = v.object({
  looks: v.array(v.object({ look: v.string(), run: v.string(), early: finite, typical: finite, late: finite, flight: finite, setUp: finite, onClock: percentiles, fromStart: percentiles })),
  firstLook: optional(needed), allLooks: optional(needed),
});

const job = v.object({ text: v.string(), part: v.string(), at: optional(finite), run: optional(v.string()), head: optional(v.literal(true)) });
const jobs = v.array(v.object({ who: bodyId, name: optional(v.string()), jobs: v.array(job) }));

/** The shape of version 1. Values that are `undefined` in memory and absent in JSON are both read. */
const playbackSchema = v.object({
  version: v.literal(PLAYBACK_VERSION),
  play: v.object({
    key: v.string(), name: v.string(), level: v.picklist(['u10', 'u12', 'u14', 'u16', 'hs', 'college', 'pro']), rules: rulesId,
    tags: strings, callWith: optional(finite), throwIn: v.boolean(),
    against: optional(v.object({ zone: optional(v.string()), press: optional(v.literal(true)) })),
  }),
  court: once(court),
  bodies: v.array(v.object({ id: bodyId, team: v.picklist(['offence', 'defence']), label: v.string() })),
  steps: v.array(v.object({ key: v.string(), name: v.string(), parent: v.nullable(v.string()), how: v.string(), condition: optional(v.string()) })),
  looks: v.array(v.object({ id: v.string(), step: v.string(), who: bodyId, label: v.string() })),
  says: once(v.record(v.string(), v.string())),
  runs: v.array(once(run)),
  times: once(times),
  findings: v.array(once(finding)),
  told: once(v.array(v.object({ text: v.string(), part: optional(v.string()), untimed: optional(v.string()) }))),
  jobs: optional(once(jobs)),
  text: once(v.record(v.string(), textPlace)),
});

/**
 * Reads a playback from data of unknown shape.
 * @returns the playback, or a message for the coach: made by a newer version, or not a playback (with the first place that does not fit).
 */
export function readPlayback(value: unknown): ReadPlayback {
  const version = typeof value === 'object' && value !== null && 'version' in value ? value.version : undefined;
  if (typeof version === 'number' && version > PLAYBACK_VERSION) {
    return {
      ok: false,
      message: `This play comes from a newer Setwright (its moving picture has version ${version}, this one shows version ${PLAYBACK_VERSION}). Update Setwright here, or make the page again with this version.`,
    };
  }
  const read = v.safeParse(playbackSchema, value, { abortEarly: true });
  if (read.success) {
    remember(value as Playback);
    return { ok: true, playback: value as Playback };
  }
  const issue = read.issues[0];
  const where = v.getDotPath(issue) ?? 'the whole';
  return { ok: false, message: `The data of this play cannot be shown: ${where} is not as expected (${issue.message}). Make the page again.` };
}

function remember({ court, says, runs, times, findings, told, jobs: lists = [], text }: Playback): void {
  for (const part of [court, says, times, told, lists, text, ...runs, ...findings]) known.add(part);
  for (const { tracks, defenders, events } of runs) for (const part of [...Object.values(tracks), ...Object.values(defenders), ...events]) known.add(part);
}
