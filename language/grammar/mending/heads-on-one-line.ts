// Two lines of a play's head written as one: `from horns, call with 12`, `level u14, rules fiba`.
import { message } from '../../message/message.ts';
import { applyEdits, breakDown, endOfWords, reads, startWithArticles, type Broken } from './broken-line.ts';
import { headsInFreeWords } from './heads-in-free-words.ts';
import { lineParser } from '../reading/line-parser.ts';
import { wholeLine, type SaidOtherwise } from './saying.ts';

const HEAD = /^(?:from|ball|call|level|rules|against|vs|situation|rebound|tags?|shot|leave|no shot|[1-5],? )/i;
const BEGINS_ANOTHER = /^(?:from|ball|call|level|rules|against|vs|rebound|tags?|shot|leave|no shot|situation|[1-5] (?:has|starts with) (?:the ball|it)$|[1-5](?:,? (?:and )?[1-5])* (?:crash|rebound))/i;
/** No head says more in one line. */
const mostCommas = 10;

/** Each says its own: the first stays, the rest goes below it. */
export function headsOnOneLine(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken).trim();
  if (!HEAD.test(said) || said.length > 200) return undefined;
  const commas = [...said.matchAll(/[,;.]\s+/g)].slice(0, mostCommas);
  for (const comma of commas) {
    const behind = said.slice(comma.index + comma[0].length);
    if (!BEGINS_ANOTHER.test(behind)) continue;
    const [first, second] = [asALine(said.slice(0, comma.index)), asALine(behind) ?? (readsAPart(behind) ? behind : undefined)];
    if (first === undefined || second === undefined) continue;
    const fix = { title: message('Put each on a line of its own'), edits: [{ at: startWithArticles(broken, 0), to: endOfWords(broken), text: first }], below: second };
    return { code: 'misplaced-word', from: broken.index, to: Math.min(broken.index + 1, broken.tokens.length), message: message('Each of these has a line of its own: "{one}" and "{other}".', { one: first, other: second }), fixes: [fix] };
  }
  return undefined;
}

/** Three on one line: what is left is told apart in its turn. */
const readsAPart = (words: string): boolean => [...words.matchAll(/[,;.]\s+/g)].slice(0, mostCommas).some(({ index }) => asALine(words.slice(0, index)) !== undefined);

/** The line as it is read, or as it is mended; of a step's lines none. */
function asALine(words: string): string | undefined {
  if (reads(words)) return HEAD.test(words) && !/^[1-5]\b(?! (?:has|starts))/.test(words) ? words : undefined;
  if (/^(?:shot|no shot|call) .*\d$/i.test(words) && reads(`${words} on the clock`)) return `${words} on the clock`;
  if (/^[1-5] .+,/.test(words) && reads(`from ${words}`)) return `from ${words}`;
  const broken = breakDown(words, lineParser().lexer.lex(words));
  for (const recognise of headsInFreeWords) {
    const [fix] = recognise(broken)?.fixes ?? [];
    if (fix) return applyEdits(words, fix.edits);
  }
  return undefined;
}
