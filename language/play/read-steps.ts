// All steps of a block, each read behind those it hangs on: its copies, its own lines, and the outlet at the end of the ways.
import type { LineTree } from '../grammar/tree.ts';
import { beginsWithBall, bodiesNamed, keptActions } from './kept.ts';
import type { LineMeaning } from './line-meaning.ts';
import { treeOfLineKey } from './line-meaning.ts';
import { mirroredModel } from './mirrored-step.ts';
import type { Action, Play, Step, StepKey } from './play.ts';
import { copiesOf } from './read-copies.ts';
import { readStep } from './read-step.ts';
import type { Reader } from './reader.ts';
import type { StepClock } from './reading.ts';
import { pathTo } from './run-throughs.ts';
import { withOutlets, withoutOutlets } from './safety.ts';
import type { Ball } from './scope.ts';
import { ballAfter } from './scope.ts';
import type { StepHead, StepOrder } from './steps.ts';

export interface StepsFrom {
  readonly heads: readonly StepHead[];
  readonly order: StepOrder;
  readonly trees: readonly (LineTree | undefined)[];
  /** Steps of the play that this one mirrors: they stand before its own. */
  readonly given: readonly Step[];
  /** The ball at the call. */
  readonly ball: Ball;
  /** The play without its steps, to take times from. */
  readonly bare: () => Play;
  readonly clock?: StepClock;
}

export interface ReadSteps {
  readonly steps: readonly Step[];
  readonly leftOut: readonly Step[];
  readonly lines: ReadonlyMap<number, LineMeaning>;
  /** A step that only asks for copies is no step itself: its last copy stands for it. */
  readonly realKey: (key: StepKey) => StepKey;
}

export function readSteps(reader: Reader, from: StepsFrom): ReadSteps {
  const { heads, order, trees, given } = from;
  const steps = new Map<StepKey, Step>(given.map(step => [step.key, step]));
  const ballAtStart = new Map<StepKey, Ball>();
  const ballAtEnd = new Map<StepKey, Ball>();
  const copies = new Map<StepKey, readonly Step[]>();
  const lines = new Map<number, LineMeaning>();
  const headOf = new Map(heads.map(head => [head.key, head]));
  const ballAfterParent = (parent: StepKey | null): Ball => (parent === null ? from.ball : (ballAtEnd.get(parent) ?? from.ball));
  for (const step of given) {
    const ball = ballAfterParent(step.parent);
    ballAtStart.set(step.key, ball);
    ballAtEnd.set(step.key, [...step.kept, ...step.actions].reduce(ballAfter, ball));
  }

  const realKey = (key: StepKey): StepKey => {
    const last = copies.get(key)?.at(-1);
    return last === undefined || hasOwnLines(steps.get(key)) ? key : last.key;
  };
  const played = (): Step[] => [...given, ...heads.filter(head => order.links.has(head.key)).flatMap(head => playedOf(head.key))];
  const playedOf = (key: StepKey): readonly Step[] => {
    const step = steps.get(key);
    if (step === undefined) return [];
    const made = copies.get(key) ?? [];
    const parent = made.at(-1)?.key ?? (step.parent === null ? null : realKey(step.parent));
    return realKey(key) === key ? [...made, { ...step, parent }] : made;
  };
  const opensAt = (parent: StepKey | null, made: readonly Step[]): ReadonlyMap<StepKey, number> | undefined => {
    if (from.clock === undefined) return undefined;
    const way = parent === null ? [] : pathTo({ steps: played() }, parent);
    return from.clock({ ...from.bare(), steps: [...way, ...made] });
  };

  let copied = 0;
  const read = (head: StepHead): void => {
    const link = order.links.get(head.key) ?? { parent: null, how: 'plain' as const };
    let ball = ballAfterParent(link.parent);
    const replaced = link.insteadOf === undefined ? undefined : steps.get(link.insteadOf);
    const known = { heads: [...given.map(givenHead), ...heads], links: order.links, steps, ballAtStart, copied };
    if (order.links.has(head.key)) {
      const parent = link.parent === null ? null : realKey(link.parent);
      const made = copiesOf(reader, head, { parent, ball, opensAt: copied => opensAt(parent, copied) }, known);
      if (made !== undefined) {
        copies.set(head.key, made.steps);
        copied += made.steps.length;
        ball = made.ball;
      }
    }
    ballAtStart.set(head.key, ball);
    const model = mirroredModel(reader, head, ball, known);
    const kept = replaced === undefined ? [] : keptActions(replaced, new Set([...bodiesNamed(head.lines.map(line => reader.lines[line]!)), ...(model?.bodies ?? [])]), ball, beginsWithBall(head.lines.map(line => trees[line])));
    const before = (): readonly Action[] => (link.parent === null ? [] : pathTo({ steps: [...steps.values()] }, link.parent).flatMap(({ kept, actions }) => [...kept, ...actions]));
    const done = readStep(reader, { head, link, ball, trees, kept, before, ...(replaced === undefined ? {} : { replaced }), ...(model === undefined ? {} : { model }) }, key => treeOfLineKey(reader.lines, heads, key));
    steps.set(head.key, done.step);
    ballAtEnd.set(head.key, done.ball);
    for (const [line, meaning] of done.lines) lines.set(line, meaning);
  };
  for (const key of order.order) read(headOf.get(key)!);
  for (const head of heads) if (!steps.has(head.key)) read(head);

  return {
    steps: withOutlets(reader, withoutOutlets(played()), from.ball),
    leftOut: heads.filter(head => !order.links.has(head.key)).map(head => steps.get(head.key)!),
    lines,
    realKey,
  };
}

/** A step of the play that this one mirrors, as its line would open it: above all lines. */
function givenHead(step: Step): StepHead {
  return { key: step.key, name: step.name, line: -1, lines: [] };
}

function hasOwnLines(step: Step | undefined): boolean {
  return step !== undefined && (step.actions.length > 0 || step.looks.length > 0 || step.end !== undefined);
}
