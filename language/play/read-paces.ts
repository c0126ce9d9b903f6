// Whose legs, man by man: the own paces that the roster of the file, or of a file it uses, gives the players 1 to 5.
import type { Block } from '../book/book.ts';
import type { NodeOf } from '../grammar/tree.ts';
import type { OwnPace, Play, PlayerNumber } from './play.ts';

export function readPaces(roster: Block | undefined): Play['paces'] {
  if (roster === undefined) return {};
  const paces: Partial<Record<PlayerNumber, OwnPace>> = {};
  for (const { parsed } of roster.lines) {
    const { tree } = parsed;
    if (tree?.$type !== 'Entry' || parsed.fault !== undefined || tree.pace === undefined || !isPlayer(tree.number)) continue;
    paces[tree.number] ??= paceOf(tree.pace);
  }
  return paces;
}

/** Whom plays speak of. */
export function isPlayer(number: number): number is PlayerNumber {
  return number >= 1 && number <= 5;
}

export function paceOf(pace: NonNullable<NodeOf<'Entry'>['pace']>): OwnPace {
  if (pace.$type === 'Speed') return { kind: 'speed', metresPerSecond: pace.speed };
  if (pace.$type === 'SprintTime') return { kind: 'sprint', metres: pace.distance.metres, seconds: pace.time.seconds };
  return { kind: 'word', word: pace.word };
}
