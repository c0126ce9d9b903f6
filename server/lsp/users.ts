import type { Book } from '../../language/book/book.ts';
import { usedUris } from '../../language/names/lookup.ts';

/** Whether a file uses another, itself or through those it uses; the other need not be there. */
export function reaches(book: Book, from: string, wanted: string): boolean {
  const reached = new Set([from]);
  for (const uri of reached) {
    const file = book.files.get(uri);
    for (const use of file === undefined ? [] : usedUris(file)) {
      if (use.uri === wanted) return true;
      reached.add(use.uri);
    }
  }
  return false;
}
