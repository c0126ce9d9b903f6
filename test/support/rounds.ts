// Limits of time on a machine that does other things besides: what those take from one round they do not take from every one, and
// what is too slow is too slow in all.

export interface Rounds {
  /** So many in any case. */
  readonly least?: number;
  /** More, up to so many, while none has held. */
  readonly most?: number;
}

/** Measures until a round has held; returns every round, in order. */
export async function untilOneHolds<Round>(measure: () => Promise<Round> | Round, holds: (round: Round) => boolean, { least = 1, most = 6 }: Rounds = {}): Promise<readonly Round[]> {
  const rounds: Round[] = [];
  while (rounds.length < least || (rounds.length < most && !rounds.some(holds))) rounds.push(await measure());
  return rounds;
}
