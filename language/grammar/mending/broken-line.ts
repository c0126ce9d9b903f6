import type { Message } from '../../message/message.ts';
import type { Follow, Walk, Wanted } from '../reading/follow.ts';
import { lineParser } from '../reading/line-parser.ts';
import type { LexedLine } from '../reading/lexer.ts';
import { isPlayer, type LineToken } from '../line-token.ts';
import type { LineEdit, LineFix } from '../line-fault.ts';
import { verbOf } from '../verbs.ts';

/** A line that cannot be read, with what the searches for a better line need. */
export interface Broken {
  readonly text: string;
  readonly lexed: LexedLine;
  readonly tokens: readonly LineToken[];
  readonly follow: Follow;
  readonly walk: Walk;
  /** Index of the first token that does not fit; `tokens.length` at the line's end. */
  readonly index: number;
  readonly token: LineToken | undefined;
  /** What could have stood there. */
  readonly wanted: readonly Wanted[];
  /** The same for any token before it. */
  readonly wantedBefore: (index: number) => readonly Wanted[];
}

export function breakDown(text: string, lexed: LexedLine): Broken {
  const { follow } = lineParser();
  const walk = follow.walk(lexed.tokens);
  const { tokens } = lexed;
  const before = new Map<number, readonly Wanted[]>();
  const wantedBefore = (index: number): readonly Wanted[] => {
    let wanted = before.get(index);
    if (!wanted) before.set(index, (wanted = follow.expected(index === walk.at ? walk.configs : follow.walk(tokens.slice(0, index)).configs)));
    return wanted;
  };
  return { text, lexed, tokens, follow, walk, index: walk.at, token: tokens[walk.at], wanted: wantedBefore(walk.at), wantedBefore };
}

export function endOf(token: LineToken): number {
  return token.endOffset + 1;
}

/** What the coach wrote for the tokens `from` up to, not including, `to`. */
export function written(broken: Broken, from: number, to = from + 1): string {
  const last = broken.tokens[to - 1];
  const first = broken.tokens[from];
  if (!first || !last) return '';
  const words = broken.text.slice(first.startOffset, endOf(last));
  // A token that the coach has no word for stands in the blank before the next.
  return to > from && words.trim() === '' && broken.tokens[to] ? written(broken, to) : words;
}

/** Where the words of the token `index` begin, the articles before it included: a name may begin with one. */
export function startWithArticles(broken: Broken, index: number): number {
  const before = broken.tokens[index - 1];
  const from = before ? endOf(before) : 0;
  return from + (broken.text.slice(from).length - broken.text.slice(from).trimStart().length);
}

/** Where the coach's words end, without a comment. */
export function endOfWords(broken: Broken): number {
  return broken.text.slice(0, broken.lexed.comment?.at).trimEnd().length;
}

export function wants(wanted: readonly Wanted[], ...tokens: readonly string[]): boolean {
  return wanted.some(({ token }) => tokens.includes(token));
}

export function isVerb(token: LineToken | undefined): boolean {
  return token !== undefined && lineParser().lexer.verbs.has(token.tokenType.name);
}

/** Words in quotes, for a message; a name brings its own. */
export function said(words: string): string {
  return words.includes('"') ? words : `"${words}"`;
}

export function applyEdits(text: string, edits: readonly LineEdit[]): string {
  let result = text;
  for (const edit of [...edits].sort((a, b) => b.at - a.at)) result = result.slice(0, edit.at) + edit.text + result.slice(edit.to);
  return result;
}

/** Whether a line can be read. */
export function reads(text: string): boolean {
  const { lexer, follow, parse } = lineParser();
  const lexed = lexer.lex(text);
  return lexed.tokens.length > 0 && follow.walk(lexed.tokens).whole && parse(lexed).whole;
}

/** How many tokens of a line fit. */
export function readsUpTo(text: string): number {
  const { lexer, follow } = lineParser();
  return follow.walk(lexer.lex(text).tokens).at;
}

/** A fix, if the line can be read with it. */
export function tried(broken: Broken, title: Message, edits: readonly LineEdit[]): LineFix | undefined {
  return reads(applyEdits(broken.text, edits)) ? { title, edits } : undefined;
}

/** Whether the verb that would stand at `index` has one subject. Without a subject of its own it follows the verb before. */
export function singularAt(broken: Broken, index: number): boolean {
  const before = broken.tokens[index - 1];
  if (isPlayer(before)) return !isPlayerList(broken, index - 1);
  if (before && ['everyone', 'everybody', 'he', 'else'].includes(before.image)) return true;
  if (before && ['both', 'others', 'they'].includes(before.image)) return false;
  for (let i = index - 1; i >= 0; i--) {
    const verb = verbOf(broken.tokens[i]!.image);
    if (verb) return verb.number === 'singular';
  }
  return true;
}

/** Whether the player at `last` ends a list that is a subject: one at the line's head or behind a word that begins a sentence. */
function isPlayerList(broken: Broken, last: number): boolean {
  let first = last;
  while (first >= 2 && isPlayer(broken.tokens[first - 2]) && [',', 'and'].includes(broken.tokens[first - 1]!.image)) first -= 2;
  const head = broken.tokens[first - 1]?.image;
  return first < last && (head === undefined || ['rebound', 'when', 'once', 'as', 'until', ':', 'on a miss'].includes(head));
}
