// A place that stands without its little word: `dives weak-side block`, `holds left corner`, `clears out, left corner`, `takes it out, far baseline`.
import type { LineToken } from '../line-token.ts';
import { before, isAttacker, JOINTS, oneOf, standing, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';
import { WAITS } from '../waits.ts';

const SIDES = oneOf('left', 'right', 'ball-side', 'weak-side', 'strong-side', 'near', 'far', 'same', 'opposite', 'other');
/** A half of the floor by itself; `left` alone is a way to go. */
const HALVES = oneOf('weak-side', 'ball-side', 'strong-side', 'far side', 'near side', 'opposite side', 'other side');
const NAMES = oneOf('rim', 'basket', 'hoop', 'block', 'low post', 'mid-post', 'elbow', 'nail', 'high post', 'top', 'top of the key', 'slot', 'wing', 'corner', 'short corner', 'dunker spot', 'free-throw line', 'half court', 'hash', 'front of the rim', 'front of the basket', 'corners', 'wings', 'slots', 'elbows', 'blocks');
const LINES = oneOf('far baseline', 'own baseline', 'baseline', 'sideline');
const ENDS = oneOf(',', 'and', 'then', 'as', 'as soon as', 'after', 'once', 'when', 'until', 'while', 'with', 'before the screen');

/** Which little word the verb asks for. */
const ASKS_FOR: { readonly [verbClass: string]: string } = { move: 'to', dribble: 'to', hold: 'at', seal: 'at', screen: 'at', 'throw-in': 'from' };
/** `clears the corner` leaves it, `fills the top` is whole, `uses` and `crosses` ask for a man. */
const OF_ANOTHER_KIND = oneOf('clear', 'fill', 'swap', 'come off', 'pick up');
const PREPOSITIONS = oneOf('to', 'into', 'toward', 'at', 'in', 'on', 'from', 'via', 'through to', 'between', 'beside', 'behind', 'under the basket', 'under the rim');

/** Where a place that begins at a token is over. */
function placeEnd(tokens: Tokens, at: number, isThrower: boolean): number | undefined {
  const named = SIDES.has(wordOf(tokens[at])) ? at + 1 : at;
  const name = wordOf(tokens[named]);
  const end = NAMES.has(name) || (isThrower && LINES.has(name)) ? named + 1 : HALVES.has(wordOf(tokens[at])) ? at + 1 : undefined;
  if (end === undefined) return undefined;
  return wordOf(tokens[end]) === 'extended' ? end + 1 : end;
}

/** `2 dives weak-side block`: directly behind the verb. */
export function placeBehindTheVerb(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const verb = verbOf(wordOf(tokens[at - 1]));
  const asked = verb === undefined ? undefined : ASKS_FOR[verb.class];
  if (asked === undefined || at < 2 || verb!.class === 'throw-in' || verb!.class === 'screen' || OF_ANOTHER_KIND.has(verb!.base)) return undefined;
  const end = placeEnd(tokens, at, false);
  // Goals that `attacks` takes, and where more follows that speaks of the place: `left wing's man`.
  if (end === undefined || !(isOver(tokens[end]) || beginsAnother(tokens, end)) || /^attacks?$/.test(wordOf(tokens[at - 1]))) return undefined;
  return [...tokens.slice(0, at), before(types, asked, tokens[at]!), ...tokens.slice(at)];
}

/** `2 clears out, left corner`: the clause says no place besides. */
export function placeBehindAComma(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const end = placeEnd(tokens, at + 1, true);
  if (end === undefined || !isOver(tokens[end])) return undefined;
  const begin = tokens.findLastIndex((token, i) => i < at && JOINTS.has(wordOf(token))) + 1;
  const clause = tokens.slice(begin, at);
  const verb = verbOf(wordOf(clause.findLast((token) => verbOf(wordOf(token)) !== undefined)));
  const asked = verb === undefined ? undefined : ASKS_FOR[verb.class];
  if (asked === undefined || wordOf(tokens[0]) === 'look' || wordOf(tokens[0]) === 'from' || clause.some((token) => PREPOSITIONS.has(wordOf(token)) || SIDES.has(wordOf(token)))) return undefined;
  if (verb!.class !== 'throw-in' && placeEnd(tokens, at + 1, false) === undefined) return undefined;
  return [...tokens.slice(0, at), standing(types, asked, tokens[at]!), ...tokens.slice(at + 1)];
}

/** `2 pops to the left wing 3 curls to the right elbow`: both go, and what joins them is left out. In `fills the wing 2 clears` it is no deed. */
export function nextManBehindThePlace(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const next = tokens[at + 1];
  if (at < 3 || !NAMES.has(wordOf(tokens[at])) || !isAttacker(tokens[0]) || next === undefined || !beginsAnother(tokens, at + 1) || tokens.slice(0, at).some((token) => WAITS.has(wordOf(token)) || OF_ANOTHER_KIND.has(verbOf(wordOf(token))?.base ?? ''))) return undefined;
  return [...tokens.slice(0, at + 1), before(types, 'and', next), ...tokens.slice(at + 1)];
}

/** Whether a man stands there with a deed of his own. */
function beginsAnother(tokens: Tokens, at: number): boolean {
  const verb = verbOf(wordOf(tokens[at + 1]));
  return isAttacker(tokens[at]) && verb?.number === 'singular' && verb.class !== 'event' && verb.base !== 'clear';
}

function isOver(token: LineToken | undefined): boolean {
  return token === undefined || ENDS.has(wordOf(token));
}
