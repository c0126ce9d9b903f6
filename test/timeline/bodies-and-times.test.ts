import { describe, expect, it } from 'vitest';
import { distance } from '../../language/court/point.ts';
import { LEVELS, levelIds } from '../../language/motion/levels.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { why } from '../../language/timeline/why.ts';
import { codesOf, eventNamed, lighthouse, playText, runNamed, timelineOf } from '../support/timeline-of.ts';

const room = 2 * LEVELS.u14.bodyRadius;

function nearest(run: Run, a: '1' | '2' | '3' | '4' | '5', b: '1' | '2' | '3' | '4' | '5'): number {
  let gap = Number.POSITIVE_INFINITY;
  for (let t = 0; t <= run.end; t += 20) gap = Math.min(gap, distance(trackAt(run.tracks[a]!, t), trackAt(run.tracks[b]!, t)));
  return gap;
}

describe('rules 20 to 23: bodies on the floor', () => {
  it('a cutter goes round a man who stands in his way', () => {
    const timeline = timelineOf(playText('from 1 top, 2 right corner, 3 left block, 4 nail, 5 left wing', 'step "Go"', '  1 passes to 2', '  1 cuts to rim'));
    expect(codesOf(timeline)).toEqual([]);
    expect(nearest(timeline.runs[0]!, '1', '4')).toBeGreaterThanOrEqual(room);
  });

  it('two sent to one spot: the later stops a body away, and that is told', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to rim', '  1 second later, 3 cuts to rim'));
    expect(codesOf(timeline)).toEqual(['spot-taken']);
    expect(nearest(timeline.runs[0]!, '2', '3')).toBeGreaterThanOrEqual(room - 0.01);
  });

  it('a filler arriving as the cutter leaves is no crowd', () => {
    const timeline = timelineOf(playText('from 5-out', 'step "Go"', '  1 passes to 2', '  1 cuts to rim', '  3 fills for 1', '  5 fills for 3'));
    expect(codesOf(timeline)).toEqual([]);
    const run = timeline.runs[0]!;
    expect(trackAt(run.tracks['3']!, run.end)).toEqual(run.tracks['1']!.start);
    expect(trackAt(run.tracks['5']!, run.end)).toEqual(run.tracks['3']!.start);
  });

  it('two who change places pass each other, and each takes the other’s spot', () => {
    const places = [['from 1-4 low', '  2 cuts to left corner', '  3 cuts to right corner'], ['from 5-out', '  2 cuts to top', '  1 cuts to right wing', '  4 passes to 5']] as const;
    for (const [from, ...lines] of places) {
      const timeline = timelineOf(playText(`${from}, ball with 4`, 'step "Go"', ...lines));
      expect(codesOf(timeline)).toEqual([]);
      const run = timeline.runs[0]!;
      const [a, b] = from === 'from 1-4 low' ? (['2', '3'] as const) : (['1', '2'] as const);
      expect(nearest(run, a, b)).toBeGreaterThanOrEqual(room - 0.01);
      expect(trackAt(run.tracks[a]!, run.end)).toEqual(run.tracks[b]!.start);
      expect(trackAt(run.tracks[b]!, run.end)).toEqual(run.tracks[a]!.start);
    }
  });

  it('of two places the first is shown, and told if the other takes longer', () => {
    const told = (places: string) => timelineOf(playText('from horns', 'step "Go"', `  2 cuts to ${places}`)).problems.map(({ code, params }) => [code, params]);
    expect(told('right short corner or left wing')).toEqual([['either-takes-longer', { who: '2', seconds: expect.closeTo(2.6, 0) as number }]]);
    expect(told('left wing or right short corner')).toEqual([]);
  });

  it('whoever goes round another stays in bounds', () => {
    const run = timelineOf(playText('from 1 top, 2 right corner, 3 right wing, 4 left wing, 5 left corner', 'step "Go"', '  1 dribbles to left slot', '  2 cuts to right wing', '  3 cuts to right corner')).runs[0]!;
    for (const who of ['2', '3'] as const) for (const { path } of run.tracks[who]!.segments) for (const point of path) expect(Math.abs(point.x)).toBeLessThan(7.5);
  });

  it('rebounders start when the shot leaves the hand, the shooter after he has landed', () => {
    const run = runNamed(timelineOf(playText('from horns', 'rebound 4, 5 crash, 1, 2 get back', 'step "Go"', '  1 passes to 2', '  look 2: three')), 'go?2.1');
    for (const who of ['4', '5', '1', '2'] as const) {
      const boards = run.tracks[who]!.segments.find(({ action }) => action.startsWith('rebound'))!;
      expect(boards.t0).toBeGreaterThan(run.releaseAt!);
    }
  });

  it('a run-through with a shot ends when the ball is at the rim', () => {
    const run = runNamed(timelineOf(lighthouse), 'middle?3.1');
    expect(run.end).toBe(eventNamed(run, 'middle?3.1/3.1:rim').at);
  });
});

describe('rules 24 and 25: what it costs on the clock', () => {
  it('the typical time is the run that is animated; early and late lie on either side', () => {
    const { times, runs } = timelineOf(lighthouse);
    for (const look of times.looks) {
      expect(look.typical).toBe(runs.find(({ id }) => id === look.run)!.releaseAt);
      expect(look.early).toBeLessThan(look.typical);
      expect(look.late).toBeGreaterThan(look.typical);
    }
  });

  it('with `leave`, seconds needed are the late release, the flight and what a miss must leave', () => {
    const { looks, firstLook } = timelineOf(lighthouse).times;
    expect(firstLook!.fromCall).toBe(Math.ceil((looks[0]!.late + looks[0]!.flight + 4000) / 1000));
  });

  it('without it the ball must only have left the hand', () => {
    const { looks, firstLook } = timelineOf(lighthouse.replace(/ {2}leave.*\n/, '')).times;
    expect(firstLook!.fromCall).toBe(Math.ceil(looks[0]!.late / 1000));
  });

  it('an edit elsewhere does not shake the figures', () => {
    const before = timelineOf(lighthouse).times.looks[0];
    const after = timelineOf(lighthouse.replace('look 2 "corner": three', 'look 2 "corner": jumper')).times.looks[0];
    expect(after).toEqual(before);
  });

  it('why so late? is answered back to the call', () => {
    const run = runNamed(timelineOf(lighthouse), 'middle?3.1');
    const chain = why(run, 'middle?3.1/3.1:shot');
    expect(chain[0]!.cause.reason).toBe('catch-to-release');
    expect(chain.map(({ cause }) => cause.reason)).toContain('screen');
    expect(chain[chain.length - 1]!.cause.from).toBe('call');
  });
});

describe('Lighthouse', () => {
  it('is clean at its level, in every run-through', () => {
    const timeline = timelineOf(lighthouse);
    expect(timeline.problems).toEqual([]);
    expect(timeline.runs.map(({ id }) => id)).toEqual(['middle?3.1', 'middle?4.1', 'middle?2.1', 'slip?4.1']);
  });

  it('keeps its window of 16 seconds from the start, late looks too, and can be called with 22', () => {
    const { times, runs } = timelineOf(lighthouse);
    for (const look of times.looks) expect(look.late - runs[0]!.startsAt).toBeLessThan(16_000);
    expect(times.allLooks!.fromCall).toBeLessThanOrEqual(22);
  });

  it('ends 8.5 to 11.5 seconds after the call at u14 with its first look, and sooner at every older level', () => {
    const ends = levelIds.map((level) => runNamed(timelineOf(lighthouse.replace('level u14', `level ${level}`)), 'middle?3.1').end);
    expect(ends[2]).toBeGreaterThan(8500);
    expect(ends[2]).toBeLessThan(11_500);
    for (let index = 1; index < ends.length; index++) expect(ends[index]).toBeLessThan(ends[index - 1]!);
  });

  it('a hand-off straight to the rim takes three to five seconds from its own start with young legs, and sooner at every older level', () => {
    const times = levelIds.map((level) => {
      const text = playText('from horns', 'already set', 'step "Go"', '  1 passes to 5', '  5 hands off to 1, 1 drives to rim', '  look 1: layup').replace('level u14', `level ${level}`);
      const run = timelineOf(text).runs[0]!;
      return run.end - run.startsAt;
    });
    for (const young of times.slice(0, 4)) {
      expect(young).toBeGreaterThan(3000);
      expect(young).toBeLessThan(5000);
    }
    for (let index = 1; index < times.length; index++) expect(times[index]).toBeLessThan(times[index - 1]!);
  });
});

describe('rule 20: two who start on one spot', () => {
  it('stand side by side, and that is told', () => {
    const { runs, problems } = timelineOf(playText('from 1 top, 2 right wing, 3 left wing, 4 right elbow, 5 right elbow', 'step "Go"', '  1 passes to 4', '  look 4: jumper'));
    expect(problems.map(({ code, part, params }) => [code, part, params])).toEqual([['spot-taken', 'from#5', { who: '5', other: '4' }]]);
    expect(distance(runs[0]!.tracks['4']!.start, runs[0]!.tracks['5']!.start)).toBeCloseTo(2 * LEVELS.u14.bodyRadius, 2);
  });
});
