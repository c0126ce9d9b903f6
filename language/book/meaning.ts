import { singular } from '../grammar/verbs.ts';
import type { LineTree } from '../grammar/tree.ts';

/** What a line says, whatever its blanks, its comment and the number of its verbs: the same string for lines that say the same, word for word. */
export function meaningOf(tree: LineTree): string {
  const known = kept.get(tree) ?? wordsOf(tree);
  kept.set(tree, known);
  return known;
}

/** A counter's lines are each held against all lines of the step it replaces. */
const kept = new WeakMap<LineTree, string>();

function wordsOf(tree: LineTree): string {
  return JSON.stringify(tree, (key, value: unknown) => {
    if (key === 'spans' || ((key === 'at' || key === 'to') && typeof value === 'number')) return undefined;
    return key === 'verb' && typeof value === 'string' ? singular(value) : value;
  });
}
