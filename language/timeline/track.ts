import type { Point } from '../court/point.ts';
import type { BallState, Run, Track } from './timeline.ts';
import { alongPiece } from './ways.ts';

/** Where a body is at `ms` of its track: closed in t. Straight segments only, as the schedule makes them. */
export function trackAt(track: Track, ms: number): Point {
  const { segments } = track;
  let low = 0;
  let high = segments.length - 1;
  let found = -1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    if (segments[middle]!.t0 <= ms) {
      found = middle;
      low = middle + 1;
    } else high = middle - 1;
  }
  if (found === -1) return track.start;
  const segment = segments[found]!;
  const to = segment.path[segment.path.length - 1]!;
  return ms >= segment.t1 ? to : alongPiece(segment.path[0]!, to, segment.profile, ms - segment.t0);
}

/** The ball's state at `ms`; of two that meet there, the later. */
export function ballStateAt(run: Run, ms: number): BallState | undefined {
  let found: BallState | undefined;
  for (const state of run.ball) {
    if (state.t0 > ms) break;
    found = state;
  }
  return found;
}

/** Where the ball is on the floor plan at `ms`. */
export function ballAt(run: Run, ms: number): Point {
  const state = ballStateAt(run, ms);
  if (state === undefined) return { x: 0, y: 0 };
  if (state.kind === 'held') return trackAt(run.tracks[state.by]!, ms);
  const share = state.t1 === state.t0 ? 1 : Math.min(1, (ms - state.t0) / (state.t1 - state.t0));
  return { x: state.from.x + (state.to.x - state.from.x) * share, y: state.from.y + (state.to.y - state.from.y) * share };
}
