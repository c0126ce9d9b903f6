// A step line that asks for copies of others, read.
import type { AgainFromNode } from '../grammar/tree.ts';
import { message } from '../message/message.ts';
import { nameKey } from '../names/name-key.ts';
import type { BodyId, Step, StepKey } from './play.ts';
import type { Copies } from './repeated-steps.ts';
import { copyParts, copySteps, everyPart, firstOf, mostSteps } from './repeated-steps.ts';
import type { Reader } from './reader.ts';
import { bodyOf, isOffence, report } from './reader.ts';
import type { Ball } from './scope.ts';
import type { Link, StepHead } from './steps.ts';

export interface KnownSteps {
  readonly heads: readonly StepHead[];
  readonly links: ReadonlyMap<StepKey, Link>;
  readonly steps: ReadonlyMap<StepKey, Step>;
  readonly ballAtStart: ReadonlyMap<StepKey, Ball>;
  /** How many copies there are. */
  readonly copied: number;
}

export interface After {
  /** The step the first copy follows, and where the ball then is. */
  readonly parent: StepKey | null;
  readonly ball: Ball;
  /** When the copies open, ms from the call; `undefined` where no clock is at hand. */
  readonly opensAt: (copies: readonly Step[]) => ReadonlyMap<StepKey, number> | undefined;
}

/** The copies that `again from` or `repeats` asks for; `undefined` for every other step. */
export function copiesOf(reader: Reader, head: StepHead, after: After, known: KnownSteps): Copies | undefined {
  const origin = head.tree?.origin;
  if (origin?.$type !== 'AgainFrom' && origin?.$type !== 'Repeats') return undefined;
  const source = origin.$type === 'AgainFrom' ? courseFrom(origin.step, head, known) : origin.steps.flatMap(name => stepNamed(name, known) ?? []);
  const first = source[0];
  if (first === undefined) return undefined;
  const lasting = origin.$type === 'Repeats' ? origin.lasting?.seconds : undefined;
  const swaps = origin.$type === 'AgainFrom' ? swapsOf(reader, origin.parts, head.key) : new Map<BodyId, BodyId>();
  const asked = copySteps({
    asks: head.key,
    name: head.name,
    source,
    times: lasting === undefined ? Math.max(1, Math.trunc(origin.times ?? 1)) : Number.POSITIVE_INFINITY,
    room: mostSteps - known.copied,
    after: after.parent,
    ball: after.ball,
    firstHolder: known.ballAtStart.get(first.key)?.holder,
    ...(swaps.size === 0 ? {} : { swaps: everyPart(swaps) }),
  });
  const copies = lasting === undefined ? asked : within(reader, head, asked, source.length, after, lasting);
  copyParts(reader.parts, copies, { line: head.line, at: origin.at, to: origin.to });
  return copies;
}

/** Who plays whose part by `with 2 as 1, X4 as 3`; a defender takes nobody's, nor has one to give. */
function swapsOf(reader: Reader, said: AgainFromNode['parts'], part: StepKey): Map<BodyId, BodyId> {
  const swaps = new Map<BodyId, BodyId>();
  for (const swap of said) {
    const [player, plays] = [swap.player, swap.plays].map(man => man && bodyOf(reader, man, { part, him: [] }));
    if (player === undefined || plays === undefined) continue;
    const defender = [player, plays].find(man => !isOffence(man));
    if (defender === undefined) swaps.set(plays, player);
    else report(reader, 'defender-attacks', part, { who: defender, verb: `${player} as ${plays}` });
  }
  return swaps;
}

/** Copies up to the first that would start past the time, counted from the start of the first of them. */
function within(reader: Reader, head: StepHead, copies: Copies, round: number, after: After, seconds: number): Copies {
  const opens = after.opensAt(copies.steps);
  if (opens === undefined) report(reader, 'not-yet', head.key, { what: message('repeating for a time; it is shown once') });
  const start = opens?.get(copies.steps[0]?.key ?? '') ?? 0;
  const last = opens?.get(copies.steps.at(-1)?.key ?? '') ?? start;
  // Steps that take no time would come again for ever.
  const fits = opens === undefined || last === start ? round : copies.steps.findIndex(({ key }) => (opens.get(key) ?? Number.POSITIVE_INFINITY) - start >= seconds * 1000);
  return fits < 0 ? copies : firstOf(copies, Math.max(1, fits), after.ball);
}

function stepNamed(name: string, known: KnownSteps): Step | undefined {
  const head = known.heads.find(each => nameKey(each.name) === nameKey(name));
  return head === undefined ? undefined : known.steps.get(head.key);
}

/** The plain steps from the named one down to the last above the line that asks. */
function courseFrom(name: string, asks: StepHead, known: KnownSteps): Step[] {
  const from = known.heads.findIndex(each => nameKey(each.name) === nameKey(name));
  if (from < 0) return [];
  return known.heads
    .slice(from, known.heads.findIndex(({ key }) => key === asks.key))
    .filter((head, index) => index === 0 || known.links.get(head.key)?.how === 'plain')
    .flatMap(head => known.steps.get(head.key) ?? []);
}
