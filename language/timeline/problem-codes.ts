import type { PartId } from '../play/play.ts';
import type { Problem } from '../names/problem.ts';
import type { Point } from '../court/point.ts';

/**
 * What scheduling can find wrong, and the numbers and names that come with it: seconds, metres, player numbers as written.
 * `checks/` gives each its words, its severity and its fixes.
 */
export interface TimelineProblems {
  /** Bodies come nearer than they have room for, after straight, round and waiting were tried (rule 20). */
  readonly 'bodies-overlap': { readonly who: string; readonly other: string; readonly gap: number };
  /** Two are sent to one spot; the later stops a body away (rule 20). */
  readonly 'spot-taken': { readonly who: string; readonly other: string };
  /** A man named as user of a screen goes another way (rule 8). */
  readonly 'screen-refused': { readonly who: string; readonly screener: string };
  /** Nobody comes off a screen set for somebody (rule 8). */
  readonly 'screen-unused': { readonly who: string };
  /** A written move pulls a screener away before his user has passed (rule 10). */
  readonly 'screen-left-early': { readonly who: string; readonly user: string; readonly seconds: number };
  /** A screener has to stand until a user of a later step comes (rule 10). */
  readonly 'screen-holds-for-later': { readonly who: string; readonly user: string; readonly step: string; readonly seconds: number };
  /** `off 4` where 4 is nowhere near the way (rule 8). */
  readonly 'off-nobody': { readonly who: string; readonly screener: string };
  /** The screeners are met in another order than written (rule 9). */
  readonly 'screen-order': { readonly who: string; readonly first: string; readonly second: string };
  /** The holder has to stand with the ball, or keep his dribble, for longer than is allowed or wise (rule 11). */
  readonly 'pass-waits': { readonly who: string; readonly to: string; readonly seconds: number; readonly limit: number };
  /** The throw-in leaves the hand after the count (rule 14). */
  readonly 'throw-in-late': { readonly who: string; readonly seconds: number; readonly limit: number };
  /** A look pinned to a moment that is past when the look before it is passed up (rule 15). */
  readonly 'pin-late': { readonly who: string; readonly seconds: number };
  /** A look pinned to something that never happens on its way. */
  readonly 'pin-unknown': { readonly who: string; readonly does: string; readonly pin: string };
  /** A wait for something that never happens on its way; it is dropped (rule 18). */
  readonly 'wait-unknown': { readonly who: string; readonly does: string };
  /** A circle of waits: every line in it is named in `related` (rule 19). */
  readonly 'waits-in-circle': { readonly lines: number };
  /** A written time that the legs, or what comes before, cannot keep (rules 18, 22). */
  readonly 'time-not-kept': { readonly who: string; readonly seconds: number };
  /** A time on a clock the play does not give (rule 18). */
  readonly 'clock-unknown': { readonly who: string; readonly clock: string };
  /** Of `left wing or elbow` the second takes so much longer than the one that is shown (rule 22). */
  readonly 'either-takes-longer': { readonly who: string; readonly seconds: number };
  /** `ends once 2 has the ball over half court`, and that never comes about on its way (rule 23). */
  readonly 'end-never-comes': { readonly who: string };
  /** More steps, all ways through counted, than are scheduled: the rest is left out. */
  readonly 'play-too-long': { readonly steps: number };
  /** A ball action by a man without the ball: it does not happen. */
  readonly 'ball-elsewhere': { readonly who: string; readonly holder: string };
}

export type TimelineProblemCode = keyof TimelineProblems;

export interface Where {
  readonly related?: readonly PartId[];
  readonly run?: string;
  readonly moment?: number;
  readonly spot?: Point;
}

/** A problem with the parameters its code asks for. */
export function problem<C extends TimelineProblemCode>(code: C, part: PartId, params: TimelineProblems[C], where: Where = {}): Problem {
  return { code, part, params: params as unknown as Readonly<Record<string, string | number>>, ...where };
}
