// A coach speaks to his players: `3, screen for 2, then roll`, `5, you come up to the elbow`. What he tells one to do is what that one does.
import { isAttacker, JOINTS, singular, standing, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';

/** Behind the first comma of a line: who is spoken to, and what he is to do. */
export function spokenTo(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[0];
  if (at !== 1 || !isAttacker(who)) return undefined;
  let verb = wordOf(tokens[1]) === ',' ? 2 : 1;
  while (/^(you|just|you just|now|go and|please)$/.test(wordOf(tokens[verb]))) verb++;
  if (verb === 1 || !isTold(tokens, verb)) return undefined;
  return withThese(tokens, 1, verb, []).map((token, index, all) => (index > 0 && isTold(all, index) && isStillHis(all, index) ? standing(types, singular(wordOf(token)), token) : token));
}

/** A verb as it stands in an order. */
const isTold = (tokens: Tokens, at: number): boolean => verbOf(wordOf(tokens[at]))?.number === 'plural';

/** Right behind him, or behind a joint with nobody else named before it. */
function isStillHis(tokens: Tokens, at: number): boolean {
  if (at === 1) return true;
  let before = at - 1;
  while (/^(you|then|and)$/.test(wordOf(tokens[before])) && before > 1) before--;
  const isJoined = before < at - 1 || JOINTS.has(wordOf(tokens[at - 1]));
  const others = tokens.findIndex((token, index) => index > 0 && index < at && isAttacker(token) && verbOf(wordOf(tokens[index + 1])) !== undefined);
  return isJoined && others < 0;
}
