// What a coach waits for: a keystroke in a small and in a large book, the checks of one play, `check` on a folder.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { blockAtLine, editFile, emptyBook, openFile, type Book } from '../../language/book/book.ts';
import { checkPlay } from '../../language/checks/check-play.ts';
import { createKeeper } from '../../language/keeper.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Measure } from '../../scripts/bench.ts';
import { build, dist } from '../../scripts/build.ts';

const uri = 'file:///bench.play';
const lighthouse = readFileSync('examples/lighthouse.play', 'utf8');
const header = lighthouse.slice(0, lighthouse.indexOf('play "'));
const play = lighthouse.slice(header.length);

export async function bench(): Promise<readonly Measure[]> {
  const [small, large] = editTimes([300, 20_000]);
  return [
    { name: 'one edit to a new playback, book of 300 lines (p50)', value: median(small!), unit: 'ms', budget: 8 },
    { name: 'one edit to a new playback, book of 20,000 lines (p50)', value: median(large!), unit: 'ms', budget: 10.4 },
    { name: 'the same, 20,000 lines against 300', value: median(large!) / median(small!), unit: 'times', budget: 1.3 },
    { name: 'what is wrong in the whole book after it, 20,000 lines (p50)', value: median(findingTimes(20_000)), unit: 'ms', budget: 1 },
    { name: 'checks of one play (p50)', value: median(checkTimes()), unit: 'ms', budget: 1 },
    { name: 'setwright check, 100 files with 3 plays each, whole process', value: await wholeProcess(100), unit: 'ms', budget: 1200 },
  ];
}

/** A book of so many lines, each play with another name. */
function bookText(lines: number): string {
  const perPlay = play.split('\n').length;
  return header + Array.from({ length: Math.ceil(lines / perPlay) }, (_, at) => play.replace('Lighthouse', `Lighthouse ${at}`)).join('\n');
}

/**
 * A keystroke in a play in the middle of a book of each size: another book, the play compiled again, its playback. The books take turns,
 * so that what else the machine does slows them alike.
 */
function editTimes(sizes: readonly number[]): readonly (readonly number[])[] {
  const typists = sizes.map(typist);
  const times = sizes.map((): number[] => []);
  for (let round = 0; round < 160; round++) {
    for (const [at, { type }] of typists.entries()) {
      const start = performance.now();
      type();
      // The first rounds only warm up.
      if (round >= 40) times[at]!.push(performance.now() - start);
    }
  }
  return times;
}

/** The findings of the book once the edited play is compiled: what all its other plays cost at a keystroke. */
function findingTimes(lines: number): readonly number[] {
  const { type, findings } = typist(lines);
  const times: number[] = [];
  for (let round = 0; round < 120; round++) {
    type();
    const start = performance.now();
    findings();
    if (round >= 20) times.push(performance.now() - start);
  }
  return times;
}

/** Types a way round into a line of the book, over the one before: never a play that was there a moment ago, which would still be known. */
function typist(lines: number): { readonly type: () => void; readonly findings: () => void } {
  const text = bookText(lines);
  const keeper = createKeeper();
  let book: Book = openFile(emptyBook, uri, text);
  keeper.findingsOf(book, uri);
  const rows = text.split('\n');
  const line = rows.findIndex((row, at) => at >= rows.length / 2 && row.includes('2 clears to right corner'));
  const end = rows[line]!.length;
  const words = [' via the top', ' via left wing', ' via right wing', ' via the high post'];
  let typed = '';
  const type = () => {
    const range = { start: { line, character: end }, end: { line, character: end + typed.length } };
    typed = words[(words.indexOf(typed) + 1) % words.length]!;
    book = editFile(book, uri, [{ range, text: typed }]);
    const { block } = blockAtLine(book.files.get(uri)!, line);
    playbackOf(keeper.compile(book, uri, block));
  };
  return { type, findings: () => void keeper.findingsOf(book, uri) };
}

function checkTimes(): readonly number[] {
  const book = openFile(emptyBook, uri, lighthouse);
  const { block, reading, timeline } = createKeeper().playsOf(book, uri)[0]!;
  const lines = block.lines.map(({ parsed }) => parsed);
  const times: number[] = [];
  for (let round = 0; round < 300; round++) {
    const start = performance.now();
    checkPlay({ lines, reading, timeline });
    if (round >= 50) times.push(performance.now() - start);
  }
  return times;
}

async function wholeProcess(files: number): Promise<number> {
  await build();
  const program = join(dist, 'node/setwright.mjs');
  const folder = mkdtempSync(join(tmpdir(), 'setwright-bench-'));
  try {
    for (let at = 0; at < files; at++) {
      const plays = [0, 1, 2].map((number) => play.replace('Lighthouse', `Lighthouse ${at}-${number}`).replace('to left wing', number % 2 === 0 ? 'to left wing' : 'to right wing'));
      writeFileSync(join(folder, `${at}.play`), header + plays.join('\n'));
    }
    // The quickest of five: what else the machine does is not ours.
    const times = [0, 1, 2, 3, 4].map(() => {
      const start = performance.now();
      const { stdout } = spawnSync(process.execPath, [program, 'check', folder], { encoding: 'utf8' });
      const took = performance.now() - start;
      if (!stdout.includes(`${3 * files} plays in ${files} files`)) throw new Error(`setwright check has not read the ${files} files`);
      return took;
    });
    return Math.min(...times);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function median(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
}

if (import.meta.main) {
  for (const { name, value, unit, budget } of await bench()) console.log(`${value.toFixed(2).padStart(9)} ${unit.padEnd(5)} (budget ${budget})  ${name}`);
}
