// What a word of the list would mean on the floor: five men in an alignment, a way to a place and how far it is.
import type { Book } from '../../../language/book/book.ts';
import { blockAtLine } from '../../../language/book/book.ts';
import { distance } from '../../../language/court/point.ts';
import { allSpots } from '../../../language/court/spots.ts';
import { expectedAfter } from '../../../language/grammar/expected.ts';
import type { OpenDocument } from '../documents.ts';
import type { Telling } from '../hover.ts';
import { plain } from '../plain.ts';
import { message } from '../../../language/message/message.ts';
import { textOfLine } from '../positions.ts';
import { alignmentDrawing, floorDrawing } from '../small-drawing.ts';
import type { ChoiceKind } from './choice.ts';
import { bodiesOf } from './line.ts';
import { standingAt } from './standing.ts';

export interface Pictured {
  readonly line: number;
  readonly kind: ChoiceKind;
  readonly text: string;
}

export function pictureOf(book: Book, document: OpenDocument, { line, kind, text }: Pictured, { theme, say }: Telling): readonly string[] {
  const { block, firstLine } = blockAtLine(document.file, line);
  const written = textOfLine(block, line - firstLine);
  if (kind === 'alignment' || (kind === 'name' && /^\s*from\s/i.test(written))) return alignmentDrawing(book, document.uri, line, text, theme);
  if (kind !== 'place') return [];
  const expected = expectedAfter(written);
  const { court, where, holder, ownSpots, sayWhere } = standingAt(book, document, line, written.slice(0, expected.from));
  const to = text.startsWith('"') ? ownSpots.find(({ name }) => `"${name}"` === text)?.point : allSpots(court).find(({ label }) => label === text)?.point;
  const [who] = bodiesOf(expected.acting?.subject);
  const from = who && where[who];
  if (to === undefined || who === undefined || from === undefined) return [];
  const way = say(message('{who} from {from} to {to}: {metres} m.', { who, from: sayWhere(who) ?? '', to: text.replaceAll('"', ''), metres: distance(from, to).toFixed(1) }));
  return [plain(way), ...floorDrawing(court, { where, holder }, way, theme, { who, to })];
}
