// From a name to where it is given and to all its uses; from a man's number to where he starts and to his jobs in the play; from a spot or an
// alignment to all the lines of the file that speak of it.
import { DocumentHighlightKind, type DocumentHighlight, type Location, type LocationLink, type Position, type Range } from 'vscode-languageserver-types';
import { blockAtLine, blocksBetween, type Block, type Book } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { groundAt, groundNamed } from '../../language/names/ground-named.ts';
import { playerAt, playersNamed } from '../../language/names/players-named.ts';
import { rangeOfSite } from '../../language/names/rename.ts';
import { definitionOf, fileMeant, nameAt, sitesOf, type NameSite } from '../../language/names/sites.ts';
import type { OpenDocument } from './documents.ts';
import { rangeOf, textOfLine } from './positions.ts';

interface Pointed {
  readonly block: Block;
  readonly firstLine: number;
  /** Line of the block. */
  readonly line: number;
  readonly column: number;
}

const pointed = ({ file }: OpenDocument, { line, character }: Position): Pointed => {
  const { block, firstLine } = blockAtLine(file, line);
  return { block, firstLine, line: line - firstLine, column: character };
};

const locationOf = (site: NameSite): Location => ({ uri: site.uri, range: rangeOfSite(site) });

/** The place where the name under the cursor is given; undefined where no name stands, or an unknown one. */
export function givenAt(book: Book, document: OpenDocument, position: Position): NameSite | undefined {
  const { block, line, column } = pointed(document, position);
  const name = nameAt(block, line, column);
  return name && definitionOf(book, document.uri, block, name);
}

/** `pageOf`: where a page about something that every play knows is to be read. */
export function definition(book: Book, document: OpenDocument, compiled: Compiled | undefined, position: Position, pageOf: (key: string) => string | undefined): LocationLink[] {
  const { block, firstLine, line, column } = pointed(document, position);
  const name = nameAt(block, line, column);
  if (name !== undefined) {
    const originSelectionRange = rangeOf(firstLine, name.place);
    if (name.kind === 'file') return [topOf(fileMeant(document.uri, name), originSelectionRange)];
    const given = definitionOf(book, document.uri, block, name);
    if (given === undefined) return [];
    const whole = { line: given.name.place.line, at: 0, to: textOfLine(given.block, given.name.place.line).length };
    return [{ originSelectionRange, targetUri: given.uri, targetRange: rangeOf(given.firstLine, whole), targetSelectionRange: rangeOfSite(given) }];
  }
  // A man's place at the start is where he comes from.
  const player = playerAt(block, line, column);
  const own = player && compiled?.places.get(`from#${player.body}`);
  const start = own !== undefined && own.to > own.at ? own : player && compiled?.places.get('from');
  if (player === undefined) {
    const ground = groundAt(block, line, column);
    const page = ground && pageOf(ground.key);
    return page === undefined ? [] : [topOf(page, rangeOf(firstLine, ground!.place))];
  }
  if (start === undefined) return [];
  return [{ originSelectionRange: rangeOf(firstLine, player.place), targetUri: document.uri, targetRange: rangeOf(firstLine, start), targetSelectionRange: rangeOf(firstLine, start) }];
}

function topOf(targetUri: string, originSelectionRange: Range): LocationLink {
  const top = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  return { originSelectionRange, targetUri, targetRange: top, targetSelectionRange: top };
}

export function references(book: Book, document: OpenDocument, position: Position, withDefinition: boolean): Location[] {
  const { block, firstLine, line, column } = pointed(document, position);
  const given = givenAt(book, document, position);
  if (given !== undefined) return sitesOf(book, given).slice(withDefinition ? 0 : 1).map(locationOf);
  const player = playerAt(block, line, column);
  if (player !== undefined) return playersNamed(block).filter(({ body }) => body === player.body).map(({ place }) => ({ uri: document.uri, range: rangeOf(firstLine, place) }));
  return sameGround(document, { block, firstLine, line, column }).map((range) => ({ uri: document.uri, range }));
}

/** The spot or the alignment under the cursor wherever this document speaks of it: what is known everywhere would be found in every file. */
function sameGround({ file }: OpenDocument, { block, line, column }: Pointed): readonly Range[] {
  const ground = groundAt(block, line, column);
  if (ground === undefined) return [];
  return blocksBetween(file, 0, Infinity).flatMap(({ block: one, firstLine }) => groundNamed(one).filter(({ key }) => key === ground.key).map(({ place }) => rangeOf(firstLine, place)));
}

/** In this document: where a name is given and where a man acts are marked as written, the rest as read; spots and alignments that every play knows are given nowhere. */
export function highlights(book: Book, document: OpenDocument, position: Position): DocumentHighlight[] {
  const { block, firstLine, line, column } = pointed(document, position);
  const given = givenAt(book, document, position);
  if (given !== undefined) {
    return sitesOf(book, given).flatMap((site, at) => (site.uri === document.uri ? [{ range: rangeOfSite(site), kind: at === 0 ? DocumentHighlightKind.Write : DocumentHighlightKind.Read }] : []));
  }
  const player = playerAt(block, line, column);
  if (player === undefined) return sameGround(document, { block, firstLine, line, column }).map((range) => ({ range, kind: DocumentHighlightKind.Text }));
  return playersNamed(block).flatMap(({ body, place, acts }) => (body === player.body ? [{ range: rangeOf(firstLine, place), kind: acts ? DocumentHighlightKind.Write : DocumentHighlightKind.Read }] : []));
}
