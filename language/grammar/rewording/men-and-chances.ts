// Whom a line means by `his man` and `he and 5`, and what it means by `if nothing is there`.
import { isAttacker, isDefender } from '../line-token.ts';
import { JOINTS, oneOf, standing, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';
import { WAITS_AS_SAID } from '../waits.ts';

const NOT_THERE = /^(?:(?:there )?is nothing|there's nothing|nothing(?:'s)? (?:(?:is )?(?:there|open|free|on)|comes|develops)|nobody(?:'s)? (?:is )?(?:open|free|there)|(?:we|he|they) (?:don't|doesn't|dont|do not) (?:have|get|have it|get it)(?: (?:it|that|anything|one|look|shot|layup|three))?|(?:it|that|this|look|shot|pass|drive|layup)(?:'s not|'s gone| isn't| isnt| is not)(?: (?:there|open|on))?|not)$/;

/** Where a line begins with such words, those. */
export function nothingIsThere(text: string): string | undefined {
  const words = /^\s*(?:(?:and|then|now|so),?\s+)*(if\s[^,]*[^\s,])/i.exec(text)?.[1];
  return words !== undefined && NOT_THERE.test(words.toLowerCase().replaceAll('’', "'").split(/\s+/).slice(1).filter((word) => !/^(the|a|an)$/.test(word)).join(' ')) ? words : undefined;
}

/** `if we don't have it, 4 comes back up`: what a play does once its looks are passed up, and does anyhow. */
export function ifNothingIsThere(tokens: Tokens, at: number): Tokens | undefined {
  if (at > 0 && !JOINTS.has(wordOf(tokens[at - 1]))) return undefined;
  for (let to = Math.min(at + 7, tokens.length - 1); to > at + 1; to--) {
    const said = tokens.slice(at + 1, to).map(wordOf).join(' ');
    if (!NOT_THERE.test(said) && !(said === 'nothing' && wordOf(tokens[to]) === ',')) continue;
    const behind = wordOf(tokens[to]) === ',' ? to + 1 : to;
    return withThese(tokens, at, behind, []);
  }
  return undefined;
}

/** `4 comes back up and he and 5 set a screen`: who goes on with another is named once more. */
export function heAndAnother(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (wordOf(tokens[at + 1]) !== 'and' || !isAttacker(tokens[at + 2])) return undefined;
  const him = tokens.findLast((token, i) => i < at && isAttacker(token) && verbOf(wordOf(tokens[i + 1])) !== undefined);
  return him === undefined || wordOf(him) === wordOf(tokens[at + 2]) ? undefined : withThese(tokens, at, at + 1, [{ ...standing(types, 'PLAYER', tokens[at]!), image: him.image }]);
}

const TO_HIS_MAN = oneOf('to', 'on', 'at', 'with', 'onto', 'back to');

/** `X4 goes back to his man`, `look 2 when his man helps`: the man of who is spoken of. */
export function hisMan(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const subject = tokens.findLastIndex((token, i) => i < at && (isDefender(token) || isAttacker(token)) && (i === 0 || wordOf(tokens[0]) === 'look' || verbOf(wordOf(tokens[i + 1])) !== undefined));
  if (subject < 0) return undefined;
  const who = tokens[subject]!;
  if (!isDefender(who)) {
    if (!WAITS_AS_SAID.has(wordOf(tokens[at - 1])) || verbOf(wordOf(tokens[at + 1]))?.class !== 'defend') return undefined;
    return withThese(tokens, at, at + 1, [{ ...standing(types, 'XPLAYER', tokens[at]!), image: `x${who.image}` }]);
  }
  if (!TO_HIS_MAN.has(wordOf(tokens[at - 1]))) return undefined;
  const man = { ...standing(types, 'PLAYER', tokens[at]!), image: wordOf(who).slice(1) };
  let verb = at - 2;
  while (verb > subject + 1 && /^(back|out|over|up|down|right|straight|hard)$/.test(wordOf(tokens[verb]))) verb--;
  // Who runs back to his man recovers to him.
  const known = verbOf(wordOf(tokens[verb]));
  if (verb === subject + 1 && (known?.class === 'move' || /^(gets?|runs?|races?)$/.test(wordOf(tokens[verb])))) return withThese(tokens, verb, at + 1, [standing(types, known?.number === 'plural' ? 'recover' : 'recovers', tokens[verb]!, tokens[at - 2]), standing(types, 'to', tokens[at - 1]!), man]);
  return withThese(tokens, at, at + 1, [man]);
}
