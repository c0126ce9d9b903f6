// Constructions of coaches that a line of the notation says with other words: `sets a flare for 2`, `to screen for 3`, `takes two dribbles
// to`. The tokens of the plain line stand in their place, with the columns of the coach's words.
import { phraseRules } from './phrase-rules.ts';
import { phrases } from './phrases.ts';
import type { Tokens, Types } from './rewording.ts';

const ALL = [...phrases, ...phraseRules];
/** Those that can begin with a word. */
const beginningWith = new Map<string, typeof ALL>();

/** No line needs more. */
const MOST_REWORDED = 24;

/** The tokens of the plain line. Most lines hold nothing of the kind, and are given back as they are. */
export function reworded(tokens: Tokens, types: Types): Tokens {
  let said = tokens;
  let times = 0;
  for (let at = 0; at < said.length; at++) {
    const token = said[at]!;
    if (token.tokenType.name === 'STRING' || /PLAYER$/.test(token.tokenType.name)) continue;
    const word = token.image.toLowerCase();
    const behind = said[at + 1]?.image.toLowerCase() ?? '';
    let those = beginningWith.get(word);
    if (!those) {
      those = ALL.filter(({ begins }) => begins(word));
      // What coaches misspell is without end.
      if (beginningWith.size < 4000) beginningWith.set(word, those);
    }
    for (const { apply, second } of those) {
      if (second !== undefined && !second.has(behind)) continue;
      const next = apply(said, at, types);
      if (next === undefined) continue;
      if (++times > MOST_REWORDED) return said;
      said = next;
      // What stands before may fit now: `to set a screen`.
      at = -1;
      break;
    }
  }
  return said;
}
