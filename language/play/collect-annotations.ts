// Lines that belong to the innermost open block, found in the lines of the play or of one step.
import type { LineTree } from '../grammar/tree.ts';
import type { Allowance, BodyId, Demand, Note, PartId, Rebound } from './play.ts';
import { readAllowance, readDemand, readNote, readReboundGroups } from './read-annotations.ts';
import type { Reader } from './reader.ts';
import { bodiesOf, putPart } from './reader.ts';
import { openScope } from './scope.ts';
import type { StepHead } from './steps.ts';

export interface Annotations {
  readonly rebounds: readonly Rebound[];
  readonly notes: readonly Note[];
  readonly demands: readonly Demand[];
  readonly allowances: readonly Allowance[];
  /** The part of each line. */
  readonly parts: ReadonlyMap<number, PartId>;
}

export function collectAnnotations(reader: Reader, trees: readonly (LineTree | undefined)[], lines: readonly number[]): Annotations {
  return collect(reader, trees, lines, 'play', '');
}

export function collectStepAnnotations(reader: Reader, trees: readonly (LineTree | undefined)[], head: StepHead): Annotations {
  // Above the first step they stand for the whole play.
  const lines = head.tree === undefined && trees[head.line]?.$type !== 'StepHead' && head.lines.includes(head.line) ? [] : head.lines;
  return collect(reader, trees, lines, head.key, `${head.key}#`);
}

function collect(reader: Reader, trees: readonly (LineTree | undefined)[], lines: readonly number[], within: string, prefix: string): Annotations {
  const rebounds: Rebound[] = [];
  const notes: Note[] = [];
  const demands: Demand[] = [];
  const allowances: Allowance[] = [];
  const parts = new Map<number, PartId>();
  const counts = new Map<string, number>();
  const scope = openScope(within, within, { holder: undefined, out: false }, new Set());
  for (const line of lines) {
    const tree = trees[line];
    if (tree === undefined) continue;
    const word = wordOf(tree);
    if (word === undefined) continue;
    const count = (counts.get(word) ?? 0) + 1;
    counts.set(word, count);
    const part = `${prefix}${count === 1 ? word : `${word}.${count}`}`;
    parts.set(line, part);
    putPart(reader, part, line, tree);
    if (tree.$type === 'Rebound') rebounds.push(readReboundGroups(reader, scope, tree.groups, part, within, safetiesIn(reader, lines.map(index => trees[index]))));
    else if (tree.$type === 'Note') notes.push(...readNote(reader, tree, part, within));
    else if (tree.$type === 'Allow') allowances.push(readAllowance(tree, part, within));
    else if (tree.$type === 'EveryTouch' || tree.$type === 'Touch' || tree.$type === 'Amount' || tree.$type === 'NotHold') {
      const text = reader.lines[line]?.text.slice(tree.at, tree.to) ?? '';
      demands.push(...readDemand(reader, scope, tree, part, within, text));
    }
  }
  return { rebounds, notes, demands, allowances, parts };
}

/** Who is told to be the safety. */
function safetiesIn(reader: Reader, trees: readonly (LineTree | undefined)[]): readonly BodyId[] {
  return trees.flatMap(tree => {
    if (tree?.$type !== 'Statement') return [];
    let who: readonly BodyId[] = [];
    return [tree.first, ...tree.links.map(({ clause }) => clause)].flatMap(clause => {
      if (clause?.subject?.$type === 'Players') who = bodiesOf({ ...reader, problems: [] }, clause.subject.players, { part: '', him: [] });
      return clause?.action?.$type === 'Role' && /safety/.test(clause.action.verb) ? who : [];
    });
  });
}

function wordOf(tree: LineTree): string | undefined {
  switch (tree.$type) {
    case 'Rebound':
      return 'rebound';
    case 'Note':
      return 'note';
    case 'Allow':
      return 'allow';
    case 'EveryTouch': case 'Touch': case 'Amount': case 'NotHold':
      return 'must';
    default:
      return undefined;
  }
}
