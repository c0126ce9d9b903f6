// The laws of the whole way, text to picture. Each layer has laws of its own beside it; these hold across all of them.
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editFile, emptyBook, openFile, textOf, type Book, type TextEdit } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper, type Keeper } from '../../language/keeper.ts';
import { distance } from '../../language/court/point.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import { drawSvg } from '../../language/picture/draw.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { at } from '../../language/playback/at.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { OFFENCE } from '../../language/play/play.ts';
import { writtenPlays } from '../support/plays.ts';

const uri = 'file:///club/plays.play';
const examples = readdirSync('examples').filter((name) => name.endsWith('.play')).map((name) => readFileSync(`examples/${name}`, 'utf8'));

function playsOf(text: string, keeper: Keeper = createKeeper()): readonly Compiled[] {
  return keeper.playsOf(openFile(emptyBook, uri, text), uri);
}
const bytes = (text: string): string => JSON.stringify(playsOf(text).map(playbackOf));
const playbacksOf = (text: string): readonly Playback[] => playsOf(text).map(playbackOf);

/** Texts of plays: generated ones, and the club's own. */
const texts = fc.oneof({ weight: 4, arbitrary: writtenPlays.map(({ text }) => text) }, { weight: 1, arbitrary: fc.constantFrom(...examples) });

describe('the same text', () => {
  it('gives the same bytes, read twice', () => {
    fc.assert(fc.property(texts, (text) => void expect(bytes(text)).toBe(bytes(text))), { numRuns: 40 });
  });

  it('gives the same play on Windows line ends', () => {
    fc.assert(fc.property(texts, (text) => void expect(bytes(text.replaceAll('\n', '\r\n'))).toBe(bytes(text))), { numRuns: 40 });
  });

  it('gives the same play further down its file, behind remarks with accents and emoji', () => {
    const remarks = '# Überläufer – à gauche 🏀\n#\n\n';
    fc.assert(
      fc.property(writtenPlays, ({ text }) => {
        const body = text.slice(text.indexOf('  from') - 'play "Law"\n'.length);
        const head = text.slice(0, text.length - body.length);
        expect(bytes(head + remarks + body)).toBe(bytes(head + body));
      }),
      { numRuns: 30 },
    );
  });
});

const snippets = ['', '\n', '\r\n', 'play "New"\n', '\n  step "X"\n', '1 passes to 3', '4 scrrens', '"', '#', 'level pro\n', '🏀é', 'from box', '  look 2: three\n', ' off 4', '9'];
const edits = fc.array(fc.record({ from: fc.double({ min: 0, max: 1, noNaN: true }), length: fc.nat({ max: 60 }), text: fc.constantFrom(...snippets) }), { minLength: 1, maxLength: 8 });

function positionOf(text: string, offset: number): { line: number; character: number } {
  const lines = text.slice(0, offset).split(/\r\n|\n|\r/);
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}

describe('a book that was edited', () => {
  it('is, in every finding and every byte of its plays, the book read from its text', () => {
    fc.assert(
      fc.property(texts, edits, (text, changes) => {
        const keeper = createKeeper();
        let book: Book = openFile(emptyBook, uri, text);
        for (const { from, length, text: inserted } of changes) {
          const now = textOf(book.files.get(uri)!);
          // Never between CR and LF: an editor cannot put its cursor there.
          const start = Math.floor(from * now.length) - (now.slice(0, Math.floor(from * now.length)).endsWith('\r') ? 1 : 0);
          const end = Math.min(now.length, start + length);
          const edit: TextEdit = { range: { start: positionOf(now, start), end: positionOf(now, end) }, text: inserted };
          book = editFile(book, uri, [edit]);
          keeper.findingsOf(book, uri);
          keeper.playsOf(book, uri);
        }
        const cold = openFile(emptyBook, uri, textOf(book.files.get(uri)!));
        expect(keeper.findingsOf(book, uri)).toEqual(createKeeper().findingsOf(cold, uri));
        expect(JSON.stringify(keeper.playsOf(book, uri).map(playbackOf))).toBe(JSON.stringify(createKeeper().playsOf(cold, uri).map(playbackOf)));
      }),
      { numRuns: 60 },
    );
  });
});

describe('in every run-through', () => {
  it('the ball is in exactly one place at every moment', () => {
    fc.assert(
      fc.property(texts, (text) => {
        for (const { runs } of playbacksOf(text)) {
          for (const { ball, end } of runs) {
            expect(ball[0]?.t0).toBe(0);
            for (let i = 1; i < ball.length; i++) expect(ball[i]!.t0).toBe(ball[i - 1]!.t1);
            expect(ball.at(-1)!.t1).toBe(end);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('nobody is faster than his level runs, and nobody jumps from place to place', () => {
    const step = 25;
    fc.assert(
      fc.property(texts, (text) => {
        for (const playback of playbacksOf(text)) {
          const fastest = LEVELS[playback.play.level].vmax;
          for (const run of playback.runs) {
            let before = at(playback, run.id, 0).bodies;
            for (let t = step; t <= run.end; t += step) {
              const now = at(playback, run.id, t).bodies;
              now.forEach((body, index) => {
                const moved = distance(body, before[index]!);
                // Places are committed to whole millimetres at both ends.
                if (moved > (fastest * step) / 1000 + 0.003) expect.fail(`${playback.play.name}, ${run.id}: ${body.id} moves ${moved.toFixed(3)} m in ${step} ms at ${t} ms`);
              });
              before = now;
            }
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  it('seeking shows what playing shows', () => {
    fc.assert(
      fc.property(writtenPlays, fc.array(fc.nat({ max: 20_000 }), { minLength: 3, maxLength: 12 }), ({ text }, moments) => {
        for (const playback of playbacksOf(text)) {
          for (const { id } of playback.runs) {
            const played = [...moments].sort((a, b) => a - b).map((t) => [t, JSON.stringify(at(playback, id, t))] as const);
            const fresh = playbacksOf(text).find(({ play }) => play.key === playback.play.key)!;
            for (const t of moments) expect(JSON.stringify(at(fresh, id, t))).toBe(played.find(([when]) => when === t)![1]);
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  it('somebody of the five has the ball whenever it is held', () => {
    fc.assert(
      fc.property(texts, (text) => {
        for (const { runs } of playbacksOf(text)) {
          for (const { ball } of runs) for (const state of ball) expect([...OFFENCE, 'X1', 'X2', 'X3', 'X4', 'X5']).toContain(state.by);
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe('any text at all', () => {
  const word = fc.constantFrom('play', '"A"', 'step', 'from', 'stack', '1', '2', 'X4', 'passes', 'to', 'screens', 'for', 'cuts', 'off', 'left', 'wing', 'look', ':', 'three', ',', 'then', 'and', 'instead of', 'after', 'call with', '22', 'seconds', 'against man', 'when', 'mirrors', 'level', 'pro', 'rebound', 'crash', 'inbounds', 'from the left sideline', 'again', 'repeats', 'use', '\u0000', '🏀', '(', '1e999', '-3 ft', '99999999999999999999');
  const salad = fc.array(fc.array(word, { maxLength: 9 }).map((words) => words.join(' ')), { maxLength: 25 }).map((lines) => lines.join('\n'));
  const anything = fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), salad, salad.map((text) => `play "A"\n${text}`));

  it('gives findings, playbacks and pictures, and never an exception', () => {
    fc.assert(
      fc.property(anything, (text) => {
        const book = openFile(emptyBook, uri, text);
        const keeper = createKeeper();
        expect(textOf(book.files.get(uri)!)).toBe(text);
        for (const finding of keeper.findingsOf(book, uri)) {
          expect(finding.message.length).toBeGreaterThan(0);
          expect(finding.place.at).toBeLessThanOrEqual(finding.place.to);
        }
        for (const playback of keeper.playsOf(book, uri).map(playbackOf)) {
          for (const { id, end } of playback.runs) {
            expect(Number.isFinite(end)).toBe(true);
            expect(drawSvg(sceneAt(playback, id, end / 2))).not.toMatch(/NaN|undefined|Infinity/);
          }
        }
      }),
      { numRuns: 400 },
    );
  });
});
