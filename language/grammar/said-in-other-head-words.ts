// How a coach begins a line of a play's head before he knows its word: the line that is meant, where one can be read.
import { message } from '../message/message.ts';
import { written, type Broken } from './broken-line.ts';
import { rewriting, unquoted, wholeLine, type Recogniser, type SaidOtherwise } from './saying.ts';

export const saidInOtherHeadWords: readonly Recogniser[] = [nameAlone, stepInOtherWords, otherHeadWord, clockRange, throwInAlone, reboundLists, remarkBehindAColon];

/** `"Lighthouse"` */
function nameAlone(broken: Broken): SaidOtherwise | undefined {
  if (broken.tokens.length !== 1 || broken.tokens[0]!.tokenType.name !== 'STRING') return undefined;
  const name = written(broken, 0);
  return { code: 'missing-word', from: 0, to: 1, message: message('A name does not stand alone: a play begins with play {name}, a step with step {name}.', { name }), fixes: [rewriting(broken, `play ${name}`), rewriting(broken, `step ${name}`)] };
}

/** `first step`, `1st step "Open"`, `phase B` */
function stepInOtherWords(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken);
  if (!/^((the )?(1st|2nd|3rd|first|second|third|last|next) )?(step|phase|part|stage|action|option|movement|sequence)( \w{1,5})?\s*:?\s*(["“][^"“”]+["”])?$/i.test(said) || /^step\b/i.test(said)) return undefined;
  const name = /["“]([^"“”]+)["”]/.exec(said)?.[1] ?? said.replace(/[:.]$/, '');
  const line = `step "${name[0]!.toUpperCase()}${name.slice(1)}"`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: 0, to: broken.tokens.length, message: message('A part of a play begins with "step" and a name of your own in quotes: {line}.', { line }), fixes: [fix] };
}

/** What a line of the play begins with, in other words than the notation's. */
const HEAD_WORDS: readonly (readonly [said: RegExp, word: string])[] = [
  [/^(age group|grade|age level)\b\s*:?\s*/i, 'level '],
  [/^(tag|label|labels|keyword|keywords|type|category)\b\s*:?\s*/i, 'tags '],
  [/^shoot(s|ing)?\s+(?=within|by|before|between)/i, 'shot '],
  [/^(score|game|time and score)\b\s*:?\s*/i, 'situation '],
  [/^(ruleset|rule set|federation)\b\s*:?\s*/i, 'rules '],
  [/^(rebounders|boards|on the boards|glass)\b\s*:?\s*/i, 'rebound '],
  [/^(save|keep)\s+/i, 'leave '],
  [/^(set|drill|new play|play named|play called)\s+(?=["“])/i, 'play '],
  [/^(team|squad|players|line-?up)\b\s*:?\s*(?=$|["“])/i, 'roster '],
  [/^(chapter|category|group|part)\s+(?=["“])/i, 'section '],
  [/^(import|include|load|uses)\s+/i, 'use '],
];

/** `tag quick`, `shoot within 8 seconds`, `team "Ours"` */
function otherHeadWord(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken);
  for (const [words, word] of HEAD_WORDS) {
    const line = said.replace(words, word).trim();
    const fix = line === said ? undefined : rewriting(broken, line);
    if (fix) return { code: 'misplaced-word', from: 0, to: 1, message: message('Here this is said so: "{line}".', { line }), fixes: [fix] };
  }
  return undefined;
}

/** `call with 10-14 on the clock`, `call between 14 and 10` */
function clockRange(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken);
  const [, one, other] = /^call\s+(?:it\s+)?(?:with\s+|at\s+|between\s+|from\s+)*(\d+)\s*(?:s|sec|seconds?)?\s*(?:-|–|—|and|or|until|till|to|\/)\s*(\d+)/i.exec(said) ?? [];
  if (one === undefined || /^call\s+(it\s+)?(with|at)\s+\d+\s+to\s/i.test(said)) return undefined;
  const [low, high] = [Number(one), Number(other)].sort((a, b) => a - b);
  const line = `call with ${low} to ${high} on the clock`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: broken.index, to: Math.min(broken.index + 1, broken.tokens.length), message: message('From when to when it is called: "{line}".', { line }), fixes: [fix] };
}

/** `throw-in from the right sideline by 3`, `sideline inbounds by 2` */
function throwInAlone(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken).toLowerCase();
  if (!/^(the )?(throw-?in|inbounds?|in-bounds|side-?line|baseline|side|end ?line|ball out)( (throw-?in|in|out|of|bounds|inbounds?|play|ball|from|on|at|by|with|the|left|right|side|side-?line|baseline|end ?line|[1-5]))*$/.test(said)) return undefined;
  if (!/\b([1-5]|left|right)\b/.test(said)) return undefined;
  const line = /base|end/.test(said) ? 'baseline' : 'sideline';
  const text = `${/\b(?:by|with|from)\s+([1-5])\b/.exec(said)?.[1] ?? /\b([1-5])\b/.exec(said)?.[1] ?? '1'} inbounds from the ${/\bleft\b/.test(said) ? 'left' : 'right'} ${line}`;
  const fix = rewriting(broken, text);
  return fix && { code: 'missing-word', from: 0, to: broken.tokens.length, message: message('Say who throws in, and where: "{line}".', { line: text }), fixes: [fix] };
}

interface Rebounders {
  readonly who: readonly string[];
  readonly isBack: boolean;
  /** Something is said of them. */
  readonly isTold: boolean;
}

/** The words of a rebound line; any other is a slip of the pen, and told as one. */
const OF_A_REBOUND = /^(?:[1-5\s,;:.&+/]|and|then|rebound\w*|crash(es)?|hits?|goes|go|gets?|stays?|to|on|in|the|boards?|glass|back|safe|safety|home|defen[cs]e|protects?|half|court|hard)*$/;

function reboundersIn(said: string): readonly Rebounders[] {
  const lists = said.replace(/^rebound\w*:?/, '').matchAll(/((?:[1-5][\s,&+/]*(?:and\s*)?)+)([^1-5]*)/g);
  return [...lists].map(([, who = '', what = '']) => ({ who: who.match(/[1-5]/g) ?? [], isBack: /back|safe|home|safety|defen[cs]e|protect|half/.test(what), isTold: /[a-z]/.test(what.replace(/\band\b/g, '')) }));
}

/** `rebound 3 4 5, 1 2 back`, `rebound 3, 4, 5; 1, 2 safe`: who does what, written out. Whom nothing is said of goes to the boards. */
function reboundLists(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken).toLowerCase();
  if (!said.startsWith('rebound') || !OF_A_REBOUND.test(said) || /\bgets?$/.test(said)) return undefined;
  const lists = reboundersIn(said);
  if (lists.length === 0 || (lists.length === 1 && !lists[0]!.isTold)) return undefined;
  const does = ({ who, isBack }: Rebounders): string => (isBack ? (who.length > 1 ? 'get back' : 'gets back') : who.length > 1 ? 'crash' : 'crashes');
  const line = `rebound ${lists.map((list) => `${list.who.join(', ')} ${does(list)}`).join(', ')}`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: broken.index, to: Math.min(broken.index + 1, broken.tokens.length), message: message('The men of each list stand with a comma between them, then what they do: "{line}".', { line }), fixes: [fix] };
}

/** `key: be patient`, `coaching point for 4: seal him` */
function remarkBehindAColon(broken: Broken): SaidOtherwise | undefined {
  const [, who, said] = /^(?:notes?|keys?|tips?|points?|coaching points?|teaching points?|emphasis|reminders?|remember|important|remark|comment|coach)(?:\s+(?:for|to)\s+([1-5]))?\s*:\s*(.+)$/i.exec(wholeLine(broken)) ?? [];
  if (said === undefined) return undefined;
  const line = `note${who === undefined ? '' : ` ${who}`} "${unquoted(said)}"`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: 0, to: broken.tokens.length, message: message('What is only said to the team is a note: {line}.', { line }), fixes: [fix] };
}
