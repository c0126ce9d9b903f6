// What the five are called: the names that the roster of the file, or of a file it uses, gives the numbers 1 to 5.
import type { Block } from '../book/book.ts';
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
