// Not every window is one's own folder in English: two folders at once that VS Code does not trust, read by a German coach.
import { expect, test } from 'vitest';
import { goTo, panel, problems, runCommand, toText } from './editor.ts';
import { clickUntil } from './gestures.ts';
import { inRealVsCode, screenshot } from './window.ts';
import { until } from './vscode.ts';

const ebb = 'level u14\n\nplay "Ebb tide"\n  from horns, ball with 1\n  1 screens for 2\n  look 2: three\n';

inRealVsCode(
  'a German coach opens two folders that VS Code does not trust',
  (editor) => {
    const rows = () => editor().page.locator('.pane .monaco-list-row');

    const ebbInFront = () => editor().page.locator('.tab.active', { hasText: 'ebb.play' }).isVisible();

    async function showPlaybook() {
      const { page } = editor();
      const playbook = page.locator('.pane-header', { hasText: /^Spielzüge/ });
      if (!(await playbook.isVisible())) await clickUntil(editor(), page.getByRole('tab', { name: 'Setwright', exact: true }), 'the playbook is in sight', () => playbook.isVisible());
      await rows().filter({ hasText: 'Lighthouse' }).first().waitFor();
    }

    async function openEbb() {
      const { page } = editor();
      await showPlaybook();
      await until('the other folder’s play is listed', async () => {
        await page.locator('.pane .monaco-list').first().hover();
        await page.mouse.wheel(0, 400);
        return (await rows().filter({ hasText: 'Ebb tide' }).count()) > 0;
      });
      await clickUntil(editor(), rows().filter({ hasText: 'Ebb tide' }).first(), 'its text is in front', () => ebbInFront());
    }

    test('the plays of both are listed, with the words of his language', async () => {
      const { page } = editor();
      await page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).waitFor();
      await showPlaybook();
      await page.locator('.pane-header', { hasText: /^Auf der Bank/ }).waitFor();
      expect((await rows().filter({ hasText: 'Lighthouse' }).first().innerText()).replaceAll('\u00a0', ' ')).toMatch(/alle Abschlüsse \d+ s/);
      await openEbb();
    });

    test('a play is read, checked, timed and moves: nothing of it needs trust', async () => {
      const { page } = editor();
      if (!(await ebbInFront())) await openEbb();
      const found = await problems(editor());
      await found.filter({ hasText: 'Niemand nutzt den Block von 1' }).first().waitFor();
      await page.locator('.statusbar-item', { hasText: /Ansagen mit \d+ s/ }).waitFor();
      await toText(editor());
      await runCommand(editor(), 'Setwright: Spielzug neben dem Text zeigen');
      await panel(editor()).locator('h1', { hasText: 'Ebb tide' }).waitFor();
      await goTo(editor(), 6, 4);
      await until('the time goes along', async () => Number(await panel(editor()).locator('input.time').inputValue()) > 500);
      await screenshot(editor(), 'in German and restricted');
    });
  },
  { in: ['Node'], restricted: true, language: 'de', second: { name: 'second', files: { 'ebb.play': ebb } } },
);
