/** A line that a body runs, and the legs it is run with. */
import type { LegLimits } from '../motion/levels.ts';
import type { Dribble, Move } from '../play/play.ts';
import type { ActionItem, Branch, Item } from './branch.ts';
import { legsOf } from './branch.ts';
import { hasBall } from './items.ts';

export type Running = ActionItem & { readonly action: Move | Dribble };

export function isRunning(item: Item): item is Running {
  return item.kind === 'action' && (item.action.kind === 'move' || item.action.kind === 'dribble') && !item.action.who.startsWith('X');
}

export function limitsOf(branch: Branch, item: Running): LegLimits {
  const { action } = item;
  return legsOf(branch, action.who, action.kind === 'move' ? action.pace : 'set', action.kind === 'dribble' && hasBall(item));
}
