// Reads the first play of a text, as the tests of this folder need it.
import type { Block, Book } from '../../language/book/book.ts';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createLookup } from '../../language/names/lookup.ts';
import type { Action, Look, Step } from '../../language/play/play.ts';
import type { Reading } from '../../language/play/read-play.ts';
import { readPlay } from '../../language/play/read-play.ts';
import type { StepClock } from '../../language/play/reading.ts';

export const uri = 'file:///club/sets.play';

export { lighthouse } from '../support/lighthouse.ts';

export function bookOf(text: string): Book {
  return openFile(emptyBook, uri, text);
}

export function playBlock(book: Book, name?: string): Block {
  const blocks = book.files.get(uri)!.blocks.filter(block => block.kind === 'play');
  return name === undefined ? blocks[0]! : blocks.find(block => block.name === name)!;
}

export function read(text: string, name?: string): Reading {
  const book = bookOf(text);
  return readPlay(playBlock(book, name), createLookup(book, uri));
}

/** The first play of a text, with a clock that tells when steps open. */
export function readPlayWith(text: string, clock: StepClock): Reading {
  const book = bookOf(text);
  return readPlay(playBlock(book), createLookup(book, uri), clock);
}

/** A play with these lines under its opener. */
export function readLines(...lines: string[]): Reading {
  return read(['play "Test"', ...lines].join('\n'));
}

/** The actions of the first step these lines make. */
export function actionsOf(...lines: string[]): readonly Action[] {
  return readLines(...lines).play.steps[0]?.actions ?? [];
}

export function stepOf(reading: Reading, key: string): Step {
  return reading.play.steps.find(step => step.key === key)!;
}

export function lookOf(reading: Reading, id: string): Look {
  return reading.play.steps.flatMap(step => step.looks).find(look => look.id === id)!;
}

export function codes(reading: Reading): string[] {
  return reading.problems.map(problem => problem.code);
}

/** The words a part stands on. */
export function wordsAt(text: string, reading: Reading, part: string): string | undefined {
  const place = reading.places.get(part);
  const block = playBlock(bookOf(text), reading.play.name);
  return place === undefined ? undefined : block.lines[place.line]!.parsed.text.slice(place.at, place.to);
}

/** An action in short: what most tests look at. */
export function short(action: Action): Record<string, unknown> {
  const { id: _id, step: _step, line: _line, link: _link, waits, origin, ...rest } = action;
  return { ...rest, ...(waits.length > 0 ? { waits } : {}), ...(origin === 'written' ? {} : { origin }) };
}
