// CONTRACT. A finding: what the editor, the command line, the page and a review all print.
import type { Message, Params } from '../message/message.ts';
import type { Point, Source } from '../court/point.ts';
import type { PartId, TextPlace } from '../play/play.ts';

export type Severity = 'error' | 'warning' | 'hint';

export interface Finding {
  /** Stable, words with hyphens: `screen-with-ball`. */
  readonly code: string;
  readonly severity: Severity;
  /** One or two sentences in a coach's words, with the numbers and their units. */
  readonly said: Message;
  /** The same in English. */
  readonly message: string;
  readonly params: Params;
  /** The name of the further rule set (`also nfhs`) that alone minds. */
  readonly byRules?: string;
  /** On how many other ways through the play the same is true. */
  readonly moreWays?: number;
  /** Where in the block's text. */
  readonly place: TextPlace;
  /** The action, look, step or header it speaks of; absent for a line that could not be read. */
  readonly part?: PartId;
  readonly run?: string;
  /** ms from the call. */
  readonly moment?: number;
  readonly spot?: Point;
  readonly related: readonly { readonly place: TextPlace; readonly message: Message }[];
  /** The rule, paper or practice it rests on. */
  readonly source?: Source;
  readonly fixes: readonly Fix[];
  /** The coach is still writing there, and what is missing may be on its way (`whileWritten`). */
  readonly unfinished?: boolean;
}

/** A change of the block's text that mends the finding. */
export interface Fix {
  readonly title: Message;
  readonly preferred?: boolean;
  readonly edits: readonly BlockEdit[];
}

/** Replaces columns `[at, to)` of a line of the block. With `newLine` the text becomes a line of its own before `line`; with `wholeLine` the line goes, its end included. */
export interface BlockEdit {
  readonly line: number;
  readonly at: number;
  readonly to: number;
  readonly text: string;
  readonly newLine?: boolean;
  readonly wholeLine?: boolean;
}
