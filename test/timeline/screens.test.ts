import { describe, expect, it } from 'vitest';
import { distance } from '../../language/court/point.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { codesOf, eventNamed, playText, timelineOf } from '../support/timeline-of.ts';

const u14 = LEVELS.u14;
const beat = Math.round(u14.beat * 1000);
const at = (run: Run, id: string): number => eventNamed(run, id).at;

describe('rule 7: where a screen stands', () => {
  it('an arm from the user towards the rim, on the side he goes to', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  5 ball-screens for 1', '  1 drives off 5 to left wing')).runs[0]!;
    const screen = run.screens[0]!;
    const user = run.tracks['1']!.start;
    expect(screen.at.y).toBeLessThan(user.y);
    expect(screen.at.x).toBeLessThan(user.x);
    expect(distance(screen.at, user)).toBeLessThan(u14.reach + 2 * u14.bodyRadius + 0.1);
  });

  it('goes to the other side when the drive goes there', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  4 ball-screens for 1', '  1 drives off 4 to right wing')).runs[0]!;
    expect(run.screens[0]!.at.x).toBeGreaterThan(run.tracks['1']!.start.x);
  });

  it('a screener whom the way passes within a metre stays where he is', () => {
    const run = timelineOf(playText('from stack', 'step "Go"', '  5 screens down for 3', '  3 cuts off 5 to top')).runs[0]!;
    expect(run.tracks['5']!.segments).toHaveLength(0);
    expect(run.screens[0]!.at).toEqual(run.tracks['5']!.start);
  });

  it('a screener between his man and the goal stays, and the man runs to him; in a ball screen he goes to him', () => {
    const far = timelineOf(playText('from 1 at top, 2 at right block, 3 at right corner, 4 at left elbow, 5 at left block', 'step "Go"', '  5 and 4 stagger for 2', '  2 cuts off 5 then 4 to left wing')).runs[0]!;
    for (const screen of far.screens) expect(screen.at).toEqual(far.tracks[screen.by]!.start);
    const ball = timelineOf(playText('from horns', 'step "Go"', '  4 ball-screens for 1', '  1 drives off 4 to right wing')).runs[0]!;
    expect(distance(ball.screens[0]!.at, ball.tracks['1']!.start)).toBeLessThan(1.5);
    const coming = timelineOf(playText('from 1 at half court, 2 at right corner, 3 at left corner, 4 at left wing, 5 at right slot', 'step "Go"', '  5 ball-screens for 1', '  1 drives off 5 to rim')).runs[0]!;
    expect(coming.screens[0]!.at).toEqual(coming.tracks['5']!.start);
  });

  it('a man at the block or the elbow is screened outside the lane, an arm from him', () => {
    const run = timelineOf(playText('from 1 at top, 2 at left corner, 3 at right corner, 4 at right wing, 5 at right block', 'step "Go"', '  4 screens down for 5', '  5 cuts off 4 to top')).runs[0]!;
    const { at: place } = run.screens[0]!;
    expect(place.x).toBeGreaterThan(2.45 + u14.bodyRadius - 0.001);
    expect(distance(place, run.tracks['5']!.start)).toBeCloseTo(u14.reach, 1);
  });

  it('`slips before the screen`: he does not set it, and is gone a good second before one who does', () => {
    const text = (slip: string): string => playText('from horns', 'step "Go"', `  4 ball-screens for 1, then slips${slip}`, '  1 drives off 4 to right wing', '  look 4: lob, layup');
    const [before, after] = [timelineOf(text(' before the screen')), timelineOf(text(''))];
    expect(before.runs[0]!.screens).toEqual([]);
    expect(before.problems).toEqual([]);
    expect(after.times.looks[0]!.typical - before.times.looks[0]!.typical).toBeGreaterThan(1000);
  });

  it('a roll whose man drives to the ring ends on the other side of it', () => {
    const run = timelineOf(playText('from 1 at top, 2 at right corner, 3 at left corner, 4 at left wing, 5 at right slot', 'step "Go"', '  5 ball-screens for 1, then rolls', '  1 drives off 5 to rim', '  5 holds for 1 second')).runs[0]!;
    const [driver, roller] = (['1', '5'] as const).map((who) => run.tracks[who]!.segments.at(-1)!.path.at(-1)!);
    expect(distance(driver!, roller!)).toBeGreaterThan(1.5);
  });

  it('`at` says where', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  5 screens for 3 at left block', '  3 cuts off 5 to rim')).runs[0]!;
    expect(run.screens[0]!.at).toEqual({ x: -2.8, y: 0.825 });
  });

  it('the first use decides the side, even when it is written in a later step', () => {
    const left = timelineOf(playText('from horns', 'step "A"', '  5 screens for 1', 'step "B"', '  1 drives off 5 to left wing')).runs[0]!;
    const right = timelineOf(playText('from horns', 'step "A"', '  5 screens for 1', 'step "B"', '  1 drives off 5 to right wing')).runs[0]!;
    expect(left.screens[0]!.at.x).toBeLessThan(0);
    expect(right.screens[0]!.at.x).toBeGreaterThan(0);
  });

  it('a stagger stands two metres apart, a double shoulder to shoulder', () => {
    const stagger = timelineOf(playText('from 1-4 low', 'step "Go"', '  4 and 5 stagger-screen for 2', '  2 cuts off 4 then 5 to top')).runs[0]!;
    const double = timelineOf(playText('from 1-4 low', 'step "Go"', '  4 and 5 double-screen for 2', '  2 cuts off 4 to top')).runs[0]!;
    const gap = (run: Run): number => distance(run.screens[0]!.at, run.screens[1]!.at);
    expect(gap(stagger)).toBeCloseTo(2, 1);
    // One place said for both: the first stands there.
    const said = timelineOf(playText('from 1-4 low', 'step "Go"', '  4 and 5 stagger at left slot for 2', '  2 cuts off 4 then 5 to top')).runs[0]!;
    expect(gap(said)).toBeCloseTo(2, 1);
    expect(gap(double)).toBeCloseTo(2 * u14.bodyRadius, 1);
  });
});

describe('rules 8 and 9: coming off a screen', () => {
  it('the user reaches the shoulder a beat after the screen is set, never before', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  5 ball-screens for 1', '  1 drives off 5 to left wing')).runs[0]!;
    expect(at(run, 'go/5.1:use.1')).toBe(at(run, 'go/5.1:set') + beat);
    expect(eventNamed(run, 'go/1.1:start').because).toMatchObject({ from: 'go/5.1:set', reason: 'screen' });
  });

  it('he passes within a shoulder’s width of the screener', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  5 ball-screens for 1', '  1 drives off 5 to left wing')).runs[0]!;
    const use = trackAt(run.tracks['1']!, at(run, 'go/5.1:use.1'));
    expect(distance(use, run.screens[0]!.at)).toBeCloseTo(2 * u14.bodyRadius, 1);
  });

  it('a screen without `off` is used by its man’s next move', () => {
    const run = timelineOf(playText('from stack', 'step "Go"', '  5 screens down for 3', '  3 cuts to top')).runs[0]!;
    expect(run.screens[0]!.users).toEqual(['3']);
  });

  it('a man who goes the other way leaves the screen aside, and that is told', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  5 screens for 3 at left wing', '  3 cuts to right corner'));
    expect(codesOf(timeline)).toContain('screen-refused');
  });

  it('off a man who merely stands on the way is allowed', () => {
    const timeline = timelineOf(playText('from stack', 'step "Go"', '  3 cuts off 5 to left slot'));
    expect(codesOf(timeline)).toEqual([]);
  });

  it('off a man who is never there is told, and the way is straight', () => {
    const timeline = timelineOf(playText('from 1-4 low', 'step "Go"', '  3 cuts off 4 to left wing'));
    expect(codesOf(timeline)).toEqual(['off-nobody']);
    expect(timeline.runs[0]!.tracks['3']!.segments).toHaveLength(1);
  });

  it('a link of the screener’s own line comes off him without waiting for his roll', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  5 ball-screens for 1, then rolls, 1 drives off 5 to left wing'));
    expect(codesOf(timeline)).toEqual([]);
    const run = timeline.runs[0]!;
    expect(at(run, 'go/5.2:start')).toBe(at(run, 'go/5.1:use.1'));
  });
});

describe('rule 8: `off 4` with several screens of 4', () => {
  const ball = ['  2 dribbles to the right slot', '  4 ball-screens for 2', '  2 drives off 4 to right elbow'];
  const head = ['from 1 at left slot, 2 at right block, 3 at left corner, 4 at right elbow, 5 at left block', 'step "Go"'];

  it('one who runs off him before the pass does not wait for the ball screen that 4 sets for him later', () => {
    const standing = timelineOf(playText(...head, '  2 runs off 4 to the top', '  1 passes to 2'));
    const both = timelineOf(playText(...head, '  2 runs off 4 to the top', '  1 passes to 2', ...ball));
    expect(codesOf(both)).toEqual(codesOf(standing));
    expect(at(both.runs[0]!, 'go/2.1:start')).toBe(at(standing.runs[0]!, 'go/2.1:start'));
    expect(at(both.runs[0]!, 'go/4.1:use.2')).toBeGreaterThan(at(both.runs[0]!, 'go/2.2:start'));
  });

  it('the screen written below his line is his, and not the dribble’s between the two', () => {
    const timeline = timelineOf(playText(...head, '  2 runs off 4 to the top', '  4 screens for 2', '  1 passes to 2', ...ball));
    expect(codesOf(timeline)).not.toContain('screen-refused');
    const run = timeline.runs[0]!;
    expect(at(run, 'go/4.1:use.2')).toBeGreaterThanOrEqual(at(run, 'go/4.1:set'));
    expect(at(run, 'go/4.1:use.2')).toBeLessThan(at(run, 'go/2.1:arrive'));
  });

  describe('a screen for another man in a step above, whose screener has gone on since', () => {
    const above = ['from 1 at top, 2 at right block, 4 at right elbow, 5 at left block', '3 inbounds from the right sideline', 'step "Get"', '  4 back-screens for 2', '  2 cuts to right corner', '  4 pops to right wing', '  3 inbounds to 4', '  look 2: three'];

    it.each([
      ['it is the hand-off that its taker comes off', ['  4 hands off to 1', '  1 drives off 4 to rim']],
      ['also where he is told to come before it', ['  1 runs off 4 and takes the hand-off', '  1 drives to rim']],
      ['and a man who cuts by him passes one who stands there', ['  1 cuts off 4 to right elbow']],
    ])('%s: nobody waits for the old screen', (_, lines) => {
      const timeline = timelineOf(playText(...above, 'step "Give"', ...lines, '  look 1: layup'));
      expect(codesOf(timeline)).not.toContain('waits-in-circle');
      expect(codesOf(timeline)).not.toContain('screen-holds-for-later');
      const [corner, give] = [timeline.runs.find(({ id }) => id === 'get?2.1')!, timeline.runs.at(-1)!];
      expect(corner.releaseAt).toBeDefined();
      expect(give.events.filter(({ kind }) => kind === 'use').map(({ who }) => who)).toEqual(['2']);
      expect(at(give, 'get/4.2:start')).toBeLessThan(at(give, 'give:open'));
    });
  });
});

describe('rule 10: leaving a screen', () => {
  it('the screener rolls when the last user has passed', () => {
    const run = timelineOf(playText('from horns', 'step "Go"', '  5 ball-screens for 1, then rolls', '  1 drives off 5 to left wing')).runs[0]!;
    expect(at(run, 'go/5.1:free')).toBe(at(run, 'go/5.1:use.1'));
    expect(at(run, 'go/5.2:start')).toBe(at(run, 'go/5.1:free'));
  });

  it('nobody comes: he stays his usual hold, and that is told', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  5 screens for 3, then rolls', '  1 passes to 2'));
    expect(codesOf(timeline)).toEqual(['screen-unused']);
    const run = timeline.runs[0]!;
    expect(at(run, 'go/5.1:free') - at(run, 'go/5.1:set')).toBe(1000);
  });

  it('a written move that pulls him away is obeyed and told', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  5 ball-screens for 1', '  2 seconds later, 1 drives off 5 to left wing', '  3 cuts to left block', '  as 3 cuts, 5 cuts to right block'));
    expect(codesOf(timeline)).toContain('screen-left-early');
    const told = timeline.problems.find(({ code }) => code === 'screen-left-early')!;
    expect(told.params).toMatchObject({ who: '5', user: '1' });
  });

  it('a man who passes to the elbow and cuts off him to the rim brushes his shoulder', () => {
    const timeline = timelineOf(playText('from 1-4 high', 'step "Go"', '  1 passes to 4', '  1 cuts off 4 to rim'));
    expect(codesOf(timeline)).toEqual([]);
    const run = timeline.runs[0]!;
    const elbow = run.tracks['4']!.start;
    const gaps = Array.from({ length: Math.floor(run.end / 20) }, (_, index) => distance(trackAt(run.tracks['1']!, index * 20), elbow));
    expect(Math.min(...gaps)).toBeLessThan(1.2);
  });

  it('a screen used in a later step is held, and that is said', () => {
    const timeline = timelineOf(playText('from stack', 'step "A"', '  5 screens for 3, then rolls', '  1 dribbles to right wing, 1 dribbles to top', 'step "B"', '  3 cuts off 5 to left wing'));
    expect(codesOf(timeline)).toEqual(['screen-holds-for-later']);
    const run = timeline.runs[0]!;
    expect(at(run, 'a/5.2:start')).toBe(at(run, 'a/5.1:use.3'));
    expect(at(run, 'a/5.1:use.3')).toBeGreaterThan(at(run, 'b:open'));
  });

  it('a run-through where nobody comes off it does not know so before the ways part', () => {
    const timeline = timelineOf(playText(
      'from stack', 'step "A"', '  5 screens for 3, then rolls', '  1 dribbles to right wing, 1 dribbles to top',
      'step "B"', '  3 cuts off 5 to left wing', 'step "C" instead of "B" when "they switch"', '  1 passes to 2',
    ));
    const counter = timeline.runs.find(({ id }) => id === 'c')!;
    expect(at(counter, 'a/5.2:start')).toBeGreaterThanOrEqual(at(counter, 'c:open'));
  });

  it('a slip without a screen starts a step before the place where the screen of the replaced step would have stood', () => {
    const timeline = timelineOf(playText(
      'from 1-4 low', 'step "A"', '  1 dribbles to right slot', 'step "B"', '  5 ball-screens for 1', '  1 drives off 5 to left wing',
      'step "C" instead of "B" when X5 shows on 1', '  5 slips',
    ));
    const screen = timeline.runs.find(({ id }) => id === 'b')!.screens[0]!.at;
    const slip = timeline.runs.find(({ id }) => id === 'c')!.tracks['5']!.segments;
    expect(distance(slip[0]!.path[1]!, screen)).toBeCloseTo(u14.step, 2);
    expect(Math.abs(slip[slip.length - 1]!.path[1]!.x)).toBeLessThan(0.8);
  });
});
