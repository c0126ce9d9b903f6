// Several sentences in a line, and a pass without its verb: `4 curls off 2 to the nail. 2 pops to the top`, `1 to 2, 2 back to 1`, `3 in to 2`.
import type { LineToken } from '../line-token.ts';
import { after, before, isAttacker, isPlayer, JOINTS, oneOf, standing, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';
import { BEGINS_A_WAIT } from '../waits.ts';

const BEGINS_A_SENTENCE = oneOf('he', 'they', 'everyone', 'everybody', 'both', 'others', 'look');

/** A full stop begins what comes then, a semicolon what goes on with it: `4 drives down the lane; 5 backdoors`. */
export function nextSentence(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const [sign, next] = [tokens[at]!, tokens[at + 1]];
  if (at === 0 || sign.tokenType.name !== 'UNKNOWN' || next === undefined) return undefined;
  if (/^([.;,]|and)$/.test(wordOf(next))) return withThese(tokens, at, at + 1, []);
  if (wordOf(next) === 'then') return withThese(tokens, at, at + 1, [standing(types, ',', sign)]);
  if (BEGINS_A_WAIT.has(wordOf(next))) return withThese(tokens, at, at + 1, [standing(types, ',', sign), after(types, 'and', sign)]);
  if (!isPlayer(next) && !BEGINS_A_SENTENCE.has(wordOf(next)) && verbOf(wordOf(next)) === undefined) return undefined;
  const isLook = wordOf(next) === 'look';
  return withThese(tokens, at, at + 1, [standing(types, sign.image === ';' && !isLook ? 'and' : ',', sign)]);
}

const WAYS = oneOf('back', 'back out', 'out', 'over', 'across', 'in', 'inside', 'down', 'up', 'ahead', 'right', 'straight');
/** Of these the notation has words behind the verb. */
const KEPT = oneOf('back', 'back out', 'across', 'inside', 'ahead');
const OF_NO_DEED = oneOf('from', 'step', 'look', 'rebound', 'against', 'note', 'ball with');

/** `1 to 2`, `2 back out to 1`; `3 in to 2` from out of bounds. */
export function passWithoutVerb(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at - 1];
  if (!isAttacker(who) || OF_NO_DEED.has(wordOf(tokens[0])) || !beginsADeed(tokens, at - 1)) return undefined;
  let to = at;
  while (WAYS.has(wordOf(tokens[to]))) to++;
  const receiver = tokens[to + 1];
  if (wordOf(tokens[to]) !== 'to' || !isAttacker(receiver) || wordOf(receiver) === wordOf(who) || wordOf(tokens[to + 2]) === "'s" || verbOf(wordOf(tokens[to + 2])) !== undefined) return undefined;
  const ways = tokens.slice(at, to);
  const isIn = wordOf(ways.at(-1)) === 'in';
  if (isIn) return withThese(tokens, at, to, [standing(types, 'inbounds', ways[0]!, ways.at(-1))]);
  return withThese(tokens, at, to, [before(types, 'passes', tokens[at]!), ...ways.filter((token) => KEPT.has(wordOf(token)))]);
}

/** He stands first, or behind a deed that is over: not as one of several. */
function beginsADeed(tokens: Tokens, at: number): boolean {
  if (at === 0) return true;
  if (!JOINTS.has(wordOf(tokens[at - 1]))) return false;
  return tokens.slice(0, at - 1).some((token: LineToken) => verbOf(wordOf(token)) !== undefined) && !(isPlayer(tokens[at - 2]) && (at === 2 || JOINTS.has(wordOf(tokens[at - 3]))));
}
