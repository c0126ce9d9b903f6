// A coach is told of a play that nobody has opened, points at words, follows a finding to its reason, and takes a play away with him.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { besideItsText, closeProblems, goTo, offeredPlace, openFile, panel, problems, takeOfferedPlace } from './editor.ts';
import { chooseInMenu, clickUntil, doUntil, pressTwo } from './gestures.ts';
import { inRealVsCode, screenshot } from './window.ts';
import { until } from './vscode.ts';

const torn = 'notation 1\n\nplay "Torn"\n  from horns\n\n  step "Go"\n    1 screens for 3\n    3 cuts to top\n    look 3: three\n';

inRealVsCode(
  'a coach points at words',
  (editor) => {
    const hover = () => editor().page.locator('.monaco-hover:visible');
    /** What is told of the words at a place, by key: the place as the coach reads it. */
    async function pointAt(line: number, column: number, told: Locator) {
      const byKey = async () => {
        await goTo(editor(), line, column);
        await pressTwo(editor(), 'Control+k', 'Control+i');
      };
      await doUntil(editor(), 'the words at the cursor are told of', byKey, () => told.isVisible(), 8000);
    }

    test('what is wrong in a play that he has not opened stands in the list of problems', async () => {
      await openFile(editor(), 'lighthouse.play');
      const rows = await problems(editor());
      await rows.filter({ hasText: 'torn.play' }).first().waitFor({ timeout: 30_000 });
      await rows.filter({ hasText: /1 sets a screen while he has the ball/ }).first().waitFor();
      expect(await rows.filter({ hasText: 'lighthouse.play' }).count()).toBe(0);
      await screenshot(editor(), 'problems of a play not opened');
      await closeProblems(editor());
    });

    test('a step is drawn where he points at its name', async () => {
      await openFile(editor(), 'lighthouse.play');
      const drawing = hover().locator('img').first();
      await pointAt(20, 12, drawing);
      await until('the drawing has come', async () => (await drawing.evaluate((one) => (one as HTMLImageElement).naturalWidth)) > 0);
      expect(await drawing.getAttribute('src')).toMatch(/^data:image\/svg\+xml/);
      await screenshot(editor(), 'a step in the hover');
      await editor().page.keyboard.press('Escape');
    });

    test('the code beside a message leads to its reason', async () => {
      await openFile(editor(), 'torn.play');
      await until('it is underlined', async () => (await editor().page.locator('.squiggly-error').count()) > 0);
      const link = hover().getByText('screen-with-ball', { exact: true }).first();
      await pointAt(7, 8, link);
      await screenshot(editor(), 'a finding in the hover');
      const reason = editor().page.locator('.tab.active', { hasText: 'screen-with-ball' });
      const follow = async () => {
        if (await reason.isVisible()) return;
        if (!(await link.isVisible())) await pointAt(7, 8, link);
        await link.click({ modifiers: ['ControlOrMeta'] });
      };
      await doUntil(editor(), 'the code leads to its reason', follow, () => reason.isVisible(), 8000);
      await panel(editor()).getByText('A screen by the man with the ball').first().waitFor();
      await screenshot(editor(), 'the reason of a finding');
    });

    test('from the line above the play he draws it, and makes a page of it', async () => {
      await openFile(editor(), 'lighthouse.play');
      await goTo(editor(), 1);
      for (const [lens, ending] of [['Draw', 'svg'], ['Page', 'html']] as const) {
        const asked = async () => (await offeredPlace(editor(), `lighthouse.${ending}`)) !== undefined;
        // Other lines that are told of above the text push it down, away from under the mouse.
        await clickUntil(editor(), editor().page.locator('.codelens-decoration a', { hasText: new RegExp(`^${lens}$`) }).first(), 'it asks where to', asked, 8000);
        await screenshot(editor(), `where to write the ${lens.toLowerCase()}`);
        const file = editor().page.getByRole('treeitem', { name: `lighthouse.${ending}`, exact: true });
        await takeOfferedPlace(editor(), `lighthouse.${ending}`, () => file.isVisible());
      }
      // In the browser the files are in its own memory.
      if (editor().place === 'web worker') return;
      const written = (name: string) => readFileSync(join(editor().folder, name), 'utf8');
      expect(written('lighthouse.svg')).toMatch(/^<svg [^>]*>.*Middle.*<\/svg>$/s);
      expect(written('lighthouse.html')).toMatch(/<title>Lighthouse<\/title>.*script-src|script-src 'sha256-[\w+/=]{44}'/s);
      expect(inflateSync(Buffer.from(/id="[^"]+">([\w+/=]+)<\/script>/.exec(written('lighthouse.html'))![1]!, 'base64')).toString('utf8')).toContain('"Lighthouse"');
    });

    test('from the picture’s own menu he draws the play it shows', async () => {
      await besideItsText(editor(), 'lighthouse.play');
      const { page } = editor();
      const fromTheMenu = async () => {
        // What an earlier try opened lies over it.
        await page.keyboard.press('Escape');
        // A click in the panel brings its buttons, and only then its group is the one in use.
        await panel(editor()).locator('h1').click();
        const group = page.locator('.editor-group-container', { has: page.locator('.editor-actions a[aria-label^="Show the team"]') });
        await group.locator('.editor-actions a[aria-label^="More Actions"]').click();
        await chooseInMenu(page.getByRole('menuitem', { name: /^Draw the play/ }));
      };
      await doUntil(editor(), 'it asks where to', fromTheMenu, async () => (await offeredPlace(editor(), 'lighthouse.svg')) !== undefined, 8000);
      await screenshot(editor(), 'drawn from the picture');
      await page.keyboard.press('Escape');
    });

    // Last: its page is a second picture in the window.
    test('going to a spot opens its page', async () => {
      await besideItsText(editor(), 'lighthouse.play');
      const page = editor().page.locator('.tab.active', { hasText: 'spot left wing' });
      const go = async () => {
        if (await page.isVisible()) return;
        await goTo(editor(), 15, 22);
        await editor().page.keyboard.press('F12');
      };
      await doUntil(editor(), 'the spot has its page', go, () => page.isVisible(), 8000);
      await screenshot(editor(), 'the page of a spot');
    });
  },
  { files: { 'torn.play': torn } },
);
