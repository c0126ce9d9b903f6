// The block cut into steps, and what of the lines above the first one belongs to the start.
import type { Block } from '../book/book.ts';
import type { LineTree, StatementTree } from '../grammar/tree.ts';
import type { BodyId, Step, StepKey } from './play.ts';
import type { StartLines } from './read-start.ts';
import { isThrowInVerb } from './read-start.ts';
import { baseForm } from './read-waits.ts';
import type { StepHead } from './steps.ts';
import { stepHeads } from './steps.ts';

export interface CutSteps {
  readonly heads: readonly StepHead[];
  readonly headOfLine: ReadonlyMap<number, StepHead>;
  /** Lines above the first step that are no step of their own. */
  readonly preStep: readonly number[];
}

export function cutSteps(block: Block, trees: readonly (LineTree | undefined)[], given: readonly Step[]): CutSteps {
  const openers = block.lines.flatMap(({ parsed }, line) => (parsed.opens === 'step' ? [line] : []));
  const above = range(1, openers[0] ?? block.lines.length);
  const safeties = above.filter(line => isSafety(trees[line]));
  const opensPlay = above.some(line => isStepLine(trees[line])) || (safeties.length > 0 && (openers.length === 0 || given.length > 0));
  const written = openers.map((line, index) => {
    const { parsed } = block.lines[line]!;
    const tree = trees[line];
    return {
      line,
      // A safety named above the first step is the first step's.
      lines: [...(index === 0 && !opensPlay && given.length === 0 ? safeties : []), ...range(line + 1, openers[index + 1] ?? block.lines.length)],
      ...(parsed.openName === undefined ? {} : { name: parsed.openName }),
      ...(tree?.$type === 'StepHead' ? { tree } : {}),
    };
  });
  const start = above.find(line => isStepLine(trees[line]) || isSafety(trees[line]));
  const heads = stepHeads(opensPlay && start !== undefined ? [{ line: start, lines: above }, ...written] : written, given);
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
  return tree?.$type === 'Statement' && tree.first.action?.$type === 'Role' && baseForm(tree.first.action.verb) === 'safety';
}

/** The first throw-in of the play, where it stands above the first step or in the step the play begins with. */
export function throwInLine(trees: readonly (LineTree | undefined)[], preStep: readonly number[], heads: readonly StepHead[], order: readonly StepKey[]): StartLines['throwIn'] {
  const root = heads.find(head => head.key === order[0]);
  const lines = [...new Set([...preStep, ...(root?.lines ?? [])])];
  for (const line of lines) {
    const tree = trees[line];
    if (tree?.$type !== 'Statement') continue;
    for (const clause of [tree.first, ...tree.links.map(link => link.clause)]) {
      const action = clause?.action;
      if (action === undefined || action.$type === 'SameAgain') continue;
      const throws = action.$type === 'ThrowIn' ? isThrowInVerb(action.verb) : action.$type === 'Role' && baseForm(action.verb) === 'thrower';
      if (!throws || (action.$type !== 'ThrowIn' && action.$type !== 'Role')) continue;
      const subject = clause?.subject ?? tree.first.subject;
      const player = subject?.$type === 'Players' ? subject.players[0] : undefined;
      if (player?.number === undefined || player.defence) continue;
      return { tree: action, by: `${player.number}` as BodyId, line };
    }
  }
  return undefined;
}
