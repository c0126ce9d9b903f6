// How a coach begins a line of a play's head before he knows its word: the line that is meant, where one can be read.
import { message } from '../../message/message.ts';
import { written, type Broken } from './broken-line.ts';
import { rewriting, unquoted, wholeLine, type Recogniser, type SaidOtherwise } from './saying.ts';

export const saidInOtherHeadWords: readonly Recogniser[] = [nameAlone, partOfAPlay, otherHeadWord, clockRange, throwInAlone, reboundLists, theSafety, threeOut, remarkBehindAColon];

/** `"Lighthouse"` */
function nameAlone(broken: Broken): SaidOtherwise | undefined {
  if (broken.tokens.length !== 1 || broken.tokens[0]!.tokenType.name !== 'STRING') return undefined;
  const name = written(broken, 0);
  return { code: 'missing-word', from: 0, to: 1, message: message('A name does not stand alone: a play begins with play {name}, a step with step {name}.', { name }), fixes: [rewriting(broken, `play ${name}`), rewriting(broken, `step ${name}`)] };
}

/** `first step`, `phase B`, `option 2: "Slip"`, `step 1 "Open"`, `counter "Keep" when X4 switches` */
const PART_OF_A_PLAY = /^((?:(?:the )?(?:1st|2nd|3rd|4th|first|second|third|fourth|last|next) )?(?:step|phase|part|stage|action|option|movement|sequence|counter|read|variation|variant|wrinkle|adjustment))(?: (\w{1,5}))?\s*:?\s*(?:["“”]([^"“”]+)["“”])?( (?:when|if|instead of|after) .+)?$/i;

/** A part of a play is a step with a name; a number that stands before its name is kept in it. */
function partOfAPlay(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken).trim();
  if (broken.lexed.openQuote !== undefined || /^(when|if|after)$/i.test(PART_OF_A_PLAY.exec(said)?.[2] ?? '')) return undefined;
  const [, head, number, name, rest = ''] = PART_OF_A_PLAY.exec(said) ?? [];
  const isStep = /^step$/i.test(head ?? '');
  if (head === undefined || (isStep && (number === undefined || name === undefined)) || (number === undefined && name === undefined && (rest !== '' || /^read$/i.test(head)))) return undefined;
  // Of two names one would be lost.
  const called = name === undefined ? `${head}${number === undefined ? '' : ` ${number}`}` : number === undefined ? name : `${number} ${name}`;
  const line = `step "${called[0]!.toUpperCase()}${called.slice(1)}"${rest}`;
  const fix = rewriting(broken, line);
  const told = isStep
    ? message('A step has one name, in quotes: {line}.', { line })
    : message('Each part of a play is a step with a name in quotes: {line}. One that stands instead of another says so: step "Slip" instead of "Open" when X4 switches.', { line });
  return fix && { code: isStep ? 'name-without-quotes' : 'misplaced-word', from: 0, to: broken.tokens.length, message: told, fixes: [fix] };
}

/** What a line of the play begins with, in other words than the notation's. */
const HEAD_WORDS: readonly (readonly [said: RegExp, word: string])[] = [
  [/^(age group|grade|age level)\b\s*:?\s*/i, 'level '],
  [/^for\s+(?=(?:u|under|ages?)[ -]?\d)/i, 'level '],
  [/^(?:the )?(?:starting |start )?(?:positions?|places?)(?: (?:of|at|for) (?:the )?(?:start|beginning))?\s*(?::|are)?\s*(?=[1-5]\b)/i, 'from '],
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
  const [, who] = /\b(?:by|with|from)\s+([1-5])\b/.exec(said) ?? /\b([1-5])\b/.exec(said) ?? [];
  const [side] = /\b(left|right)\b/.exec(said) ?? [];
  if (who === undefined && side === undefined) return undefined;
  const place = `${side === undefined ? '' : `${side} `}${/base|end/.test(said) ? 'baseline' : 'sideline'}`;
  const text = `${who ?? '3'} inbounds from the ${place}`;
  // Nobody is made the thrower whom the coach has not named.
  const line = who === undefined ? `situation ${/base|end/.test(said) ? 'baseline' : 'sideline'} throw-in, "from the ${side}"` : text;
  const fix = rewriting(broken, line);
  const told = who === undefined
    ? message('What the game is like is the "situation" line: {line}. Who throws in, and where, has a line of its own: for example "{text}".', { line, text })
    : message('Say who throws in, and where: "{line}".', { line: text });
  return fix && { code: 'missing-word', from: 0, to: broken.tokens.length, message: told, fixes: [fix] };
}

interface Rebounders {
  readonly who: readonly string[];
  readonly isBack: boolean;
  /** Something is said of them. */
  readonly isTold: boolean;
}

/** The words of a rebound line; any other is a slip of the pen, and told as one. */
const OF_A_REBOUND = /^(?:[1-5\s,;:.&+/]|and|then|are|is|rebound\w*|rebs?|crash(es)?|hits?|goes|go|gets?|stays?|to|on|in|the|boards?|glass|offensive|back|safe|safety|home|defen[cs]e|protects?|half|court|hard)*$/;
/** With one of these such a line begins; with a man it is one of its own. */
const BEGINS_A_REBOUND = /^(?:rebound|rebs?\b|crash|boards?\b|(?:the )?glass\b|back\b|(?:in |on )?defen[cs]e\b|get back\b|stay back\b)/;

const isBackWord = (what: string): boolean => /back|safe|home|safety|defen[cs]e|protect|half/.test(what);

/** `3 4 5 crash, 1 2 back`: what they do stands behind them. */
function reboundersIn(said: string): readonly Rebounders[] {
  const lists = said.replace(/^(rebound\w*|rebs?):?/, '').matchAll(/((?:[1-5][\s,&+/]*(?:and\s*)?)+)([^1-5]*)/g);
  return [...lists].map(([, who = '', what = '']) => ({ who: who.match(/[1-5]/g) ?? [], isBack: isBackWord(what), isTold: /[a-z]/.test(what.replace(/\band\b/g, '')) }));
}

/** `crash 3 4 5, back 1 2`, `rebound 4, 5, back 1`: it stands before them. */
function reboundersBehind(said: string): readonly Rebounders[] {
  const lists = said.matchAll(/([^1-5]+)((?:[1-5][\s,&+/]*(?:and\s*)?)+)/g);
  return [...lists].map(([, what = '', who = '']) => ({ who: who.match(/[1-5]/g) ?? [], isBack: isBackWord(what), isTold: /[a-z]/.test(what.replace(/\band\b/g, '')) }));
}

/** `rebound 3 4 5, 1 2 back`, `crash 3, 4, 5. back 1, 2`: who does what, written out. Whom nothing is said of goes to the boards. */
function reboundLists(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken).toLowerCase();
  if (!BEGINS_A_REBOUND.test(said) || !OF_A_REBOUND.test(said) || /\bgets?$/.test(said)) return undefined;
  const lists = /[1-5]$/.test(said) ? reboundersBehind(said) : reboundersIn(said);
  if (lists.length === 0 || (lists.length === 1 && !lists[0]!.isTold)) return undefined;
  const does = ({ who, isBack }: Rebounders): string => (isBack ? (who.length > 1 ? 'get back' : 'gets back') : who.length > 1 ? 'crash' : 'crashes');
  const line = `rebound ${lists.map((list) => `${list.who.join(', ')} ${does(list)}`).join(', ')}`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: broken.index, to: Math.min(broken.index + 1, broken.tokens.length), message: message('The men of each list stand with a comma between them, then what they do: "{line}".', { line }), fixes: [fix] };
}

/** `safety 1`, `safety: 1 at half court`, `security is 1`: the man for a ball that finds nobody, or who is back when it is lost. */
function theSafety(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken);
  const [, one, where = ''] = /^(?:the )?(?:safety(?: valve)?|security|outlet|valve|release|bail-?out)(?: man| player)?(?: is| with)?\s*[:=-]?\s*([1-5])((?: (?:at|in|on|by) .+)?)$/i.exec(said) ?? [];
  if (one === undefined) return undefined;
  const fixes = [`${one} is the safety${where}`, ...(where === '' ? [`rebound ${one} gets back`] : [])].map((text) => rewriting(broken, text));
  const told = where === ''
    ? message('Who gets the ball when no look is open: "{line}". Who stays behind when the shot goes up: "{other}".', { line: `${one} is the safety`, other: `rebound ${one} gets back` })
    : message('The safety is told in one line: "{text}". He gets the ball when the looks are passed up.', { text: `${one} is the safety${where}` });
  return fixes[0] && { code: 'misplaced-word', from: 0, to: broken.tokens.length, message: told, fixes };
}

/** `3 out`: how they stand, or who throws in. */
function threeOut(broken: Broken): SaidOtherwise | undefined {
  const [, who] = /^([1-5]) out(?: of bounds)?$/i.exec(wholeLine(broken).trim()) ?? [];
  if (who === undefined) return undefined;
  const fixes = [`from ${who} out`, `${who} takes the ball out`].map((text) => rewriting(broken, text));
  return { code: 'missing-word', from: 0, to: broken.tokens.length, message: message('How the five stand at the start is the "from" line of the play: "from {who} out". Who throws in is told so: "{who} takes the ball out".', { who }), fixes };
}

/** `key: be patient`, `coaching point for 4: seal him` */
function remarkBehindAColon(broken: Broken): SaidOtherwise | undefined {
  const [, who, said] = /^(?:notes?|keys?|tips?|points?|coaching points?|teaching points?|emphasis|reminders?|remember|important|remark|comment|coach)(?:\s+(?:for|to)\s+([1-5]))?\s*:\s*(.+)$/i.exec(wholeLine(broken)) ?? [];
  if (said === undefined) return undefined;
  const line = `note${who === undefined ? '' : ` ${who}`} "${unquoted(said)}"`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: 0, to: broken.tokens.length, message: message('What is only said to the team is a note: {line}.', { line }), fixes: [fix] };
}
