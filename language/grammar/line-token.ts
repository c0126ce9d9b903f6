import type { IToken } from 'chevrotain';

/** A token of a line. `image` is the keyword as the grammar spells it; what the coach wrote is `text.slice(startOffset, endOffset + 1)`. */
export type LineToken = IToken & { endOffset: number };
