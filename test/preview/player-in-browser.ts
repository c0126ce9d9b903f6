// The built player in a real Chromium: as a page of its own, and as a panel whose editor the test plays.
import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { pageHtml, type PageOptions } from '../../client/preview/page.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { buildPlayer } from '../../scripts/build.ts';
import { lighthouse } from '../support/playback-fixture.ts';
import { executable, openBrowser, type Browser } from '../e2e/chromium.ts';
import { remove, temporary } from '../e2e/vscode.ts';

export { accessibilityFaults } from '../support/accessibility.ts';
export { executable };

export interface Stage {
  readonly page: Page;
  /** Everything that went wrong in the page so far. */
  readonly complaints: readonly string[];
  /** Addresses asked for besides the page itself. */
  readonly requests: readonly string[];
  readonly openPage: (plays: Playback | readonly Playback[], options?: Partial<PageOptions>) => Promise<void>;
  /** A panel; messages of the player are kept in `heard`. `kept` is what the editor stored before. */
  readonly openPanel: (options?: { readonly kept?: unknown; readonly theme?: string }) => Promise<void>;
  readonly tell: (message: unknown) => Promise<void>;
  readonly heard: () => Promise<readonly { readonly kind: string; readonly [key: string]: unknown }[]>;
  /** As large and in the colours it was opened in: a test that failed may have left it otherwise. */
  readonly asOpened: () => Promise<void>;
  readonly close: () => Promise<void>;
}

const size = { width: 900, height: 800 };

/** What the editor sends at a change of the text. */
export const show = (seq: number, more: object = {}) => ({ v: 1, kind: 'show', seq, title: 'Lighthouse', playback: lighthouse, stale: false, ...more });

/** What a reader does, and waits for, on the page that is open. */
export function handsOn(stage: () => Stage) {
  const seek = (t: number) =>
    stage().page.locator('input.time').evaluate((slider: HTMLInputElement, to) => {
      slider.value = String(to);
      slider.dispatchEvent(new Event('input'));
    }, t);
  const drawn = () => stage().page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));
  const seqShown = () => stage().page.evaluate(() => document.documentElement.dataset.seq);
  return { seek, drawn, seqShown };
}

const deflate = (text: string): string => deflateSync(text).toString('base64');
const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('base64');

export async function openStage(): Promise<Stage> {
  const [player, browser, folder] = [await buildPlayer(), await openBrowser(size), temporary('player')];
  const { page }: Browser = browser;
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', ({ message }) => complaints.push(message));
  page.on('request', (request) => requests.push(request.url()));

  const open = async (name: string, html: string) => {
    const file = join(folder, name);
    writeFileSync(file, html);
    complaints.length = 0;
    await page.goto('about:blank');
    await page.goto(pathToFileURL(file).href);
    // The page opens its plays a moment after it is there itself.
    await page.locator('.title h1:not(:empty)').waitFor({ state: 'attached' });
    requests.length = 0;
  };

  return {
    page,
    complaints,
    requests,
    openPage: (plays, options = {}) => open('page.html', pageHtml([plays].flat(), player.script, player.style, { sha256, deflate, autoplay: false, ...options })),
    openPanel: ({ kept, theme = 'vscode-light' } = {}) => open('panel.html', panelHtml(player, kept, theme)),
    tell: (message) => page.evaluate((data) => window.postMessage(data, '*'), message),
    heard: () => page.evaluate(() => (window as unknown as { heard: never[] }).heard),
    async asOpened() {
      await page.setViewportSize(size);
      await page.emulateMedia({ media: null, colorScheme: null, forcedColors: null, reducedMotion: null });
    },
    async close() {
      await browser.close();
      remove(folder);
    },
  };
}

/** The editor's side as the webview gives it: its theme's class and colours, `acquireVsCodeApi` and its state. */
function panelHtml({ script, style }: { readonly script: string; readonly style: string }, kept: unknown, theme: string): string {
  const dark = theme.includes('dark') || theme === 'vscode-high-contrast';
  const colours = dark
    ? '--vscode-editor-background:#1f1f1f;--vscode-foreground:#cccccc;--vscode-descriptionForeground:#9d9d9d;--vscode-focusBorder:#0078d4;--vscode-panel-border:#2b2b2b;--vscode-sideBar-background:#181818;'
    : '--vscode-editor-background:#ffffff;--vscode-foreground:#3b3b3b;--vscode-descriptionForeground:#3b3b3b;--vscode-focusBorder:#005fb8;--vscode-panel-border:#e5e5e5;--vscode-sideBar-background:#f8f8f8;';
  const api = `window.heard=[];window.kept=${JSON.stringify(kept) ?? 'undefined'};function acquireVsCodeApi(){return{postMessage:(m)=>heard.push(structuredClone(m)),getState:()=>window.kept,setState:(s)=>{window.kept=s}}}`;
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Panel</title><style>:root{${colours}${theme === 'vscode-high-contrast' ? '--vscode-editor-background:#000;--vscode-foreground:#fff;--vscode-contrastBorder:#6fc3df;--vscode-focusBorder:#f38518;' : ''}}</style><style>${style}</style></head><body class="${theme}"><script>${api}</script><script>${script}</script></body></html>`;
}
