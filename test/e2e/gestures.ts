// Keys and clicks that a busy window may miss, for the hands of the end-to-end tests.
import type { Locator, Page } from 'playwright-core';
import { until } from './vscode.ts';
import { usual, type Editor } from './window.ts';

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
  for (let wait = aMoment, tries = 1; ; wait = Math.min(2 * wait, longest), tries++) {
    try {
      await leaveQuickInput(page);
      return await waitingAtMost(page, wait, async () => {
        await gesture();
        await until(what, seen, Math.max(wait, moment) / 1000);
      });
    } catch (reason) {
      const { message } = reason as Error;
      if ((Date.now() > end && tries > 1) || page.isClosed() || /Target crashed/.test(message)) throw new Error(`tried for ${patience} s in vain: ${what}; at last ${message}`, { cause: reason });
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

/** A menu takes no click in its first 100 ms, so that the one which opened it chooses nothing; no hand is that quick, but the browser's is. */
export async function chooseInMenu(row: Locator) {
  await row.hover();
  await row.click({ delay: 300 });
}

/** Two keys one after the other; the second counts only once the window waits for it, and would else be written into the text. */
export async function pressTwo({ page }: Pick<Editor, 'page'>, first: string, second: string) {
  await page.keyboard.press(first);
  await page.locator('.statusbar-item', { hasText: /was pressed/ }).waitFor();
  await page.keyboard.press(second);
}

export const quickInput = (page: Page) => page.locator('.quick-input-widget');
export const quickLine = (page: Page) => quickInput(page).locator('input[type=text]').first();

/** What an earlier try left open at the top of the window is in the way of the next. */
async function leaveQuickInput(page: Page) {
  for (let times = 0; times < 5 && (await quickInput(page).isVisible()); times++) {
    await quickLine(page).focus({ timeout: 500 }).catch(() => undefined);
    await page.keyboard.press('Escape');
    await quickInput(page).waitFor({ state: 'hidden', timeout: 1000 }).catch(() => undefined);
  }
}

/** Writes into the line at the top of the window, once it is there to be written in. */
export async function writeOnTop(page: Page, words: string) {
  await quickLine(page).waitFor();
  await quickLine(page).fill(words);
}

/** Enter takes what the line at the top of the window points at, and closes it. */
export async function enterOnTop(page: Page) {
  await page.keyboard.press('Enter');
  await quickInput(page).waitFor({ state: 'hidden' });
}
