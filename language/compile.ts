// One play through all layers, and what is kept between edits. Nothing else knows all layers.
import type { Block, Book } from './book/book.ts';
import { entryOf } from './checks/catalogue.ts';
import { checkPlay } from './checks/check-play.ts';
import type { Finding } from './checks/finding.ts';
import { leavesGap, mayHaveOpened } from './checks/unreadable.ts';
import { findingsOfOther } from './checks/other-blocks.ts';
import { courtOf, type Court } from './court/court.ts';
import { ruleSet } from './court/rule-sets.ts';
import { applyIntent } from './edit/apply-intent.ts';
import type { Intent, Outcome } from './edit/intent.ts';
import { parseLine } from './grammar/parse-line.ts';
import { createLookup, stillAnswers, type Asked, type Lookup } from './names/lookup.ts';
import { unknownPlays } from './names/section-problems.ts';
import { useProblems } from './names/use-problems.ts';
import type { BlockKey, Places, Play } from './play/play.ts';
import { readPlay, type Reading } from './play/read-play.ts';
import { stepOpenings } from './timeline/openings.ts';
import { keepTimelines, timelinesOf } from './timeline/timelines.ts';
import type { Timeline } from './timeline/timeline.ts';

/** Everything known of one play. */
export interface Compiled {
  readonly key: BlockKey;
  readonly block: Block;
  readonly reading: Reading;
  readonly play: Play;
  readonly places: Places;
  readonly court: Court;
  readonly timeline: Timeline;
  /** In text order; places count from the block's first line. */
  readonly findings: readonly Finding[];
}

/** Compiles one play. Pure, and never throws: what cannot be read or scheduled is among the findings. `headGap`: a line of the file's header cannot be read. */
export function compilePlay(block: Block, lookup: Lookup, headGap = false, timelines = timelinesOf): Compiled {
  const reading = readPlay(block, lookup, stepOpenings);
  const { play, places } = reading;
  const { own: timeline, also } = timelines(play);
  const gapAbove = headGap || lookup.asked.some(({ kind, answer }) => kind !== 'roster' && isBlock(answer) && hasGap(answer));
  const findings = checkPlay({ lines: block.lines.map(({ parsed }) => parsed), reading, timeline, headGap: gapAbove, also });
  return { key: block.key, block, reading, play, places, court: courtOf(ruleSet(play.rules.value)), timeline, findings };
}

/** What a play copies from another is as unsure as that other is readable. */
const hasGap = keptByBlock(({ lines }) => lines.some(({ parsed }) => leavesGap(parsed)));
const mayHaveLostName = keptByBlock(({ lines }) => lines.some(({ parsed }) => mayHaveOpened(parsed)));

/** Asked of every block at every keystroke, and the same for as long as the block is: its lines are read once. */
function keptByBlock(ask: (block: Block) => boolean): (block: Block) => boolean {
  const kept = new WeakMap<Block, boolean>();
  return (block) => {
    const known = kept.get(block) ?? ask(block);
    kept.set(block, known);
    return known;
  };
}

function isBlock(answer: unknown): answer is Block {
  return typeof answer === 'object' && answer !== null && 'lines' in answer;
}

/** A finding with its block: its file line is `firstLine + place.line`. */
export interface FileFinding extends Finding {
  readonly block: BlockKey;
  readonly firstLine: number;
  /** The play's name; absent outside a play. */
  readonly play?: string;
}

export interface Keeper {
  /** The play of a block; compiled again only when its lines, the file's settings or the answer to one of its names have changed. */
  readonly compile: (book: Book, uri: string, block: Block) => Compiled;
  readonly playsOf: (book: Book, uri: string) => readonly Compiled[];
  /** Everything wrong with a file, in text order; or with the block of one of its lines, without compiling the others. */
  readonly findingsOf: (book: Book, uri: string, atLine?: number) => readonly FileFinding[];
}

interface Kept {
  readonly uri: string;
  readonly asked: readonly Asked[];
  readonly headGap: boolean;
  readonly compiled: Compiled;
}

/** Keeps results on the block objects themselves: what a book no longer holds is forgotten with it. */
export function createKeeper(): Keeper {
  const kept = new WeakMap<Block, Kept>();
  const timelines = keepTimelines();

  const compile: Keeper['compile'] = (book, uri, block) => {
    const headGap = headGapOf(book, uri);
    const known = kept.get(block);
    if (known !== undefined && known.uri === uri && known.headGap === headGap && stillAnswers(known.asked, book)) return known.compiled;
    const lookup = createLookup(book, uri);
    const compiled = compilePlay(block, lookup, headGap, timelines);
    kept.set(block, { uri, asked: lookup.asked, headGap, compiled });
    return compiled;
  };

  const playsOf: Keeper['playsOf'] = (book, uri) =>
    (book.files.get(uri)?.blocks ?? []).filter(({ kind }) => kind === 'play').map((block) => compile(book, uri, block));

  const findingsOf: Keeper['findingsOf'] = (book, uri, atLine) => {
    const blocks = book.files.get(uri)?.blocks ?? [];
    const nameLost = blocks.some(mayHaveLostName);
    const found: FileFinding[] = [];
    let firstLine = 0;
    for (const block of blocks) {
      if (atLine !== undefined && (atLine < firstLine || atLine >= firstLine + block.lines.length)) {
        firstLine += block.lines.length;
        continue;
      }
      const findings = block.kind === 'play' ? compile(book, uri, block).findings : findingsOfOther(block, block.kind === 'file' ? useProblems(book, uri) : [], block.kind === 'book' ? unknownPlays(book, uri, block) : []);
      const copied = new Set(findings.length > 0 && block.kind === 'play' ? copiedFindings(book, uri, block).map(sameAs) : []);
      for (const finding of findings) {
        if (nameLost && entryOf(finding.code)?.needs === 'names') continue;
        if (copied.has(sameAs(finding))) continue;
        found.push({ ...finding, block: block.key, firstLine, ...(block.kind === 'play' && block.name !== undefined && { play: block.name }) });
      }
      firstLine += block.lines.length;
    }
    return found;
  };

  /** What is wrong with the plays that this compiled one copies, in the same file: it is told there. */
  const copiedFindings = (book: Book, uri: string, block: Block): readonly Finding[] => {
    const asked = kept.get(block)?.asked ?? [];
    return asked.flatMap(({ kind, answer, uri: asker }) =>
      kind === 'play' && asker === uri && isBlock(answer) && answer !== block && book.files.get(uri)?.blocks.includes(answer) ? compile(book, uri, answer).findings : [],
    );
  };

  return { compile, playsOf, findingsOf };
}

function sameAs({ code, part, message }: Finding): string {
  return `${code} ${part} ${message}`;
}

function headGapOf(book: Book, uri: string): boolean {
  const header = book.files.get(uri)?.blocks[0];
  return header?.kind === 'file' && hasGap(header);
}

/** Edits of a play's text that do what somebody did with his hand, or why not. */
export function intentOn(compiled: Compiled, lookup: Lookup, intent: Intent): Outcome {
  const { block, reading, court } = compiled;
  return applyIntent({ block, reading, court, readAgain: (lines) => readPlay(withLines(block, lines), lookup, stepOpenings) }, intent);
}

function withLines(block: Block, lines: readonly string[]): Block {
  return { ...block, lines: lines.map((text, at) => ({ parsed: block.lines[at]?.parsed.text === text ? block.lines[at].parsed : parseLine(text), eol: '\n' })) };
}
