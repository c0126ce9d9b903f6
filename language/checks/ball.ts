// Who has the ball along a run-through, and how he came by it.
import { message, type Words } from '../message/message.ts';
import type { Action, BodyId } from '../play/play.ts';
import type { BallState, Run } from '../timeline/timeline.ts';
import { wordsOf, type Subject, type Way } from './subject.ts';

export interface Possession {
  readonly holder: BodyId | undefined;
  /** What brought him the ball, or his own dribble since. Absent: he has had it from the start. */
  readonly by?: Action;
  readonly dribble: 'not yet' | 'live' | 'used';
}

export interface BallMoment {
  readonly action: Action;
  /** As it was before the action. */
  readonly before: Possession;
}

/**
 * Every action of a way with who had the ball before it. Ball links happen in text order (rule 3). An action of one who lacks the ball
 * changes nothing, except that a man who passes without it is taken to have got it: one mistake, one finding.
 */
export function walkBall(subject: Subject, way: Way): readonly BallMoment[] {
  let now: Possession = { holder: startHolder(subject), dribble: 'not yet' };
  return way.actions.map((action) => {
    const before = now;
    now = after(before, action);
    return { action, before };
  });
}

function startHolder({ play }: Subject): BodyId {
  return String(play.start.throwIn?.by.value ?? play.start.ball.value) as BodyId;
}

function after(before: Possession, action: Action): Possession {
  switch (action.kind) {
    case 'pass':
    case 'hand-off':
      return { holder: action.to, by: action, dribble: 'not yet' };
    case 'dribble':
      return { holder: action.who, by: action, dribble: 'live' };
    case 'shot':
      return { holder: undefined, by: action, dribble: 'not yet' };
    case 'hold':
      return action.who === before.holder && action.verb === 'pick-up' ? { ...before, dribble: 'used' } : before;
    default:
      return before;
  }
}

/** The ball's state at a moment; the last one holds after the end. */
export function ballAt(run: Run, moment: number): BallState | undefined {
  return run.ball.find((state) => moment < state.t1) ?? run.ball.at(-1);
}

/** Who holds the ball at a moment, and since when. */
export function heldAt(run: Run, moment: number): (BallState & { readonly kind: 'held' }) | undefined {
  const state = ballAt(run, moment);
  return state?.kind === 'held' ? state : undefined;
}

/** `“1 passes to 3”`, `he starts with it`: why this man has the ball. */
export function howHeGotIt(subject: Subject, possession: Possession): Words {
  return possession.by === undefined ? message('he starts with it') : quoted(subject, possession.by);
}

/** `“4 skips to 1” has come by then`: a pass that is written later and yet there sooner. */
export function howItCame(subject: Subject, way: Way, who: BodyId, moment: number): Words {
  const last = way.run.ball.findLast((state) => state.t1 <= moment && state.kind === 'flight' && state.receiver === who);
  const pass = last?.kind === 'flight' ? way.actions.find(({ id }) => id === last.action) : undefined;
  return pass === undefined ? message('he has caught it by then') : message('{pass} has come by then', { pass: quoted(subject, pass) });
}

function quoted(subject: Subject, action: Action): string {
  const words = wordsOf(subject, action.id).replace(/^(then|and|,)\s+/i, '');
  return `“${new RegExp(`(?<![\\w.])${action.who}\\b`, 'i').test(words) ? words : `${action.who} ${words}`}”`;
}
