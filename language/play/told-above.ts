// `with the drive`, `after the hand-off`, `at the same time`: of what a line above tells, as people say it.
import type { Columns, NodeOf } from '../grammar/tree.ts';
import type { Action, BodyId, EventRef } from './play.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodyOf, isOffence, report, wordsWritten } from './reader.ts';
import type { Scope } from './scope.ts';

type Said = NodeOf<'OfWhatIsAbove'>;
/** `as` begins with it, `once` comes after it. */
export interface ToldAbove {
  readonly kind: 'as' | 'once';
  readonly event: EventRef;
}

const cuts: ReadonlySet<string> = new Set(['cut', 'back-cut', 'v-cut', 'l-cut', 'curl', 'dive', 'flash']);
const kindOf: Readonly<Record<Said['what'], (action: Action) => boolean>> = (() => {
  const screen = (action: Action) => action.kind === 'screen';
  const handOff = (action: Action) => action.kind === 'hand-off';
  const moves = (style: string) => (action: Action) => action.kind === 'move' && (action.style === style || action.verb === style);
  const drive = (action: Action) => action.kind === 'dribble' && action.style !== 'keep';
  return {
    drive, dribble: drive, pass: action => action.kind === 'pass', catch: action => action.kind === 'pass' || action.kind === 'hand-off', 'hand off': handOff, handoff: handOff, shot: action => action.kind === 'shot',
    cut: action => action.kind === 'move' && cuts.has(action.style), roll: moves('roll'), flash: moves('flash'), 'throw in': action => action.kind === 'pass' && action.throwIn,
    curl: moves('curl'), pop: moves('pop'), slip: moves('slip'), dive: moves('dive'), fade: moves('fade'), seal: moves('seal'),
    screen, pick: screen, 'ball-screen': screen, 'back-screen': screen, 'cross-screen': screen, 'down-screen': screen, 'flare-screen': screen, 'pin down': screen, stagger: screen,
  };
})();

/** The latest of the kind in the step, else on the way to it. What he has done himself he is through with before he goes on: nothing to wait for. */
export function ofWhatIsAbove(reader: Reader, tree: Said, scope: Scope, meaning: Meaning): readonly ToldAbove[] {
  const isIt = kindOf[tree.what];
  const doer = tree.player === undefined ? undefined : bodyOf(reader, tree.player, meaning);
  const fits = (action: Action) => isIt(action) && (doer === undefined || doer === whose(action, tree.what));
  const here = scope.acts.filter(fits);
  const told = here.length > 0 ? here : (scope.before?.() ?? []).filter(fits);
  const last = told.findLast(action => !waiting(meaning).includes(whose(action, tree.what)));
  if (last !== undefined) {
    const isCatch = tree.what === 'catch' && 'to' in last;
    const event = isCatch ? { who: whose(last, tree.what), does: 'catch' } : eventOf(last);
    return [{ kind: isCatch || tree.how === 'after' || tree.how === 'behind' ? 'once' : 'as', event }];
  }
  if (told.length === 0) notTold(reader, tree, meaning);
  return [];
}

/** As the line above begins, or the link before it in its line, or what another man does last. */
export function atTheSameTime(reader: Reader, tree: NodeOf<'SameTime'>, scope: Scope, meaning: Meaning): readonly ToldAbove[] {
  const partner = tree.player === undefined ? undefined : bodyOf(reader, tree.player, meaning);
  // No line waits for a defender, unless it is one of theirs.
  const amongThem = waiting(meaning).every(body => !isOffence(body));
  const above = scope.acts.findLast(({ who, line }) => (partner === undefined ? (isOffence(who) || (amongThem && line === meaning.part)) && !waiting(meaning).includes(who) : who === partner));
  const first = partner === undefined ? scope.acts.find(({ line, link }) => line === above?.line && (line !== meaning.part || link === above.link)) : above;
  // Of what the line itself tells of them before, nothing has to be waited for.
  if (first === undefined && (partner !== undefined || !scope.acts.some(({ line }) => line === meaning.part))) notTold(reader, tree, meaning);
  if (first === undefined || waiting(meaning).includes(first.who)) return [];
  // Who has screened for him stays until he is by: `1 cuts off 3, and 3 pops`.
  const screener = 'off' in first && partner === undefined ? first.off.find(body => waiting(meaning).includes(body)) : undefined;
  return [{ kind: 'as', event: screener === undefined ? eventOf(first) : { who: first.who, does: 'clear', other: screener } }];
}

/** Once the line above is done; his own last link he is through with anyhow, and where no line stands above the step has just begun. */
export function afterThat({ acts }: Scope, meaning: Meaning): readonly ToldAbove[] {
  const last = acts.findLast(({ who }) => isOffence(who));
  if (last === undefined || waiting(meaning).includes(last.who)) return [];
  return [{ kind: 'once', event: last.kind === 'pass' || last.kind === 'hand-off' ? { who: last.to, does: 'catch' } : eventOf(last) }];
}

function waiting({ subjects, him }: Meaning): readonly BodyId[] {
  return subjects ?? him;
}

function whose(action: Action, what: Said['what']) {
  return what === 'catch' && (action.kind === 'pass' || action.kind === 'hand-off') ? action.to : action.who;
}

function eventOf(action: Action): EventRef {
  const { who, verb } = action;
  if (action.kind === 'screen') return { who, does: 'set' };
  return action.kind === 'pass' || action.kind === 'hand-off' ? { who, does: verb, other: action.to } : { who, does: verb };
}

function notTold(reader: Reader, tree: Columns, meaning: Meaning): void {
  report(reader, 'not-told-above', meaning.part, { words: wordsWritten(reader, tree, meaning) });
}
