// A real VS Code in a real Chromium, for the end-to-end tests: opened, closed, photographed.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { format } from 'node:util';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, describe } from 'vitest';
import { root } from '../../scripts/build.ts';
import { executable, openBrowser, type BrowserOptions } from './chromium.ts';
import { closeKept } from './kept.ts';
import { copyOfExamples, places, remove, startHost, type HostOptions, type Place } from './vscode.ts';

/** What Playwright waits for an element, in ms. */
export const usual = 60_000;
/** What a window may take to open or to load anew, in ms: a laden machine has been seen to take more than thirty seconds. */
export const opening = 120_000;

export interface Editor {
  readonly page: Page;
  readonly place: Place;
  /** what the editor has open: a copy of the examples */
  readonly folder: string;
}

export interface EditorOptions extends Pick<HostOptions, 'settings' | 'restricted' | 'others'> {
  /** plays beside the examples, by file name */
  readonly files?: Readonly<Record<string, string>>;
  readonly in?: readonly Place[];
  readonly size?: { readonly width: number; readonly height: number };
  readonly language?: string;
  /** a second folder in the same window, by its name, with its plays; Node host only */
  readonly second?: { readonly name: string; readonly files: Readonly<Record<string, string>> };
}

/**
 * Tests in a real VS Code, once for each place the extension can run in. They share one window and run in the order they
 * are written; each brings about what it starts from. After one that failed the next try, or the next test, has a new
 * window with the files as they were, so that what is left over cannot fail it too. On a machine without Chromium they
 * are skipped; with CI set they fail.
 */
export function inRealVsCode(title: string, tests: (editor: () => Editor) => void, options: EditorOptions = {}) {
  describe.skipIf(!executable && !process.env.CI).each(options.in ?? places)(`${title} (extension host: %s)`, (place) => {
    let opened: (Editor & { close(): Promise<void> }) | undefined;
    const open = async () => void (opened ??= await openEditor(place, options));
    const close = async () => {
      const last = opened;
      opened = undefined;
      await last?.close();
    };
    const editor = () => {
      if (opened === undefined) throw new Error('no window is open: the try that asks for it is over');
      return opened;
    };
    beforeEach(open);
    afterEach(async ({ task }) => {
      if (task.result?.state !== 'fail') return;
      if (opened !== undefined) await screenshot(opened, `failed: ${task.name}, try ${(task.result.retryCount ?? 0) + 1}`).catch(() => undefined);
      await close();
      await closeKept();
    });
    afterAll(close);
    tests(editor);
  });
}

export async function openEditor(place: Place, { files, settings, restricted, others, size, language, second }: EditorOptions = {}) {
  const folder = copyOfExamples(files);
  const opened = await openBoth(place, { folder: second === undefined ? folder : twoFolders(folder, second), settings, restricted, others }, { ...size, language });
  const { page } = opened.browser;
  try {
    page.setDefaultTimeout(usual);
    await page.goto(opened.host.address, { timeout: opening });
    await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor({ timeout: opening });
    // On the web host it cannot be turned off; it comes late, and before what is then in front.
    if (place === 'web worker') await page.locator('.tab.active', { hasText: 'Welcome' }).waitFor({ timeout: opening });
  } catch (reason) {
    await opened.close();
    throw reason;
  }
  return { page, place, folder, close: opened.close };
}

/** A file that names both folders. */
function twoFolders(folder: string, { name, files }: NonNullable<EditorOptions['second']>): string {
  const other = join(dirname(folder), name);
  mkdirSync(other);
  for (const [file, text] of Object.entries(files)) writeFileSync(join(other, file), text);
  const both = join(dirname(folder), 'both.code-workspace');
  writeFileSync(both, JSON.stringify({ folders: [{ path: folder }, { path: other }] }));
  return both;
}

/** VS Code and the browser to see it with; when one does not open, what did is closed. */
async function openBoth(place: Place, options: HostOptions, look?: BrowserOptions) {
  const opened: (() => void | Promise<void>)[] = [() => remove(dirname(options.folder))];
  const close = async () => {
    for (const closeOne of opened.toReversed()) await closeOne();
  };
  try {
    const browser = await openBrowser(look);
    opened.push(browser.close);
    const host = await startHost(place, options);
    opened.push(host.stop);
    return { browser, host, close };
  } catch (reason) {
    await close();
    throw reason;
  }
}

/** Written to test/out/, which git ignores; returns the path. */
export async function screenshot({ page, place }: Editor, name: string): Promise<string> {
  const path = join(root, 'test/out', `${name} ${place}`.toLowerCase().replace(/[^a-z0-9]+/g, '-') + '.png');
  mkdirSync(dirname(path), { recursive: true });
  await page.screenshot({ path });
  return path;
}

/** Runs a suite beside the extension, inside VS Code; returns what it said and whether it passed. */
export async function runInside(place: Place, suite: string): Promise<{ readonly passed: boolean; readonly said: readonly string[] }> {
  const folder = copyOfExamples();
  const { browser, host, close } = await openBoth(place, { folder, suite });
  const said: string[] = [];
  try {
    const code = new Promise<number>((resolve) => void browser.page.exposeFunction('codeAutomationExit', resolve));
    await browser.page.exposeFunction('codeAutomationLog', (_kind: string, words: unknown[]) => said.push(format(...words)));
    await browser.page.goto(host.address, { timeout: opening });
    return { passed: (await code) === 0, said };
  } finally {
    await close();
  }
}
