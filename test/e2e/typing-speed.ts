// From the key to the changed picture, measured in a real VS Code: when the editor shows what was typed, and when the panel beside it
// has drawn what came of it, both by the clock of the machine. Ours stands beside the least an extension can do there (`echo/`), by
// turns in the same window: what that takes is VS Code's own, the browser's and the machine's, and only the rest is ours.
import { join } from 'node:path';
import type { Frame } from 'playwright-core';
import { root } from '../../scripts/build.ts';
import { place, playOf } from '../support/typed-play.ts';
import { atRest, besideItsText, goTo, panel, panelFrame, runCommand, toText } from './editor.ts';
import { doUntil } from './gestures.ts';
import type { Editor } from './window.ts';

/** To be opened as `others` of the window. */
export const echo = join(root, 'test/e2e/echo');

export interface TypingSpeed {
  /** ms from the key event to the letter in the editor's lines, for each key in the order of size. */
  readonly letter: readonly number[];
  /** ms from the letter to the picture drawn. */
  readonly picture: readonly number[];
  /** The same for the least an extension can do. */
  readonly least: readonly number[];
}

/** Types digits into a play beside its picture and takes them back, one key at a time; then beside the echo; and again, so many turns. */
export async function measureTyping(editor: Editor, file: string, keys: number, turns = 3): Promise<TypingSpeed> {
  const [letter, picture, least]: [number[], number[], number[]] = [[], [], []];
  for (let turn = 0; turn < turns; turn++) {
    await besideItsText(editor, file);
    await atRest(panel(editor));
    const ours = await typeKeys(editor, keys);
    await closeOthers(editor);
    await openEcho(editor);
    const others = await typeKeys(editor, keys);
    await closeOthers(editor);
    letter.push(...ours.map((one) => one.letter));
    picture.push(...ours.map((one) => one.picture));
    least.push(...others.map((one) => one.picture));
  }
  const sorted = (values: readonly number[]) => values.toSorted((a, b) => a - b);
  return { letter: sorted(letter), picture: sorted(picture), least: sorted(least) };
}

async function openEcho(editor: Editor) {
  await toText(editor);
  const html = panel(editor).locator('html[data-seq]');
  await doUntil(editor, 'the echo is open', async () => (await html.isVisible()) || runCommand(editor, 'Echo: Open'), () => html.isVisible());
  await toText(editor);
}

/** The text stays, alone. */
async function closeOthers(editor: Editor) {
  await toText(editor);
  const webviews = editor.page.locator('iframe.webview');
  await doUntil(editor, 'the panel beside the text is closed', () => runCommand(editor, 'View: Close Editors in Other Groups'), async () => (await webviews.count()) === 0);
  await toText(editor);
}

/** One row a key: ms from the key to its letter, and from there to the picture in the panel in front. Every second key takes the digit back, to a play that is still known. */
async function typeKeys(editor: Editor, keys: number): Promise<readonly { readonly letter: number; readonly picture: number }[]> {
  const { page } = editor;
  const line = playOf(1).split('\n').findIndex((one) => one.includes(place)) + 1;
  await goTo(editor, line, `    2 clears to (5.12`.length + 1);
  const frame = await panelFrame(editor);
  await watchPanel(frame);
  await watchText(editor);
  const rows: { letter: number; picture: number }[] = [];
  for (let n = 0; n < keys; n++) {
    await page.waitForTimeout(40);
    await frame.evaluate(() => (window as unknown as Drawn).waitForNext());
    await page.keyboard.press(n % 2 === 0 ? String(1 + (n % 9)) : 'Backspace');
    // Asked once and not over and over: a question a window has to answer meanwhile would be part of what is measured.
    const drawn = await within(10, 'the picture of this key', frame.evaluate(() => (window as unknown as Drawn).next));
    const { key, letter } = await page.evaluate(() => (window as unknown as Times).times!);
    rows.push({ letter: letter - key, picture: drawn - letter });
  }
  // The first keys wake what sleeps: caches, the just-in-time compiler.
  return rows.slice(Math.min(10, keys >> 2));
}

function within<Answer>(seconds: number, what: string, answer: Promise<Answer>): Promise<Answer> {
  let timer: ReturnType<typeof setTimeout>;
  const late = new Promise<never>((_, reject) => void (timer = setTimeout(() => reject(new Error(`waited ${seconds} s in vain: ${what}`)), seconds * 1000)));
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}

interface Drawn {
  waitForNext: () => void;
  next: Promise<number>;
}
/** In the panel: when a picture was drawn. A second frame may follow from the cursor; the first is the key's. */
const watchPanel = (frame: Frame) =>
  frame.evaluate(() => {
    const here = window as unknown as Drawn;
    let drawn = (_at: number) => {};
    here.waitForNext = () => void (here.next = new Promise((resolve) => void (drawn = resolve)));
    new MutationObserver(() => drawn(performance.timeOrigin + performance.now())).observe(document.documentElement, { attributes: true, attributeFilter: ['data-seq'] });
  });

interface Times {
  times?: { key: number; letter: number };
  unwatch?: () => void;
}
/** In the window: when a key went down, and when the lines next changed. */
const watchText = ({ page }: Editor) =>
  page.evaluate(() => {
    const here = window as unknown as Times;
    here.unwatch?.();
    const times = (here.times = { key: 0, letter: 0 });
    const now = () => performance.timeOrigin + performance.now();
    const down = () => Object.assign(times, { key: now(), letter: 0 });
    addEventListener('keydown', down, true);
    const lines = new MutationObserver(() => (times.letter ||= now()));
    lines.observe(document.querySelector('.editor-group-container.active .view-lines')!, { childList: true, subtree: true, characterData: true });
    here.unwatch = () => {
      removeEventListener('keydown', down, true);
      lines.disconnect();
    };
  });

/** The value that so many of a hundred stay below. */
export const percentile = (values: readonly number[], of: number): number => values[Math.min(values.length - 1, Math.ceil((values.length * of) / 100) - 1)] ?? NaN;

export const sayTyping = ({ letter, picture, least }: TypingSpeed): string =>
  Object.entries({ 'key to letter': letter, 'letter to picture': picture, 'letter to echo': least })
    .map(([what, values]) => `${what} p50 ${percentile(values, 50).toFixed(1)} ms, p95 ${percentile(values, 95).toFixed(1)} ms`)
    .join('; ');
