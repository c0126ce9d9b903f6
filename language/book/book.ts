import type { BlockKey } from './places.ts';
import type { Block, Group } from './blocks.ts';
import { baseOf, blockOf, groupLines } from './blocks.ts';
import type { BookLine } from './lines.ts';
import { cutLines, lineText, readLine } from './lines.ts';

export type { Block, BlockKind } from './blocks.ts';
export type { BookLine, LineEnd } from './lines.ts';
export { lineText } from './lines.ts';

/** All files a coach works with, by uri. Never changed: every function gives a new one that shares what stayed the same. */
export interface Book {
  readonly files: ReadonlyMap<string, BookFile>;
}

export interface BookFile {
  readonly uri: string;
  /** In text order; the first is the file's header, maybe without lines. */
  readonly blocks: readonly Block[];
}

/** Lines from 0, characters in UTF-16 units; past the end means the end. */
export interface TextPosition {
  readonly line: number;
  readonly character: number;
}

/** One change of a text. Without a range it replaces all of it. */
export interface TextEdit {
  readonly range?: { readonly start: TextPosition; readonly end: TextPosition };
  readonly text: string;
}

export const emptyBook: Book = { files: new Map() };

const emptyHeader: Block = { key: 'file', kind: 'file', lines: [] };

/** Reads a file, or reads it again: blocks whose lines are the same stay the same objects. */
export function openFile(book: Book, uri: string, text: string): Book {
  const file = book.files.get(uri);
  return withFile(book, file === undefined ? readFile(uri, text) : replaceAll(file, text));
}

/** Many files at once, for the price of one book; without a text a file is closed. */
export function setFiles(book: Book, texts: Iterable<readonly [uri: string, text: string | undefined]>): Book {
  const files = new Map(book.files);
  for (const [uri, text] of texts) {
    const known = files.get(uri);
    if (text === undefined) files.delete(uri);
    else files.set(uri, known === undefined ? readFile(uri, text) : replaceAll(known, text));
  }
  return { files };
}

/** Applies the edits one after the other, each to the text the one before has left. An unknown uri counts as an empty file. */
export function editFile(book: Book, uri: string, edits: readonly TextEdit[]): Book {
  const before = book.files.get(uri) ?? readFile(uri, '');
  const after = edits.reduce(applyEdit, before);
  return after === book.files.get(uri) ? book : withFile(book, after);
}

/** The file's text, character for character as it was read. */
export function textOf(file: BookFile): string {
  let text = '';
  for (const block of file.blocks) for (const line of block.lines) text += lineText(line) + line.eol;
  return text;
}

/** The block a line of the file stands in; a line past the end gives the last block. */
export function blockAtLine(file: BookFile, line: number): { readonly block: Block; readonly firstLine: number } {
  const { index, firstLine } = locate(file.blocks, line);
  return { block: file.blocks[index]!, firstLine };
}

/** The blocks of which a line stands between two lines of the file, both included, each with the line it starts on. */
export function blocksBetween({ blocks }: BookFile, from: number, to: number): readonly { readonly block: Block; readonly firstLine: number }[] {
  const starts = startsOf(blocks);
  return blocks.flatMap((block, at) => (starts[at]! <= to && starts[at]! + block.lines.length > from ? [{ block, firstLine: starts[at]! }] : []));
}

/** The line of the file a block starts on, or `undefined` where there is no such block. */
export function firstLineOf(file: BookFile, key: BlockKey): number | undefined {
  const index = file.blocks.findIndex(block => block.key === key);
  return index < 0 ? undefined : startsOf(file.blocks)[index];
}

/** The block of that key, or `undefined`. */
export function blockOfKey(file: BookFile, key: BlockKey): Block | undefined {
  return file.blocks.find(block => block.key === key);
}

/** How many lines the file has; an empty file has one. */
export function lineCount(file: BookFile): number {
  const last = file.blocks.length - 1;
  return startsOf(file.blocks)[last]! + file.blocks[last]!.lines.length;
}

// ---- cold reading ----------------------------------------------------------------------------------------------

function readFile(uri: string, text: string): BookFile {
  const groups = groupLines(cutLines(text).map(line => readLine(line.text, line.eol)));
  return { uri, blocks: keyed(startsWithHeader(groups) ? [] : [emptyHeader], groups) };
}

function startsWithHeader(groups: readonly Group[]): boolean {
  return groups[0]?.kind === 'file';
}

function keyed(before: readonly Block[], groups: readonly Group[]): Block[] {
  const counts = new Map<string, number>();
  const blocks = [...before];
  for (const group of groups) {
    const ordinal = (counts.get(group.base) ?? 0) + 1;
    counts.set(group.base, ordinal);
    blocks.push(blockOf(group, ordinal));
  }
  return blocks;
}

function withFile(book: Book, file: BookFile): Book {
  if (book.files.get(file.uri) === file) return book;
  return { files: new Map(book.files).set(file.uri, file) };
}

// ---- edits: only the blocks between the first and the last touched line are grouped again ---------------------------

interface CutLine {
  readonly text: string;
  readonly eol: BookLine['eol'];
}

function applyEdit(file: BookFile, edit: TextEdit): BookFile {
  if (edit.range === undefined) return replaceAll(file, edit.text);
  const [start, end] = inOrder(edit.range.start, edit.range.end).map(onThePage) as [TextPosition, TextPosition];
  let first = locate(file.blocks, start.line);
  const last = locate(file.blocks, end.line);
  const firstLine = file.blocks[first.index]!.lines[first.local]!;
  const lastLine = file.blocks[last.index]!.lines[last.local]!;
  let head = lineText(firstLine).slice(0, start.line > first.firstLine + first.local ? undefined : start.character);
  const tail = lineText(lastLine).slice(end.line > last.firstLine + last.local ? Infinity : end.character) + lastLine.eol;

  // A line feed typed behind a lone carriage return joins it to one line end.
  const before = head === '' && first.firstLine + first.local > 0 ? lineAt(file.blocks, first.firstLine + first.local - 1) : undefined;
  if (before?.eol === '\r') {
    head = lineText(before) + before.eol;
    first = locate(file.blocks, first.firstLine + first.local - 1);
  }
  const lines = cutLines(head + edit.text + tail);
  if (lastLine.eol !== '') lines.pop();
  return replaceLines(file, first.firstLine + first.local, last.firstLine + last.local + 1, lines);
}

function replaceAll(file: BookFile, text: string): BookFile {
  return replaceLines(file, 0, lineCount(file), cutLines(text));
}

/** Puts `lines` in the place of the file's lines `[from, to)`. */
function replaceLines(file: BookFile, from: number, to: number, lines: readonly CutLine[]): BookFile {
  const { blocks } = file;
  let head = 0;
  const most = Math.min(to - from, lines.length);
  const cursor = lineCursor(blocks, from);
  while (head < most && isSame(cursor.next(), lines[head]!)) head++;
  let tail = 0;
  const back = lineCursor(blocks, to - 1);
  while (tail < most - head && isSame(back.previous(), lines[lines.length - 1 - tail]!)) tail++;
  if (head + tail === lines.length && head + tail === to - from) return file;

  const fresh = lines.slice(head, lines.length - tail).map(line => readLine(line.text, line.eol));
  return regroup(file, from + head, to - tail, fresh);
}

function regroup(file: BookFile, from: number, to: number, fresh: readonly BookLine[]): BookFile {
  const { blocks } = file;
  // Lines put in just above an opener stand at the end of the block above it.
  const first = to > from || from === 0 ? locate(blocks, from) : endOf(locate(blocks, from - 1));
  const last = to > from ? endOf(locate(blocks, to - 1)) : first;
  const before = blocks[first.index]!.lines.slice(0, first.local);
  const after = blocks[last.index]!.lines.slice(last.local);
  let low = first.index;
  let groups = groupLines([...before, ...fresh, ...after]);
  // Lines that have lost their opener go to the block above.
  if (startsWithHeader(groups) && low > 0) {
    low--;
    groups = groupLines([...blocks[low]!.lines, ...groups.flatMap(group => group.lines)]);
  }
  const replaced = blocks.slice(low, last.index + 1);
  const header = low === 0 && !startsWithHeader(groups) ? [emptyHeader] : [];
  const between = settleKeys(replaced, header, groups);
  if (between !== undefined) return { uri: file.uri, blocks: spliced(blocks, low, last.index + 1, between) };
  return { uri: file.uri, blocks: renumbered(blocks, low, last.index + 1, header, groups) };
}

/** The new blocks where the names in this stretch are what they were, one for one: every key stays. */
function settleKeys(replaced: readonly Block[], header: readonly Block[], groups: readonly Group[]): Block[] | undefined {
  if (replaced.length !== header.length + groups.length) return undefined;
  const blocks: Block[] = [...header];
  for (const [at, group] of groups.entries()) {
    const old = replaced[header.length + at]!;
    if (baseOf(old.key) !== group.base) return undefined;
    blocks.push(isUntouched(old, group) ? old : blockOf(group, ordinalOf(old.key)));
  }
  return blocks;
}

/** Openers came, went or changed their names: blocks of those names are numbered again, all others stay as they are. */
function renumbered(blocks: readonly Block[], low: number, high: number, header: readonly Block[], groups: readonly Group[]): Block[] {
  const counts = new Map<string, number>();
  for (let at = low; at < high; at++) counts.set(baseOf(blocks[at]!.key), 0);
  for (const group of groups) counts.set(group.base, 0);
  const nextOrdinal = (base: string) => {
    const ordinal = counts.get(base)! + 1;
    counts.set(base, ordinal);
    return ordinal;
  };
  const keep = (block: Block): Block => {
    const base = baseOf(block.key);
    if (!counts.has(base)) return block;
    const ordinal = nextOrdinal(base);
    return ordinalOf(block.key) === ordinal ? block : renamed(block, base, ordinal);
  };
  const byFirstLine = new Map(blocks.slice(low, high).map(block => [block.lines[0], block]));
  const result = blocks.slice(0, low).map(keep);
  result.push(...header);
  for (const group of groups) {
    const old = byFirstLine.get(group.lines[0]);
    const ordinal = nextOrdinal(group.base);
    const same = old !== undefined && isUntouched(old, group) && ordinalOf(old.key) === ordinal;
    result.push(same ? old : blockOf(group, ordinal));
  }
  for (let at = high; at < blocks.length; at++) result.push(keep(blocks[at]!));
  return result;
}

function isUntouched(block: Block, group: Group): boolean {
  const { lines } = block;
  return lines.length === group.lines.length && lines.every((line, at) => line === group.lines[at]);
}

function renamed(block: Block, base: string, ordinal: number): Block {
  const group = groupLines(block.lines)[0]!;
  return blockOf({ ...group, base, lines: block.lines }, ordinal);
}

function ordinalOf(key: BlockKey): number {
  const at = key.indexOf('#');
  return at < 0 ? 1 : Number(key.slice(at + 1));
}

function spliced(blocks: readonly Block[], low: number, high: number, between: readonly Block[]): Block[] {
  const result = blocks.slice(0, low).concat(between, blocks.slice(high));
  startsByBlocks.set(result, splicedStarts(startsOf(blocks), low, high, between));
  return result;
}

/** Where the blocks then start, out of where they started: to look into every block of a long file would cost more than the edit itself. */
function splicedStarts(starts: readonly number[], low: number, high: number, between: readonly Block[]): readonly number[] {
  const result = starts.slice(0, low);
  let line = starts[low] ?? 0;
  for (const block of between) {
    result.push(line);
    line += block.lines.length;
  }
  const rest = starts.slice(high);
  const moved = line - (rest[0] ?? line);
  return result.concat(moved === 0 ? rest : rest.map((start) => start + moved));
}

// ---- finding lines ----------------------------------------------------------------------------------------------

interface Located {
  /** Index of the block, the file's line it starts on, and the line's number within it. */
  readonly index: number;
  readonly firstLine: number;
  readonly local: number;
}

/** The line each block starts on; worked out once for a list of blocks. */
const startsByBlocks = new WeakMap<readonly Block[], readonly number[]>();

function startsOf(blocks: readonly Block[]): readonly number[] {
  const known = startsByBlocks.get(blocks);
  if (known !== undefined) return known;
  const starts = new Array<number>(blocks.length);
  let line = 0;
  for (let index = 0; index < blocks.length; index++) {
    starts[index] = line;
    line += blocks[index]!.lines.length;
  }
  startsByBlocks.set(blocks, starts);
  return starts;
}

function locate(blocks: readonly Block[], line: number): Located {
  const wanted = Math.max(0, Number.isFinite(line) ? Math.trunc(line) : Number.MAX_SAFE_INTEGER);
  const starts = startsOf(blocks);
  // The last block that starts at or above the line; a header without lines starts where the first play does.
  let low = 0;
  let high = blocks.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= wanted) low = middle;
    else high = middle - 1;
  }
  const firstLine = starts[low]!;
  return { index: low, firstLine, local: Math.min(wanted - firstLine, Math.max(0, blocks[low]!.lines.length - 1)) };
}

/** Just behind a line. */
function endOf(located: Located): Located {
  return { ...located, local: located.local + 1 };
}

function lineAt(blocks: readonly Block[], line: number): BookLine | undefined {
  const { index, local } = locate(blocks, line);
  return blocks[index]!.lines[local];
}

function lineCursor(blocks: readonly Block[], line: number): { next(): BookLine | undefined; previous(): BookLine | undefined } {
  let { index, local } = locate(blocks, line);
  return {
    next() {
      while (index < blocks.length && local >= blocks[index]!.lines.length) {
        index++;
        local = 0;
      }
      return blocks[index]?.lines[local++];
    },
    previous() {
      while (index >= 0 && local < 0) {
        index--;
        local = (blocks[index]?.lines.length ?? 0) - 1;
      }
      return blocks[index]?.lines[local--];
    },
  };
}

function isSame(line: BookLine | undefined, cut: CutLine): boolean {
  return line !== undefined && line.eol === cut.eol && lineText(line) === cut.text;
}

function onThePage({ line, character }: TextPosition): TextPosition {
  return { line: Math.max(0, line), character: Math.max(0, character) };
}

function inOrder(a: TextPosition, b: TextPosition): readonly [TextPosition, TextPosition] {
  return a.line < b.line || (a.line === b.line && a.character <= b.character) ? [a, b] : [b, a];
}
