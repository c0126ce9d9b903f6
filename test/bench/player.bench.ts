// A frame of the player in a real Chromium; nothing to measure with where that is missing.
import { executable } from '../e2e/chromium.ts';
import { openFramePace, playedAgain, type FramePace } from '../preview/frame-pace.ts';
import { openStage } from '../preview/player-in-browser.ts';
import { lighthouse } from '../support/playback-fixture.ts';
import type { Measure } from '../../scripts/bench.ts';

/** Medians of so many: what other programs take from a round is not the player’s. */
const rounds = 5;

export async function bench(): Promise<readonly Measure[]> {
  if (!executable) return [];
  const stage = await openStage();
  try {
    await stage.openPage(lighthouse);
    const { before, after } = await playedAgain(stage);
    await stage.openPage(lighthouse);
    const { measure } = await openFramePace(stage);
    const paces: FramePace[] = [];
    for (let round = 0; round < rounds; round++) paces.push(await measure());
    const median = (of: (pace: FramePace) => number) => paces.map(of).toSorted((a, b) => a - b)[Math.floor(rounds / 2)]!;
    const bare = median((pace) => pace.bare);
    const missed = `a machine where a bare loop takes 0.2 ms; here it takes ${bare.toFixed(2)}`;
    return [
      { name: 'a frame’s script with ten moving bodies, of processor (p95)', value: median(({ processor }) => processor), unit: 'ms', budget: 0.6, missed },
      { name: 'the same of a bare loop (p95)', value: bare, unit: 'ms' },
      { name: 'a frame’s script, in bare loops', value: median((pace) => pace.processor / pace.bare), unit: 'times', budget: 3 },
      { name: 'frames of 240 that come late and would not in a bare loop', value: Math.max(0, median(({ late, lateBare }) => late - lateBare)), unit: '', budget: 0 },
      // The engine's own code settles within this.
      { name: 'what playing twice more leaves in memory', value: Math.max(0, after.heap - before.heap) / 1000, unit: 'kB', budget: 300 },
      { name: 'elements it leaves', value: Math.max(0, after.nodes - before.nodes), unit: '', budget: 20 },
    ];
  } finally {
    await stage.close();
  }
}
