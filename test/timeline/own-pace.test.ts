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

  describe('that the plays of its book do not count', () => {
    const club = 'use "plays.play"\nroster "Otters"\n  1 "Wren"\n  2 "Pip", fast\n  7 "Rook", slow\nbook "Season"\n  section "Late": "Cut"\n';
    const own = text.replace('use "team.play"\n', '');
    const told = (book: ReturnType<typeof bookWith>) => createKeeper().findingsOf(book, team).filter(({ code }) => code === 'paces-not-counted').map(({ severity, place: { line } }) => `${severity} ${line}`);
    const opened = (theClub: string, thePlays: string) => openFile(openFile(emptyBook, plays, thePlays), team, theClub);

    it('are told once, at the first', () => expect(told(opened(club, own))).toEqual(['hint 2']));

    it.each([
      ['a play counts them', club, text],
      ['the plays stand in the same file', `${club}${own.replace('level u14', '')}`.replace('use "plays.play"\n', 'level u14\n'), ''],
      ['no book lists a play', club.slice(0, club.indexOf('book')), own],
      ['a play that is listed is not there', club.replace('"Cut"', '"Cut", "Nobody"'), own],
      ['there are only names', club.replaceAll(/, (?:fast|slow)/g, ''), own],
    ])('%s: nothing is told', (_, theClub, thePlays) => expect(told(opened(theClub, thePlays))).toEqual([]));
  });
});
