// What stands on the lanes can be read: in every run-through of every example, on a phone, in half a window and in a whole one.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { examplePlaybacks } from '../support/examples.ts';
import { executable, openStage, type Stage } from './player-in-browser.ts';

const widths = [360, 900, 1600];
const plays = examplePlaybacks();

describe.skipIf(executable === undefined && !process.env.CI)('the lanes', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage?.close());

  test.each(widths)('at %i pixels no look covers a bar’s words, nothing goes past the end or out of the page, no name is torn to a letter, no figure lies on another or under the time mark', async (width) => {
    await stage.page.setViewportSize({ width, height: 800 });
    await stage.openPage(plays);
    const faults: string[] = [];
    for (const [i, { play, runs }] of plays.entries()) {
      await stage.page.locator('.plays select').selectOption(String(i));
      for (let run = 0; run < runs.length; run++) {
        await stage.page.locator('.run').nth(run).click();
        faults.push(...(await stage.page.evaluate(faultsOnLanes)).map((fault) => `${play.name}, run-through ${run + 1}: ${fault}`));
      }
    }
    expect(plays.length).toBeGreaterThan(20);
    expect(faults).toEqual([]);
    expect(stage.complaints).toEqual([]);
  });
});

/** Runs in the page. */
function faultsOnLanes(): string[] {
  const faults: string[] = [];
  const boxOf = (element: Element) => element.getBoundingClientRect();
  /** What is seen of an element's words: cut off where a box around them ends. */
  const wordsSeen = (element: Element) => {
    const range = document.createRange();
    range.selectNodeContents(element);
    const words = range.getBoundingClientRect();
    const around = [...element.querySelectorAll('span:not(.edge)')].map(boxOf).filter((box) => box.width > 0).concat(boxOf(element));
    return { left: Math.max(words.left, ...around.map(({ left }) => left)), right: Math.min(words.right, ...around.map(({ right }) => right)), cut: words.right > Math.min(...around.map(({ right }) => right)) + 1 };
  };
  for (const track of document.querySelectorAll('.lane .track')) {
    const end = boxOf(track).right;
    const looks = [...track.querySelectorAll('.point.look')].map((look) => (boxOf(look).left + boxOf(look).right) / 2);
    for (const bar of track.querySelectorAll('.bar')) {
      const name = bar.getAttribute('aria-label') ?? '';
      if (boxOf(bar).right > end + 0.5) faults.push(`“${name}” goes ${(boxOf(bar).right - end).toFixed(1)} px past the end`);
      if (bar.matches('.pass, .shot, .hand-off') || bar.textContent === '') continue;
      const { left, right } = wordsSeen(bar);
      if (right - left < 1) continue;
      for (const look of looks) if (look + 9 > left && look - 9 < right) faults.push(`a look lies on the words of “${name}”`);
    }
  }
  for (const point of document.querySelectorAll('.lane .point')) if (boxOf(point).right > document.documentElement.clientWidth) faults.push(`“${point.getAttribute('aria-label')}” sticks out ${(boxOf(point).right - document.documentElement.clientWidth).toFixed(1)} px`);
  for (const step of document.querySelectorAll('.steps > *')) {
    const { left, right, cut } = wordsSeen(step);
    if (cut && right > left && (right - left < 28 || step.matches('.set-up'))) faults.push(`only ${(right - left).toFixed(0)} px of “${step.textContent}” are shown`);
  }
  const needle = document.querySelector('.needle')!;
  const markTop = boxOf(needle).top + Math.min(0, parseFloat(getComputedStyle(needle, '::before').top));
  for (const figure of document.querySelectorAll('.clock-row .tick')) if (boxOf(figure).bottom > markTop) faults.push(`the time mark lies on “${figure.textContent}” when it stands there`);
  const figures = [...document.querySelectorAll('.clock-row .who, .clock-row .tick')].map((figure) => ({ words: figure.textContent, ...wordsSeen(figure) })).toSorted((a, b) => a.left - b.left);
  for (const [i, figure] of figures.entries()) {
    const next = figures[i + 1];
    if (next !== undefined && next.left < figure.right + 3) faults.push(`“${figure.words}” and “${next.words}” are ${(next.left - figure.right).toFixed(1)} px apart`);
  }
  return faults;
}
