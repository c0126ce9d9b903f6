// The pages written by hand and the pictures they show; the generated reference has its own test.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const pages = execFileSync('git', ['ls-files', '-co', '--exclude-standard', '*.md'], { cwd: root, encoding: 'utf8' }).split('\n').filter((name) => name !== '' && existsSync(join(root, name)));

const text = (page: string): string => readFileSync(join(root, page), 'utf8').replace(/```[\s\S]*?```|`[^`\n]*`/g, '');
const anchorsOf = (page: string): ReadonlySet<string> =>
  new Set([
    ...[...readFileSync(join(root, page), 'utf8').matchAll(/<a id="([^"]+)">/g)].map(([, id]) => id!),
    ...[...readFileSync(join(root, page), 'utf8').matchAll(/^#+ (.+)$/gm)].map(([, title]) => title!.toLowerCase().replace(/[^\p{L}\p{N} -]/gu, '').replaceAll(' ', '-')),
  ]);

interface Shown {
  readonly page: string;
  readonly target: string;
  readonly alt: string;
}

/** Pictures in Markdown, in `<img>`, and what `<source>` shows instead in the dark. */
function picturesOn(page: string): readonly Shown[] {
  const all = text(page);
  const marked = [...all.matchAll(/!\[([^\]]*)\]\(([^)\s]+)\)/g)].map(([, alt, target]) => ({ page, target: target!, alt: alt! }));
  const tags = [...all.matchAll(/<img [^>]*>/g)].map(([tag]) => ({ page, target: /src="([^"]+)"/.exec(tag)?.[1] ?? '', alt: /alt="([^"]*)"/.exec(tag)?.[1] ?? '' }));
  const sources = [...all.matchAll(/<source [^>]*srcset="([^"]+)"/g)].map(([, target]) => ({ page, target: target!, alt: 'as its picture' }));
  return [...marked, ...tags, ...sources];
}

const pathOf = ({ page, target }: { readonly page: string; readonly target: string }): string => normalize(join(dirname(page), target));

describe('every page', () => {
  test('there are pages', () => {
    expect(pages).toContain('README.md');
    expect(pages).toContain('docs/actions.md');
  });

  test('leads nowhere that is not there', () => {
    const broken = pages.flatMap((page) =>
      [...text(page).matchAll(/(?<!!)\[[^\]]*\]\(([^)\s]+)\)/g)].map(([, link]) => link!).filter((link) => {
        if (/^(https?|command|vscode):/.test(link)) return false;
        const [file = '', id] = link.split('#');
        const target = file === '' ? page : pathOf({ page, target: decodeURIComponent(file) });
        if (!existsSync(join(root, target))) return true;
        return id !== undefined && target.endsWith('.md') && !anchorsOf(target).has(id);
      }).map((link) => `${page}: ${link}`),
    );
    expect(broken).toEqual([]);
  });

  test('shows pictures that are there, each told in words for whoever does not see it', () => {
    const shown = pages.flatMap(picturesOn);
    expect(shown.length).toBeGreaterThan(100);
    expect(shown.filter((picture) => !existsSync(join(root, pathOf(picture)))).map(({ page, target }) => `${page}: ${target}`)).toEqual([]);
    expect(shown.filter(({ alt }) => alt.trim().length < 4).map(({ page, target }) => `${page}: ${target}`)).toEqual([]);
  });
});

describe('the pictures taken from the real thing', () => {
  const taken = readdirSync(join(root, 'docs/pictures'));

  test('are all shown on a page', () => {
    const shown = new Set(pages.flatMap(picturesOn).map(pathOf));
    expect(taken.filter((name) => !shown.has(`docs/pictures/${name}`))).toEqual([]);
  });

  test('are small enough to be fetched over a gym’s network', () => {
    for (const name of taken) expect(statSync(join(root, 'docs/pictures', name)).size, name).toBeLessThan(250_000);
  });
});
