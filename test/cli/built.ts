// The command line as it is shipped, built into a folder of the test's own.
import { execFile } from 'node:child_process';
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

export interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface Around {
  readonly input?: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly cwd?: string;
}

/** Runs it to its end, whatever that is. */
export function runBuilt(binary: string, args: readonly string[], { input = '', env = {}, cwd }: Around = {}): Promise<Ended> {
  return new Promise((resolve) => {
    const child = execFile(process.execPath, [binary, ...args], { ...(cwd !== undefined && { cwd }), env: { ...process.env, ...env } }, (error, out, err) => resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err }));
    child.stdin!.end(input);
  });
}
