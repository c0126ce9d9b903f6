// The header lines of a play: what stands once, wherever it stands.
import type { LineTree, NodeOf } from '../grammar/tree.ts';
import { ruleSet } from '../court/rule-sets.ts';
import type { ClockLines, LevelId, PartId, Play, RuleSetId, Value } from './play.ts';
import type { Reader } from './reader.ts';
import { putGap, putPart, report } from './reader.ts';

type HeaderTree = Extract<LineTree, { readonly $type: 'Level' | 'Rules' | 'Tags' | 'From' | 'BallWith' | 'Against' | 'Call' | 'ShotWindow' | 'Leave' | 'Situation' | 'AlreadySet' | 'ClockAt' | 'InboundWithin' }>;

/** The part each header line is, by the type of its tree. Two lines of one part: the first counts. */
const partOfHeader: Readonly<Record<HeaderTree['$type'], PartId>> = {
  Level: 'level', Rules: 'rules', Tags: 'tags', From: 'from', BallWith: 'ball', Against: 'against', Call: 'call', ShotWindow: 'window', Leave: 'leave',
  Situation: 'situation', AlreadySet: 'already', ClockAt: 'call', InboundWithin: 'inbound',
};
const wordOfHeader: Readonly<Record<string, string>> = { window: 'shot', already: 'already set', ball: 'ball with', inbound: 'inbound within' };

export interface HeaderLine<Tree = HeaderTree> {
  readonly tree: Tree;
  readonly line: number;
}

export type HeaderLines = ReadonlyMap<PartId, HeaderLine>;

export function isHeader(tree: LineTree): tree is HeaderTree {
  return tree.$type in partOfHeader;
}

function headerPart(tree: HeaderTree): PartId {
  return partOfHeader[tree.$type];
}

/** The header lines by part. Places of all of them are put down, and of those that are not there: the end of the opening line. */
export function collectHeaders(reader: Reader, lines: readonly HeaderLine[], gap: number): HeaderLines {
  const headers = new Map<PartId, HeaderLine>();
  for (const line of lines) {
    const part = headerPart(line.tree);
    const first = headers.get(part);
    const both = first && together(first.tree, line.tree);
    if (first !== undefined && both !== undefined) headers.set(part, { ...first, tree: both });
    else if (first !== undefined) report(reader, 'header-twice', `${part}@${line.line}`, { word: wordOfHeader[part] ?? part }, [part]);
    else headers.set(part, line);
    putPart(reader, first === undefined ? part : `${part}@${line.line}`, line.line, line.tree);
  }
  for (const part of new Set(Object.values(partOfHeader))) if (!headers.has(part)) putGap(reader, part, 0, gap);
  return headers;
}

/** Words to find a play by, and what the game is like, may stand in several lines. */
function together(first: HeaderTree, second: HeaderTree): HeaderTree | undefined {
  if (first.$type === 'Tags' && second.$type === 'Tags') return { ...first, tags: [...first.tags, ...second.tags] };
  if (first.$type === 'Situation' && second.$type === 'Situation') return { ...first, parts: [...first.parts, ...second.parts] };
  return undefined;
}

/** The header line of a type, where the play has one. */
export function headerOf<Type extends HeaderTree['$type']>(headers: HeaderLines, type: Type): HeaderLine<Extract<HeaderTree, { readonly $type: Type }>> | undefined {
  const line = headers.get(partOfHeader[type]);
  return line?.tree.$type === type ? (line as HeaderLine<Extract<HeaderTree, { readonly $type: Type }>>) : undefined;
}

/** Common practice, no source: who writes plays for a club mostly coaches fourteen-year-olds under the world federation's rules. */
export const defaultLevel: LevelId = 'u14';
const defaultRules: RuleSetId = 'fiba';

/** A play's own line counts before its file's. What the file's header says has no words in the play: its origin is `derived`. */
export function readLevel(reader: Reader, headers: HeaderLines): Value<LevelId> {
  return ownOrFile(headerOf(headers, 'Level')?.tree.level, reader.lookup.settings.level, defaultLevel);
}

export function rulesMeant(settings: { readonly rules?: RuleSetId }, own: RuleSetId | undefined): Value<RuleSetId> {
  return ownOrFile(own, settings.rules, defaultRules);
}

function ownOrFile<T>(own: T | undefined, file: T | undefined, otherwise: T): Value<T> {
  if (own !== undefined) return { value: own, origin: 'written' };
  return file === undefined ? { value: otherwise, origin: 'default' } : { value: file, origin: 'derived' };
}

export function readSituation(headers: HeaderLines): readonly string[] {
  return (headerOf(headers, 'Situation')?.tree.parts ?? []).flatMap(part => {
    if (part === undefined) return [];
    if (part.$type === 'Score') return [`${part.how} ${part.by}`];
    return [part.$type === 'Remark' ? part.text : part.what];
  });
}

export function readDefence(headers: HeaderLines): Play['defence'] {
  const tree = headerOf(headers, 'Against')?.tree;
  if (tree === undefined) return { value: { kind: 'none' }, origin: 'default' };
  if (tree.formation === undefined) return { value: { kind: 'man', ...(tree.press ? { press: true as const } : {}) }, origin: 'written' };
  return { value: { kind: 'zone', zone: tree.press ? `${tree.formation} press` : tree.formation }, origin: 'written' };
}

export function readClockLines(reader: Reader, headers: HeaderLines, rules: RuleSetId): ClockLines {
  const call = headerOf(headers, 'Call');
  const clockAt = headerOf(headers, 'ClockAt');
  const leave = headerOf(headers, 'Leave')?.tree.time.seconds;
  const inboundWithin = headerOf(headers, 'InboundWithin')?.tree.time.seconds;
  const told = call ?? clockAt;
  const shotClock = told?.tree.shotClock;
  if (told !== undefined && shotClock !== undefined) putPart(reader, 'call#shot-clock', told.line, shotClock);
  const from = callOf(reader, call, clockAt);
  return {
    ...(from === undefined ? {} : { call: from }),
    ...(shotClock === undefined ? {} : { shotClock: shotClock.seconds }),
    ...windowOf(reader, headers, from?.to ?? ruleSet(rules).clock.periodSeconds.value),
    ...(leave === undefined ? {} : { leave }),
    ...(inboundWithin === undefined ? {} : { inboundWithin }),
  };
}

/** `from` is the least on the clock, `to` the most; both the same where one figure is written. `clock at 3 seconds` says the same of a play that starts there. */
function callOf(reader: Reader, call: HeaderLine<NodeOf<'Call'>> | undefined, clockAt: HeaderLine<NodeOf<'ClockAt'>> | undefined): ClockLines['call'] {
  if (call !== undefined) {
    const { low, time } = call.tree;
    putPart(reader, 'call#to', call.line, time);
    putPart(reader, 'call#from', call.line, low ?? time);
    const seconds = [low?.seconds ?? time.seconds, time.seconds];
    return { from: Math.min(...seconds), to: Math.max(...seconds) };
  }
  if (clockAt === undefined) return undefined;
  putPart(reader, 'call#from', clockAt.line, clockAt.tree.time);
  putPart(reader, 'call#to', clockAt.line, clockAt.tree.time);
  return { from: clockAt.tree.time.seconds, to: clockAt.tree.time.seconds };
}

function windowOf(reader: Reader, headers: HeaderLines, most: number): Pick<ClockLines, 'within' | 'between'> {
  const window = headerOf(headers, 'ShotWindow');
  if (window === undefined) return {};
  const { tree, line } = window;
  if (tree.within !== undefined) {
    putPart(reader, 'window#seconds', line, tree.within);
    return { within: { seconds: tree.within.seconds, of: tree.from ?? 'start' } };
  }
  // Any time before the horn: from the most the clock can show at the call.
  if (tree.beforeHorn) return { between: { from: most, to: 0 } };
  if (tree.by !== undefined || tree.notBefore !== undefined) {
    if (tree.by !== undefined) putPart(reader, 'window#to', line, tree.by);
    if (tree.notBefore !== undefined) putPart(reader, 'window#from', line, tree.notBefore);
    return { between: { from: tree.notBefore?.seconds ?? most, to: tree.by?.seconds ?? 0 } };
  }
  if (tree.early === undefined || tree.late === undefined) return {};
  putPart(reader, 'window#from', line, tree.early);
  putPart(reader, 'window#to', line, tree.late);
  const seconds = [tree.early.seconds, tree.late.seconds];
  const between = { from: Math.max(...seconds), to: Math.min(...seconds) };
  return { between: tree.clock === 'on the shot clock' ? { ...between, clock: 'shot' } : between };
}
