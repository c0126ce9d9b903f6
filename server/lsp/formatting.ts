// A document set as the examples are; the editor's own tab size and blanks for tabs do not count: the notation has one way.
import type { Range, TextEdit } from 'vscode-languageserver-types';
import { formatAtName, formatAtNewLine, formatFile, type FormatEdit } from '../../language/edit/format-file.ts';
import type { OpenDocument } from './documents.ts';

const textEditOf = ({ range, text }: FormatEdit): TextEdit => ({ range, newText: text });

export const formatDocument = ({ file }: OpenDocument): TextEdit[] => formatFile(file).map(textEditOf);

/** The lines a range touches; one it only ends before is not touched. */
export function formatRange({ file }: OpenDocument, { start, end }: Range): TextEdit[] {
  const to = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  return formatFile(file, { from: start.line, to }).map(textEditOf);
}

/** Behind the Enter key, `line` being the new one, or behind the quote that begins a name. */
export const formatTyped = ({ file }: OpenDocument, line: number, key: string): TextEdit[] => (key === '\n' ? formatAtNewLine : formatAtName)(file, line).map(textEditOf);
