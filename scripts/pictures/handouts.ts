// docs/pictures/: what a coach hands out, as the README shows it: a playbook on a phone, a play, its players’ jobs and the call sheet as they come out of the printer.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser } from 'playwright-core';
import { executable, howToInstall } from '../../test/e2e/chromium.ts';
import { remove, temporary } from '../../test/e2e/vscode.ts';
import { root } from '../build.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { readFiles } from '../../server/cli/files.ts';
import { openBook } from '../../server/cli/open-book.ts';
import { playsInOrder } from '../../server/cli/plays-named.ts';
import { examplePlaybacks } from '../../test/support/examples.ts';
import { goTo, pageWriter } from './page-views.ts';

const folder = join(root, 'docs/pictures');

/** Sections of the examples' book: the whole of it would be two sheets. */
const shownSections: readonly string[] = ['Last shot', 'We need a three', 'Five to eight seconds'];

export async function takeHandouts(): Promise<void> {
  if (executable === undefined) throw new Error(howToInstall);
  mkdirSync(folder, { recursive: true });
  const plays = examplePlaybacks();
  const lighthouse = plays.filter(({ play }) => play.name === 'Lighthouse');
  const bench = playsInOrder(openBook(readFiles([join(root, 'examples')])), undefined).filter(({ section }) => shownSections.includes(section ?? ''));
  const written = await pageWriter();
  const place = temporary('handouts');
  const browser = await chromium.launch({ executablePath: executable, args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const html = join(place, 'page.html');
    writeFileSync(html, written(plays, 'Reedbank Otters'));
    const phone = await browser.newPage({ viewport: { width: 360, height: 640 }, deviceScaleFactor: 1.5, reducedMotion: 'reduce' });
    await phone.goto(`${pathToFileURL(html).href}#lighthouse`);
    await phone.locator('.title h1:not(:empty)').waitFor();
    await goTo(phone, 0.62);
    await phone.screenshot({ path: join(folder, 'on-a-phone.png') });

    writeFileSync(html, written(lighthouse, 'Lighthouse'));
    await printed(browser, html, '.sheet:not(.jobs)', 'on-paper.png');
    await printed(browser, html, '.jobs.sheet', 'jobs.png');
    writeFileSync(html, written(bench.map(({ play }) => playbackOf(play)), 'Reedbank Otters', bench.map(({ section }) => section)));
    await printed(browser, html, '.calls', 'call-sheet.png');
  } finally {
    await browser.close();
    remove(place);
  }
}

/** What a printer makes of a page, held upright and as long as it is: its foot is not cut. */
async function printed(browser: Browser, html: string, what: string, file: string): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 720, height: 1000 }, deviceScaleFactor: 1.5 });
  await page.goto(pathToFileURL(html).href);
  await page.locator('.title h1:not(:empty)').waitFor();
  await page.evaluate(`dispatchEvent(new Event('beforeprint'))`);
  await page.emulateMedia({ media: 'print' });
  // The margins of a page are the printer's: here the sheet has none of its own.
  await page.evaluate(`document.querySelector('${what}').style.padding = '24px'`);
  await page.locator(what).screenshot({ path: join(folder, file) });
}
