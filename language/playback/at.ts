// Where every body and the ball are at a moment of a run-through: closed in t, without state, so that seeking and playing agree.
import type { Point } from '../court/point.ts';
import { ballFacts, ballHeight } from '../motion/ball.ts';
import { distanceAt } from '../motion/legs.ts';
import type { ActionId, BodyId } from '../play/play.ts';
import type { BallState, Keyframes, Path, Run, Segment, SetScreen, Track } from '../timeline/timeline.ts';
import type { Playback } from './playback.ts';

export interface BodyAt {
  readonly id: BodyId;
  /** Metres. */
  readonly x: number;
  readonly y: number;
  /** Radians from the x axis towards half court: along his way while he moves, else where he stands and looks. */
  readonly facing: number;
  readonly moving: boolean;
  readonly action?: ActionId;
}

export interface BallAt {
  /** Metres; `z` is the height above the floor, for the picture: a thrown body in the time the model gives it, from hand to hand. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly state: 'held' | 'dribbled' | 'out' | 'passed' | 'shot';
  readonly holder?: BodyId;
  readonly action?: ActionId;
}

export interface Moment {
  /** ms from the call, inside the run. */
  readonly t: number;
  /** The playback's order. A body that this run does not place is left out. */
  readonly bodies: readonly BodyAt[];
  /** Absent only in a run without a ball. */
  readonly ball: BallAt | undefined;
  /** Moves, screens, passes and shots going on at t. */
  readonly actions: readonly ActionId[];
}

/** The run of that place or id; the first one where there is no such run, so that a run lost by an edit still shows a picture. */
export function runOf(playback: Playback, run: number | string): Playback['runs'][number] | undefined {
  const found = typeof run === 'number' ? playback.runs[run] : playback.runs.find(({ id }) => id === run);
  return found ?? playback.runs[0];
}

/**
 * Everything on the floor at `t` ms of a run-through. `t` is brought into the run. A playback without runs gives an empty moment.
 */
export function at(playback: Playback, run: number | string, t: number): Moment {
  const found = runOf(playback, run);
  if (found === undefined) return { t: 0, bodies: [], ball: undefined, actions: [] };
  return momentOf(playback, found, t);
}

/** As `at`, for a run already found. */
export function momentOf(playback: Playback, run: Run, t: number): Moment {
  const now = clamp(t, run.end);
  const state = latest(run.ball, now);
  const ballPlace = state === undefined ? undefined : ballFloor(run, state, now);
  const bodies: BodyAt[] = [];
  const actions: ActionId[] = [];
  for (const { id } of playback.bodies) {
    const track = run.tracks[id];
    const body = track === undefined ? defender(run.defenders[id], id, now, ballPlace) : offence(run, track, id, now, ballPlace);
    if (body === undefined) continue;
    bodies.push(body);
    if (body.action !== undefined && !actions.includes(body.action)) actions.push(body.action);
  }
  const ball = state === undefined || ballPlace === undefined ? undefined : ballAt(state, ballPlace, now);
  if (ball?.action !== undefined && now < state!.t1 && !actions.includes(ball.action)) actions.push(ball.action);
  return { t: now, bodies, ball, actions };
}

/** Where one man of the offence stands at t ms of a run; `undefined` when the run does not place him. */
export function placeOf(run: Run, id: BodyId, t: number): Point | undefined {
  const now = clamp(t, run.end);
  const track = run.tracks[id];
  if (track !== undefined) return onTrack(track, now).point;
  const frames = run.defenders[id];
  return frames === undefined ? undefined : onKeyframes(frames, now);
}

function clamp(t: number, end: number): number {
  return t > 0 ? Math.min(t, end) : 0;
}

/** The last entry that has begun at t (the first one before that), by binary search. */
function latest<T extends { readonly t0: number }>(entries: readonly T[], t: number): T | undefined {
  let low = 0;
  let high = entries.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (entries[middle]!.t0 <= t) low = middle;
    else high = middle - 1;
  }
  return entries[low];
}

interface OnTrack {
  readonly point: Point;
  /** Direction of the way, while he moves. */
  readonly heading?: number;
  readonly segment?: Segment;
}

function onTrack(track: Track, t: number): OnTrack {
  const segment = latest(track.segments, t);
  if (segment === undefined || t < segment.t0) return { point: track.start };
  const end = segment.path.at(-1) ?? track.start;
  if (t >= segment.t1) return { point: end };
  return { ...alongPath(segment.path, distanceAt(segment.profile, (t - segment.t0) / 1000)), segment };
}

/** The point `metres` along a way and the direction there; its ends where the distance lies outside. */
function alongPath(path: Path, metres: number): { readonly point: Point; readonly heading: number } {
  let left = Math.max(0, metres);
  let heading = 0;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1]!;
    const b = path[i]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length === 0) continue;
    heading = Math.atan2(dy, dx);
    if (left <= length) return { point: { x: a.x + (dx * left) / length, y: a.y + (dy * left) / length }, heading };
    left -= length;
  }
  return { point: path.at(-1) ?? { x: 0, y: 0 }, heading };
}

function onKeyframes(frames: Keyframes, t: number): Point | undefined {
  const last = frames.points.length - 1;
  if (last < 0) return undefined;
  const place = Math.min(Math.max((t - frames.t0) / frames.stepMs, 0), last);
  const before = Math.min(Math.floor(place), Math.max(0, last - 1));
  const a = frames.points[before]!;
  const b = frames.points[before + 1] ?? a;
  const share = place - before;
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

function offence(run: Run, track: Track, id: BodyId, t: number, ball: Point | undefined): BodyAt {
  const { point, heading, segment } = onTrack(track, t);
  if (segment !== undefined) return { id, x: point.x, y: point.y, facing: heading ?? 0, moving: true, action: segment.action };
  const screen = screenAt(run.screens, id, t);
  if (screen !== undefined) {
    return { id, x: point.x, y: point.y, facing: Math.atan2(screen.facing.y, screen.facing.x), moving: false, action: screen.action };
  }
  return { id, x: point.x, y: point.y, facing: towards(point, ball), moving: false };
}

function defender(frames: Keyframes | undefined, id: BodyId, t: number, ball: Point | undefined): BodyAt | undefined {
  const point = frames && onKeyframes(frames, t);
  if (frames === undefined || point === undefined) return undefined;
  const next = onKeyframes(frames, t + frames.stepMs)!;
  return { id, x: point.x, y: point.y, facing: towards(point, ball), moving: next.x !== point.x || next.y !== point.y };
}

function screenAt(screens: readonly SetScreen[], id: BodyId, t: number): SetScreen | undefined {
  for (const screen of screens) if (screen.by === id && screen.from <= t && t < screen.to) return screen;
  return undefined;
}

/** From a body to the ball; the man with the ball (and every man when there is none) looks at the ring. */
function towards(point: Point, ball: Point | undefined): number {
  const atBall = ball === undefined || (Math.abs(ball.x - point.x) < 0.01 && Math.abs(ball.y - point.y) < 0.01);
  return atBall ? Math.atan2(-point.y, -point.x) : Math.atan2(ball.y - point.y, ball.x - point.x);
}

function ballFloor(run: Run, state: BallState, t: number): Point | undefined {
  if (state.kind === 'held') {
    const track = run.tracks[state.by];
    return track === undefined ? undefined : onTrack(track, t).point;
  }
  const u = shareOf(state, t);
  return { x: state.from.x + (state.to.x - state.from.x) * u, y: state.from.y + (state.to.y - state.from.y) * u };
}

function shareOf(state: BallState, t: number): number {
  return state.t1 <= state.t0 ? 1 : Math.min(Math.max((t - state.t0) / (state.t1 - state.t0), 0), 1);
}

// Where the hands are, metres: the picture's one height for every hand, so that the ball does not jump from state to state.
const HAND = 1.2;
const RING = 3.05;
// A dribble's beat; common practice, no source.
const BOUNCE_MS = 620;

function ballAt(state: BallState, { x, y }: Point, t: number): BallAt {
  if (state.kind === 'held') {
    const common = { x, y, holder: state.by };
    if (state.out) return { ...common, z: HAND, state: 'out' };
    if (!state.live) return { ...common, z: HAND, state: 'held' };
    const bounces = Math.max(1, Math.round((state.t1 - state.t0) / BOUNCE_MS));
    return { ...common, z: HAND * Math.abs(Math.cos(Math.PI * bounces * shareOf(state, t))), state: 'dribbled' };
  }
  const flight = { distance: 0, durationMs: state.t1 - state.t0, fromHeight: HAND, toHeight: state.kind === 'shot' ? RING : HAND };
  const bounce = state.kind === 'flight' && state.pass === 'bounce';
  const z = ballHeight(bounce ? { ...flight, bounceAt: ballFacts.bounceShare.value } : flight, (t - state.t0) / 1000);
  return { x, y, z, state: state.kind === 'shot' ? 'shot' : 'passed', action: state.action };
}
