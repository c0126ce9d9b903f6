// A coach looks for a play: the playbook with its times, what still fits on the clock, a new play, a play that stays in sight.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { beforeEach, expect, test } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { atRest, besideItsText, chooseCommand, goTo, offeredPlace, openFile, panel, runAsking, runCommand, takeOfferedPlace, toText } from './editor.ts';
import { clickUntil, doUntil } from './gestures.ts';
import { inRealVsCode, screenshot } from './window.ts';
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
    const listed = (first: string, second: string) => until(`${first} is listed above ${second}`, () => isListed(first, second));
    async function isListed(first: string, second: string): Promise<boolean> {
      const [one, two] = await Promise.all([first, second].map((name) => row('Playbook', new RegExp(`^${name}\\s?\\d`)).boundingBox({ timeout: 1000 }).catch(() => null)));
      return one != null && two != null && one.y < two.y && two.y - one.y <= one.height;
    }
    /** Lets go where the list says that it takes what is dragged; the list that is drawn anew meanwhile takes nothing. */
    async function drag(from: Locator, to: Locator) {
      const { mouse } = editor().page;
      await from.hover();
      await mouse.down();
      try {
        await until('the list takes it there', async () => {
          await to.hover({ force: true });
          const { x, y, width, height } = (await to.boundingBox())!;
          await mouse.move(x + width / 2 + 3, y + height / 2);
          return (await to.getAttribute('class'))?.includes('drop-target') === true;
        }, 8);
      } catch (reason) {
        // Over the text nothing takes it.
        await mouse.move(900, 400);
        throw reason;
      } finally {
        await mouse.up();
      }
    }
    const inFront = async (name: string) => editor().page.locator('.tab.active', { hasText: name }).isVisible();
    const tab = (name: string | RegExp) => editor().page.locator('.tab', { hasText: name });
    const toTab = (name: string) => clickUntil(editor(), tab(name), `${name} is in front`, () => inFront(name));
    /** Clicks a play in the list and has its text in front. */
    const choose = (play: string, file: string) => clickUntil(editor(), row('Playbook', play), `${file} is in front`, () => inFront(file));
    /** What a change of the text may take on a busy machine, in ms: done twice it would be two changes. */
    const long = 10_000;
    /** The side bar shows the playbook. */
    const toPlaybook = () => clickUntil(editor(), editor().page.getByRole('tab', { name: 'Setwright', exact: true }), 'the playbook is in sight', () => pane('Playbook').isVisible());
    let heard: Page | undefined;

    /** A list holds only the rows that can be seen. */
    async function scroll(down: boolean) {
      await pane('Playbook').locator('.pane-body').hover();
      for (let times = 0; times < 25; times++) await editor().page.mouse.wheel(0, down ? 200 : -200);
    }

    beforeEach(async () => {
      const { page } = editor();
      if (heard !== page) page.on('dialog', (dialog) => void dialog.dismiss().then(() => dialogs.push(dialog.message())));
      heard = page;
      await toPlaybook();
      await rows('Playbook').first().waitFor();
      // A test before may have left the list at its end.
      if (!(await row('Playbook', 'Lighthouse').isVisible())) await scroll(false);
      await row('Playbook', 'Lighthouse').waitFor();
    });

    test('opens the view and sees the sections with their plays and times', async () => {
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
      await toPlaybook();
      const chosen = row('Playbook', 'Lighthouse').and(page.locator('.focused.selected'));
      const isBelow = () => isListed('Lantern', 'Lighthouse');
      const putDown = async () => {
        if (await isBelow()) return;
        await row('Playbook', 'Lighthouse').click();
        await until('the list has the keyboard', async () => (await inFront('lighthouse.play')) && (await chosen.isVisible()) && (await pane('Playbook').locator('.monaco-list:focus').count()) > 0, 8);
        await page.keyboard.press('Alt+ArrowDown');
      };
      await doUntil(editor(), 'the play stands one further down', putDown, isBelow, long);
      await toTab('club.play');
      await until('the line is written again', async () => (await linesOf(text)).includes('section "Last shot": "Lantern", "Lighthouse", "Lantern, ball denied"'));
      await toText(editor());
      await page.keyboard.press('Control+z');
      await until('it reads as before', async () => (await linesOf(text)).includes('section "Last shot": "Lighthouse", "Lantern", "Lantern, ball denied"'));
      await listed('Lighthouse', 'Lantern');
    });

    test('drags a play into another section', async () => {
      const { page } = editor();
      const text = await openFile(editor(), 'club.play');
      await toPlaybook();
      await listed('Lighthouse', 'Lantern');
      const both = /"Lighthouse", "Lantern", "Buoy"[^\n]*\n[^\n]*"Gangway", "Lantern, ball denied"/;
      await doUntil(editor(), 'both lines are written again', () => drag(row('Playbook', /^Lantern, ball denied/), row('Playbook', 'We need a three')), async () => both.test(await linesOf(text)), long);
      await toText(editor());
      await page.keyboard.press('Control+z');
      await until('one step takes both back', async () => (await linesOf(text)).includes('"Lantern", "Lantern, ball denied", "Buoy"'));
      await listed('Lantern, ball denied', 'Buoy');
    });

    test('makes one page of all plays, in the order of the book, with the sections', async () => {
      const { page, folder, place } = editor();
      await doUntil(editor(), 'it asks where to', () => chooseCommand(page, 'Setwright: Make a page of all plays, to send or to print'), async () => (await offeredPlace(editor(), '.html')) !== undefined, long);
      await screenshot(editor(), 'where to write the playbook');
      const name = (await offeredPlace(editor(), '.html'))!.split('/').at(-1)!;
      await takeOfferedPlace(editor(), '.html', () => page.getByText(`is written: ${name}`).first().isVisible());
      // In the browser the files are in its own memory.
      if (place === 'web worker') return;
      const packed = /id="[^"]+">([\w+/=]+)<\/script>/.exec(readFileSync(join(folder, name), 'utf8'))![1]!;
      const { plays, sections } = JSON.parse(inflateSync(Buffer.from(packed, 'base64')).toString('utf8')) as { readonly plays: readonly { readonly play: { readonly name: string } }[]; readonly sections: readonly (string | null)[] };
      expect(plays.slice(0, 2).map(({ play }) => play.name)).toEqual(['Lighthouse', 'Lantern']);
      expect(sections.slice(0, 2)).toEqual(['Last shot', 'Last shot']);
      expect(plays.length).toBeGreaterThan(30);
      expect(new Set(plays.map(({ play }) => play.name)).size).toBe(plays.length);
    });

    test('clicks a play and reads its text, and when to call it in the status bar', async () => {
      const { page } = editor();
      await choose('Lighthouse', 'lighthouse.play');
      const status = page.locator('.statusbar-item', { hasText: /Call with \d+ s/ });
      await status.waitFor();
      const needs = /\d+/.exec(await row('Playbook', 'Lighthouse').innerText().then((text) => text.replace('Lighthouse', '')))![0];
      expect(await status.innerText()).toContain(`Call with ${needs} s`);
      await clickUntil(editor(), status, 'the play stands beside its text', () => panel(editor()).locator('h1', { hasText: 'Lighthouse' }).isVisible(), long);
    });

    test('keeps that play in the panel while he opens another', async () => {
      const { page } = editor();
      await besideItsText(editor(), 'lighthouse.play');
      await toPlaybook();
      const pinned = tab('Lighthouse (pinned)');
      /** The panel's tab brings its buttons. */
      const press = (button: string, what: string, seen: () => Promise<boolean>) =>
        doUntil(editor(), what, async () => {
          await tab(/^Lighthouse/).click();
          if (!(await seen())) await page.locator(`.editor-actions a[aria-label*="${button}"]`).first().click();
        }, seen);
      await press('Keep this play in the panel', 'the panel keeps the play', () => pinned.isVisible());
      await choose('Skiff', 'quick.play');
      // The server has answered for the new text: a panel that goes along would have been told before.
      await page.locator('.editor-group-container').first().getByText(/Looks? (at )?3\.\d/).first().waitFor();
      expect(await panel(editor()).locator('h1').first().innerText()).toContain('Lighthouse');
      await screenshot(editor(), 'a pinned play');
      const status = () => page.locator('.statusbar-item', { hasText: /Call with \d+ s/ }).innerText();
      const ofPanel = await status();
      await doUntil(editor(), 'the status bar speaks of the play in the text', () => toText(editor()), async () => (await status()) !== ofPanel);
      await doUntil(editor(), 'the status bar speaks of the play of the panel in hand', () => pinned.click(), async () => (await status()) === ofPanel);
      await press('go with the text again', 'the panel goes with the text', () => pinned.isHidden());
      await toTab('quick.play');
      await goTo(editor(), 8);
      await panel(editor()).locator('h1', { hasText: 'Skiff' }).waitFor();
    });

    test('starts a new play from horns, and it moves at once', async () => {
      // Only beside an open text is it asked where to write.
      await besideItsText(editor(), 'quick.play');
      await toPlaybook();
      await runAsking(editor(), 'Setwright: New play from an alignment', ['At the end', 'Night ferry', 'horns', 'against man']);
      await panel(editor()).locator('h1', { hasText: 'Night ferry' }).waitFor();
      await until('five players stand on the floor', async () => (await panel(editor()).locator('g[data-body]').count()) >= 5);
      const place = () => panel(editor()).locator('g[data-body="5"]').getAttribute('transform');
      await atRest(panel(editor()));
      await panel(editor()).locator('input.time').fill('0');
      const before = await place();
      // The cursor, which the new play has moved, may come after that and take the time with it.
      await doUntil(editor(), '5 has moved', () => panel(editor()).locator('input.time').fill('6000'), async () => (await place()) !== before);
      await scroll(true);
      await row('Playbook', 'Night ferry').waitFor();
      await screenshot(editor(), 'a new play');
    });

    test('a name that looks like markup, an icon or a command is a name', async () => {
      const { page } = editor();
      await besideItsText(editor(), 'lighthouse.play');
      await toPlaybook();
      const found = rows('Playbook').filter({ hasText: '<img src=x' });
      await scroll(true);
      await found.first().waitFor();
      expect(await found.first().innerText()).toContain(nasty);
      expect(await pane('Playbook').locator('img, a[href*="command:"], .codicon-flame').count()).toBe(0);
      const told = page.locator('.monaco-hover', { hasText: '<img src=x' }).last();
      const point = async () => {
        await page.mouse.move(900, 400);
        await found.first().hover();
      };
      await doUntil(editor(), 'what is pointed at is told', point, () => told.isVisible());
      expect(await page.locator('.monaco-hover img, .monaco-hover a[href*="command:"], .monaco-hover .codicon-flame').count()).toBe(0);
      await clickUntil(editor(), found.first(), 'its text is in front', () => inFront('nasty.play'));
      await panel(editor()).locator('h1', { hasText: '<img src=x' }).waitFor();
      expect(await page.locator('.tab img, .tab .codicon-flame, .statusbar-item .codicon-flame').count()).toBe(0);
      await screenshot(editor(), 'a name like markup in the playbook');
      expect(dialogs).toEqual([]);
    });
  },
  { files: { 'nasty.play': nastyPlay }, size: { width: 1600, height: 1000 } },
);
