// What the player shows, and every way it changes: pure functions from one state to the next.
import type { BodyId, PartId } from '../../language/play/play.ts';
import { bodyOfPart, momentsOf } from '../../language/playback/moments.ts';
import type { Playback } from '../../language/playback/playback.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { MESSAGES_VERSION, type Cursor, type Kept, type Show } from './messages.ts';

export const SPEEDS = [0.25, 0.5, 1, 2] as const;

export type LabelledRun = Playback['runs'][number];

export interface PlayerState {
  readonly seq: number;
  readonly title: string;
  readonly playback: Playback | null;
  /** The picture is older than the text; the line that is unfinished, where the editor names it. */
  readonly stale: { readonly line: number | undefined } | null;
  /** Place of the run-through in `playback.runs`. */
  readonly run: number;
  /** ms from the call. */
  readonly t: number;
  readonly speed: number;
  readonly playing: boolean;
  /** What is marked: the cursor's statement or what was picked, with the men it names. */
  readonly part: PartId | undefined;
  readonly lit: readonly BodyId[];
  /** Whose jobs are listed. */
  readonly man: BodyId | undefined;
  /** Why nothing can be shown, in a coach's words. */
  readonly refusal: string | undefined;
  /** From before a reload, until its play arrives. */
  readonly kept: Kept | undefined;
}

/** The state on show, for the parts of the player that change it. */
export interface Showing {
  readonly state: () => PlayerState;
  /** By hand or by message: drawn at the next frame. */
  readonly update: (next: PlayerState) => void;
}

export function initialState(kept?: Kept): PlayerState {
  return {
    seq: -1, title: '', playback: null, stale: null, run: 0, t: 0, speed: kept?.speed ?? 1, playing: false,
    part: undefined, lit: [], man: undefined, refusal: undefined, kept,
  };
}

export function currentRun({ playback, run }: PlayerState): LabelledRun | undefined {
  return playback?.runs[run];
}

/** A new picture: run-through, time and speed stay where they are as far as the new play has them. */
export function show(state: PlayerState, message: Show, playback: Playback | null): PlayerState {
  if (message.seq < state.seq) return state;
  const stale = message.stale ? { line: message.line } : null;
  const common = { ...state, seq: message.seq, title: message.title, refusal: undefined };
  if (playback === null) {
    if (message.stale && state.playback !== null && state.playback.play.name === message.title) return { ...common, stale };
    return { ...common, playback: null, stale, playing: false, part: undefined, lit: [] };
  }
  const shown = { ...common, playback, stale };
  if (state.playback?.play.key === playback.play.key) return settle({ ...shown, run: matchRun(playback, currentRun(state)) });
  if (state.kept?.play === playback.play.key) {
    const run = playback.runs.findIndex(({ id }) => id === state.kept!.run);
    return settle({ ...shown, run: Math.max(0, run), t: run < 0 ? 0 : state.kept.t, speed: state.kept.speed, kept: undefined });
  }
  return settle({ ...shown, run: 0, t: 0, playing: false, part: undefined, lit: [] });
}

/** A picture that could not be read: the last good one stays, with the reason. */
export function refuse(state: PlayerState, seq: number, refusal: string): PlayerState {
  return seq < state.seq ? state : { ...state, seq, refusal, playing: false };
}

function settle(state: PlayerState): PlayerState {
  const end = currentRun(state)?.end ?? 0;
  return { ...state, t: Math.min(Math.max(0, state.t), end), playing: state.playing && state.t < end };
}

/** The run of the same id, else the one that shares most with it: the looker, then the steps from the start. */
function matchRun(playback: Playback, run: Pick<Run, 'id' | 'steps' | 'look'> | undefined): number {
  if (run === undefined) return 0;
  const same = playback.runs.findIndex(({ id }) => id === run.id);
  if (same >= 0) return same;
  let best = 0;
  let most = -1;
  playback.runs.forEach((other, i) => {
    const shared = sharedSteps(run.steps, other.steps) * 2 + (lookerOf(run) !== undefined && lookerOf(run) === lookerOf(other) ? 1 : 0);
    if (shared > most) [best, most] = [i, shared];
  });
  return best;
}

const lookerOf = ({ look }: Pick<Run, 'look'>): BodyId | undefined => (look === undefined ? undefined : bodyOfPart(look));

function sharedSteps(a: readonly string[], b: readonly string[]): number {
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  return i;
}

/** Another run-through, at the same time: what both share does not jump. */
export function chooseRun(state: PlayerState, run: number): PlayerState {
  if (state.playback?.runs[run] === undefined) return state;
  return settle({ ...state, run });
}

export function seek(state: PlayerState, t: number): PlayerState {
  return settle({ ...state, t: Number.isNaN(t) ? 0 : t });
}

/** Play or pause; at the end it starts again. */
export function togglePlaying(state: PlayerState): PlayerState {
  const end = currentRun(state)?.end ?? 0;
  if (end === 0) return state;
  if (state.playing) return { ...state, playing: false };
  return { ...state, playing: true, t: state.t >= end ? 0 : state.t };
}

export function pause(state: PlayerState): PlayerState {
  return state.playing ? { ...state, playing: false } : state;
}

export function setSpeed(state: PlayerState, speed: number): PlayerState {
  return SPEEDS.some((known) => known === speed) ? { ...state, speed } : state;
}

/** So many ms of a wall clock later. */
export function advance(state: PlayerState, ms: number): PlayerState {
  if (!state.playing) return state;
  return settle({ ...state, t: state.t + Math.max(0, ms) * state.speed });
}

/** The moment before or after the time shown, with what happens there; playing stops. */
export function stepMoment(state: PlayerState, by: 1 | -1): PlayerState {
  const run = currentRun(state);
  if (run === undefined) return state;
  const moments = momentsOf(run);
  const next = by > 0 ? moments.find(({ t }) => t > state.t + 1) : moments.findLast(({ t }) => t < state.t - 1);
  if (next === undefined) return pause(state);
  return pick({ ...state, t: next.t, playing: false }, next.parts.find((part) => /[/?]/.test(part)) ?? next.parts[0]);
}

/** Marks a part and the men it names. */
export function pick(state: PlayerState, part: PartId | undefined): PlayerState {
  return { ...state, part, lit: part === undefined ? [] : bodiesOf(state, part) };
}

/** One of the five is chosen: his jobs are listed, and he lights up. Chosen again they go. */
export function chooseMan(state: PlayerState, man: BodyId): PlayerState {
  return state.man === man ? { ...state, man: undefined, lit: [] } : { ...state, man, lit: [man] };
}

/** Who a part speaks of: its man, the users of his screen, the receiver of his pass; of a look its looker. */
export function bodiesOf(state: PlayerState, part: PartId): readonly BodyId[] {
  const run = currentRun(state);
  const bare = part.replace(/#.*$/, '');
  const own = state.playback?.looks.find(({ id }) => id === bare)?.who ?? bodyOfPart(bare);
  const users = run?.screens.filter(({ action }) => action === bare).flatMap(({ users }) => users) ?? [];
  const receivers = run?.ball.flatMap((ball) => (ball.kind === 'flight' && ball.action === bare ? [ball.receiver] : [])) ?? [];
  const movers = Object.entries(run?.tracks ?? {}).flatMap(([id, { segments }]) => (segments.some(({ action }) => action === bare) ? [id as BodyId] : []));
  return [...new Set([...(own === undefined ? [] : [own]), ...users, ...receivers, ...movers])];
}

/**
 * The cursor has moved in the text: its men light up, and the time mark goes where the statement begins, unless that
 * statement is being shown already or the play is moving.
 */
export function follow(state: PlayerState, { part, t }: Cursor): PlayerState {
  const playback = state.playback;
  const bare = part.replace(/#.*$/, '');
  if (playback === null || playback.runs.length === 0) return state;
  const here = spanOf(currentRun(state), bare);
  const run = here === undefined ? playback.runs.findIndex((other) => spanOf(other, bare) !== undefined) : state.run;
  const moved = { ...state, run: run < 0 ? state.run : run };
  const lit = pick(moved, bare);
  if (state.playing) return here === undefined ? { ...pick(state, bare) } : lit;
  const span = spanOf(currentRun(lit), bare);
  if (span === undefined) return t === undefined ? lit : seek(lit, t);
  const inView = run === state.run && span.from <= state.t && state.t <= span.to;
  return inView ? lit : seek(lit, span.from);
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** When a part is on show in a run: an action from start to end, a step from its opening, a look from its read to its release. */
function spanOf(run: LabelledRun | undefined, part: PartId): Span | undefined {
  if (run === undefined) return undefined;
  const times = run.events.filter((event) => event.part === part).map(({ at }) => at);
  for (const { action, t0, t1 } of Object.values(run.tracks).flatMap(({ segments }) => segments)) if (action === part) times.push(t0, t1);
  for (const { action, to } of run.screens) if (action === part) times.push(to);
  for (const ball of run.ball) if (ball.kind !== 'held' && ball.action === part) times.push(ball.t0, ball.t1);
  if (times.length === 0) return undefined;
  const from = run.look === part && run.releaseAt !== undefined ? run.releaseAt : Math.min(...times);
  return { from, to: Math.max(from, ...times) };
}

export function keptOf(state: PlayerState): Kept | undefined {
  const run = currentRun(state);
  if (state.playback === null || run === undefined) return undefined;
  return { v: MESSAGES_VERSION, kind: 'state', play: state.playback.play.key, run: run.id, t: Math.round(state.t), speed: state.speed };
}
