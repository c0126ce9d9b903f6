// The example playbook, read as its club would: every line, every way through, every finding.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { emptyBook, openFile, type Book } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import { inEnglish } from '../../language/message/message.ts';

const folder = join(import.meta.dirname, '../../examples');
const files = readdirSync(folder).filter((name) => name.endsWith('.play')).sort();
const uriOf = (name: string): string => `file:///examples/${name}`;
const book = files.reduce<Book>((opened, name) => openFile(opened, uriOf(name), readFileSync(join(folder, name), 'utf8')), emptyBook);
const keeper = createKeeper();
const plays = files.flatMap((name) => keeper.playsOf(book, uriOf(name)).map((compiled) => [compiled.play.name, compiled] as const));

describe('the example playbook', () => {
  test('holds about thirty plays, each name once', () => {
    const names = plays.map(([name]) => name);
    expect(names.length).toBeGreaterThanOrEqual(30);
    expect(new Set(names).size).toBe(names.length);
  });

  test('every play of the folder stands in a section of the club’s book, and every name there is a play', () => {
    const sections = book.files.get(uriOf('club.play'))!.blocks.flatMap(({ lines }) => lines.flatMap(({ parsed }) => (parsed.tree?.$type === 'Section' ? parsed.tree.plays : [])));
    expect([...sections].sort()).toEqual(plays.map(([name]) => name).sort());
  });

  test.each(files)('%s has no broken line', (name) => {
    const broken = book.files.get(uriOf(name))!.blocks.flatMap(({ lines }) => lines.flatMap(({ parsed }) => (parsed.fault === undefined ? [] : [`${parsed.text.trim()}: ${inEnglish(parsed.fault.message)}`])));
    expect(broken).toEqual([]);
  });

  test.each(plays)('%s ends in a shot or as its coach says', (_, { play, timeline }) => {
    const stated = new Set(play.steps.flatMap(({ key, end }) => (end === undefined ? [] : [key])));
    const ending = timeline.runs.filter(({ releaseAt, steps }) => releaseAt !== undefined || stated.has(steps.at(-1)!));
    expect(ending.length).toBeGreaterThan(0);
  });
});

describe('the example playbook checked', () => {
  // What the tool says it cannot show yet is no mistake of the play's.
  const mistakes = (name: string) => keeper.findingsOf(book, uriOf(name)).filter(({ severity, code }) => severity !== 'hint' && code !== 'not-yet');

  test.each(files)('%s has no error and no warning its coach has not allowed with a reason', (name) => {
    expect(mistakes(name).map(({ play, code, message }) => `${play ?? 'outside a play'}: ${code}: ${message}`)).toEqual([]);
  });

  test('every allowance gives its reason', () => {
    const silent = plays.flatMap(([name, { play }]) => play.allowances.filter(({ why }) => why.trim() === '').map(({ check }) => `${name}: ${check}`));
    expect(silent).toEqual([]);
  });
});
