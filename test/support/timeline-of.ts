import { emptyBook, openFile } from '../../language/book/book.ts';
import { createLookup } from '../../language/names/lookup.ts';
import type { Play } from '../../language/play/play.ts';
import type { Reading } from '../../language/play/read-play.ts';
import { readPlay } from '../../language/play/read-play.ts';
import { stepOpenings } from '../../language/timeline/openings.ts';
import { schedule } from '../../language/timeline/schedule.ts';
import type { Run, TimedEvent, Timeline } from '../../language/timeline/timeline.ts';

const uri = 'file:///test.play';

/** Reads the (first) play of a text. */
export function readingOf(text: string): Reading {
  const book = openFile(emptyBook, uri, text);
  const block = book.files.get(uri)!.blocks.find(({ kind }) => kind === 'play')!;
  return readPlay(block, createLookup(book, uri), stepOpenings);
}

/** All plays of a text, in text order. */
export function playsOf(text: string): readonly Play[] {
  const book = openFile(emptyBook, uri, text);
  const blocks = book.files.get(uri)!.blocks.filter(({ kind }) => kind === 'play');
  return blocks.map((block) => readPlay(block, createLookup(book, uri), stepOpenings).play);
}

/** Text to timeline. */
export function timelineOf(text: string): Timeline {
  return schedule(readingOf(text).play);
}

/** A play with the usual head: u14, FIBA, 1 with the ball; `lines` from the `from` line on. */
export function playText(...lines: readonly string[]): string {
  return ['notation 1', 'level u14', 'rules fiba', '', 'play "Test"', ...lines.map((line) => `  ${line}`)].join('\n');
}

export function runNamed(timeline: Timeline, id: string): Run {
  const run = timeline.runs.find((entry) => entry.id === id);
  if (run === undefined) throw new Error(`no run ${id} among ${timeline.runs.map((entry) => entry.id).join(', ')}`);
  return run;
}

export function eventNamed(run: Run, id: string): TimedEvent {
  const event = run.events.find((entry) => entry.id === id);
  if (event === undefined) throw new Error(`no event ${id} among ${run.events.map((entry) => entry.id).join(', ')}`);
  return event;
}

export function codesOf(timeline: Timeline): readonly string[] {
  return timeline.problems.map(({ code }) => code);
}

export { lighthouse } from './lighthouse.ts';
