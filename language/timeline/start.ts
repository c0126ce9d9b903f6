/** When a line starts (rules 3–6, 12, 15, 18): the edges into its first event. */
import type { ActionItem, Branch, Settled } from './branch.ts';
import type { Edge } from './graph.ts';
import { delayed, edge, varyingEdge } from './graph.ts';
import { ballBefore, chainedTo, freeKey, freeOrSet, hasBall, isScreenItem, lookBefore, ownBefore } from './items.ts';
import type { Reason } from './timeline.ts';
import { laterMs, reactionEdge, waitEdges } from './waits.ts';

export function startEdges(branch: Branch, item: ActionItem): readonly Edge[] {
  const edges: Edge[] = [];
  const chained = chainedTo(branch, item).filter(({ key }) => branch.settled.has(key));
  if (chained.length === 0) edges.push(openEdge(branch, item));
  for (const before of chained) edges.push(goOnEdge(branch, item, before, 'chain'));
  const own = ownBefore(branch, item);
  if (own !== undefined && branch.settled.has(own.key) && !chained.includes(own)) edges.push(goOnEdge(branch, item, own, 'own-last-action'));
  if (hasBall(item)) edges.push(...ballEdges(branch, item));
  for (const pass of item.heeds) {
    const taken = branch.settled.get(pass);
    if (taken !== undefined) edges.push(edge(taken.done, 'own-last-action'));
  }
  edges.push(...waitEdges(branch, item));
  const later = laterMs(item);
  return later === 0 ? edges : edges.map((way) => ({ ...delayed(way, later), reason: 'written-wait' }));
}

/** Nobody reacts to the call twice: its start delay is in the first step's opening. */
function openEdge(branch: Branch, item: ActionItem): Edge {
  const open = branch.opened.get(item.step) ?? branch.events[0]!;
  return item.step === branch.steps[0] ? edge(open, 'step-opens') : reactionEdge(branch, open, 'step-opens', item);
}

/** After his own link, free from it; after a ball coming to him, at the catch; after somebody else's, when it is done, and a reaction. */
function goOnEdge(branch: Branch, item: ActionItem, before: ActionItem, reason: Reason): Edge {
  const { who } = item.action;
  const settled = branch.settled.get(before.key)!;
  if (before.action.who === who) {
    const key = isScreenItem(before) ? freeOrSet(item, before) : before.key;
    const freed = key === freeKey(before.key) && !item.ignored.has(`own ${key}`) && !item.ignored.has(`chain ${key}`) ? branch.settled.get(key) : settled;
    return edge((freed ?? settled).free, reason);
  }
  if (settled.gotBy === who && settled.got !== undefined) return edge(settled.got, reason);
  return reactionEdge(branch, settled.done, reason, item);
}

/** Ball actions in text order: after the one before, and after the looks above are passed up. A pass out of a catch takes a moment. */
function ballEdges(branch: Branch, item: ActionItem): readonly Edge[] {
  const edges: Edge[] = [];
  const before = ballBefore(branch, item);
  const settled = before && branch.settled.get(before.key);
  if (settled !== undefined) edges.push(afterBall(branch, item, settled));
  const look = lookBefore(branch, item);
  const read = look && branch.looks.get(look.look.id);
  if (read !== undefined && !item.ignored.has(`look ${look!.key}`)) edges.push(edge(read.passedUp, 'look-order'));
  return edges;
}

function afterBall(branch: Branch, item: ActionItem, settled: Settled): Edge {
  const caught = settled.got !== undefined && settled.gotBy === item.action.who;
  if (!caught) return edge(settled.done, 'ball-order');
  if (item.action.kind !== 'pass') return edge(settled.got!, 'ball-order');
  return varyingEdge(settled.got!, 'catch-to-release', 0, passReleaseMs(branch), 'release', item.key);
}

export function passReleaseMs(branch: Branch): number {
  return Math.round(branch.scene.level.passRelease * 1000);
}
