import type { ParsedLine } from '../grammar/parse-line.ts';
import type { LineTree } from '../grammar/tree.ts';
import type { ActionId, LineKey, LookId, PartId, StepKey } from './play.ts';
import { isHeader } from './read-headers.ts';
import type { Reader } from './reader.ts';
import { putPart, report } from './reader.ts';
import type { StepHead } from './steps.ts';

export type LineKind = 'blank' | 'opener' | 'header' | 'step' | 'action' | 'look' | 'end' | 'annotation' | 'broken' | 'stray';

export interface LineMeaning {
  readonly kind: LineKind;
  /** The step the line stands in, or opens. */
  readonly step?: StepKey;
  /** Its own key, for lines that stand in a step. */
  readonly key?: LineKey;
  readonly actions: readonly ActionId[];
  readonly look?: LookId;
  /** The header field, annotation or step it writes. */
  readonly part?: PartId;
}

/** Lines are numbered in their step whether they can be read or not, so that a half-typed one shifts nothing. Blank ones and headers do not count. */
export function countsAsLine(line: ParsedLine): boolean {
  if (line.tree === undefined) return line.fault !== undefined;
  return line.fault !== undefined || !isHeader(line.tree);
}

/** What a line is that no reader has claimed yet, or the meaning one has found. */
export function lineMeaning(reader: Reader, tree: LineTree | undefined, line: number, known: LineMeaning | undefined, head: StepHead | undefined): LineMeaning {
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

export function treeOfLineKey(lines: Reader['lines'], heads: readonly StepHead[], key: LineKey): LineTree | undefined {
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
