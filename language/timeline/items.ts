/** The lines along a path in text order: what stands above what, who has the ball at each line, whose links follow each other (rules 3–5). */
import type { Action, ActionId, BodyId, Dribble, HandOff, Pass, Screen, Shot } from '../play/play.ts';
import { isOffence } from './sound.ts';
import type { ActionItem, Branch, Item, LookItem, Need } from './branch.ts';

export function freeKey(screen: ActionId): string {
  return `${screen}:free`;
}

export function isScreenItem(item: Item): item is ActionItem & { readonly action: Screen } {
  return item.kind === 'action' && item.action.kind === 'screen';
}

export function bodyNumber(who: BodyId): number {
  return Number(who.slice(-1)) || 0;
}

/** What only he does who has the ball. */
export type BallAction = Dribble | Pass | HandOff | Shot;

export function isBallAction(action: Action): action is BallAction {
  return action.kind === 'dribble' || action.kind === 'pass' || action.kind === 'hand-off' || action.kind === 'shot';
}

/** Goes through the lines in text order and notes who has the ball when each one's turn comes; gives the holder after the last. */
export function followBall(items: readonly Item[], holder: BodyId | undefined): BodyId | undefined {
  let now = holder;
  for (const item of items) {
    if (item.kind === 'free') continue;
    item.holder = now;
    if (item.kind === 'look' || !hasBall(item)) continue;
    const { action } = item;
    if (action.kind === 'pass' || action.kind === 'hand-off') now = action.to;
    if (action.kind === 'shot') now = undefined;
  }
  return now;
}

/** Whether a ball action can happen: its man has the ball, and a pass goes to somebody else of the five. */
export function hasBall(item: ActionItem): boolean {
  const { action } = item;
  if (!isBallAction(action) || item.holder !== action.who) return false;
  if (action.kind === 'pass' || action.kind === 'hand-off') return action.to !== action.who && isOffence(action.to);
  return true;
}

/** The nearest item before this one in text order that fits. */
export function nearestAbove<T extends Item>(branch: Branch, item: { readonly order: number }, fits: (other: Item) => other is T): T | undefined;
export function nearestAbove(branch: Branch, item: { readonly order: number }, fits: (other: Item) => boolean): Item | undefined;
export function nearestAbove(branch: Branch, item: { readonly order: number }, fits: (other: Item) => boolean): Item | undefined {
  const { items } = branch;
  for (let index = items.length - 1; index >= 0; index--) {
    const other = items[index]!;
    if (other.order < item.order && fits(other)) return other;
  }
  return undefined;
}

/**
 * The links of the line just before this one (rules 3, 5). A link that comes off a screen of its own line hangs on that screen alone
 * (`4 screens for 2, then rolls, 2 cuts off 4`): the roll waits for the cut, not the cut for the roll. One that says itself with what it begins
 * (`1 drives to left wing, 3 lifts as 1 goes`) hangs on that.
 */
export function chainedTo(branch: Branch, item: ActionItem): readonly ActionItem[] {
  const { line, link, who } = item.action;
  if (link === 0) return [];
  const before = branch.items.filter((other): other is ActionItem => other.kind === 'action' && other.action.line === line && other.step === item.step && other.action.link < link);
  if (before.some((other) => isScreenItem(other) && comesOff(item.action, other.action))) return [];
  const nearest = Math.max(...before.map(({ action }) => action.link));
  const links = before.filter(({ action }) => action.link === nearest);
  // With a shared subject each man goes on from his own link.
  const own = links.filter(({ action }) => action.who === who);
  if (own.length > 0) return own;
  return item.action.waits.some((wait) => (wait.kind === 'as' || wait.kind === 'after') && !item.dropped.has(wait)) ? [] : links;
}

function comesOff(action: Action, screen: Screen): boolean {
  if ((action.kind !== 'move' && action.kind !== 'dribble') || action.who === screen.who) return false;
  return action.off.includes(screen.who) || screen.users.includes(action.who);
}

/** His own last link, the taking of a hand-off included (rule 3). */
export function ownBefore(branch: Branch, item: { readonly order: number; readonly action: { readonly who: BodyId } }): ActionItem | undefined {
  const { who } = item.action;
  return nearestAbove(branch, item, (other): other is ActionItem => {
    if (other.kind !== 'action') return false;
    return other.action.who === who || (other.action.kind === 'hand-off' && other.action.to === who && hasBall(other));
  });
}

/** A screener's next link waits until he is free; one with a written wait of its own is obeyed. */
export function freeOrSet(item: ActionItem, screen: ActionItem): string {
  const pulled = item.action.waits.some((wait) => wait.kind !== 'later' && !item.dropped.has(wait));
  return pulled ? screen.key : freeKey(screen.key);
}

export function ballBefore(branch: Branch, item: { readonly order: number }): ActionItem | undefined {
  return nearestAbove(branch, item, (other): other is ActionItem => other.kind === 'action' && hasBall(other));
}

/** The look just above, in the same step. */
export function lookBefore(branch: Branch, item: { readonly order: number; readonly step: string }): LookItem | undefined {
  return nearestAbove(branch, item, (other): other is LookItem => other.kind === 'look' && other.step === item.step);
}

/** What settles where another man stands when this line starts. */
export function standNeeds(branch: Branch, item: { readonly order: number }, who: BodyId): readonly Need[] {
  const last = nearestAbove(branch, item, (other) => other.kind === 'action' && other.action.who === who);
  return last === undefined ? [] : [{ on: last.key, tie: 'stand' }];
}

/** Whether `item` waits for `key`, directly or through others not yet settled. */
export function waitsFor(branch: Branch, item: Item, key: string, seen: Set<string> = new Set()): boolean {
  if (item.key === key) return true;
  if (seen.has(item.key) || branch.settled.has(item.key)) return false;
  seen.add(item.key);
  return item.needs.some(({ on }) => {
    if (on === key) return true;
    const next = itemOf(branch, on);
    return next !== undefined && waitsFor(branch, next, key, seen);
  });
}

export function itemOf(branch: Branch, key: string): Item | undefined {
  return branch.index.get(key);
}

/** A line kept from a replaced step: what no longer fits in it is left out without a word (rule 17). */
export function isKept(branch: Branch, item: ActionItem): boolean {
  return branch.scene.steps.get(item.step)?.kept.some(({ id }) => id === item.action.id) ?? false;
}
