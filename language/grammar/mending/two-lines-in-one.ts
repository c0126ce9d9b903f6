// Two lines written as one: `from horns, call with 12`, `level u14, rules fiba`, `play "Pier" against 2-3`, `step "Gate": 1 passes to 2`.
import { message } from '../../message/message.ts';
import { applyEdits, breakDown, endOfWords, reads, said, startWithArticles, type Broken } from './broken-line.ts';
import { headsInFreeWords } from './heads-in-free-words.ts';
import { lineParser } from '../reading/line-parser.ts';
import { saidInOtherHeadWords } from './said-in-other-head-words.ts';
import { withoutItsWord } from './said-without-its-word.ts';
import { wholeLine, type Recogniser, type SaidOtherwise } from './saying.ts';

export const twoLinesInOne: readonly Recogniser[] = [behindAName, headsOnOneLine];

const HEAD = /^(?:from|ball|horns|box|stack|diamond|spread|five|four|three|[1-5]-|(?:we )?(?:need|want|save|keep) |side ?(?:line|out)|base ?line|throw-in|call|level|rules|against|vs|situation|rebound|tags?|shot|leave|no shot|[1-5],? )/i;
const BEGINS_ANOTHER = /^(?:from|ball|(?:we )?(?:need|want|save|keep) |call|level|rules|against|vs|rebound|tags?|shot|leave|no shot|situation|[1-5] (?:has|starts with) (?:the ball|it)$|[1-5](?:,? (?:and )?[1-5])* (?:crash|rebound))/i;
/** What the game is like, without its word: `we need two`, `score tied`, `down 1`. */
const CIRCUMSTANCE = /^(?:(?:we )?need (?:a )?(?:two|three|2|3)|(?:the )?(?:score |game )?(?:is )?tied|(?:we(?:.re| are) )?(?:down|up) (?:by )?\d+)$/i;
/** No head says more in one line. */
const mostCommas = 10;

const beginsAnother = (words: string): boolean => BEGINS_ANOTHER.test(words) || CIRCUMSTANCE.test(words);

/** Each says its own: the first stays, the rest goes below it. */
function headsOnOneLine(broken: Broken): SaidOtherwise | undefined {
  const words = wholeLine(broken).trim();
  // With its own word before it it is one: `1-4 high, ball with 1`.
  if (!HEAD.test(words) || words.length > 200 || reads(`from ${words}`)) return undefined;
  const commas = [...words.matchAll(/[,;.]\s+/g)].slice(0, mostCommas);
  for (const comma of commas) {
    const behind = words.slice(comma.index + comma[0].length);
    if (!beginsAnother(behind) || (/^rebound\b/i.test(words) && /^[1-5]/.test(behind)) || (/^situation\b/i.test(words) && CIRCUMSTANCE.test(behind))) continue;
    const [first, second] = [asALine(words.slice(0, comma.index)), asItIs(behind)];
    if (first === undefined || second === undefined) continue;
    return parted(broken, first, second);
  }
  return undefined;
}

/** Behind a play's name, or a step's, what it says goes below it, further in. */
function behindAName(broken: Broken): SaidOtherwise | undefined {
  const [, head, kind, behind] = /^((play|step)\s+"[^"]+")\s*[,:;.]?\s+(\S.*)$/i.exec(wholeLine(broken).trim()) ?? [];
  if (head === undefined || behind!.length > 200) return undefined;
  const line = kind!.toLowerCase() === 'step' ? (reads(behind!) && IN_A_STEP.test(behind!) ? behind : undefined) : asItIs(behind!);
  return line === undefined ? undefined : parted(broken, head, line, '  ');
}

const IN_A_STEP = /^(?:x?[1-5]\b|look\b|note\b|once\b|as\b|after\b)/i;

function parted(broken: Broken, first: string, second: string, further = ''): SaidOtherwise {
  const fix = { title: message('Put each on a line of its own'), edits: [{ at: startWithArticles(broken, 0), to: endOfWords(broken), text: first }], below: further + second };
  return { code: 'misplaced-word', from: broken.index, to: Math.min(broken.index + 1, broken.tokens.length), message: message('Each of these has a line of its own: {one} and {other}.', { one: said(first), other: said(second) }), fixes: [fix] };
}

/** Three on one line: what is left is told apart in its turn. */
function asItIs(words: string): string | undefined {
  const commas = [...words.matchAll(/[,;.]\s+/g)].slice(0, mostCommas);
  const isMore = commas.some(({ index, 0: comma }) => beginsAnother(words.slice(index + comma.length)) && asALine(words.slice(0, index)) !== undefined);
  return isMore ? words : (asALine(words) ?? (commas.some(({ index }) => asALine(words.slice(0, index)) !== undefined) ? words : undefined));
}

/** The line as it is read, or as it is mended; of a step's lines none. */
function asALine(words: string): string | undefined {
  if (reads(words)) return HEAD.test(words) && !/^[1-5]\b(?! (?:has|starts))/.test(words) ? words : undefined;
  if (/^(?:shot|no shot|call) .*\d$/i.test(words) && reads(`${words} on the clock`)) return `${words} on the clock`;
  if (/^[1-5] .+,/.test(words) && reads(`from ${words}`)) return `from ${words}`;
  const broken = breakDown(words, lineParser().lexer.lex(words));
  for (const recognise of [...saidInOtherHeadWords, ...headsInFreeWords, ...withoutItsWord]) {
    const [fix] = recognise(broken)?.fixes ?? [];
    if (fix) return applyEdits(words, fix.edits);
  }
  return undefined;
}
