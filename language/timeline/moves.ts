/** Bodies under way, with and without the ball (rules 8, 9, 12, 20). */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import type { LegLimits } from '../motion/levels.ts';
import type { ActionId, BodyId } from '../play/play.ts';
import { arrivalSpeed, entrySpeed, exitSpeed } from './arrivals.ts';
import type { Errand, Planned } from './bodies.ts';
import { planLater, planWay } from './bodies.ts';
import type { ActionItem, Body, Branch, PlacedScreen, Settled, UsedScreen } from './branch.ts';
import { bodyOf, happen, tell, whenOf } from './branch.ts';
import { cornersOfCut, endOfMove } from './ends.ts';
import type { Edge } from './graph.ts';
import { delayed, edge, latestOf, varyingEdge } from './graph.ts';
import { hasBall, isKept, isScreenItem, ownBefore } from './items.ts';
import { problem } from './problem-codes.ts';
import { slipsFrom } from './screen-places.ts';
import type { Running } from './running.ts';
import { limitsOf } from './running.ts';
import { passesScreener, shoulder, usedScreens } from './screens.ts';
import { laterMs, tellMissedTimes } from './waits.ts';
import type { Way } from './ways.ts';
import { layWay, msNearest, shareNearest } from './ways.ts';
import { placeLeft, pointOf, situationOf, standingOf } from './where.ts';

interface Shoulder {
  readonly used: UsedScreen;
  readonly at: Point;
  readonly placed?: PlacedScreen;
}

export interface Route {
  readonly points: readonly Point[];
  readonly shoulders: readonly Shoulder[];
  readonly partners: readonly BodyId[];
  /** Partners may touch until a moment after the last shoulder, or after he has left; without it, all along. */
  readonly parts?: true;
}

/** ms in which partners of a screen or a hand-off come apart; common practice, no source. */
const comingApartMs = 1000;

/** The corners of a move: where he is, the shoulders he brushes, the spots he passes through, the end. */
export function routeOf(branch: Branch, item: Running): Route {
  const { action } = item;
  const own = bodyOf(branch, action.who).place;
  const { corners, end } = goalsOf(branch, item);
  const points: Point[] = [own];
  const shoulders: Shoulder[] = [];
  const target = corners[0] ?? end;
  for (const used of usedScreens(branch, item)) {
    const placed = used.screen && branch.screens.get(used.screen.key);
    const screener = bodyOf(branch, used.by);
    const at = placed?.at ?? screener.place;
    const from = points[points.length - 1]!;
    if (!used.written && isGone(branch, item, used)) continue;
    const gate = gateOf(branch, item, used.by);
    if (gate !== undefined) {
      shoulders.push({ used, at: gate, placed });
      continue;
    }
    if (!(placed !== undefined && used.written) && !passesScreener(from, target, at, used.written)) {
      if (distance(from, target) > 0.5) tellMissed(branch, item, used);
      continue;
    }
    const corner = shoulder(branch, action.who, from, target, at);
    shoulders.push({ used, at: corner[0]!, placed });
    points.push(...corner);
  }
  tellOrder(branch, item, shoulders.filter(({ used }) => gateOf(branch, item, used.by) === undefined), own, target);
  return { points: [...points, ...corners, end], shoulders, partners: [...usedScreens(branch, item).map(({ by }) => by), ...partnersBefore(branch, item)], parts: true };
}

/** `between 4 and 5` of two who screen: he brushes neither shoulder but goes through the middle of the gate. */
function gateOf(branch: Branch, item: Running, by: BodyId): Point | undefined {
  const gate = item.action.via.find((via) => via.kind === 'between' && [via.a, via.b].includes(by) && [via.a, via.b].every((end) => typeof end === 'string' && item.action.off.includes(end)));
  return gate && commit(pointOf(branch, gate, standingOf(branch, item.action.who, item.holder)));
}

/** Leaving his screen, he may brush those who came off him; after a hand-off, the other man. */
function partnersBefore(branch: Branch, item: Running): readonly BodyId[] {
  const before = ownBefore(branch, item);
  if (before === undefined) return [];
  if (before.action.kind === 'hand-off') return [before.action.who, before.action.to];
  return isScreenItem(before) ? before.action.users : [];
}

function goalsOf(branch: Branch, item: Running): { readonly corners: readonly Point[]; readonly end: Point } {
  const { action } = item;
  const standing = standingOf(branch, action.who, item.holder);
  const corners: Point[] = [];
  const slipFrom = slipsFrom(branch, item);
  if (slipFrom !== undefined) corners.push(slipFrom);
  corners.push(...action.via.map((via) => pointOf(branch, via, standing)));
  if (action.kind === 'move' && action.style === 'fill' && action.to?.value.kind === 'player' && branch.bodies.has(action.to.value.who)) {
    return { corners, end: placeLeft(branch, action.to.value.who, whenOf(branch, branch.opened.get(item.step) ?? branch.events[0]!)) };
  }
  if (action.to !== undefined) {
    const end = commit(pointOf(branch, action.to.value, standing));
    return { corners: [...corners, ...cornersOfCut(situationOf(branch, standing), action, standing.own, end)], end };
  }
  const { via, to } = endOfMove(branch, action, standing);
  return { corners: [...corners, ...via], end: commit(to) };
}

/** Nobody waits for a man of a later step who is not written `off` him: the screener may have left. */
function isGone(branch: Branch, item: Running, used: UsedScreen): boolean {
  const placed = used.screen && branch.screens.get(used.screen.key);
  if (placed === undefined || used.screen === undefined || used.screen.step === item.step) return false;
  return distance(placed.at, bodyOf(branch, used.by).place) > 0.1;
}

function tellMissed(branch: Branch, item: Running, used: UsedScreen): void {
  const { action } = item;
  if (!used.written && used.screen?.step !== item.step) return;
  if (used.written) tell(branch, problem('off-nobody', action.id, { who: action.who, screener: used.by }));
  else tell(branch, problem('screen-refused', used.on, { who: action.who, screener: used.by }, { related: [action.id] }));
}

function tellOrder(branch: Branch, item: Running, shoulders: readonly Shoulder[], from: Point, to: Point): void {
  const written = shoulders.filter(({ used }) => used.written);
  for (let index = 1; index < written.length; index++) {
    const first = written[index - 1]!;
    const second = written[index]!;
    if (shareNearest(from, to, first.at) <= shareNearest(from, to, second.at) + 0.01) continue;
    tell(branch, problem('screen-order', item.action.id, { who: item.action.who, first: first.used.by, second: second.used.by }));
  }
}

/** A user leaves so as to reach each screener's shoulder a beat after he is set, never before (rule 9). */
function screenEdges(branch: Branch, route: Route, way: Way, who: BodyId): readonly Edge[] {
  const beat = Math.round(branch.scene.level.beat * 1000);
  return route.shoulders.flatMap(({ placed, at }) => {
    if (placed === undefined) return [];
    return [varyingEdge(placed.set, 'screen', beat, -msNearest(way, at), 'legs', who)];
  });
}

/** The edges into a move's start, its screens included; geometry without anybody in the way. Seconds later count from the screen too (rule 18). */
export function moveEdges(branch: Branch, item: Running, edges: readonly Edge[]): readonly Edge[] {
  if (usedScreens(branch, item).length === 0) return edges;
  const route = routeOf(branch, item);
  return [...edges, ...screenEdges(branch, route, layWay(route.points, limitsOf(branch, item), 0, arrivalSpeed(branch, route.points, 0)), item.action.who).map((way) => delayed(way, laterMs(item)))];
}

export function settleMove(branch: Branch, item: Running, edges: readonly Edge[]): Settled {
  const { action } = item;
  if (action.kind === 'dribble' && !hasBall(item) && !isKept(branch, item)) tell(branch, problem('ball-elsewhere', action.id, { who: action.who, holder: item.holder ?? '' }));
  const route = routeOf(branch, item);
  const { at } = latestOf(branch.scene.graph, edges);
  const limits = limitsOf(branch, item);
  const run = runRoute(branch, {
    action: action.id, who: action.who, route, edges, startsAt: at, limits, exit: exitSpeed(branch, { item, who: action.who, points: route.points, limits, startsAt: at }),
    withBall: action.kind === 'dribble' && hasBall(item), mayWait: true,
  });
  tellMissedTimes(branch, item, run.startsAt);
  tellFarther(branch, item, route);
  if (action.kind === 'dribble' && hasBall(item)) branch.ball.push({ kind: 'dribble', action: action.id, by: action.who, begin: run.start, end: run.arrive });
  return { start: run.start, done: run.arrive, free: run.arrive, place: bodyOf(branch, action.who).place };
}

/** Both places look alike on the clock when they are no farther apart than this; common practice, no source. */
const aboutAsSoonMs = 300;

/** Of `left wing or elbow` the first is shown; one that takes longer is told, because the times do not hold for it (rule 22). */
function tellFarther(branch: Branch, item: Running, { points }: Route): void {
  const { action } = item;
  if (action.to?.value.kind !== 'either') return;
  const standing = { ...standingOf(branch, action.who, item.holder), own: points[0]! };
  const msTo = (end: Point): number => {
    const way = [...points.slice(0, -1), end];
    return layWay(way, limitsOf(branch, item), 0, arrivalSpeed(branch, way, 0)).ms;
  };
  const [first, ...others] = action.to.value.options.map((place) => msTo(commit(pointOf(branch, place, standing))));
  const longer = Math.max(...others) - first!;
  if (longer > aboutAsSoonMs) tell(branch, problem('either-takes-longer', action.id, { who: action.who, seconds: Math.round(longer / 100) / 10 }));
}

export interface RunOrder {
  readonly action: ActionId;
  readonly who: BodyId;
  readonly route: Route;
  readonly edges: readonly Edge[];
  readonly startsAt: number;
  readonly limits: LegLimits;
  readonly exit: number;
  readonly withBall: boolean;
  readonly mayWait: boolean;
  /** The event of being there: `set` for a screen; none where something else follows from it. */
  readonly arrival?: 'arrive' | 'set' | 'none';
  /** For a man who runs on somebody else's line, as the taker of a hand-off. */
  readonly joins?: boolean;
  /** Men who are brought together there, as at the boards: each goes round the others where he can, and where he cannot nothing is told. */
  readonly untold?: true;
}

export interface RunDone {
  readonly start: number;
  readonly startsAt: number;
  readonly arrive: number;
  readonly way: Way;
}

/** Runs a route: plans it round the others, tells what cannot be, notes start, shoulders and arrival, and lays the stretches down. */
export function runRoute(branch: Branch, wanted: RunOrder): RunDone {
  const body = bodyOf(branch, wanted.who);
  const order = notBefore(branch, wanted, body);
  const { plan, delay } = planRun(branch, order);
  if (order.untold !== true) tellPlan(branch, order, plan);
  const { way } = plan;
  const start = happen(branch, order.joins ? `${order.action}:start.${order.who}` : `${order.action}:start`, 'start', order.action, order.who, order.edges.map((cause) => delayed(cause, delay)));
  const t0 = whenOf(branch, start);
  for (const piece of way.pieces) {
    const segment = { t0: t0 + piece.at, t1: t0 + piece.at + piece.profile.durationMs, action: order.action, path: [piece.from, piece.to], profile: piece.profile, withBall: order.withBall };
    body.stretches.push({ segment, begin: start });
  }
  for (const { used, at, placed } of order.route.shoulders) {
    if (used.screen === undefined || placed === undefined) continue;
    // He comes off a screen once; whoever runs by it again has done so.
    if (placed.uses.has(order.who)) continue;
    const beat = Math.round(branch.scene.level.beat * 1000);
    const use = happen(branch, `${used.screen.key}:use.${order.who}`, 'use', used.screen.key, order.who, [
      varyingEdge(start, 'legs', 0, msNearest(way, at), 'legs', order.who),
      edge(placed.set, 'screen', Math.min(beat, t0 + msNearest(way, at) - whenOf(branch, placed.set))),
    ]);
    placed.uses.set(order.who, use);
  }
  const legs = varyingEdge(start, 'legs', 0, way.ms, 'legs', order.who);
  const kind = order.arrival ?? 'arrive';
  const arrive = kind === 'none' ? start : happen(branch, order.joins ? `${order.action}:${kind}.${order.who}` : `${order.action}:${kind}`, kind, order.action, order.who, [legs]);
  if (way.pieces.length > 0) body.place = way.points[way.points.length - 1]!;
  body.until = t0 + way.ms;
  body.exit = order.exit > 0 ? way.exit : 0;
  return { start, startsAt: t0, arrive, way };
}

/** Ways planned anew before he leaves so late that no way is too early. */
const mostPlans = 3;

/** The way round the others; where it is shorter to a shoulder than the one the start was worked out with, anew for the later start, for which another way may be free. */
function planRun(branch: Branch, order: RunOrder): { readonly plan: Planned; readonly delay: number } {
  const { route } = order;
  const entry = entrySpeed(branch, order);
  const errand: Errand = {
    who: order.who, points: route.points, start: order.startsAt, limits: order.limits, entry, exit: arrivalSpeed(branch, route.points, order.exit),
    partners: route.partners, mayWait: order.mayWait && entry === 0, leaving: branch.leaving,
    ...(route.parts === true && { touching: (way: Way) => comingApartMs + Math.max(0, ...route.shoulders.map(({ at }) => msNearest(way, at))) }),
  };
  let plan = planWay(branch, errand);
  let { delay } = plan;
  for (let plans = 1; ; plans++) {
    const early = tooEarly(branch, order, plan.way);
    if (early <= delay) return { plan, delay };
    const late = plans < mostPlans ? early : tooEarly(branch, order);
    plan = planLater(branch, { ...errand, entry: 0 }, late);
    delay = late + plan.delay;
  }
}

/** ms by which he would be at a shoulder before his time; without a way, on the shortest there could be. */
function tooEarly(branch: Branch, order: RunOrder, way?: Way): number {
  const beat = Math.round(branch.scene.level.beat * 1000);
  const gaps = order.route.shoulders.map(({ placed, at }) => (placed === undefined ? 0 : whenOf(branch, placed.set) + beat - order.startsAt - (way === undefined ? 0 : msNearest(way, at))));
  return Math.max(0, ...gaps);
}

/** Whatever a broken circle of waits says, nobody starts before he is where he starts from, nor while he passes or is passed to. */
function notBefore(branch: Branch, wanted: RunOrder, { until, staysFor }: Body): RunOrder {
  const stays = staysFor !== undefined && whenOf(branch, staysFor) > wanted.startsAt;
  const order = stays ? { ...wanted, startsAt: whenOf(branch, staysFor), edges: [...wanted.edges, edge(staysFor, 'ball-order')] } : wanted;
  const late = until - order.startsAt;
  return late <= 0 ? order : { ...order, startsAt: until, edges: order.edges.map((cause) => delayed(cause, late)) };
}

/** `1 dribbles to the right wing and hands off to 2`, who stands there: beside him is where he is to be. */
function goesToHandOff({ items }: Branch, { action, who }: RunOrder, taker: BodyId): boolean {
  const at = items.findIndex(({ key }) => key === action);
  const next = at === -1 ? undefined : items.slice(at + 1).find((item): item is ActionItem => item.kind === 'action' && item.action.who === who)?.action;
  return next?.kind === 'hand-off' && next.to === taker;
}

function tellPlan(branch: Branch, order: RunOrder, plan: Planned): void {
  const { action, who } = order;
  if (plan.taken !== undefined && !goesToHandOff(branch, order, plan.taken)) tell(branch, problem('spot-taken', action, { who, other: plan.taken }));
  for (const { other, gap, at } of plan.overlaps) tell(branch, problem('bodies-overlap', action, { who, other, gap }, { moment: at }));
}
