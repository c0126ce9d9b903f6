// A name changed everywhere it is meant, or why that cannot be. Nothing else in the book may come to mean something else.
import { message, type Message } from '../message/message.ts';
import { editFile, type Book, type TextEdit } from '../book/book.ts';
import { nameKey } from './name-key.ts';
import { definitionOf, sitesOf, type NameSite } from './sites.ts';
import { definitionsOf } from './definitions.ts';

export interface FileEdit extends Required<TextEdit> {
  readonly uri: string;
}

export type Renamed = { readonly edits: readonly FileEdit[] } | { readonly refused: Message };

/** The edits that give what is named there another name. */
export function renameEverywhere(book: Book, given: NameSite, to: string): Renamed {
  const wanted = to.trim().replace(/^["“](.*)["”]$/u, '$1').trim();
  if (wanted === '') return { refused: message('A name needs at least one letter.') };
  if (/["“”\r\n]/.test(wanted)) return { refused: message('A name cannot hold a quotation mark or a line end: it stands between quotation marks.') };
  const sites = sitesOf(book, given);
  const edits = sites.map((site): FileEdit => ({ uri: site.uri, range: rangeOfSite(site), text: wanted })).toSorted((a, b) => a.range.start.line - b.range.start.line || a.range.start.character - b.range.start.character);
  if (nameKey(wanted) === given.name.key) return { edits };
  const taken = message('The name “{name}” is taken here. Choose one that is still free.', { name: wanted });
  if (definitionOf(book, given.uri, given.block, { ...given.name, key: nameKey(wanted) }) !== undefined && given.name.kind !== 'look') return { refused: taken };
  // Read back: the same places, no more and no fewer, mean it now.
  const after = edits.toReversed().reduce((now, edit) => editFile(now, edit.uri, [edit]), book);
  const moved = after.files.get(given.uri)?.blocks.find((block) => definitionsOf(block).some((name) => name.key === nameKey(wanted) && isThere(after, given, block, name.place)));
  const name = moved && definitionsOf(moved).find(({ key, place }) => key === nameKey(wanted) && isThere(after, given, moved, place));
  const now = name && definitionOf(after, given.uri, moved, name);
  if (now === undefined || now.name.place.line + now.firstLine !== given.name.place.line + given.firstLine || sitesOf(after, now).length !== sites.length) return { refused: taken };
  return isTwice(now) ? { refused: taken } : { edits };
}

/** Two of one name in one block: two steps of a play, two spots. */
function isTwice({ block, name }: NameSite): boolean {
  return name.kind !== 'look' && definitionsOf(block).filter(({ kind, key }) => kind === name.kind && key === name.key).length > 1;
}

function isThere(book: Book, given: NameSite, block: NameSite['block'], place: NameSite['name']['place']): boolean {
  let firstLine = 0;
  for (const one of book.files.get(given.uri)?.blocks ?? []) {
    if (one === block) break;
    firstLine += one.lines.length;
  }
  return firstLine + place.line === given.firstLine + given.name.place.line;
}

/** The columns of a name without its quotes, in lines of its file. */
export function rangeOfSite({ firstLine, name: { place } }: NameSite): FileEdit['range'] {
  const line = firstLine + place.line;
  return { start: { line, character: place.at }, end: { line, character: place.to } };
}
