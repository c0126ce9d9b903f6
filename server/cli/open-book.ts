// The files of a call as one book, compiled when asked. Files that they use are read as well, but not reported on.
import { inEnglish } from '../../language/message/message.ts';
import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { emptyBook, firstLineOf, lineText, openFile, setFiles, type Block, type Book, type BookFile } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper, type FileFinding } from '../../language/keeper.ts';
import { createLookup, filesInReach, usedUris } from '../../language/names/lookup.ts';
import { sectionsOf } from '../../language/names/sections.ts';
import { namedByBook } from '../../language/play/read-names.ts';
import { sayWay } from '../../language/words/way-name.ts';
import { newerNotation, NOTATION_VERSION } from '../../language/names/notation-version.ts';
import { CallError } from './call-error.ts';
import { nameOf, type SourceFile } from './files.ts';

export interface OpenedFile {
  /** As it is printed. */
  readonly name: string;
  readonly uri: string;
  readonly blocks: readonly Block[];
  /** The files that it uses, and those that they use. */
  readonly used: () => readonly OpenedFile[];
  /** How many plays it holds. */
  readonly count: number;
  readonly plays: () => readonly Compiled[];
  readonly findings: () => readonly FileFinding[];
  /** The sections of its books, each with the plays it names, wherever they stand. */
  readonly sections: () => readonly { readonly name: string; readonly plays: readonly { readonly uri: string; readonly key: string }[] }[];
  /** The plays of a file that it uses. */
  readonly playsAt: (uri: string) => readonly Compiled[];
  /** A play with the names its book gives the players, where it has no roster of its own. */
  readonly named: (play: Compiled) => Compiled;
  /** The text of a line of the file, from 0. */
  readonly line: (at: number) => string;
  /** The line that one of its plays begins on, from 1. */
  readonly firstLineOf: (play: Compiled) => number;
  /** The lines of a play that cannot be read, from 1, and the file they stand in: a book names plays of others. */
  readonly notRead: (play: Compiled) => { readonly name: string; readonly lines: readonly number[] };
  /** The way a finding speaks of, in words, and what its moments are counted from. */
  readonly wayOf: (finding: FileFinding) => { readonly way?: string; readonly zero?: string };
  /** Lets go of what is compiled: a thousand files at once would fill the memory with plays that nobody asks for again. */
  readonly done: () => void;
}

/** Where files lie that others use: on the disk, unless it is said otherwise. `path` as the working folder has it. */
export interface Shelf {
  readonly nameOf: (path: string) => string;
  readonly textAt: (path: string) => string | undefined;
}

const disk: Shelf = { nameOf: (path) => nameOf(path), textAt: textOnDisk };

/** The files in the order given. One in a newer notation is refused: nobody can know what its lines mean. */
export function openBook(sources: readonly SourceFile[], shelf = disk): readonly OpenedFile[] {
  const { files, refused } = openReadable(sources, shelf);
  if (refused[0] !== undefined) throw new CallError(refused[0]);
  return files;
}

/** As `openBook`; what is refused is told file by file, and the others are there all the same. */
export function openReadable(sources: readonly SourceFile[], shelf = disk): { readonly files: readonly OpenedFile[]; readonly refused: readonly string[] } {
  const named = sources.map(({ name, text, path = name }) => ({ name, text, uri: pathToFileURL(path).href }));
  const book = withUsedFiles(setFiles(emptyBook, named.map(({ uri, text }) => [uri, text])), shelf);
  const refused = named.flatMap(({ name, uri }) => refusalOf(name, book, uri) ?? []);
  const nameAt = (uri: string) => named.find((one) => one.uri === uri)?.name ?? shelf.nameOf(fileURLToPath(uri));
  const files = named.filter(({ name, uri }) => refusalOf(name, book, uri) === undefined).map(({ uri }) => opened(book, uri, nameAt));
  return { files, refused };
}

function opened(book: Book, uri: string, nameAt: (uri: string) => string): OpenedFile {
  const { blocks } = book.files.get(uri)!;
  const lines = blocks.flatMap((block) => block.lines);
  let keeper = createKeeper();
  return {
    name: nameAt(uri),
    uri,
    blocks,
    used: () => filesInReach(book, uri).slice(1).map((file) => opened(book, file.uri, nameAt)),
    count: blocks.filter(({ kind }) => kind === 'play').length,
    plays: () => keeper.playsOf(book, uri),
    findings: () => keeper.findingsOf(book, uri),
    sections: () => sectionsIn(book, uri),
    playsAt: (used) => keeper.playsOf(book, used),
    named: (play) => namedByBook(play, book, fileOf(book, play).uri),
    line: (at) => (lines[at] === undefined ? '' : lineText(lines[at])),
    firstLineOf: ({ key }) => firstLineOf(book.files.get(uri)!, key)! + 1,
    notRead: ({ block }) => {
      const file = fileOf(book, { block });
      return { name: nameAt(file.uri), lines: notReadIn(file, block) };
    },
    wayOf: ({ block, run }) => {
      const compiled = run === undefined ? undefined : keeper.playsOf(book, uri).find(({ key }) => key === block);
      if (compiled === undefined || run === undefined) return {};
      return { way: inEnglish(sayWay(compiled.play, run)), zero: compiled.play.start.throwIn === undefined ? 'the call' : 'the hand-over' };
    },
    done: () => void (keeper = createKeeper()),
  };
}

/** A book names plays of other files. */
const fileOf = (book: Book, { block }: Pick<Compiled, 'block'>): BookFile => [...book.files.values()].find(({ blocks }) => blocks.includes(block))!;

function notReadIn(file: BookFile, { key, lines }: Block): readonly number[] {
  const first = firstLineOf(file, key)! + 1;
  return lines.flatMap(({ parsed }, index) => (parsed.fault === undefined ? [] : [first + index]));
}

function sectionsIn(book: Book, uri: string): ReturnType<OpenedFile['sections']> {
  const lookup = createLookup(book, uri);
  const playNamed = (name: string) => {
    const found = lookup.play(name);
    return found === undefined ? [] : [{ uri: found.uri, key: found.block.key }];
  };
  return book.files.get(uri)!.blocks.filter(({ kind }) => kind === 'book').flatMap(sectionsOf).map(({ name, plays }) => ({ name, plays: plays.flatMap((one) => playNamed(one.name)) }));
}

function refusalOf(name: string, book: Book, uri: string): string | undefined {
  const newer = newerNotation(book.files.get(uri)?.blocks[0]?.lines.map(({ parsed }) => parsed) ?? []);
  return newer && `${name} is written in notation ${newer.version}, and this Setwright reads up to ${NOTATION_VERSION}. Install a newer Setwright, or write the file in notation ${NOTATION_VERSION}.`;
}

/** Reads what `use` lines name, as far as it is there; what is not is a finding of the line. */
function withUsedFiles(book: Book, { textAt }: Shelf): Book {
  let read = book;
  const tried = new Set(book.files.keys());
  const waiting = [...book.files.values()].flatMap(usedUris);
  for (const { uri } of waiting) {
    if (tried.has(uri)) continue;
    tried.add(uri);
    const text = isFile(uri) ? textAt(fileURLToPath(uri)) : undefined;
    if (text === undefined) continue;
    read = openFile(read, uri, text);
    waiting.push(...usedUris(read.files.get(uri)!));
  }
  return read;
}

/** `use "https://…"` names no file. */
function isFile(uri: string): boolean {
  try {
    return fileURLToPath(uri) !== '';
  } catch {
    return false;
  }
}

function textOnDisk(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}
