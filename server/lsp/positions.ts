// Between a block's own lines and a file's. Columns count UTF-16 units on both sides.
import type { Position, Range } from 'vscode-languageserver-types';
import type { BlockEdit } from '../../language/checks/finding.ts';
import { lineText, type Block } from '../../language/book/book.ts';
import type { TextPlace } from '../../language/play/play.ts';

/** The range of the file that a place of a block covers, when the block starts on `firstLine`. */
export function rangeOf(firstLine: number, place: TextPlace): Range {
  const line = firstLine + place.line;
  return { start: { line, character: place.at }, end: { line, character: place.to } };
}

/** The same, never empty: an editor shows nothing for an empty range. Words that are missing show at the word before them. */
export function visibleRange(block: Block, firstLine: number, place: TextPlace): Range {
  if (place.to > place.at) return rangeOf(firstLine, place);
  const text = textOfLine(block, place.line);
  const end = text.trimEnd().length;
  const at = Math.min(place.at, end);
  if (at < end) return rangeOf(firstLine, { line: place.line, at, to: at + (text.codePointAt(at)! > 0xffff ? 2 : 1) });
  const word = /\S+\s*$/.exec(text.slice(0, at));
  return rangeOf(firstLine, { line: place.line, at: word?.index ?? 0, to: Math.max(at, 1) });
}

export function textOfLine(block: Block, line: number): string {
  const found = block.lines[line];
  return found === undefined ? '' : lineText(found);
}

/** The text edit of a fix's edit. A new line ends as the line it stands before does; a line that goes takes its end along, the last of a file the end before it. */
export function textEditOf(block: Block, firstLine: number, edit: BlockEdit): { readonly range: Range; readonly newText: string } {
  if (edit.wholeLine === true) return { range: wholeLineOf(block, firstLine, edit.line), newText: '' };
  if (edit.newLine !== true) return { range: rangeOf(firstLine, edit), newText: edit.text };
  const eol = block.lines[Math.min(edit.line, block.lines.length - 1)]?.eol || block.lines.find((line) => line.eol !== '')?.eol || '\n';
  if (edit.line < block.lines.length) {
    const start = { line: firstLine + edit.line, character: 0 };
    return { range: { start, end: start }, newText: edit.text + eol };
  }
  // Behind the last line of the block, which may have no end.
  const last = block.lines.length - 1;
  const end = { line: firstLine + last, character: textOfLine(block, last).length };
  return { range: { start: end, end }, newText: eol + edit.text };
}

/** A line with its end; of a file's last line, which has none, the end of the line above. */
function wholeLineOf(block: Block, firstLine: number, line: number): Range {
  const at = firstLine + line;
  if (block.lines[line]?.eol !== '' || line === 0) return { start: { line: at, character: 0 }, end: { line: at + 1, character: 0 } };
  return { start: { line: at - 1, character: textOfLine(block, line - 1).length }, end: { line: at, character: textOfLine(block, line).length } };
}

/** Whether a position stands on the range, its end included. */
export function holds(range: Range, { line, character }: Position): boolean {
  const { start, end } = range;
  if (line < start.line || line > end.line) return false;
  return !(line === start.line && character < start.character) && !(line === end.line && character > end.character);
}

/** Whether two ranges share a place, touching ends included. */
export function meet(a: Range, b: Range): boolean {
  const before = (p: Position, q: Position) => p.line < q.line || (p.line === q.line && p.character < q.character);
  return !before(a.end, b.start) && !before(b.end, a.start);
}
