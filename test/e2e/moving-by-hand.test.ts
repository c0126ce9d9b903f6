// A coach draws a cut to another spot in the picture: the text says so, is undone in one step, and says no where it is a copy.
import { expect, test } from 'vitest';
import type { Locator } from 'playwright-core';
import { goTo, inRealVsCode, openFile, panel, runCommand, screenshot } from './editor.ts';
import { until } from './vscode.ts';

const pier = `level u14

play "Pier"
  from 1 top, 2 at right slot, 3 at left wing, 4 and 5 elbows
  step "Zip"
    1 dribbles to left slot
    2 clears to right corner
    3 cuts to left corner
    2 screens for 4
    look 3: three

play "Pier left" mirrors "Pier"
`;

inRealVsCode(
  'the play moved by hand',
  (editor) => {
    const { mouse, keyboard } = { mouse: () => editor().page.mouse, keyboard: () => editor().page.keyboard };
    const floor = () => panel(editor());
    const shows = (title: string) => until(`the panel shows ${title}`, async () => (await floor().locator('h1').first().innerText().catch(() => '')) === title);
    // Not the editor in front: that is the panel, once it is touched.
    const text = (): Locator => editor().page.locator('.editor-instance .monaco-editor').first();
    async function goToLine(line: number) {
      await text().locator('.view-line').first().click();
      await goTo(editor(), line, 8);
    }
    /** The lines without the times that stand behind them, in any order: the editor keeps its own. */
    const words = async () => (await text().locator('.view-lines').innerText()).replaceAll('\u00a0', ' ').replaceAll(/[\u200b-\u200d]/g, '').split('\n').map((one) => one.replace(/→ [\d.]+ s/, '').trimEnd()).toSorted().join('\n');
    const line = async (wanted: RegExp) => (await words()).split('\n').find((one) => wanted.test(one));

    /** Draws a handle so many centimetres of the floor; `drop` false keeps hold of it. */
    async function draw(key: string, [dx, dy]: readonly [number, number], drop = true) {
      const grip = floor().locator(`.handle[data-handle="${key}"] .grip`);
      await grip.waitFor({ state: 'attached' });
      const { x, y, width, height } = (await grip.boundingBox())!;
      const scale = width / (2 * Number(await grip.getAttribute('r')));
      const [fromX, fromY] = [x + width / 2, y + height / 2];
      await mouse().move(fromX, fromY);
      await mouse().down();
      for (let part = 1; part <= 8; part++) await mouse().move(fromX + (dx * scale * part) / 8, fromY + (dy * scale * part) / 8);
      if (drop) await mouse().up();
    }
    const chip = () => floor().locator('.chip').innerText().catch(() => '');

    test('2’s corner cut is drawn to the wing: its words go with the hand, the text changes', async () => {
      await openFile(editor(), 'pier.play');
      await runCommand(editor(), 'Setwright: Show the play beside the text');
      await shows('Pier');
      await goToLine(7);
      await until('the time is that of the cut', async () => Number(await floor().locator('input.time').inputValue()) > 1000);
      await draw('end zip/2.1', [-128, 460], false);
      await until('the chip says where', async () => (await chip()).startsWith('right wing'));
      await screenshot(editor(), 'drawn to the wing');
      await mouse().up();
      await until('the text says so', async () => (await line(/^ +2 clears/)) === '    2 clears to right wing');
      await until('the picture shows it', async () => (await floor().locator('.caption').innerText()).length > 0);
      await screenshot(editor(), 'drawn and written');
    });

    test('one undo takes it back', async () => {
      await text().locator('.view-line').first().click();
      await keyboard().press('Control+z');
      await until('the corner is back', async () => (await line(/^ +2 clears/)) === '    2 clears to right corner');
      expect(await line(/^ +3 cuts/)).toBe('    3 cuts to left corner');
    });

    test('by the keyboard: taken hold of, moved, written', async () => {
      await goToLine(7);
      await floor().locator('.handle[data-handle="end zip/2.1"]').waitFor({ state: 'attached' });
      await floor().locator('.handle[data-handle="end zip/2.1"]').focus();
      await keyboard().press('Enter');
      for (let press = 0; press < 5; press++) await keyboard().press('ArrowDown');
      await keyboard().press('Enter');
      await until('the text says so', async () => (await line(/^ +2 clears/)) === '    2 clears to 1.5 m above right corner');
      await text().locator('.view-line').first().click();
      await keyboard().press('Control+z');
      await until('the corner is back', async () => (await line(/^ +2 clears/)) === '    2 clears to right corner');
    });

    test('in a mirrored play it is refused with its reason, and nothing changes', async () => {
      await goToLine(12);
      await shows('Pier left');
      const before = await words();
      await draw('start 4', [80, -80]);
      await until('the chip says why', async () => (await chip()).includes('copied from another play'));
      await screenshot(editor(), 'refused in a mirrored play');
      expect(await words()).toBe(before);
    });

    test('the fix of a finding is a button, and one step in the text', async () => {
      await goToLine(5);
      await shows('Pier');
      const before = await words();
      await floor().locator('.finding-list .fix').first().click();
      await until('the text has changed', async () => (await words()) !== before);
      await screenshot(editor(), 'fixed from the panel');
      await text().locator('.view-line').first().click();
      await keyboard().press('Control+z');
      await until('the text is back', async () => (await words()) === before);
    });
  },
  { files: { 'pier.play': pier }, size: { width: 1440, height: 900 } },
);
