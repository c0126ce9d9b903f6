// The panel keeps its play through themes and a reload, follows the coach to another play, and takes every name for a name.
import { expect, test } from 'vitest';
import { goTo, inRealVsCode, openFile, panel, runCommand, screenshot } from './editor.ts';
import { until } from './vscode.ts';

const nasty = '<img src=x onerror=alert(1)>';
const nastyPlay = `play "${nasty}"
  from horns
  1 passes to 2
  look 2 "](command:workbench.action.quit)": three

play "Second"
  from box
  1 dribbles to left wing
  look 1: jumper
`;

inRealVsCode(
  'the play beside the text',
  (editor) => {
    const floor = () => panel(editor());
    const time = async () => Number(await floor().locator('input.time').inputValue());
    const shows = (title: string) => until(`the panel shows ${title}`, async () => (await floor().locator('h1').first().innerText().catch(() => '')).includes(title));

    test('opens by its key, and a name that looks like markup is a name', async () => {
      const wrong: string[] = [];
      editor().page.on('dialog', (dialog) => void dialog.dismiss().then(() => wrong.push('a dialog')));
      editor().page.on('console', (message) => /Content Security Policy/.test(message.text()) && /setwright|player/.test(message.text()) && wrong.push(message.text()));
      const text = await openFile(editor(), 'nasty.play');
      await text.locator('.view-line').first().click();
      await editor().page.keyboard.press('Control+k');
      await editor().page.keyboard.press('v');
      await shows(nasty);
      expect(await floor().locator('img').count()).toBe(0);
      expect(wrong).toEqual([]);
      await screenshot(editor(), 'a name like markup');
    });

    test('goes with the cursor to another play', async () => {
      await goTo(editor(), 8, 6);
      await shows('Second');
      await editor().page.locator('.tab', { hasText: 'Second' }).waitFor();
    });

    test('goes with the coach to another file', async () => {
      await openFile(editor(), 'lighthouse.play');
      await shows('Lighthouse');
    });

    test('looks right in the dark and in high contrast', async () => {
      for (const [theme, file] of [['Dark Modern', 'dark'], ['Dark High Contrast', 'high contrast']] as const) {
        await chooseTheme(theme);
        await goTo(editor(), 22, 6);
        await until('the time is that of the screen', async () => (await time()) > 1000);
        await screenshot(editor(), `play in the ${file}`);
      }
      await chooseTheme('Light Modern');
    });

    async function chooseTheme(name: string) {
      const { page } = editor();
      await page.keyboard.press('Control+k');
      await page.keyboard.press('Control+t');
      const input = page.locator('.quick-input-widget input[type=text]').first();
      await input.fill(name);
      await page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().waitFor();
      await page.waitForTimeout(400);
      await page.keyboard.press('Enter');
      await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
    }
  },
  { files: { 'nasty.play': nastyPlay } },
);

inRealVsCode(
  'a window opened again',
  (editor) => {
    test('has its play beside the text again', async () => {
      const { page } = editor();
      await openFile(editor(), 'lighthouse.play');
      await runCommand(editor(), 'Setwright: Show the play beside the text');
      const floor = () => panel(editor());
      await until('the picture is drawn', async () => Number(await floor().locator('html').getAttribute('data-seq').catch(() => 0)) > 0);
      await page.waitForTimeout(1500);
      await page.reload();
      await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor();
      await until('the picture is drawn again', async () => Number(await floor().locator('html').getAttribute('data-seq').catch(() => 0)) > 0, 40);
      expect(await floor().locator('h1').first().innerText()).toBe('Lighthouse');
      await goTo(editor(), 15, 6);
      await until('it follows the cursor', async () => Number(await floor().locator('input.time').inputValue()) > 1000);
      await screenshot(editor(), 'after a reload');
    });
  },
  { in: ['Node'] },
);
