import type { Book } from '../book/book.ts';
import type { Problem } from './problem.ts';
import { usedUris } from './lookup.ts';

/** `use` lines of a file that name no file of the book, or one that comes back to this file. The part is `use:<line>` of the header block. */
export function useProblems(book: Book, uri: string): readonly Problem[] {
  const file = book.files.get(uri);
  if (file === undefined) return [];
  return usedUris(file).flatMap(use => {
    const part = `use:${use.line}`;
    if (!book.files.has(use.uri)) return [{ code: 'unknown-file', part, params: { name: use.name } }];
    return comesBack(book, use.uri, uri) ? [{ code: 'use-circle', part, params: { name: use.name } }] : [];
  });
}

function comesBack(book: Book, from: string, home: string): boolean {
  const reached = new Set([from]);
  for (const each of reached) {
    if (each === home) return true;
    const file = book.files.get(each);
    if (file !== undefined) for (const use of usedUris(file)) reached.add(use.uri);
  }
  return false;
}
