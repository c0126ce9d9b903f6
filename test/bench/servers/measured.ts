// The servers that are measured beside each other, all with the Node that runs the measurement.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { buildServer, root } from '../../../scripts/build.ts';
import type { Measured } from './drive.ts';

const others = join(root, 'test/bench/others/node_modules');

export async function ours(folder: string): Promise<Measured> {
  const settings = { checks: { settle: 0 } };
  return { name: 'Setwright', command: [process.execPath, await buildServer(folder), '--stdio'], language: 'setwright', options: { settings }, settings };
}

export function dockerfile(): Measured {
  return { name: 'dockerfile', command: [process.execPath, installed('dockerfile-language-server-nodejs/bin/docker-langserver'), '--stdio'], language: 'dockerfile', calm: 40 };
}

export function typeScript(): Measured {
  const command = [process.execPath, installed('typescript-language-server/lib/cli.mjs'), '--stdio'];
  return { name: 'TypeScript', command, language: 'typescript', calm: 800, options: { tsserver: { path: installed('typescript/lib/tsserver.js') } } };
}

function installed(path: string): string {
  const found = join(others, path);
  if (!existsSync(found)) throw new Error('The servers to measure beside are not installed: npm ci --prefix test/bench/others');
  return found;
}
