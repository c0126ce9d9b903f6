/** Screens (rules 7–10): which one a move comes off, where it stands, how its user passes the shoulder, when the screener is free. */
import type { Point } from '../court/point.ts';
import type { Action, BodyId, Dribble, Move, Place, Screen, Step, StepKey } from '../play/play.ts';
import type { ActionItem, Branch, FreeItem, Item, Need, UsedScreen } from './branch.ts';
import { bodyRoom, roundCorner } from './bodies.ts';
import { hasBall, isScreenItem, nearestAbove } from './items.ts';
import { isOffence } from './sound.ts';
import { gapToLine, shareNearest } from './ways.ts';

export type ScreenItem = ActionItem & { readonly action: Screen };
/** How near a way must come to a screen to use it (rule 8). */
const usable = 1.5;
/** `off 4` where 4 only stands: so far from the straight way he is not on it. A cut from the top to the rim comes off a man at the elbow. */
const nowhereNear = 3;

/** The screens, and men merely standing, that a move comes off (rule 8). */
export function usedScreens(branch: Branch, item: ActionItem): readonly UsedScreen[] {
  item.uses ??= lookUpScreens(branch, item);
  return item.uses;
}

function lookUpScreens(branch: Branch, item: ActionItem): readonly UsedScreen[] {
  const { action } = item;
  if (action.kind !== 'move' && action.kind !== 'dribble') return [];
  const written = writtenUses(branch, item, action);
  const unwritten: UsedScreen[] = [];
  for (const other of branch.items) {
    if (!isScreenItem(other) || other.order >= item.order || !other.action.users.includes(action.who)) continue;
    if (written.some(({ screen, by }) => screen?.key === other.key || by === other.action.who)) continue;
    if (isNextMove(branch, other, item) && !isWrittenElsewhere(branch, other, item)) unwritten.push({ by: other.action.who, on: other.key, screen: other, written: false });
  }
  return [...written, ...unwritten];
}

/** The screeners this line is written `off`. */
function writtenUses(branch: Branch, item: ActionItem, { off }: Move | Dribble): readonly UsedScreen[] {
  return off.map((by): UsedScreen | undefined => {
    const screen = screenOf(branch, item, by);
    if (screen !== undefined) return { by, on: screen.key, screen, written: true };
    const standing = nearestAbove(branch, item, (other) => other.kind === 'action' && other.action.who === by);
    // A man who slips before his screen never stands there.
    if (slipsBefore(branch, item.step, by)) return undefined;
    return { by, on: standing?.key ?? item.key, written: true };
  }).filter((used) => used !== undefined);
}

/** Another line of this man is written `off` that screen: this one is not for it. */
function isWrittenElsewhere(branch: Branch, screen: ScreenItem, item: ActionItem): boolean {
  return comesOffLines(branch, item.action.who, screen.action.who).some((other) => other.key !== item.key && screenOf(branch, other, screen.action.who)?.key === screen.key);
}

/** The lines of a man that are written `off` another. */
function comesOffLines(branch: Branch, who: BodyId, by: BodyId): readonly ActionItem[] {
  return branch.items.filter((other): other is ActionItem => other.kind === 'action' && other.action.who === who && (other.action.kind === 'move' || other.action.kind === 'dribble') && other.action.off.includes(by));
}

/** `off 5`: 5's screen for this user, else his screen in this step, else his latest on this path, if he has not left it and hands nothing off. */
function screenOf(branch: Branch, item: ActionItem, by: BodyId): ScreenItem | undefined {
  const { who } = item.action;
  const lines = comesOffLines(branch, who, by);
  const screens = branch.items.filter((other): other is ScreenItem => isScreenItem(other) && other.action.who === by);
  // One set below is his unless a line between it and the next is written off it, or it is a ball screen and he has no ball.
  const mayBeHis = (other: ScreenItem): boolean => {
    if (other.order < item.order || other.step !== item.step) return other.order < item.order;
    const next = screens.find(({ order }) => order > other.order)?.order ?? Number.POSITIVE_INFINITY;
    return !lines.some(({ order, step }) => order > other.order && order < next && step === other.step) && (other.action.style !== 'ball' || item.holder === who);
  };
  const his = screens.filter(mayBeHis);
  const forHim = his.filter(({ action }) => action.users.includes(who));
  const here = his.filter(({ step }) => step === item.step);
  const mine = nearestOf(forHim.filter(({ step }) => step === item.step), item) ?? nearestOf(forHim, item) ?? nearestOf(here, item);
  if (mine !== undefined || takesFrom(branch, item, by)) return mine;
  return nearestOf(his.filter((screen) => !hasLeft(branch, screen, item)), item);
}

/** `4 hands off to 1`: it is the hand-off of this step that 1 comes off. */
function takesFrom(branch: Branch, { step, action: { who } }: ActionItem, by: BodyId): boolean {
  return branch.items.some((other) => other.kind === 'action' && other.step === step && isHandOff(other.action, by, who));
}

const isHandOff = (action: Action, by: BodyId, to: BodyId): boolean => action.kind === 'hand-off' && action.who === by && action.to === to;

/** A line between tells the screener to go elsewhere: who comes then, and for whom the screen was not, does not come off it. */
function hasLeft(branch: Branch, screen: ScreenItem, before: { readonly order: number }): boolean {
  return branch.items.some((other) => other.order > screen.order && other.order < before.order && other.kind === 'action' && other.action.who === screen.action.who && (other.action.kind === 'move' || other.action.kind === 'dribble'));
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
function laterUse(branch: Branch, screen: ScreenItem): Move | Dribble | undefined {
  const used = new Set(usersOf(branch, screen).map(({ action }) => action.who));
  const { who: screener, users } = screen.action;
  for (const { action, hasLeft: left, step } of movesBelow(branch, screen)) {
    if (!action.off.includes(screener) || used.has(action.who)) continue;
    if (users.includes(action.who) || !(left || step.actions.some((other) => isHandOff(other, screener, action.who)))) return action;
  }
  return undefined;
}

/** Somebody it is set for may still come by in a later step, if the screener is still there. */
export function mayBeUsedLater(branch: Branch, screen: ScreenItem): boolean {
  return [...movesBelow(branch, screen)].some(({ action }) => screen.action.users.includes(action.who));
}

interface MoveBelow {
  readonly action: Move | Dribble;
  readonly step: Step;
  /** A line before it tells the screener to go elsewhere. */
  readonly hasLeft: boolean;
}

/** The moves of later steps, on every way on from here; a new screen of the same man ends each way. */
function* movesBelow(branch: Branch, screen: ScreenItem): Generator<MoveBelow> {
  const left = hasLeft(branch, screen, { order: Number.POSITIVE_INFINITY });
  yield* movesBelowStep(branch, branch.steps[branch.steps.length - 1]!, screen.action.who, left);
}

function* movesBelowStep(branch: Branch, above: StepKey, screener: BodyId, left: boolean, depth = 0): Generator<MoveBelow> {
  if (depth > 50) return;
  for (const step of branch.scene.children.get(above) ?? []) {
    let gone = left;
    let screensAnew = false;
    for (const action of [...step.kept, ...step.actions]) {
      screensAnew = action.kind === 'screen' && action.who === screener;
      if (screensAnew) break;
      if (action.kind !== 'move' && action.kind !== 'dribble') continue;
      yield { action, step, hasLeft: gone };
      gone ||= action.who === screener;
    }
    if (!screensAnew) yield* movesBelowStep(branch, step.key, screener, gone, depth + 1);
  }
}

export interface FirstUse {
  readonly who: BodyId;
  readonly action?: Move | Dribble;
  readonly item?: ActionItem;
}

/** The first written use decides the side; without one, the first man it is set for. */
export function firstUse(branch: Branch, screen: ScreenItem): FirstUse | undefined {
  const item = usersOf(branch, screen)[0];
  if (item !== undefined && (item.action.kind === 'move' || item.action.kind === 'dribble')) return { who: item.action.who, action: item.action, item };
  const later = laterUse(branch, screen);
  if (later !== undefined && isOffence(later.who)) return { who: later.who, action: later };
  const who = screen.action.users[0];
  return who === undefined ? undefined : { who };
}

/** `on the left side`: no place of its own. */
export function isHalf(place: Place | undefined): boolean {
  return place?.kind === 'spot' && place.where === 'half';
}

/** The screen's place depends on where its user's last link before the use leaves him (rule 7). */
export function screenNeeds(branch: Branch, screen: ScreenItem): readonly Need[] {
  if (screen.action.at !== undefined && !isHalf(screen.action.at.value)) return [];
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

/** Of several together, the man who stands first: the others stand by him. */
export function leaderOf(branch: Branch, screen: ScreenItem): ScreenItem | undefined {
  const [first] = screen.action.together;
  if (first === undefined || first === screen.action.who) return undefined;
  return branch.items.find((other): other is ScreenItem => isScreenItem(other) && other.action.line === screen.action.line && other.step === screen.step && other.action.who === first);
}

/** How a user's way goes by a screener: the shoulder he brushes, and one more corner where the way on would run through the man. */
export function shoulder(branch: Branch, who: BodyId, from: Point, to: Point, screener: Point): readonly Point[] {
  const room = bodyRoom(branch);
  const past = (start: Point) => roundCorner(branch, who, { from: start, to, centre: screener, reach: room, side: 1 });
  const by = past(from);
  if (shareNearest(by, to, screener) === 0 || gapToLine(by, to, screener) >= room * 0.9) return [by];
  return [by, past(by)];
}

/** Whether the straight way comes near enough to the screener for the move to count as off him. */
export function passesScreener(from: Point, to: Point, screener: Point, written: boolean): boolean {
  return gapToLine(from, to, screener) < (written ? nowhereNear : usable);
}

function slipsBefore(branch: Branch, step: StepKey, who: BodyId): boolean {
  return branch.items.some((item) => item.kind === 'action' && item.step === step && item.action.who === who && item.action.kind === 'move' && item.action.beforeScreen === true);
}

export function replacedScreenOf(branch: Branch, step: StepKey, who: BodyId): { readonly at: Point; readonly set: number } | undefined {
  const instead = branch.scene.steps.get(step)?.insteadOf;
  const replaced = instead === undefined ? undefined : branch.scene.steps.get(instead);
  const screen = replaced?.actions.find((action: Action) => action.kind === 'screen' && action.who === who);
  return screen && branch.scene.seenScreens.get(screen.id);
}

