/** Which lines must be settled before which, and why (rules 3–6, 8, 11, 15, 18). */
import { lineNumber } from '../play/line-number.ts';
import type { Action, BodyId, Move, Place, Step } from '../play/play.ts';
import type { ActionItem, Branch, Item, Need } from './branch.ts';
import { nothingYet } from './branch.ts';
import { ballBefore, bodyNumber, chainedTo, freeKey, freeOrSet, hasBall, isScreenItem, lookBefore, ownBefore, standNeeds } from './items.ts';
import { lookNeeds } from './looks.ts';
import { meetingNeedsOf } from './passes.ts';
import { freeNeeds, screenNeeds, usedScreens } from './screens.ts';
import { soundActions, soundLook } from './sound.ts';
import { waitNeeds } from './waits.ts';
import { menIn } from './where.ts';

const perStep = 1_000_000;
const keptLines = 500_000;

/** The items a step adds to its path, in text order; lines kept from a replaced step stand before its own. */
export function itemsOf(branch: Branch, step: Step): Item[] {
  const base = branch.steps.indexOf(step.key) * perStep;
  const items: Item[] = [];
  const add = (action: Action, offset: number): void => {
    const order = base + offset + lineNumber(action.line) * 1000 + action.link * 10 + bodyNumber(action.who);
    const item: ActionItem = { kind: 'action', key: action.id, step: step.key, order, needs: [], ...nothingYet, action, holder: undefined };
    items.push(item);
    if (isScreenItem(item)) items.push({ kind: 'free', key: freeKey(action.id), step: step.key, order: order + 0.5, needs: [], ...nothingYet, screen: item });
  };
  for (const action of withoutSlipped(soundActions(step.kept))) add(action, 0);
  for (const action of withoutSlipped(soundActions(step.actions))) add(action, keptLines);
  for (const look of step.looks.map(soundLook)) {
    if (look === undefined) continue;
    const order = base + keptLines + lineNumber(look.line) * 1000;
    items.push({ kind: 'look', key: look.id, step: step.key, order, needs: [], ...nothingYet, look, holder: undefined });
  }
  return items.sort((a, b) => a.order - b.order);
}

/** A man who slips `before the screen` does not set it (rule 10). */
function withoutSlipped(actions: readonly Action[]): readonly Action[] {
  return actions.filter((action, index) => action.kind !== 'screen' || nextMoveOf(actions, action.who, index)?.beforeScreen !== true);
}

function nextMoveOf(actions: readonly Action[], who: BodyId, index: number): Move | undefined {
  const next = actions.slice(index + 1).find((action) => action.who === who && action.kind !== 'hold');
  return next?.kind === 'move' ? next : undefined;
}

/** Notes for every item not yet settled what has to be settled first. */
export function tieItems(branch: Branch, open: readonly Item[]): void {
  for (const item of open) item.needs = baseNeeds(branch, item);
  // Where ball and man meet depends on which of his moves wait for the ball, so the other ties come first.
  for (const item of open) item.needs = [...item.needs, ...meetingNeeds(branch, item)];
  for (const item of open) item.needs = item.needs.filter(({ on, tie }) => on !== item.key && !item.ignored.has(`${tie} ${on}`));
}

function baseNeeds(branch: Branch, item: Item): readonly Need[] {
  if (item.kind === 'free') return [{ on: item.screen.key, tie: 'own' }, ...freeNeeds(branch, item)];
  if (item.kind === 'look') return [];
  const { action } = item;
  const needs: Need[] = [...chainNeeds(branch, item), ...ownNeeds(branch, item), ...waitNeeds(branch, item)];
  if (hasBall(item)) needs.push(...ballNeeds(branch, item));
  if (action.kind === 'move' || action.kind === 'dribble') {
    for (const used of usedScreens(branch, item)) needs.push({ on: used.on, tie: used.screen === undefined ? 'stand' : 'screen' });
    if (action.kind === 'dribble' && action.at !== undefined) needs.push(...standNeeds(branch, item, action.at));
  }
  if (isScreenItem(item)) needs.push(...screenNeeds(branch, item));
  for (const man of menNamed(action)) needs.push(...standNeeds(branch, item, man));
  return needs;
}

/** Men whose place decides where this line goes; a filler takes the place a man leaves, wherever that man goes. */
function menNamed(action: Action): readonly BodyId[] {
  if (action.kind === 'move' && action.style === 'fill') return [];
  const places: Place[] = [];
  if (action.kind === 'move' || action.kind === 'dribble') places.push(...action.via);
  if ((action.kind === 'move' || action.kind === 'dribble') && action.to !== undefined) places.push(action.to.value);
  if ((action.kind === 'screen' || action.kind === 'pass') && action.at !== undefined) places.push(action.at.value);
  return places.flatMap(menIn).filter((man) => man !== action.who);
}

function meetingNeeds(branch: Branch, item: Item): readonly Need[] {
  if (item.kind === 'look') return lookNeeds(branch, item);
  if (item.kind !== 'action' || !hasBall(item)) return [];
  return item.action.kind === 'pass' || item.action.kind === 'hand-off' ? meetingNeedsOf(branch, item, item.action.to) : [];
}

function chainNeeds(branch: Branch, item: ActionItem): readonly Need[] {
  return chainedTo(branch, item).map((before) => ({ on: isScreenItem(before) && before.action.who === item.action.who ? freeOrSet(item, before) : before.key, tie: 'chain' }));
}

function ownNeeds(branch: Branch, item: ActionItem): readonly Need[] {
  const before = ownBefore(branch, item);
  if (before === undefined) return [];
  const screened = isScreenItem(before) && before.action.who === item.action.who;
  return [{ on: screened ? freeOrSet(item, before) : before.key, tie: 'own' }];
}

/** The ball action before it, and the looks above it in its step (rules 3, 6). */
function ballNeeds(branch: Branch, item: ActionItem): readonly Need[] {
  const needs: Need[] = [];
  const before = ballBefore(branch, item);
  if (before !== undefined) needs.push({ on: before.key, tie: 'ball' });
  const look = lookBefore(branch, item);
  if (look !== undefined) needs.push({ on: look.key, tie: 'look' });
  return needs;
}

