// A step line that asks for copies of others, read.
import { nameKey } from '../names/name-key.ts';
import type { BodyId, Step, StepKey } from './play.ts';
import type { Copies } from './repeated-steps.ts';
import { copyParts, copySteps } from './repeated-steps.ts';
import type { Reader } from './reader.ts';
import { bodyOf, report } from './reader.ts';
import type { Ball } from './scope.ts';
import type { Link, StepHead } from './steps.ts';

export interface KnownSteps {
  readonly heads: readonly StepHead[];
  readonly links: ReadonlyMap<StepKey, Link>;
  readonly steps: ReadonlyMap<StepKey, Step>;
  readonly ballAtStart: ReadonlyMap<StepKey, Ball>;
}

/** The copies that `again from` or `repeats` asks for; `undefined` for every other step. */
export function copiesOf(reader: Reader, head: StepHead, after: { readonly parent: StepKey | null; readonly ball: Ball }, known: KnownSteps): Copies | undefined {
  const origin = head.tree?.origin;
  if (origin?.$type !== 'AgainFrom' && origin?.$type !== 'Repeats') return undefined;
  const source = origin.$type === 'AgainFrom' ? courseFrom(origin.step, head, known) : origin.steps.flatMap(name => stepNamed(name, known) ?? []);
  const first = source[0];
  if (first === undefined) return undefined;
  if (origin.$type === 'Repeats' && origin.lasting !== undefined) report(reader, 'not-yet', head.key, { what: 'repeating for a time; it is shown once' });
  const swaps = new Map<BodyId, BodyId>();
  for (const swap of origin.$type === 'AgainFrom' ? origin.parts : []) {
    const meaning = { part: head.key, him: [] };
    const player = swap === undefined ? undefined : bodyOf(reader, swap.player, meaning);
    const plays = swap === undefined ? undefined : bodyOf(reader, swap.plays, meaning);
    if (player !== undefined && plays !== undefined) swaps.set(plays, player);
  }
  const copies = copySteps({
    asks: head.key,
    source,
    times: Math.max(1, Math.trunc(origin.times ?? 1)),
    after: after.parent,
    ball: after.ball,
    firstHolder: known.ballAtStart.get(first.key)?.holder,
    ...(swaps.size === 0 ? {} : { swaps }),
  });
  copyParts(reader.parts, copies, { line: head.line, at: origin.at, to: origin.to });
  return copies;
}

function stepNamed(name: string, known: KnownSteps): Step | undefined {
  const head = known.heads.find(each => nameKey(each.name) === nameKey(name));
  return head === undefined ? undefined : known.steps.get(head.key);
}

/** The plain steps from the named one down to the last above the line that asks. */
function courseFrom(name: string, asks: StepHead, known: KnownSteps): Step[] {
  const from = known.heads.find(each => nameKey(each.name) === nameKey(name));
  if (from === undefined) return [];
  return known.heads
    .filter(head => head.line >= from.line && head.line < asks.line && (head === from || known.links.get(head.key)?.how === 'plain'))
    .flatMap(head => known.steps.get(head.key) ?? []);
}
