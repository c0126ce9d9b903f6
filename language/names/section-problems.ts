// Plays that a book's sections name and that there are not.
import type { Block, Book } from '../book/book.ts';
import type { TextPlace } from '../book/places.ts';
import { createLookup } from './lookup.ts';
import { sectionsOf } from './sections.ts';

export interface UnknownPlay {
  readonly name: string;
  /** The names there are in the file and the files it uses. */
  readonly known: readonly string[];
  /** Without the quotes. */
  readonly place: TextPlace;
}

export function unknownPlays(book: Book, uri: string, block: Block): readonly UnknownPlay[] {
  const lookup = createLookup(book, uri);
  return sectionsOf(block).flatMap(({ plays }) => plays.flatMap(({ name, place }) => (lookup.play(name) === undefined ? [{ name, known: lookup.names('play'), place }] : [])));
}
