import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book, TextEdit } from '../../language/book/book.ts';
import { blockAtLine, blockOfKey, editFile, emptyBook, firstLineOf, lineCount, openFile, setFiles, textOf } from '../../language/book/book.ts';

const uri = 'file:///club/sets.play';

function open(text: string): Book {
  return openFile(emptyBook, uri, text);
}

function fileOf(book: Book) {
  return book.files.get(uri)!;
}

function keys(book: Book): string[] {
  return fileOf(book).blocks.map(block => block.key);
}

function edited(book: Book, ...edits: TextEdit[]): Book {
  return editFile(book, uri, edits);
}

function insert(line: number, character: number, text: string): TextEdit {
  return { range: { start: { line, character }, end: { line, character } }, text };
}

function replaceLine(line: number, length: number, text: string): TextEdit {
  return { range: { start: { line, character: 0 }, end: { line, character: length } }, text };
}

const club = [
  'notation 1',
  'level u14',
  '',
  'play "Harbour"',
  '  from box',
  '  1 passes to 2',
  'roster',
  '  4 "Ada"',
  'play "Pier"',
  '  from horns',
  '  2 cuts to rim',
  'alignment "Wide box"',
  '  1 at top',
  'play "harbour"',
  '  from stack',
];

describe('a file falls into blocks', () => {
  it('opens a block at each play, alignment, roster and book, and keeps what stands above as the header', () => {
    const book = open(club.join('\n'));
    expect(keys(book)).toEqual(['file', 'play:harbour', 'roster:unnamed', 'play:pier', 'alignment:wide-box', 'play:harbour#2']);
    expect(fileOf(book).blocks.map(block => block.kind)).toEqual(['file', 'play', 'roster', 'play', 'alignment', 'play']);
    expect(fileOf(book).blocks.map(block => block.name)).toEqual([undefined, 'Harbour', 'unnamed 1', 'Pier', 'Wide box', 'harbour']);
  });

  it('has a header without lines where the first line opens a play', () => {
    const [header, play] = fileOf(open('play "Harbour"')).blocks;
    expect(header).toEqual({ key: 'file', kind: 'file', lines: [] });
    expect(play!.lines).toHaveLength(1);
  });

  it('lets an opening word open its block though the rest of its line is broken', () => {
    const book = open('play "Harbour\n  1 passes to 2\nplay\n  2 passes to 3\nplay ??? \n  3 passes to 4');
    expect(fileOf(book).blocks.slice(1).map(block => block.kind)).toEqual(['play', 'play', 'play']);
    expect(new Set(keys(book)).size).toBe(4);
    expect(fileOf(book).blocks[2]!.name).toBe('unnamed 2');
  });

  it('finds the block of a line and the line of a block', () => {
    const file = fileOf(open(club.join('\n')));
    expect(blockAtLine(file, 5).block.key).toBe('play:harbour');
    expect(blockAtLine(file, 5).firstLine).toBe(3);
    expect(blockAtLine(file, 0).block.key).toBe('file');
    expect(blockAtLine(file, 900).block.key).toBe('play:harbour#2');
    expect(blockAtLine(file, -3).block.key).toBe('file');
    expect(firstLineOf(file, 'play:pier')).toBe(8);
    expect(firstLineOf(file, 'play:nowhere')).toBeUndefined();
    expect(blockOfKey(file, 'play:pier')!.name).toBe('Pier');
    expect(lineCount(file)).toBe(club.length);
  });

  it.each([
    ['', 1],
    ['\n', 2],
    ['play "A"', 1],
    ['play "A"\n', 2],
    ['\uFEFFplay "A"\r\n  1 passes to 2\r\n', 3],
    ['play "A"\r  1 passes to 2\r\r\n\n', 5],
    ['play "Fête 🏀"\n# 👩🏽‍🦽 to the left\n', 3],
    ['\r', 2],
    ['\ud83c lone\n\udfc0', 2],
  ])('gives back the text of %j as it was', (text, lines) => {
    const file = fileOf(open(text));
    expect(textOf(file)).toBe(text);
    expect(lineCount(file)).toBe(lines);
  });

  it('opens a play behind a byte order mark', () => {
    expect(keys(open('\uFEFFplay "Harbour"'))).toEqual(['file', 'play:harbour']);
  });
});

describe('after an edit', () => {
  const book = open(club.join('\n'));
  const block = (which: Book, key: string) => blockOfKey(fileOf(which), key)!;

  it('all other plays are the same objects', () => {
    const after = edited(book, replaceLine(5, club[5]!.length, '  1 passes to 3'));
    expect(keys(after)).toEqual(keys(book));
    for (const key of keys(book)) {
      if (key === 'play:harbour') expect(block(after, key)).not.toBe(block(book, key));
      else expect(block(after, key)).toBe(block(book, key));
    }
    expect(block(after, 'play:harbour').lines[1]).toBe(block(book, 'play:harbour').lines[1]);
  });

  it('a line put in above a play belongs to the play before, and the one below is not touched', () => {
    const after = edited(book, insert(8, 0, '  # a remark\n'));
    expect(block(after, 'play:pier')).toBe(block(book, 'play:pier'));
    expect(block(after, 'roster:unnamed').lines).toHaveLength(3);
  });

  it('a play whose opener is gone falls to the block above', () => {
    const after = edited(book, replaceLine(8, club[8]!.length, ''));
    expect(keys(after)).toEqual(['file', 'play:harbour', 'roster:unnamed', 'alignment:wide-box', 'play:harbour#2']);
    expect(block(after, 'roster:unnamed').lines).toHaveLength(5);
    expect(block(after, 'play:harbour')).toBe(block(book, 'play:harbour'));
  });

  it('a new opener parts a play in two', () => {
    const after = edited(book, insert(9, 0, 'play "Quay"\n'));
    expect(keys(after)).toContain('play:quay');
    expect(block(after, 'play:pier').lines).toHaveLength(1);
    expect(block(after, 'play:quay').lines).toHaveLength(3);
  });

  it('the second play of a name becomes the first when the first one is gone, and its lines stay', () => {
    const after = edited(book, { range: { start: { line: 3, character: 0 }, end: { line: 6, character: 0 } }, text: '' });
    expect(keys(after)).toEqual(['file', 'roster:unnamed', 'play:pier', 'alignment:wide-box', 'play:harbour']);
    expect(block(after, 'play:harbour').lines).toBe(block(book, 'play:harbour#2').lines);
    expect(block(after, 'play:pier')).toBe(block(book, 'play:pier'));
  });

  it('a play of the same name put in above takes the first number', () => {
    const after = edited(book, insert(3, 0, 'play "HARBOUR"\n'));
    expect(keys(after)).toEqual(['file', 'play:harbour', 'play:harbour#2', 'roster:unnamed', 'play:pier', 'alignment:wide-box', 'play:harbour#3']);
    expect(block(after, 'play:harbour').name).toBe('HARBOUR');
  });

  it('the same text typed again changes nothing at all', () => {
    expect(edited(book, { text: club.join('\n') })).toBe(book);
    expect(openFile(book, uri, club.join('\n'))).toBe(book);
    expect(edited(book, replaceLine(5, club[5]!.length, club[5]!))).toBe(book);
  });

  it('a whole new text keeps the plays that did not change', () => {
    const after = edited(book, { text: [...club.slice(0, 5), '  2 cuts to rim', ...club.slice(6)].join('\n') });
    expect(block(after, 'play:pier')).toBe(block(book, 'play:pier'));
    expect(block(after, 'play:harbour')).not.toBe(block(book, 'play:harbour'));
  });

  it('a line feed typed behind a lone carriage return joins it', () => {
    const after = edited(open('play "A"\rplay "B"'), insert(1, 0, '\n'));
    expect(textOf(fileOf(after))).toBe('play "A"\r\nplay "B"');
    expect(lineCount(fileOf(after))).toBe(2);
  });

  it('places past the end of a line or of the file mean their end', () => {
    const after = edited(open('play "A"\n1 holds'), insert(0, 99, ' # x'), insert(99, 3, ' # y'), insert(-1, -1, '# z\n'));
    expect(textOf(fileOf(after))).toBe('# z\nplay "A" # x\n1 holds # y');
  });

  it('a closed file is gone and an unknown one starts empty', () => {
    expect(setFiles(book, [[uri, undefined]]).files.size).toBe(0);
    expect(setFiles(book, [['file:///nowhere', undefined]])).toEqual(book);
    expect(textOf(editFile(emptyBook, uri, [insert(0, 0, 'play "A"')]).files.get(uri)!)).toBe('play "A"');
  });
});

describe('laws of the book', () => {
  const word = fc.constantFrom(
    'play "A"', 'play "B"', 'play "a"', 'play', 'play "', 'roster', 'alignment "A"', 'book "x"', 'step "S"', '1 passes to 2', '# play "C"', '', ' ', 'level u14',
    '\uFEFF', '🏀', 'é', 'pl', 'ay "A"', '#',
  );
  const piece = fc.oneof(word, fc.constantFrom('\n', '\n', '\r\n', '\r'));
  const text = fc.array(piece, { maxLength: 30 }).map(pieces => pieces.join(''));
  const position = fc.record({ line: fc.integer({ min: 0, max: 25 }), character: fc.integer({ min: 0, max: 20 }) });
  const edit = fc.oneof(
    { weight: 9, arbitrary: fc.record({ range: fc.record({ start: position, end: position }), text: fc.array(piece, { maxLength: 4 }).map(parts => parts.join('')) }) },
    { weight: 1, arbitrary: fc.record({ text }) },
  );

  /** Where each block starts, as the book says, from its key and from its line. */
  const startsIn = (file: ReturnType<typeof fileOf>) => [...file.blocks.map(({ key }) => firstLineOf(file, key)), ...Array.from({ length: lineCount(file) }, (_, line) => blockAtLine(file, line).firstLine)];

  it('after random edits a book equals one read from the start', () => {
    fc.assert(
      fc.property(text, fc.array(edit, { maxLength: 8 }), (start, edits) => {
        let book = open(start);
        for (const each of edits) {
          book = edited(book, each);
          const now = textOf(fileOf(book));
          expect(book).toEqual(open(now));
          expect(startsIn(fileOf(book))).toEqual(startsIn(fileOf(open(now))));
        }
        expect(edited(open(start), ...edits)).toEqual(book);
      }),
      { numRuns: 250 },
    );
  });

  it('applies an edit as an editor does', () => {
    fc.assert(
      fc.property(text, edit, (start, each) => {
        expect(textOf(fileOf(edited(open(start), each)))).toBe(asAnEditor(start, each));
      }),
      { numRuns: 500 },
    );
  });

  it('gives back any text as it was', () => {
    fc.assert(fc.property(fc.oneof(text, fc.string({ unit: 'binary' })), any => {
      expect(textOf(fileOf(open(any)))).toBe(any);
    }));
  });

  it('blocks away from the edit stay the same objects', () => {
    fc.assert(
      fc.property(text, edit, (start, each: TextEdit) => {
        if (each.range === undefined) return;
        const before = fileOf(open(start));
        const after = fileOf(editFile({ files: new Map([[uri, before]]) }, uri, [each]));
        const low = Math.min(each.range.start.line, each.range.end.line);
        let firstLine = 0;
        for (const block of before.blocks) {
          const end = firstLine + block.lines.length;
          // The block above may take in lines, so only blocks that end a block before the edit are sure to keep theirs.
          if (end < blockAtLine(before, low).firstLine) expect(after.blocks.some(each => each.lines === block.lines)).toBe(true);
          firstLine = end;
        }
      }),
    );
  });
});

/** The text after an edit, worked out on the whole string. */
function asAnEditor(text: string, edit: TextEdit): string {
  if (edit.range === undefined) return edit.text;
  const starts = [0];
  const ends: number[] = [];
  for (const end of text.matchAll(/\r\n|\n|\r/g)) {
    ends.push(end.index);
    starts.push(end.index + end[0].length);
  }
  ends.push(text.length);
  const offset = ({ line, character }: { line: number; character: number }) =>
    line >= starts.length ? text.length : Math.min(starts[line]! + character, ends[line]!);
  const [from, to] = [offset(edit.range.start), offset(edit.range.end)].sort((a, b) => a - b);
  return text.slice(0, from) + edit.text + text.slice(to);
}
