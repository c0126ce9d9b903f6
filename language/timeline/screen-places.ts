/** Where a screen stands (rule 7), and where a slip leaves from. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import type { Screen } from '../play/play.ts';
import type { ActionItem, Branch } from './branch.ts';
import { bodyOf } from './branch.ts';
import { bodyRoom, inBounds } from './bodies.ts';
import { endOfMove } from './ends.ts';
import { isScreenItem, nearestAbove } from './items.ts';
import type { FirstUse, ScreenItem } from './screens.ts';
import { firstUse, guarded, isHalf, leaderOf, replacedScreenOf } from './screens.ts';
import { gapToLine, shareNearest } from './ways.ts';
import { away, pointOf, sideWhereNothingLeans, standingOf } from './where.ts';

/** So near to his user's way a screener stays where he is; where he stands between him and his goal, farther. Common practice, no source. */
const onTheWay = 1;
const between = 2.5;
/** A man with the ball so far from his screener comes to him. */
const farAway = 4.5;
const staggerGap = 2;
/** Two who stand shoulder to shoulder do not touch when their places are rounded. */
const hairsbreadth = 0.01;

export interface ScreenPlace {
  readonly at: Point;
  readonly facing: Point;
  readonly stays: boolean;
}

/** Where a screen stands (rule 7); said to be on one half of the floor, it stands where it would there. */
export function placeScreen(branch: Branch, screen: ScreenItem, use: FirstUse | undefined = firstUse(branch, screen)): ScreenPlace {
  const { at: written, ...unplaced } = screen.action;
  if (!isHalf(written?.value)) return placeWritten(branch, screen, use);
  const place = placeWritten(branch, { ...screen, action: unplaced }, use);
  const there = pointOf(branch, written!.value, { ...standingOf(branch, screen.action.who, screen.holder), own: place.at });
  return there.x === place.at.x ? place : { at: commit(there), facing: { x: -place.facing.x, y: place.facing.y }, stays: false };
}

function placeWritten(branch: Branch, screen: ScreenItem, use: FirstUse | undefined): ScreenPlace {
  const { action } = screen;
  const { court, level } = branch.scene;
  const own = bodyOf(branch, action.who).place;
  const man = action.on === undefined ? use?.who : guarded(action.on);
  const user = man === undefined ? own : (branch.bodies.get(man)?.place ?? own);
  const toRim = Math.min(level.reach, distance(user, court.ring) / 2);
  const guard = away(user, court.ring, -toRim);
  const goal = goalOf(branch, use, user);
  const written = action.at && pointOf(branch, action.at.value, standingOf(branch, action.who, screen.holder));
  if (written !== undefined) {
    const said = man === undefined || man === action.who ? written : besideHisMan(branch, written, user, guard);
    const at = isOnTheFirst(branch, screen, said) ? inBounds(branch, besideOthers(branch, action, said, user, unit(user, goal))) : said;
    return { at: commit(at), facing: commit(unit(at, guard)), stays: distance(at, own) < 0.1 };
  }
  if (action.on === undefined && use?.action !== undefined && isPassed(own, user, goal, nearEnough(screen, use, own, user)) && standsInOrder(branch, action, user, goal)) return { at: own, facing: commit(unit(own, guard)), stays: true };
  const way = unit(user, goal);
  const lead = leaderOf(branch, screen);
  const led = lead === undefined ? undefined : branch.screens.get(lead.key)?.at;
  const first = led ?? besideHisMan(branch, { x: guard.x + way.x * bodyRoom(branch), y: guard.y + way.y * bodyRoom(branch) }, user, guard);
  const at = inBounds(branch, lead === undefined ? outOfTheLane(branch, first, user, goal) : besideOthers(branch, action, first, user, way));
  return { at, facing: commit(unit(at, guard)), stays: distance(at, own) < 0.1 };
}

/**
 * How far off the user's straight way a screener may stand and still stay where he is: a man written `off` him runs by him, unless it is
 * the screener who goes to somebody, as in a ball or a down screen. To one who brings the ball from far away nobody runs back.
 */
function nearEnough({ action }: ScreenItem, use: FirstUse, own: Point, user: Point): number {
  const written = use.action?.off.includes(action.who) === true;
  if (written && action.style === 'screen') return between;
  return written && action.style === 'ball' && distance(own, user) > farAway ? between : onTheWay;
}

/** Of several together each stays only if their places are already in the order written, a double's shoulder to shoulder. */
function standsInOrder(branch: Branch, { together, formation }: Screen, user: Point, goal: Point): boolean {
  const places = together.map((who) => bodyOf(branch, who).place);
  return places.every((place, index) => {
    const before = places[index - 1];
    if (before === undefined) return true;
    return formation === 'double' ? distance(before, place) < 2 * bodyRoom(branch) : shareNearest(user, goal, before) <= shareNearest(user, goal, place);
  });
}

/** Does the user's written path pass the screener this near, not behind him nor beyond his end? */
function isPassed(own: Point, user: Point, goal: Point, within: number): boolean {
  const share = shareNearest(user, goal, own);
  return share > 0 && share < 1 && distance(own, user) > 0.4 && gapToLine(user, goal, own) < within;
}

/** Where the first use leads: its first corner, its end, or the verb's end; without a use, to the rim. */
function goalOf(branch: Branch, use: FirstUse | undefined, user: Point): Point {
  const { court } = branch.scene;
  if (use?.action === undefined) return court.ring;
  const { action } = use;
  const standing = { ...standingOf(branch, action.who, use.item?.holder), own: user };
  const corner = action.via[0] && pointOf(branch, action.via[0], standing);
  if (corner !== undefined && distance(corner, user) > 0.1) return corner;
  const { via, to } = endOfMove(branch, action, standing);
  const goal = via[0] ?? to;
  return distance(goal, user) > 0.1 ? goal : court.ring;
}

/**
 * Nobody screens standing on the man he screens for: where the way leads out over his man, or the words put him on his man's spot, he stands
 * a body away from him, on that side of him; on the very spot, on the defender's side.
 */
function besideHisMan(branch: Branch, at: Point, user: Point, guard: Point): Point {
  const room = bodyRoom(branch);
  const gap = distance(at, user);
  if (gap >= room) return at;
  return away(user, gap > 0.001 ? at : guard, -room);
}

/** `4 and 5 stagger at left block`: one place is said for both, and the first stands there. */
function isOnTheFirst(branch: Branch, screen: ScreenItem, at: Point): boolean {
  const lead = leaderOf(branch, screen);
  const led = lead === undefined ? undefined : branch.screens.get(lead.key)?.at;
  return led !== undefined && distance(led, at) < bodyRoom(branch) / 2;
}

/** Several for one user: a stagger two metres on along his way, a double shoulder to shoulder. */
function besideOthers(branch: Branch, action: Screen, first: Point, user: Point, way: Point): Point {
  const index = Math.max(0, action.together.indexOf(action.who));
  if (index === 0) return first;
  if (action.formation === 'stagger') return { x: first.x + way.x * staggerGap * index, y: first.y + way.y * staggerGap * index };
  // The far side of the first from the user; straight on his way, the side of the screener's number.
  const cross = way.x * (first.y - user.y) - way.y * (first.x - user.x);
  const side = Math.abs(cross) > 0.001 ? Math.sign(cross) : sideWhereNothingLeans(branch, action.who, { x: -way.y, y: way.x });
  const room = (bodyRoom(branch) + hairsbreadth) * index;
  return { x: first.x - way.y * room * side, y: first.y + way.x * room * side };
}

/**
 * A man outside the lane is screened outside it, so that nobody stands in it for too long: the screen slides along the lane line, an arm
 * from its user, unless his way leads across the lane.
 */
function outOfTheLane(branch: Branch, at: Point, user: Point, goal: Point): Point {
  const { court, level } = branch.scene;
  const { lane } = court;
  const edge = lane.right + level.bodyRadius;
  const within = (point: Point): boolean => Math.abs(point.x) < edge && point.y < lane.top + level.bodyRadius;
  if (!within(at) || within(user) || (Math.sign(goal.x) !== Math.sign(user.x) && Math.abs(goal.x) > 1 && goal.y < lane.top)) return at;
  if (Math.abs(user.x) < edge) return at;
  const x = Math.sign(user.x) * edge;
  const gap = Math.abs(user.x - x);
  if (distance({ x, y: at.y }, user) >= level.reach || gap >= level.reach) return { x, y: at.y };
  const up = Math.abs(goal.y - user.y) > 0.5 ? Math.sign(goal.y - user.y) : Math.sign(at.y - user.y) || 1;
  return { x, y: user.y + up * Math.sqrt(level.reach ** 2 - gap ** 2) };
}

export function unit(from: Point, to: Point): Point {
  const gap = distance(from, to);
  if (gap < 0.001) return { x: 0, y: -1 };
  return { x: (to.x - from.x) / gap, y: (to.y - from.y) / gap };
}

/**
 * The corner of a slip's way: a step before the place where his screen would stand, or stood in the step replaced (rule 7). None where he
 * slips out of a screen that is set.
 */
export function slipsFrom(branch: Branch, item: ActionItem): Point | undefined {
  const { action } = item;
  if (action.kind !== 'move' || action.style !== 'slip') return undefined;
  const screened = nearestAbove(branch, item, (other) => isScreenItem(other) && other.step === item.step && other.action.who === action.who);
  if (screened !== undefined) return undefined;
  const at = wouldStand(branch, item) ?? replacedScreenOf(branch, item.step, action.who)?.at;
  return at && aStepBefore(branch, at, bodyOf(branch, action.who).place);
}

/** `slips before the screen`: where the screen written before it would have stood. */
function wouldStand(branch: Branch, item: ActionItem): Point | undefined {
  const { action } = item;
  if (action.kind !== 'move' || action.beforeScreen !== true) return undefined;
  const step = branch.scene.steps.get(item.step);
  const screen = step && [...step.kept, ...step.actions].filter((other): other is Screen => other.kind === 'screen' && other.who === action.who).at(-1);
  if (screen === undefined) return undefined;
  const user = branch.items.find((other): other is ActionItem => other.kind === 'action' && other.step === item.step && (other.action.kind === 'move' || other.action.kind === 'dribble') && screen.users.includes(other.action.who));
  const who = user?.action.who ?? screen.users[0];
  return placeScreen(branch, { ...item, action: screen }, who === undefined ? undefined : { who, action: user?.action as FirstUse['action'], item: user }).at;
}

function aStepBefore(branch: Branch, at: Point, own: Point): Point {
  const gap = distance(own, at);
  const { step } = branch.scene.level;
  return gap <= step ? own : commit(away(at, own, -step));
}
