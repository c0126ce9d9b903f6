import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { blockAtLine, emptyBook, openFile, textOf, type Book } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { formatFile } from '../../language/edit/format-file.ts';
import { allow } from '../../language/rewrite/allow.ts';
import { after, type Here, type Offer, type Rewritten } from '../../language/rewrite/here.ts';
import { offersAt } from '../../language/rewrite/offers.ts';
import { inEnglish } from '../../language/message/message.ts';
import { writtenPlays } from '../support/plays.ts';

const uri = 'file:///plays/test.play';
const keeper = createKeeper();
const folder = 'examples';
const alignments = readFileSync(`${folder}/alignments.play`, 'utf8');

function bookOf(text: string): Book {
  return openFile(openFile(emptyBook, 'file:///plays/alignments.play', alignments), uri, text);
}

function hereAt(book: Book, line: number, at: number): Here | undefined {
  const { block, firstLine } = blockAtLine(book.files.get(uri)!, line);
  return block.kind === 'play' ? { book, uri, firstLine, ...keeper.compile(book, uri, block), line: line - firstLine, at, to: at } : undefined;
}

const textAfter = (book: Book, written: Rewritten): string => ('edits' in written ? textOf(after(book, written.edits).files.get(uri)!) : inEnglish(written.refused));

/** What an offer makes of the text with the mark. */
function done(marked: string, title: RegExp): string {
  const at = marked.indexOf('|');
  const before = marked.slice(0, at).split('\n');
  const book = bookOf(marked.slice(0, at) + marked.slice(at + 1));
  const offer = offersAt(hereAt(book, before.length - 1, before.at(-1)!.length)!).find((one) => title.test(inEnglish(one.title)));
  if (offer === undefined) return 'not offered';
  return textAfter(book, offer.write());
}

const play = (...lines: string[]): string => `${['play "A"', '  from horns', '', ...lines].join('\n')}\n`;

describe('a step is split', () => {
  const split = /^Split/;
  test('what follows the whole follows its second half', () => {
    const text = play('  step "Zip"', '    1 passes to 2', '    |3 cuts to rim', '', '  step "On" after "Zip"', '    2 passes to 3', '', '  step "Off" after "Zip" when "he is late"', '    2 drives to rim');
    expect(done(text, split)).toBe(play('  step "Zip"', '    1 passes to 2', '', '  step "Zip 2"', '    3 cuts to rim', '', '  step "On" after "Zip 2"', '    2 passes to 3', '', '  step "Off" after "Zip 2" when "he is late"', '    2 drives to rim'));
  });
  test('a counter’s second half says what it comes after', () => {
    const text = play('  step "Zip"', '    1 passes to 2', '', '  step "Pop" instead of "Zip" when X1 denies 2', '    1 passes to 3', '    |3 drives to rim');
    expect(done(text, split)).toContain('    1 passes to 3\n\n  step "Pop 2" after "Pop"\n    3 drives to rim\n');
  });
  test.each([
    ['the first line', play('  step "Zip"', '    |1 passes to 2', '    3 cuts to rim'), /^not offered$/],
    ['a step that another stands in the place of', play('  step "Zip"', '    1 passes to 2', '    |3 cuts to rim', '', '  step "Pop" instead of "Zip" when X1 denies 2', '    1 passes to 3'), /Another step stands in the place of “Zip”/],
    ['a line that counts the whole step', play('  step "Zip"', '    1 passes to 2', '    |everyone else holds'), /Write the numbers out/],
    ['a step with its own rebounds', play('  step "Zip"', '    rebound 4, 5 crash, 1, 2, 3 get back', '    1 passes to 2', '    |look 2: jumper'), /counts for the whole step/],
  ] as const)('not %s', (_, text, why) => expect(done(text, split)).toMatch(why));
});

describe('the first step gets a name', () => {
  test('and its lines go in', () => {
    expect(done('play "A"\n  from horns\n  1 passes to 2\n  |3 cuts to rim  # hard\n\n  step "Zip"\n    2 passes to 3\n', /a name/)).toBe(
      'play "A"\n  from horns\n\n  step "Start"\n    1 passes to 2\n    3 cuts to rim  # hard\n\n  step "Zip"\n    2 passes to 3\n',
    );
  });
  test('not where a note would no longer be the play’s', () => {
    expect(done('play "A"\n  from horns\n  1 passes to 2\n  note "wait"\n  |3 cuts to rim\n', /a name/)).toMatch(/Put it above the first action/);
  });
});

describe('a look becomes a step', () => {
  test.each([
    ['in the middle', ['    1 passes to 2', '    |look 2 "corner": three', '    look 3: layup'], ['    1 passes to 2', '    look 3: layup', '', '  step "Corner" after "Zip" when "2 is open"', '    look 2 "corner": three']],
    ['at the end', ['    1 passes to 2', '    look 3: layup', '    |look 2 "corner": three  # his'], ['    1 passes to 2', '    look 3: layup', '', '  step "Corner" after "Zip" when "2 is open"', '    look 2 "corner": three  # his']],
  ] as const)('%s', (_, before, then) => {
    expect(done(play('  step "Zip"', ...before), /step of its own/)).toBe(play('  step "Zip"', ...then));
  });
  test('at the end of a file without a line end', () => {
    expect(done(play('  step "Zip"', '    1 passes to 2', '    |look 2: three').trimEnd(), /^Make the look for 2 a step of its own$/)).toBe(play('  step "Zip"', '    1 passes to 2', '', '  step "Look for 2" after "Zip" when "2 is open"', '    look 2: three').trimEnd());
  });
});

describe('what the defence decides becomes a step of its own', () => {
  const own = /^Make it a step of its own/;
  const zip = (...lines: string[]): string => play('  step "Zip"', '    1 passes to 2', ...lines);
  test.each([
    ['a choice at the end', ['    |if they switch, 4 cuts to rim'], ['', '  step "If they switch" instead of "Zip" when "they switch"', '    1 passes to 2', '    4 cuts to rim']],
    ['a choice of a defender who is named', ['    |4 cuts to rim if X4 switches  # his'], ['', '  step "If X4 switches" instead of "Zip" when X4 switches', '    1 passes to 2', '    4 cuts to rim  # his']],
    ['a remark with quotes, an accent and an emoji', ['    |if they switch, 1 passes to 2, 2 passes to 4  # "so" é 🏀'], ['', '  step "If they switch" instead of "Zip" when "they switch"', '    1 passes to 2', '    1 passes to 2, 2 passes to 4  # "so" é 🏀']],
    ['one in the middle', ['    |but if her man helps then 2 passes to 4', '    look 2: three'], ['    look 2: three', '', '  step "If her man helps" instead of "Zip" when "her man helps"', '    1 passes to 2', '    2 passes to 4']],
  ] as const)('%s', (_, before, then) => expect(done(zip(...before), own)).toBe(zip(...then)));
  test('not who is open: that is a look', () => expect(done(zip('    |if 2 is open, 1 passes to 2'), own)).toBe('not offered'));
  test('a line without end is not looked through', () => {
    const begun = performance.now();
    expect(done(zip(`    |if they switch,${' '.repeat(300_000)}4 cuts to rim`), own)).toBe('not offered');
    expect(performance.now() - begun).toBeLessThan(5000);
  });
  test('not a line that can be read', () => expect(done(zip('    |4 cuts to rim'), own)).toBe('not offered'));
  test('not where what is done then cannot be read', () => expect(done(zip('    |if they switch, fine by me'), own)).toBe('not offered'));
  test('a step without a name is named first', () => expect(done(play('  1 passes to 2', '  |if they switch, 4 cuts to rim'), own)).toMatch(/Give this step a name first/));
  test('a line end of the file stays as it was', () => expect(done(zip('    |if they switch, 4 cuts to rim').trimEnd(), own)).toBe(zip('', '  step "If they switch" instead of "Zip" when "they switch"', '    1 passes to 2', '    4 cuts to rim').trimEnd()));
});

describe('places become an alignment', () => {
  test('in the coach’s words, the ball where it was', () => {
    expect(done('play "A"\n  |from 1 top, 2 and 3 wings, 4 at right block, 5 at left block, ball with 2  # so\n  step "B"\n    2 holds\n', /alignment with a name/)).toBe(
      'play "A"\n  from "A start", ball with 2  # so\n  step "B"\n    2 holds\n\nalignment "A start"\n  1 at top\n  2 at right wing\n  3 at left wing\n  4 at right block\n  5 at left block\n',
    );
  });
  test('a change of a known one too', () => expect(done('play "A"\n  |from horns, 2 and 3 swapped\n', /alignment with a name/)).toMatch(/from "A start"\n\nalignment "A start"\n {2}1 at top\n/));
  test('not a name alone', () => expect(done('play "A"\n  |from horns\n', /alignment with a name/)).toBe('not offered'));
  test('not at a throw-in', () => expect(done('play "A"\n  |from 1 top, 2 at right wing, 4 at right block, 5 at left block\n  3 inbounds from the left sideline\n', /alignment with a name/)).toMatch(/At a throw-in/));
});

describe('lines that are missing', () => {
  const text = 'play "A"\n  |from horns\n  against man\n  shot within 16 seconds of the start\n\n  step "B"\n    1 passes to 2\n    look 2: jumper\n';
  test.each([
    [/boards/, '  shot within 16 seconds of the start\n  rebound 2, 4, 5 crash, 1, 3 get back\n'],
    [/miss must leave/, '  shot within 16 seconds of the start\n  leave 4 seconds after a miss\n'],
  ] as const)('%s', (title, lines) => expect(done(text, title)).toContain(lines));
  test('with the seconds that all looks need', () => expect(done(text, /when you call/)).toMatch(/against man\n {2}call with \d+ on the clock\n {2}shot within/));
  test('not what is there', () => expect(done(text.replace('\n\n', '\n  leave 4 seconds after a miss\n\n'), /miss must leave/)).toBe('not offered'));
  test('not in a step', () => expect(done(text.replace('|', '').replace('1 passes', '1 |passes'), /miss must leave/)).toBe('not offered'));
});

describe('feet and metres', () => {
  test.each([
    ['    2 cuts to 3 ft| above left elbow', '    2 cuts to 0.91 m above left elbow'],
    ['    2 cuts to 1.5| m above left elbow', '    2 cuts to 4.9 ft above left elbow'],
    ['    2 cuts| to (10, 6) ft', '    2 cuts to (3.05, 1.83) m'],
  ] as const)('%s', (line, then) => expect(done(play('  step "B"', line), /^Write .* instead of/)).toBe(play('  step "B"', then)));
});

describe('the defence that guards by itself is written out', () => {
  const five = [1, 2, 3, 4, 5].map((number) => `    X${number} guards ${number}`);
  test('in the first step, and nobody moves otherwise for it', () => {
    const text = play('  |against man', '', '  step "Zip"', '    note "hard"', '    1 passes to 2', '    look 2: jumper');
    expect(done(text, /who guards whom/)).toBe(play('  against man', '', '  step "Zip"', '    note "hard"', ...five, '    1 passes to 2', '    look 2: jumper'));
  });
  test('above the first line where no step has a name', () => {
    expect(done('|play "A"\n  from horns\n  against man\n  1 passes to 2\n', /who guards whom/)).toBe(`play "A"\n  from horns\n  against man\n${five.map((line) => line.slice(2)).join('\n')}\n  1 passes to 2\n`);
  });
  test('only for those of whom it is not said yet', () => {
    expect(done(play('  |against man', '', '  step "Zip"', '    X3 guards 3', '    1 passes to 2'), /who guards whom/)).toBe(play('  against man', '', '  step "Zip"', ...five.toSpliced(2, 1), '    X3 guards 3', '    1 passes to 2'));
  });
  test.each([
    ['once it is said of all', play('  |against man', '', '  step "Zip"', ...five, '    1 passes to 2')],
    ['for a zone, which guards the floor', play('  |against 2-3', '', '  step "Zip"', '    1 passes to 2')],
  ])('not %s', (_, text) => expect(done(text, /who guards whom/)).toBe('not offered'));
  test('one who is told to take another man keeps him', () => {
    expect(done(play('  |against man', '', '  step "Zip"', '    X1 guards 2', '    X2 guards 1', '    1 passes to 3'), /who guards whom/)).toBe(play('  against man', '', '  step "Zip"', ...five.slice(2), '    X1 guards 2', '    X2 guards 1', '    1 passes to 3'));
  });
});

test('a play mirrored, as a play of its own', () => {
  expect(done('|play "A"\n  from horns\n\n# the next one\nplay "B"\n', /mirrored/)).toBe('play "A"\n  from horns\n\nplay "A, mirrored" mirrors "A"\n\n# the next one\nplay "B"\n');
});

test('what a check warns of is allowed, and no longer said', () => {
  const text = ['sideline', 'last-shot', 'quick'].map((name) => readFileSync(`${folder}/${name}.play`, 'utf8')).join('\n');
  const book = bookOf(text.replace(/^\s*allow .*\n/gm, '').replace(/within \d+ sec/g, 'within 8 sec'));
  const found = keeper.findingsOf(book, uri).filter(({ severity }) => severity !== 'error');
  const allowed = new Set<string>();
  for (const finding of found) {
    const here = hereAt(book, finding.firstLine + finding.place.line, finding.place.at)!;
    const written = allow(here, finding)?.write();
    if (written === undefined) continue;
    expect(written, JSON.stringify(written)).toHaveProperty('edits');
    allowed.add(finding.code);
    const then = keeper.findingsOf(after(book, (written as { edits: Parameters<typeof after>[1] }).edits), uri);
    expect(then.map(({ code }) => code)).not.toContain('allow-unused');
    expect(then.length).toBeLessThan(keeper.findingsOf(book, uri).length);
  }
  expect(allowed.has('past-window-when-late') && allowed.size > 2).toBe(true);
});

// ---- laws ---------------------------------------------------------------------------------------------------------

const comments = (text: string): readonly string[] => (text.match(/#.*$/gm) ?? []).map((one) => one.trimEnd()).toSorted();
/** How often each player does each thing, and each shot that is looked for: no offer may lose or add one. A defender guards his man written or not. */
const jobs = (book: Book): string => JSON.stringify(keeper.playsOf(book, uri).filter(({ block }) => !/ mirrors /.test(block.lines[0]!.parsed.text)).map(({ play: { steps } }) => steps.flatMap(({ actions, looks }) => [...actions.filter(({ verb }) => verb !== 'guard').map(({ who, kind, verb }) => `${who} ${kind} ${verb}`), ...looks.map(({ who, tail }) => `look ${who} ${tail.length}`)]).toSorted()));

function everywhere(text: string, see: (offer: Offer, book: Book) => void) {
  const book = bookOf(text);
  text.split('\n').forEach((line, at) => {
    const here = hereAt(book, at, Math.floor(line.length / 2));
    for (const offer of here === undefined ? [] : offersAt(here)) see(offer, book);
  });
}

function keepsThePlay(offer: Offer, book: Book) {
  const written = offer.write();
  if (!('edits' in written)) return expect(inEnglish(written.refused)).toMatch(/^[A-Z“1-5].*\.$/);
  const then = after(book, written.edits);
  expect(jobs(then), inEnglish(offer.title)).toBe(jobs(book));
  const [before, text] = [textOf(book.files.get(uri)!), textOf(then.files.get(uri)!)];
  expect(comments(text), inEnglish(offer.title)).toEqual(comments(before));
  // What it writes is set as the formatter would: nothing new to mend.
  expect(formatFile(then.files.get(uri)!).length, `${inEnglish(offer.title)}\n${text}`).toBeLessThanOrEqual(formatFile(book.files.get(uri)!).length);
}

describe('whatever is offered anywhere keeps who does what, and every comment', () => {
  test.each(readdirSync(folder).filter((name) => name.endsWith('.play')))('in %s', { timeout: 60_000 }, (name) => everywhere(readFileSync(`${folder}/${name}`, 'utf8'), keepsThePlay));
  test('in any play', { timeout: 60_000 }, () => {
    fc.assert(fc.property(writtenPlays, ({ text }) => everywhere(text.replace('play "Law"', '\nplay "Law"').replace(/\n( *step)/g, '\n\n$1'), keepsThePlay)), { numRuns: 25 });
  });
});
