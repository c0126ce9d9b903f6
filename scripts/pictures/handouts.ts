// docs/pictures/: what a coach hands out, as the README shows it: a playbook on a phone, and a play as it comes out of the printer.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { executable, howToInstall } from '../../test/e2e/chromium.ts';
import { remove, temporary } from '../../test/e2e/vscode.ts';
import { root } from '../build.ts';
import { examplePlaybacks } from '../../test/support/examples.ts';
import { goTo, pageWriter } from './page-views.ts';

const folder = join(root, 'docs/pictures');

export async function takeHandouts(): Promise<void> {
  if (executable === undefined) throw new Error(howToInstall);
  mkdirSync(folder, { recursive: true });
  const plays = examplePlaybacks();
  const lighthouse = plays.filter(({ play }) => play.name === 'Lighthouse');
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
    const paper = await browser.newPage({ viewport: { width: 720, height: 1000 }, deviceScaleFactor: 1.5 });
    await paper.goto(pathToFileURL(html).href);
    await paper.locator('.title h1:not(:empty)').waitFor();
    await paper.evaluate(`dispatchEvent(new Event('beforeprint'))`);
    await paper.emulateMedia({ media: 'print' });
    // The margins of a page are the printer's: here the sheet has none of its own.
    await paper.evaluate(`document.querySelector('.paper').style.padding = '24px'`);
    // Held upright, and as long as the sheet: its foot is not cut.
    await paper.locator('.paper').screenshot({ path: join(folder, 'on-paper.png') });
  } finally {
    await browser.close();
    remove(place);
  }
}
