import { expect, it } from 'vitest';
import { lineParser } from '../../language/grammar/reading/line-parser.ts';
import { phrases } from '../../language/grammar/rewording/phrases.ts';

it('a phrase writes words of the grammar only', () => {
  const { definition } = lineParser().lexer;
  expect(phrases.flatMap(({ writes = [] }) => writes).filter((word) => definition[word] === undefined)).toEqual([]);
});
