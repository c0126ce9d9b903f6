import { test } from 'vitest';
import { version } from '../../package.json';
import { openFile, runCommand } from './editor.ts';
import { doUntil } from './gestures.ts';
import { inRealVsCode, screenshot } from './window.ts';

inRealVsCode('a coach opens the example play', (editor) => {
  test('and reads it as a Setwright play', async () => {
    const text = await openFile(editor(), 'lighthouse.play');
    await text.locator('.view-line', { hasText: 'Lighthouse' }).waitFor();
    await editor().page.locator('.statusbar-item', { hasText: 'Setwright play' }).waitFor();
  });

  test('and the language server is ready', async () => {
    const { page, place } = editor();
    await openFile(editor(), 'lighthouse.play');
    // When to call the play comes into the status bar beside it and would push it away from under the mouse.
    await page.locator('.statusbar-item', { hasText: 'Call with' }).waitFor();
    const status = page.locator('.hover-language-status', { hasText: 'Setwright is ready' });
    const away = () => page.mouse.move(700, 300);
    const point = async () => {
      await away();
      await page.getByRole('button', { name: /Editor Language Status/ }).hover();
    };
    await doUntil(editor(), 'the server is ready', point, () => status.filter({ hasText: `Setwright language server (${place}) ${version}` }).isVisible());
    await doUntil(editor(), 'what was told is gone', away, () => status.isHidden());
  });

  test('and finds the log by its name in the command palette', async () => {
    await openFile(editor(), 'lighthouse.play');
    await runCommand(editor(), 'Setwright: Show the log');
    await editor().page.locator('.panel .title-actions', { hasText: 'Setwright' }).waitFor();
    await screenshot(editor(), 'opened');
  });
});
