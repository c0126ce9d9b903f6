/** How fast a man comes to the end of a way, and goes on from it (rule 12). */
import type { Point } from '../court/point.ts';
import { distance } from '../court/point.ts';
import { turnSpeed } from '../motion/legs.ts';
import type { LegLimits } from '../motion/levels.ts';
import { finishSpeed, landingSpeed } from '../motion/levels.ts';
import type { BodyId } from '../play/play.ts';
import type { ActionItem, Branch } from './branch.ts';
import { bodyOf } from './branch.ts';
import { endOfMove } from './ends.ts';
import type { Running } from './running.ts';
import { isRunning, limitsOf } from './running.ts';
import { usedScreens } from './screens.ts';
import { turn } from './ways.ts';
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
  return Math.min(body.exit, turnSpeed(order.limits.vmax, turn(last[0]!, from, to)));
}

/** The speed a man may arrive with: what the turn into his next link allows, where nothing can hold that link back. */
export function exitSpeed(branch: Branch, item: ActionItem, who: BodyId, points: readonly Point[], limits: LegLimits): number {
  const next = nextInStride(branch, item, who);
  if (next === undefined || next.action.waits.length > 0 || usedScreens(branch, next).length > 0 || next.needs.some(({ on }) => on !== item.key && !branch.settled.has(on))) return 0;
  const end = points[points.length - 1]!;
  const before = [...points].reverse().find((point) => distance(point, end) > 0.01);
  const goal = firstGoal(branch, next, { ...standingOf(branch, who, next.holder), own: end });
  if (before === undefined || distance(goal, end) < 0.1) return 0;
  return turnSpeed(Math.min(limits.vmax, limitsOf(branch, next).vmax), turn(before, end, goal));
}

/** His next link of the same line; of the taker of a hand-off also the drive he is written next, on a line of its own. */
function nextInStride(branch: Branch, item: ActionItem, who: BodyId): Running | undefined {
  const { line, link, kind } = item.action;
  const linked = branch.items.find((other) => other.kind === 'action' && other.action.line === line && other.step === item.step && other.action.link === link + 1 && other.action.who === who);
  if (linked !== undefined) return isRunning(linked) ? linked : undefined;
  if (kind !== 'hand-off') return undefined;
  const below = branch.items.filter((other) => other.order > item.order && other.step === item.step && (other.kind === 'look' || (other.kind === 'action' && other.action.who === who)));
  return below[0] !== undefined && isRunning(below[0]) && below[0].action.kind === 'dribble' ? below[0] : undefined;
}

function firstGoal(branch: Branch, { action }: Running, standing: Standing): Point {
  const corner = action.via[0] ?? action.to?.value;
  if (corner !== undefined) return pointOf(branch, corner, standing);
  const { via, to } = endOfMove(branch, action, standing);
  return via[0] ?? to;
}
