import { describe, expect, it } from 'vitest';
import { drawnView, ON_ITS_SIDE, turningFor, UPRIGHT } from '../../client/preview/turning.ts';
import { viewOf } from '../../language/picture/view.ts';
import { examplePlaybacks } from '../support/examples.ts';
import { lighthouse } from '../support/playback-fixture.ts';

const whole = viewOf(examplePlaybacks().find(({ play }) => play.name === 'Breakwater')!);
const half = viewOf(lighthouse);

describe('the whole court', () => {
  it.each([
    [{ width: 1600, height: 600, team: false }, 'on its side'],
    [{ width: 1280, height: 640, team: true }, 'on its side'],
    [{ width: 740, height: 360, team: true }, 'on its side'],
    [{ width: 1600, height: 1000, team: false }, 'upright'],
    [{ width: 900, height: 800, team: false }, 'upright'],
    [{ width: 360, height: 740, team: false }, 'upright'],
    [{ width: 360, height: 740, team: true }, 'upright'],
  ])('in %o lies %s', (screen, how) => {
    expect(turningFor(whole, screen) === ON_ITS_SIDE ? 'on its side' : 'upright').toBe(how);
  });

  it('has the basket attacked at the right and the offence’s left above', () => {
    const { left, right, top, bottom } = drawnView(whole, ON_ITS_SIDE);
    expect(right - left).toBeCloseTo(whole.bottom - whole.top);
    expect(bottom - top).toBeCloseTo(whole.right - whole.left);
    const [rim] = ON_ITS_SIDE.toDrawn([0, 0]);
    expect(right - rim).toBeLessThan(rim - left);
    expect(ON_ITS_SIDE.toDrawn([-600, 0])[1]).toBeLessThan(ON_ITS_SIDE.toDrawn([600, 0])[1]);
  });

  it('gives every place back where it was', () => {
    expect(ON_ITS_SIDE.toUpright(ON_ITS_SIDE.toDrawn([123, -45]))).toEqual([123, -45]);
  });
});

it('half a court stands upright on every screen', () => {
  expect(turningFor(half, { width: 2000, height: 400, team: true })).toBe(UPRIGHT);
});
