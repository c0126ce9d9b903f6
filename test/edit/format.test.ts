import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { editFile, emptyBook, openFile, textOf, type Book } from '../../language/book/book.ts';
import { formatAtName, formatAtNewLine, formatFile, type FormatEdit, type LineRange } from '../../language/edit/format-file.ts';
import { createKeeper } from '../../language/keeper.ts';
import { writtenPlays } from '../support/plays.ts';

const uri = 'file:///test.play';
const folder = 'examples';
const examples = readdirSync(folder).filter((name) => name.endsWith('.play'));
const exampleText = (name: string): string => readFileSync(`${folder}/${name}`, 'utf8');

const opened = (text: string): Book => openFile(emptyBook, uri, text);

function apply(text: string, edits: readonly FormatEdit[]): string {
  const book = opened(text);
  // From the end, so that none shifts another.
  return textOf(editFile(book, uri, edits.toReversed()).files.get(uri)!);
}

const formatted = (text: string, range?: LineRange): string => apply(text, formatFile(opened(text).files.get(uri)!, range));

describe('a file is set', () => {
  test.each([
    ['play content stands two blanks in, step content four', 'play "A"\nfrom horns\n\nstep "B"\n1 passes to 2', 'play "A"\n  from horns\n\n  step "B"\n    1 passes to 2'],
    ['a step has one blank line above it', 'play "A"\n  from horns\n  step "B"\n    1 holds\n\n\n\n  step "C"\n    1 holds\n', 'play "A"\n  from horns\n\n  step "B"\n    1 holds\n\n  step "C"\n    1 holds\n'],
    ['a step right below its play has none', 'play "A"\n  step "B"\n    1 holds\n', 'play "A"\n  step "B"\n    1 holds\n'],
    ['comments above a step go with it', 'play "A"\n  from horns\n# why\n  step "B"\n', 'play "A"\n  from horns\n\n  # why\n  step "B"\n'],
    ['meant blank lines stay, one of each run', 'play "A"\n  from horns\n\n\n\n  call with 20 on the clock\n', 'play "A"\n  from horns\n\n  call with 20 on the clock\n'],
    ['one player screens, two screen', 'play "A"\n  step "B"\n    4 screen for 2\n    4 and 5 screens for 2\n', 'play "A"\n  step "B"\n    4 screens for 2\n    4 and 5 screen for 2\n'],
    ['blanks are single, none before a comma', 'play "A"\n  step "B"\n    1   passes to 2 ,3\tcuts  to rim  \n', 'play "A"\n  step "B"\n    1 passes to 2, 3 cuts to rim\n'],
    ['a name keeps its blanks', 'play  "The  long   one"\n', 'play "The  long   one"\n'],
    ['a mark inside a name is no comment', 'play "A"\n  step "B"\n    look 1 "is # 1":layup#yes\n', 'play "A"\n  step "B"\n    look 1 "is # 1": layup  #yes\n'],
    ['comments in a row stand in one line', 'play "A"\n  step "B"\n    1 passes to 2 # one\n    2 holds # two\n', 'play "A"\n  step "B"\n    1 passes to 2  # one\n    2 holds        # two\n'],
    ['a broken line is left as it is', 'play "A"\n  step "B"\n 1  passses   to 2  \n  1 passes to 2\n', 'play "A"\n  step "B"\n 1  passses   to 2  \n    1 passes to 2\n'],
    ['a file without a last line end gets none', 'play "A"\n from horns', 'play "A"\n  from horns'],
    ['blank lines at the ends of a file go', '\n\nplay "A"\n  from horns\n\n\n', 'play "A"\n  from horns\n'],
    ['a mark at the start of the bytes stays', '\uFEFFnotation   1\n', '\uFEFFnotation 1\n'],
    ['alignments and rosters are set as plays are', 'alignment "A"\n1 top\nroster "B"\n4 "Mia"\n', 'alignment "A"\n  1 top\n\nroster "B"\n  4 "Mia"\n'],
  ] as const)('%s', (_, text, set) => {
    expect(formatted(text)).toBe(set);
    expect(formatted(text.replaceAll('\n', '\r\n'))).toBe(set.replaceAll('\n', '\r\n'));
    expect(formatted(set)).toBe(set);
  });

  test('only the lines asked for', () => {
    expect(formatted('play "A"\n from horns\n against man\n', { from: 2, to: 2 })).toBe('play "A"\n from horns\n  against man\n');
  });

  test('Lighthouse is set already, its comments where the coach has them', () => {
    expect(formatFile(opened(exampleText('lighthouse.play')).files.get(uri)!)).toEqual([]);
  });
});

describe('at a new line', () => {
  test.each([
    ['play "A"\nfrom horns\n', 2, 'play "A"\n  from horns\n  '],
    ['play "A"\n  step "B"\n', 2, 'play "A"\n  step "B"\n    '],
    ['play "A"\n  step "B"\n    4 screen for 2\n    ', 3, 'play "A"\n  step "B"\n    4 screens for 2\n    '],
    ['play "A"\n  step "B"\n    1 passses to 2\n', 3, 'play "A"\n  step "B"\n    1 passses to 2\n    '],
    // Twice Enter behind the last man: the number that stood there for one more goes.
    ['roster "R"\n  5 "Ann"\n  6 \n  ', 3, 'roster "R"\n  5 "Ann"\n  '],
    ['roster "R"\n  5 "Ann"\n  6 \n', 3, 'roster "R"\n  5 "Ann"\n  '],
    ['roster "R"\n  15 "Ann"\n  16\n  play "A"', 3, 'roster "R"\n  15 "Ann"\nplay "A"'],
    ['alignment "R"\n  1 top\n  2\n  \nplay "A"', 3, 'alignment "R"\n  1 top\n  \nplay "A"'],
    // One whose name has slipped into the next line stays, and so does a number elsewhere.
    ['roster "R"\n  5 "Ann"\n  6 \n  "Bea"', 3, 'roster "R"\n  5 "Ann"\n  6 \n  "Bea"'],
    ['play "A"\n  from horns\n  6 \n  ', 3, 'play "A"\n  from horns\n  6 \n  '],
    // Behind `, then` the same man goes on in a line of his own: the words that led to it go.
    ['play "A"\n  step "B"\n    4 screens for 2, then\n    4 ', 3, 'play "A"\n  step "B"\n    4 screens for 2\n    4 '],
    ['play "A"\n  step "B"\n    4 screens for 2 then \n    4 ', 3, 'play "A"\n  step "B"\n    4 screens for 2\n    4 '],
    ['play "A"\n  step "B"\n    4 screens for 2, then\n    5 ', 3, 'play "A"\n  step "B"\n    4 screens for 2, then\n    5 '],
    ['play "A"\n  step "B"\n    1 holds\n    step "C"\n    ', 4, 'play "A"\n  step "B"\n    1 holds\n\n  step "C"\n    '],
  ] as const)('%j', (text, line, set) => {
    expect(apply(text, formatAtNewLine(opened(text).files.get(uri)!, line))).toBe(set);
  });
});

describe('as a name is begun', () => {
  test.each([
    ['a step behind a look comes out to the steps', 'play "A"\n  step "B"\n    look 1: three\n\n    step ""', 4, 'play "A"\n  step "B"\n    look 1: three\n\n  step ""'],
    ['and so without a second quote', 'play "A"\n  step "B"\n    look 1: three\n    step "', 3, 'play "A"\n  step "B"\n    look 1: three\n  step "'],
    ['a play below a step comes out all the way', 'play "A"\n  step "B"\n    look 1: three\n    play “”', 3, 'play "A"\n  step "B"\n    look 1: three\nplay “”'],
    ['nothing goes farther in', 'play "A"\nstep ""', 1, 'play "A"\nstep ""'],
    ['and so while it is written, and once it is closed', 'play "A"\n  step "B"\n    look 1: three\n    step "Sli"', 3, 'play "A"\n  step "B"\n    look 1: three\n  step "Sli"'],
    ['a name that stands already is left alone', 'play "A"\n    step "B" after ""', 1, 'play "A"\n    step "B" after ""'],
    ['a name elsewhere moves nothing', 'play "A"\n  step "B"\n      look 1 ""', 2, 'play "A"\n  step "B"\n      look 1 ""'],
  ] as const)('%s', (_, text, line, set) => {
    expect(apply(text, formatAtName(opened(text).files.get(uri)!, line))).toBe(set);
  });
});

// ---- laws ---------------------------------------------------------------------------------------------------------

const keeper = createKeeper();

/** Everything the plays of a text mean, without their places in it; words that are only shown, with single blanks. */
function meaning(text: string): string {
  const book = openFile(opened(text), 'file:///alignments.play', exampleText('alignments.play'));
  return JSON.stringify(keeper.playsOf(book, uri).map(({ play, timeline }) => ({ play, runs: timeline.runs })), (key, value: unknown) => (key === 'text' && typeof value === 'string' ? value.replace(/\s+/g, ' ') : value));
}

const commentsOf = (text: string): readonly string[] =>
  opened(text).files.get(uri)!.blocks.flatMap(({ lines }) => lines.flatMap(({ parsed: { text: line, comment } }) => (comment === undefined ? [] : [line.slice(comment.at).trimEnd()])));

/** What an untidy hand makes of a line: blanks, tabs, a verb in the wrong number, a comment. */
const untidy = fc.record({
  indent: fc.constantFrom('', ' ', '      ', '\t'),
  gap: fc.constantFrom(' ', '  ', '\t', ' '),
  plural: fc.boolean(),
  behind: fc.constantFrom('', '', '', '  ', ' # why "this"', '# é 🏀'),
  blank: fc.constantFrom('', '', '', '\n', '\n  \n\n', '\n# a line of its own\n', '\n    1 pasess to\n'),
});

function bend(lines: readonly string[], ways: readonly (typeof untidy extends fc.Arbitrary<infer T> ? T : never)[]): string {
  return lines
    .map((line, at) => {
      const { indent, gap, plural, behind, blank } = ways[at % ways.length]!;
      const [words, comment] = [line.trim().replace(/\s*#.*$/, ''), /#.*$/.exec(line)?.[0]];
      const parts = words.split(/("[^"]*")/).map((part) => (part.startsWith('"') ? part : part.replace(/ /g, gap)));
      const set = plural ? parts.join('').replace(/^(\d\s+(?:cut|screen|roll|pop))s\b/, '$1') : parts.join('');
      return indent + set + (comment ?? (words === '' ? '' : behind)) + blank;
    })
    .join('\n');
}

const ways = fc.array(untidy, { minLength: 1, maxLength: 30 });
const ends = fc.constantFrom('\n', '\r\n');
const bent = fc.oneof(
  fc.tuple(writtenPlays, ways).map(([{ text }, how]) => bend(text.split('\n'), how)),
  fc.tuple(fc.constantFrom(...examples), ways).map(([name, how]) => bend(exampleText(name).split('\n'), how)),
);

describe('whatever a play looks like, setting it', () => {
  test('changes nothing of what it means, loses no comment, and is done once', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(bent, ends, fc.boolean(), (lines, eol, last) => {
        const text = lines.replaceAll('\n', eol) + (last ? eol : '');
        const set = formatted(text);
        expect(formatted(set)).toBe(set);
        expect(commentsOf(set)).toEqual(commentsOf(text));
        expect(meaning(set)).toBe(meaning(text));
        expect(set).not.toMatch(/\n\s*\n\s*\n/);
        expect(/[\r\n]$/.test(set)).toBe(/[\r\n]\s*$/.test(text));
        if (eol === '\r\n') expect(set.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      }),
      { numRuns: 60 },
    );
  });

  test('is a matter of any text', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.constantFrom('play "A"', 'step "B"', '  1  passes to 2', '#', ' # x', '', '\t', '4 screen for 2 #', '"', '\u0000', '🏀', 'x\r', '1 passes to 2 "A" ,'), fc.string({ maxLength: 8 })), { maxLength: 30 }), (lines) => {
        const set = formatted(lines.join('\n'));
        expect(formatted(set)).toBe(set);
      }),
      { numRuns: 500 },
    );
  });
});
