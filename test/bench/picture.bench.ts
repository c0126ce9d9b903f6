// What a frame costs outside a browser: everything on the floor at t, and the same as SVG text.
import { at } from '../../language/playback/at.ts';
import { readPlayback } from '../../language/playback/validate.ts';
import { drawSvg } from '../../language/picture/draw.ts';
import { sceneAt } from '../../language/picture/scene.ts';
import { lighthouse } from '../support/playback-fixture.ts';
import type { Measure } from '../../scripts/bench.ts';

export async function bench(): Promise<readonly Measure[]> {
  const data: unknown = JSON.parse(JSON.stringify(lighthouse));
  return [
    measure('everything on the floor at t (p95)', 0.01, 4000, 50, (i) => at(lighthouse, 0, (i * 37) % 11_000)),
    measure('a frame as SVG text (p95)', 0.5, 1500, 1, (i) => drawSvg(sceneAt(lighthouse, 0, (i * 37) % 11_000))),
    measure('a playback read from unknown data (p50)', 1, 400, 1, () => readPlayback(data), 0.5),
  ];
}

/** ms of one call; `batch` calls are timed together where one is shorter than the clock can tell. */
function measure(name: string, budget: number, rounds: number, batch: number, call: (i: number) => unknown, percentile = 0.95): Measure {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    for (let i = 0; i < batch; i++) call(round * batch + i);
    if (round >= rounds / 5) times.push((performance.now() - start) / batch);
  }
  times.sort((a, b) => a - b);
  return { name, value: times[Math.floor(times.length * percentile)]!, unit: 'ms', budget };
}
