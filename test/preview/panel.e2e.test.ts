// The player as the panel of an editor: which picture it shows, what it says back, what stays readable in every theme.
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { examplePlaybacks } from '../support/examples.ts';
import { lighthouse } from '../support/playback-fixture.ts';
import { accessibilityFaults, executable, handsOn, openStage, show, type Stage } from './player-in-browser.ts';

describe.skipIf(executable === undefined && !process.env.CI)('the player as a panel', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  beforeEach(() => stage.asOpened());
  afterAll(() => stage?.close());

  const time = () => stage.page.locator('.reading > span').first().textContent();
  const { seek, drawn, seqShown } = handsOn(() => stage);

  async function shown(seq = 1) {
    await stage.openPanel();
    await stage.tell(show(seq));
    await expect.poll(seqShown).toBe(String(seq));
  }

  describe('to look at', () => {
    test.each(['vscode-high-contrast', 'forced colours'])('what has been run stays readable on the floor: %s', async (theme) => {
      if (theme === 'forced colours') await stage.page.emulateMedia({ forcedColors: 'active' });
      await stage.openPanel({ theme: theme === 'forced colours' ? 'vscode-dark' : theme });
      await stage.tell(show(1, { playback: examplePlaybacks().find(({ play }) => play.name === 'Lighthouse')! }));
      await expect.poll(seqShown).toBe('1');
      await seek(6900);
      await drawn();
      const done = stage.page.locator('.court .way.done').first();
      // Three to one against black.
      expect(Number(await done.evaluate((way) => getComputedStyle(way).opacity))).toBeGreaterThanOrEqual(0.4);
    });

    test.each(['vscode-light', 'vscode-dark', 'vscode-high-contrast'])('a bar’s length is seen in the panel, %s', async (theme) => {
      await stage.openPanel({ theme });
      await stage.tell(show(0));
      await expect.poll(seqShown).toBe('0');
      const bars = stage.page.locator('.bar:not(.pass, .hand-off, .shot, .now)');
      const [ground, edge, around] = await bars.first().evaluate((bar) => [getComputedStyle(bar).backgroundColor, getComputedStyle(bar).borderTopColor, getComputedStyle(document.body).backgroundColor]);
      expect(ground !== around || (edge !== around && edge !== 'rgba(0, 0, 0, 0)'), `${ground}, edge ${edge}, on ${around}`).toBe(true);
    });

    test('what can be moved by hand does not lie over the floor that the team sees', async () => {
      await stage.openPanel();
      await stage.tell(show(0));
      await stage.page.locator('.handle').first().waitFor({ state: 'attached' });
      expect(await stage.page.locator('.hand').isVisible()).toBe(true);
      await stage.page.keyboard.press('f');
      expect(await stage.page.locator('.hand').isVisible()).toBe(false);
      expect(await stage.page.getByRole('button', { name: /^Draw a new cut/ }).isVisible()).toBe(false);
      await stage.page.keyboard.press('Escape');
    });

    test.each(['vscode-light', 'vscode-dark', 'vscode-high-contrast'])('in the panel, %s', async (theme) => {
      await stage.openPanel({ theme });
      expect(await accessibilityFaults(stage.page)).toEqual([]);
      await stage.tell(show(1));
      await expect.poll(seqShown).toBe('1');
      expect(await accessibilityFaults(stage.page)).toEqual([]);
    });
  });

  describe('told by the editor, and telling it', () => {
    const last = async (kind: string) => (await stage.heard()).findLast((message) => message.kind === kind);

    test('says when it is ready, and when a picture is drawn', async () => {
      await stage.openPanel();
      expect((await stage.heard())[0]).toEqual({ v: 1, kind: 'ready' });
      // Before the editor has said anything it is not said that there is no play.
      await stage.page.getByText('The play is on its way').waitFor();
      expect(await stage.page.getByText('No play to show').count()).toBe(0);
      await stage.tell(show(0, { title: '', playback: null }));
      await stage.page.getByText('No play to show').waitFor();
      await stage.tell(show(1));
      await expect.poll(() => last('shown')).toEqual({ v: 1, kind: 'shown', seq: 1 });
      expect(await seqShown()).toBe('1');
      expect(await stage.page.evaluate(() => performance.getEntriesByName('setwright:shown').length)).toBe(1);
    });

    test('says again that it is ready until it is told something: a busy window can lose the first time', async () => {
      await stage.openPanel();
      await expect.poll(() => stage.heard()).toEqual([{ v: 1, kind: 'ready' }, { v: 1, kind: 'ready', again: true }]);
      await stage.tell(show(1));
      await expect.poll(seqShown).toBe('1');
      const said = (await stage.heard()).filter(({ kind }) => kind === 'ready').length;
      await stage.page.waitForTimeout(6000);
      expect((await stage.heard()).filter(({ kind }) => kind === 'ready')).toHaveLength(said);
    });

    test('of several frames that arrive at once the newest is drawn, and only it', async () => {
      await stage.openPanel();
      await stage.page.evaluate((messages) => messages.forEach((message) => window.postMessage(message, '*')), [show(1), show(4, { title: 'Four', playback: { ...lighthouse, play: { ...lighthouse.play, name: 'Four' } } }), show(2)]);
      await expect.poll(seqShown).toBe('4');
      await drawn();
      expect(await seqShown()).toBe('4');
      expect((await stage.heard()).filter(({ kind }) => kind === 'shown').at(-1)).toMatchObject({ seq: 4 });
      expect(await stage.page.getByRole('heading', { level: 1 }).textContent()).toBe('Four');
    });

    test('nothing that the play before was named with stays on the floor of the next', async () => {
      await shown();
      const labels = stage.page.locator('.label-layer .label');
      const run = lighthouse.runs[0]!;
      await seek(run.releaseAt!);
      await expect.poll(() => labels.count()).toBeGreaterThan(0);
      const other = { ...lighthouse, play: { ...lighthouse.play, key: 'play:other' }, looks: [], findings: [] };
      await stage.tell(show(2, { title: 'Other', playback: other }));
      await expect.poll(seqShown).toBe('2');
      await drawn();
      expect(await labels.count()).toBe(0);
    });

    test('a half-typed line leaves the picture and says so quietly', async () => {
      await stage.openPanel();
      await stage.tell(show(1));
      await stage.tell(show(2, { playback: null, stale: true, line: 12 }));
      await stage.page.getByText('Older than the text: line 12 is unfinished').waitFor();
      expect(await stage.page.locator('.body').first().isVisible()).toBe(true);
      await stage.tell(show(3));
      await expect.poll(() => stage.page.locator('.stale').isVisible()).toBe(false);
    });

    test.each([[280, 700], [360, 740], [700, 900], [1280, 800]])('the mark of an older picture lies over nothing, and nothing moves as it comes (%i × %i)', async (width, height) => {
      await stage.page.setViewportSize({ width, height });
      await shown();
      await seek(5400);
      await drawn();
      const boxes = () => stage.page.evaluate(() => Object.fromEntries(['.floor-box', '.controls', '.head'].map((one) => [one, document.querySelector(one)!.getBoundingClientRect()])));
      const before = await boxes();
      await stage.tell(show(2, { playback: null, stale: true, line: 12 }));
      await stage.page.getByText('Older than the text: line 12 is unfinished').waitFor();
      const mark = (await stage.page.locator('.stale').boundingBox())!;
      const now = await boxes();
      expect(Object.entries(now).filter(([, one]) => one.left < mark.x + mark.width && mark.x < one.right && one.top < mark.y + mark.height - 0.5 && mark.y + 0.5 < one.bottom).map(([name]) => name)).toEqual([]);
      const tops = (all: typeof now) => ['.floor-box', '.controls', '.head'].map((one) => [one, all[one]!.top, all[one]!.height]);
      expect(tops(now)).toEqual(tops(before));
    });

    test('a picture that arrives in the same frame as the half-typed line after it is shown', async () => {
      await stage.openPanel();
      await stage.page.evaluate((messages) => messages.forEach((message) => window.postMessage(message, '*')), [show(1), show(2, { playback: null, stale: true, line: 12 })]);
      await stage.page.getByText('Older than the text: line 12 is unfinished').waitFor({ timeout: 5000 });
      expect(await stage.page.locator('.body').first().isVisible()).toBe(true);
      expect(await seqShown()).toBe('2');
      await stage.tell(show(3));
      await expect.poll(seqShown).toBe('3');
    });

    test('a frame of a newer version leaves the picture and says what to do', async () => {
      await shown(3);
      await stage.tell(show(4, { playback: { ...lighthouse, version: 9 } }));
      await stage.page.getByText(/newer Setwright/).waitFor();
      expect(await last('refused')).toMatchObject({ seq: 4 });
      expect(await stage.page.locator('.body').first().isVisible()).toBe(true);
    });

    test('follows the cursor', async () => {
      await stage.openPanel();
      // In one breath, as the editor does: the cursor waits for the picture it belongs to.
      await stage.page.evaluate((messages) => messages.forEach((message) => window.postMessage(message, '*')), [show(1), { v: 1, kind: 'cursor', part: 'middle/1.1' }]);
      await expect.poll(time).toBe('6.8');
      expect(await stage.page.locator('.body.lit').evaluateAll((lit) => lit.map((body) => (body as SVGElement).dataset.body).sort())).toEqual(['1', '3']);
    });

    test('answers with the part of what is picked: a player, a way, a bar, a look, a step', async () => {
      await shown();
      await seek(8700);
      await drawn();
      await stage.page.locator('.handle[data-handle="player 3"]').click({ force: true });
      expect(await last('select')).toMatchObject({ play: 'play:lighthouse', part: 'middle/3.1', place: { line: 17 } });
      await stage.page.locator('.way[data-part="middle/1.1"] .pass').click({ force: true });
      expect(await last('select')).toMatchObject({ part: 'middle/1.1' });
      await stage.page.locator('.bar', { hasText: 'clears to the right corner' }).click();
      expect(await last('select')).toMatchObject({ part: 'zip/2.1' });
      await stage.page.locator('.point.look').first().click();
      expect(await last('select')).toMatchObject({ part: 'middle?3.1' });
      await stage.page.getByRole('button', { name: 'Zip', exact: true }).click();
      expect(await last('select')).toMatchObject({ part: 'zip' });
      await stage.page.locator('.finding-list .finding').first().click();
      expect(await last('select')).toMatchObject({ part: 'zip/5.1' });
    });

    test('keeps run, time and speed through edits and a reload', async () => {
      await shown();
      await stage.page.keyboard.press('2');
      await stage.page.keyboard.press('-');
      await seek(8000);
      await stage.tell(show(2, { playback: { ...lighthouse, runs: lighthouse.runs.toReversed() } }));
      await expect.poll(seqShown).toBe('2');
      expect([await time(), await stage.page.locator('.run[aria-pressed=true]').textContent()]).toEqual(['8.0', expect.stringContaining('4 on the roll')]);
      await expect.poll(() => last('state')).toEqual({ v: 1, kind: 'state', play: 'play:lighthouse', run: 'middle?4.1', t: 8000, speed: 0.5 });
      const kept = await stage.page.evaluate(() => (window as unknown as { kept: unknown }).kept);
      await stage.openPanel({ kept });
      await stage.tell(show(1));
      expect((await stage.heard()).find(({ kind }) => kind === 'ready')).toEqual({ v: 1, kind: 'ready', kept: true });
      await stage.tell({ v: 1, kind: 'cursor', part: 'zip/3.1', mark: true });
      await expect.poll(() => stage.page.locator('.body.lit').count()).toBe(1);
      expect(await time()).toBe('8.0');
      expect(await stage.page.getByLabel('Speed').inputValue()).toBe('0.5');
    });

    test('hears nobody who does not speak its language', async () => {
      await shown();
      const before = await stage.page.locator('h1').textContent();
      for (const message of ['hello', { v: 1, kind: 'show' }, { v: 9, kind: 'cursor', part: 'x' }, null]) await stage.tell(message);
      await drawn();
      expect(await stage.page.locator('h1').textContent()).toBe(before);
      expect(stage.complaints).toEqual([]);
    });
  });
});
