/** One step of a path: its lines are settled in the order in which they start (rules 20, 21), whatever else they wait for. */
import type { Action, BodyId, Step } from '../play/play.ts';
import { bodyRoom } from './bodies.ts';
import type { ActionItem, Branch, Item } from './branch.ts';
import { breakCircle } from './circles.ts';
import { latestOf } from './graph.ts';
import { followBall } from './items.ts';
import { itemsOf, tieItems } from './order.ts';
import { routeOf } from './moves.ts';
import { isRunning, limitsOf } from './running.ts';
import { readyEdges, settleItem, tellMovingScreens } from './settle.ts';
import { gapToLine, layWay } from './ways.ts';
import { openStep } from './steps.ts';

/** Adds a step to the path and settles all of it that does not wait for a step still to come. */
export function settleStep(branch: Branch, step: Step): void {
  openStep(branch, step);
  const carried = branch.items.filter((item) => !branch.settled.has(item.key));
  branch.steps.push(step.key);
  const added = itemsOf(branch, step);
  for (const item of added) {
    branch.items.push(item);
    branch.index.set(item.key, item);
  }
  branch.holder = followBall(added, branch.holder);
  const open = [...carried, ...added];
  for (const item of carried) item.ready = undefined;
  tieItems(branch, open);
  untie(branch, open);
  settleOpen(branch, open);
  tellMovingScreens(branch);
}

/** Takes circles of waits apart before anything is settled, so that what a line must heed is known when its turn comes. */
function untie(branch: Branch, open: readonly Item[]): void {
  // Each round takes one wait out; there are only so many.
  for (let rounds = 0; rounds < 200; rounds++) {
    const stuck = stuckAmong(branch, open);
    if (stuck.length === 0) return;
    breakCircle(branch, stuck);
    tieItems(branch, open);
  }
}

/** Lines that would never become ready, whatever the times; those that hang on a step to come are left out. */
function stuckAmong(branch: Branch, open: readonly Item[]): readonly Item[] {
  const done = new Set<string>();
  let left = open;
  for (;;) {
    const rest = left.filter((item) => {
      const ready = item.needs.every(({ on }) => done.has(on) || branch.settled.has(on));
      if (ready) done.add(item.key);
      return !ready;
    });
    if (rest.length === left.length) return rest.filter((item) => !hangsOnLater(branch, item, new Set()));
    left = rest;
  }
}

function settleOpen(branch: Branch, items: readonly Item[]): void {
  let open = [...items];
  for (;;) {
    // What hangs on a step to come is handed on.
    const first = earliest(branch, open);
    if (first === undefined) return;
    const next = leavesFirst(branch, first, open) ?? first;
    open = open.filter((item) => item !== next);
    branch.leaving = leavingSoon(open);
    settleItem(branch, next);
  }
}

/** Of the lines with nothing left to wait for, the one that starts first; of two alike, the first in the text, the ball before bodies. */
function earliest(branch: Branch, open: readonly Item[]): Item | undefined {
  let best: Item | undefined;
  for (const item of open) {
    if (!item.needs.every(({ on }) => branch.settled.has(on))) continue;
    if (item.ready === undefined) {
      const edges = readyEdges(branch, item);
      item.ready = { edges, at: latestOf(branch.scene.graph, edges).at };
    }
    if (best === undefined || item.ready.at < best.ready!.at || (item.ready.at === best.ready!.at && comesBefore(item, best))) best = item;
  }
  return best;
}

/** A man who stands in the way, or on the spot, and starts before the other gets there, is settled first: who comes sees him gone. */
function leavesFirst(branch: Branch, item: Item, open: readonly Item[]): Item | undefined {
  if (!isRunning(item)) return undefined;
  const ready = open.filter((other): other is ActionItem => other !== item && other.kind === 'action' && other.ready !== undefined && bodyMoves(other.action) && other.action.who !== item.action.who);
  if (ready.length === 0) return undefined;
  const { points, partners } = routeOf(branch, item);
  const way = layWay(points, limitsOf(branch, item));
  const room = bodyRoom(branch);
  return ready.find(({ action, ready: start }) => {
    const body = branch.bodies.get(action.who);
    if (body === undefined || partners.includes(action.who) || start!.at > item.ready!.at + way.ms) return false;
    return way.pieces.some(({ from, to }) => gapToLine(from, to, body.place) < room);
  });
}

/** Men with nothing left to wait for but their turn, and when they leave. */
function leavingSoon(open: readonly Item[]): ReadonlyMap<BodyId, number> {
  const leaving = new Map<BodyId, number>();
  for (const item of open) if (item.ready !== undefined && isRunning(item)) leaving.set(item.action.who, Math.min(item.ready.at, leaving.get(item.action.who) ?? item.ready.at));
  return leaving;
}

function bodyMoves({ kind }: Action): boolean {
  return kind === 'move' || kind === 'dribble' || kind === 'screen';
}

function comesBefore(item: Item, other: Item): boolean {
  const rank = weight(item) - weight(other);
  return rank === 0 ? item.order < other.order : rank < 0;
}

function weight(item: Item): number {
  if (item.kind !== 'action') return 0;
  return item.action.kind === 'pass' || item.action.kind === 'hand-off' || item.action.kind === 'shot' || item.action.kind === 'dribble' ? 0 : 1;
}

function hangsOnLater(branch: Branch, item: Item, seen: Set<string>): boolean {
  if (seen.has(item.key)) return false;
  seen.add(item.key);
  return item.needs.some(({ on }) => {
    if (on.startsWith('later ')) return true;
    if (branch.settled.has(on)) return false;
    const other = branch.index.get(on);
    return other !== undefined && hangsOnLater(branch, other, seen);
  });
}
