/** The man a pass goes to (rule 11): what he still has to do before he gets the ball, and how soon ball and man can meet. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import { passFlight } from '../motion/ball.ts';
import type { Action, BodyId, PassKind } from '../play/play.ts';
import type { ActionItem, Branch, Item } from './branch.ts';
import { bodyAt, bodyOf, withOne } from './branch.ts';
import { hasBall, isBallAction, nearestAbove, waitsFor } from './items.ts';
import { passingBy } from './ways.ts';

/** The last thing without the ball that the receiver still has to do before his next ball action, unless it waits for this pass. */
export function lastToDo(branch: Branch, item: Item, receiver: BodyId): ActionItem | undefined {
  const next = branch.items.find((other) => other.order > item.order && other.kind === 'action' && isBallAction(other.action) && other.action.who === receiver);
  const until = { order: item.kind === 'look' ? item.order : (next?.order ?? Number.POSITIVE_INFINITY) };
  const last = nearestAbove(branch, until, (other): other is ActionItem => {
    if (other.kind !== 'action' || other === item || item.ignored.has(`meet ${other.key}`)) return false;
    // What he did before he last had the ball is long done.
    if (hasBall(other) && involves(other.action, receiver)) return other.order < item.order;
    if (other.action.who !== receiver || (other.action.kind !== 'move' && other.action.kind !== 'screen')) return false;
    if (!waitsFor(branch, other, item.key)) return true;
    // He takes the ball standing, and starts with it in his hands or past.
    if (item.kind === 'action') other.heeds = withOne(other.heeds, item.key);
    return false;
  });
  return last !== undefined && isBallAction(last.action) ? undefined : last;
}

function involves(action: Action, who: BodyId): boolean {
  return action.who === who || ((action.kind === 'pass' || action.kind === 'hand-off') && action.to === who);
}

/** ms that a pass of this kind is in the air. */
export function flightMs(branch: Branch, kind: PassKind, from: Point, to: Point): number {
  return passFlight(kind, distance(from, to), branch.scene.level).durationMs;
}

const meetingStepMs = 20;

/** Where he comes by a spot, no sooner than `since`; where the ball cannot be there in time, as soon after as it can. */
export function meetingBy(branch: Branch, kind: PassKind, receiver: BodyId, from: Point, ready: number, spot: Point, since: number): { readonly at: Point; readonly when: number } | undefined {
  const there = passingBy(bodyOf(branch, receiver).stretches, spot, Math.max(ready, since));
  return there !== undefined && ready + flightMs(branch, kind, from, there.at) > there.when ? earliestMeeting(branch, kind, receiver, from, ready, since) : there;
}

/** The first place on his way where ball and man can be at once, no sooner than `since`; `undefined` where he is through before the ball comes. */
export function earliestMeeting(branch: Branch, kind: PassKind, receiver: BodyId, from: Point, ready: number, since = ready): { readonly at: Point; readonly when: number } | undefined {
  const body = bodyOf(branch, receiver);
  for (let when = Math.max(ready, since); when <= body.until; when += meetingStepMs) {
    const at = bodyAt(body, when);
    if (ready + flightMs(branch, kind, from, at) <= when) return { at: commit(at), when };
  }
  return undefined;
}
