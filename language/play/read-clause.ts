// One clause of a line for one man: what the functions that read its verbs share.
import type { Columns, StatementTree } from '../grammar/tree.ts';
import type { Action, BodyId, Wait } from './play.ts';
import { baseForm } from './read-waits.ts';
import type { Meaning, Reader } from './reader.ts';
import { putGap, putPart } from './reader.ts';
import type { Line, Scope } from './scope.ts';

/** Everything a clause's actions share. */
export interface Clause {
  readonly subjects: readonly BodyId[];
  readonly him: readonly BodyId[];
  /** Of a look's tail: to whom the others pass where nobody is named, `look 1: 2 gives it right back`. */
  readonly passesTo?: BodyId;
  /** The line, where it is one of a step. */
  readonly said?: StatementTree;
  /** Columns of the whole clause, and where its action ends (triggers stand behind). */
  readonly columns: Columns;
  readonly line: Line;
  readonly link: number;
  readonly waitsOf: (owner: string) => readonly Wait[];
  /** The parts of the clause that some value came of; what is left over is told (left-over.ts). */
  readonly taken: Set<unknown>;
}

export type Base = Pick<Action, 'id' | 'step' | 'line' | 'link' | 'who' | 'verb' | 'waits' | 'origin'>;

export interface One {
  readonly reader: Reader;
  readonly scope: Scope;
  readonly clause: Clause;
  readonly who: BodyId;
  /** Which of the subjects this is. */
  readonly index: number;
  /** Column behind the action's words. */
  readonly end: number;
}

export function partOf(one: One): string {
  return one.clause.line.key;
}

export function meaningOf(one: One, part: string): Meaning {
  return { part, him: one.clause.him, self: one.who, said: one.clause.said, above: one.scope.acts };
}

export function baseOf(one: One, verb: string): Base {
  const { clause, scope, reader, who } = one;
  const id = scope.nextId(who);
  putPart(reader, id, clause.line.index, clause.columns);
  return { id, step: scope.step, line: clause.line.key, link: clause.link, who, verb: baseForm(verb), waits: clause.waitsOf(id), origin: 'written' };
}

/** Notes that a value came of this part of the clause. */
export function take<T>(one: Pick<One, 'clause'>, part: T): T {
  one.clause.taken.add(part);
  return part;
}

export function asList<T>(value: T | undefined): T[] {
  return value === undefined ? [] : [value];
}

export function putValue(one: One, part: string, columns: Columns | undefined): void {
  if (columns === undefined) putGap(one.reader, part, one.clause.line.index, one.end);
  else putPart(one.reader, part, one.clause.line.index, columns);
}

export function isHolder(one: One): boolean {
  return one.scope.ball.holder === one.who && !one.scope.ball.out;
}
