import { describe, expect, it } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { meaningOf } from '../../language/book/meaning.ts';

describe('a verb that is not known is read by what stands behind it', () => {
  it.each([
    ['3 slithers to the left corner', '3 goes to the left corner', ['slithers']],
    ['3 slithers out to the left corner # quick', '3 goes out to the left corner', ['slithers']],
    ['4 and 5 squeeze toward the nail', '4 and 5 go toward the nail', ['squeeze']],
    ['1 blazes it over to 3', '1 passes it over to 3', ['blazes']],
    ['1 noodles it down to the right wing', '1 dribbles it down to the right wing', ['noodles']],
    ['2 yanks X2 down to the block', '2 goes down to the block', ['yanks']],
    ['3 cuts off 4 and oozes out to the right corner', '3 cuts off 4 and goes out to the right corner', ['oozes']],
    ['3 oozes to the top, 1 blazes it to 3 and noodles to the rim', '3 goes to the top, 1 passes it to 3 and goes to the rim', ['oozes', 'blazes', 'noodles']],
    ['as 2 oozes, 1 passes to 2', 'as 2 goes, 1 passes to 2', ['oozes']],
  ])('%s', (said, plain, verbs) => {
    const { tree, fault, warnings } = parseLine(said);
    expect(fault).toBeUndefined();
    expect(meaningOf(tree!)).toEqual(meaningOf(parseLine(plain).tree!));
    expect(warnings.filter(({ code }) => code === 'read-as').map(({ at, to }) => said.slice(at, to))).toEqual(verbs);
  });

  it.each([
    // A slip of the pen, a word that is only begun.
    '3 cust to the left wing', '3 slithers to the le',
    // What is not done, or done to somebody.
    '3 avoids the left corner', '3 refuses to the left corner', '5 hounds 2', '5 slithers', '3 never slithers to the rim',
    // What other words say.
    '2 flattens out and cuts to the right corner',
  ])('but not: %s', (line) => expect(parseLine(line).fault).toBeDefined());
});
