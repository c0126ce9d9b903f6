/** A player's own pace from the roster, as a share of the top speed of his level. */
import type { OwnPace } from '../play/play.ts';
import { legProfile } from './legs.ts';
import type { Level } from './levels.ts';

/** Nobody of a team is further from its level than this; a slip of the pen stays in bounds. Common practice, no source. */
const slowest = 0.6;
const fastest = 1.5;

/** `fast` and `slow` are one standard deviation of the level's legs; a measured sprint is run from a stand, flat out. */
export function paceShare(level: Level, pace: OwnPace): number {
  const share = shareOf(level, pace);
  return Math.round(Math.max(slowest, Math.min(fastest, share)) * 1000) / 1000;
}

function shareOf(level: Level, pace: OwnPace): number {
  if (pace.kind === 'speed') return pace.metresPerSecond / level.vmax;
  if (pace.kind === 'sprint') return shareOfSprint(level, pace.metres, pace.seconds);
  if (pace.word === 'average') return 1;
  return pace.word === 'fast' ? 1 + level.legsSpread : 1 - level.legsSpread;
}

/** The share with which the level's legs run the distance in this time: the quicker, the higher, so halving always ends. */
function shareOfSprint(level: Level, metres: number, seconds: number): number {
  let [low, high] = [slowest, fastest];
  for (let round = 0; round < 20; round++) {
    const share = (low + high) / 2;
    const { seconds: takes } = legProfile({ distance: metres, v0: 0, v1: 99, vmax: level.vmax * share, tau: level.tau, brake: level.brake });
    if (takes > seconds) low = share;
    else high = share;
  }
  return (low + high) / 2;
}
