// A coach moves the play by hand, in the picture and by command: the text says so in his words, one undo takes it back, and
// where it cannot be done he reads why.
import { expect, test } from 'vitest';
import type { Locator } from 'playwright-core';
import { atRest, goTo, inRealVsCode, openFile, panel, runAsking, runCommand, screenshot, toText } from './editor.ts';
import { until } from './vscode.ts';

const pier = `level u14

play "Pier"
  from 1 top, 2 at right slot, 3 at left wing, 4 and 5 elbows
  step "Zip"
    1 dribbles to left slot
    2 clears to right corner
    3 cuts to left corner
    5 screens for 4
    4 cuts off 5 to top
    look 4: three
    look 3: three

play "Pier left" mirrors "Pier"

play "Both"
  from 5-out, ball with 1
  4 and 5 cut to the blocks
  look 1: jumper

play "Quay"
  from horns, ball with 1
  1 screens for 2
  look 2: three

play "Skerry"
  from 1 top, 2 at right corner, 3 at left wing, 4 at right block, 5 at left block
  1 dribbles to left slot
  look 1: jumper
`;

inRealVsCode(
  'the play moved by hand',
  (editor) => {
    const { mouse, keyboard } = { mouse: () => editor().page.mouse, keyboard: () => editor().page.keyboard };
    const floor = () => panel(editor());
    const shows = (title: string) => until(`the panel shows ${title}`, async () => (await floor().locator('h1').first().innerText().catch(() => '')) === title);
    // Not the editor in front: that is the panel, once it is touched.
    const text = (): Locator => editor().page.locator('.editor-instance .monaco-editor').first();
    const chip = () => floor().locator('.chip');
    const handle = (key: string) => floor().locator(`.handle[data-handle="${key}"]`);

    async function goToLine(line: number) {
      await toText(editor());
      await goTo(editor(), line, 8);
      await floor().locator('h1').scrollIntoViewIfNeeded();
      await atRest(floor());
    }
    /** Without the times that stand behind the lines; in any order, for the editor keeps its own. */
    const words = async () =>
      (await text().locator('.view-lines').innerText()).replaceAll('\u00a0', ' ').replaceAll(/[\u200b-\u200d]/g, '').split('\n').map((one) => one.replace(/→ [\d.]+ s/, '').trimEnd()).toSorted().join('\n');
    const says = (line: RegExp) => until(`the text says ${line}`, async () => (await words()).split('\n').some((one) => line.test(one)));

    async function undo(before: string) {
      await toText(editor());
      await keyboard().press('Control+z');
      await until('one step takes it back', async () => (await words()) === before);
    }

    /** Draws something so many pixels; `drop` false keeps hold of it. */
    async function draw(grip: Locator, [dx, dy]: readonly [number, number], drop = true) {
      await atRest(floor());
      const { x, y, width, height } = (await grip.boundingBox())!;
      const [fromX, fromY] = [x + width / 2, y + height / 2];
      await mouse().move(fromX, fromY);
      await mouse().down();
      for (let part = 1; part <= 6; part++) await mouse().move(fromX + (dx * part) / 6, fromY + (dy * part) / 6);
      if (drop) await mouse().up();
    }
    /** Centimetres of the floor as pixels. */
    async function onScreen(key: string, [dx, dy]: readonly [number, number]): Promise<readonly [number, number]> {
      const grip = handle(key).locator('.grip');
      await grip.waitFor({ state: 'attached' });
      const scale = (await grip.boundingBox())!.width / (2 * Number(await grip.getAttribute('r')));
      return [dx * scale, dy * scale];
    }

    /** One change: drawn from where the cursor stands, read in the text, taken back. */
    async function changes(line: number, key: string, by: readonly [number, number], written: RegExp) {
      await goToLine(line);
      const before = await words();
      await draw(handle(key).locator('.grip'), await onScreen(key, by));
      await says(written);
      await undo(before);
    }

    test('a cut’s end: its words go with the hand, and say which looks move', async () => {
      await openFile(editor(), 'pier.play');
      // Room for the longest line: a wrapped one would read as two.
      await keyboard().press('Control+b');
      await editor().page.locator('.explorer-folders-view').waitFor({ state: 'hidden' });
      await runCommand(editor(), 'Setwright: Show the play beside the text');
      await shows('Pier');
      await goToLine(7);
      const before = await words();
      await draw(handle('end zip/2.1').locator('.grip'), await onScreen('end zip/2.1', [-128, 460]), false);
      await until('the chip says where', async () => (await chip().innerText()).startsWith('right wing'));
      expect(await chip().innerText()).toContain('changes both run-throughs');
      await screenshot(editor(), 'drawn to the wing');
      await mouse().up();
      await says(/^ +2 clears to right wing$/);
      await undo(before);
    });

    test('a player’s start, the screen’s place, a spot on the way', async () => {
      await changes(4, 'start 3', [150, 60], /^ +from 1 top, 2 at right slot, 3 at (?!left wing).+, 4 and 5 elbows$/);
      await changes(9, 'end zip/5.1', [120, 60], /^ +5 screens for 4 at .+$/);
      await changes(7, 'bend zip/2.1', [-150, 40], /^ +2 clears via .+ to right corner$/);
    });

    test('a bar’s edge is a wait', async () => {
      await goToLine(8);
      const before = await words();
      const edge = floor().locator('.bar', { hasText: /cuts to (the )?left corner/ }).locator('.edge');
      await edge.scrollIntoViewIfNeeded();
      await draw(edge, [40, 0]);
      await says(/^ +\d\.?\d? seconds? later, 3 cuts to left corner$/);
      await undo(before);
    });

    test('a new cut and a new pass are drawn', async () => {
      await goToLine(6);
      const before = await words();
      await handle('end zip/1.1').or(handle('player 1')).first().focus();
      await keyboard().press('d');
      await draw(handle('draw 5').locator('.grip'), await onScreen('draw 5', [0, -150]));
      await says(/^ +5 cuts to .+$/);
      await undo(before);
      await atRest(floor());
      const [from, to] = [(await handle('draw 1').boundingBox())!, (await handle('draw 2').boundingBox())!];
      await draw(handle('draw 1').locator('.grip'), [to.x + to.width / 2 - from.x - from.width / 2, to.y + to.height / 2 - from.y - from.height / 2]);
      await says(/^ +1 passes to 2$/);
      await undo(before);
      await handle('draw 2').focus();
      await keyboard().press('d');
      await handle('draw 2').waitFor({ state: 'detached' });
    });

    test('by the keyboard: taken hold of, moved, written', async () => {
      await goToLine(7);
      const before = await words();
      await handle('end zip/2.1').focus();
      await keyboard().press('Enter');
      for (let press = 0; press < 5; press++) await keyboard().press('ArrowDown');
      await keyboard().press('Enter');
      await says(/^ +2 clears to 1\.5 m above right corner$/);
      await undo(before);
    });

    test('two players are exchanged and the play is turned by command, from the text and from the panel', async () => {
      await goToLine(6);
      const before = await words();
      await runAsking(editor(), 'Setwright: Exchange two players', ['2 and 3']);
      await says(/^ +from 1 top, 2 at left wing, 3 at right slot, 4 and 5 elbows$/);
      await undo(before);
      // From the panel: its button, with the keyboard in it.
      await goToLine(28);
      await shows('Skerry');
      // Other lines are in sight now.
      const asItWas = await words();
      const turn = editor().page.locator('.editor-actions a[aria-label*="Turn the play"]').first();
      await floor().locator('h1').click();
      await turn.click();
      await says(/^  1 dribbles to right slot$/);
      await says(/^  from 1 top, 2 at left corner, 3 at right wing, 4 at left block, 5 at right/);
      await screenshot(editor(), 'turned to the other side');
      await undo(asItWas);
    });

    test('a mirrored play and shared words say why they cannot, and the reason does not linger', async () => {
      await goToLine(14);
      await shows('Pier left');
      const before = await words();
      await draw(handle('start 4').locator('.grip'), await onScreen('start 4', [80, -80]));
      await until('the chip says why', async () => (await chip().innerText()).includes('copied from another play'));
      await screenshot(editor(), 'refused in a mirrored play');
      await goToLine(18);
      await shows('Both');
      await chip().waitFor({ state: 'hidden' });
      await draw(handle('end start/4.1').or(handle('player 4')).first().locator('.grip'), [40, 40]);
      await until('the chip names who shares', async () => (await chip().innerText()).startsWith('4 and 5 share the words of this line'));
      await keyboard().press('Escape');
      await chip().waitFor({ state: 'hidden' });
      expect(await words()).toBe(before);
    });

    test('the fix of a finding is a button, and one step in the text', async () => {
      await goToLine(22);
      await shows('Quay');
      const before = await words();
      const fix = floor().locator('.finding-list .fix').first();
      await fix.waitFor();
      await fix.click();
      await until('the text has changed', async () => (await words()) !== before);
      await undo(before);
    });
  },
  { files: { 'pier.play': pier }, size: { width: 1700, height: 900 } },
);
