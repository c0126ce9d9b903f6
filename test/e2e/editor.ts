// What a coach does in VS Code, as functions for the end-to-end tests.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { format } from 'node:util';
import type { Frame, FrameLocator, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, describe } from 'vitest';
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
      if (opened !== undefined) await screenshot(opened, `failed: ${task.name}`).catch(() => undefined);
      await close();
    });
    afterAll(close);
    tests(editor);
  });
}

export async function openEditor(place: Place, { files, settings, restricted, size, language, second }: EditorOptions = {}) {
  const folder = copyOfExamples(files);
  const opened = await openBoth(place, { folder: second === undefined ? folder : twoFolders(folder, second), settings, restricted }, { ...size, language });
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

/** What Playwright waits for an element, in ms. */
const usual = 60_000;
/** What a window may take to open or to load anew, in ms: a laden machine has been seen to take more than thirty seconds. */
export const opening = 120_000;
/** The first try of a gesture waits so long for each element, and for what it brings about, in ms; each further try twice as long as the last. */
const aMoment = 3000;
const longest = 12_000;
/** A gesture is tried for so many seconds. */
const patience = 60;

/**
 * A whole gesture, begun anew until what it is for can be seen. The browser hands keys and clicks on faster than a person does: a
 * busy window drops what comes before it listens, a list that fills a second time takes back what was chosen, a row moves away from
 * under the mouse. A coach looks and does it again, from the start; so does this, and says what it never saw. `moment`: how long,
 * in ms, what it brings about may take at first, where doing it twice would undo it.
 */
export async function doUntil({ page }: Pick<Editor, 'page'>, what: string, gesture: () => Promise<unknown>, seen: () => Promise<boolean>, moment = aMoment): Promise<void> {
  const end = Date.now() + patience * 1000;
  for (let wait = aMoment; ; wait = Math.min(2 * wait, longest)) {
    try {
      await leaveQuickInput(page);
      return await waitingAtMost(page, wait, async () => {
        await gesture();
        await until(what, seen, Math.max(wait, moment) / 1000);
      });
    } catch (reason) {
      const { message } = reason as Error;
      if (Date.now() > end || page.isClosed()) throw new Error(`tried for ${patience} s in vain: ${what}; at last ${message}`, { cause: reason });
      console.log(`once more: ${what} (${message.split('\n')[0]})`);
    }
  }
}

const waits = new WeakMap<Page, number>();
async function waitingAtMost<Answer>(page: Page, ms: number, work: () => Promise<Answer>): Promise<Answer> {
  const before = waits.get(page) ?? usual;
  const set = (to: number) => (waits.set(page, to), page.setDefaultTimeout(to));
  set(ms);
  try {
    return await work();
  } finally {
    set(before);
  }
}

/** Presses keys unless what they are for can be seen already, and again when nothing came of it. `at`: where, instead of what has the keyboard. */
export async function pressUntil(editor: Pick<Editor, 'page'>, keys: string, what: string, seen: () => Promise<boolean>, at?: Locator) {
  await doUntil(editor, what, async () => (await seen()) || (at === undefined ? editor.page.keyboard.press(keys) : at.press(keys)), seen);
}

/** The same with the mouse: what is clicked may be drawn anew just then, and the click goes to what was there before. */
export async function clickUntil(editor: Pick<Editor, 'page'>, target: Locator, what: string, seen: () => Promise<boolean>, moment?: number) {
  await doUntil(editor, what, async () => (await seen()) || target.click(), seen, moment);
}

/** Two keys one after the other; the second counts only once the window waits for it, and would else be written into the text. */
export async function pressTwo({ page }: Pick<Editor, 'page'>, first: string, second: string) {
  await page.keyboard.press(first);
  await page.locator('.statusbar-item', { hasText: /was pressed/ }).waitFor();
  await page.keyboard.press(second);
}

const quickInput = (page: Page) => page.locator('.quick-input-widget');
const quickLine = (page: Page) => quickInput(page).locator('input[type=text]').first();

/** What an earlier try left open at the top of the window is in the way of the next. */
async function leaveQuickInput(page: Page) {
  for (let times = 0; times < 5 && (await quickInput(page).isVisible()); times++) {
    await quickLine(page).focus({ timeout: 500 }).catch(() => undefined);
    await page.keyboard.press('Escape');
    await quickInput(page).waitFor({ state: 'hidden', timeout: 1000 }).catch(() => undefined);
  }
}

/** Writes into the line at the top of the window, once it is there to be written in. */
async function writeOnTop(page: Page, words: string) {
  await quickLine(page).waitFor();
  await quickLine(page).fill(words);
}

/** Enter takes what the line at the top of the window points at, and closes it. */
async function enterOnTop(page: Page) {
  await page.keyboard.press('Enter');
  await quickInput(page).waitFor({ state: 'hidden' });
}

/** Opens a file from the list on the left, which this shows, and returns its text area. */
export async function openFile({ page }: Editor, name: string): Promise<Locator> {
  const files = page.locator('.explorer-folders-view');
  const file = files.getByRole('treeitem', { name, exact: true });
  await doUntil(
    { page },
    `${name} is opened`,
    async () => {
      if (!(await files.isVisible())) await page.keyboard.press('Control+Shift+E');
      // A list that is still filling moves its rows away from under the mouse.
      await file.dblclick();
    },
    () => page.locator('.tab.active', { hasText: name }).isVisible(),
  );
  return textOf(page);
}

/** The editor in front; its lines may be read with `.innerText()` (blanks come as non-breaking ones). */
async function textOf(page: Page): Promise<Locator> {
  const text = page.locator('.editor-group-container.active .editor-instance .monaco-editor').first();
  await text.locator('.view-line').first().waitFor();
  return text;
}

/** Runs a command by its whole title ("Setwright: Show the log") through the command palette. */
export async function runCommand({ page }: Editor, title: string) {
  await doUntil({ page }, `the command “${title}” is taken`, async () => {
    await chooseCommand(page, title);
    await quickInput(page).waitFor({ state: 'hidden' });
  }, () => quickInput(page).isHidden());
}

/** The same for a command that asks something; the answers are typed, each ended with Enter. Nothing is done before the last one. */
export async function runAsking({ page }: Editor, title: string, answers: readonly string[]) {
  await doUntil({ page }, `“${title}” has its answers`, async () => {
    await chooseCommand(page, title);
    let before = '';
    for (const answer of answers) {
      await until('the next question is asked', async () => (await quickLine(page).isVisible()) && (await questionOf(page)) !== before && !(await inPalette(page)), 8);
      before = await questionOf(page);
      await answerOnTop(page, answer, async () => !(await quickInput(page).isVisible()) || (await questionOf(page)) !== before);
    }
    await quickInput(page).waitFor({ state: 'hidden' });
  }, () => quickInput(page).isHidden());
}

async function answerOnTop(page: Page, answer: string, taken: () => Promise<boolean>) {
  const chosen = async () => {
    // Where there is a list, what is typed chooses from it.
    if (!(await quickInput(page).locator('.quick-input-list').isVisible())) return true;
    const focused = await quickInput(page).locator('.monaco-list-row.focused').allInnerTexts();
    return focused.some((row) => row.toLowerCase().includes(answer.toLowerCase()));
  };
  await until(`“${answer}” is taken`, async () => {
    if ((await quickLine(page).inputValue()) !== answer) await writeOnTop(page, answer);
    await until(`“${answer}” is chosen`, chosen, 4);
    await page.keyboard.press('Enter');
    return until(`“${answer}” is left`, taken, 4).then(() => true, () => false);
  }, 8);
}

/** What tells one question from the next: its title and its hint. */
const questionOf = async (page: Page): Promise<string> =>
  `${await quickInput(page).locator('.quick-input-title').innerText({ timeout: 500 }).catch(() => '')} ${await quickLine(page).getAttribute('placeholder', { timeout: 500 }).catch(() => '')}`;

const inPalette = async (page: Page) => (await quickLine(page).isVisible()) && (await quickLine(page).inputValue({ timeout: 500 }).catch(() => '')).startsWith('>');

/** As far as the palette is left: the command is closed with, or asks. */
async function chooseCommand(page: Page, title: string) {
  await page.keyboard.press('F1');
  await writeOnTop(page, `>${title}`);
  const chosen = quickInput(page).locator('.quick-input-list .monaco-list-row.focused', { hasText: title });
  // The palette fills its list a second time, with similar commands, and loses what was pressed meanwhile: it then stays open.
  await until(`the palette is left with ${title}`, async () => {
    if (!(await inPalette(page))) return true;
    await chosen.waitFor();
    await page.keyboard.press('Enter');
    return until('the palette is left', async () => !(await inPalette(page)), 1.5).then(() => true, () => false);
  }, 8);
}

const focusedText = (page: Page) => page.locator('.editor-group-container.active .editor-instance .monaco-editor.focused');

/** Leaves the panel, or a list, for the text in the first group. */
export async function toText({ page }: Editor) {
  await pressUntil({ page }, 'Control+1', 'the text has the keyboard', async () => (await focusedText(page).count()) > 0);
}

/** Moves the cursor; both numbers count from 1, as the status bar shows them. */
export async function goTo({ page }: Editor, line: number, column = 1) {
  const there = new RegExp(`^Ln ${line}, Col ${column}$`);
  await doUntil(
    { page },
    `the cursor stands in line ${line}, column ${column}`,
    async () => {
      if ((await focusedText(page).count()) === 0) await page.keyboard.press('Control+1');
      await page.keyboard.press('Control+g');
      await writeOnTop(page, `:${line}:${column}`);
      await enterOnTop(page);
    },
    async () => there.test(await cursorSaid(page)) && (await focusedText(page).count()) > 0,
  );
}

/** Where the cursor is and how much is selected, as the status bar says it of the text in front. */
const cursorSaid = (page: Page): Promise<string> => page.locator('#status\\.editor\\.selection').innerText({ timeout: 1000 }).catch(() => '');

export async function selection(editor: Editor): Promise<string> {
  await toText(editor);
  return cursorSaid(editor.page);
}

/** Lines of the list of problems, which this opens. */
export async function problems({ page }: Editor): Promise<Locator> {
  const list = page.locator('.markers-panel');
  await pressUntil({ page }, 'Control+Shift+M', 'the list of problems opens', () => list.isVisible());
  return list.locator('.monaco-list-row');
}

export async function closeProblems({ page }: Editor) {
  const list = page.locator('.markers-panel');
  await doUntil(
    { page },
    'the list of problems closes',
    async () => {
      if (await list.isHidden()) return;
      // From elsewhere the key goes to the list; from the list it closes it.
      await list.locator('.monaco-list').first().focus({ timeout: 500 }).catch(() => undefined);
      await page.keyboard.press('Control+Shift+M');
    },
    () => list.isHidden(),
  );
}

/** The colours of the window, by the name the list of themes has them under. */
export async function chooseTheme({ page }: Editor, name: 'Light Modern' | 'Dark Modern' | 'Dark High Contrast' | 'Light High Contrast') {
  const classOf = { 'Light Modern': 'vs', 'Dark Modern': 'vs-dark', 'Dark High Contrast': 'hc-black', 'Light High Contrast': 'hc-light' }[name];
  const worn = page.locator(`.monaco-workbench.${classOf}`);
  await doUntil(
    { page },
    `the window wears ${name}`,
    async () => {
      await pressTwo({ page }, 'Control+k', 'Control+t');
      await writeOnTop(page, name);
      await quickInput(page).locator('.monaco-list-row.focused', { hasText: name }).waitFor();
      // The window wears what the list points at.
      await worn.waitFor();
      await enterOnTop(page);
    },
    () => worn.isVisible(),
  );
}

/** The picture has come to rest: several looks in a row show the same text's play at the same time. */
export async function atRest(floor: FrameLocator) {
  const now = async () => {
    const [seq, time] = await Promise.all([floor.locator('html').getAttribute('data-seq'), floor.locator('input.time').inputValue()]).catch(() => []);
    return seq === undefined ? undefined : `${seq} ${time}`;
  };
  let before: string | undefined;
  let times = 0;
  await until('the picture is at rest', async () => {
    const next = await now();
    times = next !== undefined && next === before ? times + 1 : 0;
    before = next;
    return times >= 3 && Number(next!.split(' ')[0]) > 0;
  });
}

/** A play in its text with the picture beside it, whatever of that is there already; the text has the keyboard. Returns the text area. */
export async function besideItsText(editor: Editor, name: string): Promise<Locator> {
  const { page } = editor;
  const group = page.locator('.editor-group-container').first();
  if (!(await group.locator('.tab.active', { hasText: name }).isVisible())) {
    // A file opens where the keyboard was last: not over the picture.
    await pressUntil(editor, 'Control+1', 'the first group is in use', async () => /\bactive\b/.test((await group.getAttribute('class')) ?? ''));
    await openFile(editor, name);
  }
  await toText(editor);
  const html = panel(editor).locator('html[data-seq]');
  if (!(await html.isVisible())) await runCommand(editor, 'Setwright: Show the play beside the text');
  await until('the picture is drawn', async () => Number(await html.getAttribute('data-seq').catch(() => 0)) > 0);
  return textOf(page);
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
    await browser.page.goto(host.address, { timeout: opening });
    return { passed: (await code) === 0, said };
  } finally {
    await close();
  }
}
