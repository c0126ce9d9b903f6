// A line that can be read but for words that nothing comes of: its tree, and those words told.
import { message } from '../../message/message.ts';
import { agreementOf, type LineWarning } from './agreement.ts';
import { asidesIn, type Aside } from './asides.ts';
import { applyEdits, breakDown, type Broken } from './broken-line.ts';
import { lineParser } from '../reading/line-parser.ts';
import type { LineToken } from '../line-token.ts';
import { isBegun, isSlip } from './mend.ts';
import { saidOtherwise } from './said-otherwise.ts';
import type { LineTree } from '../tree.ts';
import { untagged } from './untagged.ts';

export function unheard(line: Broken): { readonly tree: LineTree; readonly warnings: readonly LineWarning[] } | undefined {
  const { text, lexed } = line;
  if (lexed.openQuote !== undefined) return undefined;
  const { lexer, follow, parse } = lineParser();
  const asides = asidesIn(lexed.tokens, follow, text);
  if (asides === undefined) return undefined;
  // Where a word has been misspelt, or something is said with other words, that is what the coach wants to know.
  const maySlip = ({ from, to, sort }: Aside): boolean => sort === 'unread' || isMisspeltPlace(lexed.tokens.slice(from, to));
  if (asides.some(maySlip)) {
    const said = asides.filter((aside) => !maySlip(aside)).map(({ from, to }) => ({ at: lexed.tokens[from]!.startOffset, to: lexed.tokens[to - 1]!.endOffset + 1, text: '' }));
    const shown = applyEdits(text, said);
    const broken = said.length === 0 ? line : breakDown(shown, lexer.lex(shown));
    if (isBegun(broken) || isSlip(broken) || saidOtherwise(broken) !== undefined) return undefined;
  }
  const kept = lexed.tokens.filter((_, index) => !asides.some(({ from, to }) => index >= from && index < to)).map(untagged);
  const { tree, whole } = parse({ ...lexed, tokens: lexer.tagged(kept) });
  if (!whole || (tree?.$type !== 'Statement' && tree?.$type !== 'Look')) return undefined;
  return { tree, warnings: [...asides.map((aside) => warningOf(aside, text, lexed.tokens)), ...agreementOf(tree)] };
}

/** `at right bock`: behind a side a word that nobody knows is hardly how something is done. */
function isMisspeltPlace(tokens: readonly LineToken[]): boolean {
  return tokens.some(({ tokenType }, at) => tokenType.name === 'UNKNOWN' && ['left', 'right'].includes(tokens[at - 1]?.image ?? ''));
}

function warningOf({ from, to, sort }: Aside, text: string, tokens: readonly LineToken[]): LineWarning {
  const at = tokens[from]!.startOffset;
  const end = tokens[to - 1]!.endOffset + 1;
  // The words with the blank before them.
  const begin = from > 0 ? tokens[from - 1]!.endOffset + 1 : at;
  const words = text.slice(at, end);
  const fixes = [{ title: message('Leave out "{words}"', { words }), edits: [{ at: begin, to: end, text: '' }] }];
  if (sort === 'said') return { code: 'not-drawn', at, to: end, message: message('“{words}”: nothing of it is drawn, the play is the same without it.', { words }), fixes };
  return { code: 'words-not-read', at, to: end, message: message('“{words}” is not read: the play goes on without it. Where it matters, say it in a line of its own, or as a note.', { words }), fixes };
}
