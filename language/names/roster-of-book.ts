// The roster that a book brings to its plays: they need not use its file to be printed with its names.
import type { Block, Book } from '../book/book.ts';
import { createLookup } from './lookup.ts';
import { nameKey } from './name-key.ts';
import { sectionsOf } from './sections.ts';

/**
 * The roster of the book that lists a play, where neither the play's file nor those it uses have one of their own. Of several books that name
 * the players otherwise it is none: nobody knows which team is meant.
 */
export function rosterOfBook(book: Book, uri: string, play: Block): Block | undefined {
  if (play.name === undefined || createLookup(book, uri).roster() !== undefined) return undefined;
  const key = nameKey(play.name);
  const rosters = new Set<Block>();
  for (const file of book.files.values()) {
    if (!file.blocks.some((block) => block.kind === 'book' && namesIn(block).has(key))) continue;
    const lookup = createLookup(book, file.uri);
    const roster = lookup.play(play.name)?.block === play ? lookup.roster() : undefined;
    if (roster !== undefined) rosters.add(roster);
  }
  return rosters.size === 1 ? [...rosters][0] : undefined;
}

const namesByBook = new WeakMap<Block, ReadonlySet<string>>();

/** The plays that a book lists; asked for at every keystroke in one of them. */
function namesIn(block: Block): ReadonlySet<string> {
  const names = namesByBook.get(block) ?? new Set(sectionsOf(block).flatMap(({ plays }) => plays.map(({ name }) => nameKey(name))));
  namesByBook.set(block, names);
  return names;
}
