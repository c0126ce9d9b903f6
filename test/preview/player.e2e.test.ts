// The player as a page that is sent or printed: watched, stepped through from the keyboard, on a phone and on a wide screen.
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { examplePlaybacks } from '../support/examples.ts';
import { hostile, lighthouse } from '../support/playback-fixture.ts';
import { accessibilityFaults, executable, handsOn, openStage, type Stage } from './player-in-browser.ts';

describe.skipIf(executable === undefined && !process.env.CI)('the player as a page', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  beforeEach(() => stage.asOpened());
  afterAll(() => stage?.close());

  const time = () => stage.page.locator('.reading > span').first().textContent();
  const places = () => stage.page.locator('.body').evaluateAll((bodies) => bodies.map((body) => `${(body as SVGElement).dataset.body} ${body.getAttribute('transform')}`).sort());
  const { seek, drawn } = handsOn(() => stage);

  describe('to look at', () => {
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
      await stage.page.emulateMedia({ reducedMotion: 'reduce' });
      await stage.openPage(lighthouse);
      await seek(4600);
      await stage.page.keyboard.press('Space');
      // In the page: a busy machine takes longer to be asked twelve times than the moment lasts.
      const seen = await stage.page.evaluate(
        () =>
          new Promise<number>((done) => {
            const places = new Set<string>();
            const start = performance.now();
            const look = () => {
              places.add([...document.querySelectorAll('.body')].map((body) => body.getAttribute('transform')).join());
              if (performance.now() - start < 600) requestAnimationFrame(look);
              else done(places.size);
            };
            look();
          }),
      );
      // Between 4.6 s and 5.4 s nothing begins in this play: one moment, one picture.
      expect(seen).toBeLessThanOrEqual(2);
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
    });

    test('on a phone the seconds end where the page does, also where no game clock stands beside them', async () => {
      await stage.page.setViewportSize({ width: 360, height: 740 });
      await stage.openPage(examplePlaybacks().find(({ play }) => play.name === 'Breakwater')!);
      await drawn();
      const [figure, page] = await Promise.all([stage.page.locator('.cell.since').boundingBox(), stage.page.locator('header.head').boundingBox()]);
      expect(figure!.x + figure!.width).toBeCloseTo(page!.x + page!.width, 0);
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
    });

    test.each([360, 600, 900, 1600])('at %i px nothing sticks out sideways', async (width) => {
      await stage.page.setViewportSize({ width, height: 800 });
      for (const playback of [lighthouse, hostile('Averyveryveryverylongnamewithoutanyblankinitatallthatneverends')]) {
        await stage.openPage(playback);
        await drawn();
        expect(await stage.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      }
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

    test('the help opens with ?, at its head, and closes with Esc', async () => {
      await stage.page.setViewportSize({ width: 740, height: 360 });
      await stage.openPage(lighthouse);
      await press('?');
      await stage.page.getByRole('dialog', { name: 'Keys and lines' }).waitFor();
      expect(await stage.page.getByText('Choose a run-through').isVisible()).toBe(true);
      expect(await stage.page.getByText('The next play, the play before').isVisible()).toBe(false);
      expect(await stage.page.getByRole('dialog').evaluate(({ scrollTop }) => scrollTop)).toBe(0);
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
    });

  });
});
