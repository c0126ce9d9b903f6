import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { at, momentOf, type Moment } from '../../language/playback/at.ts';
import { anyPlayback } from '../support/any-playback.ts';
import { lighthouse } from '../support/playback-fixture.ts';

const FASTEST = 5.3; // m/s: the fixture's legs
const CARELESS = 0.003; // whole millimetres along a bent way

const everyStep = (end: number, step: number) => Array.from({ length: Math.ceil(end / step) + 1 }, (_, i) => Math.min(end, i * step));

describe('a moment of a play', () => {
  it('nobody jumps: in any 20 ms a man goes no farther than his legs carry him', () => {
    fc.assert(
      fc.property(anyPlayback, (playback) => {
        const run = playback.runs[0]!;
        let before: Moment | undefined;
        for (const t of everyStep(run.end, 20)) {
          const now = momentOf(playback, run, t);
          for (const body of now.bodies.filter(({ id }) => !id.startsWith('X'))) {
            const was = before?.bodies.find(({ id }) => id === body.id) ?? body;
            expect(Math.hypot(body.x - was.x, body.y - was.y)).toBeLessThanOrEqual(FASTEST * 0.02 + CARELESS);
          }
          before = now;
        }
      }),
      { numRuns: 40 },
    );
  });

  it('the ball is in one place and never jumps, not even where a pass becomes a catch', () => {
    fc.assert(
      fc.property(anyPlayback, (playback) => {
        const run = playback.runs[0]!;
        for (const state of run.ball) {
          const [last, first] = [momentOf(playback, run, state.t0 - 0.001).ball!, momentOf(playback, run, state.t0).ball!];
          expect(Math.hypot(first.x - last.x, first.y - last.y)).toBeLessThan(0.02);
          expect(Math.abs(first.z - last.z)).toBeLessThan(0.05);
        }
        for (const t of everyStep(run.end, 50)) {
          const { ball, bodies } = momentOf(playback, run, t);
          expect(ball).toBeDefined();
          const holder = bodies.find(({ id }) => id === ball!.holder);
          if (holder !== undefined) expect([ball!.x, ball!.y]).toEqual([holder.x, holder.y]);
          else expect(['passed', 'shot']).toContain(ball!.state);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('seeking and playing agree: the order in which moments are asked for changes nothing', () => {
    fc.assert(
      fc.property(anyPlayback, fc.array(fc.double({ min: 0, max: 30_000, noNaN: true }), { minLength: 1, maxLength: 20 }), (playback, times) => {
        const played = times.toSorted((a, b) => a - b).map((t): [number, Moment] => [t, at(playback, 0, t)]);
        for (const t of times) expect(at(playback, 'only', t)).toEqual(played.find(([when]) => when === t)![1]);
      }),
      { numRuns: 60 },
    );
  });

  it('no one stands on nothing: every number is finite, whatever time is asked for', () => {
    fc.assert(
      fc.property(anyPlayback, fc.oneof(fc.double(), fc.integer(), fc.constantFrom(NaN, Infinity, -Infinity)), (playback, t) => {
        const moment = at(playback, 0, t);
        expect(moment.t).toBeGreaterThanOrEqual(0);
        expect(moment.t).toBeLessThanOrEqual(playback.runs[0]!.end);
        for (const { x, y, facing } of moment.bodies) expect([x, y, facing].every(Number.isFinite)).toBe(true);
        expect([moment.ball!.x, moment.ball!.y, moment.ball!.z].every(Number.isFinite)).toBe(true);
      }),
    );
  });

  it('names what goes on: the dribble, the cut off the screen, the screener who stands', () => {
    const moment = at(lighthouse, 0, 4000);
    expect(moment.actions).toEqual(['zip/1.1', 'zip/2.1', 'zip/3.1', 'zip/5.1']);
    expect(moment.ball).toMatchObject({ state: 'dribbled', holder: '1' });
    expect(moment.bodies.find(({ id }) => id === '5')).toMatchObject({ moving: false, action: 'zip/5.1' });
    expect(moment.bodies.find(({ id }) => id === '3')).toMatchObject({ moving: true });
  });

  it('a shot ends in the ring', () => {
    const { ball } = at(lighthouse, 'middle?4.1', Infinity);
    expect(ball).toMatchObject({ x: 0, y: 0, state: 'shot', z: 3.05 });
  });

  it('a run that an edit took away shows the first one, and a play without runs an empty floor', () => {
    expect(at(lighthouse, 'gone?3.1', 4000)).toEqual(at(lighthouse, 0, 4000));
    expect(at({ ...lighthouse, runs: [] }, 0, 4000)).toEqual({ t: 0, bodies: [], ball: undefined, actions: [] });
  });
});
