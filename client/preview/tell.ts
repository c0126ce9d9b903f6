// The player's own words in the reader's language: whoever makes the page puts the translation into it, beside the script.
import * as v from 'valibot';
import { sayWith, type Translation, type Words } from '../../language/message/message.ts';
import { WORDS_ID } from './words-in-page.ts';

/** Without them the player speaks English. */
function wordsOfPage(): Translation | undefined {
  const text = typeof document === 'undefined' ? null : document.getElementById(WORDS_ID)?.textContent;
  if (text === undefined || text === null) return undefined;
  try {
    const read = v.safeParse(v.record(v.string(), v.string()), JSON.parse(text));
    return read.success ? read.output : undefined;
  } catch {
    return undefined;
  }
}

const say = sayWith(wordsOfPage());

export const tell = (words: Words): string => say(words);
