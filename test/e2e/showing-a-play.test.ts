// The panel keeps its play through themes and a reload, follows the coach to another play, and takes every name for a name.
import { expect, test } from 'vitest';
import { accessibilityFaults } from '../support/accessibility.ts';
import { atRest, besideItsText, chooseTheme, closeProblems, goTo, openFile, panel, panelFrame, problems, runAsking, runCommand, toText } from './editor.ts';
import { clickUntil, doUntil, pressTwo, pressUntil } from './gestures.ts';
import { inRealVsCode, opening, screenshot } from './window.ts';
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
    const inPanel = () => floor().locator('html').evaluate(() => document.hasFocus());
    const toPanel = () => doUntil(editor(), 'the panel has the keyboard', () => floor().locator('h1').click(), inPanel);

    test('opens by its key, and a name that looks like markup is a name', async () => {
      const wrong: string[] = [];
      editor().page.on('dialog', (dialog) => void dialog.dismiss().then(() => wrong.push('a dialog')));
      editor().page.on('console', (message) => /Content Security Policy/.test(message.text()) && /setwright|player/.test(message.text()) && wrong.push(message.text()));
      await openFile(editor(), 'nasty.play');
      const byKey = async () => {
        await toText(editor());
        await pressTwo(editor(), 'Control+k', 'v');
      };
      await doUntil(editor(), 'the panel opens', byKey, () => editor().page.locator('iframe.webview.ready').first().isVisible(), 10_000);
      await shows(nasty);
      expect(await floor().locator('img').count()).toBe(0);
      expect(wrong).toEqual([]);
      // Only the player's own script, by a number of this panel; nothing inline, no other server.
      const policy = (await floor().locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content'))!;
      expect(policy).toMatch(/default-src 'none'; script-src 'nonce-[\w+/=]{20,}'; style-src (?!.*'unsafe)/);
      expect(policy).not.toMatch(/unsafe|\*(?!\.)/);
      await screenshot(editor(), 'a name like markup');
    });

    test('goes with the cursor to another play', async () => {
      await besideItsText(editor(), 'nasty.play');
      await goTo(editor(), 8, 6);
      await shows('Second');
      await editor().page.locator('.tab', { hasText: 'Second' }).waitFor();
    });

    test('goes with the coach to another file', async () => {
      await besideItsText(editor(), 'nasty.play');
      await openFile(editor(), 'lighthouse.play');
      await shows('Lighthouse');
    });

    test('axe-core finds nothing in the panel in any theme, nor in forced colours with what can be taken hold of', async () => {
      const { page } = editor();
      await besideItsText(editor(), 'lighthouse.play');
      for (const [theme, file] of [['Dark Modern', 'dark'], ['Dark High Contrast', 'high contrast'], ['Light High Contrast', 'light high contrast'], ['Light Modern', 'light']] as const) {
        await chooseTheme(editor(), theme);
        await goTo(editor(), 22, 6);
        await until('the time is that of the screen', async () => (await time()) > 1000);
        await atRest(floor());
        expect(await accessibilityFaults(await panelFrame(editor())), theme).toEqual([]);
        await screenshot(editor(), `play in the ${file}`);
      }
      await page.emulateMedia({ forcedColors: 'active' });
      await atRest(floor());
      expect(await floor().locator('.handle').count()).toBeGreaterThan(3);
      expect(await accessibilityFaults(await panelFrame(editor())), 'forced colours').toEqual([]);
      await screenshot(editor(), 'play in forced colours');
      await page.emulateMedia({ forcedColors: 'none' });
    });

    test('with less motion the panel goes from moment to moment', async () => {
      await besideItsText(editor(), 'lighthouse.play');
      await editor().page.emulateMedia({ reducedMotion: 'reduce' });
      await toPanel();
      await pressUntil(editor(), 'Home', 'the time is at the call', async () => (await time()) === 0);
      await editor().page.keyboard.press('Space');
      // What a frame shows: of a glide there would be a new place in each.
      const places = await floor().locator('html').evaluate(
        () =>
          new Promise<number>((done) => {
            const seen = new Set<string | null>();
            const start = performance.now();
            const look = () => {
              seen.add(document.querySelector('g[data-body="1"]')!.getAttribute('transform'));
              if (performance.now() - start < 1500) requestAnimationFrame(look);
              else done(seen.size);
            };
            look();
          }),
      );
      expect(places).toBeLessThanOrEqual(4);
      await editor().page.keyboard.press('Space');
      await editor().page.emulateMedia({ reducedMotion: 'no-preference' });
    });

    test('by the keyboard alone, from a new play to one that moves', async () => {
      const { page } = editor();
      await besideItsText(editor(), 'lighthouse.play');
      await runAsking(editor(), 'Setwright: New play from an alignment', ['At the end', 'Night ferry', 'horns', 'against man']);
      await shows('Night ferry');
      await page.keyboard.press('Control+End');
      await pressUntil(editor(), 'Control+2', 'the panel has the keyboard', inPanel);
      await pressUntil(editor(), 'Home', 'the time is at the call', async () => (await time()) === 0);
      await page.keyboard.press('Space');
      await until('it moves', async () => (await time()) > 700);
      await page.keyboard.press('Space');
      await atRest(floor());
      const stood = await time();
      await page.keyboard.press('ArrowRight');
      await until('the next moment', async () => (await time()) > stood);
      await toText(editor());
    });
  },
  { files: { 'nasty.play': nastyPlay } },
);

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
        await floor().locator('input.time').fill('5000');
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
      const { page } = editor();
      await chosen();
      // Its tab brings its button.
      const letGo = async () => {
        if (!(await pinned().isVisible())) return;
        await pinned().click();
        await page.locator('.editor-actions a[aria-label*="go with the text again"]').first().click();
      };
      await doUntil(editor(), 'the panel goes with the text again', letGo, () => pinned().isHidden());
      await goTo(editor(), 23, 6);
      await until('the drive is shown', async () => Number(await floor().locator('input.time').inputValue()) > 6000);
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
