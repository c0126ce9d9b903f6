// Which play of one version is which of the other.
import { changedLines } from './changed-lines.ts';
import { linesOf, partsOf, type PlayRead } from './play-parts.ts';

/** The earlier play of each later one: of the same name, else one in which all is the same, else the one that it is most like. */
export function pairsOf<Version extends PlayRead>(before: readonly Version[], after: readonly Version[]): ReadonlyMap<Version, Version> {
  const pairs = new Map<Version, Version>();
  const left = [...before];
  const pair = (was: Version, now: Version) => {
    pairs.set(now, was);
    left.splice(left.indexOf(was), 1);
  };
  const pairBy = (signOf: (version: Version) => string): void => {
    const signs = new Map(left.map((was) => [was, signOf(was)]));
    for (const now of after) {
      if (pairs.has(now)) continue;
      const sign = signOf(now);
      const was = sign === '' ? undefined : left.find((one) => signs.get(one) === sign);
      if (was !== undefined) pair(was, now);
    }
  };
  pairBy(({ play }) => play.key);
  pairBy((version) => partsOf(version).slice(1).flatMap(linesOf).join('\n'));
  const alike = after
    .filter((now) => !pairs.has(now))
    .flatMap((now) => left.map((was) => ({ was, now, likeness: likenessOf(was, now) })))
    .filter(({ likeness }) => likeness > 0)
    .sort((a, b) => b.likeness - a.likeness);
  for (const { was, now } of alike) if (left.includes(was) && !pairs.has(now)) pair(was, now);
  return pairs;
}

/** So few lines in common say nothing: many plays begin with a pass to the wing and a look for a three. */
const leastInCommon = 3;

/** Which part of their lines two plays have in common, in the same order: 0 where it is not more than half of the longer one, or too little to tell. */
export function likenessOf(one: PlayRead, other: PlayRead): number {
  const [before, after] = [deedsOf(one), deedsOf(other)];
  const longer = Math.max(before.length, after.length);
  const shorter = Math.min(before.length, after.length);
  if (shorter < leastInCommon || shorter * 2 <= longer) return 0;
  const common = before.length - changedLines(before, after).filter(({ kind }) => kind === 'went').length;
  return common < leastInCommon || common * 2 <= longer ? 0 : common / longer;
}

/** Where they stand, and all that happens; what a step is called says nothing. */
function deedsOf(version: PlayRead): readonly string[] {
  const [head, ...steps] = partsOf(version);
  return [head?.standing ?? '', ...steps.flatMap(({ lines }) => lines)];
}
