// What the five are called: the names that the roster of the file, or of a file it uses, gives the numbers 1 to 5.
import type { Block, Book } from '../book/book.ts';
import { rosterOfBook } from '../names/roster-of-book.ts';
import type { Play, PlayerNumber } from './play.ts';

export function readNames(roster: Block | undefined): Play['names'] {
  const names: Partial<Record<PlayerNumber, string>> = {};
  for (const { parsed } of roster?.lines ?? []) {
    const { tree } = parsed;
    if (tree?.$type !== 'Entry' || parsed.fault !== undefined || tree.number < 1 || tree.number > 5) continue;
    names[tree.number as PlayerNumber] ??= tree.name;
  }
  return names;
}

/** A play as it is handed out: where it has no roster of its own, with the names of the book that lists it. Paces are not taken over: its times stay the same. */
export function namedByBook<Read extends { readonly block: Block; readonly play: Play }>(read: Read, book: Book, uri: string): Read {
  const roster = rosterOfBook(book, uri, read.block);
  return roster === undefined ? read : { ...read, play: { ...read.play, names: readNames(roster) } };
}
