// docs/ is written from the source: here it is written once more, in memory, and compared.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { verbs } from '../../language/grammar/verbs.ts';
import { entries } from '../../language/checks/catalogue.ts';
import { mistakesIn, compileExample } from '../../scripts/reference/compile-example.ts';
import { mistake, stages } from '../../scripts/reference/first-play.ts';
import { chapters, fileOf, lineWords, partWords } from '../../scripts/reference/line-words.ts';
import { lineRules } from '../../scripts/reference/railroad.ts';
import { reference } from '../../scripts/reference/reference.ts';
import { playOf, verbWords, type ActionClass } from '../../scripts/reference/verb-words.ts';
import { machinePathsIn } from '../architecture/rules.ts';

const docs = join(import.meta.dirname, '../../docs');
const refresh = 'run npm run reference';
let files: ReadonlyMap<string, string>;
beforeAll(() => {
  files = reference();
});

describe('the reference in docs/', () => {
  test('is that of the source', () => {
    for (const [path, text] of files) expect(existsSync(join(docs, path)) ? readFileSync(join(docs, path), 'utf8') : 'not there', `docs/${path}: ${refresh}`).toBe(text);
  });

  test('has no picture left that nothing shows', () => {
    const lying = readdirSync(join(docs, 'drawn'), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.svg')).map((name) => `drawn/${name.replaceAll('\\', '/')}`);
    expect(lying.filter((path) => !files.has(path)), refresh).toEqual([]);
    const pages = [...files].filter(([path]) => path.endsWith('.md')).map(([, text]) => text).join('\n');
    expect([...files.keys()].filter((path) => path.endsWith('.svg') && !pages.includes(`"${path}"`))).toEqual([]);
  });

  // What a phone leaves a picture, and letters of 13 pixels as drawn.
  test('has diagrams whose letters can be read on a phone', () => {
    const lettersOnPhone = (svg: string) => 13 * Math.min(1, 312 / Number(/ width="([\d.]+)"/.exec(svg)![1]));
    const sizes = [...files].filter(([path]) => path.startsWith('drawn/lines/')).map(([path, svg]) => [path, lettersOnPhone(svg)] as const);
    expect(sizes.length).toBeGreaterThan(40);
    expect(sizes.filter(([, size]) => size < 7)).toEqual([]);
    expect(sizes.filter(([, size]) => size < 8).length).toBeLessThanOrEqual(4);
  });

  test('is the same when written twice', () => {
    expect([...reference()]).toEqual([...files]);
  });

  test('leads nowhere that is not there', () => {
    const anchors = (text: string) => new Set([...text.matchAll(/<a id="([^"]+)">/g)].map(([, id]) => id!).concat([...text.matchAll(/^#+ (.+)$/gm)].map(([, title]) => title!.toLowerCase().replace(/[^\p{L}\p{N} -]/gu, '').replaceAll(' ', '-'))));
    const broken = [...files].filter(([path]) => path.endsWith('.md')).flatMap(([path, text]) =>
      [...text.replace(/```[\s\S]*?```/g, '').matchAll(/\]\(([^)\s]*)\)|src="([^"]+)"/g)].map(([, link, source]) => link ?? source!).filter((link) => {
        if (/^https?:/.test(link)) return false;
        const [file = '', id] = link.split('#');
        const target = file === '' ? path : file;
        if (!files.has(target) && !existsSync(join(docs, target))) return true;
        return id !== undefined && !anchors(files.get(target) ?? '').has(id);
      }).map((link) => `${path}: ${link}`),
    );
    expect(broken).toEqual([]);
  });

  test('names no place on one machine, and stays small', () => {
    expect([...files].flatMap(([path, text]) => machinePathsIn(path, text))).toEqual([]);
    const bytes = [...files.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(3_000_000);
    for (const path of files.keys()) if (path.includes('drawn/actions/')) expect(statSync(join(docs, path)).size, path).toBeLessThan(9_000);
  });

  test('has an entry for each check, where the editor’s link leads', () => {
    for (const { code } of entries) expect(files.get('checks.md')).toContain(`<a id="${code}"></a>`);
  });
});

describe('every kind of line', () => {
  test('of the grammar is told in a chapter', () => {
    expect(chapters.flatMap(({ rules }) => rules).sort()).toEqual([...lineRules()].sort());
  });

  test.each(Object.entries({ ...lineWords, ...partWords }))('%s has an example that is clean', (_, words) => {
    expect(mistakesIn(fileOf(words))).toEqual([]);
  });
});

/** Read, but not carried out yet: the page prints what this version says of them. */
const notYet = new Set<string>(['swap']);

describe('every action', () => {
  const bases = [...new Set([...verbs.values()].filter((verb) => verb.class !== 'event' && verb.number === 'singular').map((verb) => `${verb.class}/${verb.base}`))];

  test('of the grammar has its words, and no other', () => {
    expect(Object.entries(verbWords).flatMap(([verbClass, words]) => Object.keys(words).map((base) => `${verbClass}/${base}`)).sort()).toEqual([...bases].sort());
  });

  test.each(bases.filter((key) => !notYet.has(key.split('/')[1]!)))('%s has an example that is clean and does it', (key) => {
    const [verbClass, base] = key.split('/') as [ActionClass, string];
    const words = verbWords[verbClass][base];
    if (words === undefined) return expect(words).toBeDefined();
    const text = playOf(words);
    expect(mistakesIn(text)).toEqual([]);
    const said = words.example.split(/\W+/).join(' ');
    const forms = [...verbs].filter(([, verb]) => verb.class === verbClass && verb.base === base).map(([word]) => word.split(/\W+/).join(' '));
    expect(forms.some((form) => ` ${said} `.includes(` ${form} `))).toBe(true);
    expect(compileExample(text).plays).toHaveLength(1);
  });
});

describe('the first play', () => {
  test.each(Object.entries(stages))('is clean at the stage “%s”', (stage, text) => {
    // Nobody has written yet how it ends.
    const ended = stage === 'stand' || stage === 'move' ? `${text}\n    ends with no shot` : text;
    expect(mistakesIn(ended)).toEqual([]);
  });

  test('shows a mistake that brings the sentence it shows', () => {
    expect(compileExample(mistake.text).findings.map(({ code }) => code)).toContain(mistake.code);
  });
});
