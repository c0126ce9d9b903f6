// The playbook as it is listed: books with their sections, then the plays that are in no book, file by file.
import type { Playbook, PlayEntry } from '../../server/lsp/playbook-protocol.ts';
import { fits, isFiltering, type Filter } from './filter.ts';

/** Where a play stands in a section's line. */
export interface InSection {
  readonly uri: string;
  /** Which book of the workspace. */
  readonly book: number;
  readonly line: number;
  readonly index: number;
  /** How many the line has. */
  readonly of: number;
}

export type Shelf =
  | { readonly kind: 'book'; readonly id: string; readonly name: string; readonly uri: string; readonly line: number; readonly inside: readonly Shelf[] }
  | { readonly kind: 'section'; readonly id: string; readonly name: string; readonly uri: string; readonly line: number; readonly book: number; readonly inside: readonly Shelf[]; readonly of: number }
  | { readonly kind: 'file'; readonly id: string; readonly uri: string; readonly inside: readonly Shelf[] }
  | { readonly kind: 'play'; readonly id: string; readonly play: PlayEntry; readonly at?: InSection }
  /** A name in a section that no play has. */
  | { readonly kind: 'missing'; readonly id: string; readonly name: string; readonly at: InSection };

/** Ids stay the same while lines are added elsewhere. A shelf that the filter leaves empty is not listed. */
export function shelvesOf({ plays, books }: Playbook, filter: Filter): readonly Shelf[] {
  const filtering = isFiltering(filter);
  const kept = <One extends { readonly inside: readonly Shelf[] }>(shelves: readonly One[]): One[] => shelves.filter(({ inside }) => !filtering || inside.length > 0);
  const inBooks = new Set<number>();
  const listed = books.map((book, ordinal): Extract<Shelf, { kind: 'book' }> => {
    const sections = book.sections.map((section, place): Extract<Shelf, { kind: 'section' }> => {
      const id = `book ${ordinal}/${place}`;
      const inside = section.plays.flatMap((named, index): Shelf[] => {
        const at = { uri: book.uri, book: ordinal, line: section.line, index, of: section.plays.length };
        const play = named.play === null ? undefined : plays[named.play];
        if (play === undefined) return filtering ? [] : [{ kind: 'missing', id: `${id}/${index}`, name: named.name, at }];
        inBooks.add(named.play!);
        return fits(play, filter) ? [{ kind: 'play', id: `${id}/${index}`, play, at }] : [];
      });
      return { kind: 'section', id, name: section.name, uri: book.uri, line: section.line, book: ordinal, inside, of: section.plays.length };
    });
    return { kind: 'book', id: `book ${ordinal}`, name: book.name, uri: book.uri, line: book.line, inside: kept(sections) };
  });
  const rest = plays.filter((play, index) => !inBooks.has(index) && fits(play, filter));
  const files = [...new Set(rest.map(({ uri }) => uri))].map((uri): Shelf => ({
    kind: 'file', id: `file ${uri}`, uri,
    inside: rest.filter((play) => play.uri === uri).map((play): Shelf => ({ kind: 'play', id: `${uri} ${play.key}`, play })),
  }));
  return [...kept(listed), ...files];
}

export interface Listed {
  readonly play: PlayEntry;
  /** Of the book that has it. */
  readonly section?: string;
}

/** The plays of these shelves as they are listed, each once. */
export function playsOn(shelves: readonly Shelf[]): readonly Listed[] {
  const listed = new Map<string, Listed>();
  const list = (shelf: Shelf, section?: string): void => {
    if ('inside' in shelf) for (const one of shelf.inside) list(one, shelf.kind === 'section' ? shelf.name : undefined);
    if (shelf.kind !== 'play') return;
    const key = `${shelf.play.uri} ${shelf.play.key}`;
    if (!listed.has(key)) listed.set(key, { play: shelf.play, ...(section !== undefined && { section }) });
  };
  for (const shelf of shelves) list(shelf);
  return [...listed.values()];
}
