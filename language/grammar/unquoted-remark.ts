// `step "Out" instead of "Go" when they double the ball`: a condition that tells of no defender by his number is a remark, as it would be in quotes.
// It is shown and nobody acts it out, so that nothing is lost by reading it; the step keeps its place among the others.
import { message } from '../message/message.ts';
import { endOf, endOfWords, startWithArticles, type Broken } from './broken-line.ts';
import { lineParser } from './line-parser.ts';
import { isPlayer, wordOf } from './line-token.ts';
import { isSlip } from './mend.ts';
import { isBegun } from './messages.ts';
import type { LineWarning } from './agreement.ts';
import { standing } from './rewording.ts';
import type { LineTree } from './tree.ts';

/** Whoever begins so speaks of the defence as a whole: what follows is no half a word of the notation. */
const OF_THEM_ALL = /^(they|they're|they've|nobody|everybody|everyone|defence|defense|zone|press|help|we|it|it's|there|there's)$/;

export function unquotedRemark(broken: Broken): { readonly tree: LineTree; readonly warnings: readonly LineWarning[] } | undefined {
  const { text, tokens, lexed, index } = broken;
  if (wordOf(tokens[0]) !== 'step' || lexed.openQuote !== undefined) return undefined;
  const when = tokens.findIndex((token, at) => at > 1 && /^(when|if)$/.test(wordOf(token)));
  const first = tokens[when + 1];
  if (when < 0 || index <= when || first === undefined || tokens.slice(when).some(({ tokenType }) => tokenType.name === 'STRING')) return undefined;
  if (tokens.length < when + 3 || (!OF_THEM_ALL.test(wordOf(first)) && (isBegun(broken) || isSlip(broken)))) return undefined;
  // A word short of a whole sentence about a defender: he is still writing it.
  if (isPlayer(first) && index >= tokens.length) return undefined;
  const { parse, lexer } = lineParser();
  const at = startWithArticles(broken, when + 1);
  const to = endOfWords(broken);
  const words = text.slice(at, to);
  const remark = { ...standing(lexer.definition, 'STRING', first, tokens.at(-1)!), image: `"${words}"`, startOffset: at, startColumn: at + 1, endOffset: to - 1, endColumn: to };
  const { tree, whole } = parse({ ...lexed, tokens: [...tokens.slice(0, when + 1), remark] });
  if (!whole || tree === undefined) return undefined;
  const fixes = [{ title: message('Put "{words}" in quotes', { words }), edits: [{ at, to, text: `"${words}"` }] }];
  return { tree, warnings: [{ code: 'read-as-a-remark', at, to: endOf(remark), message: message('“{words}” is read as a remark, as if it stood in quotes: it is shown, and no defender does it. If one is to, say which, as in “when X4 shows on 1”.', { words }), fixes }] };
}
