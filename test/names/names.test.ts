import { describe, expect, it } from 'vitest';
import { editFile, emptyBook, openFile, setFiles } from '../../language/book/book.ts';
import type { Book } from '../../language/book/book.ts';
import { definitionsOf, usesOf } from '../../language/names/definitions.ts';
import { createLookup, stillAnswers } from '../../language/names/lookup.ts';
import { resolveUse } from '../../language/names/uris.ts';
import { useProblems } from '../../language/names/use-problems.ts';
import { readPlay } from '../../language/play/read-play.ts';

const uri = 'file:///club/sets.play';
const shared = 'file:///club/alignments.play';

function club(sets: string, alignments?: string): Book {
  const book = openFile(emptyBook, uri, sets);
  return alignments === undefined ? book : openFile(book, shared, alignments);
}

const text = [
  'spot "dock" is 1 m below left wing',
  'play "Pier" continues "Harbour" after "Zip"',
  '  from "Wide box"',
  '  step "Zip"',
  '    2 cuts to "dock"',
  '    look 2 "corner": three',
  '  step "Back" instead of "Zip"',
  'roster "U14"',
  '  4 "Ada 🏀"',
];

describe('the names of a block', () => {
  const blocks = club(text.join('\n')).files.get(uri)!.blocks;
  const say = (names: ReturnType<typeof usesOf>, first: number) => names.map(({ kind, place }) => `${kind} ${text[first + place.line]!.slice(place.at, place.to)}`);

  it('are given by plays, steps, looks, spots and rosters, without their quotes', () => {
    expect(say(definitionsOf(blocks[0]!), 0)).toEqual(['spot dock']);
    expect(say(definitionsOf(blocks[1]!), 1)).toEqual(['play Pier', 'step Zip', 'look corner', 'step Back']);
    expect(say(definitionsOf(blocks[2]!), 7)).toEqual(['roster U14', 'roster-entry Ada 🏀']);
  });

  it('are used by counters, alignments, places and copies', () => {
    expect(say(usesOf(blocks[1]!), 1)).toEqual(['play Harbour', 'step Zip', 'alignment Wide box', 'spot dock', 'step Zip']);
  });

  it('are worked out once for a block that did not change', () => {
    expect(definitionsOf(blocks[1]!)).toBe(definitionsOf(blocks[1]!));
  });
});

describe('the file that another uses', () => {
  it.each([
    ['file:///club/sets.play', 'alignments.play', 'file:///club/alignments.play'],
    ['file:///club/sets.play', 'alignments', 'file:///club/alignments.play'],
    ['file:///club/u14/sets.play', '../alignments.play', 'file:///club/alignments.play'],
    ['file:///club/u14/sets.play', './last/shots.play', 'file:///club/u14/last/shots.play'],
    ['file:///club/sets.play', 'Última jugada.play', 'file:///club/%C3%9Altima%20jugada.play'],
    ['file:///c%3A/club/sets.play', '..\\all.play', 'file:///c%3A/all.play'],
    ['vscode-vfs://host/club/sets.play', 'a.play', 'vscode-vfs://host/club/a.play'],
    ['untitled:Untitled-1', 'a.play', 'untitled:a.play'],
    ['file:///club/sets.play', '/other/a.play', 'file:///other/a.play'],
    ['file:///a.play', '../../../b.play', 'file:///b.play'],
    ['file:///a.play', '\ud800', 'file:///\ud800.play'],
  ])('%s says "%s": %s', (from, name, expected) => {
    expect(resolveUse(from, name)).toBe(expected);
  });

  it('answers for plays, alignments and spots that the first lacks', () => {
    const book = club('use "alignments"\nplay "A"\n  from "Wide box"\n  2 cuts to "dock"', 'spot "dock" is 1 m below left wing\nalignment "Wide box"\n  1 at nail');
    const { play, problems } = readPlay(book.files.get(uri)!.blocks[1]!, createLookup(book, uri));
    expect(problems).toEqual([]);
    expect(play.start.places[1].value).toEqual({ kind: 'spot', name: 'nail' });
    expect(Object.keys(play.spots)).toEqual(['dock']);
  });

  it('counts less than the file itself', () => {
    const book = club('use "alignments"\nalignment "Wide box"\n  1 at top', 'alignment "Wide box"\n  1 at nail');
    expect(createLookup(book, uri).alignment('wide  BOX')!.uri).toBe(uri);
  });

  it('does no harm in a circle, and is reported', () => {
    const book = club('use "alignments"\nuse "nowhere"\nplay "A"\n  from "Wide box"', 'use "sets.play"');
    expect(createLookup(book, uri).alignment('Wide box')).toBeUndefined();
    expect(useProblems(book, uri)).toEqual([
      { code: 'use-circle', part: 'use:0', params: { name: 'alignments' } },
      { code: 'unknown-file', part: 'use:1', params: { name: 'nowhere' } },
    ]);
    expect(useProblems(club('use "sets.play"'), uri).map(({ code }) => code)).toEqual(['use-circle']);
    expect(useProblems(book, 'file:///unknown')).toEqual([]);
  });
});

describe('what a reading asked for', () => {
  const play = (book: Book) => {
    const lookup = createLookup(book, uri);
    readPlay(book.files.get(uri)!.blocks[1]!, lookup);
    return lookup.asked;
  };
  const book = club('level u14\nplay "A"\n  2 cuts to "dock"\nplay "B"\n  1 drives', 'level u16');
  const edit = (which: Book, line: number, words: string) => editFile(which, uri, [{ range: { start: { line, character: 0 }, end: { line, character: 0 } }, text: words }]);

  it('holds its misses, so that a new spot wakes the play that lacked it', () => {
    const asked = play(book);
    expect(asked.map(({ kind, name, answer }) => [kind, name, answer !== undefined])).toEqual([['settings', '', true], ['roster', '', false], ['spot', 'dock', false]]);
    expect(stillAnswers(asked, book)).toBe(true);
    expect(stillAnswers(asked, edit(book, 0, 'spot "dock" is 1 m below left wing\n'))).toBe(false);
  });

  it('still holds after an edit of another play or a comment in the header, and no longer after another level', () => {
    const asked = play(book);
    expect(stillAnswers(asked, edit(book, 4, '  4 rolls\n'))).toBe(true);
    expect(stillAnswers(asked, edit(book, 0, '# a remark\n'))).toBe(true);
    expect(stillAnswers(asked, edit(book, 0, 'level u10\n'))).toBe(false);
    expect(stillAnswers(asked, edit(book, 0, 'rules nba\n'))).toBe(false);
  });

  it('asks again when the file that has the answer changes or goes', () => {
    const two = club('use "alignments"\nplay "A"\n  from "Wide box"', 'alignment "Wide box"\n  1 at nail');
    const asked = play(two);
    expect(stillAnswers(asked, openFile(two, shared, '# moved down\nalignment "Wide box"\n  1 at nail'))).toBe(true);
    expect(stillAnswers(asked, openFile(two, shared, 'alignment "Wide box"\n  1 at top'))).toBe(false);
    expect(stillAnswers(asked, setFiles(two, [[shared, undefined]]))).toBe(false);
  });
});
