// What is known while the lines of one step (or the tail of one look) are read, from the top down.
import type { SubjectsTree } from '../grammar/tree.ts';
import type { OpenEnd } from './goes-on.ts';
import type { Action, ActionId, BodyId, LineKey, Move, Screen, StepKey } from './play.ts';
import { OFFENCE } from './play.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodiesOf, report } from './reader.ts';

/** Who has the ball by the text so far. */
export interface Ball {
  readonly holder: BodyId | undefined;
  /** Out of bounds with a thrower. */
  readonly out: boolean;
}

export interface Scope {
  /** The step's key, or the look's id: what action ids start with. */
  readonly owner: string;
  readonly step: StepKey;
  /** Offence named as a subject anywhere in the step: `everyone else` is the rest. */
  readonly named: ReadonlySet<BodyId>;
  readonly nextId: (body: BodyId) => ActionId;
  ball: Ball;
  /** The last two who did something together: `both`. */
  pair: readonly BodyId[];
  lastMove?: Move;
  /** Whom the man with the ball dribbles at: `and hands it off` is to him. */
  dribbledAt?: { readonly who: BodyId; readonly at: BodyId };
  /** Everything the step's lines have told so far. */
  readonly acts: Action[];
  /** What the steps on the way here have told. */
  before?: () => readonly Action[];
  /** Each man's last screen, for `re-screens`. */
  readonly screens: Map<BodyId, Screen>;
  /** Who has taken a hand-off. */
  readonly handOffs: Set<BodyId>;
  /** Ways without a place of their own: what follows may tell where they end. */
  readonly openEnds: Map<ActionId, OpenEnd>;
}

export function openScope(owner: string, step: StepKey, ball: Ball, named: ReadonlySet<BodyId>): Scope {
  const counts = new Map<BodyId, number>();
  return {
    owner,
    step,
    named,
    nextId(body) {
      const count = (counts.get(body) ?? 0) + 1;
      counts.set(body, count);
      return `${owner}/${body}.${count}`;
    },
    ball,
    pair: [],
    acts: [],
    screens: new Map(),
    openEnds: new Map(),
    handOffs: new Set(),
  };
}

/** Who has the ball once the action is done. A pass by one who lacks it still brings it to its receiver: that is what the coach wants. */
export function ballAfter(ball: Ball, action: Action): Ball {
  if (action.kind === 'pass' || action.kind === 'hand-off') return { holder: action.to, out: false };
  if (action.kind === 'shot') return { holder: undefined, out: false };
  return ball;
}

/** The bodies a subject names. `first` are the line's first subjects: what `he` and `they` go back to. */
export function subjectsOf(reader: Reader, tree: SubjectsTree, scope: Scope, meaning: Meaning): readonly BodyId[] {
  switch (tree.$type) {
    case 'Players':
      return bodiesOf(reader, tree.players, meaning);
    case 'Pronoun': {
      const him = tree.word === 'he' ? meaning.him.slice(0, 1) : meaning.him;
      if (him.length === 0) report(reader, 'who-is-meant', meaning.part, { word: tree.word });
      return him;
    }
    default:
      break;
  }
  if (tree.all === 'both') {
    if (scope.pair.length !== 2) report(reader, 'who-is-meant', meaning.part, { word: 'both' });
    return scope.pair.length === 2 ? scope.pair : [];
  }
  const all = tree.all === 'others' || tree.else ? OFFENCE.filter(body => !scope.named.has(body)) : OFFENCE;
  return all;
}

export interface Line {
  readonly key: LineKey;
  readonly index: number;
}
