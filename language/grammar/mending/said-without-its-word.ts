// Lines of a play's head as coaches write them, without the word that such a line begins with, or with one of their own.
import { message, type Message } from '../../message/message.ts';
import { reads, type Broken } from './broken-line.ts';
import { isPlayer } from '../line-token.ts';
import { rewriting, wholeLine, word, type Recogniser, type SaidOtherwise } from './saying.ts';
import { levelOfAge } from '../../court/ages.ts';

export const withoutItsWord: readonly Recogniser[] = [situationOtherwise, anotherWord];

/** Common usage, no source. */
const CIRCUMSTANCES: readonly (readonly [said: RegExp, line: string])[] = [
  [/^(?:we(?:'re| are) )?(down|up) (?:by )?(\w+)(?: points?)?$/, '$1 $2'],
  [/^we(?:'re| are)? (?:lose|losing|trail|trailing|behind) (?:by )?(\w+)(?: points?)?$|^(?:trailing|losing|behind) by (\w+)(?: points?)?$/, 'down $1$2'],
  [/^we(?:'re| are)? (?:win|winning|lead|leading|ahead) (?:by )?(\w+)(?: points?)?$|^(?:winning|leading|ahead) by (\w+)(?: points?)?$/, 'up $1$2'],
  [/^(?:tied|tie)(?: game| score)?$/, 'tied'],
  [/^(?:out of |coming out of |after )?(?:a |the )?(?:timeout|time-out|time out)$|^ato$/, 'after a time-out'],
  [/^(?:from the |on the )?side ?(?:line)? (?:out(?: of bounds)?|out-of-bounds|throw[- ]?in|inbounds?|inbounds? play)$/, 'sideline throw-in'],
  [/^(?:from the |on the |under the )?(?:base|end) ?line (?:out(?: of bounds)?|out-of-bounds|throw[- ]?in|inbounds?|inbounds? play)$/, 'baseline throw-in'],
  [/^side ?line$/, 'sideline throw-in'],
  [/^(?:base|end) ?line$/, 'baseline throw-in'],
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

/** What a situation has no word for is kept as a remark. */
const orRemark = (part: string): string => (reads(`situation ${part}`) ? part : `"${part.replaceAll(/["“”]/g, '')}"`);

/** `slob left`, `6 sec`: of what is said beside, most is a line of its own. */
function alsoTold(remarks: readonly string[]): Message | undefined {
  const seconds = remarks.map((each) => /^"(\d{1,2}) ?s(?:ec(?:ond)?s?)?(?: left| to go| to play| on the clock| remaining)?"$/.exec(each)?.[1]).find((each) => each !== undefined);
  if (seconds !== undefined) return message('How much is left when it is called has a line of its own: "{line}".', { line: `call with ${seconds} on the clock` });
  const side = remarks.map((each) => /\b(left|right)\b/.exec(each)?.[1]).find((each) => each !== undefined);
  return side === undefined ? undefined : message('Who throws in, and where, has a line of its own: for example "{text}".', { text: `3 inbounds from the ${side} sideline` });
}

/** `down by 2`, `after a timeout`, `situation side throw in, down by 2`, `need 3, 6 sec`, `SLOB left` */
function situationOtherwise(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  if (isPlayer(tokens[0]) || !isShort(broken)) return undefined;
  const named = word(tokens[0]) === 'situation';
  // Whose side it is stands behind it: `slob left`.
  const said = wholeLine(broken).toLowerCase().replace(/^situation:? */, '').replace(/^(slob|blob)(?: (?:on|from))?(?: the)? (left|right)(?: side)?(?=,|$)/, '$1, $2').split(/\s*,\s*/);
  const parts = said.map(circumstance);
  const known = parts.filter((part) => reads(`situation ${part}`));
  if (known.length === 0 || (known.length < parts.length && !named && tokens[0]!.tokenType.name === 'STRING')) return undefined;
  const told = parts.map(orRemark);
  const line = `situation ${told.join(', ')}`;
  if (!reads(line) || line === wholeLine(broken).toLowerCase()) return undefined;
  const also = alsoTold(told.filter((part, at) => part !== parts[at]));
  const first = named
    ? message('What the game is like is said with these words: "{line}".', { line })
    : message('What the game is like is the "situation" line of the play: "{line}".', { line });
  return { code: 'missing-word', from: 0, to: tokens.length, message: also === undefined ? first : message('{told} {also}', { told: first, also }), fixes: [rewriting(broken, line)] };
}

interface Row {
  readonly said: RegExp;
  readonly line: (found: readonly (string | undefined)[]) => string | undefined;
  readonly told: (line: string) => Message;
}

const ROWS: readonly Row[] = [
  {
    said: /^(?:(?:the )?(?:time|clock)(?: at| is| shows| says| reads)?:? ?(?:0?:|0:)?(\d{1,2})(?: ?s(?:ec(?:ond)?s?)?)?(?: left)?|(?:with )?(?:(\d{1,2}) ?(?:-|–|to) ?)?(\d{1,2})(?: ?s(?:ec(?:ond)?s?)?)?,? (?:left|to go|to play|remaining|on (?:the )?clock)(?: on (?:the )?(?:game )?clock)?)$/i,
    line: ([, time, low, left]) => `call with ${low === undefined ? '' : `${Math.min(Number(low), Number(left))} to `}${time !== undefined ? Number(time) : Math.max(Number(low ?? 0), Number(left))} on the clock`,
    told: (line) => message('How much is left when it is called has a line of its own: "{line}".', { line }),
  },
  {
    said: /^(?:the )?(?:attack|offen[cs]e|team|we)(?: has| have)? (\d{1,2}) ?s(?:ec(?:ond)?s?)?$/i,
    line: ([, time]) => `shot within ${time} seconds of the call`,
    told: (line) => message('How soon the shot has to go up is a line of its own: "{line}".', { line }),
  },
  {
    said: /^we (?:want|need|take|get|have to take) (?:the|a|our) (?:last )?shot (?:up )?between (\d{1,2}) and (\d{1,2})(?: ?s(?:ec(?:ond)?s?)?)?(?: left| on the clock)?$/i,
    line: ([, one, other]) => `shot between ${Math.max(Number(one), Number(other))} and ${Math.min(Number(one), Number(other))} on the clock`,
    told: (line) => message('Until when the shot has to go up is a line of its own: "{line}".', { line }),
  },
  {
    said: /^(?:must |we (?:must|have to|need to) )?(?:get|throw|pass) (?:it|the ball) in (?:within|in(?: under)?|in less than) (\d{1,2}) ?s(?:ec(?:ond)?s?)?$/i,
    line: ([, time]) => `inbound within ${time} seconds`,
    told: (text) => message('How soon he has to let go is asked for in a line of its own: "{text}".', { text }),
  },
  {
    said: /^(\d{1,2}) ?s(?:ec(?:ond)?s?)? (?:for|to make|to) (?:the )?(?:throw[- ]?in|inbounds?(?: pass)?|inbounding)$/i,
    line: ([, time]) => `inbound within ${time} seconds`,
    told: (text) => message('How soon he has to let go is asked for in a line of its own: "{text}".', { text }),
  },
  {
    said: /^(?:(?:the )?(?:all |all five )?(?:five|players|girls|boys|everyone|everybody|all)(?: of them| five)?(?: girls| boys| players)? )?(?:starts?|stands?|begins?|is|are)? ?(?:outside|behind|beyond) the (?:three|3)[- ]?point(?:er)? (?:line|arc)$/i,
    line: () => 'from 5-out',
    told: (line) => message('How the five stand at the start is the "from" line of the play: "{line}".', { line }),
  },
  {
    said: /^(?:(?:must|has to|have to|should) end with (?:a|the) shot|(?:the )?(?:last )?shot (?:must|has to|should|needs to)(?: be| go up| come| be taken)?) (?:before|by|at|until) (\d{1,2})(?: ?s(?:ec(?:ond)?s?)?)?(?: left| on the clock)?$/i,
    line: ([, time]) => `shot by ${time} on the clock`,
    told: (line) => message('Until when the shot has to go up, as the clock shows it: "{line}". So many seconds after the call: "{other}".', { line, other: line.replace(/^shot by (\d+) on the clock$/, 'shot within $1 seconds of the call') }),
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
    line: ([, age]) => `level ${levelOfAge(Number(age))}`,
    told: (line) => message('Whose legs the times are for is the "level" line: "{line}".', { line }),
  },
  {
    said: /^(?:name|title|play name|called)(?: is)?:? ["“”]?([^"“”]+)["“”]?$/i,
    line: ([, name]) => `play "${name}"`,
    told: (line) => message('A play begins with its name: {line}.', { line }),
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
