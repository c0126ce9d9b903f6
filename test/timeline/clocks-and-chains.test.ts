import { describe, expect, it } from 'vitest';
import { LEVELS } from '../../language/motion/levels.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { codesOf, eventNamed, playText, runNamed, timelineOf } from '../support/timeline-of.ts';

const u14 = LEVELS.u14;
const ms = (seconds: number): number => Math.round(seconds * 1000);
const at = (run: Run, id: string): number => eventNamed(run, id).at;

describe('rule 1: the clock and getting into place', () => {
  const lines = ['from horns', 'step "Go"', '  2 cuts to rim', '  look 1: jumper'];

  it('a team gets into its places before the first man moves', () => {
    const run = timelineOf(playText(...lines)).runs[0]!;
    expect(at(run, 'go/2.1:start')).toBe(ms(u14.setUp) + ms(u14.startDelay));
    expect(run.startsAt).toBe(at(run, 'go/2.1:start'));
  });

  it('a team already set starts after the start delay alone', () => {
    const run = timelineOf(playText(...lines, 'already set')).runs[0]!;
    expect(at(run, 'go/2.1:start')).toBe(ms(u14.startDelay));
  });

  it('what a team already set saves is told with the times', () => {
    const { looks, allLooks } = timelineOf(playText(...lines)).times;
    expect(looks[0]!.setUp).toBe(2500);
    expect(allLooks!.fromCall).toBeGreaterThan(allLooks!.alreadySet);
  });
});

describe('rules 3–6: chains and steps', () => {
  it('a player does his own links in order, each when the one before is done', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to right block, then cuts to left block', '  2 cuts to left corner')).runs[0]!;
    expect(at(run, 'go/2.2:start')).toBe(at(run, 'go/2.1:arrive'));
    expect(at(run, 'go/2.3:start')).toBe(at(run, 'go/2.2:arrive'));
  });

  it('the passer cuts when the ball has left his hand, the catcher drives when he has it', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  1 passes to 2 and cuts to rim', '  2 drives to right block')).runs[0]!;
    expect(at(run, 'go/1.2:start')).toBe(at(run, 'go/1.1:release'));
    expect(at(run, 'go/2.1:start')).toBe(at(run, 'go/1.1:catch'));
  });

  it('lines of a step run side by side', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  2 cuts to right block', '  3 cuts to left block')).runs[0]!;
    expect(at(run, 'go/2.1:start')).toBe(at(run, 'go/3.1:start'));
  });

  it('a step opens when its parent’s last ball action is done, though a man of the parent still runs', () => {
    const run = timelineOf(playText('from horns', 'step "A"', '  1 dribbles to right slot', '  2 cuts to left corner', 'step "B"', '  3 cuts to top')).runs[0]!;
    expect(at(run, 'b:open')).toBe(at(run, 'a/1.1:arrive'));
    expect(at(run, 'a/2.1:arrive')).toBeGreaterThan(at(run, 'b:open'));
  });

  it('a step without ball or look lets the next one open once its moves have started', () => {
    const run = timelineOf(playText('from horns', 'step "A"', '  2 cuts to left corner', 'step "B"', '  3 cuts to top')).runs[0]!;
    expect(at(run, 'b:open')).toBe(at(run, 'a/2.1:start'));
  });

  it('another man’s event costs one reaction, his own none', () => {
    const run = timelineOf(playText('from horns', 'step "A"', '  1 dribbles to right slot', 'step "B"', '  1 passes to 2', '  3 cuts to top')).runs[0]!;
    expect(at(run, 'b/1.1:release')).toBe(at(run, 'b:open'));
    expect(at(run, 'b/3.1:start')).toBe(at(run, 'b:open') + ms(u14.reaction));
  });

  it('ball actions of a step happen in the order written', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  1 passes to 2', '  2 passes to 3')).runs[0]!;
    expect(at(run, 'go/2.1:release')).toBe(at(run, 'go/1.1:catch') + ms(u14.passRelease));
  });
});

describe('rules 1 and 14: a throw-in', () => {
  const text = playText('from box', '3 inbounds from the left sideline', 'step "In"', '  5 screens for 1', '  1 cuts off 5 to left wing', '  3 inbounds to 1', '  3 cuts to left corner', '  look 1: three');

  it('time runs from the hand-over, the game clock from the first touch', () => {
    const run = timelineOf(text).runs[0]!;
    expect(at(run, 'in/5.1:start')).toBe(ms(u14.startDelay));
    expect(run.clockStartsAt).toBe(at(run, 'in/3.1:touch'));
    expect(run.clockStartsAt).toBe(at(run, 'in/3.1:catch'));
  });

  it('the thrower stands out of bounds with the ball until he lets it go, then steps in before he cuts', () => {
    const run = timelineOf(text).runs[0]!;
    expect(run.ball[0]).toMatchObject({ kind: 'held', by: '3', out: true });
    const { start, segments } = run.tracks['3']!;
    expect(start.x).toBeLessThan(-7.5);
    expect(segments[0]!.t0).toBe(at(run, 'in/3.1:release'));
    expect(segments[0]!.path[1]!.x).toBeGreaterThan(-7.5);
  });

  it('seconds needed are counted from the touch', () => {
    const { looks, allLooks } = timelineOf(text).times;
    expect(allLooks!.fromCall).toBeLessThan(Math.ceil(looks[0]!.late / 1000));
  });

  it('a release after five seconds is told, not hidden', () => {
    const late = playText('from box', '3 inbounds from the left sideline', 'step "In"', '  2 seconds later, 1 cuts to rim, then cuts to top, then cuts to right wing', '  3 inbounds to 1');
    const timeline = timelineOf(late);
    expect(codesOf(timeline)).toContain('throw-in-late');
    const found = timeline.problems.find(({ code }) => code === 'throw-in-late')!;
    expect(found.params).toMatchObject({ who: '3', limit: 5 });
    expect(found.params['seconds']).toBeGreaterThan(5);
    expect(at(timeline.runs[0]!, 'in/3.1:release')).toBe(found.moment);
  });
});

describe('rule 23: a stated end', () => {
  const from = 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 dunker spots';
  const ends = (...lines: readonly string[]): Run => timelineOf(playText(from, ...lines)).runs[0]!;

  it('over half court is when he has the ball and is over the line with it, whoever still runs', () => {
    const run = ends('1 dribbles to top', '2 cuts to right wing', 'ends once 1 has the ball over half court');
    expect(run.end).toBeLessThan(ends('1 dribbles to top', '2 cuts to right wing', 'ends with no shot').end - 500);
    expect(trackAt(run.tracks['1']!, run.end).y).toBeCloseTo(12.425, 0);
    expect(at(run, 'start:end')).toBe(run.end);
  });

  it('over half court for a man who stands there is his catch', () => {
    const run = ends('1 passes to 2', 'ends once 2 has the ball over half court');
    expect(run.end).toBe(at(run, 'start/1.1:catch'));
  });

  it('a screen set, a catch, a place reached end it too', () => {
    expect(ends('4 screens for 2', '2 cuts off 4 to top', 'ends once 4 is set').end).toBe(at(ends('4 screens for 2', '2 cuts off 4 to top', 'ends with no shot'), 'start/4.1:set'));
    expect(ends('1 passes to 2', '2 passes to 4', 'ends once 2 catches').end).toBe(at(ends('1 passes to 2', 'ends with no shot'), 'start/1.1:catch'));
    const there = ends('2 cuts to rim', '3 cuts to top', 'ends once 2 reaches the rim');
    expect(trackAt(there.tracks['2']!, there.end).x).toBeLessThan(0.7);
  });

  it('one that never comes is told, and the last action ends it', () => {
    const timeline = timelineOf(playText(from, '1 dribbles to backcourt left', 'ends once 1 has the ball over half court'));
    expect(codesOf(timeline)).toEqual(['end-never-comes']);
    expect(timeline.runs[0]!.end).toBe(at(timeline.runs[0]!, 'start/1.1:arrive'));
  });
});

describe('rule 2: counters', () => {
  it('a loop or an unknown step costs that step only', () => {
    const timeline = timelineOf(playText('from horns', 'step "A"', '  1 passes to 2', '  look 2: three', 'step "B" after "Nowhere"', '  2 passes to 3'));
    expect(timeline.runs.map(({ id }) => id)).toEqual(['a?2.1']);
  });

  it('every run-through of a play with a counter has its own ending', () => {
    const timeline = timelineOf(playText('from horns', 'step "A"', '  1 passes to 2', 'step "B"', '  look 2: three', 'step "C" instead of "B" when "they switch"', '  look 2: drives to rim, layup'));
    expect(timeline.runs.map(({ id, steps }) => [id, steps.join(' ')])).toEqual([['b?2.1', 'a b'], ['c?2.1', 'a c']]);
    expect(runNamed(timeline, 'c?2.1').releaseAt).toBeGreaterThan(0);
  });
});
