/** Passes (rules 11, 12, 14): when the ball leaves the hand so that it meets its man. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import type { BodyId, Pass, PassKind } from '../play/play.ts';
import type { ActionItem, Body, Branch, Need, Settled } from './branch.ts';
import { bodyAt, bodyOf, happen, legsOf, tell, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { edge, latestOf, varyingEdge } from './graph.ts';
import { driveAfter } from './arrivals.ts';
import { ballBefore, hasBall } from './items.ts';
import { runRoute } from './moves.ts';
import { problem } from './problem-codes.ts';
import { earliestMeeting, flightMs, lastToDo, meetingBy } from './receiving.ts';
import { keepRunning, stopAt } from './stops.ts';
import { stepIn } from './throw-in.ts';
import { nearSpot } from './ways.ts';
import { pointOf, standingOf } from './where.ts';

export type PassItem = ActionItem & { readonly action: Pass };

/** What the man a pass goes to, or who comes to take the ball, still has to do first. */
export function meetingNeedsOf(branch: Branch, item: ActionItem, receiver: BodyId): readonly Need[] {
  const last = lastToDo(branch, item, receiver);
  return last === undefined ? [] : [{ on: last.key, tie: 'meet' }];
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
  const meet = meetFrom(branch, item, edges, ready);
  const release = happen(branch, `${action.id}:release`, 'release', action.id, action.who, [...edges, ...meet.edges]);
  const from = commit(bodyAt(passer, whenOf(branch, release)));
  const flight = flightMs(branch, action.pass.value, from, meet.at);
  const caught = happen(branch, `${action.id}:catch`, 'catch', action.id, action.to, [varyingEdge(release, 'flight', 0, flight, 'pass', action.id), ...meet.catching]);
  if (action.throwIn) happen(branch, `${action.id}:touch`, 'touch', action.id, action.to, [edge(caught, 'flight')]);
  passer.staysFor = release;
  bodyOf(branch, action.to).staysFor = caught;
  const free = action.throwIn ? stepIn(branch, action.id, action.who, release) : release;
  if (meet.onTheMove !== undefined) catchOnTheMove(branch, item, caught);
  branch.ball.push({ kind: 'pass', action: action.id, by: action.who, to: action.to, pass: action.pass.value, throwIn: action.throwIn, begin: release, end: caught, from, at: meet.at });
  tellWaiting(branch, item, ready, whenOf(branch, release));
  return { start: release, released: release, done: caught, free, got: caught, gotBy: action.to, place: passer.place };
}

/** Caught on his way, which ends there, he goes on with the drive he is written next, or stops as fast as his legs allow (rule 12). */
function catchOnTheMove(branch: Branch, item: PassItem, caught: number): void {
  const { to } = item.action;
  const way = lastToDo(branch, item, to);
  if (driveAfter(branch, item, to, way) === undefined) stopAt(branch, to, whenOf(branch, caught), caught);
  else keepRunning(branch, to, whenOf(branch, caught));
  const settled = way && branch.settled.get(way.key);
  if (settled !== undefined) branch.settled.set(way!.key, { ...settled, done: caught, free: caught, place: bodyOf(branch, to).place });
}

/** Where he meets the ball if it leaves from where the passer then is, who may still be under way. */
function meetFrom(branch: Branch, item: PassItem, edges: readonly Edge[], ready: number): Meet {
  const passer = bodyOf(branch, item.action.who);
  let leaves = ready;
  for (let rounds = 0; ; rounds++) {
    const from = commit(bodyAt(passer, leaves));
    const meet = meetOf(branch, item, from, ready);
    leaves = latestOf(branch.scene.graph, [...edges, ...meet.edges]).at;
    // Sent to a spot he has been sent: that is not done twice.
    if (rounds === 3 || item.action.at !== undefined || distance(bodyAt(passer, leaves), from) < 0.01) return meet;
  }
}

function meetOf(branch: Branch, item: PassItem, from: Point, ready: number): Meet {
  const { action } = item;
  const receiver = bodyOf(branch, action.to);
  const last = lastToDo(branch, item, action.to);
  const settled = last && branch.settled.get(last.key);
  if (action.at !== undefined) return meetAtSpot(branch, item, from, ready, last);
  const kind = action.pass.value;
  // Where a circle of waits was broken he may have gone on from there already.
  if (settled === undefined || receiver.until > whenOf(branch, settled.done)) return meetAtRest(branch, kind, receiver, from, ready);
  if (action.early && last?.action.kind === 'move') {
    const early = earliestMeeting(branch, kind, action.to, from, ready, whenOf(branch, settled.start));
    if (early !== undefined && early.when < whenOf(branch, settled.done)) {
      const flight = flightMs(branch, kind, from, early.at);
      return { at: early.at, edges: [edge(settled.start, 'meets-cutter', early.when - flight - whenOf(branch, settled.start))], catching: [], onTheMove: early.when };
    }
  }
  const flight = flightMs(branch, kind, from, settled.place);
  return { at: settled.place, edges: [edge(settled.done, 'meets-cutter', -flight)], catching: [edge(settled.done, 'legs')] };
}

/** He has nothing to do before it; whatever he may still be at, he finishes. */
function meetAtRest(branch: Branch, kind: PassKind, receiver: Body, from: Point, ready: number): Meet {
  const way = receiver.stretches.at(-1);
  if (way === undefined || receiver.until <= ready) return { at: commit(bodyAt(receiver, ready)), edges: [], catching: [] };
  const runs = receiver.until - whenOf(branch, way.begin);
  return { at: receiver.place, edges: [edge(way.begin, 'meets-cutter', runs - flightMs(branch, kind, from, receiver.place))], catching: [edge(way.begin, 'legs', runs)] };
}

/** `at SPOT`: where his way comes by it, or he goes there for the ball. */
function meetAtSpot(branch: Branch, item: PassItem, from: Point, ready: number, last: ActionItem | undefined): Meet {
  const { action } = item;
  const settled = last && branch.settled.get(last.key);
  const receiver = bodyOf(branch, action.to);
  const spot = commit(pointOf(branch, action.at!.value, standingOf(branch, action.to, action.who)));
  const kind = action.pass.value;
  const flight = flightMs(branch, kind, from, spot);
  // A screener is not caught on his way: he sets his screen first.
  const passing = last?.action.kind !== 'move' ? undefined : meetingBy(branch, kind, action.to, from, ready, spot, settled === undefined ? ready : whenOf(branch, settled.start));
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
