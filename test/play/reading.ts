// Reads the first play of a text, as the tests of this folder need it.
import type { Block, Book } from '../../language/book/book.ts';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createLookup } from '../../language/names/lookup.ts';
import type { Action, Look, Step } from '../../language/play/play.ts';
import type { Reading } from '../../language/play/read-play.ts';
import { readPlay } from '../../language/play/read-play.ts';
import type { StepClock } from '../../language/play/reading.ts';

export const uri = 'file:///club/sets.play';

export const lighthouse = `notation 1
level u14                       # whose legs: u10 u12 u14 u16 hs college pro
rules fiba, also nfhs           # fiba, nba, ncaa-men, ncaa-women, nfhs, mini; a play may replace them

play "Lighthouse"
  tags last-shot
  from stack, ball with 1
  against man
  call with 22 to 26 on the clock       # the period clock when it is called
  shot within 16 seconds of the start   # the set's clock window
  leave 4 seconds after a miss          # for the rebound and put-back
  rebound 2, 4, 5 crash, 1, 3 get back

  step "Zip"
    1 dribbles to left wing
    5 screens down for 3
    3 cuts off 5 to top
    2 clears to right corner

  step "Middle"
    1 passes to 3
    4 ball-screens for 3, then rolls
    3 drives off 4 to right elbow
    look 3 "pull-up": jumper
    look 4 on the roll: layup
    look 2 "corner": three

  step "Slip" instead of "Middle" when X4 shows on 3
    1 passes to 3
    4 slips
    look 4: lob, layup
`;

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
