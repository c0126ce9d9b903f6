// What the functions that read a block share: its lines, and where they put places and problems.
import type { ParsedLine } from '../grammar/parse-line.ts';
import type { Columns, PlayerNode, SpotTree, StatementTree } from '../grammar/tree.ts';
import type { Court } from '../court/court.ts';
import type { Lookup } from '../names/lookup.ts';
import type { Action, BodyId, PartId, Place, PlayerNumber, TextPlace } from './play.ts';
import { anotherBefore } from './pronouns.ts';
import type { ReadingProblem, ReadingProblemCode, ReadingProblems } from './problem-codes.ts';
import { readingProblem } from './problem-codes.ts';

export interface Reader {
  readonly lines: readonly ParsedLine[];
  readonly lookup: Lookup;
  readonly court: Court;
  readonly parts: Map<PartId, TextPlace>;
  readonly problems: ReadingProblem[];
  readonly spots: OwnSpots;
}

/** The own spots a play may name: those of the play, then those of its file. */
export interface OwnSpots {
  /** The key under which the play keeps the spot, or `undefined` where no spot has this name. */
  readonly find: (name: string) => string | undefined;
}

export function putPart(reader: Reader, part: PartId, line: number, columns: Columns): void {
  reader.parts.set(part, { line, at: columns.at, to: columns.to });
}

/** The empty place where the words of a value that is not written would go. */
export function putGap(reader: Reader, part: PartId, line: number, at: number): void {
  reader.parts.set(part, { line, at, to: at });
}

export function report<Code extends ReadingProblemCode>(reader: Reader, code: Code, part: PartId, params: ReadingProblems[Code], related?: readonly PartId[]): void {
  reader.problems.push(readingProblem(code, part, params, related));
}

/** What `he` and `him` stand for where a place or a body is read, and the part that a problem is put to. */
export interface Meaning {
  readonly part: PartId;
  readonly him: readonly BodyId[];
  /** Who acts in the clause, where that matters besides. */
  readonly subjects?: readonly BodyId[];
  /** Who acts, who cannot be meant, and the line that may name another. */
  readonly self?: BodyId;
  readonly said?: StatementTree | undefined;
  /** What the step's lines have told before it. */
  readonly above?: readonly Action[];
}

export function bodyOf(reader: Reader, player: PlayerNode, meaning: Meaning): BodyId | undefined {
  if (player.number !== undefined) return `${player.defence ? 'X' : ''}${player.number}` as BodyId;
  const first = meaning.him[0];
  const { self, said, above } = meaning;
  const him = first !== undefined && first === self && said !== undefined ? (anotherBefore(said, self, player.at, above ?? []) ?? first) : first;
  if (him === undefined) report(reader, 'who-is-meant', meaning.part, { word: player.pronoun ?? 'him' });
  return him;
}

export function bodiesOf(reader: Reader, players: readonly PlayerNode[], meaning: Meaning): BodyId[] {
  const bodies = players.flatMap(player => {
    if (player.pronoun === 'them' && meaning.him.length > 0) return meaning.him;
    return bodyOf(reader, player, meaning) ?? [];
  });
  return [...new Set(bodies)];
}

export function isOffence(body: BodyId): boolean {
  return body.length === 1;
}

export function numberOf(body: BodyId): PlayerNumber {
  return Number(body.slice(-1)) as PlayerNumber;
}

export type { Place, SpotTree };

/** Words of the line that a part stands in, as the coach wrote them. */
export function wordsWritten({ lines, parts }: Reader, { at, to }: Columns, { part }: Pick<Meaning, 'part'>): string {
  const line = parts.get(part)?.line;
  return line === undefined ? '' : (lines[line]?.text.slice(at, to) ?? '');
}
