// What is kept of a book between edits: a keystroke costs what its own play costs, however long the file is.
import { blocksBetween, type Block, type Book } from './book/book.ts';
import { keptByBlock } from './book/kept-by-block.ts';
import { entryOf } from './checks/catalogue.ts';
import type { Finding } from './checks/finding.ts';
import { findingsOfOther } from './checks/other-blocks.ts';
import { mayHaveOpened } from './checks/unreadable.ts';
import { compilePlay, hasGap, isBlock, type Compiled } from './compile.ts';
import { createLookup, stillAnswers, type Asked } from './names/lookup.ts';
import { unknownPlays } from './names/section-problems.ts';
import { uncountedPaces } from './names/uncounted-paces.ts';
import { keepOnly, keepSurroundings, type Surroundings } from './names/surroundings.ts';
import { useProblems } from './names/use-problems.ts';
import type { BlockKey } from './play/play.ts';
import { keepTimelines } from './timeline/timelines.ts';

/** A finding with its block: its file line is `firstLine + place.line`. */
export interface FileFinding extends Finding {
  readonly block: BlockKey;
  readonly firstLine: number;
  /** The play's name; absent outside a play. */
  readonly play?: string;
}

/** What is told of one block. */
export interface ToldBlock {
  readonly block: Block;
  readonly firstLine: number;
  /** The same list for as long as the same is told. */
  readonly findings: readonly Finding[];
}

export interface Keeper {
  /** The play of a block; compiled again only when its lines, the file's settings or the answer to one of its names have changed. */
  readonly compile: (book: Book, uri: string, block: Block) => Compiled;
  readonly playsOf: (book: Book, uri: string) => readonly Compiled[];
  /** The plays of a file that may have to be compiled before all is known of it. */
  readonly unknownIn: (book: Book, uri: string) => readonly Block[];
  /** The blocks of a file of which something is told, in text order. */
  readonly toldIn: (book: Book, uri: string) => readonly ToldBlock[];
  /** Everything wrong with a file, in text order; or with the blocks of some of its lines, both ends included, without compiling the others. */
  readonly findingsOf: (book: Book, uri: string, from?: number, to?: number) => readonly FileFinding[];
}

interface Kept {
  readonly uri: string;
  readonly asked: readonly Asked[];
  readonly headGap: boolean;
  readonly compiled: Compiled;
  /** Those in which it was last found to hold. */
  surroundings: Surroundings;
}

/** A block with what is wrong with it. `lasting`: that stays so while the block and what surrounds the plays of its file stay. */
interface Looked {
  readonly block: Block;
  readonly findings: readonly Finding[];
  readonly lasting: boolean;
  readonly losesName: boolean;
}

/** All blocks of a file, looked through in one state of the book. */
interface Pass {
  readonly surroundings: Surroundings;
  readonly looked: readonly Looked[];
}

/** Keeps plays on the block objects themselves: what a book no longer holds is forgotten with it. */
export function createKeeper(): Keeper {
  const kept = new WeakMap<Block, Kept>();
  const passes = new Map<string, Pass>();
  const timelines = keepTimelines();
  const surroundingsOf = keepSurroundings();

  const compile: Keeper['compile'] = (book, uri, block) => {
    const surroundings = surroundingsOf(book, uri);
    const known = kept.get(block);
    if (known?.surroundings === surroundings && !looksIntoPlays(known.asked)) return known.compiled;
    const headGap = headGapOf(book, uri);
    if (known !== undefined && known.uri === uri && known.headGap === headGap && stillAnswers(known.asked, book)) {
      known.surroundings = surroundings;
      return known.compiled;
    }
    const lookup = createLookup(book, uri);
    const compiled = compilePlay(block, lookup, headGap, timelines);
    kept.set(block, { uri, asked: lookup.asked, headGap, compiled, surroundings });
    return compiled;
  };

  const playsOf: Keeper['playsOf'] = (book, uri) => playsIn(blocksOf(book, uri)).map((block) => compile(book, uri, block));

  /** Block by block what the last pass found, where that lasts. An edit leaves the blocks above and below what they were. */
  const lastingIn = (book: Book, uri: string): readonly (Looked | undefined)[] => {
    const blocks = blocksOf(book, uri);
    const before = passes.get(uri);
    if (before === undefined || before.surroundings !== surroundingsOf(book, uri)) return blocks.map(() => undefined);
    const { looked } = before;
    const shorter = Math.min(blocks.length, looked.length);
    let above = 0;
    while (above < shorter && blocks[above] === looked[above]!.block) above++;
    let below = 0;
    while (below < shorter - above && blocks[blocks.length - 1 - below] === looked[looked.length - 1 - below]!.block) below++;
    return blocks.map((_, at) => {
      const one = at < above ? looked[at] : at >= blocks.length - below ? looked[at - blocks.length + looked.length] : undefined;
      return one?.lasting === true ? one : undefined;
    });
  };

  const unknownIn: Keeper['unknownIn'] = (book, uri) => {
    const lasting = lastingIn(book, uri);
    return playsIn(blocksOf(book, uri).filter((_, at) => lasting[at] === undefined));
  };

  const lookAt = (book: Book, uri: string, block: Block): Looked => {
    const losesName = mayHaveLostName(block);
    if (block.kind !== 'play') {
      const findings = findingsOfOther(block, block.kind === 'file' ? useProblems(book, uri) : [], block.kind === 'book' ? unknownPlays(book, uri, block) : [], block.kind === 'roster' ? uncountedPaces(book, uri, block) : undefined);
      return { block, findings, lasting: false, losesName };
    }
    const { findings } = compile(book, uri, block);
    const asked = kept.get(block)?.asked ?? [];
    const copied = new Set(findings.length === 0 ? [] : copiedFindings(book, uri, block, asked).map(sameAs));
    return { block, findings: copied.size === 0 ? findings : findings.filter((finding) => !copied.has(sameAs(finding))), lasting: !looksIntoPlays(asked), losesName };
  };

  /** What is wrong with the plays that this compiled one copies, in the same file: it is told there. */
  const copiedFindings = (book: Book, uri: string, block: Block, asked: readonly Asked[]): readonly Finding[] =>
    asked.flatMap(({ kind, answer, uri: asker }) =>
      kind === 'play' && asker === uri && isBlock(answer) && answer !== block && blocksOf(book, uri).includes(answer) ? compile(book, uri, answer).findings : [],
    );

  const toldIn: Keeper['toldIn'] = (book, uri) => {
    const blocks = blocksOf(book, uri);
    const looked = lastingIn(book, uri).map((lasting, at) => lasting ?? lookAt(book, uri, blocks[at]!));
    keepOnly(passes, book);
    passes.set(uri, { surroundings: surroundingsOf(book, uri), looked });
    const namesLost = looked.some(({ losesName }) => losesName);
    const told: ToldBlock[] = [];
    let firstLine = 0;
    for (const { block, findings } of looked) {
      const some = namesLost ? findings.filter(isNoName) : findings;
      if (some.length > 0) told.push({ block, firstLine, findings: some });
      firstLine += block.lines.length;
    }
    return told;
  };

  const findingsOf: Keeper['findingsOf'] = (book, uri, from, to = from) => {
    const file = book.files.get(uri);
    if (file === undefined) return [];
    if (from === undefined || to === undefined) return toldIn(book, uri).flatMap(inFile);
    const namesLost = file.blocks.some(mayHaveLostName);
    return blocksBetween(file, from, to).flatMap(({ block, firstLine }) => {
      const { findings } = lookAt(book, uri, block);
      return inFile({ block, firstLine, findings: namesLost ? findings.filter(isNoName) : findings });
    });
  };

  return { compile, playsOf, unknownIn, toldIn, findingsOf };
}

const mayHaveLostName = keptByBlock(({ lines }) => lines.some(({ parsed }) => mayHaveOpened(parsed)));

/** A line that cannot be read may have given the name that another misses. */
const isNoName = ({ code }: Finding): boolean => entryOf(code)?.needs !== 'names';

/** Something was looked up in another play, whose lines may change. */
const looksIntoPlays = (asked: readonly Asked[]): boolean => asked.some(({ kind }) => kind === 'play');

function inFile({ block, firstLine, findings }: ToldBlock): readonly FileFinding[] {
  return findings.map((finding) => ({ ...finding, block: block.key, firstLine, ...(block.kind === 'play' && block.name !== undefined && { play: block.name }) }));
}

function blocksOf(book: Book, uri: string): readonly Block[] {
  return book.files.get(uri)?.blocks ?? [];
}

function playsIn(blocks: readonly Block[]): readonly Block[] {
  return blocks.filter(({ kind }) => kind === 'play');
}

function sameAs({ code, part, message }: Finding): string {
  return `${code} ${part} ${message}`;
}

function headGapOf(book: Book, uri: string): boolean {
  const header = blocksOf(book, uri)[0];
  return header?.kind === 'file' && hasGap(header);
}
