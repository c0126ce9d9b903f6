// A picture that comes after another: what has not changed stays in place, and nothing of the one before is left over.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { examplePlaybacks } from '../support/examples.ts';
import { lighthouse } from '../support/playback-fixture.ts';
import { executable, openStage, show, type Stage } from './player-in-browser.ts';

describe.skipIf(executable === undefined && !process.env.CI)('a picture after another', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage?.close());

  const shown = async (seq: number, playback: object) => {
    await stage.tell(show(seq, { playback }));
    await expect.poll(() => stage.page.evaluate(() => document.documentElement.dataset.seq)).toBe(String(seq));
  };
  /** Everything that is made anew for a picture, as it stands in the page. */
  const asItStands = () =>
    stage.page.evaluate(() =>
      ['.run-list', '.lanes', '.finding-list', '.told-list', '.ways-layer', '.label-layer'].map((part) =>
        [...document.querySelectorAll(`${part} *`)].map((one) => {
          const attributes = [...one.attributes].map(({ name, value }) => `${name}=${name === 'class' ? value.split(' ').toSorted().join(' ') : value}`).filter((text) => !/^(class|style)=$/.test(text));
          return [one.tagName, one.children.length === 0 ? one.textContent : '', ...attributes.toSorted()].join(' | ');
        })));

  test('is the one that would have come first, from any example to any other', async () => {
    const plays = examplePlaybacks().filter((_, i) => i % 5 === 0);
    const first: string[][][] = [];
    for (const playback of plays) {
      await stage.openPanel();
      await shown(1, playback);
      first.push(await asItStands());
    }
    expect(plays.length).toBeGreaterThan(5);
    await stage.openPanel();
    let seq = 0;
    for (const step of [1, 3, 5]) {
      for (let at = 0; at < plays.length; at++) {
        const i = (at * step) % plays.length;
        await shown(++seq, plays[i]!);
        expect(await asItStands(), plays[i]!.play.name).toEqual(first[i]);
      }
    }
    expect(stage.complaints).toEqual([]);
  });

  test('keeps the rows whose words are the same, with what they are asked to do', async () => {
    await stage.openPanel();
    await shown(1, lighthouse);
    const parts = ['.run', '.mark', '.told-list li', '.ways-layer > g', '.tick', '.step'];
    await stage.page.evaluate((all) => all.forEach((part) => document.querySelectorAll(part).forEach((one) => Object.assign(one, { was: true }))), parts);
    const later = { ...lighthouse, told: lighthouse.told.map((one, i) => (i === 1 ? { ...one, text: 'Something else is told.' } : one)) };
    await shown(2, later);
    const anew = () => stage.page.evaluate((all) => all.map((part) => [...document.querySelectorAll(part)].filter((one) => !('was' in one)).length), parts);
    expect(await anew()).toEqual([0, 0, 1, 0, 0, 0]);
    await stage.page.locator('.mark.bar').first().click();
    await expect.poll(async () => (await stage.heard()).findLast(({ kind }) => kind === 'select')).toBeDefined();
  });
});
