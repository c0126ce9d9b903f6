import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { editFile, emptyBook, openFile, textOf, type Book } from '../../language/book/book.ts';
import { createKeeper, type Compiled } from '../../language/compile.ts';
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
