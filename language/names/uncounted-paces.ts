// The paces of a club's roster that none of its plays runs at: a play counts the roster of its own file, or the nearest that file uses.
import type { Block, Book } from '../book/book.ts';
import { createLookup } from './lookup.ts';
import { sectionsOf } from './sections.ts';

/** Told only where a book of the same file lists plays, each of them is there, and not one counts the roster: nothing else says whose legs are meant. Gives the first man’s line with a pace. */
export function uncountedPaces(book: Book, uri: string, roster: Block): number | undefined {
  const line = roster.lines.findIndex(({ parsed: { tree, fault } }) => tree?.$type === 'Entry' && fault === undefined && tree.pace !== undefined);
  if (line < 0) return undefined;
  const listed = (book.files.get(uri)?.blocks ?? []).filter(({ kind }) => kind === 'book').flatMap(sectionsOf).flatMap(({ plays }) => plays.map(({ name }) => name));
  // Each asked anew, up to the first that counts it: a lookup remembers its questions, and goes through them at the next.
  const isUncounted = (name: string): boolean => {
    const play = createLookup(book, uri).play(name);
    return play !== undefined && play.lookup.roster() !== roster;
  };
  return listed.length > 0 && listed.every(isUncounted) ? line : undefined;
}
