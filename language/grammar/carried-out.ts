// What can be read of a line that cannot be read as a whole: its deeds up to the link or the wait in which the fault lies, or the sentence
// behind a wait that cannot be read. The play goes on with it, so that the lines below still mean what they say; the fault stays an error.
// Nothing is carried out of a line whose unread part may turn it round, or makes it depend on something.
import type { Broken } from './broken-line.ts';
import { endOf } from './broken-line.ts';
import { lineParser } from './line-parser.ts';
import { isPlayer, wordOf, type LineToken } from './line-token.ts';
import type { Columns, StatementTree } from './tree.ts';
import { verbOf } from './verbs.ts';

export interface CarriedOut extends Columns {
  readonly tree: StatementTree;
}

const WAITS: ReadonlySet<string> = new Set(['as', 'while', 'whilst', 'once', 'as soon as', 'after', 'when', 'whenever', 'until', 'till', 'before']);
const LINKS: ReadonlySet<string> = new Set([',', 'and', 'then']);
/** Behind one of these a subject or a verb begins a new deed. */
const LED_IN_BY: ReadonlySet<string> = new Set([',', 'and', 'then', 'also', 'just', 'next']);
const PRONOUNS: ReadonlySet<string> = new Set(['he', 'they', 'everyone', 'everybody', 'both', 'others', 'rest']);
/** They turn round what stands before them, or make it a condition. */
const TURNS: ReadonlySet<string> = new Set("if unless not never without except instead only don't doesn't doesnt dont can't cant isn't isnt won't neither nor but maybe sometimes whether or either".split(' '));
/** So a wait may begin that is not understood; a word that is not known may be one as well. */
const MAY_BEGIN_A_WAIT: ReadonlySet<string> = new Set(['on', 'at', 'with', 'by', 'right', 'just', 'the']);

export function carriedOut(broken: Broken): CarriedOut | undefined {
  const { tokens, index, lexed } = broken;
  if (lexed.openQuote !== undefined || tokens.some(({ tokenType }) => tokenType.name === 'STRING')) return undefined;
  return isPlayer(tokens[0]) || WAITS.has(wordOf(tokens[0])) ? (upTo(broken, index) ?? behind(broken)) : behind(broken);
}

/** The longest beginning that is whole and ends where a link or a wait begins. */
function upTo({ tokens, lexed }: Broken, index: number): CarriedOut | undefined {
  for (let cut = Math.min(index, tokens.length - 1); cut > 1; cut--) {
    if (!beginsAnew(tokens, cut) || turns(tokens.slice(cut))) continue;
    const found = whole(tokens.slice(0, cut), lexed.comment);
    if (found) return found;
  }
  return undefined;
}

/** The sentence behind a wait that cannot be read. */
function behind({ tokens, index, lexed }: Broken): CarriedOut | undefined {
  const first = tokens[0];
  if (first === undefined || !(WAITS.has(wordOf(first)) || MAY_BEGIN_A_WAIT.has(wordOf(first)) || first.tokenType.name === 'UNKNOWN')) return undefined;
  for (let from = Math.max(1, index); from < tokens.length - 1; from++) {
    if (!isPlayer(tokens[from])) continue;
    if (turns(tokens.slice(0, from))) return undefined;
    const found = whole(tokens.slice(from), lexed.comment);
    if (found) return found;
  }
  return undefined;
}

function whole(tokens: readonly LineToken[], comment: Columns | undefined): CarriedOut | undefined {
  const { follow, parse } = lineParser();
  if (!follow.walk(tokens).whole) return undefined;
  const read = parse({ tokens: [...tokens], ...(comment && { comment }) });
  return read.whole && read.tree?.$type === 'Statement' ? { tree: read.tree, at: tokens[0]!.startOffset, to: endOf(tokens.at(-1)!) } : undefined;
}

function turns(tokens: readonly LineToken[]): boolean {
  return tokens.some((token) => TURNS.has(wordOf(token)));
}

/** Whether a wait stands at `cut`, or the link to another deed: a man more in a list, or a place more, is neither. */
function beginsAnew(tokens: readonly LineToken[], cut: number): boolean {
  const word = wordOf(tokens[cut]);
  if (WAITS.has(word)) return true;
  if (!LINKS.has(word)) return false;
  let at = cut;
  while (LED_IN_BY.has(wordOf(tokens[at]))) at++;
  const isDeed = (token: LineToken | undefined): boolean => token !== undefined && (verbOf(token.image) !== undefined || token.tokenType.name === 'UNKNOWN');
  return isDeed(tokens[at]) || WAITS.has(wordOf(tokens[at])) || ((isPlayer(tokens[at]) || PRONOUNS.has(wordOf(tokens[at]))) && isDeed(tokens[at + 1]));
}
