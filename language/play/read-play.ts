// A block of lines → the play as the coach wrote it. Any text gives a play: what cannot be read is left out and said.
import type { Block } from '../book/book.ts';
import type { LineTree, StatementTree } from '../grammar/tree.ts';
import { spanOf } from '../grammar/tree.ts';
import { courtOf } from '../court/court.ts';
import { ruleSet } from '../court/rule-sets.ts';
import type { Lookup } from '../names/lookup.ts';
import { bodiesNamed } from './kept.ts';
import type { BodyId, LineKey, PartId, Places, Play, Step, StepKey, TextPlace } from './play.ts';
import type { Problem } from './problem.ts';
import type { ReadingProblem } from './problem-codes.ts';
import type { LineKind, LineMeaning } from './line-meaning.ts';
import { countsAsLine } from './line-meaning.ts';
import { collectAnnotations, collectStepAnnotations } from './collect-annotations.ts';
import { collectHeaders, headerOf, isHeader, readClockLines, readDefence, readLevel, readSituation, rulesMeant } from './read-headers.ts';
import type { HeaderLine } from './read-headers.ts';
import { readOwnSpots } from './own-spots.ts';
import { isThrowInVerb, readStart } from './read-start.ts';
import type { StartLines } from './read-start.ts';
import { readStep } from './read-step.ts';
import type { StepLines } from './read-step.ts';
import type { Reader } from './reader.ts';
import { putGap, putPart, report } from './reader.ts';
import type { Ball } from './scope.ts';
import type { StepHead } from './steps.ts';
import { orderSteps, stepHeads } from './steps.ts';
import { continuedStart, mirroredPlay, withHeadersOf } from './copied-play.ts';
import { copiesOf } from './read-copies.ts';
import type { Reading } from './reading.ts';

export type { LineKind, LineMeaning } from './line-meaning.ts';
export type { Reading } from './reading.ts';

/** Reads a play's block. Nothing throws for any text; a line with a fault is left out and costs that line only. */
export function readPlay(block: Block, lookup: Lookup): Reading {
  return readFrom(block, lookup, []);
}

/** `above` are the blocks that a mirrored or continued play is read for: none of them may be its source again. */
function readFrom(block: Block, lookup: Lookup, above: readonly Block[]): Reading {
  const lines = block.lines.map(line => line.parsed);
  const trees = lines.map(line => (line.fault === undefined ? line.tree : undefined));
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

  const { heads, headOfLine, preStep } = cutSteps(block, trees);
  const order = orderSteps(reader, heads);
  const situation = readSituation(headers);
  const own = readStart(reader, startLines(headers, situation, throwInLine(trees, preStep, heads, order.order)), gap);
  const source = readSource(reader, block, trees[0], above);
  const start = source?.start === undefined ? own : { ...source.start, ...(headers.has('from') ? { places: own.places } : {}) };

  for (const line of preStep) if (heads[0]?.line !== line && isSafety(trees[line])) reportSafety(reader, trees[line]!, line);

  const steps = new Map<StepKey, Step>();
  const ballAtStart = new Map<StepKey, Ball>();
  const ballAtEnd = new Map<StepKey, Ball>();
  const copies = new Map<StepKey, readonly Step[]>();
  const first: Ball = { holder: `${start.ball.value}` as BodyId, out: start.throwIn !== undefined };
  const meaningOfLine = new Map<number, LineMeaning>();
  const read = (head: StepHead): void => {
    const link = order.links.get(head.key) ?? { parent: null, how: 'plain' as const };
    let ball = link.parent === null ? first : (ballAtEnd.get(link.parent) ?? first);
    if (order.links.has(head.key)) {
      const made = copiesOf(reader, head, { parent: realKey(link.parent), ball }, { heads, links: order.links, steps, ballAtStart });
      if (made !== undefined) {
        copies.set(head.key, made.steps);
        ball = made.ball;
      }
    }
    ballAtStart.set(head.key, ball);
    const replaced = link.insteadOf === undefined ? undefined : steps.get(link.insteadOf);
    const stepLines: StepLines = { head, link, ball, trees, ...(replaced === undefined ? {} : { replaced }), named: bodiesNamed(head.lines.map(line => lines[line]!)) };
    const done = readStep(reader, stepLines, key => treeOfLineKey(lines, heads, key));
    steps.set(head.key, done.step);
    ballAtEnd.set(head.key, done.ball);
    for (const [line, meaning] of done.lines) meaningOfLine.set(line, meaning);
  };
  /** A step that only asks for copies is no step itself: its last copy stands for it. */
  const realKey = (key: StepKey | null): StepKey | null => {
    const last = key === null ? undefined : copies.get(key)?.at(-1);
    return last === undefined || hasOwnLines(steps.get(key!)) ? key : last.key;
  };
  const headOf = new Map(heads.map(head => [head.key, head]));
  for (const key of order.order) read(headOf.get(key)!);
  for (const head of heads) if (!steps.has(head.key)) read(head);

  const played = heads.filter(head => order.links.has(head.key)).flatMap(head => {
    const step = steps.get(head.key)!;
    const made = copies.get(head.key) ?? [];
    const parent = made.at(-1)?.key ?? realKey(step.parent);
    return realKey(head.key) === head.key ? [...made, { ...step, parent }] : made;
  });
  const leftOut = heads.filter(head => source?.steps !== undefined || !order.links.has(head.key)).map(head => steps.get(head.key)!);
  const open = collectAnnotations(reader, trees, preStep);
  const inSteps = heads.filter(head => order.links.has(head.key)).map(head => collectStepAnnotations(reader, trees, head));
  const all = [open, ...inSteps];
  for (const annotations of all) for (const [line, part] of annotations.parts) meaningOfLine.set(line, { kind: 'annotation', actions: [], part });

  const ownPlay: Play = {
    key: block.key,
    name: block.name ?? 'unnamed 1',
    level: readLevel(reader, headers),
    rules,
    alsoRules: ownRules?.$type === 'Rules' ? ownRules.also : lookup.settings.alsoRules,
    tags: headerOf(headers, 'Tags')?.tree.tags ?? [],
    situation,
    start,
    defence: readDefence(headers),
    clock: readClockLines(reader, headers, rules.value),
    steps: source?.steps ?? played,
    rebounds: all.flatMap(annotations => annotations.rebounds),
    notes: all.flatMap(annotations => annotations.notes),
    demands: all.flatMap(annotations => annotations.demands),
    allowances: all.flatMap(annotations => annotations.allowances),
    spots: { ...source?.spots, ...Object.fromEntries(spots) },
  };
  const play = source?.whole === undefined ? ownPlay : withHeadersOf(ownPlay, source.whole);
  const meanings = lines.map((_, line) => lineMeaning(reader, trees[line], line, meaningOfLine.get(line), withRealKey(headOfLine.get(line), realKey)));
  return { play, places: parts, problems: withoutRepeats(problems), lines: meanings, leftOut };
}

function hasOwnLines(step: Step | undefined): boolean {
  return step !== undefined && (step.actions.length > 0 || step.looks.length > 0 || step.end !== undefined);
}

function withRealKey(head: StepHead | undefined, realKey: (key: StepKey) => StepKey | null): StepHead | undefined {
  return head === undefined ? undefined : { ...head, key: realKey(head.key) ?? head.key };
}

// ---- a play made from another -------------------------------------------------------------------------------------

type FromSource = Partial<Pick<Play, 'steps' | 'start' | 'spots'>> & { readonly whole?: Play };

/** What the play that this one mirrors or continues gives it. All its parts stand where its name is written. */
function readSource(reader: Reader, block: Block, head: LineTree | undefined, above: readonly Block[]): FromSource | undefined {
  if (head?.$type !== 'PlayHead') return undefined;
  const name = head.mirrors ?? head.continues;
  if (name === undefined) return undefined;
  const columns = spanOf(head, head.mirrors === undefined ? 'continues' : 'mirrors');
  putPart(reader, 'play#source', 0, columns);
  const found = reader.lookup.play(name);
  if (found === undefined) {
    report(reader, 'unknown-play', 'play#source', { name });
    return undefined;
  }
  if (found.block === block || above.includes(found.block)) {
    report(reader, 'copy-loop', 'play#source', { name });
    return undefined;
  }
  const source = readFrom(found.block, found.lookup, [...above, block]);
  if (source.problems.some(({ code, part }) => code === 'copy-loop' && part === 'play#source')) report(reader, 'copy-loop', 'play#source', { name });
  if (head.mirrors === undefined) {
    const start = continuedStart(source, head.after);
    if (start === undefined) report(reader, 'unknown-step', 'play#source', { name: head.after ?? '', step: block.name ?? '' });
    return start === undefined ? undefined : { start };
  }
  const own = reader.lines.some(line => line.opens === 'step');
  if (own) report(reader, 'not-yet', 'play#source', { what: 'steps of its own in a play that mirrors another' });
  for (const [part] of source.places) if (!reader.parts.has(part)) putPart(reader, part, 0, columns);
  return mirroredPlay(source.play);
}

// ---- cutting the block into steps ---------------------------------------------------------------------------------

interface CutSteps {
  readonly heads: readonly StepHead[];
  readonly headOfLine: ReadonlyMap<number, StepHead>;
  /** Lines above the first step that are no step of their own. */
  readonly preStep: readonly number[];
}

function cutSteps(block: Block, trees: readonly (LineTree | undefined)[]): CutSteps {
  const openers = block.lines.flatMap(({ parsed }, line) => (parsed.opens === 'step' ? [line] : []));
  const above = range(1, openers[0] ?? block.lines.length);
  const written = openers.map((line, index) => {
    const { parsed } = block.lines[line]!;
    const tree = trees[line];
    return {
      line,
      lines: range(line + 1, openers[index + 1] ?? block.lines.length),
      ...(parsed.openName === undefined ? {} : { name: parsed.openName }),
      ...(tree?.$type === 'StepHead' ? { tree } : {}),
    };
  });
  const opensPlay = above.some(line => isStepLine(trees[line]));
  const heads = stepHeads(opensPlay ? [{ line: above.find(line => isStepLine(trees[line]))!, lines: above }, ...written] : written);
  const headOfLine = new Map<number, StepHead>();
  for (const head of heads) {
    headOfLine.set(head.line, head);
    for (const line of head.lines) headOfLine.set(line, head);
  }
  return { heads, headOfLine, preStep: above };
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);
}

/** Whether a line above the first step makes an unnamed one: it has a man do something, or is a look or an end. Who throws in is part of the start. */
function isStepLine(tree: LineTree | undefined): boolean {
  if (tree === undefined) return false;
  if (tree.$type === 'Look' || tree.$type === 'Ends') return true;
  return tree.$type === 'Statement' && !isStartOfThrowIn(tree);
}

function isStartOfThrowIn(tree: StatementTree): boolean {
  const { action } = tree.first;
  if (tree.links.length > 0 || action === undefined) return false;
  if (action.$type === 'ThrowIn') return !action.parts.some(part => part?.$type === 'PassTo');
  return action.$type === 'Role';
}

function isSafety(tree: LineTree | undefined): boolean {
  return tree?.$type === 'Statement' && tree.first.action?.$type === 'Role' && tree.first.action.verb === 'is the safety';
}

function reportSafety(reader: Reader, tree: LineTree, line: number): void {
  putPart(reader, 'safety', line, tree);
  report(reader, 'not-yet', 'safety', { what: 'the safety' });
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

/** The first throw-in of the play, where it stands above the first step or in the step the play begins with. */
function throwInLine(trees: readonly (LineTree | undefined)[], preStep: readonly number[], heads: readonly StepHead[], order: readonly StepKey[]): StartLines['throwIn'] {
  const root = heads.find(head => head.key === order[0]);
  const lines = [...new Set([...preStep, ...(root?.lines ?? [])])];
  for (const line of lines) {
    const tree = trees[line];
    if (tree?.$type !== 'Statement') continue;
    for (const clause of [tree.first, ...tree.links.map(link => link.clause)]) {
      const action = clause?.action;
      if (action === undefined || action.$type === 'SameAgain') continue;
      const throws = action.$type === 'ThrowIn' ? isThrowInVerb(action.verb) : action.$type === 'Role' && action.verb === 'is the thrower';
      if (!throws || (action.$type !== 'ThrowIn' && action.$type !== 'Role')) continue;
      const subject = clause?.subject ?? tree.first.subject;
      const player = subject?.$type === 'Players' ? subject.players[0] : undefined;
      if (player?.number === undefined || player.defence) continue;
      return { tree: action, by: `${player.number}` as BodyId, line };
    }
  }
  return undefined;
}

// ---- what each line is --------------------------------------------------------------------------------------------

function lineMeaning(reader: Reader, tree: LineTree | undefined, line: number, known: LineMeaning | undefined, head: StepHead | undefined): LineMeaning {
  const parsed = reader.lines[line]!;
  const step = head === undefined ? {} : { step: head.key };
  const bare = (kind: LineKind, part?: PartId): LineMeaning => ({ kind, ...step, actions: [], ...(part === undefined ? {} : { part }) });
  if (line === 0 && parsed.opens === 'play') return { kind: parsed.fault === undefined ? 'opener' : 'broken', actions: [], part: 'play' };
  if (known !== undefined) return { ...step, ...known };
  if (parsed.opens === 'step') return bare(parsed.fault === undefined ? 'step' : 'broken', head?.key);
  if (parsed.fault !== undefined) return bare('broken');
  if (tree === undefined) return bare('blank');
  if (isHeader(tree)) return bare('header', tree.$type === 'ClockAt' ? 'call' : headerPartOf(tree));
  if (tree.$type === 'OwnSpot') return bare('header', `spot:${tree.name}`);
  if (tree.$type === 'Statement') return bare('action');
  const part = `line:${line}`;
  putPart(reader, part, line, tree);
  report(reader, 'line-elsewhere', part, { belongs: belongsTo(tree) });
  return bare('stray', part);
}

function headerPartOf(tree: LineTree): PartId {
  const parts: Readonly<Record<string, PartId>> = { BallWith: 'ball', ShotWindow: 'window', AlreadySet: 'already', InboundWithin: 'inbound' };
  return parts[tree.$type] ?? tree.$type.toLowerCase();
}

function belongsTo(tree: LineTree): string {
  const places: Readonly<Record<string, string>> = { Section: 'book', Entry: 'roster', Placing: 'alignment', Notation: 'file', Use: 'file' };
  return places[tree.$type] ?? 'file';
}

function treeOfLineKey(lines: Reader['lines'], heads: readonly StepHead[], key: LineKey): LineTree | undefined {
  const at = key.lastIndexOf(':');
  const head = heads.find(each => each.key === key.slice(0, at));
  if (head === undefined) return undefined;
  let count = 0;
  for (const line of head.lines) {
    if (!countsAsLine(lines[line]!)) continue;
    count++;
    if (count === Number(key.slice(at + 1))) return lines[line]!.tree;
  }
  return undefined;
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
