// What a coach does in VS Code, as functions for the end-to-end tests.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { format } from 'node:util';
import type { Frame, FrameLocator, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe } from 'vitest';
import { root } from '../../scripts/build.ts';
import { executable, openBrowser, type BrowserOptions } from './chromium.ts';
import { copyOfExamples, places, remove, startHost, until, type HostOptions, type Place } from './vscode.ts';

export interface Editor {
  readonly page: Page;
  readonly place: Place;
  /** what the editor has open: a copy of the examples */
  readonly folder: string;
}

export interface EditorOptions extends Pick<HostOptions, 'settings' | 'restricted'> {
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

export async function openEditor(place: Place, { files, settings, restricted, size, language, second }: EditorOptions = {}) {
  const folder = copyOfExamples(files);
  const opened = await openBoth(place, { folder: second === undefined ? folder : twoFolders(folder, second), settings, restricted }, { ...size, language });
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

/** Opens a file from the list on the left, which this shows, and returns its text area. */
export async function openFile({ page }: Editor, name: string): Promise<Locator> {
  const files = page.locator('.explorer-folders-view');
  if (!(await files.isVisible())) await page.keyboard.press('Control+Shift+E');
  const file = files.getByRole('treeitem', { name, exact: true });
  await file.waitFor();
  // A list that is still filling moves its rows away from under the mouse.
  await until(`${name} is opened`, async () => {
    await file.dblclick();
    return page.locator('.tab.active', { hasText: name }).waitFor({ timeout: 4000 }).then(() => true, () => false);
  });
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
  const { page } = editor;
  const asking = page.locator('.quick-input-widget');
  const input = asking.locator('input[type=text]').first();
  let before = '';
  for (const answer of answers) {
    await until('the next question is asked', async () => (await asking.isVisible()) && (await questionOf(asking)) !== before);
    before = await questionOf(asking);
    await input.fill(answer);
    // Where there is a list, what is typed chooses from it.
    await until(`“${answer}” is chosen`, async () => {
      if (!(await asking.locator('.quick-input-list').isVisible())) return true;
      const focused = await asking.locator('.monaco-list-row.focused').allInnerTexts();
      return focused.some((row) => row.toLowerCase().includes(answer.toLowerCase()));
    });
    await page.keyboard.press('Enter');
  }
  await asking.waitFor({ state: 'hidden' });
}

/** What tells one question from the next: its title and its hint. */
const questionOf = async (asking: Locator): Promise<string> =>
  `${await asking.locator('.quick-input-title').innerText().catch(() => '')} ${await asking.locator('input[type=text]').first().getAttribute('placeholder').catch(() => '')}`;

async function chooseCommand({ page }: Editor, title: string) {
  const input = page.locator('.quick-input-widget input[type=text]').first();
  const inPalette = async () => (await input.isVisible()) && (await input.inputValue().catch(() => '')).startsWith('>');
  await page.keyboard.press('F1');
  await input.fill(`>${title}`);
  const chosen = page.locator('.quick-input-list .monaco-list-row.focused', { hasText: title });
  // The palette fills its list a second time, with similar commands, and loses what was pressed meanwhile: it then stays open.
  await until(`the command ${title} is taken`, async () => {
    await chosen.waitFor();
    await page.keyboard.press('Enter');
    return until('the palette is left', async () => !(await inPalette()), 1.5).then(() => true, () => false);
  });
}

/** Presses keys, and again when nothing came of it: a window that is busy, or a panel that is just loading, can miss them. */
async function pressUntil(page: Page, keys: string, what: string, holds: () => Promise<boolean>) {
  await until(what, async () => {
    if (await holds()) return true;
    await page.keyboard.press(keys);
    return until(what, holds, 4).then(() => true, () => false);
  });
}

/** Leaves the panel, or a list, for the text in the first group. */
export async function toText({ page }: Editor) {
  const focused = page.locator('.editor-group-container.active .editor-instance .monaco-editor.focused');
  await pressUntil(page, 'Control+1', 'the text has the keyboard', async () => (await focused.count()) > 0);
}

/** Moves the cursor; both numbers count from 1, as the status bar shows them. */
export async function goTo({ page }: Editor, line: number, column = 1) {
  const input = page.locator('.quick-input-widget input[type=text]').first();
  await pressUntil(page, 'Control+g', 'it asks for a line', () => input.isVisible());
  await input.fill(`:${line}:${column}`);
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
}

/** Lines of the list of problems, which this opens. */
export async function problems({ page }: Editor): Promise<Locator> {
  const list = page.locator('.markers-panel');
  await pressUntil(page, 'Control+Shift+M', 'the list of problems opens', () => list.isVisible());
  return list.locator('.monaco-list-row');
}

export async function closeProblems({ page }: Editor) {
  const list = page.locator('.markers-panel');
  if (!(await list.isVisible())) return;
  await list.locator('.monaco-list').first().focus().catch(() => undefined);
  await pressUntil(page, 'Control+Shift+M', 'the list of problems closes', () => list.isHidden());
}

/** The colours of the window, by the name the list of themes has them under. */
export async function chooseTheme({ page }: Editor, name: 'Light Modern' | 'Dark Modern' | 'Dark High Contrast' | 'Light High Contrast') {
  const classOf = { 'Light Modern': 'vs', 'Dark Modern': 'vs-dark', 'Dark High Contrast': 'hc-black', 'Light High Contrast': 'hc-light' }[name];
  const list = page.locator('.quick-input-widget');
  await page.keyboard.press('Control+k');
  await page.keyboard.press('Control+t');
  await list.locator('input[type=text]').first().fill(name);
  await list.locator('.monaco-list-row.focused', { hasText: name }).waitFor();
  // The window wears what the list points at.
  await page.locator(`.monaco-workbench.${classOf}`).waitFor();
  await page.keyboard.press('Enter');
  await list.waitFor({ state: 'hidden' });
}

/** The picture has come to rest: two frames in a row show the same text's play at the same time. */
export async function atRest(floor: FrameLocator) {
  const now = async () => {
    const [seq, time] = await Promise.all([floor.locator('html').getAttribute('data-seq'), floor.locator('input.time').inputValue()]).catch(() => []);
    return seq === undefined ? undefined : `${seq} ${time}`;
  };
  let before: string | undefined;
  await until('the picture is at rest', async () => {
    const [last, next] = [before, await now()];
    before = next;
    return next !== undefined && next === last && Number(next.split(' ')[0]) > 0;
  });
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

/** The same, for what needs the document itself. */
export async function panelFrame(editor: Editor): Promise<Frame> {
  const html = await panel(editor).locator('html').elementHandle();
  return (await html!.ownerFrame())!;
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
