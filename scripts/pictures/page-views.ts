// The page of single plays and of the whole playbook, in every size and theme; the floor alone, the help, and what the printer gets.
import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { deflateSync } from 'node:zlib';
import { chromium, type Page } from 'playwright-core';
import { pageHtml } from '../../client/preview/page.ts';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createKeeper } from '../../language/keeper.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { examplePlaybacks } from '../../test/support/examples.ts';
import { executable, howToInstall } from '../../test/e2e/chromium.ts';
import { remove, temporary } from '../../test/e2e/vscode.ts';
import { buildPlayer } from '../build.ts';
import { sizes, startViews } from './views.ts';

/** A last shot, a throw-in with a clock that stands, the whole floor, many looks, a continuity; and one with something wrong. */
const plays = ['Lighthouse', 'Harbour', 'Breakwater', 'Foghorn', 'Stepping stones'] as const;

const themes = {
  light: { colorScheme: 'light', forcedColors: 'none' },
  dark: { colorScheme: 'dark', forcedColors: 'none' },
  forced: { colorScheme: 'dark', forcedColors: 'active' },
} as const;

export async function takePageViews(): Promise<void> {
  if (executable === undefined) throw new Error(howToInstall);
  const written = await pageWriter();
  const all = examplePlaybacks();
  const file = startViews('page');
  const place = temporary('views');
  const browser = await chromium.launch({ executablePath: executable, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const pages = [...plays.map((name) => [name, all.filter(({ play }) => play.name === name)] as const), ['Playbook', all] as const, ['Wrong', [wrongPlay()]] as const];
    for (const [name, shown] of pages) {
      const html = join(place, `${name}.html`);
      writeFileSync(html, written(shown, name));
      for (const [theme, media] of Object.entries(themes)) {
        for (const size of sizes) {
          const page = await browser.newPage({ viewport: size, reducedMotion: 'reduce', deviceScaleFactor: size.width < 500 ? 2 : 1, ...media });
          await page.goto(pathToFileURL(html).href);
          await page.locator('.title h1:not(:empty)').waitFor({ state: 'attached' });
          await goTo(page, 0.62);
          const take = (what: string, fullPage = false) => page.screenshot({ path: file([name, what, theme, size.width].filter((part) => part !== '').join('-').replaceAll(' ', '-').toLowerCase()), fullPage });
          await take('', size.width < 860);
          if (name === 'Lighthouse') await takeMore(page, take);
          if (name === 'Breakwater' && size.width > 1000) await takeLow(page, take);
          await page.close();
        }
      }
    }
  } finally {
    await browser.close();
    remove(place);
  }
}

/** What a reader can bring up besides. */
async function takeMore(page: Page, take: (what: string, fullPage?: boolean) => Promise<Buffer>): Promise<void> {
  await page.keyboard.press('?');
  await take('help');
  await page.keyboard.press('Escape');
  await page.keyboard.press('f');
  await page.waitForTimeout(300);
  await take('team');
  await page.keyboard.press('Escape');
  await page.evaluate(`dispatchEvent(new Event('beforeprint'))`);
  await page.emulateMedia({ media: 'print' });
  await take('paper', true);
}

/** The whole court on a wide, low screen, and before the team. */
async function takeLow(page: Page, take: (what: string) => Promise<Buffer>): Promise<void> {
  await page.setViewportSize({ width: 1600, height: 600 });
  await page.waitForTimeout(300);
  await take('low');
  await page.keyboard.press('f');
  await page.waitForTimeout(300);
  await take('low-team');
}

/** To a share of the run's time. */
export async function goTo(page: Page, share: number): Promise<void> {
  // As text: what runs in the page knows the page's world, this script does not.
  await page.evaluate(`(() => {
    const slider = document.querySelector('input.time');
    slider.value = String(Math.round((Number(slider.max) * ${share}) / 10) * 10);
    slider.dispatchEvent(new Event('input'));
  })()`);
  await page.waitForTimeout(150);
}

/** Findings of each kind, and a name that is too long. */
function wrongPlay(): Playback {
  const text = `notation 1\nlevel u14\nplay "Everything the Otters ever tried at the end of a quarter, all at once"\n  from horns, ball with 1\n  against man\n  call with 6 on the clock\n  leave 3 seconds after a miss\n  rebound 4, 5 crash\n  step "Screen"\n    1 screens for 2\n    2 cuts off 1 to nail\n    3 cuts to nail\n    look 2 "pull-up": jumper\n    look 3: three\n`;
  const keeper = createKeeper();
  return playbackOf(keeper.playsOf(openFile(emptyBook, 'file:///wrong.play', text), 'file:///wrong.play')[0]!);
}

/** A page as the command line writes it; it stands still. */
export async function pageWriter(): Promise<(shown: readonly Playback[], title: string, sections?: readonly (string | undefined)[]) => string> {
  const { script, style } = await buildPlayer();
  return (shown, title, sections) => pageHtml(shown, script, style, { sha256, deflate, title, autoplay: false, ...(sections && { sections }) });
}

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('base64');
const deflate = (text: string): string => deflateSync(text).toString('base64');
