import type { ParsedLine } from '../grammar/parse-line.ts';

/** The newest notation this version reads; older ones are read as they are. */
export const NOTATION_VERSION = 1;

/** The first `notation` line of a file's header that asks for a newer one. */
export function newerNotation(header: readonly ParsedLine[]): { readonly line: number; readonly version: number } | undefined {
  const line = header.findIndex(({ tree, fault }) => tree?.$type === 'Notation' && fault === undefined);
  const tree = header[line]?.tree;
  return tree?.$type === 'Notation' && tree.version > NOTATION_VERSION ? { line, version: tree.version } : undefined;
}
