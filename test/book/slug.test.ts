import { expect, test } from 'vitest';
import { fileNameOf } from '../../language/book/slug.ts';

test.each([
  ['Quick #1', 'quick-1'], ['Côté fort!', 'côté-fort!'], ['50% full', '50%-full'], ['a/b\\c: "d"', 'a-b-c--d-'], ['..', 'unnamed'],
  // Devices of Windows, whatever ending stands behind them.
  ['Con', 'con-'], ['NUL', 'nul-'], ['com1', 'com1-'], ['Conquest', 'conquest'],
])('a file of the play %s is called %s', (name, file) => {
  expect(fileNameOf(name)).toBe(file);
});

test('a long name is cut between two signs', () => {
  expect(fileNameOf(`a${'🏀'.repeat(90)}`)).toBe(`a${'🏀'.repeat(79)}`);
});
