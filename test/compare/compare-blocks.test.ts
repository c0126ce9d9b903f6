// What an assistant changed in the book, the roster and the alignments.
import { describe, expect, test } from 'vitest';
import { emptyBook, openFile, type BookFile } from '../../language/book/book.ts';
import { compareBlocks, type BlockChange } from '../../language/compare/compare-blocks.ts';

const files = (text: string): readonly BookFile[] => [...openFile(emptyBook, 'file:///ours.play', text).files.values()];
const compared = (was: string, is: string, renamed: Readonly<Record<string, string>> = {}) => compareBlocks(files(was), files(is), new Map(Object.entries(renamed)));
const book = 'book "Season"\n  section "Late": "Tide", "Ebb", "Reef"\n  section "Side": "Spray"\n  section "Zone": "Eddy", "Shoal"\n';
const sections = (is: string, renamed?: Readonly<Record<string, string>>) => {
  const changes = compared(book, is, renamed);
  expect(changes.length).toBeLessThanOrEqual(1);
  return changes[0]?.sections ?? [];
};

describe('a book', () => {
  test('that is set otherwise or remarked on is the same', () => {
    expect(compared(book, book.replaceAll('\n', '\r\n').replace('"Late"', '"late"').replace(': "Spray"', ':   "Spray"  # by hand')).flatMap(({ sections: all }) => all).filter(({ kind }) => kind !== 'renamed')).toEqual([]);
    expect(compared(book, book.replace('"Ebb",', '"Ebb" ,'))).toEqual([]);
  });
  test('tells a play that moved to another section, with both', () => {
    expect(sections(book.replace(', "Ebb"', '').replace('"Spray"', '"Spray", "Ebb"'))).toEqual([{ kind: 'moved', play: 'Ebb', from: 'Late', to: 'Side' }]);
  });
  test('tells a play that was put in, and one that was taken out, with where it still stands', () => {
    expect(sections(book.replace('"Spray"', '"Spray", "Tide"'))).toEqual([{ kind: 'put-in', play: 'Tide', to: 'Side' }]);
    expect(sections(book.replace('"Tide", ', ''))).toEqual([{ kind: 'taken-out', play: 'Tide', from: 'Late', still: [] }]);
    expect(compared(book.replace('"Spray"', '"Spray", "Tide"'), book)[0]!.sections).toEqual([{ kind: 'taken-out', play: 'Tide', from: 'Side', still: ['Late'] }]);
  });
  test('tells another order of plays, and of sections, and of nothing else', () => {
    expect(sections(book.replace('"Tide", "Ebb", "Reef"', '"Reef", "Tide", "Ebb"'))).toEqual([{ kind: 'order', section: 'Late', names: ['Reef', 'Tide', 'Ebb'] }]);
    const [head, late, side, zone] = book.split('\n');
    expect(sections([head, zone, late, side, ''].join('\n'))).toEqual([{ kind: 'order', names: ['Zone', 'Late', 'Side'] }]);
    expect(sections(book.replace('"Ebb"', '"Ebb", "Foam"'))).toEqual([{ kind: 'put-in', play: 'Foam', to: 'Late' }]);
  });
  test('tells a section that is new with its plays, one that is gone, and one that has another name', () => {
    expect(sections(`${book}  section "Press": "Squall"\n`)).toEqual([{ kind: 'came', section: 'Press', plays: ['Squall'] }]);
    expect(sections(book.replace('  section "Side": "Spray"\n', ''))).toEqual([
      { kind: 'went', section: 'Side', plays: ['Spray'] },
      { kind: 'taken-out', play: 'Spray', from: 'Side', still: [] },
    ]);
    expect(sections(book.replace('"Late"', '"The end"'))).toEqual([{ kind: 'renamed', was: 'Late', section: 'The end' }]);
    expect(sections(book.replace('"Late": "Tide", "Ebb", "Reef"', '"The end": "Tide", "Ebb"').replace('"Spray"', '"Spray", "Reef"'))).toEqual([
      { kind: 'renamed', was: 'Late', section: 'The end' },
      { kind: 'moved', play: 'Reef', from: 'The end', to: 'Side' },
    ]);
  });
  test('does not take a new section for one that is gone because it stands in its place', () => {
    const changes = sections(book.replace('"Side": "Spray"', '"Press": "Squall"'));
    expect(changes.map(({ kind }) => kind)).toEqual(['came', 'went', 'taken-out']);
  });
  test('knows a play under its new name', () => {
    expect(sections(book.replace('"Ebb"', '"Neap"'), { ebb: 'Neap' })).toEqual([]);
    expect(sections(book, { ebb: 'Neap' })).toEqual([]);
    expect(sections(book.replace('"Ebb"', '"Neap"')).map(({ kind }) => kind)).toEqual(['put-in', 'taken-out']);
  });
  test('that is called otherwise is the same; a second one is new, with its sections', () => {
    expect(compared(book, book.replace('"Season"', '"Next season"'))).toMatchObject([{ what: 'book', kind: 'changed', was: 'Season', name: 'Next season', sections: [] }]);
    expect(compared(book, `${book}book "Youth"\n  section "All": "Tide"\n`)).toMatchObject([{ kind: 'came', name: 'Youth', sections: [{ kind: 'came', section: 'All', plays: ['Tide'] }] }]);
  });
});

const said = ({ what, kind, name, lines, usedBy }: BlockChange) => [what, kind, name, ...lines.map((line) => `${line.kind}: ${line.text}`), ...(usedBy.length > 0 ? [`used by ${usedBy.join()}`] : [])].join(' | ');

test('a roster tells whom it has now, and who is quicker', () => {
  const roster = 'roster "Otters"\n  1 "Wren", fast\n  2 "Pip"\n';
  expect(compared(roster, roster.replace('"Wren", fast', '"Wren"').replace('\n  2 "Pip"', '\n  2 "Heron"  # new')).map(said)).toEqual(['roster | changed | Otters | went: 1 "Wren", fast | went: 2 "Pip" | came: 1 "Wren" | came: 2 "Heron"']);
  expect(compared(roster, roster.replace('"Otters"', '"Otters U15"'))).toMatchObject([{ was: 'Otters', name: 'Otters U15', lines: [] }]);
});

test('an alignment of his own tells what moved in it, and which plays stand in it, mirrored ones too', () => {
  const text = 'alignment "Dock"\n  1 top\n  2 left wing\nalignment "Dock left" mirrors "Dock"\nplay "Tide"\n  from "Dock"\nplay "Ebb"\n  from "Dock left"\nplay "Reef"\n  from horns\n';
  expect(compared(text, text.replace('2 left wing', '2 left corner')).map(said)).toEqual(['alignment | changed | Dock | went: 2 left wing | came: 2 left corner | used by Tide,Ebb']);
  expect(compared(text, text.replace('mirrors "Dock"', 'mirrors "Pier"')).map(said)).toEqual(['alignment | changed | Dock left | went: mirrors "Dock" | came: mirrors "Pier" | used by Ebb']);
  expect(compared(text, text.replaceAll('"Dock left"', '"Pier"')).map(({ was, name }) => [was, name])).toEqual([['Dock left', 'Pier']]);
});

test('a spot of his own tells where it is now', () => {
  const text = 'spot "Perch" is left wing\nplay "Tide"\n  from horns\n  1 dribbles to "Perch"\n';
  expect(compared(text, text.replace('is left wing', 'is at left corner')).map(said)).toEqual(['spot | changed | Perch | went: is left wing | came: is at left corner | used by Tide']);
});
