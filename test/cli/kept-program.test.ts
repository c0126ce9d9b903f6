// What a program keeps compiled for its next start changes how fast it starts, and nothing else.
import { execFileSync } from 'node:child_process';
import { globSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-kept-'));
  writeFileSync(join(folder, 'beside.cjs'), 'exports.again = require("./program.cjs");');
  writeProgram('first');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const writeProgram = (word: string) => writeFileSync(join(folder, 'program.cjs'), `exports.say = (name) => "${word} " + name;\nexports.self = require("./beside.cjs").again === exports;\nconsole.log(exports.say(require("node:path").basename(__filename)), exports.self);`);
const kept = () => globSync(join(folder, 'cache/**/program.cjs-*'));

function start(env: NodeJS.ProcessEnv = {}, ...work: readonly string[]): string {
  const script = `import { loadKept } from ${JSON.stringify(pathToFileURL(join(root, 'server/kept-program.ts')).href)};\nloadKept(...${JSON.stringify([join(folder, 'program.cjs'), ...work])});`;
  return execFileSync(process.execPath, ['--input-type=module', '-e', script], { encoding: 'utf8', env: { ...process.env, NODE_COMPILE_CACHE: join(folder, 'cache'), ...env } }).trim();
}

test('it does the same at its second start as at its first, and what it requires is loaded once', () => {
  expect(start({}, 'say')).toBe('first program.cjs true');
  expect(kept()).toHaveLength(1);
  const before = readFileSync(kept()[0]!);
  expect(start({}, 'say')).toBe('first program.cjs true');
  expect(readFileSync(kept()[0]!).equals(before), 'what was kept is taken, not written anew').toBe(true);
});

test('what each of its works needs is kept after the first time of each', () => {
  const needs = (name: string) => `function ${name}() { return [${Array.from({ length: 200 }, (_, i) => `() => "${name}${i}"`).join(', ')}].map((one) => one()).length; }`;
  writeFileSync(join(folder, 'program.cjs'), `${needs('check')}\n${needs('draw')}\nconsole.log({ check, draw }[process.env.WORK]());`);
  const keptOf = (work: string) => {
    expect(start({ WORK: work }, work)).toBe('200');
    expect(kept()).toHaveLength(1);
    return readFileSync(kept()[0]!);
  };
  const first = keptOf('check');
  const both = keptOf('draw');
  expect(both.length).toBeGreaterThan(first.length * 1.5);
  for (const work of ['check', 'draw']) expect(keptOf(work).equals(both), work).toBe(true);
});

test('another text of the same length is another program', () => {
  start();
  writeProgram('later');
  expect(start()).toBe('later program.cjs true');
});

test('what is damaged is not taken, and mended', () => {
  start();
  const [place] = kept();
  const whole = readFileSync(place!);
  writeFileSync(place!, whole.subarray(0, whole.length / 2));
  expect(start()).toBe('first program.cjs true');
  expect(readFileSync(place!).length).toBe(whole.length);
});

test('where Node is told to keep nothing, nothing is kept', () => {
  expect(start({ NODE_DISABLE_COMPILE_CACHE: '1' })).toBe('first program.cjs true');
  expect(kept()).toEqual([]);
});
