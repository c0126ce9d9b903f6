// What the extension takes of VS Code's time as it starts, told by itself in a real one (test/host/suite.ts); the server starts beside it.
import { hostSuite } from '../../scripts/host-suite.ts';
import { executable } from '../e2e/chromium.ts';
import prepare from '../e2e/prepare.ts';
import { places, type Place } from '../e2e/vscode.ts';
import { runInside } from '../e2e/window.ts';
import type { Measure } from '../../scripts/bench.ts';

/** Windows opened anew; medians. */
const rounds = 3;

export async function bench(): Promise<readonly Measure[]> {
  if (!executable) return [];
  await prepare();
  const rows: Measure[] = [];
  for (const place of places) rows.push(...(await rowsOf(place)));
  return rows;
}

async function rowsOf(place: Place): Promise<readonly Measure[]> {
  const told: { readonly loading: number; readonly activation: number }[] = [];
  for (let round = 0; round < rounds; round++) {
    const { said } = await runInside(place, hostSuite[place]);
    const [, activation, loading] = /^activation: ([\d.]+) ms, its code loaded in ([\d.]+) ms/m.exec(said.join('\n')) ?? [];
    if (activation === undefined || loading === undefined) throw new Error(`The extension did not tell what its start took (${place}):\n${said.join('\n')}`);
    told.push({ activation: Number(activation), loading: Number(loading) });
  }
  const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
  return [
    { name: `its code loaded, extension host: ${place}`, value: median(told.map(({ loading }) => loading)), unit: 'ms' },
    { name: `loaded and activated, extension host: ${place}`, value: median(told.map(({ loading, activation }) => loading + activation)), unit: 'ms', budget: 100 },
  ];
}
