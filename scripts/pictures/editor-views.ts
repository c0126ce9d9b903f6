// What VS Code shows of the extension, in its light, dark and high-contrast theme: the play beside its text, the playbook and the bench,
// the first minutes, a message with its mending, the floor alone.
import type { Page } from 'playwright-core';
import { goTo, openFile, panel, runAsking, runCommand } from '../../test/e2e/editor.ts';
import { openEditor } from '../../test/e2e/window.ts';
import { sizes, startViews, type Size } from './views.ts';

const themes = { light: 'Default Light Modern', dark: 'Default Dark Modern', contrast: 'Default High Contrast', 'contrast-light': 'Default High Contrast Light' } as const;

const whole = sizes.at(-1)!;

const wrong = 'notation 1\nlevel u14\n\nplay "First light"\n  from horns, ball with 1\n  against man\n\n  step "Screen"\n    1 screens for 2\n    2 cuts off 1 to nail\n    look 2 "pull-up": jumper\n';

/** One VS Code a theme; its window takes each size in turn. */
export async function takeEditorViews(): Promise<void> {
  const file = startViews('editor');
  for (const theme of Object.keys(themes) as (keyof typeof themes)[]) await takeAll(theme, file);
}

async function takeAll(theme: keyof typeof themes, file: (name: string) => string): Promise<void> {
  const settings = { 'workbench.colorTheme': themes[theme], 'breadcrumbs.enabled': false, 'editor.minimap.enabled': false };
  const { close, ...editor } = await openEditor('Node', { size: whole, settings, files: { 'wrong.play': wrong } });
  const { page } = editor;
  // What the mouse happens to rest on has a tip of its own, over what is to be seen; a message goes when the mouse moves.
  const take = async (name: string, shown: readonly Size[] = sizes, keepsMouse = false) => {
    // From the widest: a side bar that had to be narrow once stays so.
    for (const size of shown.toReversed()) {
      await page.setViewportSize(size);
      if (!keepsMouse) await page.mouse.move(size.width / 4, 4);
      await page.waitForTimeout(700);
      await page.screenshot({ path: file(`${name}-${theme}-${size.width}`) });
    }
    await page.setViewportSize(whole);
  };
  try {
    await openFile(editor, 'lighthouse.play');
    await closeSideBar(page);
    await runCommand(editor, 'Setwright: Show the play beside the text');
    await panel(editor).locator('g[data-body="1"]').waitFor();
    await page.locator('.tab', { hasText: 'lighthouse.play' }).click();
    await goTo(editor, 23, 6);
    await take('beside-the-text', sizes.slice(1));
    // On a phone's width the panel has the window for itself.
    await page.locator('.tab', { hasText: 'Lighthouse' }).last().click();
    await runCommand(editor, 'View: Toggle Maximize Editor Group');
    await take('panel');
    await runCommand(editor, 'View: Toggle Maximize Editor Group');
    await runCommand(editor, 'Setwright: Show the team');
    await take('team');
    await runCommand(editor, 'Setwright: Show the team');

    await page.getByRole('tab', { name: 'Setwright', exact: true }).click();
    await page.locator('.pane .monaco-list-row', { hasText: 'Lighthouse' }).first().waitFor();
    await runAsking(editor, 'Setwright: Bench: what still fits on the clock', ['11 seconds left, side throw-in']);
    await take('playbook-and-bench');

    await runCommand(editor, 'View: Show Explorer');
    await openFile(editor, 'wrong.play');
    await closeSideBar(page);
    await page.locator('.squiggly-error').first().waitFor();
    await goTo(editor, 9, 8);
    await page.keyboard.press('Control+k');
    await page.keyboard.press('Control+i');
    await page.locator('.monaco-hover:visible').first().waitFor();
    await take('message', [whole], true);
    await page.keyboard.press('Escape');

    await runAsking(editor, 'Welcome: Open Walkthrough...', ['First minutes']);
    await take('first-minutes', sizes.slice(1));
  } catch (reason) {
    // The other themes are still worth a look.
    console.error(`${theme}: ${reason instanceof Error ? reason.message : String(reason)}`);
  } finally {
    await close();
  }
}

async function closeSideBar(page: Page): Promise<void> {
  if (await page.locator('.part.sidebar').isVisible()) await page.keyboard.press('Control+b');
}
