import type { IToken } from 'chevrotain';

/** A token of a line. `image` is the keyword as the grammar spells it; what the coach wrote is `text.slice(startOffset, endOffset + 1)`. */
export type LineToken = IToken & { endOffset: number };

/** The word of the grammar that stands there, in lower case; nothing beyond the line's ends. */
export const wordOf = (token: LineToken | undefined): string => token?.image.toLowerCase() ?? '';

export const isPlayer = (token: LineToken | undefined): boolean => token !== undefined && ['PLAYER', 'XPLAYER', 'SUBJECT'].includes(token.tokenType.name);
export const isDefender = (token: LineToken | undefined): boolean => isPlayer(token) && wordOf(token).startsWith('x');
export const isAttacker = (token: LineToken | undefined): boolean => isPlayer(token) && !wordOf(token).startsWith('x');
