// What the bundles of the language server are made of: what an editor waits for first is small, and nothing stands in two of them.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { buildServer } from '../../scripts/build.ts';
import { inAscii } from '../../scripts/in-ascii.ts';

let first: string;
let rest: string;
beforeAll(async () => {
  const folder = dirname(await buildServer('test/out/bundles'));
  first = readFileSync(join(folder, 'language-server.cjs'), 'utf8');
  rest = readFileSync(join(folder, 'all-answers.cjs'), 'utf8');
}, 60_000);

test('the first answer needs neither the grammar nor the checks', () => {
  const ofTheGrammar = 'put each action on its own line';
  expect(rest).toContain(ofTheGrammar);
  expect(first).not.toContain(ofTheGrammar);
  expect(first.length).toBeLessThan(rest.length / 4);
});

test('the protocol’s library stands in the first only', () => {
  const itsWords = 'Pending response rejected since connection got disposed';
  expect(first).toContain(itsWords);
  expect(rest).not.toContain(itsWords);
});

test('both are ASCII: V8 keeps them in half the memory', () => {
  for (const text of [first, rest]) expect([...new Set(text.match(/[^\x00-\x7f]/g))]).toEqual([]);
});

test('a pattern written in ASCII finds the same', () => {
  const pattern = 'return [/["“][^“”"]*”|…/u, "🏀“".length, `’`]';
  const read = (text: string): unknown => new Function(text)();
  expect(inAscii(pattern)).toMatch(/^[\x00-\x7f]*$/);
  const [found, length, sign] = read(inAscii(pattern)) as [RegExp, number, string];
  expect([found.exec('say “go”')?.[0], length, sign]).toEqual(['“go”', 3, '’']);
});
