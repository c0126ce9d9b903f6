// Constructions of coaches that a line of the notation says with other words: `sets a flare for 2`, `to screen for 3`, `takes two dribbles
// to`. The tokens of the plain line stand in their place, with the columns of the coach's words.
import { phraseRules } from './phrase-rules.ts';
import { phrases } from './phrases.ts';
import type { Tokens, Types } from './rewording.ts';

const ALL = [...phrases, ...phraseRules];
/** Those that can begin with a word, and of them those that can go on with another. */
const beginningWith = new Map<string, { readonly all: typeof ALL; readonly with: Map<string, typeof ALL> }>();
/** What coaches misspell is without end. */
const mostKept = 4000;
let pairs = 0;

function goingOn(word: string, behind: string): typeof ALL {
  let those = beginningWith.get(word);
  if (those === undefined) {
    those = { all: ALL.filter(({ begins }) => begins(word)), with: new Map() };
    if (beginningWith.size < mostKept) beginningWith.set(word, those);
  }
  let found = those.with.get(behind);
  if (found === undefined) {
    found = those.all.filter(({ second }) => second === undefined || second.has(behind));
    if (pairs++ < mostKept) those.with.set(behind, found);
  }
  return found;
}

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
    for (const { apply } of goingOn(word, behind)) {
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
