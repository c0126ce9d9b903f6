// What a coach does in VS Code, as functions for the end-to-end tests.
import type { Frame, FrameLocator, Locator, Page } from 'playwright-core';
import { doUntil, enterOnTop, pressTwo, pressUntil, quickInput, quickLine, writeOnTop } from './gestures.ts';
import { until } from './vscode.ts';
import type { Editor } from './window.ts';

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
export async function chooseCommand(page: Page, title: string) {
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

/** The line of the box that asks where a file is to go, once it offers one with this ending. */
export async function offeredPlace({ page }: Editor, ending: string): Promise<string | undefined> {
  const line = page.locator('.quick-input-widget:visible input[type=text]').first();
  const place = await line.inputValue({ timeout: 500 }).catch(() => '');
  return place.endsWith(ending) ? place : undefined;
}

/** Takes the place that is offered. The box reads its folder first, and takes no Enter while it does; one too many would go to what lies behind it. */
export async function takeOfferedPlace(editor: Editor, ending: string, written: () => Promise<boolean>) {
  await until('it is written', async () => {
    if (await written()) return true;
    if ((await offeredPlace(editor, ending)) !== undefined) await editor.page.keyboard.press('Enter');
    return until('it is written', written, 4).then(() => true, () => false);
  });
}

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
