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
export function has(item: Expected, rule: string): boolean {
  return item.path.some((part) => part.endsWith(rule) && (part.length === rule.length || part[part.length - rule.length - 1] === '>'));
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
