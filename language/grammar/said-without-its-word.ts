// Lines of a play's head as coaches write them, without the word that such a line begins with, or with one of their own.
import { message, type Message } from '../message/message.ts';
import { reads, type Broken } from './broken-line.ts';
import { isPlayer } from './line-token.ts';
import { rewriting, wholeLine, word, type Recogniser, type SaidOtherwise } from './saying.ts';
import { levelOf } from './said-of-heads.ts';

export const withoutItsWord: readonly Recogniser[] = [situationOtherwise, anotherWord];

/** Common usage, no source. */
const CIRCUMSTANCES: readonly (readonly [said: RegExp, line: string])[] = [
  [/^(?:we(?:'re| are) )?(down|up) (?:by )?(\w+)(?: points?)?$/, '$1 $2'],
  [/^(?:tied|tie)(?: game| score)?$/, 'tied'],
  [/^(?:out of |coming out of |after )?(?:a |the )?(?:timeout|time-out|time out)$|^ato$/, 'after a time-out'],
  [/^(?:from the |on the )?side ?(?:line)? (?:out(?: of bounds)?|out-of-bounds|throw[- ]?in|inbounds?|inbounds? play)$/, 'sideline throw-in'],
  [/^(?:from the |on the |under the )?(?:base|end) ?line (?:out(?: of bounds)?|out-of-bounds|throw[- ]?in|inbounds?|inbounds? play)$/, 'baseline throw-in'],
  [/^end of (?:the |a )?(?:quarter|period)$/, 'end of a quarter'],
  [/^end of (?:the |a )?half$/, 'end of a half'],
  [/^end of (?:the |a )?game$/, 'end of the game'],
  [/^(?:the )?(?:last|final) (?:shot|possession)$/, 'last shot'],
  [/^(?:we )?need (?:a )?(?:3|three)(?: pointer)?$/, 'need a three'],
  [/^(?:we )?need (?:a )?(?:2|two)$/, 'need a two'],
];

function circumstance(said: string): string {
  const row = CIRCUMSTANCES.find(([words]) => words.test(said));
  return row === undefined ? said : said.replace(...row);
}

/** A line of a few words; whatever else is in a file costs no more. */
const isShort = ({ text, tokens }: Broken): boolean => tokens.length <= 16 && /^\s*[\w"“”][\w"“”'’ ,:.-]{1,100}(?:#|$)/.test(text);

/** `down by 2`, `after a timeout`, `situation side throw in, down by 2` */
function situationOtherwise(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  if (isPlayer(tokens[0]) || !isShort(broken)) return undefined;
  const named = word(tokens[0]) === 'situation';
  const said = wholeLine(broken).toLowerCase().replace(/^situation:? */, '').split(/\s*,\s*/);
  const line = `situation ${said.map(circumstance).join(', ')}`;
  if (!reads(line) || line === wholeLine(broken).toLowerCase()) return undefined;
  const told = named
    ? message('What the game is like is said with these words: "{line}".', { line })
    : message('What the game is like is the "situation" line of the play: "{line}".', { line });
  return { code: 'missing-word', from: 0, to: tokens.length, message: told, fixes: [rewriting(broken, line)] };
}

interface Row {
  readonly said: RegExp;
  readonly line: (found: readonly (string | undefined)[]) => string | undefined;
  readonly told: (line: string) => Message;
}

const ROWS: readonly Row[] = [
  {
    said: /^(?:(?:time|clock)(?: at| is)?:? ?(?:0?:|0:)?(\d{1,2})(?: ?s(?:ec(?:ond)?s?)?)?|(?:with )?(\d{1,2}) ?s(?:ec(?:ond)?s?)?,? (?:left|to go|to play|remaining|on the clock)[^,]*)$/i,
    line: ([, time, left]) => `call with ${Number(time ?? left)} on the clock`,
    told: (line) => message('How much is left when it is called has a line of its own: "{line}".', { line }),
  },
  {
    said: /^(?:(?:the )?defen[cs]e:? (?:is |plays )?|they (?:play|are in) (?:an? )?)?(man(?:[ -]to[ -]man)?|\d-\d(?:-\d)?(?: zone)?)(?: defen[cs]e)?$/i,
    line: ([, what]) => `against ${/^man/i.test(what!) ? 'man' : what}`,
    told: (line) => message('What the defence plays is the "against" line of the play: "{line}".', { line }),
  },
  {
    said: /^(?:(?:the )?(?:players|offen[cs]e|team|five|they|we|everyone|everybody|all)? ?(?:starts?|lines? up|sets? up|begins?|stands?|formation|alignment|set)(?: is)?:? (?:in |from |out of |as )?(?:an? )?(?:the )?(.+?)|(?:an? )?(\S.*?))(?: (?:set|formation|alignment|look|offen[cs]e))?$/i,
    line: ([, told, alone]) => `from ${(told ?? alone)!.toLowerCase()}`,
    told: (line) => message('How the five stand at the start is the "from" line of the play: "{line}".', { line }),
  },
  {
    said: /^(?:(?:inbounder|thrower|passer|inbounds|throw-in|inbounding)(?: is|:)? ([1-5])|([1-5]) (?:inbounds|throws in|throws it in|takes it out|takes the ball out|is the inbounder|is the thrower))(?:,? (?:on|from|at))?(?: the)? (left|right)(?: (?:side(?: ?line)?|(base|end) ?line))?$/i,
    line: ([, one, other, side, base]) => `${one ?? other} inbounds from the ${side!.toLowerCase()} ${base === undefined ? 'sideline' : 'baseline'}`,
    told: (line) => message('Who throws in, and where, is told like this: "{line}".', { line }),
  },
  {
    said: /^ages? ?:? ?(?:u|under )?-?(\d{1,2})$/i,
    line: ([, age]) => `level ${levelOf(Number(age))}`,
    told: (line) => message('Whose legs the times are for is the "level" line: "{line}".', { line }),
  },
  {
    said: /^(?:name|title|play name|called)(?: is)?:? ["“”]?([^"“”]+)["“”]?$/i,
    line: ([, name]) => `play "${name}"`,
    told: (line) => message('A play begins with its name: {line}.', { line }),
  },
  {
    said: /^(?:option|counter|read|variation|variant|phase|part|action|wrinkle|adjustment)(?: (\d+))?:? ?(?:["“”]([^"“”]+)["“”])?(.*)$/i,
    line: ([, number, name, rest]) => (name ?? number) === undefined ? undefined : `step "${name ?? number}"${rest}`,
    told: (line) => message('Each part of a play is a step: {line}. One that stands instead of another says so: step "Slip" instead of "Open" when X4 switches.', { line }),
  },
];

/** `box set`, `11 seconds left`, `defense: man to man`, `option "Keep" when X4 switches` */
function anotherWord(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  // A man and his place are told by `placesWithoutFrom`.
  if (!isShort(broken) || /^[1-5] at\b/.test(wholeLine(broken)) || broken.lexed.openQuote !== undefined) return undefined;
  const words = wholeLine(broken).trim();
  for (const { said, line, told } of ROWS) {
    const found = said.exec(words);
    const text = found === null ? undefined : line(found);
    if (text === undefined || !reads(text)) continue;
    const fix = rewriting(broken, text);
    if (fix !== undefined) return { code: 'missing-word', from: 0, to: tokens.length, message: told(text), fixes: [fix] };
  }
  return undefined;
}
