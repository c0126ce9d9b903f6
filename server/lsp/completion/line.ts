// The line at the cursor: what may follow, who acts, and how the game stands there.
import type { Block } from '../../../language/book/book.ts';
import type { Expectations, Expected } from '../../../language/grammar/expected.ts';
import type { SubjectsTree } from '../../../language/grammar/tree.ts';
import type { BodyId } from '../../../language/play/play.ts';
import { message, type Words } from '../../../language/message/message.ts';
import type { Standing } from './standing.ts';

export interface Line {
  /** The line up to the cursor. */
  readonly prefix: string;
  readonly expected: Expectations;
  readonly block: Block;
  /** Line of the block, from 0. */
  readonly at: number;
  /** Key and name of the step the line stands in, in lower case; absent above the first. */
  readonly step?: string;
  readonly standing: Standing;
  /** Who acts in the link being typed. */
  readonly actors: readonly BodyId[];
}

/** Whether one of the item's rules is called so: `has(item, 'PassTo')`. */
export function has({ path }: Expected, rule: string): boolean {
  return rulesOn(path).has(rule);
}

/** Men act in plays, stand in alignments, have names in rosters: a line that begins with one may be any of them. */
export function belongsIn({ kind }: Block, { path: [rule] }: Expected): boolean {
  if (rule === 'Statement' || rule === 'Look') return kind === 'play';
  if (rule === 'Placing') return kind === 'alignment';
  return rule !== 'Entry' || kind === 'roster';
}

const kept = new WeakMap<readonly string[], ReadonlySet<string>>();

/** All words of a rule have one path, which stays: hundreds of verbs ask for it at every list. */
function rulesOn(path: readonly string[]): ReadonlySet<string> {
  const known = kept.get(path);
  if (known !== undefined) return known;
  const rules = new Set(path.map((part) => part.slice(part.lastIndexOf('>') + 1)));
  kept.set(path, rules);
  return rules;
}

export function bodiesOf(subject: SubjectsTree | undefined): readonly BodyId[] {
  if (subject?.$type !== 'Players') return [];
  return subject.players.flatMap(({ number, defence }) => (number === undefined ? [] : [`${defence ? 'X' : ''}${number}` as BodyId]));
}

/** Beside a player in the list. */
export function whereHeIs({ standing }: Line, body: BodyId): { readonly detail?: Words } {
  const at = standing.sayWhere(body);
  if (at === undefined) return {};
  return { detail: body === standing.holder ? message('{at}, has the ball', { at }) : at };
}
