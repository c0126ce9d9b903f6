// What an edit of the book and a reading of a play cost: flat in the size of the file.
import { readFileSync } from 'node:fs';
import { editFile, emptyBook, openFile, type Book } from '../../language/book/book.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { readPlay } from '../../language/play/read-play.ts';
import { stateBefore } from '../../language/play/state.ts';
import type { Measure } from '../../scripts/bench.ts';

const uri = 'file:///bench.play';
const lighthouse = readFileSync('examples/lighthouse.play', 'utf8');
const play = lighthouse.slice(lighthouse.indexOf('play "'));
const perPlay = play.split('\n').length;

export async function bench(): Promise<readonly Measure[]> {
  const small = bookOf(300);
  const large = bookOf(20_000);
  const action = paired(small, large, at => `    2 cuts to right wing # ${at}`, 1);
  const opener = paired(small, large, at => `play "Name ${at}"`, 0);
  const book = bookOf(1);
  const block = book.files.get(uri)!.blocks[1]!;
  const reading = readPlay(block, createLookup(book, uri));
  return [
    { name: 'one edit of an action line, file of 300 lines (p50)', value: action.small, unit: 'µs', budget: 300 },
    { name: 'one edit of an action line, file of 20,000 lines (p50)', value: action.large, unit: 'µs', budget: 390 },
    { name: 'the same, 20,000 lines against 300', value: action.large / action.small, unit: 'times', budget: 1.3 },
    { name: 'one edit of a play\'s name, file of 20,000 lines (p50)', value: opener.large, unit: 'µs', budget: 500 },
    { name: 'a file of 20,000 lines read from nothing, its lines new', value: coldRead(), unit: 'ms', budget: 4000 },
    { name: 'Lighthouse read from its lines (p50)', value: 1000 * median(times(400, () => readPlay(block, createLookup(book, uri)))), unit: 'µs', budget: 1000 },
    { name: 'the state before its last line (p50)', value: 1000 * median(times(400, () => stateBefore(reading, reading.lines.length - 2))), unit: 'µs', budget: 500 },
  ];
}

function bookOf(lines: number): Book {
  return openFile(emptyBook, uri, `level u14\n${Array.from({ length: Math.ceil(lines / perPlay) }, (_, at) => play.replace('Lighthouse', `Lighthouse ${at}`)).join('\n')}`);
}

/** Every edit writes a line never seen before, in the middle of the file; small and large by turns, so that both meet the same machine. */
function paired(small: Book, large: Book, words: (at: number) => string, offset: number): { readonly small: number; readonly large: number } {
  const taken = { small: [] as number[], large: [] as number[] };
  const books = { small, large };
  for (let at = 0; at < 600; at++) {
    for (const size of ['small', 'large'] as const) {
      const book = books[size];
      const plays = book.files.get(uri)!.blocks.length - 1;
      const line = 1 + Math.floor(plays / 2) * perPlay + offset * 10;
      const edit = { range: { start: { line, character: 0 }, end: { line, character: 200 } }, text: words(at * 2 + (size === 'small' ? 0 : 1)) };
      const before = performance.now();
      books[size] = editFile(book, uri, [edit]);
      if (at >= 100) taken[size].push(1000 * (performance.now() - before));
    }
  }
  return { small: median(taken.small), large: median(taken.large) };
}

function coldRead(): number {
  let count = 0;
  const text = Array.from({ length: Math.ceil(20_000 / perPlay) }, () => play.replace(/$/gm, () => ` # ${count++}`)).join('\n');
  const before = performance.now();
  openFile(emptyBook, uri, text);
  return performance.now() - before;
}

function times(count: number, run: () => unknown): number[] {
  return Array.from({ length: count }, () => {
    const before = performance.now();
    run();
    return performance.now() - before;
  }).slice(count / 4);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}
