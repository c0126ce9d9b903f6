// What a coach has chosen in the panel comes back with the window; the panel lets go, leads to the manual, and is shown to the team.
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { editorAddress, startSettings } from '../../scripts/host.ts';
import { atRest, besideItsText, chooseTheme, closeProblems, goTo, openFile, panel, problems, runCommand, toText } from './editor.ts';
import { clickUntil, doUntil, pressUntil } from './gestures.ts';
import { inRealVsCode, opening, screenshot } from './window.ts';
import { until } from './vscode.ts';
import { writtenDown } from './written-down.ts';

inRealVsCode(
  'a window opened again',
  (editor) => {
    const floor = () => panel(editor());
    const drawn = () => until('the picture is drawn', async () => Number(await floor().locator('html').getAttribute('data-seq').catch(() => 0)) > 0);
    const shown = async () => ({
      title: await floor().locator('h1').first().innerText(),
      run: await floor().locator('.run[aria-pressed="true"]').getAttribute('aria-label').catch(() => null) ?? (await floor().locator('.run[aria-pressed="true"]').innerText()),
      time: await floor().locator('input.time').inputValue(),
      speed: await floor().getByLabel('Speed').inputValue(),
      width: await editor().page.locator('.editor-group-container').last().evaluate((group: { getBoundingClientRect(): { width: number } }) => Math.round(group.getBoundingClientRect().width / 4)),
    });
    const pinned = () => editor().page.locator('.tab', { hasText: 'Lighthouse (pinned)' });

    /** A play kept in the panel at a run-through, a time and a speed that nobody gets without choosing; says what is shown then. */
    async function chosen() {
      await besideItsText(editor(), 'lighthouse.play');
      if (!(await pinned().isVisible())) {
        const html = floor().locator('html');
        await doUntil(editor(), 'the panel has the keyboard', () => floor().locator('h1').click(), () => html.evaluate(() => document.hasFocus()));
        const second = floor().locator('.run').nth(1);
        await pressUntil(editor(), '2', 'the second run-through is chosen', async () => (await second.getAttribute('aria-pressed')) === 'true');
        await pressUntil(editor(), '-', 'the speed is half', async () => (await floor().getByLabel('Speed').inputValue()) === '0.5');
        // The cursor may come after that and take the time with it.
        const choose = async () => {
          await floor().locator('input.time').fill('5000');
          await atRest(floor());
        };
        await doUntil(editor(), 'the time is chosen', choose, async () => (await floor().locator('input.time').inputValue()) === '5000');
        await clickUntil(editor(), editor().page.locator('.editor-actions a[aria-label*="Keep this play in the panel"]').first(), 'the play is kept in the panel', () => pinned().isVisible());
      }
      await atRest(floor());
      const now = await shown();
      expect(now).toMatchObject({ title: 'Lighthouse', time: '5000', speed: '0.5' });
      return now;
    }

    test('a run-through, a time and a speed are chosen, and stay through edits, saving and another theme', async () => {
      const { page } = editor();
      const before = await chosen();
      await toText(editor());
      const seq = Number(await floor().locator('html').getAttribute('data-seq'));
      await page.keyboard.press('Control+End');
      await page.keyboard.type('\n# seen in the gym');
      await until('the panel has the new text', async () => Number(await floor().locator('html').getAttribute('data-seq')) > seq);
      await pressUntil(editor(), 'Control+s', 'the text is saved', async () => (await page.locator('.tab.dirty').count()) === 0);
      await chooseTheme(editor(), 'Dark Modern');
      await chooseTheme(editor(), 'Light Modern');
      await atRest(floor());
      expect(await shown()).toEqual(before);
    });

    test.each(['reloaded', 'closed and opened'])('and come back when the window is %s', async (how) => {
      const { page } = editor();
      const before = await chosen();
      await writtenDown(editor(), '"t":5000');
      const address = page.url();
      if (how === 'reloaded') await page.reload({ timeout: opening });
      else {
        await page.goto('about:blank');
        await page.goto(address, { timeout: opening });
      }
      await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor();
      await drawn();
      await pinned().waitFor();
      await atRest(floor());
      expect(await shown()).toEqual(before);
      await screenshot(editor(), `after it was ${how}`);
    });

    test('let go, it follows the cursor again', async () => {
      await chosen();
      // Said where he is: the text has the keyboard.
      await toText(editor());
      await runCommand(editor(), 'Setwright: Let the panel go with the text again');
      await pinned().waitFor({ state: 'hidden' });
      // In the first seconds of a window VS Code 1.91 does not tell a cursor that goes to a line from one that it restores (client/panel/panels.ts).
      const toTheDrive = async () => {
        await goTo(editor(), 15, 6);
        await goTo(editor(), 23, 6);
      };
      await doUntil(editor(), 'the drive is shown', toTheDrive, async () => Number(await floor().locator('input.time').inputValue()) > 6000);
    });

    test('a link in the list of problems opens its manual, as a page', async () => {
      const { page } = editor();
      await openFile(editor(), 'wrong.play');
      const rows = await problems(editor());
      const manual = page.locator('.tab.active', { hasText: 'screen-unused' });
      const follow = async () => (await manual.isVisible()) || rows.locator('a', { hasText: 'screen-unused' }).first().click({ modifiers: ['Control'] });
      await doUntil(editor(), 'the link leads to the manual', follow, () => manual.isVisible(), 8000);
      // Set as a page, not as its source.
      const headings = async () => (await Promise.all(page.frames().map((frame) => frame.locator('h1').allInnerTexts().catch(() => [])))).flat();
      await until('the manual is set as a page', async () => (await headings()).some((one) => /screen/i.test(one)));
      await screenshot(editor(), 'the manual of a finding');
      await pressUntil(editor(), 'Control+w', 'the manual is closed', async () => (await manual.count()) === 0);
      await closeProblems(editor());
    });

    test('the team sees the play as large as the window, or in a window of its own', async () => {
      const { page } = editor();
      await besideItsText(editor(), 'lighthouse.play');
      await runCommand(editor(), 'Setwright: Show the team: the play alone, as large as the window');
      await until('it is as wide as the window', async () => ((await page.locator('iframe.webview.ready').first().boundingBox())?.width ?? 0) > 1200);
      await floor().locator('.side').waitFor({ state: 'hidden' });
      await screenshot(editor(), 'for the team');
      await pressUntil(editor(), 'Escape', 'the lanes are there again', () => floor().locator('.side').isVisible(), floor().locator('html'));
      const other = page.context().waitForEvent('page');
      await runCommand(editor(), 'Setwright: Show the play in a window of its own');
      const own = await other;
      await own.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame').locator('h1', { hasText: 'Lighthouse' }).waitFor();
      await own.screenshot({ path: 'test/out/in-a-window-of-its-own.png' });
      await own.close();
    });
  },
  { files: { 'wrong.play': 'level u14\n\nplay "Wrong"\n  from horns, ball with 1\n  1 screens for 2\n  look 2: three\n' } },
);

inRealVsCode(
  'the window of npm start opened again',
  (editor) => {
    test('has what was open beside the play of its address', async () => {
      const { page, folder } = editor();
      const address = new URL(page.url());
      await page.goto(editorAddress(Number(address.port), folder, join(folder, 'lighthouse.play')), { timeout: opening });
      const tab = (title: string) => page.locator('.tab', { hasText: title });
      // A play brings its picture.
      await tab('lighthouse.play').waitFor();
      await tab('Lighthouse').waitFor();
      await openFile(editor(), 'quick.play');
      await runCommand(editor(), 'Setwright: Show the play in a panel of its own');
      await tab('Skiff (pinned)').waitFor();
      await writtenDown(editor(), 'Skiff (pinned)');
      await page.reload({ timeout: opening });
      for (const title of ['lighthouse.play', 'quick.play', 'Skiff (pinned)']) await tab(title).waitFor();
    });
  },
  { in: ['Node'], settings: startSettings },
);
