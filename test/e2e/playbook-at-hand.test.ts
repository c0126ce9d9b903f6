// A coach looks for a play: the playbook with its times, what still fits on the clock, a new play, a play that stays in sight.
import { expect, test } from 'vitest';
import type { Locator } from 'playwright-core';
import { goTo, inRealVsCode, openFile, panel, runAsking, runCommand, screenshot } from './editor.ts';
import { until } from './vscode.ts';

const nasty = '<img src=x onerror=alert(1)> $(flame) [x](command:workbench.action.quit)';
const nastyPlay = `notation 1\nlevel u14\nplay "${nasty}"\n  tags <b>, quick\n  from horns\n  against man\n  1 passes to 2\n  look 2: three\n`;

inRealVsCode(
  'the playbook at hand',
  (editor) => {
    const pane = (name: string) => editor().page.locator('.pane', { has: editor().page.locator('.pane-header', { hasText: new RegExp(`^${name}`) }) });
    const rows = (name: string) => pane(name).locator('.monaco-list-row');
    const row = (name: string, text: string | RegExp) => rows(name).filter({ hasText: text }).first();
    const linesOf = async (text: Locator) => (await text.locator('.view-line').allInnerTexts()).join('\n').replaceAll('\u00a0', ' ');
    const dialogs: string[] = [];
    /** Rows move while a list catches up with its text: a click would hit the neighbour. */
    const listed = (first: string, second: string) =>
      until(`${first} is listed above ${second}`, async () => {
        const [one, two] = await Promise.all([first, second].map((name) => row('Playbook', new RegExp(`^${name}\\s?\\d`)).boundingBox().catch(() => null)));
        return one != null && two != null && one.y < two.y && two.y - one.y <= one.height;
      });
    /** Lets go where the list says that it takes what is dragged. */
    async function drag(from: Locator, to: Locator) {
      const { mouse } = editor().page;
      await from.hover();
      await mouse.down();
      await until('the list takes it there', async () => {
        await to.hover({ force: true });
        const { x, y, width, height } = (await to.boundingBox())!;
        await mouse.move(x + width / 2 + 3, y + height / 2);
        return (await to.getAttribute('class'))?.includes('drop-target') === true;
      });
      await mouse.up();
    }
    /** A list holds only the rows that can be seen. */
    async function scroll(down: boolean) {
      await pane('Playbook').locator('.pane-body').hover();
      for (let times = 0; times < 25; times++) await editor().page.mouse.wheel(0, down ? 200 : -200);
    }

    test('opens the view and sees the sections with their plays and times', async () => {
      const { page } = editor();
      page.on('dialog', (dialog) => void dialog.dismiss().then(() => dialogs.push(dialog.message())));
      await page.getByRole('tab', { name: 'Setwright', exact: true }).click();
      await row('Playbook', 'Lighthouse').waitFor();
      expect(await row('Playbook', 'Lighthouse').innerText()).toMatch(/\d+ s, all looks \d+ s/);
      await row('Playbook', 'Last shot').waitFor();
      await row('Playbook', 'Reedbank Otters, this season').waitFor();
      await screenshot(editor(), 'the playbook');
    });

    test('asks on the bench what fits: eleven seconds, from the side', async () => {
      await row('Bench', 'What is on the clock').or(pane('Bench').getByText('What is on the clock')).first().waitFor();
      await runAsking(editor(), 'Setwright: Bench: what still fits on the clock', ['11 seconds left, side throw-in']);
      await row('Bench', '11 seconds left').waitFor();
      await row('Bench', 'Throw-in from the side').waitFor();
      await row('Bench', 'Time for every look').waitFor();
      const fits = (await rows('Bench').allInnerTexts()).filter((text) => /to spare/.test(text)).map((text) => text.replaceAll('\u00a0', ' '));
      expect(fits.length).toBeGreaterThan(1);
      expect(fits.join('\n')).toMatch(/Jetty/);
      expect(fits.join('\n')).not.toMatch(/Skiff/);
      const needs = fits.map((text) => Number(/(\d+) s/.exec(text)![1]));
      expect(needs).toEqual(needs.toSorted((a, b) => a - b));
      await screenshot(editor(), 'the bench');
    });

    test('chooses only plays that fit in six seconds, and all again', async () => {
      await runAsking(editor(), 'Setwright: Choose plays by the seconds left', ['6']);
      await pane('Playbook').getByText('Only: 6 s left').waitFor();
      await until('a longer play is gone', async () => (await rows('Playbook').filter({ hasText: 'Lighthouse' }).count()) === 0);
      await row('Playbook', 'Full sail').waitFor();
      await runCommand(editor(), 'Setwright: Show all plays');
      await row('Playbook', 'Lighthouse').waitFor();
    });

    test('puts a play further down its section, and takes it back', async () => {
      const { page } = editor();
      const text = await openFile(editor(), 'club.play');
      await page.getByRole('tab', { name: 'Setwright', exact: true }).click();
      await row('Playbook', 'Lighthouse').click();
      await page.locator('.tab.active', { hasText: 'lighthouse.play' }).waitFor();
      await row('Playbook', 'Lighthouse').and(page.locator('.focused.selected')).waitFor();
      await pane('Playbook').locator('.monaco-list:focus').waitFor();
      await page.keyboard.press('Alt+ArrowDown');
      await page.locator('.tab', { hasText: 'club.play' }).click();
      await page.locator('.tab.active', { hasText: 'club.play' }).waitFor();
      await until('the line is written again', async () => (await linesOf(text)).includes('section "Last shot": "Lantern", "Lighthouse", "Lantern, ball denied"'));
      await text.locator('.view-line').first().click();
      await page.keyboard.press('Control+z');
      await until('it reads as before', async () => (await linesOf(text)).includes('section "Last shot": "Lighthouse", "Lantern", "Lantern, ball denied"'));
      await listed('Lighthouse', 'Lantern');
    });

    test('drags a play into another section', async () => {
      const { page } = editor();
      await drag(row('Playbook', /^Lantern, ball denied/), row('Playbook', 'We need a three'));
      const text = page.locator('.editor-group-container.active .editor-instance .monaco-editor').first();
      await page.locator('.tab', { hasText: 'club.play' }).click();
      await until('both lines are written again', async () => /"Lighthouse", "Lantern", "Buoy"[^\n]*\n[^\n]*"Gangway", "Lantern, ball denied"/.test(await linesOf(text)));
      await page.keyboard.press('Control+z');
      await until('one step takes both back', async () => (await linesOf(text)).includes('"Lantern", "Lantern, ball denied", "Buoy"'));
      await listed('Lantern, ball denied', 'Buoy');
    });

    test('clicks a play and reads its text, and when to call it in the status bar', async () => {
      const { page } = editor();
      await row('Playbook', 'Lighthouse').click();
      await page.locator('.tab.active', { hasText: 'lighthouse.play' }).waitFor();
      const status = page.locator('.statusbar-item', { hasText: /Call with \d+ s/ });
      await status.waitFor();
      const needs = /\d+/.exec(await row('Playbook', 'Lighthouse').innerText().then((text) => text.replace('Lighthouse', '')))![0];
      expect(await status.innerText()).toContain(`Call with ${needs} s`);
      await status.click();
      await panel(editor()).locator('h1', { hasText: 'Lighthouse' }).waitFor();
    });

    test('keeps that play in the panel while he opens another', async () => {
      const { page } = editor();
      await page.locator('.tab', { hasText: /^Lighthouse/ }).click();
      await page.locator('.editor-actions a[aria-label*="Keep this play in the panel"]').first().click();
      await page.locator('.tab', { hasText: 'Lighthouse (pinned)' }).waitFor();
      await row('Playbook', 'Skiff').click();
      await page.locator('.tab.active', { hasText: 'quick.play' }).waitFor();
      // The server has answered for the new text: a panel that goes along would have been told before.
      await page.locator('.editor-group-container').first().getByText(/First look at 3\.\d s/).first().waitFor();
      expect(await panel(editor()).locator('h1').first().innerText()).toContain('Lighthouse');
      await screenshot(editor(), 'a pinned play');
      await page.locator('.tab', { hasText: 'Lighthouse (pinned)' }).click();
      await page.locator('.editor-actions a[aria-label*="go with the text again"]').first().click();
      await page.locator('.tab', { hasText: 'quick.play' }).click();
      await goTo(editor(), 8);
      await panel(editor()).locator('h1', { hasText: 'Skiff' }).waitFor();
    });

    test('starts a new play from horns, and it moves at once', async () => {
      await runAsking(editor(), 'Setwright: New play from an alignment', ['Night ferry', 'horns', 'against man']);
      await panel(editor()).locator('h1', { hasText: 'Night ferry' }).waitFor();
      await until('five players stand on the floor', async () => (await panel(editor()).locator('g[data-body]').count()) >= 5);
      const place = () => panel(editor()).locator('g[data-body="5"]').getAttribute('transform');
      await panel(editor()).locator('input.time').fill('0');
      const before = await place();
      await panel(editor()).locator('input.time').fill('6000');
      await until('5 has moved', async () => (await place()) !== before);
      await scroll(true);
      await row('Playbook', 'Night ferry').waitFor();
      await screenshot(editor(), 'a new play');
    });

    test('a name that looks like markup, an icon or a command is a name', async () => {
      const { page } = editor();
      const found = rows('Playbook').filter({ hasText: '<img src=x' });
      await scroll(true);
      await found.first().waitFor();
      expect(await found.first().innerText()).toContain(nasty);
      expect(await pane('Playbook').locator('img, a[href*="command:"], .codicon-flame').count()).toBe(0);
      await found.first().hover();
      await page.locator('.monaco-hover', { hasText: '<img src=x' }).last().waitFor();
      expect(await page.locator('.monaco-hover img, .monaco-hover a[href*="command:"], .monaco-hover .codicon-flame').count()).toBe(0);
      await found.first().click();
      await page.locator('.tab.active', { hasText: 'nasty.play' }).waitFor();
      await panel(editor()).locator('h1', { hasText: '<img src=x' }).waitFor();
      expect(await page.locator('.tab img, .tab .codicon-flame, .statusbar-item .codicon-flame').count()).toBe(0);
      await screenshot(editor(), 'a name like markup in the playbook');
      expect(dialogs).toEqual([]);
    });
  },
  { files: { 'nasty.play': nastyPlay }, size: { width: 1600, height: 1000 } },
);
