// `step "Left" mirrors "Right"`: the lines of the other, left and right exchanged, stand before its own.
import { spanOf } from '../grammar/tree.ts';
import { nameKey } from '../names/name-key.ts';
import type { Change } from './change-places.ts';
import { changeAction, changeEvent, changeId, changeLook } from './change-places.ts';
import { mirrorPlace } from './mirror-place.ts';
import type { Action, BodyId, Step } from './play.ts';
import type { KnownSteps } from './read-copies.ts';
import type { Reader } from './reader.ts';
import { report } from './reader.ts';
import { copyParts, partsByBall } from './repeated-steps.ts';
import type { Ball } from './scope.ts';
import type { StepHead } from './steps.ts';

/** What a step takes over from the one it mirrors. */
export interface Model extends Pick<Step, 'actions' | 'kept' | 'looks' | 'end'> {
  /** How many lines it has: the step's own are counted on. */
  readonly lines: number;
  /** All who act in it: in a counter none of their lines in the step replaced is kept. */
  readonly bodies: ReadonlySet<BodyId>;
}

/** Whoever has the ball takes the part of the one who had it at the other step's start. */
export function mirroredModel(reader: Reader, head: StepHead, ball: Ball, known: KnownSteps): Model | undefined {
  const name = head.tree?.mirrors;
  if (name === undefined || head.tree === undefined) return undefined;
  const source = known.heads.find(each => nameKey(each.name) === nameKey(name));
  const step = source === undefined || source.key === head.key ? undefined : known.steps.get(source.key);
  if (step === undefined) {
    report(reader, 'unknown-step', head.key, { name, step: head.name });
    return undefined;
  }
  const parts = partsByBall(known.ballAtStart.get(step.key)?.holder, ball.holder);
  const change: Change = { place: mirrorPlace, body: body => parts.get(body) ?? body, step: key => (key === step.key ? head.key : key) };
  // Lines that the other one kept of a third have that one's ids.
  const changeKept: Change = { ...change, step: key => (key === step.key ? head.key : `${head.key}~${key}`) };
  const { end } = step;
  const changes = [{ from: step.key, change }, ...[...new Set(step.kept.map(({ id }) => ownerOf(id)))].map(from => ({ from, change: changeKept }))];
  copyParts(reader.parts, { steps: [], ball, changes }, { line: head.line, ...spanOf(head.tree, 'mirrors') });
  const actions = step.actions.map(action => changeAction(action, change));
  const kept = step.kept.map(action => ({ ...changeAction(action, changeKept), step: head.key }));
  const looks = step.looks.map(look => changeLook(look, change));
  return {
    actions, kept, looks,
    ...(end === undefined ? {} : { end: { ...end, part: changeId(end.part, change), ...(end.event === undefined ? {} : { event: changeEvent(end.event, change) }) } }),
    lines: Math.max(0, ...[...actions, ...looks].map(({ line }) => Number(line.slice(line.lastIndexOf(':') + 1)))),
    bodies: new Set([...actions, ...kept, ...looks.flatMap(({ tail }) => tail)].flatMap(bodiesOf)),
  };
}

function bodiesOf(action: Action): readonly BodyId[] {
  return action.kind === 'pass' || action.kind === 'hand-off' ? [action.who, action.to] : [action.who];
}

function ownerOf(id: string): string {
  return id.slice(0, id.search(/[/?]/));
}
