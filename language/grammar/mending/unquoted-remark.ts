// What brings something about, told without quotes and of no defender by his number: `step "Out" instead of "Go" when they double the ball`, `look 5
// if both go with the ball: three`. It is read as it would be in quotes: of a step a remark, of a look what it is called by. Either is only shown,
// so that nothing is lost by reading it, and the step keeps its place among the others.
import { message } from '../../message/message.ts';
import { endOf, endOfWords, startWithArticles, type Broken } from './broken-line.ts';
import { lineParser } from '../reading/line-parser.ts';
import { isPlayer, wordOf, type LineToken } from '../line-token.ts';
import { isBegun, isSlip } from './mend.ts';
import type { LineWarning } from './agreement.ts';
import { standing } from '../rewording/rewording.ts';
import type { LineTree } from '../tree.ts';

/** Whoever begins so speaks of the defence as a whole: what follows is no half a word of the notation. */
const OF_THEM_ALL = /^(they|they're|they've|nobody|everybody|everyone|both|defence|defense|defenders|zone|press|help|we|it|it's|there|there's)$/;

export function unquotedRemark(broken: Broken): { readonly tree: LineTree; readonly warnings: readonly LineWarning[] } | undefined {
  const { text, tokens, lexed, index } = broken;
  const opener = wordOf(tokens[0]);
  if ((opener !== 'step' && opener !== 'look') || lexed.openQuote !== undefined) return undefined;
  const when = tokens.findIndex((token, at) => at > 1 && /^(when|if)$/.test(wordOf(token)));
  const first = tokens[when + 1];
  if (when < 0 || index < when || first === undefined || isStillWritten(broken, when)) return undefined;
  const colon = tokens.findIndex(({ image }) => image === ':');
  if (opener === 'look' && colon >= 0 && colon < when) return undefined;
  const end = opener === 'look' && colon >= 0 ? colon : tokens.length;
  const said = tokens.slice(opener === 'look' ? when : when + 1, end);
  if (said.some(({ tokenType }) => tokenType.name === 'STRING')) return undefined;
  const at = opener === 'look' ? said[0]!.startOffset : startWithArticles(broken, when + 1);
  const to = end < tokens.length ? endOf(said.at(-1)!) : endOfWords(broken);
  const words = text.slice(at, to);
  const { parse, lexer } = lineParser();
  const remark = { ...standing(lexer.definition, 'STRING', said[0]!), image: `"${words}"`, startOffset: at, startColumn: at + 1, endOffset: to - 1, endColumn: to };
  const { tree, whole } = parse({ ...lexed, tokens: [...tokens.slice(0, opener === 'look' ? when : when + 1), remark, ...tokens.slice(end)] });
  return whole && tree !== undefined ? { tree, warnings: [told(words, at, to, opener)] } : undefined;
}

/** A slip of the pen, half a word, or a word short of a whole sentence about a defender. */
function isStillWritten(broken: Broken, when: number): boolean {
  const { tokens, index } = broken;
  const first: LineToken = tokens[when + 1]!;
  if (tokens.length < when + 3) return true;
  if (!OF_THEM_ALL.test(wordOf(first)) && (isBegun(broken) || isSlip(broken))) return true;
  return isPlayer(first) && index >= tokens.length;
}

function told(words: string, at: number, to: number, opener: 'step' | 'look'): LineWarning {
  const fixes = [{ title: message('Put "{words}" in quotes', { words }), edits: [{ at, to, text: `"${words}"` }] }];
  const said = opener === 'step'
    ? message('“{words}” is read as a remark, as if it stood in quotes: it is shown, and no defender does it. If one is to, say which, as in “when X4 shows on 1”.', { words })
    : message('“{words}” is what the look is called by, as if it stood in quotes: whether it is so is seen in the game.', { words });
  return { code: 'read-as-a-remark', at, to, message: said, fixes };
}
