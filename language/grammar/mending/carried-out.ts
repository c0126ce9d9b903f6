// What can be read of a line that cannot be read as a whole: its deeds up to the link or the wait in which the fault lies, the sentence behind a
// wait that cannot be read, or the line without the few words that cannot. The play goes on with it, so that the lines below still mean what
// they say; the fault stays an error, and names what is carried out. Nothing is carried out of a line whose unread part may turn it round, or
// makes it depend on something.
import { isPlace, isSubject } from '../rewording/aside-sorts.ts';
import { headsOf, MOST_WORDS, OF_WHOM, speaksOfAnother } from './asides.ts';
import type { Broken } from './broken-line.ts';
import { endOf } from './broken-line.ts';
import type { Walk } from '../reading/follow.ts';
import { lineParser } from '../reading/line-parser.ts';
import { isPlayer, wordOf, type LineToken } from '../line-token.ts';
import type { LookTree, StatementTree } from '../tree.ts';
import { untagged } from './untagged.ts';
import { verbOf } from '../verbs.ts';
import { WAITS_AS_SAID } from '../waits.ts';

export interface CarriedOut {
  readonly tree: StatementTree | LookTree;
  /** As the coach wrote it; `…` where words between are not. */
  readonly words: string;
}

/** Tokens from, up to and not including to. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

const LINKS: ReadonlySet<string> = new Set([',', 'and', 'then']);
/** Behind one of these a subject or a verb begins a new deed. */
const LED_IN_BY: ReadonlySet<string> = new Set([',', 'and', 'then', 'also', 'just', 'next']);
/** They turn round what stands before them, or make it a condition. */
const TURNS: ReadonlySet<string> = new Set("if unless not never without except instead only don't doesn't doesnt dont can't cant isn't isnt won't neither nor but maybe sometimes whether or either".split(' '));
/** So a wait may begin that is not understood; a word that is not known may be one as well. */
const MAY_BEGIN_A_WAIT: ReadonlySet<string> = new Set(['on', 'at', 'with', 'by', 'right', 'just', 'the']);
/** Behind one of these stands where he goes. */
const WHERE_TO: ReadonlySet<string> = new Set(['to', 'into', 'toward', 'up to', 'at', 'via', 'through to']);
/** So many words at most are left out between others. */
const LONGEST_GAP = 9;
/** So far before the word that does not fit they may begin. */
const BEFORE_THE_FAULT = 5;

export function carriedOut(broken: Broken): CarriedOut | undefined {
  const { tokens, index, lexed } = broken;
  if (tokens.length > MOST_WORDS || lexed.openQuote !== undefined || tokens.some(({ tokenType }) => tokenType.name === 'STRING')) return undefined;
  const isLook = wordOf(tokens[0]) === 'look';
  const begins = isLook || isPlayer(tokens[0]) || isSubject(tokens[0]) || WAITS_AS_SAID.has(wordOf(tokens[0]));
  if (!begins) return behind(broken);
  const heads = headsOf(tokens, index, lineParser().follow);
  return isLook ? without(broken, heads) : (upTo(broken, heads) ?? behind(broken) ?? without(broken, heads));
}

/** The longest beginning that is whole and ends where a link or a wait begins. */
function upTo(broken: Broken, heads: readonly Walk[]): CarriedOut | undefined {
  const { tokens } = broken;
  const { follow } = lineParser();
  for (let cut = Math.min(broken.index, tokens.length - 1); cut > 1; cut--) {
    const head = heads[cut]!;
    if (head.asObject || !follow.canEnd(head.configs) || !beginsAnew(tokens, cut) || turns(tokens.slice(cut))) continue;
    const found = read(broken, [{ from: 0, to: cut }]);
    if (found) return found;
  }
  return undefined;
}

/** The sentence behind a wait that cannot be read. */
function behind(broken: Broken): CarriedOut | undefined {
  const { tokens, index } = broken;
  const first = tokens[0];
  if (first === undefined || !(WAITS_AS_SAID.has(wordOf(first)) || MAY_BEGIN_A_WAIT.has(wordOf(first)) || first.tokenType.name === 'UNKNOWN')) return undefined;
  const men = tokens.map((_, at) => at).filter((at) => at >= Math.max(1, index) && at < tokens.length - 1 && isPlayer(tokens[at]) && (LINKS.has(wordOf(tokens[at + 1])) || verbOf(wordOf(tokens[at + 1])) !== undefined));
  // Behind the comma before others: `once 1 … 4, 2 and 5 cut` is not of 4.
  const [behindAComma, others] = [men.filter((at) => wordOf(tokens[at - 1]) === ','), men.filter((at) => wordOf(tokens[at - 1]) !== ',')];
  for (const from of [...behindAComma, ...others]) {
    if (turns(tokens.slice(0, from))) continue;
    const found = lineParser().follow.walk(tokens.slice(from)).whole ? read(broken, [{ from, to: tokens.length }]) : undefined;
    if (found) return found;
  }
  return undefined;
}

/** The line without the fewest words round the fault that leave it whole: never a man or a deed, nor the only word of where he goes. */
function without(broken: Broken, heads: readonly Walk[]): CarriedOut | undefined {
  const { tokens, index } = broken;
  const { follow } = lineParser();
  if (turns(tokens)) return undefined;
  for (let length = 1; length <= LONGEST_GAP; length++) {
    for (let from = Math.min(index, tokens.length - length); from >= Math.max(2, index - BEFORE_THE_FAULT) && from + length > index; from--) {
      const to = from + length;
      const { configs, asObject } = heads[from]!;
      if ((isPlayer(tokens[to]) && OF_WHOM.has(wordOf(tokens[to - 1]))) || losesItsLittleWord(tokens, from, to) || asObject || !follow.walk(tokens.slice(to), configs).whole || holdsADeed(tokens, from, to) || losesThePlace(tokens, from, to)) continue;
      const found = read(broken, [{ from: 0, to: from }, { from: to, to: tokens.length }].filter((kept) => kept.from < kept.to));
      if (found) return found;
    }
  }
  return undefined;
}

function read({ text, tokens, lexed }: Broken, stretches: readonly Stretch[]): CarriedOut | undefined {
  const { parse, lexer } = lineParser();
  const kept = lexer.tagged(stretches.flatMap(({ from, to }) => tokens.slice(from, to)).map(untagged));
  const { tree, whole } = parse({ tokens: kept, ...(lexed.comment && { comment: lexed.comment }) });
  if (!whole || (tree?.$type !== 'Statement' && tree?.$type !== 'Look')) return undefined;
  return { tree, words: stretches.map(({ from, to }) => text.slice(tokens[from]!.startOffset, endOf(tokens[to - 1]!))).join(' … ') };
}

function turns(tokens: readonly LineToken[]): boolean {
  return tokens.some((token) => TURNS.has(wordOf(token)));
}

/** Whether a man, a deed or a measure is among the words, a pronoun behind them speaks of somebody in them, or they are what a word before them says. */
function holdsADeed(tokens: readonly LineToken[], from: number, to: number): boolean {
  if (speaksOfAnother(tokens, from, to)) return true;
  if (isDeed(tokens[from - 1]) && tokens[from - 1]?.tokenType.name === 'UNKNOWN') return true;
  // `gets a back screen from 4`: without the screen he would be given the ball.
  return tokens.slice(from, to).some((token, at) => isPlayer(token) || verbOf(token.image)?.class === 'screen' || mayBeHisDeed(tokens, from + at) || verbOf(token.image)?.number === 'singular' || /^(SECONDS|LENGTH|NUMBER)$/.test(token.tokenType.name));
}

/** A word that is not known, where his verb stands. */
function mayBeHisDeed(tokens: readonly LineToken[], at: number): boolean {
  return tokens[at]!.tokenType.name === 'UNKNOWN' && (LINKS.has(wordOf(tokens[at - 1])) || isPlayer(tokens[at - 1]));
}

/** `creeps in from the weak-side corner`: without `from` he would go there. */
function losesItsLittleWord(tokens: readonly LineToken[], from: number, to: number): boolean {
  return tokens.slice(from, to).some((token) => /^(from|off|out of|behind|past|near|under)$/.test(wordOf(token))) && (isPlace(tokens[to]) || isPlace(tokens[to + 1]));
}

/** Whether they say where to, and nothing else in the clause does. */
function losesThePlace(tokens: readonly LineToken[], from: number, to: number): boolean {
  if (!tokens.slice(from, to).some((token) => WHERE_TO.has(wordOf(token))) && !WHERE_TO.has(wordOf(tokens[from - 1]))) return false;
  const begin = tokens.findLastIndex((token, at) => at < from && LINKS.has(wordOf(token))) + 1;
  const end = tokens.findIndex((token, at) => at >= to && LINKS.has(wordOf(token)));
  // Where a screen stands follows from its user, whose way this is: `set a stagger for 3 going to the top`.
  if (tokens.slice(begin, from).some((token) => verbOf(token.image)?.class === 'screen') && tokens.slice(begin, from).some(isPlayer) && !/^(at|in|on)$/.test(wordOf(tokens[from]))) return false;
  return ![...tokens.slice(begin, from), ...tokens.slice(to, end < 0 ? tokens.length : end)].some(isPlace);
}

/** Whether a wait stands at `cut`, or the link to another deed: a man more in a list, or a place more, is neither. */
function beginsAnew(tokens: readonly LineToken[], cut: number): boolean {
  const word = wordOf(tokens[cut]);
  if (WAITS_AS_SAID.has(word)) return true;
  if (!LINKS.has(word)) return false;
  let at = cut;
  while (LED_IN_BY.has(wordOf(tokens[at]))) at++;
  return isDeed(tokens[at]) || WAITS_AS_SAID.has(wordOf(tokens[at])) || ((isPlayer(tokens[at]) || isSubject(tokens[at])) && isDeed(tokens[at + 1]));
}

function isDeed(token: LineToken | undefined): boolean {
  return token !== undefined && (verbOf(token.image) !== undefined || token.tokenType.name === 'UNKNOWN');
}
