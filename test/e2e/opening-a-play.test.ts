import { test } from 'vitest';
import { version } from '../../package.json';
import { inRealVsCode, openFile, runCommand, screenshot } from './editor.ts';

inRealVsCode('a coach opens the example play', (editor) => {
  test('and reads it as a Setwright play', async () => {
    const text = await openFile(editor(), 'lighthouse.play');
    await text.locator('.view-line', { hasText: 'Lighthouse' }).waitFor();
    await editor().page.locator('.statusbar-item', { hasText: 'Setwright play' }).waitFor();
  });

  test('and the language server is ready', async () => {
    const { page, place } = editor();
    // When to call the play comes into the status bar beside it and would push it away from under the mouse.
    await page.locator('.statusbar-item', { hasText: 'Call with' }).waitFor();
    await page.getByRole('button', { name: /Editor Language Status/ }).hover();
    const status = page.locator('.hover-language-status', { hasText: 'Setwright is ready' });
    await status.filter({ hasText: `Setwright language server (${place}) ${version}` }).waitFor();
    await page.mouse.move(700, 300); // away, so that it closes
    await status.waitFor({ state: 'hidden' });
  });

  test('and finds the log by its name in the command palette', async () => {
    await runCommand(editor(), 'Setwright: Show Log');
    await editor().page.locator('.panel .title-actions', { hasText: 'Setwright' }).waitFor();
    await screenshot(editor(), 'opened');
  });
});
