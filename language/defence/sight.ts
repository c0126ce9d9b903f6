/** What there is to see of a run-through: 1–5 and the ball at even steps, flat numbers, so that five defenders cost little. */
import type { Point } from '../court/point.ts';
import type { BodyId } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import type { BallState, Run, Segment } from '../timeline/timeline.ts';
import { alongPiece } from '../timeline/ways.ts';

/** ms between two looks at the floor. */
export const sightMs = 100;

/** What is seen at one step: x and y of 1–5, of the ball, who has it or will catch it (1–5, 0 for nobody), and 1 while it is out of bounds with a thrower. */
export const seenAStep = 14;
export const ballAt = 10;
export const holderAt = 12;
export const outAt = 13;

export interface Sight {
  readonly steps: number;
  /** `seenAStep` numbers a step. */
  readonly seen: Float64Array;
}

/** `like`: another run-through that looks the same for so many steps, which are taken over. */
export function sightOf(run: Run, like?: { readonly sight: Sight; readonly steps: number }): Sight {
  const steps = Math.ceil(run.end / sightMs) + 1;
  const sight: Sight = { steps, seen: new Float64Array(steps * seenAStep) };
  const from = like?.steps ?? 0;
  if (like !== undefined) sight.seen.set(like.sight.seen.subarray(0, from * seenAStep));
  OFFENCE.forEach((who, index) => watchMan(sight, run, who, index, from));
  watchBall(sight, run, from);
  return sight;
}

function timeAt(run: Run, step: number): number {
  return Math.min(run.end, step * sightMs);
}

function watchMan({ steps, seen }: Sight, run: Run, who: BodyId, index: number, from: number): void {
  const track = run.tracks[who];
  if (track === undefined) return;
  const { segments } = track;
  let next = 0;
  let current: Segment | undefined;
  let place: Point = track.start;
  for (let step = from; step < steps; step++) {
    const now = timeAt(run, step);
    while (next < segments.length && segments[next]!.t0 <= now) {
      current = segments[next++]!;
      place = current.path[current.path.length - 1]!;
    }
    const here = current !== undefined && now < current.t1 ? alongPiece(current.path[0]!, place, current.profile, now - current.t0) : place;
    seen[step * seenAStep + index * 2] = here.x;
    seen[step * seenAStep + index * 2 + 1] = here.y;
  }
}

function watchBall({ steps, seen }: Sight, run: Run, from: number): void {
  let next = 0;
  for (let step = from; step < steps; step++) {
    const now = timeAt(run, step);
    while (next + 1 < run.ball.length && run.ball[next + 1]!.t0 <= now) next++;
    const state = run.ball[next];
    if (state === undefined) continue;
    const at = step * seenAStep;
    seen[at + holderAt] = numberOf(state);
    if (state.kind === 'held') {
      seen[at + outAt] = state.out ? 1 : 0;
      const man = at + (Number(state.by) - 1) * 2;
      seen[at + ballAt] = seen[man]!;
      seen[at + ballAt + 1] = seen[man + 1]!;
      continue;
    }
    const share = state.t1 === state.t0 ? 1 : Math.min(1, (now - state.t0) / (state.t1 - state.t0));
    seen[at + ballAt] = state.from.x + (state.to.x - state.from.x) * share;
    seen[at + ballAt + 1] = state.from.y + (state.to.y - state.from.y) * share;
  }
}

function numberOf(state: BallState): number {
  if (state.kind === 'shot') return 0;
  return Number(state.kind === 'held' ? state.by : state.receiver);
}

/** The first step at which two run-throughs of a play do not look alike. What they share is the same stretch of the same track, by identity. */
export function partsAt(a: Run, b: Run): number {
  let until = Math.min(a.end, b.end, ballPartsAt(a.ball, b.ball));
  for (const who of OFFENCE) {
    const [one, other] = [a.tracks[who], b.tracks[who]];
    if (one === undefined || other === undefined || one.start.x !== other.start.x || one.start.y !== other.start.y) return 0;
    let at = 0;
    while (at < one.segments.length && one.segments[at] === other.segments[at]) at++;
    until = Math.min(until, one.segments[at]?.t0 ?? until, other.segments[at]?.t0 ?? until);
  }
  return Math.ceil(until / sightMs);
}

/** ms at which the ball's ways part. */
function ballPartsAt(a: readonly BallState[], b: readonly BallState[]): number {
  for (let at = 0; at < a.length && at < b.length; at++) {
    const [one, other] = [a[at]!, b[at]!];
    if (one.t0 !== other.t0 || one.kind !== other.kind || one.by !== other.by) return Math.min(one.t0, other.t0);
    if (one.kind === 'held' && other.kind === 'held' ? one.out !== other.out : !sameFlight(one, other)) return one.t0;
    if (one.t1 !== other.t1) return Math.min(one.t1, other.t1);
  }
  return Number.POSITIVE_INFINITY;
}

function sameFlight(one: BallState, other: BallState): boolean {
  if (one.kind === 'held' || other.kind === 'held') return false;
  const receivers = one.kind === 'flight' && other.kind === 'flight' ? one.receiver === other.receiver : one.kind === other.kind;
  return receivers && one.t1 === other.t1 && one.from.x === other.from.x && one.from.y === other.from.y && one.to.x === other.to.x && one.to.y === other.to.y;
}
