import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ON_ITS_SIDE } from '../../client/preview/turning.ts';
import { widthOf, viewOf } from '../../language/picture/view.ts';
import { at } from '../../language/playback/at.ts';
import { examplePlaybacks } from '../support/examples.ts';
import { executable, handsOn, openStage, show, type Stage } from './player-in-browser.ts';

const whole = examplePlaybacks().find(({ play }) => play.name === 'Breakwater')!;
const low = { width: 1600, height: 600 };

describe.skipIf(executable === undefined && !process.env.CI)('the whole court on a wide, low screen', () => {
  let stage: Stage;
  beforeAll(async () => {
    stage = await openStage();
  });
  afterAll(() => stage?.close());
  const { seek, drawn, seqShown } = handsOn(() => stage);

  /** Pixels a centimetre, and where a place of the floor is on the screen. */
  const floorAt = (x: number, y: number) =>
    stage.page.locator('.court').evaluate((court: SVGSVGElement, [dx, dy]) => {
      const matrix = court.getScreenCTM()!;
      const { x: left, y: top } = new DOMPoint(dx, dy).matrixTransform(matrix);
      return { left, top, scale: matrix.a };
    }, ON_ITS_SIDE.toDrawn([x * 100, y * 100]));

  test('is drawn half as large again as it would be upright', async () => {
    await stage.page.setViewportSize(low);
    await stage.openPage(whole);
    await drawn();
    const { width, height } = (await stage.page.locator('.court').boundingBox())!;
    const { scale } = await floorAt(0, 0);
    expect(width).toBeGreaterThan(height);
    const { top, bottom } = viewOf(whole);
    expect(scale).toBeGreaterThan(1.5 * Math.min(height / (bottom - top), low.width / widthOf(viewOf(whole))));
  });

  test('keeps numbers upright, each man and the ball where he is, and every label on the floor and on nobody', async () => {
    await stage.page.setViewportSize(low);
    await stage.openPage(whole);
    for (const t of [0, 2500, 5600, 8000]) {
      await seek(t);
      await drawn();
      for (const { id, x, y } of at(whole, 0, t)!.bodies) {
        const number = await stage.page.locator(`g[data-body="${id}"] text`).evaluate((text: SVGTextElement) => {
          const { a, b } = text.getScreenCTM()!;
          const box = text.getBoundingClientRect();
          return { a, b, x: box.left + box.width / 2, y: box.top + box.height / 2 };
        });
        expect(number.a, `${id} at ${t}`).toBeGreaterThan(0);
        expect(number.b).toBeCloseTo(0);
        const there = await floorAt(x, y);
        expect(Math.hypot(number.x - there.left, number.y - there.top)).toBeLessThan(4);
      }
      const over = await stage.page.evaluate(() => {
        const box = (element: Element) => element.getBoundingClientRect();
        const court = box(document.querySelector('.court')!);
        const labels = [...document.querySelectorAll('.court .label')].map(box);
        const discs = [...document.querySelectorAll('.court .body:not([visibility]) .number')].map(box);
        return labels.filter((one) => one.left < court.left || one.right > court.right || one.top < court.top || one.bottom > court.bottom || discs.some((disc) => disc.left < one.right && disc.right > one.left && disc.top < one.bottom && disc.bottom > one.top)).length;
      });
      expect(over).toBe(0);
    }
  });

  test('stands upright again in a high window, and lies down for the team', async () => {
    const lies = async () => {
      await drawn();
      const [, , width, height] = (await stage.page.locator('.court').getAttribute('viewBox'))!.split(' ').map(Number);
      return width! > height!;
    };
    await stage.page.setViewportSize({ width: 900, height: 800 });
    await stage.openPage(whole);
    expect(await lies()).toBe(false);
    await stage.page.keyboard.press('f');
    await expect.poll(lies).toBe(true);
    await stage.page.keyboard.press('Escape');
    await expect.poll(lies).toBe(false);
    await stage.page.setViewportSize(low);
    await expect.poll(lies).toBe(true);
  });

  test('a hand means the place under it, and arrow keys go where they point', async () => {
    type Asked = { readonly intent: { readonly kind: string; readonly to: { readonly x: number; readonly y: number } } };
    const asked = async () => ((await stage.heard()).filter(({ kind }) => kind === 'intent') as unknown as readonly Asked[]).at(-1)?.intent;
    await stage.page.setViewportSize(low);
    await stage.openPanel();
    await stage.tell(show(1, { title: 'Breakwater', playback: whole }));
    await expect.poll(seqShown).toBe('1');
    await drawn();
    const start = whole.runs[0]!.tracks['1']!.start;
    const from = await floorAt(start.x, start.y);
    const to = await floorAt(start.x - 2, start.y - 3);
    // To the basket is to the right, the offence's left is up.
    expect(to.left).toBeGreaterThan(from.left);
    expect(to.top).toBeLessThan(from.top);
    await stage.page.mouse.move(from.left, from.top);
    await stage.page.mouse.down();
    await stage.page.mouse.move(to.left, to.top, { steps: 4 });
    await stage.page.mouse.up();
    await expect.poll(async () => (await asked())?.to.x).toBeCloseTo(start.x - 2, 1);
    expect((await asked())!.to.y).toBeCloseTo(start.y - 3, 1);
    await stage.tell({ v: 1, kind: 'outcome', id: ((await stage.heard()).findLast(({ kind }) => kind === 'intent') as { readonly id?: number }).id, refused: 'No.' });
    await stage.page.locator('.handle[data-handle="start 1"]').press('Enter');
    await stage.page.keyboard.press('ArrowRight');
    // Nearer to the basket.
    await expect.poll(async () => (await asked())?.to).toEqual({ x: start.x, y: expect.closeTo(start.y - 0.3, 1) });
  });
});
