// The words the editor shows of the server's own, and the findings' messages, in the editor's language where it brings one. Every phrase
// is written once, here, with names for its gaps; the messages of the findings are the templates of the checks.
import { entryOf } from '../../language/checks/catalogue.ts';
import type { Finding } from '../../language/checks/finding.ts';
import { fillTemplate, type ParamsOf } from '../../language/checks/template.ts';
import { around, wholeMessage } from '../../language/checks/whole-message.ts';

export const phrases = {
  show: '▶ Show',
  draw: 'Draw',
  page: 'Page',
  oneLook: 'Look at {at}',
  looks: 'First look at {first}, last {last}',
  callIt: 'Call it with {seconds} s or more',
  callItForAll: 'Call it with {seconds} s or more, {all} for every look',
  hasBall: '{who} has the ball',
  hasBallThen: 'Who has the ball when this step begins.',
  doneAfterCall: 'Done {at} after the call.',
  doneAfterHandOver: 'Done {at} after the hand-over.',
  leavesAfterCall: 'Typically the ball leaves the hand {typical} after the call, late {late}.',
  leavesAfterHandOver: 'Typically the ball leaves the hand {typical} after the hand-over, late {late}.',
  endsThere: 'Where this way ends when nothing else is written.',
  mendAll: 'Mend everything that has one usual mend',
  otherSide: 'Run this play to the other side',
  swap: 'Swap {a} and {b}: each starts where the other does',
  changed: 'The text has changed since this was offered. Ask again.',
  notHere: 'This can no longer be done here.',
  onlyNames: 'Only names in quotation marks can be renamed.',
  aNumber: '{who} is a number, not a name. To change who does what, swap two players.',
  renameFile: 'Rename the file itself: the lines that use it follow.',
  givenNowhere: '“{name}” is given nowhere that this file can see. Mend that first.',
  checking: 'Checking the plays',
  ...around,
} as const;

/** English phrase → the same in the editor's language, with the same gaps. */
export type Translation = Readonly<Record<string, string>>;
type Params = Readonly<Record<string, string | number>>;

/** What a coach reads of the server's: a phrase in his language, its gaps filled. */
export type Say = <Phrase extends string>(phrase: Phrase, ...params: keyof ParamsOf<Phrase> extends never ? [] : [ParamsOf<Phrase>]) => string;

/** `words`: as they are now. */
export const sayIn = (words: () => Translation | undefined): Say => (phrase, ...[params]) => fillIn(words(), phrase, params ?? {});

function fillIn(translation: Translation | undefined, phrase: string, params: Params): string {
  return fillTemplate(translation?.[phrase] ?? phrase, params);
}

/** A finding's message; in English where its words have not been translated. */
export function sayFinding(translation: Translation | undefined, finding: Pick<Finding, 'code' | 'message' | 'params' | 'byRules' | 'moreWays'>): string {
  const template = entryOf(finding.code)?.message;
  const translated = template === undefined ? undefined : translation?.[template];
  if (translated === undefined) return finding.message;
  return wholeMessage(fillTemplate(translated, finding.params), finding, (english) => translation?.[english] ?? english);
}
