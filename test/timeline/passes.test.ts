import { describe, expect, it } from 'vitest';
import { distance } from '../../language/court/point.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import { speedAt } from '../../language/motion/legs.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { codesOf, eventNamed, playText, timelineOf } from '../support/timeline-of.ts';

const at = (run: Run, id: string): number => eventNamed(run, id).at;

describe('rule 11: ball and man meet', () => {
  it('a pass to a man at rest leaves at once', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  1 passes to 2')).runs[0]!;
    expect(at(run, 'go/1.1:release')).toBe(at(run, 'go:open'));
  });

  it('a pass to a cutter meets him where his cut ends, the moment he is there', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to rim', '  1 passes to 2')).runs[0]!;
    expect(at(run, 'go/1.1:catch')).toBe(at(run, 'go/2.1:arrive'));
    expect(eventNamed(run, 'go/1.1:release').because).toMatchObject({ from: 'go/2.1:arrive', reason: 'meets-cutter' });
    expect(at(run, 'go/1.1:release')).toBeLessThan(at(run, 'go/2.1:arrive'));
  });

  it('it meets a man still running from the step before', () => {
    const run = timelineOf(playText('from horns', 'step "A"', '  2 cuts to left corner', '  1 dribbles to right slot', 'step "B"', '  1 passes to 2')).runs[0]!;
    expect(at(run, 'b/1.1:catch')).toBe(at(run, 'a/2.1:arrive'));
  });

  it('a move that waits for the pass does not hold it', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  1 passes to 2', '  4 screens for 2 once 2 catches', '  2 drives off 4 to rim')).runs[0]!;
    expect(at(run, 'go/1.1:release')).toBe(at(run, 'go:open'));
  });

  it('early meets him on the way', () => {
    const late = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to left corner', '  1 passes to 2')).runs[0]!;
    const early = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to left corner', '  1 passes early to 2')).runs[0]!;
    expect(at(early, 'go/1.1:catch')).toBeLessThan(at(late, 'go/1.1:catch'));
    const flight = early.ball.find((state) => state.kind === 'flight')!;
    if (flight.kind !== 'flight') throw new Error('no flight');
    expect(distance(flight.to, trackAt(early.tracks['2']!, flight.t1))).toBeLessThan(0.02);
  });

  it('a holder who stands more than two seconds for his man is told of', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  1 passes to 5', '  2 cuts to rim, then cuts to left corner, then cuts to top', '  5 passes to 2'));
    const told = timeline.problems.find(({ code }) => code === 'pass-waits')!;
    expect(told.params).toMatchObject({ who: '5', to: '2', limit: 2 });
    expect(told.related).toEqual(['go/2.3']);
  });
});

describe('rules 12 and 13: stride and hand-offs', () => {
  it('links of one line are run through without a stop where the turn allows', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to right block, then cuts to left block')).runs[0]!;
    const { segments } = run.tracks['2']!;
    expect(segments[1]!.t0).toBe(segments[0]!.t1);
    expect(speedAt(segments[1]!.profile, 0)).toBeGreaterThan(1);
  });

  it('a separate line starts from a stand', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to right block', '  2 cuts to left block')).runs[0]!;
    expect(speedAt(run.tracks['2']!.segments[1]!.profile, 0)).toBe(0);
  });

  it('the taker of a hand-off who drives next, in the same line or in one of its own, takes the ball on the run', () => {
    const [same, own] = ['  5 hands off to 1, 1 drives to rim', '  5 hands off to 1\n    1 drives to rim'].map((lines) => {
      const run = timelineOf(playText('from horns', 'step "Go"', '  1 passes to 5', lines)).runs[0]!;
      return run.tracks['1']!.segments.map(({ profile }) => profile.v0);
    });
    expect(own).toEqual(same);
    expect(own![1]).toBeGreaterThan(3);
  });

  it('a cutter to whom the ball comes as he arrives, and who drives next, takes it on the run; one who has to wait for it stops', () => {
    const from = 'from 1 right slot, 2 right wing, 3 left corner, 4 right corner, 5 right block';
    const driving = (...lines: readonly string[]): number => {
      const run = timelineOf(playText(from, 'step "Go"', ...lines)).runs.at(-1)!;
      return run.tracks['3']!.segments[1]!.profile.v0;
    };
    expect(driving('  3 cuts to left elbow', '  1 passes to 3', '  3 catches and drives to the rim')).toBeGreaterThan(2);
    expect(driving('  3 cuts to left elbow', '  1 passes to 3, 3 drives to rim')).toBeGreaterThan(2);
    expect(driving('  3 cuts to left elbow', '  1 dribbles to left corner', '  1 passes to 3', '  3 drives to rim')).toBe(0);
  });

  it('a man caught early on his way is done with it: he drives from there at once', () => {
    const run = timelineOf(playText('from 1 top, 2 right wing, 3 left corner, 4 right corner, 5 right block', 'step "Go"', '  3 cuts to nail', '  1 passes early to 3', '  3 drives to rim')).runs[0]!;
    expect(at(run, 'go/3.2:start')).toBe(at(run, 'go/1.1:catch'));
    expect(run.tracks['3']!.segments[1]!.profile.v0).toBeGreaterThan(2);
  });

  it('a passer still under way lets the ball go where he then is', () => {
    const run = timelineOf(playText('from 1 top, 2 right wing, 3 left corner, 4 left block, 5 nail', 'already set', 'step "Go"', '  1 cuts to right corner', '  3 sprints to right block', '  1 passes to 3')).runs[0]!;
    const flight = run.ball.find((state) => state.kind === 'flight')!;
    if (flight.kind !== 'flight') throw new Error('no flight');
    expect(distance(flight.from, trackAt(run.tracks['1']!, flight.t0))).toBeLessThan(0.02);
  });

  it('a cutter lands on his spot, he does not brake to a standstill before it; at the ring he comes to finish', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to left corner', '  3 cuts to rim')).runs[0]!;
    const arrival = (who: '2' | '3'): number => run.tracks[who]!.segments.at(-1)!.profile.v1;
    expect(arrival('2')).toBeCloseTo(Math.sqrt(LEVELS.u14.brake * LEVELS.u14.step), 3);
    expect(arrival('3')).toBeCloseTo(LEVELS.u14.jog, 3);
  });

  it('the nearer to the ring he takes the ball, the nearer and the sooner he lays it in', () => {
    const layup = (from: string): { readonly gap: number; readonly ms: number } => {
      const run = timelineOf(playText(`from 1 at top, 2 at right wing, 3 at left wing, 4 at left corner, 5 at ${from}`, 'already set', 'step "Go"', '  1 passes to 5', '  look 5: layup')).runs[0]!;
      return { gap: distance(trackAt(run.tracks['5']!, run.end), { x: 0, y: 0 }), ms: run.releaseAt! - at(run, 'go/1.1:catch') };
    };
    const layups = ['(1.0, 1.0) m', '(1.2, 1.2) m', '(1.5, 1.5) m', '(2.0, 2.0) m', '(2.8, 2.8) m'].map(layup);
    for (let index = 1; index < layups.length; index++) expect(layups[index]!.ms).toBeGreaterThan(layups[index - 1]!.ms);
    for (const { gap } of layups) expect(gap).toBeLessThan(1.61);
  });

  it('dribbler and taker arrive together, though nothing says that the taker comes', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  1 dribbles to right wing', '  1 hands off to 4')).runs[0]!;
    expect(at(run, 'go/1.2:take')).toBe(at(run, 'go/1.1:arrive'));
    const gap = distance(trackAt(run.tracks['1']!, at(run, 'go/1.2:take')), trackAt(run.tracks['4']!, at(run, 'go/1.2:take')));
    expect(gap).toBeLessThan(0.8);
  });

  it('the taker first does what he still has to do', () => {
    const run = timelineOf(playText('from 3-out 2-in', 'step "Go"', '  2 cuts to right corner', '  1 hands off to 2')).runs[0]!;
    expect(at(run, 'go/1.1:take')).toBeGreaterThan(at(run, 'go/2.1:arrive'));
  });

  it('a pass by a man without the ball does not happen, and that is told', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  3 passes to 2'));
    expect(codesOf(timeline)).toEqual(['ball-elsewhere']);
    expect(timeline.runs[0]!.ball.every((state) => state.kind === 'held' && state.by === '1')).toBe(true);
  });
});
