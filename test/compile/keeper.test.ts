import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { editFile, emptyBook, openFile, textOf, type Book } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper } from '../../language/keeper.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';

const uri = 'file:///book.play';
const plays = ['lighthouse', 'harbour'].map((name) => readFileSync(`examples/${name}.play`, 'utf8').replace(/^notation.*\n/, '').replace(/^(level|rules).*\n/gm, ''));
const text = `level u14\nrules fiba\nspot "pocket" is 3 ft inside right elbow\n\n${plays.join('\n')}\nplay "Copy" mirrors "Lighthouse"\n`;

const shown = (compiled: Compiled) => JSON.stringify(playbackOf(compiled));

const someEdit = fc.record({
  line: fc.nat(70),
  character: fc.nat(30),
  length: fc.nat(12),
  text: fc.constantFrom('', ' ', '\n', 'x', '3', 'left ', 'step "New"\n', '"', 'level u10\n', 'spot "pocket" is 2 ft inside left elbow\n', 'play "Lighthouse"\n', '  1 passes to 2\n', '#'),
});

test('after any edits the kept plays and findings are those of a cold read', () => {
  fc.assert(
    fc.property(fc.array(someEdit, { minLength: 1, maxLength: 6 }), (edits) => {
      const keeper = createKeeper();
      let book: Book = openFile(emptyBook, uri, text);
      keeper.findingsOf(book, uri);
      for (const edit of edits) {
        const range = { start: { line: edit.line, character: edit.character }, end: { line: edit.line, character: edit.character + edit.length } };
        book = editFile(book, uri, [{ range, text: edit.text }]);
        keeper.findingsOf(book, uri);
      }
      const cold = openFile(emptyBook, uri, textOf(book.files.get(uri)!));
      const fresh = createKeeper();
      expect(keeper.playsOf(book, uri).map(shown)).toEqual(fresh.playsOf(cold, uri).map(shown));
      expect(keeper.findingsOf(book, uri)).toEqual(fresh.findingsOf(cold, uri));
    }),
    { numRuns: 40 },
  );
});

test('so are those of a file that uses another, whichever of the two is edited', () => {
  const shared = 'file:///shared.play';
  const sharedText = 'level u14\nspot "pocket" is 3 ft inside right elbow\n\nalignment "Wide"\n  1 at top\n  2 at right wing\n  3 at left wing\n  4 at right corner\n  5 at left corner\n\nplay "Lent"\n  from "Wide", ball with 1\n  1 passes to 2\n  look 2: three\n';
  const userText = 'use "shared.play"\nplay "Own"\n  from "Wide", ball with 1\n  1 dribbles to "pocket"\n  look 1: jumper\nplay "Copy" mirrors "Lent"\nplay "On" continues "Lent"\n  2 drives to the rim\n  look 2: layup\nplay "Third"\n  from 5-out\n  1 passes to 3\n  look 3: three\n';
  const anEdit = fc.record({ uri: fc.constantFrom(uri, shared), line: fc.nat(15), character: fc.nat(20), length: fc.nat(6), text: someEdit.map((edit) => edit.text) });
  fc.assert(
    fc.property(fc.array(anEdit, { minLength: 1, maxLength: 8 }), (edits) => {
      const keeper = createKeeper();
      let book: Book = openFile(openFile(emptyBook, shared, sharedText), uri, userText);
      keeper.findingsOf(book, uri);
      for (const { uri: at, line, character, length, text: typed } of edits) {
        book = editFile(book, at, [{ range: { start: { line, character }, end: { line, character: character + length } }, text: typed }]);
        for (const one of [uri, shared]) {
          const cold = [...book.files.values()].reduce((read, file) => openFile(read, file.uri, textOf(file)), emptyBook);
          const fresh = createKeeper();
          expect(keeper.findingsOf(book, one)).toEqual(fresh.findingsOf(cold, one));
          expect(keeper.playsOf(book, one).map(shown)).toEqual(fresh.playsOf(cold, one).map(shown));
        }
      }
    }),
    { numRuns: 60 },
  );
});

test('after a keystroke only the play it stands in has to be looked at again', () => {
  const keeper = createKeeper();
  const long = `${text.slice(0, text.indexOf('play "Copy"'))}${Array.from({ length: 20 }, (_, at) => `play "More ${at}"\n  from 5-out, ball with 1\n  1 passes to 3\n  3 screens for 1\n`).join('')}`;
  const book = openFile(emptyBook, uri, long);
  const before = keeper.toldIn(book, uri);
  const line = long.split('\n').findIndex((one) => one.includes('More 7')) + 2;
  const edited = editFile(book, uri, [{ range: { start: { line, character: 14 }, end: { line, character: 15 } }, text: '2' }]);
  expect(keeper.unknownIn(edited, uri).map(({ name }) => name)).toEqual(['More 7']);
  const after = keeper.toldIn(edited, uri);
  expect(before.length).toBeGreaterThanOrEqual(20);
  expect(after.map(({ findings }, at) => findings === before[at]!.findings)).toEqual(before.map(({ block }) => block.name !== 'More 7'));
});

test('a keystroke in one play compiles that play only', () => {
  const keeper = createKeeper();
  const book = openFile(emptyBook, uri, text);
  const before = keeper.playsOf(book, uri);
  const line = text.split('\n').findIndex((one) => one.includes('3 inbounds to 1'));
  const after = keeper.playsOf(editFile(book, uri, [{ range: { start: { line, character: 19 }, end: { line, character: 19 } }, text: ' early' }]), uri);
  expect(after.map((compiled, at) => compiled === before[at])).toEqual([true, false, true]);
});

test('a new spot in the header wakes the plays that lacked it', () => {
  const lacking = 'level u14\nplay "A"\n  from 5-out\n  1 dribbles to "pocket"\n  look 1: jumper\nplay "B"\n  from 5-out\n  1 dribbles to left slot\n  look 1: three\n';
  const keeper = createKeeper();
  const book = openFile(emptyBook, uri, lacking);
  expect(keeper.findingsOf(book, uri).map(({ code }) => code)).toEqual(['unknown-spot']);
  const [a, b] = keeper.playsOf(book, uri);
  const mended = editFile(book, uri, [{ range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } }, text: 'spot "pocket" is 3 ft inside right elbow\n' }]);
  expect(keeper.findingsOf(mended, uri)).toEqual([]);
  const after = keeper.playsOf(mended, uri);
  expect(after[0]).not.toBe(a);
  expect(after[1]).toBe(b);
});

test('what is wrong with a play is not told again for its mirror', () => {
  const wrong = 'play "A"\n  from 5-out\n  shot within 1 second of the start\n  1 dribbles to left slot\n  look 1: three\nplay "B" mirrors "A"\n';
  const book = openFile(emptyBook, uri, wrong);
  expect(createKeeper().findingsOf(book, uri).map(({ code, play }) => `${play} ${code}`)).toEqual(['A past-window']);
});
