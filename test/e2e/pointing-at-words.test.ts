// A coach is told of a play that nobody has opened, points at words, follows a finding to its reason, and takes a play away with him.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { goTo, inRealVsCode, openFile, panel, problems, screenshot } from './editor.ts';
import { until } from './vscode.ts';

const torn = 'notation 1\n\nplay "Torn"\n  from horns\n\n  step "Go"\n    1 screens for 3\n    3 cuts to top\n    look 3: three\n';

inRealVsCode(
  'a coach points at words',
  (editor) => {
    const hover = () => editor().page.locator('.monaco-hover:visible');
    async function pointAt(line: number, column: number) {
      await goTo(editor(), line, column);
      await editor().page.keyboard.press('Control+k');
      await editor().page.keyboard.press('Control+i');
    }

    test('what is wrong in a play that he has not opened stands in the list of problems', async () => {
      await openFile(editor(), 'lighthouse.play');
      const rows = await problems(editor());
      await rows.filter({ hasText: 'torn.play' }).first().waitFor({ timeout: 30_000 });
      await rows.filter({ hasText: /1 sets a screen while he has the ball/ }).first().waitFor();
      expect(await rows.filter({ hasText: 'lighthouse.play' }).count()).toBe(0);
      await screenshot(editor(), 'problems of a play not opened');
      await editor().page.keyboard.press('Control+Shift+M');
    });

    test('a step is drawn where he points at its name', async () => {
      await openFile(editor(), 'lighthouse.play');
      await pointAt(20, 12);
      const drawing = hover().locator('img').first();
      await drawing.waitFor();
      await until('the drawing has come', async () => (await drawing.evaluate((one) => (one as HTMLImageElement).naturalWidth)) > 0);
      expect(await drawing.getAttribute('src')).toMatch(/^data:image\/svg\+xml/);
      await screenshot(editor(), 'a step in the hover');
      await editor().page.keyboard.press('Escape');
    });

    test('the code beside a message leads to its reason', async () => {
      await openFile(editor(), 'torn.play');
      await until('it is underlined', async () => (await editor().page.locator('.squiggly-error').count()) > 0);
      await pointAt(7, 8);
      const link = hover().getByText('screen-with-ball', { exact: true }).first();
      await link.waitFor();
      await screenshot(editor(), 'a finding in the hover');
      await link.click({ modifiers: ['ControlOrMeta'] });
      await editor().page.locator('.tab.active', { hasText: 'screen-with-ball' }).waitFor();
      await panel(editor()).getByText('A screen by the man with the ball').first().waitFor();
      await screenshot(editor(), 'the reason of a finding');
    });

    test('from the line above the play he draws it, and makes a page of it', async () => {
      await openFile(editor(), 'lighthouse.play');
      await goTo(editor(), 1);
      for (const [lens, ending] of [['Draw', 'svg'], ['Page', 'html']] as const) {
        await editor().page.locator('.codelens-decoration a', { hasText: new RegExp(`^${lens}$`) }).first().click();
        const where = editor().page.locator('.quick-input-widget:visible input[type=text]').first();
        await until('it asks where to', async () => (await where.inputValue()).endsWith(`lighthouse.${ending}`));
        await screenshot(editor(), `where to write the ${lens.toLowerCase()}`);
        await editor().page.keyboard.press('Enter');
        await editor().page.getByRole('treeitem', { name: `lighthouse.${ending}`, exact: true }).waitFor();
      }
      // In the browser the files are in its own memory.
      if (editor().place === 'web worker') return;
      const written = (name: string) => readFileSync(join(editor().folder, name), 'utf8');
      expect(written('lighthouse.svg')).toMatch(/^<svg [^>]*>.*Middle.*<\/svg>$/s);
      expect(written('lighthouse.html')).toMatch(/<title>Lighthouse<\/title>.*script-src|script-src 'sha256-[\w+/=]{44}'/s);
      expect(inflateSync(Buffer.from(/id="[^"]+">([\w+/=]+)<\/script>/.exec(written('lighthouse.html'))![1]!, 'base64')).toString('utf8')).toContain('"Lighthouse"');
    });
  },
  { files: { 'torn.play': torn } },
);
