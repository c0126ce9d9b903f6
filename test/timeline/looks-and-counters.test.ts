import { describe, expect, it } from 'vitest';
import { LEVELS } from '../../language/motion/levels.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { codesOf, eventNamed, lighthouse, playText, runNamed, timelineOf } from '../support/timeline-of.ts';

const u14 = LEVELS.u14;
const at = (run: Run, id: string): number => eventNamed(run, id).at;
const has = (run: Run, start: string): boolean => run.events.some(({ id }) => id.startsWith(start));

describe('rule 15: when a look comes', () => {
  it('after every pass above it, and not before the one written before is passed up', () => {
    const run = runNamed(timelineOf(playText('from horns', 'step "Go"', '  1 passes to 2', '  look 2: three', '  look 3: skip, three')), 'go?3.1');
    expect(at(run, 'go?2.1:read')).toBe(at(run, 'go/1.1:catch'));
    expect(at(run, 'go?3.1:read')).toBe(at(run, 'go?2.1:passed-up'));
  });

  it('a dribble does not hold it: a taken look cuts the dribble short', () => {
    const run = runNamed(timelineOf(playText('from horns', 'step "Go"', '  1 dribbles to right corner', '  5 cuts to rim', '  look 5: layup')), 'go?5.1');
    expect(at(run, 'go?5.1/1.1:release')).toBe(at(run, 'go/5.1:arrive') - (at(run, 'go?5.1/1.1:catch') - at(run, 'go?5.1/1.1:release')));
    expect(has(run, 'go/1.1:arrive')).toBe(false);
    const end = trackAt(run.tracks['1']!, run.end);
    expect(end.x).toBeLessThan(7);
  });

  it.each([
    ['1 holds for 6 seconds', 8900],
    ['1 waits 6 seconds', 8900],
    ['1 holds until 8 on the clock', 12000],
    ['1 keeps his dribble until 8 on the clock', 12000],
    ['at 8 on the clock, 1 drives to rim', 12000],
    ['1 holds until 8 on the clock, then drives to rim', 12000],
  ])('what the man with the ball does for so long, or at a time, comes before it: %s', (line, from) => {
    for (const look of ['look 3: three', 'look 2: three']) {
      const run = timelineOf(playText('from 5-out', 'call with 20 on the clock', 'step "Go"', `  ${line}`, `  ${look}`)).runs[0]!;
      const passed = at(run, `go?${look[5]}.1/1.1:release`);
      expect(passed).toBeGreaterThanOrEqual(from);
      expect(passed).toBeLessThan(from + 600);
    }
    const own = timelineOf(playText('from 5-out', 'call with 20 on the clock', 'step "Go"', `  ${line}`, '  look 1: jumper')).runs[0]!;
    expect(own.releaseAt!).toBeGreaterThan(from);
  });

  it('a hold without an end does not hold it', () => {
    const run = timelineOf(playText('from 5-out', 'step "Go"', '  1 holds', '  look 3: three')).runs[0]!;
    expect(at(run, 'go?3.1:read')).toBe(2900);
  });

  it('a dribble that it cuts short at a screener’s shoulder is braked, not stopped dead', () => {
    const run = runNamed(timelineOf(playText('from horns, ball with 3', 'step "Go"', '  4 ball-screens for 3, then rolls, 3 drives off 4 to right block', '  look 3 as 4 rolls: jumper')), 'go?3.1');
    const use = at(run, 'go/4.1:use.3');
    expect(at(run, 'go?3.1:read')).toBe(use);
    const braking = run.tracks['3']!.segments.at(-1)!;
    expect(braking.t0).toBe(use);
    expect(braking.profile.v1).toBeLessThan(0.1);
    expect(braking.profile.v0).toBeGreaterThan(2);
  });

  it('is passed up a reading time after the man came off his screen, or when he is there', () => {
    const run = runNamed(timelineOf(playText('from stack', 'step "Go"', '  5 screens down for 3', '  3 cuts off 5 to left block', '  look 3: layup', '  look 2: layup')), 'go?2.1');
    const expected = Math.max(at(run, 'go/3.1:arrive'), at(run, 'go/5.1:use.3') + Math.round(u14.read * 1000));
    expect(at(run, 'go?3.1:passed-up')).toBe(expected);
  });

  it('for the man who screens comes when whoever uses his screen is by: he never has the ball while he stands for it', () => {
    const timeline = timelineOf(playText('from box, ball with 1', 'step "Go"', '  2 ball-screens for 1', '  1 drives off 2 to top', '  look 2: layup'));
    const run = runNamed(timeline, 'go?2.1');
    expect(at(run, 'go?2.1/1.1:catch')).toBeGreaterThanOrEqual(at(run, 'go/2.1:use.1'));
    expect(codesOf(timeline)).toEqual([]);
  });

  it('on the roll meets the roller in stride, in the later half of his way', () => {
    const run = runNamed(timelineOf(lighthouse), 'middle?4.1');
    const caught = at(run, 'middle?4.1/3.1:catch');
    const roll = run.tracks['4']!.segments.filter(({ action }) => action === 'middle/4.2');
    expect(caught).toBeGreaterThan((roll[0]!.t0 + roll[0]!.t1) / 2 - 300);
    expect(roll[roll.length - 1]!.t1).toBe(caught);
  });

  it('a pin already past goes late, to where he then is, and is told', () => {
    const timeline = timelineOf(playText(
      'from horns', 'step "Go"', '  5 ball-screens for 1, then rolls', '  1 drives off 5 to left wing, 1 dribbles to left slot, 1 dribbles to right slot', '  look 1: three', '  look 5 on the roll: layup',
    ));
    expect(codesOf(timeline)).toEqual(['pin-late']);
    const run = runNamed(timeline, 'go?5.1');
    expect(at(run, 'go?5.1/1.1:release')).toBeGreaterThan(at(run, 'go/5.2:arrive'));
  });

  it('a pin on something that never happens is told', () => {
    expect(codesOf(timelineOf(playText('from horns', 'step "Go"', '  1 passes to 2', '  look 5 on the roll: layup')))).toEqual(['pin-unknown']);
  });
});

describe('rule 16: a look that is not taken', () => {
  const text = playText('from horns', 'step "Go"', '  1 dribbles to right slot', '  look 2: drives to rim, layup', '  look 3: skip, three', '  1 passes to 5');

  it('nothing behind its colon happens', () => {
    const timeline = timelineOf(text);
    const third = runNamed(timeline, 'go?3.1');
    expect(has(third, 'go?2.1/')).toBe(false);
    expect(third.tracks['2']!.segments).toHaveLength(0);
    expect(third.ball.filter(({ kind }) => kind === 'flight')).toHaveLength(1);
  });

  it('ball actions below the looks wait until they are passed up, and do not happen when one is taken', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  1 dribbles to right slot', '  look 2: three', '  1 passes to 5', 'step "On"', '  5 passes to 3'));
    const end = runNamed(timeline, 'on');
    expect(at(end, 'go/1.2:release')).toBeGreaterThanOrEqual(at(end, 'go?2.1:passed-up'));
    expect(has(runNamed(timeline, 'go?2.1'), 'go/1.2')).toBe(false);
  });

  it('moves below a look do not wait for it', () => {
    const run = runNamed(timelineOf(playText('from horns', 'step "Go"', '  1 dribbles to right slot', '  look 2: three', '  3 cuts to rim')), 'go?2.1');
    expect(at(run, 'go/3.1:start')).toBe(at(run, 'go:open'));
  });

  it('a pass behind its colon to a spot: he goes there for the ball, and the ball waits for him', () => {
    const run = runNamed(timelineOf(playText('from 5-out', 'step "Go"', '  1 passes to 2', '  look 4: 2 passes to 4 at right elbow, jumper')), 'go?4.1');
    const caught = at(run, 'go?4.1/2.1:catch');
    expect(trackAt(run.tracks['4']!, caught)).toEqual({ x: 2.8, y: 4.225 });
    expect(caught).toBe(at(run, 'go?4.1/2.1:arrive.4'));
    expect(at(run, 'go?4.1/2.1:start.4')).toBe(at(run, 'go?4.1:read') + Math.round(u14.reaction * 1000));
    const { segments } = timelineOf(playText('from 5-out', 'step "Go"', '  1 passes to 4', '  look 4: three', '  look 2: 4 passes to 2 at right wing, three')).runs[1]!.tracks['2']!;
    expect(segments).toEqual([]);
  });

  it('the shot ends it: the ball is at the rim when the run-through ends', () => {
    const run = runNamed(timelineOf(text), 'go?2.1');
    expect(run.ball[run.ball.length - 1]).toMatchObject({ kind: 'shot', t1: run.end });
    expect(run.releaseAt).toBe(at(run, 'go?2.1/2.2:shot'));
  });
});

describe('rule 17: counters', () => {
  it('a counter and the step it replaces agree until they part', () => {
    const timeline = timelineOf(lighthouse);
    const [middle, slip] = [runNamed(timeline, 'middle?3.1'), runNamed(timeline, 'slip?4.1')];
    for (const event of middle.events.filter(({ part }) => part.startsWith('zip'))) expect(slip.events).toContainEqual(event);
  });

  it('a condition makes the defender act when the screen of the replaced step would have been set', () => {
    const timeline = timelineOf(lighthouse);
    const cue = eventNamed(runNamed(timeline, 'slip?4.1'), 'slip:start.X4');
    expect(cue).toMatchObject({ who: 'X4', at: at(runNamed(timeline, 'middle?3.1'), 'middle/4.1:set') });
  });

  it('lines kept from the replaced step happen, its looks do not', () => {
    const timeline = timelineOf(playText(
      'from horns', 'step "A"', '  1 dribbles to right slot', 'step "B"', '  3 cuts to rim', '  1 passes to 2', '  look 2: three',
      'step "C" instead of "B" when "they deny"', '  5 flashes to nail', '  1 passes to 5', '  look 5: jumper',
    ));
    const counter = runNamed(timeline, 'c?5.1');
    expect(has(counter, 'b/3.1:start')).toBe(true);
    expect(has(counter, 'b?2.1')).toBe(false);
  });

  it.each([
    ['4 keeps the ball', ['b/1.1:catch']],
    ['4 holds it for 2 seconds', ['b/1.1:catch']],
    ['2 drives to rim', ['b/1.1:catch', 'b/4.1:take']],
    ['4 passes to 3', ['b/1.1:catch']],
  ])('who begins with the ball in it has it by what the replaced step tells: %s', (line, kept) => {
    const timeline = timelineOf(playText('from horns', 'step "A"', '  3 lifts to left wing', 'step "B"', '  1 passes to 4', '  4 hands off to 2', '  look 2: jumper', 'step "C" instead of "B" when "they jump it"', `  ${line}`, '  5 cuts to left block', '  look 5: layup'));
    expect(codesOf(timeline)).toEqual([]);
    const counter = runNamed(timeline, 'c?5.1');
    expect(kept.map((id) => has(counter, id))).toEqual(kept.map(() => true));
    expect(has(counter, 'b?2.1')).toBe(false);
  });

  it('a counter whose first with the ball has it anyway keeps no pass for it', () => {
    const timeline = timelineOf(playText('from horns', 'step "B"', '  1 passes to 4', '  look 4: jumper', 'step "C" instead of "B" when "they deny"', '  1 drives to rim', '  look 1: layup'));
    expect(has(runNamed(timeline, 'c?1.1'), 'b/1.1')).toBe(false);
  });
});
