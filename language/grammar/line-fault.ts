import type { Message, Params } from '../message/message.ts';
import type { Columns } from './tree.ts';

/** CONTRACT. What is wrong with a line, in a coach's words. */
export interface LineFault extends Columns {
  readonly code: FaultCode;
  readonly message: Message;
  readonly params: Params;
  /** Best first. Each is a whole mend: the line can be read with it, unless the line has a second fault further on. */
  readonly fixes: readonly LineFix[];
  /** The line just stops: it is probably still being typed. */
  readonly unfinished: boolean;
}

export type FaultCode =
  | 'unknown-word' | 'misplaced-word' | 'missing-word' | 'extra-word' | 'word-order' | 'line-unfinished' | 'open-quote' | 'name-without-quotes' | 'no-such-player'
  | 'verb-first' | 'who-does-it' | 'noun-for-verb' | 'unit-missing' | 'verb-missing' | 'line-too-long' | 'line-not-read';

export interface LineFix {
  /** What the fix does, as a button would say it. */
  readonly title: Message;
  readonly edits: readonly LineEdit[];
  /** What then stands in a line of its own below it, as far in and by its own blanks further. */
  readonly below?: string;
}

export interface LineEdit extends Columns {
  readonly text: string;
}
