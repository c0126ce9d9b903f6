// A coach moves the play by hand, in the picture and by command: the text says so in his words, one undo takes it back, and
// where it cannot be done he reads why.
import { beforeEach, expect, test } from 'vitest';
import type { Locator } from 'playwright-core';
import { atRest, goTo, openFile, panel, runAsking, runCommand, toText } from './editor.ts';
import { clickUntil, doUntil, pressUntil } from './gestures.ts';
import { inRealVsCode, screenshot } from './window.ts';
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
    /** What a change may take on a busy machine, in ms: done twice it would be two changes. */
    const long = 10_000;
    const chip = () => floor().locator('.chip');
    const handle = (key: string) => floor().locator(`.handle[data-handle="${key}"]`);

    beforeEach(async () => {
      // Every test takes back what it wrote: a window that an earlier one has prepared is ready for the next.
      if (await floor().locator('html[data-seq]').isVisible()) return;
      await openFile(editor(), 'pier.play');
      // Room for the longest line: a wrapped one would read as two.
      const files = editor().page.locator('.explorer-folders-view');
      await pressUntil(editor(), 'Control+b', 'the list of files is closed', () => files.isHidden());
      await runCommand(editor(), 'Setwright: Show the play beside the text');
      await shows('Pier');
    });

    async function goToLine(line: number) {
      await goTo(editor(), line, 8);
      await floor().locator('h1').scrollIntoViewIfNeeded();
      await atRest(floor());
    }
    /** Without the times that stand behind the lines; in any order, for the editor keeps its own. */
    const words = async () =>
      (await text().locator('.view-lines').innerText()).replaceAll('\u00a0', ' ').replaceAll(/[\u200b-\u200d]/g, '').split('\n').map((one) => one.replace(/→ [\d.]+ s/, '').trimEnd()).toSorted().join('\n');
    const says = (line: RegExp) => until(`the text says ${line}`, async () => (await words()).split('\n').some((one) => line.test(one)));

    /** In the text, or where the hand is. */
    async function undo(before: string, from: 'text' | 'panel' = 'text') {
      if (from === 'text') await toText(editor());
      else await until('the panel has the keyboard', () => floor().locator('html').evaluate(({ ownerDocument }) => ownerDocument.hasFocus()));
      await keyboard().press('Control+z');
      await until('one step takes it back', async () => (await words()) === before);
    }

    /** Draws something so many pixels and keeps hold of it. */
    async function hold(grip: Locator, [dx, dy]: readonly [number, number]) {
      await atRest(floor());
      const { x, y, width, height } = (await grip.boundingBox())!;
      const [fromX, fromY] = [x + width / 2, y + height / 2];
      await mouse().move(fromX, fromY);
      await mouse().down();
      for (let part = 1; part <= 6; part++) await mouse().move(fromX + (dx * part) / 6, fromY + (dy * part) / 6);
    }
    /** The same, let go there, until something comes of it: a picture that arrives late, of the undo before, lets go of what is held. */
    async function draw(grip: Locator, by: () => Promise<readonly [number, number]>, what: string, seen: () => Promise<boolean>) {
      const gesture = async () => {
        await hold(grip, await by());
        await mouse().up();
      };
      await doUntil(editor(), what, gesture, seen, long);
    }
    const drawn = (grip: Locator, by: () => Promise<readonly [number, number]>, before: string) => draw(grip, by, 'what is drawn changes the text', async () => (await words()) !== before);
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
      await drawn(handle(key).locator('.grip'), () => onScreen(key, by), before);
      await says(written);
      await undo(before);
    }

    test('a cut’s end: its words go with the hand, and say which looks move', async () => {
      await goToLine(7);
      const before = await words();
      const drawOn = async () => hold(handle('end zip/2.1').locator('.grip'), await onScreen('end zip/2.1', [-128, 460]));
      await doUntil(editor(), 'the chip says where', drawOn, async () => (await chip().innerText()).startsWith('right wing'));
      expect(await chip().innerText()).toContain('changes both run-throughs');
      await screenshot(editor(), 'drawn to the wing');
      await mouse().up();
      await says(/^ +2 clears to right wing$/);
      await undo(before);
    });

    test('a player’s start, the screen’s place, a spot on the way', async () => {
      await changes(4, 'start 3', [150, 0], /^ +from 1 top, 2 at right slot, 3 at (?!left wing).+, 4 and 5 elbows$/);
      await changes(9, 'end zip/5.1', [120, 60], /^ +5 screens for 4 at .+$/);
      await changes(7, 'bend zip/2.1', [-150, 40], /^ +2 clears via .+ to right corner$/);
    });

    test('a bar’s edge is a wait', async () => {
      await goToLine(8);
      const before = await words();
      const edge = floor().locator('.bar', { hasText: /cuts to (the )?left corner/ }).locator('.edge');
      await edge.scrollIntoViewIfNeeded();
      await drawn(edge, async () => [40, 0], before);
      await says(/^ +\d\.?\d? seconds? later, 3 cuts to left corner$/);
      await undo(before);
    });

    test('a new cut and a new pass are drawn', async () => {
      await goToLine(6);
      const before = await words();
      const ways = (are: 'drawn' | 'left alone') =>
        pressUntil(editor(), 'd', `new ways are ${are}`, async () => (await handle('draw 2').isVisible()) === (are === 'drawn'), handle('draw 2').or(handle('end zip/1.1')).or(handle('player 1')).first());
      await ways('drawn');
      await drawn(handle('draw 5').locator('.grip'), () => onScreen('draw 5', [0, -150]), before);
      await says(/^ +5 cuts to .+$/);
      await undo(before);
      const toTwo = async () => {
        const [from, to] = [(await handle('draw 1').boundingBox())!, (await handle('draw 2').boundingBox())!];
        return [to.x + to.width / 2 - from.x - from.width / 2, to.y + to.height / 2 - from.y - from.height / 2] as const;
      };
      await drawn(handle('draw 1').locator('.grip'), toTwo, before);
      await says(/^ +1 passes to 2$/);
      await undo(before);
      await ways('left alone');
    });

    test('by the keyboard: taken hold of, moved, written', async () => {
      await goToLine(7);
      const before = await words();
      // In one go: a picture that arrives late would let go of what is held.
      const byKeys = async () => {
        await atRest(floor());
        await handle('end zip/2.1').focus();
        for (const key of ['Enter', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'Enter']) await keyboard().press(key);
      };
      await doUntil(editor(), 'what is moved by keys changes the text', byKeys, async () => (await words()) !== before, long);
      await says(/^ +2 clears to 1\.5 m above right corner$/);
      // Taken back where the hand is: the panel has the keyboard again, on the same handle and at the time it showed.
      const stands = async () => `${await floor().locator('.handle:focus').getAttribute('data-handle')} ${await floor().locator('input.time').inputValue()}`;
      await atRest(floor());
      const stood = await stands();
      await undo(before, 'panel');
      await atRest(floor());
      await until('the panel stands as it stood', async () => (await stands()) === stood);
      await pressUntil(editor(), 'Control+Shift+z', 'it is done again', async () => (await words()) !== before);
      await undo(before, 'panel');
    });

    test('two players are swapped and the play is mirrored by command, from the text and from the panel', async () => {
      await goToLine(6);
      const before = await words();
      await runAsking(editor(), 'Setwright: Swap two players', ['2 and 3']);
      await says(/^ +from 1 top, 2 at left wing, 3 at right slot, 4 and 5 elbows$/);
      await undo(before);
      // From the panel: its button, with the keyboard in it.
      await goToLine(28);
      await shows('Skerry');
      // Other lines are in sight now.
      const asItWas = await words();
      const turn = editor().page.locator('.editor-actions a[aria-label*="Mirror the play"]').first();
      // A click in the panel brings its buttons.
      const turned = async () => {
        await floor().locator('h1').click();
        await turn.click();
      };
      await doUntil(editor(), 'the button changes the text', turned, async () => (await words()) !== asItWas, long);
      await says(/^  1 dribbles to right slot$/);
      await says(/^  from 1 top, 2 at left corner, 3 at right wing, 4 at left block, 5 at right/);
      await screenshot(editor(), 'mirrored');
      await undo(asItWas);
    });

    test('a mirrored play and shared words say why they cannot, and the reason does not linger', async () => {
      await goToLine(14);
      await shows('Pier left');
      const before = await words();
      await draw(handle('start 4').locator('.grip'), () => onScreen('start 4', [80, -80]), 'the chip says why', async () => (await chip().innerText()).includes('copied from another play'));
      await screenshot(editor(), 'refused in a mirrored play');
      await goToLine(18);
      await shows('Both');
      await chip().waitFor({ state: 'hidden' });
      await draw(handle('end start/4.1').or(handle('player 4')).first().locator('.grip'), async () => [40, 40], 'the chip names who shares', async () => (await chip().innerText()).startsWith('4 and 5 share the words of this line'));
      await pressUntil(editor(), 'Escape', 'the reason is gone', () => chip().isHidden());
      expect(await words()).toBe(before);
    });

    test('the fix of a finding is a button, and one step in the text', async () => {
      await goToLine(22);
      await shows('Quay');
      const before = await words();
      const fix = floor().locator('.finding-list .fix').first();
      await clickUntil(editor(), fix, 'the button changes the text', async () => (await words()) !== before, long);
      await undo(before);
    });
  },
  { files: { 'pier.play': pier }, size: { width: 1700, height: 900 } },
);
