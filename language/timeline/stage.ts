/** One step of a path: its lines are settled in the order in which they start (rules 20, 21), whatever else they wait for. */
import type { Branch, Item } from './branch.ts';
import { breakCircle } from './circles.ts';
import { latestOf } from './graph.ts';
import { followBall } from './items.ts';
import { itemsOf, tieItems } from './order.ts';
import { readyEdges, settleItem, tellMovingScreens } from './settle.ts';
import { openStep } from './steps.ts';
import type { Step } from '../play/play.ts';

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
  settleOpen(branch, open);
  tellMovingScreens(branch);
}

function settleOpen(branch: Branch, items: readonly Item[]): void {
  let open = [...items];
  while (open.length > 0) {
    const next = earliest(branch, open);
    if (next !== undefined) {
      settleItem(branch, next);
      open = open.filter((item) => item !== next);
      continue;
    }
    // What hangs on a step to come is handed on; anything else that is stuck stands in a circle.
    const stuck = open.filter((item) => !hangsOnLater(branch, item, new Set()));
    if (stuck.length === 0) return;
    breakCircle(branch, stuck);
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
