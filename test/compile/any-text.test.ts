import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { readPlayback } from '../../language/playback/validate.ts';
import { compileText } from '../checks/compiled.ts';

const examples = readdirSync('examples').filter((name) => name.endsWith('.play')).map((name) => readFileSync(`examples/${name}`, 'utf8'));
const lines = examples.flatMap((text) => text.split('\n')).filter((line) => line.trim() !== '');

/** Everything that is made of a text, down to the bytes that go to a page. */
function through(text: string): string {
  const { plays, findings } = compileText(text);
  for (const finding of findings) {
    expect(finding.message).not.toMatch(/undefined|NaN|\(\?\)|\{\w+\}/);
    expect(finding.place.to).toBeGreaterThanOrEqual(finding.place.at);
  }
  return JSON.stringify([plays.map((play) => playbackOf(play)), findings]);
}

describe('any text gives plays and findings, never an exception', () => {
  test('lines of plays in any order', () => {
    fc.assert(fc.property(fc.array(fc.constantFrom(...lines), { maxLength: 40 }), (some) => void through(some.join('\n'))), { numRuns: 150 });
  });

  test('plays with letters lost and doubled', () => {
    const bent = fc.tuple(fc.constantFrom(...examples.slice(0, 6)), fc.array(fc.tuple(fc.nat(), fc.constantFrom('', '\n', '"', 'X4', ' 3', ', then ', 'off ', '\u0000', '🏀')), { maxLength: 8 })).map(([text, changes]) =>
      changes.reduce((now, [where, put]) => {
        const at = where % (now.length + 1);
        return now.slice(0, at) + put + now.slice(at + 1);
      }, text.slice(0, 1500)),
    );
    fc.assert(fc.property(bent, (text) => void through(text)), { numRuns: 80 });
  });

  test('no text at all', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => void through(text)), { numRuns: 100 });
  });
});

test('the same text gives the same bytes', () => {
  for (const text of examples.slice(0, 4)) expect(through(text)).toBe(through(text));
});

test('a playback is plain JSON that its own reader accepts', () => {
  for (const text of examples) {
    for (const play of compileText(text).plays) {
      const playback = playbackOf(play);
      const sent = JSON.parse(JSON.stringify(playback)) as unknown;
      expect(readPlayback(sent)).toMatchObject({ ok: true });
    }
  }
});
