// Each part of the tree sees only the world it runs in: the language neither Node nor a browser, the player no Node.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { root } from './build.ts';

export const projects = ['language', '.', 'tsconfig.web.json', 'client/preview', 'test/e2e'] as const;

/** Checks one project and returns what the compiler says, empty when all is well. */
export function typecheck(project: string): string {
  const tsc = join(createRequire(import.meta.url).resolve('typescript/package.json'), '../bin/tsc');
  const run = spawnSync(process.execPath, [tsc, '-p', project], { cwd: root, encoding: 'utf8' });
  return run.status === 0 ? '' : run.stdout + run.stderr;
}

if (import.meta.main) {
  const complaints = projects.map(typecheck).filter((said) => said !== '');
  process.stdout.write(complaints.join(''));
  process.exitCode = complaints.length === 0 ? 0 : 1;
}
