// `step "More" again from "A" with 2 as 1, up to 2 times`, `step "Run" repeats "A", "B" 3 times`: copied steps, unrolled when read (rule 2).
import type { Change } from './change-places.ts';
import { changeAction, changeId, changeLook } from './change-places.ts';
import type { BodyId, PartId, Step, StepKey, TextPlace } from './play.ts';
import { OFFENCE } from './play.ts';
import type { Ball } from './scope.ts';
import { ballAfter } from './scope.ts';

/** Who plays whose part in a copy: from the source's man to the copy's. */
export type Parts = ReadonlyMap<BodyId, BodyId>;

/** No coach writes more, and no play is that long. */
const mostCopies = 40;
/** No set has as many steps; keeps time and memory in bounds for any text. More are not copied, nor shown. */
export const mostSteps = 300;

export interface Copying {
  /** The step that asks for the copies; theirs are `<step>~1`, `<step>~2` … */
  readonly asks: StepKey;
  readonly name: string;
  /** The plain course that is copied, in order. */
  readonly source: readonly Step[];
  readonly times: number;
  /** How many steps may still be made in this play. */
  readonly room: number;
  /** The step the first copy follows, and where the ball then is. */
  readonly after: StepKey | null;
  readonly ball: Ball;
  /** What `with 2 as 1` says; without it the ball decides. */
  readonly swaps?: Parts;
  /** Who had the ball at the first start. */
  readonly firstHolder: BodyId | undefined;
}

export interface Copies {
  readonly steps: readonly Step[];
  readonly ball: Ball;
  /** Part ids of the copies, by those of their sources; one list for each copied step. */
  readonly changes: readonly { readonly from: StepKey; readonly change: Change }[];
}

export function copySteps(copying: Copying): Copies {
  const { asks, source, swaps } = copying;
  const steps: Step[] = [];
  const changes: { from: StepKey; change: Change }[] = [];
  let parent = copying.after;
  let { ball } = copying;
  let turn: Parts = new Map();
  for (let time = 0; time < copying.times && steps.length + source.length <= Math.min(mostCopies, copying.room); time++) {
    turn = swaps === undefined ? partsByBall(copying.firstHolder, ball.holder) : nextTurn(turn, swaps);
    const parts = turn;
    for (const step of source) {
      const key = `${asks}~${steps.length + 1}`;
      const change: Change = { place: place => place, body: body => parts.get(body) ?? body, step: own => (own === step.key ? key : own) };
      const actions = step.actions.map(action => changeAction(action, change));
      steps.push({ key, name: nameOf(copying, step, time), parent, how: 'plain', actions, kept: [], looks: step.looks.map(look => changeLook(look, change)) });
      changes.push({ from: step.key, change });
      parent = key;
      ball = actions.reduce(ballAfter, ball);
    }
  }
  return { steps, ball, changes };
}

/** `Keep drifting, 2nd time`; of several steps in turn `Run: Swing, 2nd time`. */
function nameOf({ name, source, times }: Copying, step: Step, time: number): string {
  const own = source.length > 1 ? `${name}: ${step.name}` : name;
  return times > 1 ? `${own}, ${ordinal(time + 1)} time` : own;
}

function ordinal(count: number): string {
  const last = count % 100 > 10 && count % 100 < 14 ? 0 : count % 10;
  return `${count}${['th', 'st', 'nd', 'rd'][last] ?? 'th'}`;
}

/** The first so many of the copies. */
export function firstOf(copies: Copies, count: number, ball: Ball): Copies {
  const steps = copies.steps.slice(0, count);
  return { steps, ball: steps.flatMap(({ actions }) => actions).reduce(ballAfter, ball), changes: copies.changes.slice(0, count) };
}

/**
 * What is said of some men, said of all: whoever is not named keeps his own part where it is free, and the rest take what is left, so that
 * no two play one part.
 */
export function everyPart(said: ReadonlyMap<BodyId, BodyId>): Parts {
  const parts = new Map<BodyId, BodyId>();
  for (const [part, man] of said) if (![...parts.values()].includes(man)) parts.set(part, man);
  const isFree = (man: BodyId): boolean => ![...parts.values()].includes(man);
  for (const body of OFFENCE) if (!parts.has(body) && isFree(body)) parts.set(body, body);
  for (const body of OFFENCE) if (!parts.has(body)) parts.set(body, OFFENCE.find(isFree) ?? body);
  return parts;
}

/** The parts are taken once more: after two times of `2 as 1, 3 as 2, 1 as 3` the first man's part is 3's. */
function nextTurn(before: Parts, swaps: Parts): Parts {
  return new Map(OFFENCE.map(body => {
    const now = before.get(body) ?? body;
    return [body, swaps.get(now) ?? now];
  }));
}

/** Unless the words say who plays whom, whoever has the ball takes the part of the one who had it at the first start, and he takes his. */
export function partsByBall(first: BodyId | undefined, now: BodyId | undefined): Parts {
  return first === undefined || now === undefined || first === now ? new Map() : new Map([[first, now], [now, first]]);
}

/** Every part of the copies stands where the words that ask for them stand. */
export function copyParts(parts: Map<PartId, TextPlace>, copies: Copies, place: TextPlace): void {
  const known = [...parts.keys()];
  for (const { from, change } of copies.changes) {
    parts.set(change.step(from), place);
    for (const part of known) {
      if (![':', '/', '?', '#'].some(sign => part.startsWith(from + sign))) continue;
      parts.set(part.startsWith(`${from}:`) ? change.step(from) + part.slice(from.length) : changeId(part, change), place);
    }
  }
}
