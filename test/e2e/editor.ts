// What a coach does in VS Code, as functions for the end-to-end tests.
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { format } from 'node:util';
import type { FrameLocator, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe } from 'vitest';
import { root } from '../../scripts/build.ts';
import { executable, openBrowser } from './chromium.ts';
import { copyOfExamples, places, remove, startHost, until, type HostOptions, type Place } from './vscode.ts';

export interface Editor {
  readonly page: Page;
  readonly place: Place;
  /** what the editor has open: a copy of the examples */
  readonly folder: string;
}

export interface EditorOptions extends Pick<HostOptions, 'settings'> {
  /** plays beside the examples, by file name */
  readonly files?: Readonly<Record<string, string>>;
  readonly in?: readonly Place[];
  readonly size?: { readonly width: number; readonly height: number };
}

/**
 * Tests in a real VS Code, once for each place the extension can run in. They share one window and run in the order they
 * are written. On a machine without Chromium they are skipped; with CI set they fail.
 */
export function inRealVsCode(title: string, tests: (editor: () => Editor) => void, options: EditorOptions = {}) {
  describe.skipIf(!executable && !process.env.CI).each(options.in ?? places)(`${title} (extension host: %s)`, (place) => {
    let opened: (Editor & { close(): Promise<void> }) | undefined;
    const editor = () => opened!;
    beforeAll(async () => {
      opened = await openEditor(place, options);
    });
    afterEach(async ({ task }) => {
      if (task.result?.state === 'fail') await screenshot(editor(), `failed: ${task.name}`);
    });
    afterAll(() => opened?.close());
    tests(editor);
  });
}

export async function openEditor(place: Place, { files, settings, size }: EditorOptions = {}) {
  const folder = copyOfExamples(files);
  const opened = await openBoth(place, { folder, settings }, size);
  const { page } = opened.browser;
  try {
    await page.goto(opened.host.address);
    await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 60_000 });
  } catch (reason) {
    await opened.close();
    throw reason;
  }
  return { page, place, folder, close: opened.close };
}

/** VS Code and the browser to see it with; when one does not open, what did is closed. */
async function openBoth(place: Place, options: HostOptions, size?: EditorOptions['size']) {
  const opened: (() => void | Promise<void>)[] = [() => remove(dirname(options.folder))];
  const close = async () => {
    for (const closeOne of opened.toReversed()) await closeOne();
  };
  try {
    const browser = await openBrowser(size);
    opened.push(browser.close);
    const host = await startHost(place, options);
    opened.push(host.stop);
    return { browser, host, close };
  } catch (reason) {
    await close();
    throw reason;
  }
}

/** Opens a file from the list on the left and returns its text area. */
export async function openFile({ page }: Editor, name: string): Promise<Locator> {
  await page.getByRole('treeitem', { name, exact: true }).dblclick();
  await page.locator('.tab.active', { hasText: name }).waitFor();
  return textOf(page);
}

/** The editor in front; its lines may be read with `.innerText()` (blanks come as non-breaking ones). */
async function textOf(page: Page): Promise<Locator> {
  const text = page.locator('.editor-group-container.active .editor-instance .monaco-editor').first();
  await text.locator('.view-line').first().waitFor();
  return text;
}

/** Runs a command by its whole title ("Setwright: Show Log") through the command palette. */
export async function runCommand(editor: Editor, title: string) {
  await chooseCommand(editor, title);
  await editor.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
}

/** The same for a command that asks something; the answers are typed, each ended with Enter. */
export async function runAsking(editor: Editor, title: string, answers: readonly string[]) {
  await chooseCommand(editor, title);
  for (const answer of answers) {
    const input = editor.page.locator('.quick-input-widget input[type=text]').first();
    await until('the next question is asked', async () => (await editor.page.locator('.quick-input-widget').isVisible()) && !(await input.inputValue()).startsWith('>'));
    // A list of choices fills late.
    await editor.page.waitForTimeout(500);
    await input.fill(answer);
    await editor.page.waitForTimeout(200);
    await editor.page.keyboard.press('Enter');
    await editor.page.waitForTimeout(200);
  }
  await editor.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
}

async function chooseCommand({ page }: Editor, title: string) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-widget input[type=text]').first().fill(`>${title}`);
  const chosen = page.locator('.quick-input-list .monaco-list-row.focused', { hasText: title });
  await chosen.waitFor();
  // The palette fills its list a second time, with similar commands, and loses what was pressed or clicked meanwhile.
  await page.waitForTimeout(300);
  await chosen.waitFor();
  await page.keyboard.press('Enter');
}

/** Moves the cursor; both numbers count from 1, as the status bar shows them. */
export async function goTo({ page }: Editor, line: number, column = 1) {
  await page.keyboard.press('Control+g');
  await page.locator('.quick-input-widget input[type=text]').first().fill(`:${line}:${column}`);
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
}

/** Lines of the list of problems, which this opens. */
export async function problems(editor: Editor): Promise<Locator> {
  const rows = editor.page.locator('.markers-panel .monaco-list-row');
  if (!(await editor.page.locator('.markers-panel').isVisible())) await editor.page.keyboard.press('Control+Shift+M');
  return rows;
}

/** Lines of the list that completion shows, which this asks for. */
export async function suggestions({ page }: Editor): Promise<Locator> {
  await page.keyboard.press('Control+Space');
  const rows = page.locator('.suggest-widget.visible .monaco-list-row');
  await rows.first().waitFor();
  return rows;
}

/** The inside of the panel in front; with several open, pass the outer frame's place. */
export function panel({ page }: Editor, outer = 'iframe.webview.ready'): FrameLocator {
  return page.frameLocator(outer).frameLocator('iframe#active-frame');
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
    await browser.page.goto(host.address);
    return { passed: (await code) === 0, said };
  } finally {
    await close();
  }
}
