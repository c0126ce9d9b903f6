import { describe, expect, test } from 'vitest';
import { readBenchWords, whatFits, type BenchQuestion } from '../../client/playbook/on-the-bench.ts';
import { playEntry } from './play-entry.ts';

const plays = [
  playEntry('Slow', { first: 17, all: 19 }),
  playEntry('Middling', { first: 9, all: 12, looks: [{ label: 'rim', needs: 9 }, { label: 'corner', needs: 12 }] }),
  playEntry('Quick', { first: 5, all: 7 }),
  playEntry('Broken', { first: 3, all: 3, errors: 2 }),
  playEntry('Side', { first: 4, all: 8, throwIn: 'sideline' }),
  playEntry('Under', { first: 2, all: 2, throwIn: 'baseline', against: '2-3' }),
  playEntry('No look', { first: null }),
];
const asked = (question: Partial<BenchQuestion>) => {
  const { everyLook, firstLook, tooLate } = whatFits(plays, { seconds: 11, situation: 'any', set: false, ...question });
  const names = (list: typeof everyLook) => list.map(({ play }) => play.name);
  return [names(everyLook), names(firstLook), names(tooLate)];
};

test('those with time for every look come first, the quickest before the others, one that cannot work last', () => {
  expect(asked({})).toEqual([['Under', 'Side', 'Quick', 'Broken'], ['Middling'], ['Slow']]);
});

test('eleven seconds left, side throw-in', () => {
  expect(asked({ situation: 'sideline' })).toEqual([['Side'], [], []]);
});

test('with a live ball nobody throws in', () => {
  expect(asked({ situation: 'live' })).toEqual([['Quick', 'Broken'], ['Middling'], ['Slow']]);
});

test('a press is played against by what is meant for any press, or for this one', () => {
  const press = [playEntry('Zone', { against: '2-2-1 press' }), playEntry('Man', { against: 'man press' }), playEntry('Half court', { against: 'man' })];
  const found = (against: string) => whatFits(press, { seconds: 20, situation: 'any', set: false, against }).everyLook.map(({ play }) => play.name).toSorted();
  expect(found('press')).toEqual(['Man', 'Zone']);
  expect(found('man press')).toEqual(['Man']);
  expect(found('man')).toEqual(['Half court']);
});

test('a zone is played against only by what is meant for it', () => {
  expect(asked({ against: '2-3' })).toEqual([['Under'], [], []]);
});

test('a team that stands in its places needs less', () => {
  expect(asked({ situation: 'live', seconds: 10 })[1]).toEqual(['Middling']);
  expect(asked({ situation: 'live', seconds: 10, set: true })[0]).toContain('Middling');
});

test('a second short is too late, and the looks that come in time are named', () => {
  expect(asked({ seconds: 4, situation: 'live' })).toEqual([['Broken'], [], ['Quick', 'Middling', 'Slow']]);
  const { firstLook } = whatFits(plays, { seconds: 11, situation: 'any', set: false });
  expect(firstLook[0]!.inTime).toEqual(['rim']);
});

describe('what a coach says on the bench', () => {
  test.each([
    ['11', { seconds: 11 }],
    ['11 seconds left, side throw-in', { seconds: 11, situation: 'sideline' }],
    ['8,5 base', { seconds: 8.5, situation: 'baseline' }],
    ['14 against 2-3', { seconds: 14, against: '2-3' }],
    ['2-3, 6 left, under the ring', { seconds: 6, situation: 'baseline', against: '2-3' }],
    ['8 against a press', { seconds: 8, against: 'press' }],
    ['8, man press', { seconds: 8, against: 'man press' }],
    ['8, 2-2-1 press', { seconds: 8, against: '2-2-1 press' }],
    ['20 live, man, already set', { seconds: 20, situation: 'live', against: 'man', set: true }],
    ['0.4', { seconds: 0.4 }],
    ['noch 11 Sekunden, Einwurf von der Seite', { seconds: 11, situation: 'sideline' }],
    ['11 Seitenlinie', { seconds: 11, situation: 'sideline' }],
    ['8,5 Grundlinie', { seconds: 8.5, situation: 'baseline' }],
    ['6, Einwurf unter dem Korb, gegen 2-3', { seconds: 6, situation: 'baseline', against: '2-3' }],
    ['20 s, laufender Ball, gegen Mann', { seconds: 20, situation: 'live', against: 'man' }],
    ['8 gegen eine Presse', { seconds: 8, against: 'press' }],
    ['8, Mann-Presse', { seconds: 8, against: 'man press' }],
    ['8 gegen Ganzfeldpresse', { seconds: 8, against: 'press' }],
    ['14 nach der Auszeit, von überall', { seconds: 14, situation: 'any', set: true }],
    ['14, die Mannschaft steht auf ihren Plätzen', { seconds: 14, set: true }],
  ])('%s', (words, meant) => {
    expect(readBenchWords(words)).toEqual(meant);
  });

  test.each(['', 'soon', '2-3', '99999'])('%j says no time', (words) => {
    expect(readBenchWords(words)).toBeUndefined();
  });
});
