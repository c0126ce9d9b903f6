import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { examplePlaybacks } from '../support/examples.ts';
import { hostile, lighthouse } from '../support/playback-fixture.ts';
import { accessibilityFaults, executable, handsOn, openStage, show, type Stage } from './player-in-browser.ts';

describe.skipIf(executable === undefined && !process.env.CI)('the player in a browser', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage?.close());

  const time = () => stage.page.locator('.reading > span').first().textContent();
  const places = () => stage.page.locator('.body').evaluateAll((bodies) => bodies.map((body) => `${(body as SVGElement).dataset.body} ${body.getAttribute('transform')}`).sort());
  const { seek, drawn, seqShown } = handsOn(() => stage);

  describe('as a page', () => {
    test('opens from a file, asks for nothing and complains of nothing', async () => {
      await stage.openPage(lighthouse);
      await stage.page.getByRole('heading', { name: 'Lighthouse' }).waitFor();
      expect(await stage.page.locator('.body').count()).toBe(10);
      await stage.page.keyboard.press('Space');
      await stage.page.waitForTimeout(300);
      expect(stage.requests).toEqual([]);
      expect(stage.complaints).toEqual([]);
    });

    test('starts to move by itself, unless the reader wants less motion', async () => {
      await stage.openPage(lighthouse, { autoplay: true });
      await expect.poll(time).not.toBe('0.0');
      await stage.page.emulateMedia({ reducedMotion: 'reduce' });
      await stage.openPage(lighthouse, { autoplay: true });
      await stage.page.waitForTimeout(300);
      expect(await time()).toBe('0.0');
    });

    test('with less motion it goes from moment to moment instead of gliding', async () => {
      await stage.openPage(lighthouse);
      await seek(4600);
      await stage.page.keyboard.press('Space');
      const seen = new Set<string>();
      for (let i = 0; i < 12; i++) {
        seen.add(JSON.stringify(await places()));
        await stage.page.waitForTimeout(60);
      }
      // Between 4.6 s and 5.4 s nothing begins in this play: one moment, one picture.
      expect(seen.size).toBeLessThanOrEqual(2);
      await stage.page.emulateMedia({ reducedMotion: 'no-preference' });
    });

    test('seeking and playing show the same', async () => {
      await stage.openPage(lighthouse);
      // A clock of the test's own: 50 ms a frame, so that the time played to is a round one.
      await stage.page.evaluate(() => {
        let now = 0;
        window.requestAnimationFrame = (callback) => setTimeout(() => callback((now += 50)), 4) as unknown as number;
      });
      const at = () => stage.page.locator('input.time').evaluate((slider: HTMLInputElement) => Number(slider.value));
      await stage.page.keyboard.press('Space');
      await expect.poll(at).toBeGreaterThan(3000);
      await stage.page.keyboard.press('Space');
      await drawn();
      const [t, played] = [await at(), await places()];
      expect(t % 50).toBe(0);
      await seek(9000);
      await drawn();
      expect(await places()).not.toEqual(played);
      await seek(t);
      await drawn();
      expect(await places()).toEqual(played);
    });

    test('every text of a play stays text', async () => {
      await stage.openPage(hostile());
      for (const t of [0, 4000, 10_000]) {
        await seek(t);
        await drawn();
      }
      await stage.page.locator('.told').evaluate((told: HTMLDetailsElement) => (told.open = true));
      expect(await stage.page.evaluate(() => (window as unknown as { hacked?: number }).hacked)).toBeUndefined();
      expect(await stage.page.locator('img, iframe, script:not([type]) ~ script ~ script').count()).toBe(0);
      expect(await stage.page.getByRole('heading', { level: 1 }).textContent()).toBe('<img src=x onerror="window.hacked=1">');
    });

    test('a page of a newer version says what to do', async () => {
      await stage.openPage({ ...lighthouse, version: 2 as 1 });
      await stage.page.getByText(/comes from a newer Setwright.*Update Setwright/).first().waitFor();
    });

    test('on a phone the clock stands beside a name of usual length, and the floor stays where it is when the clock starts', async () => {
      await stage.page.setViewportSize({ width: 360, height: 740 });
      const harbour = examplePlaybacks().find(({ play }) => play.name === 'Harbour')!;
      const floorAt = async (t: number) => {
        await seek(t);
        await drawn();
        return stage.page.locator('.floor-box').evaluate((box) => box.getBoundingClientRect().top);
      };
      for (const playback of [lighthouse, harbour]) {
        await stage.openPage(playback);
        expect(await stage.page.locator('header.head').evaluate((head) => head.querySelector('.clock')!.getBoundingClientRect().top < head.querySelector('h1')!.getBoundingClientRect().bottom)).toBe(true);
        expect(await floorAt(0)).toBe(await floorAt(playback.runs[0]!.clockStartsAt + 500));
      }
      await stage.page.setViewportSize({ width: 900, height: 800 });
    });

    test('on a phone the seconds end where the page does, also where no game clock stands beside them', async () => {
      await stage.page.setViewportSize({ width: 360, height: 740 });
      await stage.openPage(examplePlaybacks().find(({ play }) => play.name === 'Breakwater')!);
      await drawn();
      const [figure, page] = await Promise.all([stage.page.locator('.cell.since').boundingBox(), stage.page.locator('header.head').boundingBox()]);
      expect(figure!.x + figure!.width).toBeCloseTo(page!.x + page!.width, 0);
      await stage.page.setViewportSize({ width: 900, height: 800 });
    });

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
      await stage.page.emulateMedia({ forcedColors: null });
    });

    test('on a phone held sideways the team sees the floor nearly as high as the phone, and every button', async () => {
      await stage.page.setViewportSize({ width: 740, height: 360 });
      await stage.openPage(lighthouse);
      await stage.page.keyboard.press('f');
      await drawn();
      expect((await stage.page.locator('.floor-box').boundingBox())!.height).toBeGreaterThan(280);
      for (const button of await stage.page.locator('.controls button:visible').all()) {
        const { x, y, width, height } = (await button.boundingBox())!;
        expect(x + width).toBeLessThanOrEqual(740);
        expect(y + height).toBeLessThanOrEqual(360);
      }
      await stage.page.keyboard.press('f');
      await stage.page.setViewportSize({ width: 900, height: 800 });
    });

    test('for the team no word is hidden: beside the floor on a phone held sideways, below it on one held upright', async () => {
      const boxOf = async (selector: string) => (await stage.page.locator(selector).boundingBox())!;
      for (const name of ['Breakwater', 'Skiff', 'Lighthouse']) {
        for (const [width, height] of [[740, 360], [667, 375], [360, 740]] as const) {
          await stage.page.setViewportSize({ width, height });
          await stage.openPage(examplePlaybacks().find(({ play }) => play.name === name)!);
          await stage.page.keyboard.press('f');
          await seek(4800);
          await drawn();
          const [floor, controls] = [await boxOf('.court'), await boxOf('.controls')];
          for (const part of ['.title', '.clock', ...(width < height ? ['.caption'] : [])]) {
            const words = await boxOf(part);
            expect(words.y + words.height, `${name}, ${part} at ${width}`).toBeLessThanOrEqual(controls.y + 1);
            const aside = words.x + words.width <= floor.x + 1 || words.x >= floor.x + floor.width - 1;
            expect(aside || words.y + words.height <= floor.y + 1 || words.y >= floor.y + floor.height - 1, `${name}, ${part} beside the floor at ${width}`).toBe(true);
          }
          await stage.page.keyboard.press('f');
        }
      }
      await stage.page.setViewportSize({ width: 900, height: 800 });
    });

    test.each([360, 600, 900, 1600])('at %i px nothing sticks out sideways', async (width) => {
      await stage.page.setViewportSize({ width, height: 800 });
      for (const playback of [lighthouse, hostile('Averyveryveryverylongnamewithoutanyblankinitatallthatneverends')]) {
        await stage.openPage(playback);
        await drawn();
        expect(await stage.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      }
      await stage.page.setViewportSize({ width: 900, height: 800 });
    });
  });

  describe('with the keyboard alone', () => {
    const press = async (...keys: readonly string[]) => {
      for (const key of keys) await stage.page.keyboard.press(key);
      await drawn();
    };

    test('plays, pauses, steps, jumps and chooses', async () => {
      await stage.openPage(lighthouse);
      await press('End');
      expect(await time()).toBe('11.2');
      await press('Home');
      expect(await time()).toBe('0.0');
      await press('ArrowRight');
      expect(await time()).toBe('2.5');
      await press('Shift+ArrowRight');
      expect(await time()).toBe('2.6');
      await press('ArrowLeft');
      expect(await time()).toBe('2.5');
      await press('3');
      expect(await stage.page.locator('.run[aria-pressed=true]').textContent()).toContain('Slip: 4');
      await press('+');
      expect(await stage.page.getByLabel('Speed').inputValue()).toBe('2');
      await press('Space');
      await expect.poll(time).not.toBe('2.5');
      await press('Space');
      await stage.page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    });

    test('the help opens with ? and closes with Esc', async () => {
      await press('?');
      await stage.page.getByRole('dialog', { name: 'Keys and lines' }).waitFor();
      expect(await stage.page.getByText('Choose a run-through').isVisible()).toBe(true);
      expect(await stage.page.getByText('The next play, the play before').isVisible()).toBe(false);
      await press('Escape');
      expect(await stage.page.getByRole('dialog').count()).toBe(0);
    });

    test('F shows the floor alone, Esc brings the rest back', async () => {
      await stage.openPage(lighthouse);
      await press('f');
      expect(await stage.page.locator('.side').isVisible()).toBe(false);
      await press('Escape');
      await expect.poll(() => stage.page.locator('.side').isVisible()).toBe(true);
    });

    test('every control can be reached and is seen to be reached', async () => {
      await stage.openPage(lighthouse);
      const reached: string[] = [];
      for (let i = 0; i < 30; i++) {
        await stage.page.keyboard.press('Tab');
        const at = await stage.page.evaluate(() => {
          const here = document.activeElement;
          if (here === null || here === document.body) return undefined;
          return { name: here.getAttribute('aria-label') ?? here.textContent ?? '', ring: getComputedStyle(here).outlineStyle };
        });
        if (at === undefined) break;
        expect(at.ring).not.toBe('none');
        reached.push(at.name);
      }
      for (const name of ['Time', 'Moment before', 'Play', 'Next moment', 'Speed', 'Keys and lines', 'Player 3', 'The play in words']) expect(reached).toContain(name);
      expect(reached.some((name) => name.includes('4 on the roll'))).toBe(true);
      // The bars are one stop; the arrows move among them.
      expect(reached.filter((name) => / to \d+\.\d s$/.test(name))).toHaveLength(1);
    });

    test('arrows move among the bars, Enter picks one', async () => {
      await stage.openPage(lighthouse);
      await stage.page.locator('.bar[tabindex="0"]').focus();
      await press('ArrowDown', 'ArrowDown', 'ArrowRight', 'Enter');
      expect(await stage.page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^3 drives off 4/);
      expect(await stage.page.locator('.bar.marked').count()).toBe(1);
      expect(await time()).toBe('7.8');
    });

    test('a screen reader is told what a step shows', async () => {
      await stage.openPage(lighthouse);
      await press('ArrowRight');
      expect(await stage.page.getByRole('status').last().textContent()).toMatch(/^2\.5 seconds\. 1 dribbles to the left wing/);
    });
  });

  describe('axe-core finds nothing', () => {
    test.each([
      ['light', 900, {}],
      ['dark', 900, { colorScheme: 'dark' }],
      ['forced colours', 900, { forcedColors: 'active' }],
      ['small', 360, {}],
      ['wide and dark', 1600, { colorScheme: 'dark' }],
    ] as const)('%s', async (_, width, media) => {
      await stage.page.setViewportSize({ width, height: 800 });
      await stage.page.emulateMedia({ colorScheme: 'light', forcedColors: 'none', ...media });
      await stage.openPage(lighthouse);
      await seek(10_400);
      await stage.page.locator('.told').evaluate((told: HTMLDetailsElement) => (told.open = true));
      await drawn();
      expect(await accessibilityFaults(stage.page)).toEqual([]);
      await stage.page.keyboard.press('?');
      expect(await accessibilityFaults(stage.page)).toEqual([]);
      await stage.page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
      await stage.page.setViewportSize({ width: 900, height: 800 });
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

  describe('as a panel', () => {
    const last = async (kind: string) => (await stage.heard()).findLast((message) => message.kind === kind);

    test('says when it is ready, and when a picture is drawn', async () => {
      await stage.openPanel();
      expect(await stage.heard()).toEqual([{ v: 1, kind: 'ready' }]);
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
      await stage.openPanel();
      await stage.tell(show(1));
      await expect.poll(seqShown).toBe('1');
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
      await stage.openPanel();
      await stage.tell(show(1));
      await expect.poll(seqShown).toBe('1');
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
      await stage.page.setViewportSize({ width: 900, height: 800 });
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
      await expect.poll(() => last('ready')).toEqual({ v: 1, kind: 'ready', kept: true });
      await stage.tell({ v: 1, kind: 'cursor', part: 'zip/3.1', mark: true });
      await expect.poll(() => stage.page.locator('.body.lit').count()).toBe(1);
      expect(await time()).toBe('8.0');
      expect(await stage.page.getByLabel('Speed').inputValue()).toBe('0.5');
    });

    test('hears nobody who does not speak its language', async () => {
      const before = await stage.page.locator('h1').textContent();
      for (const message of ['hello', { v: 1, kind: 'show' }, { v: 9, kind: 'cursor', part: 'x' }, null]) await stage.tell(message);
      await drawn();
      expect(await stage.page.locator('h1').textContent()).toBe(before);
      expect(stage.complaints).toEqual([]);
    });
  });
});
