import type { ParsedLine } from '../grammar/parse-line.ts';
import type { ActionId, LineKey, LookId, PartId, StepKey } from './play.ts';
import { isHeader } from './read-headers.ts';

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
