// The recipe for a machine that looks at every pull request: its lines that call setwright, as they stand in the manual, in a repository with
// two branches.
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommandLine } from './built.ts';

let folder = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-pull-request-'));
  const binary = await buildCommandLine(build, folder);
  mkdirSync(join(folder, 'bin'));
  writeFileSync(join(folder, 'bin/setwright'), `#!/bin/sh\nexec "${process.execPath}" "${binary}" "$@"\n`);
  chmodSync(join(folder, 'bin/setwright'), 0o755);
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const page = () => readFileSync('docs/command-line.md', 'utf8');
const calls = () => [...page().matchAll(/^ +- run: (setwright .*)$/gm)].map(([, line]) => line!);

test.skipIf(process.platform === 'win32')('the recipe’s lines leave findings, a comment and pictures, and end red where a play cannot work', () => {
  const git = (...args: readonly string[]) => execFileSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@example.org', '-c', 'init.defaultBranch=main', ...args], { cwd: folder, stdio: 'pipe' });
  const plays = join(folder, 'ours/plays');
  mkdirSync(plays, { recursive: true });
  const tide = 'level u14\nplay "Tide"\n  from horns\n  step "Open"\n    4 ball-screens for 1, then rolls\n    1 drives off 4 to right elbow\n    look 1: jumper\n';
  writeFileSync(join(plays, 'tide.play'), tide);
  git('init', '--quiet', 'ours');
  git('-C', 'ours', 'add', '.');
  git('-C', 'ours', 'commit', '--quiet', '--message', 'as it was');
  git('-C', 'ours', 'switch', '--quiet', '--create', 'assistant');
  writeFileSync(join(plays, 'tide.play'), tide.replace('right elbow', 'the rim').replace('4 ball-screens for 1, then rolls', '1 ball-screens for 4'));
  git('-C', 'ours', 'commit', '--quiet', '--all', '--message', 'changed');
  git('clone', '--quiet', '--branch', 'assistant', 'ours', 'clone');
  const temp = join(folder, 'temp');
  mkdirSync(temp);
  const env = { ...process.env, PATH: `${join(folder, 'bin')}${delimiter}${process.env.PATH}`, RUNNER_TEMP: temp, GITHUB_BASE_REF: 'main' };
  expect(calls().length).toBe(3);
  const codes = calls().map((line) => spawnSync('bash', ['-e', '-c', line], { cwd: join(folder, 'clone'), env, encoding: 'utf8' }).status);
  expect(codes).toEqual([0, 0, 1]);
  expect(JSON.parse(readFileSync(join(temp, 'plays.sarif'), 'utf8')).runs[0].results).toContainEqual(expect.objectContaining({ ruleId: 'screen-with-ball', locations: [expect.objectContaining({ physicalLocation: { artifactLocation: { uri: 'plays/tide.play', uriBaseId: '%SRCROOT%' }, region: expect.objectContaining({ startLine: 5 }) } })] }));
  expect(readFileSync(join(temp, 'changes.md'), 'utf8')).toMatch(/^\| \*\*Tide\*\* \| changed \|/m);
  expect(readdirSync(join(temp, 'changes')).sort()).toEqual(['index.html', 'tide-after.svg', 'tide-before.svg']);
});
