import { otherNumber, verbOf } from '../grammar/verbs.ts';
import type { LineTree } from '../grammar/tree.ts';

/** What a line says, whatever its blanks, its comment and the number of its verbs: the same string for lines that say the same, word for word. */
export function meaningOf(tree: LineTree): string {
  return JSON.stringify(tree, (key, value: unknown) => {
    if (key === 'spans' || ((key === 'at' || key === 'to') && typeof value === 'number')) return undefined;
    return key === 'verb' && typeof value === 'string' ? singular(value) : value;
  });
}

function singular(verb: string): string {
  return verbOf(verb)?.number === 'plural' ? (otherNumber.get(verb) ?? verb) : verb;
}
