// The pages of docs/ and the README, set roughly as a code host sets them, light and dark: are drawings readable on both grounds?
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Marked } from 'marked';
import { chromium } from 'playwright-core';
import { executable, howToInstall } from '../../test/e2e/chromium.ts';
import { remove, temporary } from '../../test/e2e/vscode.ts';
import { root } from '../build.ts';
import { sizes, startViews } from './views.ts';

const colours = {
  light: { ink: '#1f2328', ground: '#ffffff', code: '#f6f8fa', edge: '#d1d9e0', link: '#0969da' },
  dark: { ink: '#f0f6fc', ground: '#0d1117', code: '#151b23', edge: '#3d444d', link: '#4493f8' },
} as const;

/** A picture longer than this is cut: enough to see how a page is set. */
const longest = 4000;

export async function takeDocsViews(): Promise<void> {
  if (executable === undefined) throw new Error(howToInstall);
  const file = startViews('docs');
  const place = temporary('docs');
  const browser = await chromium.launch({ executablePath: executable, args: ['--no-sandbox', '--disable-gpu'] });
  const pages = ['README.md', ...readdirSync(join(root, 'docs')).filter((name) => name.endsWith('.md')).map((name) => `docs/${name}`)];
  try {
    for (const name of pages) {
      for (const theme of ['light', 'dark'] as const) {
        const html = join(place, 'page.html');
        writeFileSync(html, asPage(name, theme));
        for (const { width, height } of sizes.slice(0, 2)) {
          const page = await browser.newPage({ viewport: { width, height }, colorScheme: theme });
          await page.goto(pathToFileURL(html).href);
          const tall = await page.evaluate<number>('document.documentElement.scrollHeight');
          await page.screenshot({ path: file(`${name.replace('docs/', '').replace('.md', '').toLowerCase()}-${name === 'README.md' ? 'front-' : ''}${theme}-${width}`), fullPage: true, clip: { x: 0, y: 0, width, height: Math.min(tall, longest) } });
          await page.close();
        }
      }
    }
  } finally {
    await browser.close();
    remove(place);
  }
}

function asPage(name: string, theme: keyof typeof colours): string {
  const { ink, ground, code, edge, link } = colours[theme];
  const style = `body{max-width:980px;margin:0 auto;padding:24px;font:16px/1.5 system-ui,sans-serif;color:${ink};background:${ground}}pre{background:${code};padding:16px;border-radius:6px;overflow:auto}code{font:85% ui-monospace,monospace;background:${code};padding:.2em .4em;border-radius:6px}pre code{padding:0}table{border-collapse:collapse;display:block;overflow:auto}td,th{border:1px solid ${edge};padding:6px 13px}img{max-width:100%}a{color:${link}}`;
  const body = new Marked().parse(readFileSync(join(root, name), 'utf8'), { async: false });
  const local = body.replace(/(src|srcset)="(?!https?:|data:)([^"]+)"/g, (_, attribute: string, path: string) => `${attribute}="${pathToFileURL(resolve(root, dirname(name), path)).href}"`);
  return `<!doctype html><meta charset="utf-8"><style>${style}</style>${local}`;
}
