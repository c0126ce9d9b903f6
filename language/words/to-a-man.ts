// What a man does, told to himself: `screen down for 3`, `pass to 2`, `lay it up`.
import type { Action, BodyId } from '../play/play.ts';
import { inPlural, sayAction, sayDeed } from './say-action.ts';

/** Words of one man that have no other number in the grammar. */
const alone: readonly (readonly [RegExp, string])[] = [[/^is /, 'be '], [/^lays up/, 'lay up'], [/^(dunk|hook)s/, '$1']];

/** His own deed: `cut off 5 to top`, `be the safety at top`, `keep your dribble`. */
export function tellHim(action: Action): string {
  const said = inPlural(sayDeed(action));
  const place = comesToTheBall(action);
  const deed = place === undefined ? said : said.replace(place, 'to the ball');
  const [one, instead] = alone.find(([form]) => form.test(deed)) ?? [/^$/, ''];
  return deed.replace(one, instead).replace(/\b(?:his|their)\b/, 'your');
}

/** `moves toward the ball` before a throw-in: where that ends is worked out, and a place so many metres in front of a man helps no player. */
function comesToTheBall(action: Action): RegExp | undefined {
  if (action.kind !== 'move' || action.to?.origin !== 'derived' || action.to.value.kind !== 'offset' || action.to.value.direction !== 'in front of') return undefined;
  return /\bto \d+(?:\.\d+)? m in front of \d\b/;
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
