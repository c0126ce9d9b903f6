// The sections of a book and the plays they name.
import type { Block } from '../book/book.ts';
import { definitionsOf, usesOf } from './definitions.ts';

export interface SectionInText {
  readonly name: string;
  /** Line of the block. */
  readonly at: number;
  /** Names in the order of the line; `place` is without the quotes. */
  readonly plays: readonly { readonly name: string; readonly place: ReturnType<typeof usesOf>[number]['place'] }[];
}

export function sectionsOf(block: Block): readonly SectionInText[] {
  const plays = usesOf(block).filter(({ kind }) => kind === 'play');
  return definitionsOf(block)
    .filter(({ kind }) => kind === 'section')
    .map(({ name, place: { line } }) => ({ name, at: line, plays: plays.filter(({ place }) => place.line === line) }));
}
