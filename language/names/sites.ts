// Where a name is given and everywhere it is used, across the files that use each other.
import type { Block, Book } from '../book/book.ts';
import type { TextPlace } from '../book/places.ts';
import { definitionsOf, usesOf, type NameInText, type NameKind } from './definitions.ts';
import { filesInReach } from './lookup.ts';
import { resolveUse } from './uris.ts';

/** A name at a place of the book. `name.place` counts from the block's first line. */
export interface NameSite {
  readonly uri: string;
  readonly block: Block;
  readonly firstLine: number;
  readonly name: NameInText;
}

/** The name whose words hold a column of the block's line, its ends included. */
export function nameAt(block: Block, line: number, column: number): NameInText | undefined {
  const holds = ({ place }: NameInText): boolean => place.line === line && place.at <= column && column <= place.to;
  return definitionsOf(block).find(holds) ?? usesOf(block).find(holds);
}

/** Where a name that stands in a block is given: for a use of a name given twice the first place. Undefined for an unknown one, and for a file. */
export function definitionOf(book: Book, uri: string, block: Block, name: NameInText): NameSite | undefined {
  if (definitionsOf(block).includes(name)) return siteIn(book, uri, block, (one) => one === name);
  // Labels, nicknames and the names of rosters, books and sections are used nowhere else.
  if (!isShared(name.kind)) return undefined;
  return givenFor(book, uri, block, name.kind, name.key, playOfStep(block, name));
}

/** All places that mean what is given there: it first, then the uses, file by file in text order. */
export function sitesOf(book: Book, given: NameSite): readonly NameSite[] {
  const { kind, key } = given.name;
  if (!isShared(kind)) return [given];
  const uses = [...book.files.values()].flatMap(({ uri, blocks }) => {
    let firstLine = 0;
    return blocks.flatMap((block) => {
      const found = usesOf(block).flatMap((name): NameSite[] => (name.kind === kind && name.key === key && isSame(definitionOf(book, uri, block, name), given) ? [{ uri, block, firstLine, name }] : []));
      firstLine += block.lines.length;
      return found;
    });
  });
  return [given, ...uses];
}

/** The uri of the file that a `use` line names. */
export const fileMeant = (uri: string, name: NameInText): string => resolveUse(uri, name.name);

const isShared = (kind: NameKind): boolean => kind === 'play' || kind === 'step' || kind === 'spot' || kind === 'alignment';

function isSame(a: NameSite | undefined, b: NameSite): boolean {
  return a !== undefined && a.uri === b.uri && a.block === b.block && samePlace(a.name.place, b.name.place);
}

function samePlace(a: TextPlace, b: TextPlace): boolean {
  return a.line === b.line && a.at === b.at;
}

function givenFor(book: Book, uri: string, block: Block, kind: NameKind, key: string, elsewhere: string | undefined): NameSite | undefined {
  const gives = (one: NameInText): boolean => one.kind === kind && one.key === key;
  if (kind === 'step') {
    if (elsewhere === undefined) return siteIn(book, uri, block, gives);
    const play = blockNamed(book, uri, 'play', elsewhere);
    return play && siteIn(book, play.uri, play.block, gives);
  }
  if (kind === 'spot') {
    const own = siteIn(book, uri, block, gives);
    if (own !== undefined) return own;
    for (const file of filesInReach(book, uri)) {
      const header = file.blocks[0];
      const found = header?.kind === 'file' ? siteIn(book, file.uri, header, gives) : undefined;
      if (found !== undefined) return found;
    }
    return undefined;
  }
  const found = blockNamed(book, uri, kind, key);
  return found && siteIn(book, found.uri, found.block, gives);
}

/** `continues "Lighthouse" after "Zip"`: the step is one of that play. */
function playOfStep(block: Block, { kind, place }: NameInText): string | undefined {
  if (kind !== 'step' || place.line !== 0 || block.lines[0]?.parsed.tree?.$type !== 'PlayHead') return undefined;
  return usesOf(block).find((one) => one.kind === 'play' && one.place.line === 0)?.key;
}

function blockNamed(book: Book, uri: string, kind: NameKind, key: string): { readonly uri: string; readonly block: Block } | undefined {
  for (const file of filesInReach(book, uri)) {
    const block = file.blocks.find((one) => one.kind === kind && definitionsOf(one)[0]?.key === key);
    if (block !== undefined) return { uri: file.uri, block };
  }
  return undefined;
}

function siteIn(book: Book, uri: string, block: Block, is: (name: NameInText) => boolean): NameSite | undefined {
  const name = definitionsOf(block).find(is);
  if (name === undefined) return undefined;
  let firstLine = 0;
  for (const one of book.files.get(uri)?.blocks ?? []) {
    if (one === block) return { uri, block, firstLine, name };
    firstLine += one.lines.length;
  }
  return undefined;
}
