// What a coach can ask for at a place of a play, as changes of the text that have been read back.
import type { Message } from '../message/message.ts';
import { editFile, lineText, type Block, type Book } from '../book/book.ts';
import type { Court } from '../court/court.ts';
import { createLookup } from '../names/lookup.ts';
import type { FileEdit } from '../names/rename.ts';
import { nameKey } from '../names/name-key.ts';
import { definitionsOf, type NameKind } from '../names/definitions.ts';
import { readPlay } from '../play/read-play.ts';
import type { Reading } from '../play/reading.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** A place of a play's text, and all that is known of the play. */
export interface Here {
  readonly book: Book;
  readonly uri: string;
  readonly block: Block;
  /** Line of the file the block starts on. */
  readonly firstLine: number;
  readonly reading: Reading;
  readonly court: Court;
  readonly timeline: Timeline;
  /** Line of the block, from 0, and columns of what is selected in it. */
  readonly line: number;
  readonly at: number;
  readonly to: number;
}

/** Something that can be done here. What it writes is worked out when it is asked for. */
export interface Offer {
  /** Stays the same for the same place of the same text. */
  readonly id: string;
  /** As a button says it. */
  readonly title: Message;
  /** A mend stands among those of the findings. */
  readonly kind: 'rewrite' | 'extract' | 'mend';
  readonly write: () => Rewritten;
}

/** Edits in lines of their files, lines ended by `\n`; all count from the text as it is. */
export type Rewritten = { readonly edits: readonly FileEdit[] } | { readonly refused: Message };

export const refuse = (refused: Message): Rewritten => ({ refused });

export const treeAt = ({ block }: Here, line: number) => {
  const parsed = block.lines[line]?.parsed;
  return parsed?.fault === undefined ? parsed?.tree : undefined;
};

export const textAt = ({ block }: Here, line: number): string => {
  const found = block.lines[line];
  return found === undefined ? '' : lineText(found);
};

/** The columns of a line of the block replaced. */
export function replace({ uri, firstLine }: Pick<Here, 'uri' | 'firstLine'>, line: number, at: number, to: number, text: string): FileEdit {
  return { uri, range: { start: { line: firstLine + line, character: at }, end: { line: firstLine + line, character: to } }, text };
}

/** Lines of their own behind a line of the block. */
export function linesBehind(here: Here, line: number, lines: readonly string[]): FileEdit {
  const end = textAt(here, line).length;
  return replace(here, line, end, end, lines.map((text) => `\n${text}`).join(''));
}

/** Lines of their own above a line of the block. */
export function linesAbove(here: Here, line: number, lines: readonly string[]): FileEdit {
  return replace(here, line, 0, 0, lines.map((text) => `${text}\n`).join(''));
}

/** A line taken out with its end; the last of a file loses the end before it. */
export function withoutLine(here: Here, line: number): FileEdit {
  const { uri, firstLine, block } = here;
  if (block.lines[line]?.eol === '' && line > 0) return { uri, range: { start: { line: firstLine + line - 1, character: textAt(here, line - 1).length }, end: { line: firstLine + line, character: textAt(here, line).length } }, text: '' };
  return { uri, range: { start: { line: firstLine + line, character: 0 }, end: { line: firstLine + line + 1, character: 0 } }, text: '' };
}

/** The book after edits. */
export function after(book: Book, edits: readonly FileEdit[]): Book {
  const fromTheEnd = edits.toSorted((a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character);
  return fromTheEnd.reduce((now, edit) => editFile(now, edit.uri, [edit]), book);
}

/** The play read again after edits; undefined where it is no longer there. */
export function readAfter({ book, uri, block }: Here, edits: readonly FileEdit[]): Reading | undefined {
  const then = after(book, edits);
  const found = then.files.get(uri)?.blocks.find(({ key }) => key === block.key);
  return found && readPlay(found, createLookup(then, uri));
}

/** The edits, if the play they give is as it should be and nothing in it is wrong that was not before. */
export function proved(here: Here, edits: readonly FileEdit[], isMeant: (after: Reading) => boolean, otherwise: Message): Rewritten {
  const reading = readAfter(here, edits);
  if (reading === undefined || reading.problems.length > here.reading.problems.length || !isMeant(reading)) return refuse(otherwise);
  return { edits };
}

/** A name that nothing of this kind has yet: the wanted one, else with a number behind it. */
export function freshName({ book, uri, block }: Here, kind: NameKind, wanted: string): string {
  const blocks = kind === 'step' ? [block] : (book.files.get(uri)?.blocks ?? []);
  const taken = new Set(blocks.flatMap(definitionsOf).filter((name) => name.kind === kind).map(({ key }) => key));
  const plain = wanted.replace(/["“”]/g, '').trim();
  if (!taken.has(nameKey(plain))) return plain;
  for (let count = 2; ; count++) if (!taken.has(nameKey(`${plain} ${count}`))) return `${plain} ${count}`;
}

/** The last line of the block, or of a part of it, that says something; comments behind it belong to what follows. */
export function lastSaid({ block }: Here, from: number, to = block.lines.length - 1): number {
  for (let line = to; line > from; line--) {
    const { tree, fault } = block.lines[line]!.parsed;
    if (tree !== undefined || fault !== undefined) return line;
  }
  return from;
}
