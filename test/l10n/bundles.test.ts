// Every template that a coach can read, and each language's translation of it.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../../scripts/build.ts';
import { allTemplates, englishBundle, templatesIn } from '../../scripts/templates.ts';

const folder = join(root, 'l10n');
const read = (name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as Record<string, string>;
const { found, unknown } = allTemplates();
const gapsOf = (text: string) => [...text.matchAll(/\{[\w:]+\}|\$\(\w+\)/g)].map(String);
const sorted = (gaps: readonly string[]) => [...new Set(gaps)].sort();

test('every message names its template, so that it can be translated', () => {
  expect(unknown).toEqual([]);
  expect(templatesIn('a.ts', "message(text); message(`a ${b}`); message('c {d}', { d }); message(`g`); l10n.t('e {0}', f); other(text);")).toEqual({ found: ['c {d}', 'g', 'e {0}'], unknown: ['a.ts: message(text)', 'a.ts: message(`a ${b}`)'] });
});

test('the English bundle holds each of them: after a new sentence, npm run l10n', () => {
  expect(found.length).toBeGreaterThan(500);
  expect(englishBundle()).toBe(readFileSync(join(folder, 'bundle.l10n.json'), 'utf8'));
});

test('what a screen reader and the mouse are told in the player is a template too', () => {
  const preview = join(root, 'client/preview');
  const plain = /(?:aria-label|title|placeholder|alt)'?: '[^']*[a-z]/i;
  const said = readdirSync(preview).filter((name) => name.endsWith('.ts')).flatMap((name) => readFileSync(join(preview, name), 'utf8').split('\n').filter((line) => plain.test(line)).map((line) => `${name}: ${line.trim()}`));
  expect(said).toEqual([]);
  expect(plain.test("element('svg', { 'aria-label': 'The floor' })")).toBe(true);
});

describe.each(readdirSync(folder).filter((name) => name !== 'bundle.l10n.json'))('%s', (name) => {
  const translated = read(name);

  test('translates all of them, and nothing in vain', () => {
    expect(found.filter((template) => translated[template] === undefined)).toEqual([]);
    expect(Object.keys(translated).filter((template) => !found.includes(template))).toEqual([]);
  });

  test('keeps the gaps', () => {
    for (const [template, text] of Object.entries(translated)) expect(sorted(gapsOf(text)), template).toEqual(sorted(gapsOf(template)));
  });

  test('leaves the words of the notation as they are', () => {
    // Whole examples of lines stand between straight or back quotes.
    const quoted = (text: string) => [...text.matchAll(/`[^`]*`/g)].map(String).sort();
    for (const [template, text] of Object.entries(translated)) expect(quoted(text), template).toEqual(quoted(template));
  });
});
