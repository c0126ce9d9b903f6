import { lineParser } from '../reading/line-parser.ts';
import type { LineToken } from '../line-token.ts';

/** Whose player was before a verb that has gone is nobody's subject. */
export function untagged(token: LineToken): LineToken {
  if (token.tokenType.name !== 'SUBJECT') return { ...token };
  const tokenType = lineParser().lexer.definition[token.image.startsWith('x') ? 'XPLAYER' : 'PLAYER']!;
  return { ...token, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx! };
}
