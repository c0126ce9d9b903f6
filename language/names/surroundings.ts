import type { Block, Book, BookFile } from '../book/book.ts';
import { filesInReach } from './lookup.ts';

/** Stands for what surrounds the plays of a file: the same one for as long as nothing but lines of plays has changed there, in the file or in those it uses. */
export interface Surroundings {
  readonly uri: string;
}

/** Every play of a file asks at every keystroke: what stands there is gone through once a book, and compared with what stood there before. */
export function keepSurroundings(): (book: Book, uri: string) => Surroundings {
  const newest = new Map<string, { readonly files: readonly BookFile[]; readonly surroundings: Surroundings }>();
  const inThisBook = new Map<string, Surroundings>();
  let book: Book | undefined;
  return (asked, uri) => {
    if (asked !== book) {
      book = asked;
      inThisBook.clear();
      keepOnly(newest, asked);
    }
    const known = inThisBook.get(uri);
    if (known !== undefined) return known;
    const files = filesInReach(asked, uri);
    const before = newest.get(uri);
    const surroundings = before !== undefined && sameFiles(before.files, files) ? before.surroundings : { uri };
    newest.set(uri, { files, surroundings });
    inThisBook.set(uri, surroundings);
    return surroundings;
  };
}

/** Forgets the files that the book no longer holds. */
export function keepOnly(byUri: Map<string, unknown>, { files }: Book): void {
  if (byUri.size <= files.size) return;
  for (const uri of byUri.keys()) if (!files.has(uri)) byUri.delete(uri);
}

function sameFiles(before: readonly BookFile[], now: readonly BookFile[]): boolean {
  return before.length === now.length && before.every((file, at) => file === now[at] || sameBlocks(file, now[at]!));
}

function sameBlocks(before: BookFile, now: BookFile): boolean {
  return before.uri === now.uri && before.blocks.length === now.blocks.length && before.blocks.every((block, at) => block === now.blocks[at] || samePlay(block, now.blocks[at]!));
}

/** Two plays of the same name: what their lines say is asked for by name. */
function samePlay(before: Block, now: Block): boolean {
  return before.kind === 'play' && now.kind === 'play' && before.name === now.name;
}
