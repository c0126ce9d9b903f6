import type { Block, Book, BookFile } from '../book/book.ts';
import type { SpotTree } from '../grammar/tree.ts';
import type { FileSettings } from './file-settings.ts';
import { fileSettingsOf } from './file-settings.ts';
import { nameKey } from './name-key.ts';
import { resolveUse } from './uris.ts';

/** Finds what stands outside a block, and remembers every question with its answer, so that a result can be kept until one changes. */
export interface Lookup {
  readonly uri: string;
  /** The file's level and rules. Always part of what was asked. */
  readonly settings: FileSettings;
  /** An own spot of the file's header, or of a file it uses. */
  readonly spot: (name: string) => SpotTree | undefined;
  readonly alignment: (name: string) => Found | undefined;
  readonly play: (name: string) => Found | undefined;
  /** The names there are, as written: what an unknown one may have meant. */
  readonly names: (kind: 'alignment' | 'play') => readonly string[];
  /** The roster of the file, or the nearest of the files it uses. */
  readonly roster: () => Block | undefined;
  /** Every question so far, those of `Found.lookup` included. */
  readonly asked: readonly Asked[];
}

/** A block elsewhere, with the lookup that answers from its own file. */
export interface Found {
  readonly block: Block;
  readonly uri: string;
  readonly lookup: Lookup;
}

export interface Asked {
  readonly uri: string;
  readonly kind: 'settings' | 'spot' | 'alignment' | 'play' | 'roster' | 'names';
  readonly name: string;
  /** The block, the spot's tree or the header's settings as text; `undefined` for a miss. Compare with `===`. */
  readonly answer: unknown;
}

export function createLookup(book: Book, uri: string): Lookup {
  return lookupIn(book, uri, []);
}

/** Whether every question that was asked still gets the answer it got. */
export function stillAnswers(asked: readonly Asked[], book: Book): boolean {
  return asked.every(question => answerOf(book, question.uri, question.kind, question.name)?.answer === question.answer);
}

function lookupIn(book: Book, uri: string, asked: Asked[]): Lookup {
  const ask = (kind: Asked['kind'], name: string) => {
    const found = answerOf(book, uri, kind, name);
    if (!asked.some(before => before.uri === uri && before.kind === kind && nameKey(before.name) === nameKey(name)))
      asked.push({ uri, kind, name, answer: found?.answer });
    return found;
  };
  const block = (kind: 'alignment' | 'play', name: string): Found | undefined => {
    const found = ask(kind, name);
    if (found === undefined) return undefined;
    return { block: found.answer as Block, uri: found.uri, lookup: found.uri === uri ? self : lookupIn(book, found.uri, asked) };
  };
  ask('settings', '');
  const self: Lookup = {
    uri,
    settings: fileSettingsOf(headerOf(book, uri)),
    spot: name => ask('spot', name)?.answer as SpotTree | undefined,
    alignment: name => block('alignment', name),
    play: name => block('play', name),
    names: kind => ((ask('names', kind)?.answer as string | undefined) ?? '').split('\n').filter(name => name !== ''),
    roster: () => ask('roster', '')?.answer as Block | undefined,
    asked,
  };
  return self;
}

interface Answer {
  readonly answer: unknown;
  readonly uri: string;
}

function answerOf(book: Book, uri: string, kind: Asked['kind'], name: string): Answer | undefined {
  if (kind === 'settings') return { answer: settingsText(headerOf(book, uri)), uri };
  if (kind === 'names') return { answer: [...filesInReach(book, uri)].flatMap(file => file.blocks.flatMap(block => (block.kind === name && block.name !== undefined ? [block.name] : []))).join('\n'), uri };
  const key = nameKey(name);
  for (const file of filesInReach(book, uri)) {
    const answer = kind === 'roster' ? rosterOf(file) : kind === 'spot' ? spotsOf(file.blocks[0]).get(key) : blocksByName(file).get(`${kind} ${key}`);
    if (answer !== undefined) return { answer, uri: file.uri };
  }
  return undefined;
}

function headerOf(book: Book, uri: string): Block | undefined {
  return book.files.get(uri)?.blocks[0];
}

// ---- the names of one file ---------------------------------------------------------------------------------------

const spotsByHeader = new WeakMap<Block, ReadonlyMap<string, SpotTree>>();

function spotsOf(header: Block | undefined): ReadonlyMap<string, SpotTree> {
  if (header === undefined || header.kind !== 'file') return new Map();
  const known = spotsByHeader.get(header);
  if (known !== undefined) return known;
  const spots = new Map<string, SpotTree>();
  for (const { parsed } of header.lines) {
    const { tree } = parsed;
    if (tree?.$type !== 'OwnSpot' || parsed.fault !== undefined || spots.has(nameKey(tree.name))) continue;
    spots.set(nameKey(tree.name), tree.spot);
  }
  spotsByHeader.set(header, spots);
  return spots;
}

const rosterByFile = new WeakMap<BookFile, { readonly roster: Block | undefined }>();

/** Every play asks for it at every keystroke: a file is gone through once. */
function rosterOf(file: BookFile): Block | undefined {
  const known = rosterByFile.get(file) ?? { roster: file.blocks.find(({ kind }) => kind === 'roster') };
  rosterByFile.set(file, known);
  return known.roster;
}

const namedByFile = new WeakMap<BookFile, ReadonlyMap<string, Block>>();

/** By kind and name, the first of two alike. Plays that hang on each other in a long file would go through it for each name. */
function blocksByName(file: BookFile): ReadonlyMap<string, Block> {
  const known = namedByFile.get(file);
  if (known !== undefined) return known;
  const named = new Map<string, Block>();
  for (const block of file.blocks) {
    const name = `${block.kind} ${blockNameKey(block)}`;
    if (!named.has(name)) named.set(name, block);
  }
  namedByFile.set(file, named);
  return named;
}

const settingsByHeader = new WeakMap<Block, string>();

/** Every play of the file asks for it again at every keystroke. */
function settingsText(header: Block | undefined): string {
  const known = header && settingsByHeader.get(header);
  if (known !== undefined) return known;
  const text = JSON.stringify(fileSettingsOf(header));
  if (header !== undefined) settingsByHeader.set(header, text);
  return text;
}

const keyByBlock = new WeakMap<Block, string>();

function blockNameKey(block: Block): string {
  let key = keyByBlock.get(block);
  if (key === undefined) keyByBlock.set(block, (key = nameKey(block.name ?? '')));
  return key;
}

// ---- files that a file uses ---------------------------------------------------------------------------------------

/** The uris a file names with `use`, in text order. */
export function usedUris(file: BookFile): readonly { readonly name: string; readonly uri: string; readonly line: number }[] {
  const uses: { name: string; uri: string; line: number }[] = [];
  for (const [line, { parsed }] of (file.blocks[0]?.lines ?? []).entries()) {
    if (parsed.tree?.$type !== 'Use' || parsed.fault !== undefined) continue;
    uses.push({ name: parsed.tree.file, uri: resolveUse(file.uri, parsed.tree.file), line });
  }
  return uses;
}

const reachByBook = new WeakMap<Book, Map<string, readonly BookFile[]>>();

/** The file itself, then those it uses, nearest first; each once, so that a circle does no harm. Every name of every play asks for them. */
export function filesInReach(book: Book, uri: string): readonly BookFile[] {
  const reach = reachByBook.get(book) ?? new Map<string, readonly BookFile[]>();
  reachByBook.set(book, reach);
  const files = reach.get(uri) ?? reachedFrom(book, uri);
  reach.set(uri, files);
  return files;
}

function reachedFrom(book: Book, uri: string): readonly BookFile[] {
  const reached = new Set([uri]);
  const files: BookFile[] = [];
  for (const each of reached) {
    const file = book.files.get(each);
    if (file === undefined) continue;
    files.push(file);
    for (const use of usedUris(file)) reached.add(use.uri);
  }
  return files;
}
