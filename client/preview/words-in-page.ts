// A translation as an element of a page that the player reads it from. Made where there is no DOM.
import type { Translation } from '../../language/message/message.ts';

export const WORDS_ID = 'setwright-words';

/** Data that nothing runs; a `<` in it ends no element. Empty where the player's own English serves. */
export function wordsInPage(words: Translation | undefined): string {
  return words === undefined ? '' : `<script type="application/json" id="${WORDS_ID}">${JSON.stringify(words).replaceAll('<', '\\u003c')}</script>\n`;
}
