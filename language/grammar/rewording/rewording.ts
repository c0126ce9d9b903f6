// What the rules of rewording share: the words of a line as tokens, and tokens that stand in the place of others.
import type { TokenType } from 'chevrotain';
import type { LineToken } from '../line-token.ts';
import { plural, singular, verbOf } from '../verbs.ts';

export type Tokens = readonly LineToken[];
export type Types = { readonly [name: string]: TokenType };
export { isAttacker, isPlayer, wordOf } from '../line-token.ts';
export { plural, singular } from '../verbs.ts';

/** A token of the grammar in the place of the coach's words from one to another. */
export function standing(types: Types, name: string, from: LineToken, to: LineToken = from): LineToken {
  const tokenType = types[name]!;
  return { ...from, image: name, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx!, endOffset: to.endOffset, endColumn: to.endColumn };
}

/** A token that the coach has no word for, in the blank before another: the parser takes none without a letter. */
export function before(types: Types, name: string, next: LineToken): LineToken {
  const at = Math.max(next.startOffset - 1, 0);
  return { ...standing(types, name, next), startOffset: at, endOffset: at, startColumn: at + 1, endColumn: at + 1 };
}

/** The same in the blank behind another. */
export const after = (types: Types, name: string, last: LineToken): LineToken => before(types, name, { ...last, startOffset: last.endOffset + 1, startColumn: last.endColumn! + 1 });

/** The verb of one man in the number of the word it stands for: `passes` for `drops`, `pass` for `drop`. */
export const asSaid = (word: string, one: string): string => (/^\S*[^s]s\b/.test(word) ? one : plural(one));

/** Of the verb before: `cuts away to screen` goes on as `and screens`. */
export function inNumberOf(tokens: Tokens, index: number, verb: string): string {
  const before = tokens.findLast((token, at) => at < index && verbOf(token.image) !== undefined);
  return before !== undefined && verbOf(before.image)!.number === 'plural' ? plural(verb) : singular(verb);
}

/** Of one word, whether it is said of each of a list. */
export const oneOf = (...words: readonly string[]): ReadonlySet<string> => new Set(words);

export const JOINTS = oneOf(',', 'and', 'then');

/** Drops tokens where the words behind fit. */
export const without = (tokens: Tokens, from: number, to: number): Tokens => [...tokens.slice(0, from), ...tokens.slice(to)];

/** The tokens with others in the place of some. */
export const withThese = (tokens: Tokens, from: number, to: number, these: Tokens): Tokens => [...tokens.slice(0, from), ...these, ...tokens.slice(to)];
