import { describe, expect, it } from 'vitest';
import { emptyBook, setFiles } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { namedByBook } from '../../language/play/read-names.ts';

const play = (name: string): string => `play "${name}"\n  1 dribbles to left slot\n  look 1: jumper\n`;
const bookOf = (files: Readonly<Record<string, string>>) => setFiles(emptyBook, Object.entries(files).map(([name, text]) => [`file:///plays/${name}.play`, text]));

/** What the five of the first play of `tide` are called. */
function namesOf(files: Readonly<Record<string, string>>) {
  const [book, uri] = [bookOf(files), 'file:///plays/tide.play'];
  const compiled = createKeeper().playsOf(book, uri)[0]!;
  const named = namedByBook(compiled, book, uri);
  expect(named.timeline).toBe(compiled.timeline);
  expect(named.play.paces).toEqual(compiled.play.paces);
  return named.play.names;
}

const club = 'use "tide.play"\n\nroster "Otters"\n  1 "Wren", fast\n  2 "Pip"\n\nbook "Season"\n  section "Late": "Tide"\n';

describe('the roster of a book', () => {
  it('names the five of the plays that the book lists; its paces count in none that does not use it', () => {
    expect(namesOf({ tide: play('Tide'), club })).toEqual({ 1: 'Wren', 2: 'Pip' });
  });

  it.each([
    ['a play that it does not list', { tide: play('Ebb'), club }, {}],
    ['a play of that name in a file it does not use', { tide: play('Tide'), club: club.replace('tide', 'other'), other: play('Tide') }, {}],
    ['a play with a roster of its own', { tide: `roster\n  1 "Moss"\n\n${play('Tide')}`, club }, { 1: 'Moss' }],
    ['a play whose own roster has none of the five', { tide: `roster\n  11 "Moss"\n\n${play('Tide')}`, club }, {}],
    ['a play in the books of two teams', { tide: play('Tide'), club, other: club.replace('Wren', 'Juno') }, {}],
    ['where there is no roster', { tide: play('Tide'), club: club.replace(/roster[^]*book/, 'book') }, {}],
  ])('leaves %s as it is', (_, files, names) => {
    expect(namesOf(files)).toEqual(names);
  });
});
