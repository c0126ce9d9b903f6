/** How fast a man comes to the end of a way, and goes on from it (rule 12). */
import type { Point } from '../court/point.ts';
import { distance } from '../court/point.ts';
import { turnSpeed } from '../motion/legs.ts';
import type { LegLimits } from '../motion/levels.ts';
import { finishSpeed, landingSpeed } from '../motion/levels.ts';
import type { BodyId, Pass } from '../play/play.ts';
import type { ActionItem, Branch, Item } from './branch.ts';
import { bodyAt, bodyOf } from './branch.ts';
import { endOfMove } from './ends.ts';
import { latestOf } from './graph.ts';
import { hasBall, lookBefore } from './items.ts';
import { flightMs } from './receiving.ts';
import type { Running } from './running.ts';
import { isRunning, limitsOf } from './running.ts';
import { usedScreens } from './screens.ts';
import { startEdges } from './start.ts';
import { layWay, turn } from './ways.ts';
import type { Standing } from './where.ts';
import { pointOf, standingOf } from './where.ts';

/** Within this of the ring one arrives to finish, not to stand. */
const toFinish = 1.3;

/** What he goes on with, but at least what one lands with on a spot, or at the ring. */
export function arrivalSpeed(branch: Branch, points: readonly Point[], goesOn: number): number {
  const { court, level } = branch.scene;
  const end = points[points.length - 1]!;
  return Math.max(goesOn, distance(end, court.ring) < toFinish ? finishSpeed(level) : landingSpeed(level));
}

/** From where, along which way, and when he would set out. */
interface SettingOut {
  readonly who: BodyId;
  readonly startsAt: number;
  readonly limits: LegLimits;
  readonly route: { readonly points: readonly Point[] };
}

/** He keeps his speed through the turn if he goes on the moment he arrives (rule 12). */
export function entrySpeed(branch: Branch, order: SettingOut): number {
  const body = bodyOf(branch, order.who);
  const [from, to] = order.route.points;
  const last = body.stretches[body.stretches.length - 1]?.segment.path;
  if (body.exit === 0 || body.until !== order.startsAt || last === undefined || from === undefined || to === undefined) return 0;
  // Hardly under way he runs in no direction yet.
  if (distance(last[0]!, from) < 0.01) return 0;
  return Math.min(body.exit, turnSpeed(order.limits.vmax, turn(last[0]!, from, to)));
}

export interface Arriving {
  readonly item: ActionItem;
  readonly who: BodyId;
  readonly points: readonly Point[];
  readonly limits: LegLimits;
  /** ms he sets out at, where somebody may pass to him as he arrives. */
  readonly startsAt?: number;
}

/** The speed a man may arrive with: what the turn into his next link allows, where nothing can hold that link back. */
export function exitSpeed(branch: Branch, arriving: Arriving): number {
  const { who, points, limits } = arriving;
  const { next, pass } = nextInStride(branch, arriving);
  if (next === undefined) return 0;
  const end = points[points.length - 1]!;
  const before = [...points].reverse().find((point) => distance(point, end) > 0.01);
  const goal = firstGoal(branch, next, { ...standingOf(branch, who, next.holder), own: end });
  if (before === undefined || distance(goal, end) < 0.1) return 0;
  const speed = turnSpeed(Math.min(limits.vmax, limitsOf(branch, next).vmax), turn(before, end, goal));
  return pass === undefined || meetsHim(branch, pass, arriving, speed) ? speed : 0;
}

interface InStride {
  readonly next?: Running | undefined;
  /** The pass it takes to go on, from which he would drive. */
  readonly pass?: PassItem;
}

/** His next link of the same line; of the taker of a hand-off, and of a man the ball comes to as he arrives, also the drive he is written next. */
function nextInStride(branch: Branch, { item, who, startsAt }: Arriving): InStride {
  const { line, link, kind } = item.action;
  const linked = branch.items.find((other) => other.kind === 'action' && other.action.line === line && other.step === item.step && other.action.link === link + 1 && other.action.who === who);
  if (linked !== undefined) return isRunning(linked) && isUnhindered(branch, linked, [item]) ? { next: linked } : {};
  if (kind === 'hand-off') return { next: driveAfter(branch, item, who) };
  const pass = startsAt === undefined ? undefined : branch.items.find((other): other is PassItem => isPassTo(other, who) && other.needs.some(({ on, tie }) => on === item.key && tie === 'meet'));
  return pass === undefined ? {} : { next: driveAfter(branch, pass, who, item), pass };
}

type PassItem = ActionItem & { readonly action: Pass };

function isPassTo(item: Item, who: BodyId): item is PassItem {
  return item.kind === 'action' && item.action.kind === 'pass' && item.action.to === who && hasBall(item);
}

/** The drive a man is written next after the ball comes to him, if nothing can hold it back but that and what he does before it. */
export function driveAfter(branch: Branch, ball: ActionItem, who: BodyId, before: ActionItem = ball): Running | undefined {
  const order = Math.max(ball.order, before.order);
  const next = branch.items.find((other) => other.order > order && other.step === ball.step && (other.kind === 'look' || (other.kind === 'action' && other.action.who === who)));
  return next !== undefined && isRunning(next) && next.action.kind === 'dribble' && isUnhindered(branch, next, [ball, before]) ? next : undefined;
}

function isUnhindered(branch: Branch, next: Running, but: readonly ActionItem[]): boolean {
  return next.action.waits.length === 0 && usedScreens(branch, next).length === 0 && next.needs.every(({ on }) => branch.settled.has(on) || but.some(({ key }) => key === on));
}

/** Nothing holds the pass back, so that it is in his hands as he arrives. With a look above it, it may never come. */
function meetsHim(branch: Branch, pass: PassItem, { item, who, points, limits, startsAt = 0 }: Arriving, exit: number): boolean {
  const { action } = pass;
  if (action.at !== undefined || action.early || lookBefore(branch, pass) !== undefined) return false;
  if (!pass.needs.every(({ on, tie }) => branch.settled.has(on) || (on === item.key && tie === 'meet'))) return false;
  const ready = latestOf(branch.scene.graph, startEdges(branch, pass)).at;
  const from = bodyAt(bodyOf(branch, action.who), ready);
  const arrives = startsAt + layWay(points, limits, bodyOf(branch, who).exit, arrivalSpeed(branch, points, exit)).ms;
  return ready + flightMs(branch, action.pass.value, from, points[points.length - 1]!) <= arrives;
}

function firstGoal(branch: Branch, { action }: Running, standing: Standing): Point {
  const corner = action.via[0] ?? action.to?.value;
  if (corner !== undefined) return pointOf(branch, corner, standing);
  const { via, to } = endOfMove(branch, action, standing);
  return via[0] ?? to;
}
