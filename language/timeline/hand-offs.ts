/** Hand-offs (rule 13): they meet at the holder's place, and both arrive together. */
import { commit, distance } from '../court/point.ts';
import type { HandOff } from '../play/play.ts';
import { bodyRoom } from './bodies.ts';
import type { ActionItem, Branch, Settled } from './branch.ts';
import { bodyOf, happen, legsOf, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { edge, latestOf, varyingEdge } from './graph.ts';
import { ownBefore } from './items.ts';
import { arrivalSpeed, exitSpeed } from './arrivals.ts';
import { runRoute } from './moves.ts';
import { lastToDo } from './receiving.ts';
import { reactionEdge } from './waits.ts';
import { layWay } from './ways.ts';
import { away } from './where.ts';

export type HandOffItem = ActionItem & { readonly action: HandOff };

// From shoulder to shoulder, besides the bodies themselves; common practice, no source.
const betweenHands = 0.15;

export function settleHandOff(branch: Branch, item: HandOffItem, edges: readonly Edge[]): Settled {
  const { action } = item;
  const holder = bodyOf(branch, action.who);
  const taker = bodyOf(branch, action.to);
  const ready = happen(branch, `${action.id}:start`, 'start', action.id, action.who, edges);
  const apart = bodyRoom(branch) + betweenHands;
  const meeting = distance(taker.place, holder.place) <= apart ? taker.place : commit(away(holder.place, taker.place, -apart));
  const limits = legsOf(branch, action.to);
  const points = [taker.place, meeting];
  const exit = exitSpeed(branch, { item, who: action.to, points, limits });
  const legs = layWay(points, limits, 0, arrivalSpeed(branch, points, exit)).ms;
  const coming = comingEdges(branch, item, ready, legs);
  const run = runRoute(branch, {
    action: action.id, who: action.to, joins: true, withBall: false, mayWait: true, limits, exit, arrival: 'none', edges: coming,
    route: { points, shoulders: [], partners: [action.who] }, startsAt: latestOf(branch.scene.graph, coming).at,
  });
  const take = happen(branch, `${action.id}:take`, 'take', action.id, action.to, [
    edge(ready, 'hand-over'),
    varyingEdge(run.start, 'legs', 0, run.way.ms, 'legs', action.to),
  ]);
  // He waits at the holder's shoulder where the holder comes later than planned; else he has the speed he came with.
  taker.exit = whenOf(branch, take) > taker.until ? 0 : run.way.exit;
  holder.staysFor = take;
  taker.staysFor = take;
  branch.ball.push({ kind: 'hand-off', action: action.id, by: action.who, to: action.to, begin: ready, end: take });
  return { start: ready, done: take, free: take, got: take, gotBy: action.to, place: holder.place };
}

/** The taker leaves after what he still has to do, and so as to come when the holder is there. */
function comingEdges(branch: Branch, item: HandOffItem, ready: number, legs: number): readonly Edge[] {
  const { to } = item.action;
  const last = lastToDo(branch, item, to) ?? ownBefore(branch, { order: item.order, action: { who: to } });
  const settled = last && branch.settled.get(last.key);
  const open = branch.opened.get(item.step) ?? branch.events[0]!;
  const asTaker: ActionItem = { ...item, action: { ...item.action, who: to } };
  const opened = item.step === branch.steps[0] ? edge(open, 'step-opens') : reactionEdge(branch, open, 'step-opens', asTaker);
  const free = settled === undefined ? opened : edge(settled.gotBy === to && settled.got !== undefined ? settled.got : settled.free, 'own-last-action');
  return [opened, free, varyingEdge(ready, 'hand-over', 0, -legs, 'legs', to)];
}
