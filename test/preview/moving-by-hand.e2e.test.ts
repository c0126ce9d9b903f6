import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { examplePlaybacks } from '../support/examples.ts';
import { lighthouse } from '../support/playback-fixture.ts';
import { accessibilityFaults, executable, handsOn, openStage, show, type Stage } from './player-in-browser.ts';

describe.skipIf(executable === undefined && !process.env.CI)('a play moved by hand in the player', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  beforeEach(() => stage.asOpened());
  afterAll(() => stage?.close());

  const { seek, drawn, seqShown } = handsOn(() => stage);

  describe('by hand, in the panel', () => {
    type Asked = { readonly kind: string; readonly id: number; readonly dry: boolean; readonly seq: number; readonly play: string; readonly intent: { readonly kind: string; readonly to: { readonly x: number; readonly y: number }; readonly by: number } };
    const asked = async () => (await stage.heard()).filter(({ kind }) => kind === 'intent') as unknown as readonly Asked[];
    const answer = async (more: object) => stage.tell({ v: 1, kind: 'outcome', id: (await asked()).at(-1)!.id, ...more });
    const chip = () => stage.page.locator('.chip');
    const handle = (key: string) => stage.page.locator(`.handle[data-handle="${key}"]`);
    const middleOf = async (key: string) => {
      const { x, y, width, height } = (await handle(key).locator('.grip').boundingBox())!;
      return [x + width / 2, y + height / 2] as const;
    };

    async function open(at: number, playback = lighthouse) {
      await stage.page.setViewportSize({ width: 650, height: 800 });
      await stage.openPanel();
      await stage.tell(show(1, { playback }));
      await expect.poll(seqShown).toBe('1');
      await seek(at);
      await drawn();
    }

    test('a player who has not moved yet is drawn to another start', async () => {
      await open(0);
      const [x, y] = await middleOf('start 2');
      await stage.page.mouse.move(x, y);
      await stage.page.mouse.down();
      await stage.page.mouse.move(x + 60, y + 30, { steps: 4 });
      await expect.poll(async () => (await asked()).length).toBeGreaterThan(0);
      expect((await asked()).at(-1)).toMatchObject({ dry: true, seq: 1, play: 'play:lighthouse', intent: { kind: 'move-start', player: 2 } });
      await answer({ words: 'left block', at: { x: -2.8, y: 0.8 }, changes: 'all run-throughs' });
      await expect.poll(() => chip().innerText()).toBe('left block\nchanges all run-throughs');
      // One question at a time, however far the hand goes meanwhile.
      await expect.poll(async () => (await asked()).length).toBeLessThanOrEqual(2);
      await stage.page.mouse.up();
      await expect.poll(async () => (await asked()).at(-1)?.dry).toBe(false);
      await answer({ words: 'left block' });
      await expect.poll(() => stage.page.locator('.ghost').getAttribute('visibility')).toBe('hidden');
      expect(await stage.page.locator('.unseen[role=status]').textContent()).toBe('Written: left block');
    });

    test('a refusal says why and leaves everything as it was', async () => {
      await open(4000);
      const [x, y] = await middleOf('player 1');
      await stage.page.mouse.move(x, y);
      await stage.page.mouse.down();
      await stage.page.mouse.move(x + 40, y, { steps: 3 });
      await expect.poll(async () => (await asked()).at(-1)?.intent.kind).toBe('move-end');
      await answer({ refused: 'This line is copied from another play or step. Change it there, or write it out here.' });
      await chip().getByText('copied from another play').waitFor();
      await stage.page.mouse.up();
      await expect.poll(async () => (await asked()).at(-1)?.dry).toBe(false);
      await answer({ refused: 'This line is copied from another play or step. Change it there, or write it out here.' });
      await expect.poll(() => stage.page.locator('.ghost').getAttribute('visibility')).toBe('hidden');
    });

    test('a click without moving picks, as on the picture', async () => {
      await open(8700);
      const before = (await asked()).length;
      await stage.page.mouse.click(...(await middleOf('player 3')));
      await expect.poll(async () => (await stage.heard()).findLast(({ kind }) => kind === 'select')).toMatchObject({ part: 'middle/3.1' });
      expect((await asked()).length).toBe(before);
    });

    test('by the keyboard: Enter takes hold, arrows move, Enter writes, Escape lets go', async () => {
      await open(0);
      await handle('start 2').focus();
      await stage.page.keyboard.press('Enter');
      await stage.page.keyboard.press('ArrowRight');
      await expect.poll(async () => (await asked()).at(-1)?.dry).toBe(true);
      const { to } = (await asked()).at(-1)!.intent;
      await answer({ words: 'left block' });
      await stage.page.keyboard.press('Escape');
      await expect.poll(() => chip().isVisible()).toBe(false);
      expect((await asked()).every(({ dry }) => dry)).toBe(true);
      await stage.page.keyboard.press('Enter');
      await stage.page.keyboard.press('Shift+ArrowRight');
      await stage.page.keyboard.press('Enter');
      await expect.poll(async () => (await asked()).at(-1)).toMatchObject({ dry: false, intent: { kind: 'move-start', player: 2 } });
      expect((await asked()).at(-1)!.intent.to.x).toBeCloseTo(to.x - 0.2, 1);
    });

    test('keys that take back, do again and save mean the text', async () => {
      await open(0);
      for (const keys of ['Control+z', 'Meta+Shift+z', 'Control+y', 'Control+s', 'Control+Alt+z', 'Control+c']) await stage.page.keyboard.press(keys);
      await expect.poll(async () => (await stage.heard()).filter(({ kind }) => kind === 'text').map((one) => (one as { does?: string }).does)).toEqual(['undo', 'redo', 'redo', 'save']);
    });

    test('arrows go from handle to handle, and one Tab passes them all', async () => {
      await open(0);
      expect(await stage.page.locator('.handle[tabindex="0"]').count()).toBe(1);
      await handle('start 2').focus();
      await stage.page.keyboard.press('ArrowRight');
      expect(await stage.page.evaluate(() => (document.activeElement as SVGElement).dataset.handle)).not.toBe('start 2');
      expect(await stage.page.locator('.handle[tabindex="0"]').count()).toBe(1);
    });

    test('the way that is picked is bent over a spot', async () => {
      await open(4000);
      await stage.tell({ v: 1, kind: 'cursor', part: 'zip/3.1' });
      await handle('bend zip/3.1').waitFor();
      const [x, y] = await middleOf('bend zip/3.1');
      await stage.page.mouse.move(x, y);
      await stage.page.mouse.down();
      await stage.page.mouse.move(x + 50, y, { steps: 3 });
      await expect.poll(async () => (await asked()).at(-1)?.intent).toMatchObject({ kind: 'bend', action: 'zip/3.1' });
      await stage.page.mouse.up();
    });

    test('where another man stands on the end of the cut that is picked, a hand draws the end, and a click picks the man', async () => {
      await open(0, examplePlaybacks().find(({ play }) => play.name === 'Lighthouse')!);
      await stage.tell({ v: 1, kind: 'cursor', part: 'zip/3.1', mark: true });
      const end = handle('end zip/3.1').and(stage.page.locator('.over'));
      await end.waitFor();
      const [x, y] = await middleOf('end zip/3.1');
      await stage.page.mouse.click(x, y);
      await expect.poll(async () => (await stage.heard()).findLast(({ kind }) => kind === 'select')).toMatchObject({ part: 'from' });
      await stage.tell({ v: 1, kind: 'cursor', part: 'zip/3.1', mark: true });
      await end.waitFor();
      await stage.page.mouse.move(x, y);
      await stage.page.mouse.down();
      await stage.page.mouse.move(x + 50, y, { steps: 3 });
      await expect.poll(async () => (await asked()).at(-1)?.intent).toMatchObject({ kind: 'move-end', action: 'zip/3.1' });
      await stage.page.mouse.up();
    });

    test('a new pass is drawn from the man with the ball to another, a cut to the floor', async () => {
      await open(0);
      await stage.page.keyboard.press('d');
      await drawn();
      await stage.page.mouse.move(...(await middleOf('draw 1')));
      await stage.page.mouse.down();
      await stage.page.mouse.move(...(await middleOf('draw 4')), { steps: 4 });
      await stage.page.mouse.up();
      await expect.poll(async () => (await asked()).at(-1)).toMatchObject({ dry: false, intent: { kind: 'add-pass', from: 1, to: 4, step: 'zip' } });
      await answer({ words: '1 passes to 4' });
      const [x, y] = await middleOf('draw 5');
      await stage.page.mouse.move(x, y);
      await stage.page.mouse.down();
      await stage.page.mouse.move(x + 90, y + 40, { steps: 4 });
      await stage.page.mouse.up();
      await expect.poll(async () => (await asked()).at(-1)).toMatchObject({ dry: false, intent: { kind: 'add-cut', player: 5, step: 'zip' } });
    });

    test('a bar’s edge is a wait, by the pointer and by W', async () => {
      await open(0);
      const bar = stage.page.locator('.bar', { hasText: 'clears to the right corner' });
      await bar.scrollIntoViewIfNeeded();
      const edge = (await bar.locator('.edge').boundingBox())!;
      await stage.page.mouse.move(edge.x + 3, edge.y + 8);
      await stage.page.mouse.down();
      await stage.page.mouse.move(edge.x + 53, edge.y + 8, { steps: 4 });
      await expect.poll(async () => (await asked()).at(-1)?.intent).toMatchObject({ kind: 'shift-wait', action: 'zip/2.1' });
      await stage.page.mouse.up();
      await expect.poll(async () => (await asked()).at(-1)?.dry).toBe(false);
      expect((await asked()).at(-1)!.intent.by).toBeGreaterThan(0.4);
      await answer({ words: '1 second later' });
      await bar.focus();
      await stage.page.keyboard.press('w');
      await stage.page.keyboard.press('ArrowRight');
      await stage.page.keyboard.press('ArrowRight');
      await stage.page.keyboard.press('Enter');
      await expect.poll(async () => (await asked()).at(-1)).toMatchObject({ dry: false, intent: { kind: 'shift-wait', by: 0.2 } });
    });

    test.each([
      ['a man', async () => middleOf('start 2')],
      ['a bar’s edge', async () => {
        const bar = stage.page.locator('.bar', { hasText: 'clears to the right corner' });
        await bar.scrollIntoViewIfNeeded();
        const { x, y } = (await bar.locator('.edge').boundingBox())!;
        return [x + 3, y + 8] as const;
      }],
    ] as const)('Escape lets go of %s under the mouse, and nothing is written', async (_, find) => {
      await open(0);
      const [x, y] = await find();
      await stage.page.mouse.move(x, y);
      await stage.page.mouse.down();
      await stage.page.mouse.move(x + 60, y, { steps: 4 });
      await expect.poll(async () => (await asked()).length).toBeGreaterThan(0);
      await answer({ words: 'left block' });
      await expect.poll(() => chip().isVisible()).toBe(true);
      await stage.page.keyboard.press('Escape');
      await expect.poll(() => chip().isVisible()).toBe(false);
      await stage.page.mouse.move(x + 80, y, { steps: 2 });
      await stage.page.mouse.up();
      expect(await chip().isVisible()).toBe(false);
      expect((await asked()).every(({ dry }) => dry)).toBe(true);
    });

    test('a finding stands at its spot with its fix as a button', async () => {
      await stage.page.setViewportSize({ width: 650, height: 800 });
      await stage.openPanel();
      const fixes = [{ title: 'Pass to 3 first', preferred: true, edits: [{ line: 9, at: 0, to: 0, text: '    1 passes to 3', newLine: true }] }];
      await stage.tell(show(1, { playback: { ...lighthouse, findings: lighthouse.findings.map((finding) => ({ ...finding, fixes })) } }));
      await expect.poll(seqShown).toBe('1');
      await stage.page.locator('.point.finding').first().click();
      await stage.page.locator('.callout').getByText(lighthouse.findings[1]!.message.slice(0, 20)).or(stage.page.locator('.callout').getByText(lighthouse.findings[0]!.message.slice(0, 20))).first().waitFor();
      expect(await accessibilityFaults(stage.page)).toEqual([]);
      await stage.page.locator('.callout .fix').click();
      await expect.poll(async () => (await stage.heard()).at(-1)).toMatchObject({ kind: 'fix', seq: 1, fix: 0, code: expect.any(String) });
    });

    test('while it plays, and in a page, nothing can be taken hold of', async () => {
      await open(0);
      await stage.page.keyboard.press('Space');
      await expect.poll(() => stage.page.locator('.handle').count()).toBe(0);
      await stage.openPage(lighthouse);
      expect(await stage.page.locator('.handle, .edge, .fix, .hand').count()).toBe(0);
      expect(stage.complaints).toEqual([]);
    });

    test('axe-core finds nothing on the handles', async () => {
      await open(4000);
      expect(await accessibilityFaults(stage.page)).toEqual([]);
    });
  });
});
