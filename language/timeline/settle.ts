/** Settles one line after the other: its geometry, its events, its times. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import { bodyRoom } from './bodies.ts';
import type { ActionItem, Branch, FreeItem, Item, Settled } from './branch.ts';
import { bodyAt, bodyOf, happen, legsOf, tell, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { delayed, edge, latestOf } from './graph.ts';
import { settleHandOff } from './hand-offs.ts';
import type { HandOffItem } from './hand-offs.ts';
import { hasBall, isBallAction, isKept, isScreenItem } from './items.ts';
import { lookEdges, settleLook } from './looks.ts';
import { moveEdges, runRoute, settleMove } from './moves.ts';
import { isRunning } from './running.ts';
import type { PassItem } from './passes.ts';
import { settlePass, tenths } from './passes.ts';
import { problem } from './problem-codes.ts';
import type { ScreenItem } from './screens.ts';
import { placeScreen } from './screen-places.ts';
import { mayBeUsedLater, usersOf } from './screens.ts';
import { shoot, shotFrom } from './shots.ts';
import { startEdges } from './start.ts';
import { tellMissedTimes, untilEvent } from './waits.ts';
import { layWay } from './ways.ts';

/** When the line would start, now that all it needs is settled. */
export function readyEdges(branch: Branch, item: Item): readonly Edge[] {
  if (item.kind === 'free') return freeEdges(branch, item);
  if (item.kind === 'look') return lookEdges(branch, item);
  const edges = startEdges(branch, item);
  return isRunning(item) ? moveEdges(branch, item, edges) : edges;
}

export function settleItem(branch: Branch, item: Item): void {
  const edges = item.ready?.edges ?? readyEdges(branch, item);
  if (item.kind === 'look') {
    settleLook(branch, item, edges);
    return;
  }
  branch.settled.set(item.key, item.kind === 'free' ? settleFree(branch, item, edges) : settleAction(branch, item, edges));
}

function settleAction(branch: Branch, item: ActionItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  if (action.who.startsWith('X') || action.kind === 'defend') return settleMoment(branch, item, edges);
  if (isRunning(item)) return settleMove(branch, item, edges);
  if (isScreenItem(item)) return settleScreen(branch, item, edges);
  if (isBallAction(action) && !hasBall(item)) {
    if (!isKept(branch, item)) tell(branch, problem('ball-elsewhere', action.id, { who: action.who, holder: item.holder ?? '' }));
    return settleMoment(branch, item, edges);
  }
  const settled = settleOnTheSpot(branch, item, edges);
  tellMissedTimes(branch, item, whenOf(branch, settled.start));
  return settled;
}

function settleOnTheSpot(branch: Branch, item: ActionItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  if (action.kind === 'pass') return settlePass(branch, item as PassItem, edges);
  if (action.kind === 'hand-off') return settleHandOff(branch, item as HandOffItem, edges);
  if (action.kind === 'shot') return settleShot(branch, item, edges);
  return settleHold(branch, item, edges);
}

/** A line that takes no time of its own: a defender's cue, a ball action without the ball. */
function settleMoment(branch: Branch, item: ActionItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  const start = happen(branch, `${action.id}:start`, 'start', action.id, action.who, edges);
  tellMissedTimes(branch, item, whenOf(branch, start));
  const place = branch.bodies.get(action.who)?.place ?? branch.scene.court.ring;
  return { start, done: start, free: start, place };
}

function settleScreen(branch: Branch, item: ScreenItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  const { at, facing, stays } = placeScreen(branch, item);
  const body = bodyOf(branch, action.who);
  const points = stays ? [body.place] : [body.place, at];
  const waits = untilHisManLeaves(branch, item, points, latestOf(branch.scene.graph, edges).at);
  const later = edges.map((way) => delayed(way, waits));
  const run = runRoute(branch, {
    action: action.id, who: action.who, edges: later, startsAt: latestOf(branch.scene.graph, later).at, limits: legsOf(branch, action.who), exit: 0, withBall: false, mayWait: true, arrival: 'set',
    route: { points, shoulders: [], partners: action.users },
  });
  tellMissedTimes(branch, item, run.startsAt);
  branch.screens.set(action.id, { action, at: body.place, facing, set: run.arrive, uses: new Map() });
  branch.scene.seenScreens.set(action.id, { at: body.place, set: whenOf(branch, run.arrive) });
  return { start: run.start, done: run.arrive, free: run.arrive, place: body.place };
}

const lookAheadMs = 50;

/** Where the screen is to stand a man it is set for may still be standing: ms by which the screener leaves later, so as not to come to stand on him. */
function untilHisManLeaves(branch: Branch, { action }: ScreenItem, points: readonly Point[], startsAt: number): number {
  const arrives = startsAt + layWay(points, legsOf(branch, action.who)).ms;
  const place = points[points.length - 1]!;
  // From where the screen is to be set a body away from him he is a rounded one away.
  const besideHim = bodyRoom(branch) - 0.05;
  let waits = 0;
  for (const user of action.users) {
    const body = branch.bodies.get(user);
    if (body === undefined || distance(bodyAt(body, arrives), place) >= branch.scene.level.bodyRadius) continue;
    let leaves = arrives;
    while (leaves < body.until && distance(bodyAt(body, leaves), place) < besideHim) leaves += lookAheadMs;
    if (leaves < body.until) waits = Math.max(waits, leaves - arrives);
  }
  return waits;
}

/** Free when the last user has passed; with none, after his usual hold (rule 10). */
function freeEdges(branch: Branch, item: FreeItem): readonly Edge[] {
  const placed = branch.screens.get(item.screen.key);
  const settled = branch.settled.get(item.screen.key)!;
  const uses = [...(placed?.uses.values() ?? [])].map((use) => edge(use, 'screen'));
  if (uses.length > 0) return uses;
  const edges = [edge(settled.done, 'screen', Math.round(branch.scene.level.screenHold * 1000))];
  // On a way where nobody uses it he does not know so before the ways part.
  const last = branch.steps[branch.steps.length - 1]!;
  if (item.step !== last && branch.opened.has(last)) edges.push(edge(branch.opened.get(last)!, 'step-opens'));
  return edges;
}

function settleFree(branch: Branch, item: FreeItem, edges: readonly Edge[]): Settled {
  const { screen } = item;
  const placed = branch.screens.get(screen.key);
  const free = happen(branch, `${screen.key}:free`, 'free', screen.key, screen.action.who, edges);
  if (placed !== undefined) placed.free = free;
  tellScreen(branch, item, free);
  return { start: free, done: free, free, place: branch.settled.get(screen.key)!.place };
}

function tellScreen(branch: Branch, item: FreeItem, free: number): void {
  const { screen } = item;
  const { action } = screen;
  const users = [...(branch.screens.get(screen.key)?.uses.keys() ?? [])];
  const here = item.step === branch.steps[branch.steps.length - 1];
  if (users.length === 0) {
    const refused = usersOf(branch, screen).length > 0;
    if (here && !refused && !isKept(branch, screen) && !usedInLook(branch, screen) && !mayBeUsedLater(branch, screen) && !isSetAnew(branch, screen)) tell(branch, problem('screen-unused', action.id, { who: action.who }));
    return;
  }
  const held = whenOf(branch, free) - whenOf(branch, branch.settled.get(screen.key)!.done);
  const goesOn = branch.items.some((other) => other.kind === 'action' && other.step === screen.step && other.order > screen.order && other.action.who === action.who);
  if (here || !goesOn || held <= branch.scene.level.screenHold * 1000) return;
  const last = branch.scene.steps.get(branch.steps[branch.steps.length - 1]!);
  tell(branch, problem('screen-holds-for-later', action.id, { who: action.who, user: users[users.length - 1]!, step: last?.name ?? '', seconds: tenths(held) }));
}

/** `4 re-screens`: the first of the two is not meant to be used. */
function isSetAnew(branch: Branch, screen: ScreenItem): boolean {
  return branch.items.some((other) => isScreenItem(other) && other.order > screen.order && other.action.who === screen.action.who && other.action.verb === 're-screen');
}

function usedInLook(branch: Branch, screen: ScreenItem): boolean {
  const looks = branch.steps.flatMap((step) => branch.scene.steps.get(step)?.looks ?? []);
  return looks.some(({ tail }) => tail.some((action) => (action.kind === 'move' || action.kind === 'dribble') && action.off.includes(screen.action.who)));
}

/** A written time that pulls a screener away before everybody has passed is obeyed and told (rule 10). */
export function tellMovingScreens(branch: Branch): void {
  for (const { action, at, set, uses } of branch.screens.values()) {
    const left = bodyOf(branch, action.who).stretches.find(({ segment }) => segment.t0 >= whenOf(branch, set) && segment.action !== action.id);
    if (left === undefined || distance(left.segment.path[0]!, at) > bodyRoom(branch)) continue;
    for (const [user, event] of uses) {
      const use = whenOf(branch, event);
      if (left.segment.t0 < use - 1) tell(branch, problem('screen-left-early', left.segment.action, { who: action.who, user, seconds: tenths(use - left.segment.t0) }, { related: [action.id], moment: left.segment.t0 }));
    }
  }
}

function settleShot(branch: Branch, item: ActionItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  if (action.kind !== 'shot') return settleMoment(branch, item, edges);
  const last = branch.ball[branch.ball.length - 1];
  const done = shoot(branch, { action: action.id, who: action.who, kind: action.shot.value, edges, offDribble: last?.kind === 'dribble' && last.by === action.who, ...shotFrom(branch, action) });
  return { start: done.start, done: done.shot, free: done.shot, place: bodyOf(branch, action.who).place };
}

/** Stands until something happens or for some seconds; else his next link decides. */
function settleHold(branch: Branch, item: ActionItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  const start = happen(branch, `${action.id}:start`, 'start', action.id, action.who, edges);
  const until = untilEvent(branch, item);
  const seconds = action.kind === 'hold' ? action.seconds : undefined;
  const place = commit(bodyOf(branch, action.who).place);
  if (until === undefined && seconds === undefined) return { start, done: start, free: start, place };
  const ends = [edge(start, 'own-last-action', Math.round((seconds ?? 0) * 1000)), ...(until === undefined ? [] : [edge(until, 'written-wait')])];
  const end = happen(branch, `${action.id}:arrive`, 'arrive', action.id, action.who, ends);
  return { start, done: end, free: end, place };
}
