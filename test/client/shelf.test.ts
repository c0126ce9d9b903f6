import { expect, test } from 'vitest';
import { choicesOf, everything, fits, isFiltering } from '../../client/playbook/filter.ts';
import { playsOn, shelvesOf } from '../../client/playbook/shelf.ts';
import { playEntry } from './play-entry.ts';

const plays = [playEntry('Oar', { first: 5, all: 7, tags: ['quick'] }), playEntry('Reed', { against: '2-3', from: 'box' }), playEntry('Loose', { uri: 'file:///b.play' })];
const books = [{ uri: 'file:///club.play', name: 'Ours', line: 3, sections: [{ name: 'Quick', line: 4, plays: [{ name: 'Oar', play: 0 }, { name: 'Gone', play: null }, { name: 'Reed', play: 1 }] }, { name: 'Later', line: 5, plays: [] }] }];

test('plays lie in the sections of their book, the others in their files', () => {
  const shelves = shelvesOf({ plays, books }, everything);
  expect(shelves).toMatchObject([
    { kind: 'book', name: 'Ours', inside: [{ kind: 'section', name: 'Quick', inside: [{ kind: 'play', play: { name: 'Oar' }, at: { line: 4, index: 0, of: 3 } }, { kind: 'missing', name: 'Gone' }, { kind: 'play', play: { name: 'Reed' }, at: { index: 2 } }] }, { name: 'Later', inside: [] }] },
    { kind: 'file', uri: 'file:///b.play', inside: [{ play: { name: 'Loose' } }] },
  ]);
});

test('a filter leaves out empty shelves, and a play keeps its place in the line', () => {
  const shelves = shelvesOf({ plays, books }, { ...everything, against: ['2-3'] });
  expect(shelves).toMatchObject([{ kind: 'book', inside: [{ name: 'Quick', inside: [{ play: { name: 'Reed' }, at: { index: 2, of: 3 } }] }] }]);
  expect(shelves).toHaveLength(1);
});

test('every shelf has an id of its own', () => {
  const ids: string[] = [];
  const collect = (list: ReturnType<typeof shelvesOf>): void => list.forEach((shelf) => (ids.push(shelf.id), 'inside' in shelf && collect(shelf.inside)));
  collect(shelvesOf({ plays: [...plays, playEntry('Loose', { uri: 'file:///c.play' })], books: [...books, ...books] }, everything));
  expect(new Set(ids).size).toBe(ids.length);
});

test('one word of each kind has to fit', () => {
  const [oar, reed] = plays as [typeof plays[0], typeof plays[0]];
  expect(fits(oar!, { ...everything, against: ['man', '2-3'], tags: ['quick'] })).toBe(true);
  expect(fits(reed!, { ...everything, against: ['man', '2-3'], tags: ['quick'] })).toBe(false);
});

test('with so many seconds left a play fits whose first look comes in time', () => {
  const [oar] = plays;
  expect([4, 5, 6].map((seconds) => fits(oar!, { ...everything, seconds }))).toEqual([false, true, true]);
  expect(fits(playEntry('No look', { first: null }), { ...everything, seconds: 60 })).toBe(false);
  expect(isFiltering(everything)).toBe(false);
  expect(isFiltering({ ...everything, seconds: 0 })).toBe(true);
});

test('only words that the plays have can be chosen', () => {
  expect(choicesOf(plays)).toEqual({ against: ['2-3', 'man'], from: ['box', 'horns'], tags: ['quick'] });
});

test('they stand in the order of the alphabet, whether a name of the coach’s own begins with a capital or not', () => {
  expect(choicesOf(['horns', 'Gaps', 'box', 'Four low'].map((from) => playEntry(from, { from }))).from).toEqual(['box', 'Four low', 'Gaps', 'horns']);
});

test('a page has each play once, as it is listed, with the section of its book', () => {
  const shelves = shelvesOf({ plays, books: [...books, { ...books[0]!, name: 'Again' }] }, everything);
  expect(playsOn(shelves).map(({ play, section }) => [play.name, section])).toEqual([['Oar', 'Quick'], ['Reed', 'Quick'], ['Loose', undefined]]);
  expect(playsOn([shelves.at(-1)!]).map(({ play }) => play.name)).toEqual(['Loose']);
});
