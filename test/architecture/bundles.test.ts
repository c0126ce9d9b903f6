// What the bundles of the language server are made of: what an editor waits for first is small, and nothing stands in two of them.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { buildServer } from '../../scripts/build.ts';
import { inAscii } from '../../scripts/in-ascii.ts';

let onNode: string;
let inWorker: string;
let rest: string;
beforeAll(async () => {
  const folder = join(dirname(await buildServer('test/out/bundles')), '..');
  [onNode, inWorker, rest] = ['node/language-server.cjs', 'web/server.js', 'all-answers.js'].map((file) => readFileSync(join(folder, file), 'utf8')) as [string, string, string];
}, 60_000);

test('the first answer needs neither the grammar nor the checks', () => {
  const ofTheGrammar = 'put each action on its own line';
  expect(rest.includes(ofTheGrammar)).toBe(true);
  for (const first of [onNode, inWorker]) {
    expect(first.includes(ofTheGrammar)).toBe(false);
    expect(first.length).toBeLessThan(rest.length / 4);
  }
});

test('the protocol’s library stands in what is started, not in what that loads', () => {
  // Of its connection, and of its types.
  for (const itsWords of ['Pending response rejected since connection got disposed', 'DiagnosticRelatedInformation']) {
    expect([onNode, inWorker, rest].map((text) => text.includes(itsWords))).toEqual([true, true, false]);
  }
});

test('what Node and a worker share needs neither', () => {
  expect(rest.match(/"node:[^"]*"/g)).toBeNull();
});

test('all are ASCII: V8 keeps them in half the memory', () => {
  for (const text of [onNode, inWorker, rest]) expect([...new Set(text.match(/[^\x00-\x7f]/g))]).toEqual([]);
});

test('a pattern written in ASCII finds the same', () => {
  const pattern = 'return [/["“][^“”"]*”|…/u, "🏀“".length, `’`]';
  const read = (text: string): unknown => new Function(text)();
  expect(inAscii(pattern)).toMatch(/^[\x00-\x7f]*$/);
  const [found, length, sign] = read(inAscii(pattern)) as [RegExp, number, string];
  expect([found.exec('say “go”')?.[0], length, sign]).toEqual(['“go”', 3, '’']);
});
