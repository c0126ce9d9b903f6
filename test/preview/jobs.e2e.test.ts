// Each player's own jobs: on the screen, where each leads to its moment, and on paper, to be cut out.
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Playback } from '../../language/playback/playback.ts';
import { tenths } from '../../client/preview/words.ts';
import { examplePlaybacks } from '../support/examples.ts';
import { accessibilityFaults, executable, handsOn, openStage, show, type Stage } from './player-in-browser.ts';

const examples = examplePlaybacks();
const named = (name: string): Playback => examples.find(({ play }) => play.name === name)!;
const lighthouse = named('Lighthouse');
const withNames: Playback = { ...lighthouse, jobs: lighthouse.jobs!.map((one) => ({ ...one, name: one.who === '3' ? '<img src=x onerror="window.hacked=1">' : 'Wren' })) };
const german = JSON.parse(readFileSync('l10n/bundle.l10n.de.json', 'utf8')) as Readonly<Record<string, string>>;
const jobsOf = (playback: Playback, who: string) => playback.jobs!.find((one) => one.who === who)!.jobs;

describe.skipIf(executable === undefined && !process.env.CI)('each player’s jobs', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage?.close());
  const { drawn } = handsOn(() => stage);

  const men = () => stage.page.getByRole('group', { name: 'Each player’s jobs' });
  const man = (name: string) => men().getByRole('button', { name, exact: true });
  const list = () => stage.page.locator('.job-list');
  const rows = () => list().locator('li').allTextContents();
  const now = () => stage.page.locator('.reading > span').first().textContent();
  const chosenRun = () => stage.page.locator('.run[aria-pressed=true] .name').textContent();

  test('come up for the man who is chosen, each with its time, and go again', async () => {
    await stage.openPage(lighthouse);
    expect(await list().isVisible()).toBe(false);
    await man('3').click();
    await drawn();
    expect(await rows()).toEqual(jobsOf(lighthouse, '3').map(({ text, at }) => (at === undefined ? text : `${text} ${tenths(at)} s`)));
    expect(await man('3').getAttribute('aria-pressed')).toBe('true');
    await man('3').click();
    await drawn();
    expect(await list().isVisible()).toBe(false);
    expect(stage.complaints).toEqual([]);
  });

  test('come up for a man who is clicked on the floor, and come into sight; a defender has none', async () => {
    await stage.page.setViewportSize({ width: 1280, height: 600 });
    await stage.openPage(lighthouse);
    await stage.page.locator('.court [data-body="2"]').click();
    await drawn();
    expect(await man('2').getAttribute('aria-pressed')).toBe('true');
    expect(await list().locator('button').first().isVisible()).toBe(true);
    const box = (await list().locator('button').first().boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(600);
    await stage.page.locator('.court [data-body="X4"]').click({ force: true });
    await drawn();
    expect(await man('2').getAttribute('aria-pressed')).toBe('true');
    await stage.page.setViewportSize({ width: 900, height: 800 });
  });

  test.each([360, 600])('at %d pixels nothing jumps at a click on the floor: a button says where his jobs are and leads there', async (width) => {
    await stage.page.setViewportSize({ width, height: 740 });
    await stage.openPage(lighthouse);
    const below = stage.page.locator('.jobs-below');
    const top = () => stage.page.evaluate(() => scrollY);
    expect(await below.isVisible()).toBe(false);
    await stage.page.locator('.court [data-body="2"]').click();
    await below.waitFor();
    expect(await below.innerText()).toContain('Jobs of 2');
    expect(await top()).toBe(0);
    await stage.page.locator('.court [data-body="3"]').click();
    await expect.poll(() => below.innerText()).toContain('Jobs of 3');
    expect(await accessibilityFaults(stage.page)).toEqual([]);
    await below.click();
    await below.waitFor({ state: 'hidden' });
    const box = (await list().locator('button').first().boundingBox())!;
    expect(box.y).toBeGreaterThan(0);
    expect(box.y + box.height).toBeLessThanOrEqual(740);
    // Back at the floor it is told again, and goes with the man.
    await stage.page.evaluate(() => scrollTo(0, 0));
    await below.waitFor();
    await man('3').evaluate((button: HTMLElement) => button.click());
    await below.waitFor({ state: 'hidden' });
    await stage.page.setViewportSize({ width: 900, height: 800 });
  });

  test('J goes from man to man, Shift J back; his button has the keyboard, and his jobs are in sight at any width', async () => {
    for (const width of [360, 1280]) {
      await stage.page.setViewportSize({ width, height: 740 });
      await stage.openPage(lighthouse);
      for (const [key, who] of [['j', '1'], ['j', '2'], ['J', '1'], ['J', '5'], ['j', '1']] as const) {
        await stage.page.keyboard.press(key === 'J' ? 'Shift+J' : key);
        await expect.poll(() => man(who).getAttribute('aria-pressed')).toBe('true');
        expect(await man(who).evaluate((button) => button === document.activeElement)).toBe(true);
        const box = (await list().locator('button').first().boundingBox())!;
        expect(box.y).toBeGreaterThan(0);
        expect(box.y + box.height).toBeLessThanOrEqual(740);
      }
      await stage.page.keyboard.press('Tab');
      for (let more = 0; more < 4; more++) await stage.page.keyboard.press('Tab');
      await stage.page.keyboard.press('Enter');
      await drawn();
      expect(await list().locator('.marked').textContent()).toContain('Start at the top');
    }
    await stage.page.keyboard.press('?');
    expect(await stage.page.getByRole('dialog').innerText()).toContain('J, Shift J');
    await stage.page.keyboard.press('Escape');
    await stage.page.setViewportSize({ width: 900, height: 800 });
  });

  test('each leads to its moment on the way on which it happens, and he stays lit', async () => {
    await stage.openPage(lighthouse);
    await man('4').click();
    for (const look of ['middle?4.1', 'slip?4.1']) {
      const job = jobsOf(lighthouse, '4').find(({ part }) => part === look)!;
      await list().getByRole('button', { name: job.text }).click();
      await drawn();
      expect(await now()).toBe(tenths(job.at!));
      expect(await chosenRun()).toBe(lighthouse.runs.find(({ id }) => id === job.run)!.label);
      expect(await list().locator('.marked').textContent()).toContain(job.text);
    }
    // A job without a time, such as a place to stay at, leads to its step.
    await list().getByRole('button', { name: 'Stay at right mid-post.' }).click();
    await drawn();
    expect(await now()).toBe(tenths(lighthouse.runs[0]!.events.find(({ kind, part }) => kind === 'open' && part === 'zip')!.at));
  });

  test('the keyboard reaches them, and the man stays chosen from play to play', async () => {
    await stage.openPage([lighthouse, named('Harbour')]);
    await man('5').focus();
    await stage.page.keyboard.press('Enter');
    await drawn();
    await stage.page.keyboard.press('Tab');
    await stage.page.keyboard.press('Tab');
    await stage.page.keyboard.press('Tab');
    await stage.page.keyboard.press('Enter');
    await drawn();
    expect(await now()).toBe(tenths(jobsOf(lighthouse, '5')[2]!.at!));
    await stage.page.keyboard.press('n');
    await expect.poll(rows).toContain('Start at right block.');
    expect(await man('5').getAttribute('aria-pressed')).toBe('true');
  });

  test('in the editor a job that is picked selects its words', async () => {
    await stage.openPanel();
    await stage.tell(show(1, { playback: lighthouse }));
    await man('3').click();
    await list().getByRole('button', { name: 'Catch 1’s pass.' }).first().click();
    await expect.poll(async () => (await stage.heard()).findLast(({ kind }) => kind === 'select')).toMatchObject({ part: 'middle/1.1', place: lighthouse.text['middle/1.1'] });
  });

  test('of a play made before there were any nothing is shown', async () => {
    const { jobs: _, ...older } = lighthouse;
    await stage.openPage(older);
    expect(await stage.page.locator('section.jobs').isVisible()).toBe(false);
    await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await stage.page.locator('.strip').count()).toBe(0);
  });

  test.each([320, 360, 900, 1600])('nothing sticks out, every target is large enough and no fault is found at %d pixels', async (width) => {
    await stage.page.setViewportSize({ width, height: 800 });
    await stage.openPage(withNames);
    await men().getByRole('button').nth(3).click();
    expect(await stage.page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    const small = await stage.page.locator('section.jobs button').evaluateAll((all) => all.map((one) => one.getBoundingClientRect()).filter(({ width: wide, height }) => wide < 24 || height < 24).length);
    expect(small).toBe(0);
    expect(await accessibilityFaults(stage.page)).toEqual([]);
    await stage.page.setViewportSize({ width: 900, height: 800 });
  });

  test('in forced colours the number of the man who is chosen can be read, and the job that is shown is seen', async () => {
    await stage.page.emulateMedia({ forcedColors: 'active' });
    await stage.openPage(lighthouse);
    await man('3').click();
    await list().getByRole('button', { name: 'Catch 1’s pass.' }).first().click();
    await drawn();
    // Without it the browser lays a plate in the page's colour behind the number, which has that colour too.
    expect(await man('3').evaluate((one) => getComputedStyle(one).forcedColorAdjust)).toBe('none');
    expect(await list().locator('.marked button').evaluate((one) => getComputedStyle(one).borderTopWidth)).toBe('2px');
    await stage.page.emulateMedia({ forcedColors: 'none' });
  });

  describe('on paper', () => {
    const wanted = () => stage.page.locator('.on-paper input');
    const print = async (plays: readonly Playback[], options = {}) => {
      await stage.openPage(plays, options);
      await wanted().check();
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    };
    const pages = async () => (await stage.page.pdf({ format: 'A4' })).toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;

    test('five strips on one sheet behind the play’s own, each with his lines, his name and his jobs', async () => {
      await print([withNames]);
      expect(await stage.page.locator('.sheet').evaluateAll((all) => all.map((one) => one.className))).toEqual([expect.stringMatching(/^sheet/), 'sheet jobs']);
      const strips = stage.page.locator('.strip');
      expect(await strips.count()).toBe(5);
      expect(await strips.nth(0).locator('h2').textContent()).toBe('1 WrenLighthouse');
      expect(await strips.nth(2).locator('h3, p').allTextContents()).toEqual(jobsOf(lighthouse, '3').map(({ text, at, head }) => (head === true ? text.replace(/:$/, '') : `${at === undefined ? '' : tenths(at)}${text}`)));
      // 1 dribbles once on the way without a counter; 2 cuts once and passes to nobody.
      expect([await strips.nth(0).locator('.way.dribble').count(), await strips.nth(1).locator('.way.pass').count(), await strips.nth(1).locator('.way.cut').count()]).toEqual([1, 0, 1]);
      expect(await stage.page.evaluate(() => (window as unknown as { hacked?: number }).hacked)).toBeUndefined();
      expect(await pages()).toBe(2);
    });

    test('of a few plays the strips run on, man by man; of many each man has sheets of his own', async () => {
      await print([lighthouse, named('Harbour')]);
      expect(await stage.page.locator('.sheet.jobs').count()).toBe(1);
      expect(await stage.page.locator('.strip h2').allTextContents()).toEqual(['1', '2', '3', '4', '5'].flatMap((who) => [`${who}Lighthouse`, `${who}Harbour`]));
      await print(examples);
      expect(await stage.page.locator('.sheet.jobs h1').allTextContents()).toEqual(['1', '2', '3', '4', '5'].map((who) => `Jobs of ${who}`));
      expect(await stage.page.locator('.sheet.jobs').first().locator('.strip').count()).toBe(examples.length);
    });

    test('of many plays they are printed only when asked for, of a few unless not wanted', async () => {
      const sheets = async () => {
        await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
        return [await stage.page.locator('.sheet:not(.jobs)').count(), await stage.page.locator('.sheet.jobs').count()];
      };
      await stage.openPage(examples);
      expect(await wanted().isChecked()).toBe(false);
      expect(await sheets()).toEqual([examples.length + 1, 0]);
      await wanted().check();
      expect(await sheets()).toEqual([examples.length + 1, 5]);
      await wanted().uncheck();
      expect(await sheets()).toEqual([examples.length + 1, 0]);
      await stage.openPage([lighthouse, named('Harbour')]);
      expect(await wanted().isChecked()).toBe(true);
      expect(await sheets()).toEqual([3, 1]);
    });

    test('is black on white, says from when the seconds count, and no strip is cut in two or wider than the sheet', async () => {
      await print(examples);
      await stage.page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      await stage.page.setViewportSize({ width: 703, height: 1000 });
      const strips = await stage.page.locator('.strip').evaluateAll((all) => all.map((one) => ({ wide: one.scrollWidth <= one.clientWidth, whole: getComputedStyle(one).breakInside, high: one.getBoundingClientRect().height })));
      expect(strips.filter(({ wide, whole, high }) => !wide || whole !== 'avoid' || high > 500)).toEqual([]);
      const colours = await stage.page.locator('.jobs.sheet').first().locator('*').evaluateAll((all) => [...new Set(all.flatMap((one) => { const { color, fill, stroke, backgroundColor } = getComputedStyle(one); return one instanceof SVGElement ? [fill, stroke] : [color, backgroundColor]; }))]);
      expect(colours.filter((colour) => new Set(colour.match(/\d+/g)?.slice(0, 3) ?? []).size > 1)).toEqual([]);
      expect(await stage.page.locator('.jobs.sheet .call').first().textContent()).toContain('after the call or after the hand-over');
      await stage.page.emulateMedia({ media: null, colorScheme: 'light' });
      await stage.page.setViewportSize({ width: 900, height: 800 });
      await print([named('Harbour')]);
      expect(await stage.page.locator('.jobs.sheet .call').textContent()).toBe('Typical seconds after the hand-over. A model’s figures, not a promise: time your own team.');
    });

    test('has its own words in German', async () => {
      await print([lighthouse], { language: 'de', words: german });
      expect(await stage.page.locator('.jobs.sheet h1').textContent()).toBe('Aufgaben der Spieler');
    });
  });
});
