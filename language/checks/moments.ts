// What the checks of the floor ask of a run: which action somebody is at, who has the ball when, how long after what a moment comes.
import { message, type Message } from '../message/message.ts';
import type { BodyId, PartId } from '../play/play.ts';
import type { BallState, Run } from '../timeline/timeline.ts';
import type { Subject, Way } from './subject.ts';

/** The last action a body has begun by a moment, or his place in `from`. */
export function partBefore(run: Run, who: BodyId, moment: number): PartId {
  return run.tracks[who]?.segments.findLast(({ t0 }) => t0 <= moment)?.action ?? 'from';
}

/** What the ball does at a moment: the pass under way, the holder's dribble under way or to come, else the pass or shot he is about to give. */
export function ballPartAt(way: Way, moment: number): PartId {
  const { run } = way;
  const at = run.ball.findIndex(({ t0, t1 }) => t0 <= moment && moment < t1);
  const state = run.ball[at];
  if (state !== undefined && state.kind !== 'held') return state.action;
  const dribble = state === undefined ? undefined : run.tracks[state.by]?.segments.find(({ t1, withBall }) => withBall && moment < t1);
  const given = run.ball.slice(Math.max(0, at)).find((one) => one.kind !== 'held');
  if (dribble !== undefined && (given === undefined || dribble.t0 < given.t0)) return dribble.action;
  if (given !== undefined) return given.action;
  return way.steps.at(-1)?.key ?? 'play';
}

export type Held = BallState & { readonly kind: 'held' };

/** The ball out of bounds with the thrower, up to the release; `undefined` where the play starts live. */
export function throwInOf(run: Run): Held | undefined {
  const states = run.ball.filter((state): state is Held => state.kind === 'held' && state.out);
  const [first, last] = [states[0], states.at(-1)];
  return first === undefined || last === undefined ? undefined : { ...first, t1: last.t1 };
}

/** What the counts of a run are counted from, behind a time. */
export function countedFrom({ play }: Subject): Message {
  return play.start.throwIn === undefined ? message('after the call') : message('after the touch');
}
