// What a man does, told to himself: `screen down for 3`, `pass to 2`, `lay it up`.
import type { Action, BodyId } from '../play/play.ts';
import { inPlural, sayAction, sayDeed } from './say-action.ts';

/** Words of one man that have no other number in the grammar. */
const alone: readonly (readonly [RegExp, string])[] = [[/^is /, 'be '], [/^lays up/, 'lay up'], [/^(dunk|hook)s/, '$1']];

/** His own deed: `cut off 5 to top`, `be the safety at top`, `keep your dribble`. */
export function tellHim(action: Action): string {
  const deed = inPlural(sayDeed(action));
  const [one, instead] = alone.find(([form]) => form.test(deed)) ?? [/^$/, ''];
  return deed.replace(one, instead).replace(/\b(?:his|their)\b/, 'your');
}

/** Another man's: `3 passes to you`. */
export function tellOf(action: Action, you: BodyId): string {
  return isTo(action, you) ? sayAction(action).replace(` to ${you}`, ' to you') : sayAction(action);
}

/** What comes to him: `catch 1’s pass`, `take 5’s hand-off`. */
export function tellCatch(action: Action): string {
  return action.kind === 'hand-off' ? `take ${action.who}’s hand-off` : `catch ${action.who}’s pass`;
}

export const isTo = (action: Action, man: BodyId): boolean => (action.kind === 'pass' || action.kind === 'hand-off') && action.to === man;
