// dist/setwright.vsix: the extension as VS Code installs it. What goes in is listed in .vscodeignore.
import { spawnSync } from 'node:child_process';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { build, dist, root } from './build.ts';
import { installedReadme } from './installed-readme.ts';

export const vsix = join(dist, 'setwright.vsix');
/** A coach's phone hotspot in a gym: more than this is not "one small file" any more. */
const mostBytes = 1_500_000;

/** Packs what `build` left in dist/ and returns the size in bytes; throws when vsce refuses or the file is too big. */
export function pack(): number {
  writeFileSync(join(dist, 'readme.md'), installedReadme(readFileSync(join(root, 'README.md'), 'utf8')));
  const said = vsce(root, '--no-rewrite-relative-links', '--readme-path', 'dist/readme.md', '-o', vsix);
  const { size } = statSync(vsix);
  if (size > mostBytes) throw new Error(`${vsix} has ${size} bytes, more than the ${mostBytes} it may have:\n${said}`);
  return size;
}

/** Packs another extension, as the tests bring one along, to `to`; returns that path. */
export function packFolder(folder: string, to: string): string {
  vsce(folder, '--skip-license', '-o', to);
  return to;
}

function vsce(cwd: string, ...more: readonly string[]): string {
  const program = createRequire(import.meta.url).resolve('@vscode/vsce/vsce');
  const run = spawnSync(process.execPath, [program, 'package', '--no-dependencies', '--allow-missing-repository', ...more], { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  if (run.status !== 0) throw new Error(`vsce could not pack the extension in ${cwd}:\n${run.stdout}${run.stderr}`);
  return `${run.stdout}${run.stderr}`;
}

if (import.meta.main) {
  await build();
  console.log(`dist/setwright.vsix  ${(pack() / 1e6).toFixed(2)} MB (may have ${mostBytes / 1e6} MB)`);
}
