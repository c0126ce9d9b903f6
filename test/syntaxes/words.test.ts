// What a double click marks, and where the list of words opens by itself: the editor finds words with the pattern of the language.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';

/** As VS Code reads it: a pattern without flags of its own gets none. */
function wordsOf(text: string): string[] {
  const { wordPattern } = JSON.parse(readFileSync(join(root, 'syntaxes/language-configuration.json'), 'utf8')) as { readonly wordPattern: string | { readonly pattern: string; readonly flags: string } };
  const { pattern, flags } = typeof wordPattern === 'string' ? { pattern: wordPattern, flags: '' } : wordPattern;
  return text.match(new RegExp(pattern, `g${flags}`)) ?? [];
}

test.each([
  ['st', ['st']],
  ['    5 ball-screens for 1, then rolls', ['5', 'ball-screens', 'for', '1', 'then', 'rolls']],
  ['play "Élan’s côté"', ['play', 'Élan’s', 'côté']],
  ['look 2 "go": bounce-pass', ['look', '2', 'go', 'bounce-pass']],
])('the words of %s', (text, words) => {
  expect(wordsOf(text)).toEqual(words);
});
