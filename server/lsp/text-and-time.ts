// Both maps of a play: from its text to its parts and their times, and from a part back to its words.
import { blockAtLine, blockOfKey, firstLineOf } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import type { PartId, TextPlace } from '../../language/play/play.ts';
import type { Position, Range } from 'vscode-languageserver-types';
import type { OpenDocument } from './documents.ts';
import { partAt } from './parts.ts';
import { rangeOf } from './positions.ts';
import type { PartAt } from './protocol.ts';
import { momentOf } from './moment-of-part.ts';

/** The part at a position; null between plays and on lines that say nothing of one. */
export function partAtPosition(document: OpenDocument, compile: (document: OpenDocument, line: number) => Compiled | undefined, { line, character }: Position): PartAt {
  const compiled = compile(document, line);
  if (compiled === undefined) return null;
  const { firstLine } = blockAtLine(document.file, line);
  const found = partAt(compiled.places, line - firstLine, character);
  if (found === undefined) return null;
  const t = momentOf(compiled, found.part);
  return { playKey: compiled.key, part: found.part, range: rangeOf(firstLine, found.place), ...(t !== undefined && { t }) };
}

/** The words of a part of a play, or of a place of it. */
export function rangeOfPart(document: OpenDocument, compiled: Compiled, wanted: { readonly part?: PartId; readonly place?: TextPlace }): Range | null {
  const firstLine = firstLineOf(document.file, compiled.key);
  const block = blockOfKey(document.file, compiled.key);
  const place = wanted.part === undefined ? wanted.place : writtenPlace(compiled, wanted.part);
  if (firstLine === undefined || block === undefined || place === undefined || place.line >= block.lines.length) return null;
  return rangeOf(firstLine, place);
}

/** A part that has no words of its own (a pass that only follows from a look) is found at what it hangs on. */
function writtenPlace({ places }: Compiled, part: PartId): TextPlace | undefined {
  const owners = [part, part.replace(/#.*$/, ''), part.replace(/\/[^/]*$/, ''), part.split(/[/?:#]/, 1)[0]!];
  const known = owners.map((owner) => places.get(owner)).filter((place) => place !== undefined);
  return known.find(({ at, to }) => to > at) ?? known[0];
}
