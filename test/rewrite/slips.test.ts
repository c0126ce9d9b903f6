// What fingers do to a line, done to the lines of the example playbook: is each read as meant all the same, or mended by the first mend?
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { blockAtLine, editFile, openFile, emptyBook, type Book } from '../../language/book/book.ts';
import { compilePlay } from '../../language/compile.ts';
import type { Fix } from '../../language/checks/finding.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { readPlay } from '../../language/play/read-play.ts';
import { root } from '../../scripts/build.ts';

const files = readdirSync(join(root, 'examples')).filter((name) => name.endsWith('.play')).sort();
const textOf = (name: string): string => readFileSync(join(root, 'examples', name), 'utf8');
const uriOf = (name: string): string => `file:///club/${name}`;
const club = files.reduce((book, name) => openFile(book, uriOf(name), textOf(name)), emptyBook);

/** Of the places where a slip can be made the `nth`, so that not always the first word of a line is hit. */
function at(line: string, where: RegExp, nth: number, slip: (words: string) => string): string | undefined {
  const quoted = [...line.matchAll(/"[^"]*"/g)].map(({ index, 0: words }) => [index, index + words.length] as const);
  const found = [...line.matchAll(where)].filter(({ index }) => !quoted.some(([from, to]) => from <= index && index < to));
  const { index, 0: words } = found[nth % Math.max(1, found.length)] ?? {};
  return index === undefined ? undefined : line.slice(0, index) + slip(words!) + line.slice(index + words!.length);
}

const word = /\b[a-z]{4,}\b/g;
const player = /(?<![\w-])[1-5](?![\w-])/g;

const slips: readonly (readonly [name: string, slip: (line: string, nth: number) => string | undefined, least: number])[] = [
  ['a letter left out', (line, nth) => at(line, word, nth, (words) => words.slice(0, 2) + words.slice(3)), 0.93],
  ['a letter twice', (line, nth) => at(line, word, nth, (words) => words.slice(0, 2) + words.slice(1)), 0.93],
  ['two letters turned', (line, nth) => at(line, word, nth, (words) => words[0]! + words[2] + words[1] + words.slice(3)), 0.93],
  ['a word twice', (line, nth) => at(line, /\b[a-z-]+\b/g, nth, (words) => `${words} ${words}`), 0.93],
  ['a comma left out', (line, nth) => at(line, /,/g, nth, () => ''), 0.93],
  ['and for a comma', (line, nth) => at(line, /, /g, nth, () => ' and '), 0.9],
  ['a place’s side behind it', (line, nth) => at(line, /\b(?:left|right) (?:wing|corner|elbow|block|slot)\b/g, nth, (words) => words.split(' ').reverse().join(' ')), 0.93],
  ['a number with its sign', (line, nth) => at(line, player, nth, (words) => `#${words}`), 0.93],
  ['a number as a word', (line, nth) => at(line, player, nth, (words) => ['one', 'two', 'three', 'four', 'five'][Number(words) - 1]!), 0.9],
  ['of for off', (line, nth) => at(line, /(?<= )off(?= )/g, nth, () => 'of'), 0.85],
  ['no to before a man', (line, nth) => at(line, / to(?= [1-5])/g, nth, () => ''), 0.93],
  ['a full stop', (line) => `${line}.`, 1],
];

/** What the line's play means, without the words it is said with. */
function meaningAt(book: Book, uri: string, line: number): string {
  const { block } = blockAtLine(book.files.get(uri)!, line);
  return JSON.stringify(readPlay(block, createLookup(book, uri)).play, (key, value: unknown) => (key === 'origin' || key === 'verb' ? undefined : value));
}

function firstMend(book: Book, uri: string, line: number): Book | undefined {
  const { block, firstLine } = blockAtLine(book.files.get(uri)!, line);
  const fixes = compilePlay(block, createLookup(book, uri)).findings.filter(({ place }) => place.line === line - firstLine).flatMap((finding): readonly Fix[] => finding.fixes);
  return fixes[0] && editFile(book, uri, fixes[0].edits.map((edit) => ({ range: { start: { line: firstLine + edit.line, character: edit.at }, end: { line: firstLine + edit.line, character: edit.to } }, text: edit.text })).toReversed());
}

test.each(slips)('%s', (_, slip, least) => {
  let [tried, meant] = [0, 0];
  const missed: string[] = [];
  for (const name of files) {
    const uri = uriOf(name);
    for (const [line, text] of textOf(name).split('\n').entries()) {
      const slipped = /^\s+(?:[1-5] |look|from|rebound|as |once )/.test(text) && blockAtLine(club.files.get(uri)!, line).block.kind === 'play' ? slip(text, line) : undefined;
      // Every third line is enough to tell.
      if (slipped === undefined || slipped === text || line % 3 !== 0) continue;
      tried++;
      const before = meaningAt(club, uri, line);
      const now = editFile(club, uri, [{ range: { start: { line, character: 0 }, end: { line, character: text.length } }, text: slipped }]);
      const after = meaningAt(now, uri, line) === before ? now : firstMend(now, uri, line);
      if (after !== undefined && meaningAt(after, uri, line) === before) meant++;
      else missed.push(slipped.trim());
    }
  }
  expect(tried).toBeGreaterThan(5);
  expect(meant / tried, missed.join('\n')).toBeGreaterThanOrEqual(least);
});
