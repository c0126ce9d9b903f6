import { describe, expect, it } from 'vitest';
import { editFile, emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';

const team = 'file:///club/team.play';
const plays = 'file:///club/plays.play';
const roster = (pace: string): string => `roster "Otters"\n  2 "Pip"${pace}\n  7 "Rook", fast\n`;
const text = 'use "team.play"\nlevel u14\nplay "Cut"\n  from horns\n  2 cuts to left corner\n  3 cuts to right slot\n  look 2: jumper\n';

function bookWith(pace: string) {
  return openFile(openFile(emptyBook, team, roster(pace)), plays, text);
}

function arrivals(book: ReturnType<typeof bookWith>, keeper = createKeeper()): readonly (number | undefined)[] {
  const run = keeper.playsOf(book, plays)[0]!.timeline.runs[0]!;
  return ['start/2.1:arrive', 'start/3.1:arrive'].map((id) => run.events.find((event) => event.id === id)?.at);
}

describe('own paces of a roster', () => {
  it('a fast man of the roster is there sooner, a slow one later, and nobody else is touched', () => {
    const [usual, fast, slow, timed] = ['', ', fast', ', slow', ', 20 m in 4.4 s'].map((pace) => arrivals(bookWith(pace)));
    expect(fast![0]).toBeLessThan(usual![0]!);
    expect(slow![0]).toBeGreaterThan(usual![0]!);
    expect(timed![0]).toBeGreaterThan(slow![0]!);
    for (const other of [fast, slow, timed]) expect(other![1]).toBe(usual![1]);
  });

  it('a pace changed in the roster changes the plays of the files that use it', () => {
    const keeper = createKeeper();
    const book = bookWith('');
    const before = arrivals(book, keeper);
    const after = arrivals(editFile(book, team, [{ range: { start: { line: 1, character: 9 }, end: { line: 1, character: 9 } }, text: ', slow' }]), keeper);
    expect(after[0]).toBeGreaterThan(before[0]!);
  });
});
