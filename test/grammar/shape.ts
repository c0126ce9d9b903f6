import { expect } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { verbOf } from '../../language/grammar/verbs.ts';

/** The tree without columns, every verb in its base form. */
export function shape(line: string): unknown {
  const { tree, fault } = parseLine(line);
  expect(fault?.message, line).toBeUndefined();
  return JSON.parse(JSON.stringify(tree, (key, value: unknown) => {
    if (key === 'at' || key === 'to' || key === 'spans') return undefined;
    return key === 'verb' ? (verbOf(value as string)?.base ?? value) : value;
  }));
}
