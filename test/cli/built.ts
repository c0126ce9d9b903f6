// The command line as it is shipped, built into a folder of the test's own.
import { join } from 'node:path';
import type { build as bundle } from 'esbuild';
import { buildPlayer } from '../../scripts/build.ts';
import { playerForEsbuild } from '../../scripts/player-text.ts';

export async function buildCommandLine(build: typeof bundle, folder: string): Promise<string> {
  const outfile = join(folder, 'setwright.mjs');
  await build({
    entryPoints: ['server/cli/main.ts'], outfile, bundle: true, minify: true, platform: 'node', target: 'node20', format: 'esm', logLevel: 'error',
    banner: { js: "import { createRequire as requireFrom } from 'node:module';\nconst require = requireFrom(import.meta.url);" },
    plugins: [playerForEsbuild(await buildPlayer())],
  });
  return outfile;
}
