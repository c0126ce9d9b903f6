import { readFileSync } from 'node:fs';
import { viewOf } from '../../language/picture/view.ts';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Playback } from '../../language/playback/playback.ts';
import { tenths } from '../../client/preview/words.ts';
import { examplePlaybacks } from '../support/examples.ts';
import { hostile, lighthouse } from '../support/playback-fixture.ts';
import { accessibilityFaults, executable, handsOn, openStage, type Stage } from './player-in-browser.ts';

function named(name: string, key: string): Playback {
  return { ...lighthouse, play: { ...lighthouse.play, name, key } };
}
/** Without the strips that are handed to the players: jobs.e2e.test.ts is about those. */
const withoutJobs = ({ jobs: _, ...playback }: Playback): Playback => playback;
const german = JSON.parse(readFileSync('l10n/bundle.l10n.de.json', 'utf8')) as Readonly<Record<string, string>>;
const book = [lighthouse, named('Harbour', 'play:harbour'), named('Harbour', 'play:harbour'), hostile('<img src=x onerror="window.hacked=1">')];

describe.skipIf(executable === undefined && !process.env.CI)('a page of several plays', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  beforeEach(() => stage.asOpened());
  afterAll(() => stage?.close());
  const { seek } = handsOn(() => stage);

  const heading = () => stage.page.locator('h1').first().textContent();
  const address = () => stage.page.evaluate(() => location.hash);
  const list = () => stage.page.getByRole('combobox', { name: 'Play', exact: true });

  test('a page of one has no list', async () => {
    await stage.openPage(lighthouse);
    expect(await stage.page.locator('.plays').isVisible()).toBe(false);
    await stage.page.keyboard.press('n');
    expect(await address()).toBe('');
  });

  test('goes from play to play by list, by button, by key and by the browser’s own way back', async () => {
    await stage.openPage(book);
    expect(await heading()).toBe('Lighthouse');
    await list().selectOption('1');
    // The address changes at once, and the page follows when the browser tells it.
    await expect.poll(async () => [await heading(), await address(), await list().inputValue()]).toEqual(['Harbour', '#harbour', '1']);
    await stage.page.getByRole('button', { name: 'Next play' }).click();
    await expect.poll(async () => [await address(), await list().inputValue()]).toEqual(['#harbour-2', '2']);
    await stage.page.keyboard.press('p');
    await expect.poll(async () => [await address(), await list().inputValue()]).toEqual(['#harbour', '1']);
    await stage.page.goBack();
    await expect.poll(() => list().inputValue()).toBe('2');
    expect(stage.complaints).toEqual([]);
    expect(stage.requests.filter((url) => !url.startsWith('file:'))).toEqual([]);
  });

  test('another play starts at its beginning, at the speed that was chosen', async () => {
    await stage.openPage(book);
    await seek(5000);
    await stage.page.getByRole('combobox', { name: 'Speed' }).selectOption('0.5');
    await stage.page.keyboard.press('n');
    await expect.poll(heading).toBe('Harbour');
    expect(await stage.page.locator('.reading > span').first().textContent()).toBe('0.0');
    expect(await stage.page.getByRole('combobox', { name: 'Speed' }).inputValue()).toBe('0.5');
  });

  // 320: WCAG 2.2, 1.4.10, a page of 1,280 pixels enlarged four times.
  test.each([320, 360, 900, 1600])('nothing sticks out at %d pixels, and every target is large enough for a finger', async (width) => {
    await stage.page.setViewportSize({ width, height: 800 });
    await stage.openPage(book);
    expect(await stage.page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    // A mark on a lane is as long as its time; the same words can be picked in the told play.
    const small = await stage.page.locator('button:visible:not(.mark), select:visible, input:visible, summary:visible').evaluateAll((targets) =>
      targets.map((target) => ({ target: target.outerHTML.slice(0, 80), box: target.getBoundingClientRect() })).filter(({ box }) => box.width < 24 || box.height < 24).map(({ target, box }) => `${target} ${box.width}x${box.height}`),
    );
    expect(small).toEqual([]);
    expect(await accessibilityFaults(stage.page)).toEqual([]);
  });

  describe('the call sheet', () => {
    const dialog = () => stage.page.getByRole('dialog', { name: 'Call sheet' });
    const heads = () => dialog().locator('h3').allTextContents();
    const under = (head: RegExp) => dialog().locator('h3', { hasText: head }).locator('+ ul .name').allTextContents();
    const examples = examplePlaybacks();
    const needs = (name: string) => examples.find(({ play }) => play.name === name)!.times;

    test('lists every play under its section, and leads to the one that is chosen', async () => {
      await stage.openPage(examples, { sections: examples.map((_, i) => (i < 2 ? 'Last shot' : 'The rest')) });
      await stage.page.getByRole('button', { name: /^Call sheet/ }).click();
      expect(await heads()).toEqual(['Last shot', 'The rest']);
      expect(await dialog().locator('.name').allTextContents()).toEqual(examples.map(({ play }) => play.name));
      expect(await dialog().locator('li', { hasText: 'Channel' }).locator('.needs').textContent()).toBe('no look');
      await dialog().getByRole('button', { name: /^Harbour/ }).click();
      expect(await dialog().isVisible()).toBe(false);
      await expect.poll(heading).toBe('Harbour');
    });

    test('says what still fits with so many seconds left, the quickest first, and what more fits a team in its places', async () => {
      await stage.openPage(examples);
      await stage.page.keyboard.press('c');
      await stage.page.keyboard.type('11');
      expect(await heads()).toEqual([/^Time for every look/, /^Time for the first looks/, /^Too late/].map((words) => expect.stringMatching(words)));
      const [every, first, late] = [await under(/^Time for every/), await under(/^Time for the first/), await under(/^Too late/)];
      for (const name of every) expect(needs(name).allLooks!.fromCall).toBeLessThanOrEqual(11);
      for (const name of first) expect([needs(name).firstLook!.fromCall <= 11, needs(name).allLooks!.fromCall > 11], name).toEqual([true, true]);
      for (const name of late) expect(needs(name).firstLook!.fromCall).toBeGreaterThan(11);
      expect(every.length + first.length + late.length).toBe(examples.filter(({ times }) => times.firstLook !== undefined).length);
      const times = every.map((name) => needs(name).firstLook!.fromCall);
      expect(times).toEqual([...times].sort((a, b) => a - b));
      await dialog().getByLabel('Already in place').check();
      expect((await under(/^Too late/)).length).toBeLessThan(late.length);
      await stage.page.keyboard.press('Escape');
      expect(await dialog().isVisible()).toBe(false);
    });

    test('shows an answer from its top, however far down the list was read', async () => {
      await stage.openPage(examples);
      await stage.page.keyboard.press('c');
      await dialog().evaluate((box) => box.scrollTo(0, 900));
      await stage.page.keyboard.type('8');
      expect(await dialog().evaluate((box) => box.scrollTop)).toBe(0);
    });

    test.each([320, 900])('has no fault that a checker of accessibility finds, and nothing sticks out, at %d pixels', async (width) => {
      await stage.page.setViewportSize({ width, height: 800 });
      await stage.openPage(examples);
      await stage.page.keyboard.press('c');
      expect(await dialog().evaluate((box) => box.scrollWidth <= box.clientWidth)).toBe(true);
      expect(await accessibilityFaults(stage.page)).toEqual([]);
    });

    test('is not there where there is one play', async () => {
      await stage.openPage(lighthouse);
      await stage.page.keyboard.press('c');
      expect(await dialog().isVisible()).toBe(false);
    });
  });

  describe('on paper', () => {
    test('is the call sheet and a sheet a play, each on a page of its own, black on white whatever the screen is', async () => {
      await stage.page.emulateMedia({ media: null, colorScheme: 'dark' });
      await stage.openPage(book);
      const pdf = await stage.page.pdf({ format: 'A4' });
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1 + book.length);
      await stage.page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      expect(await stage.page.locator('.player').isVisible()).toBe(false);
      const sheets = stage.page.locator('.sheet');
      expect(await sheets.count()).toBe(1 + book.length);
      const seen = await stage.page.locator('.paper').locator('*').evaluateAll((all) => [...new Set(all.flatMap((one) => { const { color, fill, stroke, backgroundColor } = getComputedStyle(one); return one instanceof SVGElement ? [fill, stroke] : [color, backgroundColor]; }))]);
      const coloured = seen.filter((colour) => { const parts = colour.match(/\d+/g)?.slice(0, 3) ?? []; return new Set(parts).size > 1; });
      expect(coloured).toEqual([]);
      expect(await stage.page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)');
    });

    test('shows every step with its picture and words, the times, and when to call it', async () => {
      await stage.openPage(lighthouse);
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await stage.page.emulateMedia({ media: 'print' });
      const sheet = stage.page.locator('.sheet');
      expect(await sheet.locator('.frames li').count()).toBe(lighthouse.steps.length);
      expect(await sheet.locator('.frames svg').count()).toBe(lighthouse.steps.length);
      for (const { text, untimed = text } of lighthouse.told.filter(({ part }) => part !== undefined)) expect(await sheet.textContent()).toContain(untimed.replace(/:$/, ''));
      expect(await sheet.locator('tbody tr').count()).toBe(lighthouse.runs.length);
    });

    test('of several plays has the call sheet on top: each play with its number, its times and its looks, under the sections of the book', async () => {
      const examples = examplePlaybacks();
      const sections = examples.map((_, i) => (i < 2 ? 'Last shot' : 'The rest'));
      await stage.openPage(examples, { sections, title: 'Heron Bay U14' });
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      expect(await stage.page.locator('.calls .facts').textContent()).toBe('Heron Bay U14');
      expect(await stage.page.locator('.calls .section').allTextContents()).toEqual(['Last shot', 'The rest']);
      const plays = await stage.page.locator('.calls .play').evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
      expect(plays.map(([number, name]) => [number, name])).toEqual(examples.map(({ play }, i) => [String(i + 1), play.name]));
      const { times, runs } = examples[0]!;
      expect(plays[0]!.slice(2)).toEqual([...[times.firstLook?.fromCall, times.allLooks?.fromCall, times.firstLook?.alreadySet, times.allLooks?.alreadySet].map(String), runs.filter(({ look }) => look !== undefined).map(({ label }) => label).join('; ')]);
      expect(plays[examples.findIndex(({ times }) => times.firstLook === undefined)]!.slice(2)).toEqual(['–', '–', '–', '–', '']);
      expect(await stage.page.locator('.sheet:not(.calls) .facts').nth(2).textContent()).toContain('Sheet 3');
    });

    test('of plays that are in no section says so once others are in one, on the screen too', async () => {
      await stage.openPage(book, { sections: ['Last shot', undefined, undefined, 'Zone'] });
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      expect(await stage.page.locator('.calls .section').allTextContents()).toEqual(['Last shot', 'Other plays', 'Zone']);
      expect(await list().locator('optgroup').evaluateAll((all) => all.map((group) => [group.getAttribute('label'), group.childElementCount]))).toEqual([['Last shot', 1], ['Other plays', 2], ['Zone', 1]]);
      await stage.page.keyboard.press('c');
      expect(await stage.page.getByRole('dialog', { name: 'Call sheet' }).locator('h3').allTextContents()).toEqual(['Last shot', 'Other plays', 'Zone']);
    });

    test('a section’s head is a table’s, which a browser prints again over a page break, and its columns stand below the heads of the sheet', async () => {
      const examples = examplePlaybacks();
      await stage.openPage(examples, { sections: examples.map((_, i) => (i < 2 ? 'Last shot' : 'The rest')) });
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await stage.page.emulateMedia({ media: 'print' });
      expect(await stage.page.locator('.calls tbody table > thead > tr.section').count()).toBe(2);
      const lefts = (row: string) => stage.page.locator(row).evaluateAll((rows) => rows.map((one) => [...one.children].map((cell) => Math.round(cell.getBoundingClientRect().left))));
      const [heads] = await lefts('.calls > table > thead > tr:last-child');
      expect(heads).toHaveLength(7);
      for (const row of await lefts('.calls .play')) expect(row).toEqual(heads);
      await stage.page.emulateMedia({ media: null });
    });

    test.each(['en', 'de'])('the call sheet breaks no word, and nothing sticks out, whatever the names and the heads are (%s)', async (language) => {
      const examples = [...examplePlaybacks(), named('A play whose name has as many letters as anybody would ever give it, and more', 'play:long'), named('Averyveryveryverylongnamewithoutanyblankinitatallthatneverends', 'play:longer')];
      await stage.openPage(examples, { language, sections: examples.map(({ play }, i) => (i % 3 === 2 ? undefined : play.name)), ...(language === 'de' && { words: german }) });
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      // 703 pixels are what A4 has between its margins.
      await stage.page.setViewportSize({ width: 703, height: 1000 });
      await stage.page.emulateMedia({ media: 'print' });
      const table = stage.page.locator('.calls > table');
      expect(await table.evaluate((one) => one.scrollWidth <= one.parentElement!.clientWidth)).toBe(true);
      const broken = await table.evaluate((one) => {
        const words: string[] = [];
        const walker = document.createTreeWalker(one, NodeFilter.SHOW_TEXT);
        for (let text = walker.nextNode(); text !== null; text = walker.nextNode()) {
          for (const { index, 0: word } of text.textContent!.matchAll(/\S+/g)) {
            const range = document.createRange();
            range.setStart(text, index);
            range.setEnd(text, index + word.length);
            if (new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size > 1) words.push(word);
          }
        }
        return words;
      });
      expect(broken.filter((word) => !word.startsWith('Averyvery'))).toEqual([]);
    });

    test('of one play has no call sheet', async () => {
      await stage.openPage(lighthouse);
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      expect(await stage.page.locator('.calls').count()).toBe(0);
      expect(await stage.page.locator('.sheet .facts').textContent()).not.toContain('Sheet');
    });

    test('tells each time once, and against which defence', async () => {
      const written = examplePlaybacks().find(({ play }) => play.name === 'Lighthouse')!;
      await stage.openPage(written);
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      const words = (await stage.page.locator('.sheet:not(.jobs)').textContent())!;
      for (const { typical } of written.times.looks) expect(words.split(`${tenths(typical)} s`).length - 1, words).toBe(written.times.looks.filter((look) => tenths(look.typical) === tenths(typical)).length);
      expect(words).not.toContain('typically');
      expect(await stage.page.locator('.sheet .facts').textContent()).toContain('against\u00a0man');
    });

    test.each(['A4', 'Letter'])('every example fits on one sheet of %s, its pictures at least 5 cm wide', async (format) => {
      const examples = examplePlaybacks().map(withoutJobs);
      await stage.openPage(examples);
      const pdf = await stage.page.pdf({ format });
      // The call sheet of so many plays goes over onto a second page.
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(2 + examples.length);
      // 703 pixels are what A4 has between its margins.
      await stage.page.setViewportSize({ width: 703, height: 1000 });
      await stage.page.emulateMedia({ media: 'print' });
      for (const name of ['Lighthouse', 'Harbour']) {
        const { width } = (await stage.page.locator('.sheet', { has: stage.page.locator('h1', { hasText: new RegExp(`^${name}$`) }) }).locator('.frames svg').first().boundingBox())!;
        expect(width).toBeGreaterThan(290);
      }
    });

    test.each(['A4', 'Letter'])('a play on the whole court fits on one sheet of %s held sideways', async (format) => {
      const long = examplePlaybacks().filter((playback) => viewOf(playback).full).map(withoutJobs);
      expect(long.length).toBeGreaterThan(1);
      await stage.openPage(long);
      const pdf = await stage.page.pdf({ format, landscape: true });
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1 + long.length);
    });

    test('every text of a play stays text', async () => {
      await stage.openPage(book);
      await stage.page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      expect(await stage.page.locator('.paper img').count()).toBe(0);
      expect(await stage.page.evaluate(() => (window as unknown as { hacked?: number }).hacked)).toBeUndefined();
    });
  });
});
