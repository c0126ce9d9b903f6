/** Screens (rules 7–10): which one a move comes off, where it stands, how its user passes the shoulder, when the screener is free. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import type { Action, BodyId, Dribble, Move, Screen, Step, StepKey } from '../play/play.ts';
import type { ActionItem, Branch, FreeItem, Item, Need, UsedScreen } from './branch.ts';
import { bodyOf } from './branch.ts';
import { bodyRoom, roundCorner } from './bodies.ts';
import { endOfMove } from './ends.ts';
import { hasBall, isScreenItem, nearestAbove } from './items.ts';
import { isOffence } from './sound.ts';
import { gapToLine, shareNearest } from './ways.ts';
import { away, pointOf, standingOf } from './where.ts';

export type ScreenItem = ActionItem & { readonly action: Screen };
/** A screener this near to the way stays where he is (rule 7); also how near a way must come to a screen to use it (rule 8). */
const onTheWay = 1;
const usable = 1.5;
const staggerGap = 2;
/** `off 4` where 4 only stands: so far from the straight way he is not on it. */
const nowhereNear = 2.5;

/** The screens, and men merely standing, that a move comes off (rule 8). */
export function usedScreens(branch: Branch, item: ActionItem): readonly UsedScreen[] {
  item.uses ??= lookUpScreens(branch, item);
  return item.uses;
}

function lookUpScreens(branch: Branch, item: ActionItem): readonly UsedScreen[] {
  const { action } = item;
  if (action.kind !== 'move' && action.kind !== 'dribble') return [];
  const written: UsedScreen[] = action.off.map((by) => {
    const screen = screenOf(branch, item, by);
    if (screen !== undefined) return { by, on: screen.key, screen, written: true };
    const standing = nearestAbove(branch, item, (other) => other.kind === 'action' && other.action.who === by);
    return { by, on: standing?.key ?? item.key, written: true };
  });
  const unwritten: UsedScreen[] = [];
  for (const other of branch.items) {
    if (!isScreenItem(other) || other.order >= item.order || !other.action.users.includes(action.who)) continue;
    if (written.some(({ screen, by }) => screen?.key === other.key || by === other.action.who)) continue;
    if (isNextMove(branch, other, item)) unwritten.push({ by: other.action.who, on: other.key, screen: other, written: false });
  }
  return [...written, ...unwritten];
}

/** `off 5`: 5's screen for this user, else his screen in this step, else his latest on this path. */
function screenOf(branch: Branch, item: ActionItem, by: BodyId): ScreenItem | undefined {
  const { who } = item.action;
  const his = branch.items.filter((other): other is ScreenItem => isScreenItem(other) && other.action.who === by && (other.order < item.order || other.step === item.step));
  const forHim = his.filter(({ action }) => action.users.includes(who));
  const here = his.filter(({ step }) => step === item.step);
  return nearestOf(forHim.filter(({ step }) => step === item.step), item) ?? nearestOf(forHim, item) ?? nearestOf(here, item) ?? nearestOf(his, item);
}

/** The latest above, else the first below. */
function nearestOf(screens: readonly ScreenItem[], item: ActionItem): ScreenItem | undefined {
  return screens.filter(({ order }) => order < item.order).at(-1) ?? screens[0];
}

/** A screen without `off` is for the next move of its man after it. */
function isNextMove(branch: Branch, screen: ScreenItem, item: ActionItem): boolean {
  for (const other of branch.items) {
    if (other.order <= screen.order || other.kind !== 'action' || other.action.who !== item.action.who) continue;
    if (other.action.kind === 'move' || other.action.kind === 'dribble') return other.key === item.key;
  }
  return false;
}

/** The moves on this path that come off a screen. */
export function usersOf(branch: Branch, screen: ScreenItem): readonly ActionItem[] {
  return branch.items.filter((item): item is ActionItem => item.kind === 'action' && usedScreens(branch, item).some((used) => used.screen?.key === screen.key));
}

/** A move of a later step, on any way on from here, written `off` this screener before he screens anew. */
export function laterUse(branch: Branch, screen: ScreenItem): Move | Dribble | undefined {
  const used = new Set(usersOf(branch, screen).map(({ action }) => action.who));
  const last = branch.steps[branch.steps.length - 1]!;
  return firstIn(branch, last, (action) => action.off.includes(screen.action.who) && !used.has(action.who), screen.action.who);
}

/** Somebody it is set for may still come by in a later step, if the screener is still there. */
export function mayBeUsedLater(branch: Branch, screen: ScreenItem): boolean {
  const last = branch.steps[branch.steps.length - 1]!;
  return firstIn(branch, last, (action) => screen.action.users.includes(action.who), screen.action.who) !== undefined;
}

/** The first fitting move below a step; a new screen of the same man there ends the search on that way. */
function firstIn(branch: Branch, step: StepKey, fits: (action: Move | Dribble) => boolean, screener: BodyId, depth = 0): Move | Dribble | undefined {
  if (depth > 50) return undefined;
  for (const child of branch.scene.children.get(step) ?? []) {
    const found = firstInStep(child, fits, screener);
    if (found === 'screens-anew') continue;
    const later = found ?? firstIn(branch, child.key, fits, screener, depth + 1);
    if (later !== undefined) return later;
  }
  return undefined;
}

function firstInStep(step: Step, fits: (action: Move | Dribble) => boolean, screener: BodyId): Move | Dribble | 'screens-anew' | undefined {
  for (const action of [...step.kept, ...step.actions]) {
    if ((action.kind === 'move' || action.kind === 'dribble') && fits(action)) return action;
    if (action.kind === 'screen' && action.who === screener) return 'screens-anew';
  }
  return undefined;
}

interface FirstUse {
  readonly who: BodyId;
  readonly action?: Move | Dribble;
  readonly item?: ActionItem;
}

/** The first written use decides the side; without one, the first man it is set for. */
function firstUse(branch: Branch, screen: ScreenItem): FirstUse | undefined {
  const item = usersOf(branch, screen)[0];
  if (item !== undefined && (item.action.kind === 'move' || item.action.kind === 'dribble')) return { who: item.action.who, action: item.action, item };
  const later = laterUse(branch, screen);
  if (later !== undefined && isOffence(later.who)) return { who: later.who, action: later };
  const who = screen.action.users[0];
  return who === undefined ? undefined : { who };
}

/** The screen's place depends on where its user's last link before the use leaves him (rule 7). */
export function screenNeeds(branch: Branch, screen: ScreenItem): readonly Need[] {
  if (screen.action.at !== undefined) return [];
  const lead = leaderOf(branch, screen);
  if (lead !== undefined) return [{ on: lead.key, tie: 'user-place' }];
  const use = firstUse(branch, screen);
  const who = screen.action.on === undefined ? use?.who : guarded(screen.action.on);
  if (who === undefined) return [];
  const before = use?.item ?? { order: use?.action === undefined ? screen.order : Number.POSITIVE_INFINITY };
  const last = nearestAbove(branch, before, (other) => other.key !== screen.key && movesHim(other, who) && !isUnneeded(branch, other, screen));
  return last === undefined ? [] : [{ on: last.key, tie: 'user-place' }];
}

function movesHim(other: Item, who: BodyId): boolean {
  if (other.kind !== 'action') return false;
  if (other.action.who === who) return other.action.kind !== 'hold';
  return (other.action.kind === 'pass' || other.action.kind === 'hand-off') && other.action.to === who && hasBall(other);
}

/** A later link of the screener's own user that itself comes off this screen says nothing of where the user stands before. */
function isUnneeded(branch: Branch, other: Item, screen: ScreenItem): boolean {
  return other.kind === 'action' && usedScreens(branch, other).some((used) => used.screen?.key === screen.key);
}

/** X5 guards 5. */
export function guarded(defender: BodyId): BodyId {
  return (defender.startsWith('X') ? defender.slice(1) : defender) as BodyId;
}

/** He waits for the users of his own step, and of a later one for those written `off` him. */
function holds(branch: Branch, screen: ScreenItem, user: ActionItem): boolean {
  return user.step === screen.step || usedScreens(branch, user).some((used) => used.written && used.screen?.key === screen.key);
}

/** A screener is free when everybody who comes off him has passed; users in later steps of this path included (rule 10). */
export function freeNeeds(branch: Branch, item: FreeItem): readonly Need[] {
  const needs: Need[] = usersOf(branch, item.screen).filter((user) => holds(branch, item.screen, user)).map(({ key }) => ({ on: key, tie: 'use' }));
  const later = laterUse(branch, item.screen);
  return later === undefined ? needs : [...needs, { on: `later ${later.id}`, tie: 'use' }];
}

export interface ScreenPlace {
  readonly at: Point;
  readonly facing: Point;
  readonly stays: boolean;
}

/** Where a screen stands (rule 7). */
export function placeScreen(branch: Branch, screen: ScreenItem): ScreenPlace {
  const { action } = screen;
  const { court, level } = branch.scene;
  const own = bodyOf(branch, action.who).place;
  const use = firstUse(branch, screen);
  const man = action.on === undefined ? use?.who : guarded(action.on);
  const user = man === undefined ? own : (branch.bodies.get(man)?.place ?? own);
  const toRim = Math.min(level.reach, distance(user, court.ring) / 2);
  const guard = away(user, court.ring, -toRim);
  const goal = goalOf(branch, use, user);
  const written = action.at && pointOf(branch, action.at.value, standingOf(branch, action.who, screen.holder));
  if (written !== undefined) return { at: commit(written), facing: commit(unit(written, guard)), stays: distance(written, own) < 0.1 };
  if (action.on === undefined && use?.action !== undefined && isPassed(own, user, goal)) return { at: own, facing: commit(unit(own, guard)), stays: true };
  const way = unit(user, goal);
  const lead = leaderOf(branch, screen);
  const led = lead === undefined ? undefined : branch.screens.get(lead.key)?.at;
  const first = led ?? { x: guard.x + way.x * bodyRoom(branch), y: guard.y + way.y * bodyRoom(branch) };
  const at = inside(branch, besideOthers(branch, action, first, user, way));
  return { at, facing: commit(unit(at, guard)), stays: distance(at, own) < 0.1 };
}

/** Of several together, the man who stands first: the others stand by him. */
function leaderOf(branch: Branch, screen: ScreenItem): ScreenItem | undefined {
  const [first] = screen.action.together;
  if (first === undefined || first === screen.action.who) return undefined;
  return branch.items.find((other): other is ScreenItem => isScreenItem(other) && other.action.line === screen.action.line && other.step === screen.step && other.action.who === first);
}

/** Does the user's written path pass the screener within a metre, not behind him nor beyond his end? */
function isPassed(own: Point, user: Point, goal: Point): boolean {
  const share = shareNearest(user, goal, own);
  return share > 0 && share < 1 && distance(own, user) > 0.4 && gapToLine(user, goal, own) < onTheWay;
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

/** Several for one user: a stagger two metres on along his way, a double shoulder to shoulder. */
function besideOthers(branch: Branch, action: Screen, first: Point, user: Point, way: Point): Point {
  const index = Math.max(0, action.together.indexOf(action.who));
  if (index === 0) return first;
  if (action.formation === 'stagger') return { x: first.x + way.x * staggerGap * index, y: first.y + way.y * staggerGap * index };
  const cross = way.x * (first.y - user.y) - way.y * (first.x - user.x);
  const side = cross < 0 ? -1 : 1;
  const room = bodyRoom(branch) * index;
  return { x: first.x - way.y * room * side, y: first.y + way.x * room * side };
}

function inside(branch: Branch, point: Point): Point {
  const { left, right, bottom, top } = branch.scene.court.boundary;
  const edge = branch.scene.level.bodyRadius;
  return commit({ x: Math.max(left + edge, Math.min(right - edge, point.x)), y: Math.max(bottom + edge, Math.min(top - edge, point.y)) });
}

export function unit(from: Point, to: Point): Point {
  const gap = distance(from, to);
  if (gap < 0.001) return { x: 0, y: -1 };
  return { x: (to.x - from.x) / gap, y: (to.y - from.y) / gap };
}

/** How a user's way goes by a screener: the shoulder he brushes, and one more corner where the way on would run through the man. */
export function shoulder(branch: Branch, from: Point, to: Point, screener: Point): readonly Point[] {
  const room = bodyRoom(branch);
  const by = roundCorner(from, to, screener, room, 1, [...branch.bodies.values()]);
  if (shareNearest(by, to, screener) === 0 || gapToLine(by, to, screener) >= room * 0.9) return [by];
  return [by, roundCorner(by, to, screener, room, 1)];
}

/** Whether the straight way comes near enough to the screener for the move to count as off him. */
export function passesScreener(from: Point, to: Point, screener: Point, written: boolean): boolean {
  return gapToLine(from, to, screener) < (written ? nowhereNear : usable);
}

/** Where the screen of the step this one replaces stood: a slip without a screen starts there (rule 7). */
export function replacedScreen(branch: Branch, item: ActionItem): Point | undefined {
  const { action } = item;
  if (action.kind !== 'move' || action.style !== 'slip') return undefined;
  const screened = nearestAbove(branch, item, (other) => isScreenItem(other) && other.step === item.step && other.action.who === action.who);
  if (screened !== undefined) return undefined;
  return replacedScreenOf(branch, item.step, action.who)?.at;
}

export function replacedScreenOf(branch: Branch, step: StepKey, who: BodyId): { readonly at: Point; readonly set: number } | undefined {
  const instead = branch.scene.steps.get(step)?.insteadOf;
  const replaced = instead === undefined ? undefined : branch.scene.steps.get(instead);
  const screen = replaced?.actions.find((action: Action) => action.kind === 'screen' && action.who === who);
  return screen && branch.scene.seenScreens.get(screen.id);
}

