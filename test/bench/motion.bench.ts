import { distanceAt, legProfile } from '../../language/motion/legs.ts';
import type { Measure } from '../../scripts/bench.ts';

export /** Legs of a set: a few metres, some entered or left at speed. */
const legs = Array.from({ length: 100 }, (_, index) => ({
  distance: 0.5 + index / 8, v0: index % 3, v1: index % 2, vmax: 5.6, tau: 0.9, brake: 3.5,
}));
const profiles = legs.map(legProfile);

/** The middle of nine rounds, in microseconds a call. What is summed up is returned, so that no call is left out. */
function medianMicroseconds(calls: number, call: (index: number) => number): number {
  let sum = 0;
  const rounds = Array.from({ length: 9 }, () => {
    const begin = performance.now();
    for (let index = 0; index < calls; index++) sum += call(index);
    return ((performance.now() - begin) * 1000) / calls;
  });
  if (!Number.isFinite(sum)) throw new Error('a leg gave no number');
  return rounds.sort((a, b) => a - b)[4]!;
}

export async function bench(): Promise<Measure[]> {
  const solve = medianMicroseconds(20_000, (index) => legProfile(legs[index % 100]!).seconds);
  const ask = medianMicroseconds(200_000, (index) => distanceAt(profiles[index % 100]!, (index % 37) / 12));
  return [
    { name: 'one leg solved', value: solve, unit: 'µs', budget: 5 },
    { name: 'distance along a leg at a time', value: ask, unit: 'µs', budget: 0.2 },
  ];
}
