// `npm run bench [-- --json] [name …]`: measures what test/bench/*.bench.ts measure and prints it beside what it may cost.
// Each file exports `bench(): Promise<Measure[]>`. Ends with 1 when a budget is passed.
import { mkdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build as bundle, type Plugin } from 'esbuild';
import { globSync } from 'tinyglobby';
import { buildPlayer, root } from './build.ts';
import { lineTables, tablesForEsbuild } from './line-tables.ts';
import { playerForEsbuild } from './player-text.ts';

export interface Measure {
  /** what a reader would call it: "one line parsed" */
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** most it may be, in the same unit; absent where nothing was promised */
  readonly budget?: number;
  /** what it would take to stay below it, said where it is passed */
  readonly missed?: string;
}

interface Measured extends Measure {
  readonly file: string;
  readonly ok: boolean;
}

/** `import.meta.dirname` goes on to mean the folder of the source, not of the bundle. */
const foldersStay: Plugin = {
  name: 'folders-stay',
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, async ({ path }) => ({
      contents: (await readFile(path, 'utf8')).replaceAll('import.meta.dirname', JSON.stringify(dirname(path))),
      loader: 'ts',
    }));
  },
};

/** Bundled as it is shipped: hundreds of small modules would measure the loading of files. */
async function load(file: string): Promise<{ bench(): Promise<readonly Measure[]> }> {
  const folder = join(root, 'node_modules/.setwright');
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, `${basename(file, '.ts')}.mjs`);
  await bundle({
    ...{ absWorkingDir: root, entryPoints: [file], outfile, bundle: true, platform: 'node', format: 'esm', packages: 'external', logLevel: 'warning' },
    plugins: [tablesForEsbuild(lineTables()), foldersStay, playerForEsbuild(await buildPlayer())],
  });
  return import(pathToFileURL(outfile).href);
}

async function measureAll(wanted: readonly string[]): Promise<readonly Measured[]> {
  const files = globSync('test/bench/*.bench.ts', { cwd: root }).sort().filter((file) => wanted.length === 0 || wanted.some((name) => file.includes(name)));
  const all: Measured[] = [];
  for (const file of files) {
    const { bench } = await load(file);
    for (const one of await bench()) all.push({ ...one, file, ok: one.budget === undefined || one.value <= one.budget });
  }
  return all;
}

function table(measures: readonly Measured[]): string {
  const number = (value: number) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));
  const rows = measures.map(({ name, value, unit, budget, ok }) => [name, `${number(value)} ${unit}`, budget === undefined ? '' : `may be ${budget} ${unit}`, budget === undefined ? '' : ok ? 'ok' : 'OVER']);
  const widths = [0, 1, 2].map((column) => Math.max(0, ...rows.map((row) => row[column]!.length)));
  return rows
    .map(([name, value, may, verdict], at) => {
      const { ok, missed } = measures[at]!;
      const row = `  ${name!.padEnd(widths[0]!)}  ${value!.padStart(widths[1]!)}  ${may!.padEnd(widths[2]!)}  ${verdict}`.trimEnd();
      return ok || missed === undefined ? row : `${row}\n      to get there: ${missed}`;
    })
    .join('\n');
}

const args = process.argv.slice(2);
const measures = await measureAll(args.filter((arg) => !arg.startsWith('--')));
if (measures.length === 0) {
  console.error('Nothing was measured: no test/bench/*.bench.ts of that name.');
  process.exit(1);
}
const machine = { node: process.version, cpu: cpus()[0]?.model ?? 'unknown', cores: cpus().length };
if (args.includes('--json')) console.log(JSON.stringify({ machine, measures }, null, 2));
else console.log(`\n${table(measures)}\n\n  Node ${machine.node}, ${machine.cores} × ${machine.cpu}; one run, other programs may have slowed it.\n`);
process.exitCode = measures.every(({ ok }) => ok) ? 0 : 1;
