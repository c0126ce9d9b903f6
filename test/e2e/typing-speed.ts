// From the key to the changed picture, measured in a real VS Code: when the editor shows what was typed, and when the panel
// has drawn the play of that text, both by the clock of the machine.
import { place, playOf } from '../support/typed-play.ts';
import { atRest, besideItsText, goTo, panel } from './editor.ts';
import type { Editor } from './window.ts';
import { until } from './vscode.ts';

export interface TypingSpeed {
  /** ms from the key event to the letter in the editor's lines, for each key in the order of size. */
  readonly letter: readonly number[];
  /** ms from the key event to the picture drawn. */
  readonly picture: readonly number[];
  /** ms from the letter to the picture. */
  readonly after: readonly number[];
}

/** Types digits into the play beside its picture and takes them back, one key at a time. */
export async function measureTyping(editor: Editor, file: string, keys: number): Promise<TypingSpeed> {
  const { page } = editor;
  await besideItsText(editor, file);
  const floor = panel(editor);
  const html = floor.locator('html');
  const line = playOf(1).split('\n').findIndex((one) => one.includes(place)) + 1;
  await goTo(editor, line, `    2 clears to (5.12`.length + 1);
  await atRest(floor);

  // In the panel: when a picture was drawn. In the window: when a key went down, and when the lines next changed.
  await html.evaluate((root: HTMLElement) => {
    const drawn: number[] = [];
    Object.assign(window, { drawn });
    new MutationObserver(() => drawn.push(performance.timeOrigin + performance.now())).observe(root, { attributes: true, attributeFilter: ['data-seq'] });
  });
  await page.evaluate(() => {
    const times = { key: 0, letter: 0 };
    Object.assign(window, { times });
    const now = () => performance.timeOrigin + performance.now();
    addEventListener('keydown', () => Object.assign(times, { key: now(), letter: 0 }), true);
    new MutationObserver(() => (times.letter ||= now())).observe(document.querySelector('.editor-group-container.active .view-lines')!, { childList: true, subtree: true, characterData: true });
  });

  const rows: { letter: number; picture: number }[] = [];
  for (let n = 0; n < keys; n++) {
    await html.evaluate(() => void ((window as unknown as { drawn: number[] }).drawn.length = 0));
    await page.keyboard.press(n % 2 === 0 ? String(1 + (n % 9)) : 'Backspace');
    await until('the picture of this key', () => html.evaluate(() => (window as unknown as { drawn: number[] }).drawn.length > 0), 10);
    // A second frame may follow from the cursor; the first is the key's.
    const [drawn] = await html.evaluate(() => (window as unknown as { drawn: number[] }).drawn);
    const { key, letter } = await page.evaluate(() => (window as unknown as { times: { key: number; letter: number } }).times);
    rows.push({ letter: letter - key, picture: drawn! - key });
    await page.waitForTimeout(40);
  }
  // The first keys wake what sleeps: caches, the just-in-time compiler.
  const warm = rows.slice(Math.min(10, keys >> 2));
  const sorted = (values: readonly number[]) => values.toSorted((a, b) => a - b);
  return { letter: sorted(warm.map(({ letter }) => letter)), picture: sorted(warm.map(({ picture }) => picture)), after: sorted(warm.map(({ letter, picture }) => picture - letter)) };
}

/** The value that so many of a hundred stay below. */
export const percentile = (values: readonly number[], of: number): number => values[Math.min(values.length - 1, Math.ceil((values.length * of) / 100) - 1)] ?? NaN;

export const sayTyping = ({ letter, picture, after }: TypingSpeed): string =>
  [['letter shown', letter], ['picture drawn', picture], ['picture after letter', after]]
    .map(([what, values]) => `${what as string} p50 ${percentile(values as number[], 50).toFixed(1)} ms, p95 ${percentile(values as number[], 95).toFixed(1)} ms`)
    .join('; ');
