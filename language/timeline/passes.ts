/** Passes (rules 11, 12, 14): when the ball leaves the hand so that it meets its man. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import { passFlight } from '../motion/ball.ts';
import type { Action, BodyId, HandOff, Pass, PassKind } from '../play/play.ts';
import type { ActionItem, Branch, Item, Need, Settled } from './branch.ts';
import { bodyAt, bodyOf, happen, legsOf, tell, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { edge, latestOf, varyingEdge } from './graph.ts';
import { ballBefore, hasBall, isBallAction, nearestAbove, waitsFor } from './items.ts';
import { runRoute } from './moves.ts';
import { problem } from './problem-codes.ts';
import { stopAt } from './stops.ts';
import { stepIn } from './throw-in.ts';
import { nearSpot, passingBy } from './ways.ts';
import { pointOf, standingOf } from './where.ts';

export type PassItem = ActionItem & { readonly action: Pass };

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
    if (item.kind === 'action') other.heeds.add(item.key);
    return false;
  });
  return last !== undefined && isBallAction(last.action) ? undefined : last;
}

function involves(action: Action, who: BodyId): boolean {
  return action.who === who || ((action.kind === 'pass' || action.kind === 'hand-off') && action.to === who);
}

export function passNeeds(branch: Branch, item: ActionItem, receiver: BodyId): readonly Need[] {
  const last = lastToDo(branch, item, receiver);
  return last === undefined ? [] : [{ on: last.key, tie: 'meet' }];
}

/** A taker comes to the holder: what he still has to do first, and where the holder then is. */
export function takeNeeds(branch: Branch, item: ActionItem & { readonly action: HandOff } | ActionItem, taker: BodyId): readonly Need[] {
  return passNeeds(branch, item, taker);
}

export function flightMs(branch: Branch, kind: PassKind, from: Point, to: Point): number {
  return passFlight(kind, distance(from, to), branch.scene.level).durationMs;
}

interface Meet {
  readonly at: Point;
  readonly edges: readonly Edge[];
  /** Further causes of the catch. */
  readonly catching: readonly Edge[];
  /** He is caught on the move, this many ms after the call. */
  readonly onTheMove?: number;
}

export function settlePass(branch: Branch, item: PassItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  const passer = bodyOf(branch, action.who);
  const ready = latestOf(branch.scene.graph, edges).at;
  const from = commit(bodyAt(passer, ready));
  const meet = meetOf(branch, item, from, ready);
  const flight = flightMs(branch, action.pass.value, from, meet.at);
  const release = happen(branch, `${action.id}:release`, 'release', action.id, action.who, [...edges, ...meet.edges]);
  const caught = happen(branch, `${action.id}:catch`, 'catch', action.id, action.to, [varyingEdge(release, 'flight', 0, flight, 'pass', action.id), ...meet.catching]);
  if (action.throwIn) happen(branch, `${action.id}:touch`, 'touch', action.id, action.to, [edge(caught, 'flight')]);
  const free = action.throwIn ? stepIn(branch, action.id, action.who, release) : release;
  if (meet.onTheMove !== undefined) stopAt(branch, action.to, whenOf(branch, caught), caught);
  branch.ball.push({ kind: 'pass', action: action.id, by: action.who, to: action.to, pass: action.pass.value, throwIn: action.throwIn, begin: release, end: caught, from, at: meet.at });
  tellWaiting(branch, item, ready, whenOf(branch, release));
  return { start: release, released: release, done: caught, free, got: caught, gotBy: action.to, place: passer.place };
}

function meetOf(branch: Branch, item: PassItem, from: Point, ready: number): Meet {
  const { action } = item;
  const receiver = bodyOf(branch, action.to);
  const last = lastToDo(branch, item, action.to);
  const settled = last && branch.settled.get(last.key);
  if (action.at !== undefined) return meetAtSpot(branch, item, from, ready, settled);
  const kind = action.pass.value;
  if (settled === undefined) return { at: commit(bodyAt(receiver, ready)), edges: [], catching: [] };
  if (action.early) {
    const early = earliestMeeting(branch, kind, action.to, from, ready);
    if (early !== undefined && early.when < whenOf(branch, settled.done)) {
      const flight = flightMs(branch, kind, from, early.at);
      return { at: early.at, edges: [edge(settled.start, 'meets-cutter', early.when - flight - whenOf(branch, settled.start))], catching: [], onTheMove: early.when };
    }
  }
  const flight = flightMs(branch, kind, from, settled.place);
  return { at: settled.place, edges: [edge(settled.done, 'meets-cutter', -flight)], catching: [edge(settled.done, 'legs')] };
}

/** `at SPOT`: where his way comes by it, or he goes there for the ball. */
function meetAtSpot(branch: Branch, item: PassItem, from: Point, ready: number, settled: Settled | undefined): Meet {
  const { action } = item;
  const receiver = bodyOf(branch, action.to);
  const spot = commit(pointOf(branch, action.at!.value, standingOf(branch, action.to, action.who)));
  const kind = action.pass.value;
  const flight = flightMs(branch, kind, from, spot);
  const passing = settled === undefined ? undefined : passingBy(receiver.stretches, spot, ready);
  if (settled !== undefined && passing !== undefined && distance(receiver.place, spot) > nearSpot) {
    return { at: passing.at, edges: [edge(settled.start, 'meets-cutter', passing.when - flightMs(branch, kind, from, passing.at) - whenOf(branch, settled.start))], catching: [], onTheMove: passing.when };
  }
  if (distance(receiver.place, spot) <= nearSpot) {
    const place = receiver.place;
    return settled === undefined ? { at: place, edges: [], catching: [] } : { at: place, edges: [edge(settled.done, 'meets-cutter', -flightMs(branch, kind, from, place))], catching: [edge(settled.done, 'legs')] };
  }
  const free = settled?.free ?? branch.opened.get(item.step) ?? branch.events[0]!;
  const run = runRoute(branch, {
    action: action.id, who: action.to, joins: true, withBall: false, mayWait: true, exit: 0, limits: legsOf(branch, action.to),
    route: { points: [receiver.place, spot], shoulders: [], partners: [] }, edges: [edge(free, 'own-last-action')], startsAt: whenOf(branch, free),
  });
  return { at: receiver.place, edges: [edge(run.arrive, 'meets-cutter', -flight)], catching: [edge(run.arrive, 'legs')] };
}

const meetingStepMs = 20;

/** The first place on his way where ball and man can be at once, `undefined` where he is through before the ball comes. */
export function earliestMeeting(branch: Branch, kind: PassKind, receiver: BodyId, from: Point, ready: number): { readonly at: Point; readonly when: number } | undefined {
  const body = bodyOf(branch, receiver);
  for (let when = ready; when <= body.until; when += meetingStepMs) {
    const at = bodyAt(body, when);
    if (ready + flightMs(branch, kind, from, at) <= when) return { at: commit(at), when };
  }
  return undefined;
}

const longestAtRestMs = 2000;

/** A wait above the closely guarded count, or two seconds at rest, is told with its reason; so is a throw-in after its count. */
function tellWaiting(branch: Branch, item: PassItem, ready: number, release: number): void {
  const { action } = item;
  const { counts } = branch.scene.rules;
  if (action.throwIn) {
    const limit = counts.throwIn.value;
    if (release > limit * 1000) tell(branch, problem('throw-in-late', action.id, { who: action.who, seconds: tenths(release), limit }, { moment: release }));
    return;
  }
  const before = ballBefore(branch, item);
  const dribbling = before?.action.kind === 'dribble' && hasBall(before);
  const limitMs = dribbling ? (counts.closelyGuarded?.seconds.value ?? 5) * 1000 : longestAtRestMs;
  // What is told in tenths is judged in tenths.
  if (tenths(release - ready) * 1000 <= limitMs) return;
  const last = lastToDo(branch, item, action.to);
  tell(branch, problem('pass-waits', action.id, { who: action.who, to: action.to, seconds: tenths(release - ready), limit: limitMs / 1000 }, { ...(last && { related: [last.key] }), moment: release }));
}

export function tenths(ms: number): number {
  return Math.round(ms / 100) / 10;
}
