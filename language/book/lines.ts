import type { ParsedLine } from '../grammar/parse-line.ts';
import { parseLine } from '../grammar/parse-line.ts';

/** What ends a line. A lone carriage return counts: editors and the language server protocol count it too. */
export type LineEnd = '' | '\n' | '\r\n' | '\r';

/** One line of a file as it was read. Only the last line of a file has no end. */
export interface BookLine {
  readonly parsed: ParsedLine;
  readonly eol: LineEnd;
  /** The line starts with a byte order mark, read as a blank so that columns stay right. */
  readonly bom?: true;
}

const byteOrderMark = '\uFEFF';

/** Enough for the lines a coach has on screen and the repeated ones of a book; older lines are parsed again. */
const keptLines = 8192;
const parsedByText = new Map<string, ParsedLine>();

function parsed(text: string): ParsedLine {
  const kept = parsedByText.get(text);
  if (kept !== undefined) return kept;
  if (parsedByText.size >= keptLines) {
    const oldest = parsedByText.keys().next().value;
    if (oldest !== undefined) parsedByText.delete(oldest);
  }
  const line = parseLine(text);
  parsedByText.set(text, line);
  return line;
}

/** The line as it stands in the file, without its end. */
export function lineText(line: BookLine): string {
  return line.bom === undefined ? line.parsed.text : byteOrderMark + line.parsed.text.slice(1);
}

export function readLine(text: string, eol: LineEnd): BookLine {
  if (text.startsWith(byteOrderMark)) return { parsed: parsed(` ${text.slice(1)}`), eol, bom: true };
  return { parsed: parsed(text), eol };
}

/** Cuts a text into lines; the last one has no end and may be empty. */
export function cutLines(text: string): { readonly text: string; readonly eol: LineEnd }[] {
  const lines: { text: string; eol: LineEnd }[] = [];
  const ends = /\r\n|\n|\r/g;
  let from = 0;
  for (let end = ends.exec(text); end !== null; end = ends.exec(text)) {
    lines.push({ text: text.slice(from, end.index), eol: end[0] as LineEnd });
    from = end.index + end[0].length;
  }
  lines.push({ text: text.slice(from), eol: '' });
  return lines;
}
