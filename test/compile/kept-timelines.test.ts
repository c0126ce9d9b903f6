// While a line is typed its play is settled once: what is kept of that changes nothing of what is told or shown.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { editFile, emptyBook, openFile, textOf, type Book } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper } from '../../language/keeper.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { keepTimelines, timelinesOf } from '../../language/timeline/timelines.ts';

const uri = 'file:///book.play';
const lighthouse = readFileSync('examples/lighthouse.play', 'utf8');
const lineOf = (words: string) => lighthouse.split('\n').findIndex((line) => line.includes(words));

/** The text after each letter of `letters` typed at the end of a line, and after each is taken back. */
function* typed(line: number, letters: string): Generator<Book> {
  let book = openFile(emptyBook, uri, lighthouse);
  yield book;
  const start = lighthouse.split('\n')[line]!.length;
  const put = (character: number, length: number, text: string) => (book = editFile(book, uri, [{ range: { start: { line, character }, end: { line, character: character + length } }, text }]));
  const lastBreak = letters.lastIndexOf('\n');
  if (lastBreak >= 0) throw new Error('one line only');
  for (const [at, letter] of [...letters].entries()) yield put(start + at, 0, letter);
  for (let at = letters.length - 1; at >= 0; at--) yield put(start + at, 1, '');
}

const shown = (compiled: Compiled) => JSON.stringify(playbackOf(compiled));

test.each([
  ['a way that goes on', lineOf('1 dribbles to left wing'), ' via the top'],
  ['a second deed', lineOf('2 clears to right corner'), ', then 4 cuts to rim'],
  ['another look', lineOf('look 2 "corner"'), ' # 2, 4 and 5'],
  ['a step that loses its name and gets it back', lineOf('step "Zip"'), 'x" after "'],
  ['the clock', lineOf('leave 4 seconds'), '0'],
  ['a further rule set', lineOf('rules fiba'), ', also nba'],
])('after every letter of %s the findings and the picture are those of a cold read', (_, line, letters) => {
  const keeper = createKeeper();
  for (const book of typed(line, letters)) {
    const cold = openFile(emptyBook, uri, textOf(book.files.get(uri)!));
    const fresh = createKeeper();
    expect(keeper.findingsOf(book, uri)).toEqual(fresh.findingsOf(cold, uri));
    expect(keeper.playsOf(book, uri).map(shown)).toEqual(fresh.playsOf(cold, uri).map(shown));
  }
});

describe('a play is settled again', () => {
  const open = openFile(emptyBook, uri, lighthouse);
  const play = createKeeper().playsOf(open, uri)[0]!.play;

  test('not while a line of it cannot be read, nor once the letter is taken back', () => {
    const keeper = createKeeper();
    const line = lineOf('3 cuts off 5');
    const at = (character: number, length: number, text: string, book: Book) => editFile(book, uri, [{ range: { start: { line, character }, end: { line, character: character + length } }, text }]);
    const timelineOf = (book: Book) => keeper.playsOf(book, uri)[0]!.timeline;
    const whole = timelineOf(open);
    const broken = at(4, 0, 'q', open);
    const brokenFurther = at(4, 1, 'qua', broken);
    const mended = at(4, 3, '', brokenFurther);
    expect(timelineOf(broken)).not.toBe(whole);
    expect(timelineOf(brokenFurther)).toBe(timelineOf(broken));
    expect(timelineOf(mended)).toBe(whole);
  });

  test.each([
    ['its level', { level: { ...play.level, value: 'u10' as const } }],
    ['its rules', { rules: { ...play.rules, value: 'nba' as const } }],
    ['the further rules', { alsoRules: [] }],
    ['one step fewer', { steps: play.steps.slice(0, -1) }],
    ['its steps in another order', { steps: play.steps.toReversed() }],
    ['a spot of its own', { spots: { dock: { x: 1, y: 2 } } }],
    ['how quick a man is', { paces: { ...play.paces, 3: 0.5 } as never }],
  ])('with %s', (_, change) => {
    const timelines = keepTimelines();
    const before = timelines(play);
    expect(timelines(structuredClone(play))).toBe(before);
    const other = { ...play, ...change };
    expect(timelines(other)).not.toBe(before);
    expect(timelines(other)).toEqual(timelinesOf(other));
    expect(timelines(play)).toBe(before);
  });
});
