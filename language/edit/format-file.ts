// A file set as the examples are: play content two blanks in, step content four, a blank line before each step. It never changes what
// a play means, loses no comment, and passes over lines that cannot be read. Formatting what is formatted gives no edits.
import { lineText, type BookFile, type BookLine, type LineEnd, type TextEdit } from '../book/book.ts';
import type { ParsedLine } from '../grammar/parse-line.ts';
import { formatWords } from './format-line.ts';

/** Lines of the file, from 0, both included. */
export interface LineRange {
  readonly from: number;
  readonly to: number;
}

/** An edit whose range is always there. The edits of one answer do not touch each other; all count from the text as it was. */
export type FormatEdit = Required<TextEdit>;

const indentation = '  ';
/** Between words and a comment where several comments are brought into line. */
const usualGap = 2;

/** The edits that set the file, or only those lines of it. */
export function formatFile(file: BookFile, range?: LineRange): readonly FormatEdit[] {
  const lines = linesOf(file);
  const inRange = (line: number): boolean => range === undefined || (range.from <= line && line <= range.to);
  const blanks = blankLineEdits(lines, inRange);
  const gone = new Set(blanks.flatMap(({ range: { start, end } }) => Array.from({ length: end.line - start.line }, (_, nth) => start.line + nth)));
  const words = setLines(lines).flatMap((text, line) => (text === undefined || gone.has(line) || !inRange(line) ? [] : changeLine(lines[line]!.line, line, text)));
  // A blank line put in stands before the change of the line it is put above.
  return [...blanks, ...words].toSorted((a, b) => a.range.start.line - b.range.start.line || a.range.start.character - b.range.start.character);
}

/** Behind a new line: the line above it is set, and the new one indented for what is likeliest to come. */
export function formatAtNewLine(file: BookFile, line: number): readonly FormatEdit[] {
  const lines = linesOf(file);
  const here = lines[line];
  const above = line - 1;
  const edits = formatFile(file, { from: above, to: above }).filter(({ range: { end } }) => end.line === above);
  if (here === undefined) return edits;
  const left = numberLeft(lines, line);
  if (left !== undefined) return left;
  const open = linkLeft(lines, line);
  if (open !== undefined) return open;
  if (isBlank(here.line.parsed)) return [...edits, ...changeLine(here.line, line, indentation.repeat(here.inside))];
  const text = setLines(lines)[line];
  return text === undefined ? edits : [...edits, ...changeLine(here.line, line, text)];
}

/** A number that stood there for one more man of a roster or an alignment, and that Enter has left as it was: the list is done, and it goes. */
function numberLeft(lines: readonly PlacedLine[], line: number): readonly FormatEdit[] | undefined {
  const [above, here] = [lines[line - 1]!, lines[line]!];
  if (!above.ofMen || !/^\s*\d{1,2}\s*$/.test(lineText(above.line)) || !(isBlank(here.line.parsed) || here.opensBlock)) return undefined;
  const set = isBlank(here.line.parsed) ? indentation.repeat(here.inside) : lineText(here.line).trimStart();
  return [{ range: { start: { line: line - 1, character: 0 }, end: { line, character: lineText(here.line).length } }, text: set }];
}

/** Enter behind `, then` goes on with the same man in a line of his own: the link above leads nowhere any more, and goes. */
function linkLeft(lines: readonly PlacedLine[], line: number): readonly FormatEdit[] | undefined {
  const [above, here] = [lines[line - 1], lines[line]!].map((one) => one && lineText(one.line));
  const man = /^\s*([1-5])\s*$/.exec(here ?? '')?.[1];
  const link = man === undefined ? undefined : /^\s*([1-5])\s.*?[^\s,](\s*,?\s*\bthen)\s*$/.exec(above ?? '');
  if (link?.[1] !== man || link?.[2] === undefined) return undefined;
  const at = above!.lastIndexOf(link[2]);
  return [{ range: { start: { line: line - 1, character: at }, end: { line: line - 1, character: above!.length } }, text: '' }];
}

/** As the name behind `step`, `play` and the like is begun or closed: a line that opens something comes out to where such lines stand, never farther in. */
export function formatAtName(file: BookFile, line: number): readonly FormatEdit[] {
  const here = linesOf(file)[line];
  if (here === undefined || !(here.opensBlock || here.opensStep)) return [];
  const words = lineText(here.line).trimStart();
  const begun = /^\S+\s+["“][^"“”]*["”]?\s*$/u.test(words);
  const set = indentation.repeat(here.depth) + words;
  return begun && set.length < lineText(here.line).length ? changeLine(here.line, line, set) : [];
}

interface PlacedLine {
  readonly line: BookLine;
  /** How deep it stands, and how deep a line of content would stand here. */
  readonly depth: number;
  readonly inside: number;
  /** The play, alignment, roster or book begins here. */
  readonly opensBlock: boolean;
  readonly opensStep: boolean;
  /** Of a roster or an alignment: a man a line. */
  readonly ofMen: boolean;
}

function linesOf(file: BookFile): readonly PlacedLine[] {
  const placed: PlacedLine[] = [];
  for (const { kind, lines } of file.blocks) {
    let inside = kind === 'file' ? 0 : 1;
    lines.forEach((line, at) => {
      const opensBlock = kind !== 'file' && at === 0;
      const opensStep = line.parsed.opens === 'step';
      if (opensStep) inside = 2;
      placed.push({ line, depth: opensBlock ? 0 : opensStep ? 1 : inside, inside, opensBlock, opensStep, ofMen: kind === 'roster' || kind === 'alignment' });
    });
  }
  return placed;
}

const isBlank = ({ text }: ParsedLine): boolean => text.trim() === '';
const isComment = ({ tree, fault, comment }: ParsedLine): boolean => comment !== undefined && tree === undefined && fault === undefined;

// ---- words, indentation, comments ---------------------------------------------------------------------------------

/** Each line as it is to stand; undefined for one that is left alone. */
function setLines(lines: readonly PlacedLine[]): readonly (string | undefined)[] {
  const texts = lines.map(({ line: { parsed }, depth }, at): string | undefined => {
    if (isBlank(parsed)) return '';
    if (isComment(parsed)) return indentation.repeat(depthOfComment(lines, at)) + parsed.text.trim();
    const words = formatWords(parsed);
    return words === undefined ? undefined : indentation.repeat(depth) + words;
  });
  for (const run of commentRuns(lines, texts)) {
    const before = run.map((at) => textBefore(lines[at]!.line.parsed));
    const column = Math.max(...run.map((at) => width(texts[at]!))) + gapOf(before);
    for (const at of run) {
      const { text, comment } = lines[at]!.line.parsed;
      texts[at] = texts[at]! + ' '.repeat(column - width(texts[at]!)) + text.slice(comment!.at).trimEnd();
    }
  }
  return texts;
}

/** The blanks between the longest words and the comments: where the coach has these in one line already they stay so far away. */
function gapOf(before: readonly string[]): number {
  const gap = width(before[0]!) - Math.max(...before.map((text) => width(text.trimEnd())));
  const inLine = before.every((text) => width(text) === width(before[0]!) && !text.includes('\t'));
  return inLine && gap > 0 ? gap : usualGap;
}

const textBefore = ({ text, comment }: ParsedLine): string => text.slice(0, comment!.at);
const width = (text: string): number => [...text].length;

/** Lines in a row that have a comment behind their words. */
function commentRuns(lines: readonly PlacedLine[], texts: readonly (string | undefined)[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  let open: number[] | undefined;
  lines.forEach(({ line: { parsed } }, at) => {
    if (parsed.comment === undefined || isComment(parsed) || texts[at] === undefined) return void (open = undefined);
    if (open === undefined) runs.push((open = []));
    open.push(at);
  });
  return runs;
}

/** A comment stands as deep as what it speaks of: the line below it, or, where a blank line follows and none is above, the one above. */
function depthOfComment(lines: readonly PlacedLine[], at: number): number {
  const written = (line: PlacedLine | undefined): line is PlacedLine => line !== undefined && !isBlank(line.line.parsed);
  const notComment = (line: PlacedLine | undefined): boolean => line === undefined || !isComment(line.line.parsed);
  const above = lines[nearest(lines, at, -1, notComment)];
  const under = nearest(lines, at, 1, notComment);
  const below = lines[under];
  if (written(below)) return below.depth;
  if (written(above)) return above.inside;
  const next = lines[nearest(lines, under - 1, 1, (line) => line === undefined || written(line))];
  return next === undefined ? lines[at]!.inside : next.depth;
}

/** The next line, up or down, that is so; a place outside the file where there is none. */
function nearest(lines: readonly PlacedLine[], from: number, step: 1 | -1, isSo: (line: PlacedLine | undefined) => boolean): number {
  let at = from + step;
  while (!isSo(lines[at])) at += step;
  return at;
}

// ---- blank lines --------------------------------------------------------------------------------------------------

function blankLineEdits(lines: readonly PlacedLine[], inRange: (line: number) => boolean): readonly FormatEdit[] {
  const edits: FormatEdit[] = [];
  // The last line has no end: as an empty one it only says that the line above it has one.
  const end = lines.length > 0 && isBlank(lines.at(-1)!.line.parsed) ? lines.length - 1 : lines.length;
  for (let at = 0; at < end; at++) {
    if (isBlank(lines[at]!.line.parsed)) {
      const from = at;
      while (at + 1 < end && isBlank(lines[at + 1]!.line.parsed)) at++;
      const kept = from === 0 || at + 1 === end ? 0 : 1;
      const first = from + kept;
      if (first <= at && at + 1 < lines.length && inRange(first) && inRange(at)) edits.push({ range: { start: { line: first, character: 0 }, end: { line: at + 1, character: 0 } }, text: '' });
      continue;
    }
    if (needsBlankAbove(lines, at) && inRange(at)) edits.push({ range: { start: { line: at, character: 0 }, end: { line: at, character: 0 } }, text: endOf(lines, at - 1) });
  }
  return edits;
}

/** The first line of an opener with the comments above it, where no blank line parts it from what stands before. */
function needsBlankAbove(lines: readonly PlacedLine[], at: number): boolean {
  const before = lines[at - 1];
  if (before === undefined || isBlank(before.line.parsed)) return false;
  if (isComment(before.line.parsed)) return false;
  const opener = lines[nearest(lines, at - 1, 1, (line) => line === undefined || !isComment(line.line.parsed))];
  if (opener === undefined) return false;
  return opener.opensBlock || (opener.opensStep && !before.opensBlock);
}

function endOf(lines: readonly PlacedLine[], at: number): LineEnd {
  return lines[at]?.line.eol || '\n';
}

// ---- the smallest change of a line --------------------------------------------------------------------------------

function changeLine(line: BookLine, at: number, set: string): readonly FormatEdit[] {
  const text = lineText(line);
  const wanted = line.bom === undefined ? set : `\uFEFF${set}`;
  if (text === wanted) return [];
  let head = 0;
  while (head < text.length && head < wanted.length && text[head] === wanted[head]) head++;
  let tail = 0;
  while (tail < text.length - head && tail < wanted.length - head && text[text.length - 1 - tail] === wanted[wanted.length - 1 - tail]) tail++;
  return [{ range: { start: { line: at, character: head }, end: { line: at, character: text.length - tail } }, text: wanted.slice(head, wanted.length - tail) }];
}
