/** What there is to see of a run-through: 1–5 and the ball at even steps, flat numbers, so that five defenders cost little. */
import type { Point } from '../court/point.ts';
import type { BodyId } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import type { BallState, Run, Segment } from '../timeline/timeline.ts';
import { alongPiece } from '../timeline/ways.ts';

/** ms between two looks at the floor. */
export const sightMs = 100;

export interface Sight {
  readonly steps: number;
  /** x and y of 1–5, ten numbers a step. */
  readonly men: Float64Array;
  /** x and y of the ball, two numbers a step. */
  readonly ball: Float64Array;
  /** Who has the ball, or will catch it: 1–5; 0 for nobody. */
  readonly holder: Int8Array;
  /** 1 where the ball is out of bounds with a thrower. */
  readonly out: Int8Array;
}

export function sightOf(run: Run): Sight {
  const steps = Math.ceil(run.end / sightMs) + 1;
  const sight: Sight = { steps, men: new Float64Array(steps * 10), ball: new Float64Array(steps * 2), holder: new Int8Array(steps), out: new Int8Array(steps) };
  OFFENCE.forEach((who, index) => watchMan(sight, run, who, index));
  watchBall(sight, run);
  return sight;
}

function timeAt(run: Run, step: number): number {
  return Math.min(run.end, step * sightMs);
}

function watchMan({ steps, men }: Sight, run: Run, who: BodyId, index: number): void {
  const track = run.tracks[who];
  if (track === undefined) return;
  const { segments } = track;
  let next = 0;
  let current: Segment | undefined;
  let place: Point = track.start;
  for (let step = 0; step < steps; step++) {
    const now = timeAt(run, step);
    while (next < segments.length && segments[next]!.t0 <= now) {
      current = segments[next++]!;
      place = current.path[current.path.length - 1]!;
    }
    const here = current !== undefined && now < current.t1 ? alongPiece(current.path[0]!, place, current.profile, now - current.t0) : place;
    men[step * 10 + index * 2] = here.x;
    men[step * 10 + index * 2 + 1] = here.y;
  }
}

function watchBall({ steps, men, ball, holder, out }: Sight, run: Run): void {
  let at = 0;
  for (let step = 0; step < steps; step++) {
    const now = timeAt(run, step);
    while (at + 1 < run.ball.length && run.ball[at + 1]!.t0 <= now) at++;
    const state = run.ball[at];
    if (state === undefined) continue;
    holder[step] = numberOf(state);
    if (state.kind === 'held') {
      out[step] = state.out ? 1 : 0;
      const man = step * 10 + (Number(state.by) - 1) * 2;
      ball[step * 2] = men[man]!;
      ball[step * 2 + 1] = men[man + 1]!;
      continue;
    }
    const share = state.t1 === state.t0 ? 1 : Math.min(1, (now - state.t0) / (state.t1 - state.t0));
    ball[step * 2] = state.from.x + (state.to.x - state.from.x) * share;
    ball[step * 2 + 1] = state.from.y + (state.to.y - state.from.y) * share;
  }
}

function numberOf(state: BallState): number {
  if (state.kind === 'shot') return 0;
  return Number(state.kind === 'held' ? state.by : state.receiver);
}

/** The first step at which two run-throughs do not look alike, when both were sampled. */
export function partsAt(a: Sight, b: Sight): number {
  // The last step of the shorter one shows its end, which the longer one may not have.
  const steps = Math.min(a.steps, b.steps) - 1;
  for (let step = 0; step < steps; step++) {
    if (a.holder[step] !== b.holder[step] || a.out[step] !== b.out[step]) return step;
    if (a.ball[step * 2] !== b.ball[step * 2] || a.ball[step * 2 + 1] !== b.ball[step * 2 + 1]) return step;
    for (let index = step * 10; index < step * 10 + 10; index++) if (a.men[index] !== b.men[index]) return step;
  }
  return Math.max(0, steps);
}
