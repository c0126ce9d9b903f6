// A block of lines → the play as the coach wrote it. Any text gives a play: what cannot be read is left out and said.
import type { Block } from '../book/book.ts';
import type { LineTree } from '../grammar/tree.ts';
import { spanOf } from '../grammar/tree.ts';
import { courtOf } from '../court/court.ts';
import { ruleSet } from '../court/rule-sets.ts';
import type { Lookup } from '../names/lookup.ts';
import { collectAnnotations, collectStepAnnotations } from './collect-annotations.ts';
import { continuedStart, mirroredPlay, withHeadersOf } from './copied-play.ts';
import { cutSteps, throwInLine } from './cut-steps.ts';
import { lineMeaning } from './line-meaning.ts';
import { readOwnSpots } from './own-spots.ts';
import type { BodyId, PartId, Play, StepKey, TextPlace } from './play.ts';
import type { Problem } from '../names/problem.ts';
import type { ReadingProblem } from './problem-codes.ts';
import { collectHeaders, headerOf, isHeader, readClockLines, readDefence, readLevel, readSituation, rulesMeant } from './read-headers.ts';
import type { HeaderLine } from './read-headers.ts';
import { readNames } from './read-names.ts';
import { readPaces } from './read-paces.ts';
import { readStart } from './read-start.ts';
import type { StartLines } from './read-start.ts';
import { readSteps } from './read-steps.ts';
import type { Reader } from './reader.ts';
import { putGap, putPart, report } from './reader.ts';
import type { Reading, StepClock } from './reading.ts';
import { withoutOutlets } from './safety.ts';
import type { Ball } from './scope.ts';
import type { StepHead } from './steps.ts';
import { orderSteps } from './steps.ts';

export type { LineKind, LineMeaning } from './line-meaning.ts';
export type { Reading } from './reading.ts';

/**
 * Reads a play's block. Nothing throws for any text; a line with a fault is left out and costs that line only.
 * @param clock when steps open: asked only by a line that repeats steps for a time
 */
export function readPlay(block: Block, lookup: Lookup, clock?: StepClock): Reading {
  return readFrom(block, lookup, { above: [], ...(clock === undefined ? {} : { clock }) });
}

/** A play made from one that is made from another, and so on: no coach goes farther, and a longer chain is told as the circle it might be. */
const longestChain = 10;

interface Asking {
  /** The blocks that a mirrored or continued play is read for: none of them may be its source again. */
  readonly above: readonly Block[];
  readonly clock?: StepClock;
}

function readFrom(block: Block, lookup: Lookup, asking: Asking): Reading {
  const { clock } = asking;
  const lines = block.lines.map(line => line.parsed);
  const trees = lines.map(line => (line.fault === undefined ? line.tree : line.carriedOut));
  const parts = new Map<PartId, TextPlace>();
  const problems: ReadingProblem[] = [];
  const gap = lines[0]?.tree?.to ?? lines[0]?.text.length ?? 0;

  const headerLines = trees.flatMap((tree, line): HeaderLine[] => (tree !== undefined && isHeader(tree) ? [{ tree, line }] : []));
  const ownRules = headerLines.find(({ tree }) => tree.$type === 'Rules')?.tree;
  const rules = rulesMeant(lookup.settings, ownRules?.$type === 'Rules' ? ownRules.rules : undefined);
  const court = courtOf(ruleSet(rules.value));
  const spots = new Map<string, Play['spots'][string]>();
  const reader: Reader = { lines, lookup, court, parts, problems, spots: readOwnSpots({ trees, lookup, court, parts, problems, spots }) };
  if (trees[0]?.$type === 'PlayHead') putPart(reader, 'play', 0, trees[0]);
  else putGap(reader, 'play', 0, gap);
  const headers = collectHeaders(reader, headerLines, gap);

  const source = readSource(reader, block, trees[0], asking);
  const given = withoutOutlets(source?.steps ?? []);
  const { heads, headOfLine, preStep } = cutSteps(block, trees, given);
  const order = orderSteps(reader, heads, given);
  const situation = readSituation(headers);
  const own = readStart(reader, startLines(headers, situation, throwInLine(trees, preStep, heads, given.length > 0 ? [] : order.order)), gap);
  const start = source?.start === undefined ? own : { ...source.start, ...(headers.has('from') ? { places: own.places } : {}) };
  const bare: Play = {
    key: block.key,
    name: block.name ?? 'unnamed 1',
    level: readLevel(reader, headers),
    rules,
    alsoRules: ownRules?.$type === 'Rules' ? ownRules.also : lookup.settings.alsoRules,
    tags: headerOf(headers, 'Tags')?.tree.tags ?? [],
    situation,
    start,
    paces: readPaces(lookup.roster()),
    names: readNames(lookup.roster()),
    defence: readDefence(headers),
    clock: readClockLines(reader, headers, rules.value),
    steps: [],
    rebounds: [],
    notes: [],
    demands: [],
    allowances: [],
    spots: {},
  };
  // Those of the file come in as they are named.
  const spotsKnown = (): Play['spots'] => ({ ...source?.spots, ...Object.fromEntries(spots) });
  const withSource = (play: Play): Play => (source?.whole === undefined ? play : withHeadersOf(play, source.whole));
  const ball: Ball = { holder: `${start.ball.value}` as BodyId, out: start.throwIn !== undefined };
  const read = readSteps(reader, { heads, order, trees, given, ball, bare: () => withSource({ ...bare, spots: spotsKnown() }), ...(clock === undefined ? {} : { clock }) });
  const meaningOfLine = new Map(read.lines);
  const open = collectAnnotations(reader, trees, preStep);
  const inSteps = heads.filter(head => order.links.has(head.key)).map(head => collectStepAnnotations(reader, trees, head));
  const all = [open, ...inSteps];
  for (const annotations of all) for (const [line, part] of annotations.parts) meaningOfLine.set(line, { kind: 'annotation', actions: [], part });

  const play = withSource({
    ...bare,
    steps: read.steps,
    rebounds: all.flatMap(annotations => annotations.rebounds),
    notes: all.flatMap(annotations => annotations.notes),
    demands: all.flatMap(annotations => annotations.demands),
    allowances: all.flatMap(annotations => annotations.allowances),
    spots: spotsKnown(),
  });
  const meanings = lines.map((_, line) => lineMeaning(reader, trees[line], line, meaningOfLine.get(line), withRealKey(headOfLine.get(line), read.realKey)));
  return { play, places: parts, problems: withoutRepeats(problems), lines: meanings, leftOut: read.leftOut };
}

function withRealKey(head: StepHead | undefined, realKey: (key: StepKey) => StepKey): StepHead | undefined {
  return head === undefined ? undefined : { ...head, key: realKey(head.key) };
}

// ---- a play made from another -------------------------------------------------------------------------------------

type FromSource = Partial<Pick<Play, 'steps' | 'start' | 'spots'>> & { readonly whole?: Play };

/** What the play that this one mirrors or continues gives it. All its parts stand where its name is written. */
function readSource(reader: Reader, block: Block, head: LineTree | undefined, asking: Asking): FromSource | undefined {
  if (head?.$type !== 'PlayHead') return undefined;
  const name = head.mirrors ?? head.continues;
  if (name === undefined) return undefined;
  const columns = spanOf(head, head.mirrors === undefined ? 'continues' : 'mirrors');
  putPart(reader, 'play#source', 0, columns);
  const found = reader.lookup.play(name);
  if (found === undefined) {
    report(reader, 'unknown-play', 'play#source', { name, known: reader.lookup.names('play').filter(other => other !== block.name) });
    return undefined;
  }
  if (found.block === block || asking.above.includes(found.block) || asking.above.length >= longestChain) {
    report(reader, 'copy-loop', 'play#source', { name });
    return undefined;
  }
  const source = readFrom(found.block, found.lookup, { ...asking, above: [...asking.above, block] });
  if (source.problems.some(({ code, part }) => code === 'copy-loop' && part === 'play#source')) report(reader, 'copy-loop', 'play#source', { name });
  if (head.mirrors === undefined) {
    const start = continuedStart(source, head.after);
    if (start === undefined) report(reader, 'unknown-step', 'play#source', { name: head.after ?? '', step: block.name ?? '' });
    return start === undefined ? undefined : { start };
  }
  for (const [part] of source.places) if (!reader.parts.has(part)) putPart(reader, part, 0, columns);
  return mirroredPlay(source.play);
}

// ---- the start ----------------------------------------------------------------------------------------------------

function startLines(headers: ReturnType<typeof collectHeaders>, situation: readonly string[], throwIn: StartLines['throwIn']): StartLines {
  const from = headerOf(headers, 'From');
  const ball = headerOf(headers, 'BallWith');
  return {
    ...(from === undefined ? {} : { from }),
    ...(ball === undefined ? {} : { ball }),
    ...(throwIn === undefined ? {} : { throwIn }),
    situation,
    alreadySet: headerOf(headers, 'AlreadySet') !== undefined,
  };
}

function withoutRepeats(problems: readonly ReadingProblem[]): readonly Problem[] {
  const seen = new Set<string>();
  return problems.filter(problem => {
    const key = JSON.stringify(problem);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
