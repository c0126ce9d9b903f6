// The browser that drives VS Code: a Chromium of the machine, never a download.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { keep } from './kept.ts';
import { remove, temporary } from './vscode.ts';

const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** CHROMIUM names another one. */
export const executable = process.env.CHROMIUM ?? usualPlaces.find((path) => existsSync(path));

export const howToInstall =
  'The tests in a real VS Code need Chromium: "sudo apt-get install chromium" (or your system\'s own way), or CHROMIUM=/path/to/it npm test.';

export interface Browser {
  readonly page: Page;
  close(): Promise<void>;
}

export interface BrowserOptions {
  readonly width?: number;
  readonly height?: number;
  /** What VS Code speaks; its own words stay English without its language pack, an extension's are those of this language. */
  readonly language?: string;
}

/** A page of its own, as large and in the language as wanted, that finds nothing stored. */
export async function openBrowser({ width = 1400, height = 900, language }: BrowserOptions = {}): Promise<Browser> {
  const chromium = await keep('Chromium', startChromium);
  const page = await chromium.context.newPage();
  await page.setViewportSize({ width, height });
  // What the script of a language pack does first.
  if (language !== undefined) await page.addInitScript(`globalThis._VSCODE_NLS_LANGUAGE = ${JSON.stringify(language)}`);
  const origins = new Set<string>();
  page.on('framenavigated', (frame) => frame === page.mainFrame() && origins.add(new URL(frame.url()).origin));
  return {
    page,
    async close() {
      await page.close();
      await forget(chromium.context, origins);
      await chromium.close();
    },
  };
}

async function startChromium() {
  if (!executable || !existsSync(executable)) throw new Error(howToInstall);
  const profile = temporary('chromium');
  mkdirSync(join(profile, 'Default'));
  // Webviews of the web host live on an origin of their own; their service worker counts as a third party's.
  writeFileSync(join(profile, 'Default/Preferences'), JSON.stringify({ profile: { cookie_controls_mode: 0, block_third_party_cookies: false } }));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: executable,
    headless: true,
    viewport: { width: 1400, height: 900 },
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
  return {
    context,
    async close() {
      await context.close();
      remove(profile);
    },
  };
}

/** What pages have stored there; what has been loaded and compiled for them stays. */
async function forget(context: BrowserContext, origins: ReadonlySet<string>) {
  // The page that Chromium started with: it is used for nothing else.
  const session = await context.newCDPSession(context.pages()[0]!);
  for (const origin of origins) if (origin !== 'null') await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
  await session.detach();
}
