// Two versions of a playbook, opened and held against each other: what every form of `setwright compare` tells.
import type { BookFile } from '../../language/book/book.ts';
import { compareBlocks, type BlockChange } from '../../language/compare/compare-blocks.ts';
import { changedFindings, comparePlays, type FindingsChange, type PlayChange } from '../../language/compare/compare-plays.ts';
import type { Compiled } from '../../language/compile.ts';
import type { Finding } from '../../language/checks/finding.ts';
import type { FileFinding } from '../../language/keeper.ts';
import { nameKey } from '../../language/names/name-key.ts';
import type { SourceFile } from './files.ts';
import { remarkOnLinesNotRead } from './lines-not-read.ts';
import { openBook, type OpenedFile, type Shelf } from './open-book.ts';
import { withBooksFiles, type PlayInFile } from './plays-named.ts';

export type Change = PlayChange<Compiled>;

export interface Comparison {
  readonly changes: readonly Change[];
  readonly blocks: readonly BlockChange[];
  /** What is said of what is no play: a book, a roster, the head of a file. */
  readonly beside: FindingsChange<PlacedFinding>;
  /** How many plays the later version has. */
  readonly plays: number;
  readonly fileOf: (play: Compiled) => string;
  /** The line of the file, from 1. */
  readonly lineOf: (play: Compiled, finding: Finding) => number;
  readonly fileOfBlock: (change: BlockChange) => string;
}

export interface PlacedFinding extends FileFinding {
  readonly file: string;
  /** Of the file, from 1. */
  readonly line: number;
}

export interface VersionToRead {
  readonly sources: readonly SourceFile[];
  readonly shelf?: Shelf;
}

export function compareVersions(before: VersionToRead, after: VersionToRead): Comparison {
  const [was, is] = [before, after].map(opened) as [Version, Version];
  remarkOnLinesNotRead(was.plays, true);
  remarkOnLinesNotRead(is.plays);
  const changes = comparePlays(was.plays.map(({ play }) => play), is.plays.map(({ play }) => play));
  const fileOf = new Map([...was.plays, ...is.plays].map(({ file, play }) => [play, file]));
  const renamed = new Map(changes.flatMap((change) => (change.kind === 'changed' && change.renamed ? [[nameKey(change.before.play.name), change.after.play.name] as const] : [])));
  return {
    changes,
    blocks: compareBlocks(was.reached.map(asBookFile), is.reached.map(asBookFile), renamed),
    beside: changedFindings(was.beside, is.beside),
    plays: is.plays.length,
    fileOf: (play) => fileOf.get(play)!.name,
    lineOf: (play, { place }) => fileOf.get(play)!.firstLineOf(play) + place.line,
    fileOfBlock: ({ kind, uri }) => (kind === 'went' ? was : is).reached.find((file) => file.uri === uri)!.name,
  };
}

const once = (files: readonly OpenedFile[]): readonly OpenedFile[] => files.filter(({ uri }, at) => files.findIndex((one) => one.uri === uri) === at);

interface Version {
  readonly plays: readonly PlayInFile[];
  readonly beside: readonly PlacedFinding[];
  /** What was named, and what that uses. */
  readonly reached: readonly OpenedFile[];
}

/** The plays of the files; of a file with a book also those of the files it uses, which are the plays it puts in order. */
function opened({ sources, shelf }: VersionToRead): Version {
  const named = openBook(sources, shelf);
  const told = withBooksFiles(named);
  const beside = told.flatMap((file) => file.findings().flatMap((finding) => (finding.play === undefined ? [{ ...finding, file: file.name, line: finding.firstLine + finding.place.line + 1 }] : [])));
  return { plays: told.flatMap((file) => file.plays().map((play) => ({ file, play }))), beside, reached: once([...told, ...named.flatMap((file) => file.used())]) };
}

function asBookFile({ uri, blocks }: OpenedFile): BookFile {
  return { uri, blocks };
}
