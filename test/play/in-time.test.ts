// What the words of a line do once they are scheduled: text to timeline.
import { describe, expect, it } from 'vitest';
import { distance } from '../../language/court/point.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { codesOf, eventNamed, playText, runNamed, timelineOf } from '../support/timeline-of.ts';

const steps = (...lines: readonly string[]) => timelineOf(playText('from 5-out', 'call with 30 on the clock, shot clock 24', ...lines));

function catchOf(run: Run, to: string): { readonly x: number; readonly y: number } {
  const flight = run.ball.findLast((state) => state.kind === 'flight' && state.receiver === to);
  if (flight?.kind !== 'flight') throw new Error(`no pass to ${to}`);
  return flight.to;
}

function endOf(run: Run, who: '1' | '2' | '3' | '4' | '5') {
  const track = run.tracks[who]!;
  const last = track.segments.at(-1);
  return last === undefined ? track.start : last.path.at(-1)!;
}

describe('without a place', () => {
  const ends = (who: '2' | '3' | '4' | '5' | '1', from: string, ...lines: readonly string[]) => {
    const { x, y } = endOf(timelineOf(playText(from, ...lines)).runs[0]!, who);
    return [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
  };
  it('a shallow cut crosses the top, to the place there that is open', () => {
    expect(ends('1', 'from 5-out', '1 passes to 2', '1 shallow-cuts')).toEqual([-2.2, 6.8]);
    expect(ends('3', 'from 5-out', '1 dribbles to left wing', '3 shallow-cuts')).toEqual([2.2, 6.8]);
    expect(ends('2', 'from 4-out 1-in', '1 passes to 3', '2 shallow-cuts')).toEqual([0, 7.2]);
  });
  it('a lift leads to the next spot up the arc', () => {
    expect(ends('2', 'from horns', '2 lifts')).toEqual([5.8, 4.2]);
    expect(ends('3', 'from 1-4 high', '3 lifts')).toEqual([-2.2, 6.8]);
    expect(ends('2', 'from 4-out 1-in', '2 lifts')).toEqual([0, 7.2]);
  });
  it('a straight cut off a screen comes up the arc, another goes to the rim', () => {
    expect(ends('2', 'from box', '4 screens down for 2', '2 straight-cuts off 4')).toEqual([5.8, 4.2]);
    expect(ends('4', 'from horns', '4 straight-cuts')).toEqual([0, 0.6]);
  });
  it('who flashes and stands at the ball-side elbow comes to the ball', () => {
    expect(ends('4', 'from horns', '4 flashes')).toEqual([0, 4.4]);
    expect(ends('4', 'from horns, ball with 2', '4 flashes')).toEqual([2.8, 2.5]);
    expect(ends('4', 'from 1-4 low', '4 flashes')).toEqual([2.8, 4.2]);
  });
  it('behind a man in the corner is on the floor', () => {
    expect(ends('2', 'from 5-out', '2 cuts to behind 5')).toEqual([-7.2, 0.5]);
    expect(ends('2', 'from 5-out', '2 cuts to behind 3')).toEqual([-6.5, 4.8]);
  });
});

describe('over half court', () => {
  const back = 'from 1 left backcourt, 2 right backcourt, 3 half court, 4 and 5 wings';
  const end = (...lines: readonly string[]) => {
    const { x, y } = endOf(timelineOf(playText(...lines)).runs[0]!, '1');
    return [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
  };
  it('is straight on from where he is, on the side that is said, and no way for who is over it', () => {
    expect(end(back, '1 dribbles over half court')).toEqual([-4, 11.9]);
    expect(end(back, '1 dribbles up the right side past half court')).toEqual([4, 11.9]);
    expect(end('from 5-out', '1 dribbles across half court')).toEqual([0, 7.2]);
    expect(end(back.replace('3 half court', '3 left corner'), '1 dribbles to half court')).toEqual([0, 11.9]);
  });
});

describe('a look', () => {
  it('on a cut finds its man on that cut, whatever he does next', () => {
    const run = runNamed(steps('1 passes to 2', '1 cuts to rim, then clears to left corner', 'look 1 on the cut: layup'), 'start?1.1');
    const at = catchOf(run, '1');
    expect(at.x).toBe(0);
    expect(at.y).toBeLessThan(5);
    expect(run.tracks['1']!.segments.every(({ path }) => path.every(({ x }) => Math.abs(x) < 0.01))).toBe(true);
  });

  it('at a place comes when he is there', () => {
    const run = runNamed(steps('1 passes to 3', '5 cuts to rim via left elbow', 'look 5 at left elbow: jumper'), 'start?5.1');
    expect(distance(catchOf(run, '5'), { x: -2.8, y: 4.225 })).toBeLessThan(0.7);
  });

  it('at a place where he stands asks for nothing', () => {
    expect(codesOf(steps('1 passes to 2', 'look 4 at right corner: three'))).toEqual([]);
  });

  it('some seconds later comes so much later', () => {
    const read = (words: string) => eventNamed(runNamed(steps('1 passes to 2', `look 2${words}: three`), 'start?2.1'), 'start?2.1:read').at;
    expect(read(' 2 seconds later') - read('')).toBe(2000);
  });

  it('at a time on a clock comes with that on it', () => {
    const read = (words: string) => eventNamed(runNamed(steps('1 passes to 2', `look 2 ${words}: three`), 'start?2.1'), 'start?2.1:read').at;
    expect(read('at 20 on the clock')).toBe(10_000);
    expect(read('when 10 seconds are left on the shot clock')).toBe(14_000);
  });
});

describe('a step for what is left on the clock', () => {
  it('opens with the most of it', () => {
    const run = runNamed(steps('step "A"', '1 passes to 2', 'step "B" when 15 to 18 seconds are left', '2 drives', 'look 2: layup'), 'b?2.1');
    expect(eventNamed(run, 'b:open').at).toBe(12_000);
  });

  it('is told when less is left than the least of it', () => {
    const late = steps('step "A"', '1 holds for 20 seconds, 1 passes to 2', 'step "B" when 15 to 18 seconds are left', '2 drives');
    expect(codesOf(late)).toContain('time-not-kept');
  });

  it('needs a clock', () => {
    expect(codesOf(timelineOf(playText('from 5-out', 'step "A"', '1 passes to 2', 'step "B" when 5 seconds are left', '2 drives')))).toContain('clock-unknown');
  });
});

describe('a place said with something else', () => {
  it('is where he shoots, takes the hand-off, holds', () => {
    const shot = runNamed(steps('1 passes to 2', '2 shoots a jumper from right elbow'), 'start');
    expect(shot.ball.find(({ kind }) => kind === 'shot')).toMatchObject({ from: { x: 2.8, y: 4.225 } });
    const handOff = runNamed(steps('1 hands off to 2 at right slot', '2 drives'), 'start');
    expect(Math.abs(endOf(handOff, '1').x - 2.201)).toBeLessThan(0.01);
    expect(endOf(runNamed(steps('4 holds at right elbow', '1 passes to 2'), 'start'), '4')).toEqual({ x: 2.8, y: 4.225 });
  });

  it('is the safety\'s, and the ball comes to him there', () => {
    const run = runNamed(steps('3 is the safety at left slot', '1 passes to 2', 'look 2: three'), 'start~safety');
    expect(endOf(run, '3').x).toBeLessThan(0);
    expect(run.ball.at(-1)).toMatchObject({ kind: 'flight', receiver: '3' });
  });

  it('is shared out between two who come from one side', () => {
    const run = runNamed(timelineOf(playText('from 1 top, 2 right corner, 3 right elbow, 4 left block, 5 left elbow', '2 and 3 sprint to the slots', '1 passes to 2')), 'start');
    expect([Math.sign(endOf(run, '2').x), Math.sign(endOf(run, '3').x)].sort()).toEqual([-1, 1]);
  });
});

describe('a gate', () => {
  const gate = () => timelineOf(playText('from 1 top, 2 at rim, 3 left wing, 4 left elbow, 5 right elbow', '4 and 5 screen for 2 at left elbow and right elbow', '2 cuts between 4 and 5 to right slot', '1 passes to 2', 'look 2: three'));

  it('is used by the man who goes through the middle of it', () => {
    const run = runNamed(gate(), 'start?2.1');
    expect(run.screens.map(({ by, users }) => [by, users])).toEqual([['4', ['2']], ['5', ['2']]]);
    expect(run.tracks['2']!.segments[0]!.path.at(-1)).toEqual({ x: 0, y: 4.225 });
    expect(codesOf(gate())).not.toContain('off-nobody');
  });
});

describe('a gate that shuts', () => {
  it('shuts half-way once he has come through', () => {
    const run = runNamed(timelineOf(playText('from 1 top, 2 at rim, 3 left wing, 4 left elbow, 5 right elbow', '2 cuts between 4 and 5 to right slot', '4 and 5 close behind him', '1 passes to 2', 'look 2: three')), 'start?2.1');
    const through = run.tracks['2']!.segments[0]!.t1;
    expect(eventNamed(run, 'start/4.1:start').at).toBeGreaterThan(through);
    expect(eventNamed(run, 'start/4.1:start').at).toBeLessThan(through + 500);
    expect(endOf(run, '4').x).toBeCloseTo(-1.4, 1);
  });
});

describe('a place reached on the way', () => {
  it('is reached when he comes by, not when he sets out nor when he is through', () => {
    const run = runNamed(steps('2 cuts to left corner via nail', 'once 2 reaches the nail, 4 lifts', '1 passes to 3'), 'start');
    const [first, second] = run.tracks['2']!.segments;
    expect(eventNamed(run, 'start/4.1:start').at).toBeGreaterThan(first!.t1);
    expect(eventNamed(run, 'start/4.1:start').at).toBeLessThan(second!.t1);
    const as = runNamed(steps('2 cuts to left corner via nail', 'as 2 reaches the nail, 4 lifts', '1 passes to 3'), 'start');
    expect(eventNamed(as, 'start/4.1:start').at).toBe(first!.t1);
  });
});

describe('steps repeated for a time', () => {
  it('fill it, and no more of them begin', () => {
    const timeline = steps('step "A"', '1 passes to 2', 'step "Swing"', '2 passes to 1', '1 passes to 2', 'step "Run" repeats "Swing" for 10 seconds', 'step "Go"', '2 drives', 'look 2: layup');
    const run = runNamed(timeline, 'go?2.1');
    const opens = run.events.filter(({ kind, part }) => kind === 'open' && (part.startsWith('run~') || part === 'go'));
    expect(opens.length).toBeGreaterThan(4);
    expect(opens.at(-2)!.at - opens[0]!.at).toBeLessThan(10_000);
    expect(opens.at(-1)!.at - opens[0]!.at).toBeGreaterThanOrEqual(10_000);
  });
});
