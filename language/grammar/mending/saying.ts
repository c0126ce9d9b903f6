import { message, type Message } from '../../message/message.ts';
import { endOf, endOfWords, singularAt, startWithArticles, tried, type Broken } from './broken-line.ts';
import type { FaultCode, LineFix } from '../line-fault.ts';
import { otherNumber } from '../verbs.ts';

/** Something that coaches say and that no line can say so: what can be written instead. */
export interface SaidOtherwise {
  readonly code: FaultCode;
  /** Tokens from, up to and not including to. */
  readonly from: number;
  readonly to: number;
  readonly message: Message;
  readonly fixes: readonly (LineFix | undefined)[];
}

export type Recogniser = (broken: Broken) => SaidOtherwise | undefined;

export { isAttacker, isDefender, wordOf as word } from '../line-token.ts';

/** The line with other words in the place of the tokens, if it can be read so. */
export function writing(broken: Broken, from: number, to: number, text: string): LineFix | undefined {
  const first = broken.tokens[from];
  const last = broken.tokens[to - 1];
  return first && last && tried(broken, message('Write "{words}"', { words: text }), [{ at: first.startOffset, to: endOf(last), text }]);
}

/** The verb, with what follows it, in the number of the subject before the token. */
export function inNumber(broken: Broken, index: number, one: string): string {
  if (singularAt(broken, index)) return one;
  const words = one.split(' ');
  for (let length = words.length; length > 0; length--) {
    const other = otherNumber.get(words.slice(0, length).join(' '));
    if (other !== undefined) return [other, ...words.slice(length)].join(' ');
  }
  return one;
}

export function commaAfter(broken: Broken, index: number): number {
  const at = broken.tokens.findIndex((token, i) => i > index && token.image === ',');
  return at < 0 ? broken.tokens.length : at;
}

/** The whole line with other words, if it can be read so. */
export function rewriting(broken: Broken, text: string, title = message('Write "{words}"', { words: text })): LineFix | undefined {
  const first = broken.tokens[0];
  return first && tried(broken, title, [{ at: startWithArticles(broken, 0), to: endOfWords(broken), text }]);
}

/** All the words of the line, as the coach wrote them. */
export function wholeLine(broken: Broken): string {
  return fromThere(broken, 0);
}

/** All the words of the line from a token on; the last tokens may stand for fewer words than there are. */
export function fromThere(broken: Broken, index: number): string {
  return broken.text.slice(startWithArticles(broken, index), endOfWords(broken));
}

/** For a note: words that stood in quotes stand without. */
export const unquoted = (words: string): string => words.replaceAll(/["“”]/g, '');
