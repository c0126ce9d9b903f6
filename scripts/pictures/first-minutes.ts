// media/walkthrough/: the pictures of the first minutes, parts of a real VS Code in which a coach has just done what the words say.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { goTo, openFile, panel, runAsking, runCommand } from '../../test/e2e/editor.ts';
import { openEditor, type Editor } from '../../test/e2e/window.ts';
import { root } from '../build.ts';

const folder = join(root, 'media/walkthrough');

// In light high contrast the light ones stand: the ground is as white, and the extension stays one small file.
const themes = { light: 'Default Light Modern', dark: 'Default Dark Modern', 'high-contrast': 'Default High Contrast' } as const;

/** Wrong on purpose: the man with the ball screens. */
const wrong = `notation 1
level u14

play "First light"
  from horns, ball with 1
  against man

  step "Screen"
    1 screens for 2
    2 cuts off 1 to nail
    look 2 "pull-up": jumper
`;
const half = `notation 1
level u14

play "First light"
  from horns, ball with 1
  against man

  step "Screen"
    1 passes to 2
    4 ball-screens for 2, then rolls
    2 drives off 4 to nail
    look 2 "pull-up": jumper
`;

const whole = { width: 1200, height: 760 };

export async function takeFirstMinutes(): Promise<void> {
  mkdirSync(folder, { recursive: true });
  for (const theme of Object.keys(themes) as (keyof typeof themes)[]) await takeAll(theme);
}

async function takeAll(theme: keyof typeof themes) {
  const settings = { 'workbench.colorTheme': themes[theme], 'breadcrumbs.enabled': false, 'editor.minimap.enabled': false, 'editor.stickyScroll.enabled': false };
  const { close, ...editor } = await openEditor('Node', { size: whole, settings, files: { 'told.play': wrong, 'half.play': half } });
  const { page } = editor;
  const save = async (name: string, what: Locator | 'window' | Clip) => {
    await page.waitForTimeout(700);
    const taken = what === 'window' ? await page.screenshot() : 'x' in what ? await page.screenshot({ clip: what }) : await what.screenshot();
    const small = await asWebp(page, taken);
    writeFileSync(join(folder, `${name}-${theme}.webp`), small);
    console.log(`media/walkthrough/${name}-${theme}.webp  ${(small.length / 1000).toFixed(0)} kB`);
  };
  try {
    await openFile(editor, 'told.play');
    await page.keyboard.press('Control+b');
    // As wide as the picture, so that the message breaks within it.
    await page.setViewportSize({ ...whole, width: 880 });
    await told(editor);
    await save('told', await textPart(page, 400));
    await page.keyboard.press('Escape');
    await page.setViewportSize(whole);

    await page.keyboard.press('Control+b');
    await openFile(editor, 'half.play');
    await page.keyboard.press('Control+b');
    await halfWritten(editor);
    await save('write', await textPart(page, 300));
    await page.keyboard.press('Escape');
    for (let times = 0; times < 6; times++) await page.keyboard.press('Control+z');

    await begin(editor);
    await page.mouse.move(600, 740);
    await save('start', page.locator('.quick-input-widget'));
    await page.keyboard.press('Escape');

    await page.keyboard.press('Control+b');
    await openFile(editor, 'lighthouse.play');
    await page.keyboard.press('Control+b');
    await runCommand(editor, 'Setwright: Show the play beside the text');
    await panel(editor).locator('g[data-body="1"]').waitFor();
    await page.locator('.tab', { hasText: 'lighthouse.play' }).click();
    await goTo(editor, 23, 6);
    await save('watch', page.locator('.editor-group-container', { has: page.locator('.tab', { hasText: 'Lighthouse' }) }).last());

    await page.getByRole('tab', { name: 'Setwright', exact: true }).click();
    await runAsking(editor, 'Setwright: Bench: what still fits on the clock', ['11 seconds left, side throw-in']);
    // Neither the mouse nor the keyboard is in the list: both would bring its buttons.
    await page.locator('.tab', { hasText: 'lighthouse.play' }).click();
    await page.mouse.move(700, 740);
    await save('call', page.locator('.part.sidebar'));

    await runCommand(editor, 'Setwright: Show the team');
    await save('team', 'window');
  } finally {
    await close();
  }
}

/** The extension stays one small file: a third of the bytes, and no word is harder to read. */
async function asWebp(page: Page, png: Buffer): Promise<Buffer> {
  const blank = await page.context().newPage();
  try {
    // As text: what runs in the page knows the page's world, this script does not.
    const encoded: string = await blank.evaluate(`(async () => {
      const picture = new Image();
      picture.src = 'data:image/png;base64,${png.toString('base64')}';
      await picture.decode();
      const canvas = Object.assign(document.createElement('canvas'), { width: picture.width, height: picture.height });
      canvas.getContext('2d').drawImage(picture, 0, 0);
      return canvas.toDataURL('image/webp', 0.6);
    })()`);
    return Buffer.from(encoded.slice(encoded.indexOf(',') + 1), 'base64');
  } finally {
    await blank.close();
    await page.bringToFront();
  }
}

interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

async function textPart(page: Page, height: number): Promise<Clip> {
  const box = (await page.locator('.editor-group-container.active .editor-instance').first().boundingBox())!;
  return { x: box.x, y: box.y, width: Math.min(820, box.width), height };
}

async function told(editor: Editor) {
  await editor.page.locator('.squiggly-error').first().waitFor();
  await goTo(editor, 9, 8);
  await editor.page.keyboard.press('Control+k');
  await editor.page.keyboard.press('Control+i');
  await editor.page.locator('.monaco-hover:visible', { hasText: 'while he has the ball' }).first().waitFor();
}

async function halfWritten(editor: Editor) {
  await goTo(editor, 9, 5);
  await editor.page.keyboard.press('Shift+End');
  await editor.page.keyboard.type('1 pa', { delay: 60 });
  await editor.page.locator('.suggest-widget.visible .monaco-list-row.focused', { hasText: 'passes to' }).waitFor();
  await editor.page.keyboard.press('Tab');
  await editor.page.locator('.suggest-widget.visible .monaco-list-row', { hasText: '2' }).first().waitFor();
}

async function begin(editor: Editor) {
  const { page } = editor;
  await page.keyboard.press('F1');
  await page.locator('.quick-input-widget input[type=text]').first().fill('>Setwright: New play from an alignment');
  await page.locator('.quick-input-list .monaco-list-row.focused', { hasText: 'New play from an alignment' }).waitFor();
  await page.waitForTimeout(400);
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-list .monaco-list-row', { hasText: 'a file of its own' }).click();
  await page.locator('.quick-input-widget', { hasText: 'on the bench' }).waitFor();
  await page.keyboard.type('Night ferry');
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-list .monaco-list-row', { hasText: 'horns' }).first().waitFor();
}
