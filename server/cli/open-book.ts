// The files of a call as one book, compiled when asked. Files that they use are read as well, but not reported on.
import { inEnglish } from '../../language/message/message.ts';
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { emptyBook, firstLineOf, lineText, openFile, setFiles, type Block, type Book, type BookFile } from '../../language/book/book.ts';
import type { Compiled } from '../../language/compile.ts';
import { createKeeper, type FileFinding } from '../../language/keeper.ts';
import { createLookup, usedUris } from '../../language/names/lookup.ts';
import { sectionsOf } from '../../language/names/sections.ts';
import { sayWay } from '../../language/words/way-name.ts';
import { newerNotation, NOTATION_VERSION } from '../../language/names/notation-version.ts';
import { CallError } from './call-error.ts';
import type { SourceFile } from './files.ts';

export interface OpenedFile {
  /** As it is printed. */
  readonly name: string;
  readonly uri: string;
  /** How many plays it holds. */
  readonly count: number;
  readonly plays: () => readonly Compiled[];
  readonly findings: () => readonly FileFinding[];
  /** The sections of its books, each with the plays it names, wherever they stand. */
  readonly sections: () => readonly { readonly name: string; readonly plays: readonly { readonly uri: string; readonly key: string }[] }[];
  /** The plays of a file that it uses. */
  readonly playsAt: (uri: string) => readonly Compiled[];
  /** The text of a line of the file, from 0. */
  readonly line: (at: number) => string;
  /** The lines of a play that cannot be read, from 1, and the file they stand in: a book names plays of others. */
  readonly notRead: (play: Compiled) => { readonly name: string; readonly lines: readonly number[] };
  /** The way a finding speaks of, in words, and what its moments are counted from. */
  readonly wayOf: (finding: FileFinding) => { readonly way?: string; readonly zero?: string };
  /** Lets go of what is compiled: a thousand files at once would fill the memory with plays that nobody asks for again. */
  readonly done: () => void;
}

/** The files in the order given. One in a newer notation is refused: nobody can know what its lines mean. */
export function openBook(sources: readonly SourceFile[]): readonly OpenedFile[] {
  const { files, refused } = openReadable(sources);
  if (refused[0] !== undefined) throw new CallError(refused[0]);
  return files;
}

/** As `openBook`; what is refused is told file by file, and the others are there all the same. */
export function openReadable(sources: readonly SourceFile[]): { readonly files: readonly OpenedFile[]; readonly refused: readonly string[] } {
  const named = sources.map(({ name, text }) => ({ name, text, uri: pathToFileURL(name).href }));
  const book = withUsedFiles(setFiles(emptyBook, named.map(({ uri, text }) => [uri, text])));
  const refused = named.flatMap(({ name, uri }) => refusalOf(name, book, uri) ?? []);
  const files = named.filter(({ name, uri }) => refusalOf(name, book, uri) === undefined).map(({ name, uri }): OpenedFile => {
    const { blocks } = book.files.get(uri)!;
    const lines = blocks.flatMap((block) => block.lines);
    let keeper = createKeeper();
    return {
      name,
      uri,
      count: blocks.filter(({ kind }) => kind === 'play').length,
      plays: () => keeper.playsOf(book, uri),
      findings: () => keeper.findingsOf(book, uri),
      sections: () => sectionsIn(book, uri),
      playsAt: (used) => keeper.playsOf(book, used),
      line: (at) => (lines[at] === undefined ? '' : lineText(lines[at])),
      notRead: ({ block }) => {
        const [at, file] = [...book.files].find(([, { blocks: all }]) => all.includes(block))!;
        return { name: at === uri ? name : relative('', fileURLToPath(at)), lines: notReadIn(file, block) };
      },
      wayOf: ({ block, run }) => {
        const compiled = run === undefined ? undefined : keeper.playsOf(book, uri).find(({ key }) => key === block);
        if (compiled === undefined || run === undefined) return {};
        return { way: inEnglish(sayWay(compiled.play, run)), zero: compiled.play.start.throwIn === undefined ? 'the call' : 'the hand-over' };
      },
      done: () => void (keeper = createKeeper()),
    };
  });
  return { files, refused };
}

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
function withUsedFiles(book: Book): Book {
  let read = book;
  const tried = new Set(book.files.keys());
  const waiting = [...book.files.values()].flatMap(usedUris);
  for (const { uri } of waiting) {
    if (tried.has(uri)) continue;
    tried.add(uri);
    const text = textAt(uri);
    if (text === undefined) continue;
    read = openFile(read, uri, text);
    waiting.push(...usedUris(read.files.get(uri)!));
  }
  return read;
}

function textAt(uri: string): string | undefined {
  try {
    return readFileSync(fileURLToPath(uri), 'utf8');
  } catch {
    return undefined;
  }
}
