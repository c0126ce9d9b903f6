// docs/pictures/: what the README shows, taken from a real VS Code with the example plays.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { goTo, openFile, panel, runCommand } from '../../test/e2e/editor.ts';
import { openEditor } from '../../test/e2e/window.ts';
import { root } from '../build.ts';

const folder = join(root, 'docs/pictures');

interface Shot {
  readonly name: string;
  readonly file: string;
  /** Where the cursor stands: the picture shows that moment. */
  readonly line: number;
  readonly theme: string;
  readonly size: { readonly width: number; readonly height: number };
}

const shots: readonly Shot[] = [
  { name: 'beside-the-text', file: 'lighthouse.play', line: 23, theme: 'Default Light Modern', size: { width: 1440, height: 900 } },
  { name: 'beside-the-text-dark', file: 'lighthouse.play', line: 23, theme: 'Default Dark Modern', size: { width: 1440, height: 900 } },
];

async function take({ name, file, line, theme, size }: Shot): Promise<void> {
  const settings = { 'workbench.colorTheme': theme, 'explorer.openEditors.visible': 0, 'breadcrumbs.enabled': false, 'editor.minimap.enabled': false };
  const { page, place, folder: plays, close } = await openEditor('Node', { size, settings });
  const editor = { page, place, folder: plays };
  try {
    await openFile(editor, file);
    await runCommand(editor, 'Setwright: Show the play beside the text');
    await panel(editor).locator('g[data-body="1"]').waitFor();
    await page.keyboard.press('Control+b');
    await page.locator('.tab', { hasText: file }).click();
    await goTo(editor, line, 8);
    // The cursor stops blinking over the words, and the picture has arrived.
    await page.waitForTimeout(800);
    await page.screenshot({ path: join(folder, `${name}.png`) });
    console.log(`docs/pictures/${name}.png`);
  } finally {
    await close();
  }
}

export async function takeReadme(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  for (const shot of shots) await take(shot);
}
