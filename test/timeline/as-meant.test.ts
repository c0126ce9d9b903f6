// What a coach's words mean where a machine could take them otherwise: where a way ends, and how long it is.
import { describe, expect, it } from 'vitest';
import type { Point } from '../../language/court/point.ts';
import { distance } from '../../language/court/point.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { playText, readingOf, timelineOf } from '../support/timeline-of.ts';

const run = (...lines: readonly string[]): Run => timelineOf(playText(...lines)).runs[0]!;

/** The corners of a way, where it began first; nothing where he stayed. */
function way(of: Run, action: string, who = /\/(\d)/.exec(action)![1]! as '1'): readonly Point[] {
  const segments = of.tracks[who]!.segments.filter((segment) => segment.action === action);
  return segments.length === 0 ? [] : [segments[0]!.path[0]!, ...segments.map(({ path }) => path.at(-1)!)];
}

function metres(points: readonly Point[]): number {
  return points.slice(1).reduce((sum, point, index) => sum + distance(points[index]!, point), 0);
}

function at({ events }: Run, id: string): number {
  return events.find((event) => event.id === id)!.at;
}

const elbow = { left: { x: -2.8, y: 4.225 }, right: { x: 2.8, y: 4.225 } };
const nail = { x: 0, y: 4.375 };
const near = (point: Point | undefined, to: Point): void => expect(distance(point!, to)).toBeLessThan(0.3);

describe('a drive with a direction', () => {
  it('ends where it names the floor if his next line stops there: not at the rim and back', () => {
    const one = run('from 4-out 1-in', 'step "Go"', '  1 drives left', '  1 stops at the left elbow', '  look 1: jumper');
    near(way(one, 'go/1.1').at(-1), elbow.left);
    expect(way(one, 'go/1.2')).toEqual([]);
  });

  it('`goes right off 4`, then `attacks the elbow`: the right one, on the way in', () => {
    const one = run('from horns', 'step "Go"', '  4 ball-screens for 1', '  1 goes right off 4', '  1 attacks the elbow', '  look 1: jumper');
    near(way(one, 'go/1.1').at(-1), elbow.right);
    expect(way(one, 'go/1.2')).toEqual([]);
  });

  it.each([
    ['drives off 4 going middle', nail], ['goes around the screen to the right', elbow.right],
  ])('`%s` before a look for his jumper: shot from there', (words, place) => {
    near(way(run('from horns', 'step "Go"', '  4 ball-screens for 1', `  1 ${words}`, '  look 1: pull-up jumper'), 'go/1.1').at(-1), place);
  });

  it.each(['look 1: layup', 'look 1 or 2: layup'])('goes to the rim before `%s`', (look) => {
    expect(way(run('from 4-out 1-in', 'step "Go"', '  1 drives left', `  ${look}`), 'go/1.1').at(-1)!.y).toBeLessThan(1);
  });

  it('goes to the rim before he is looked for there, and out of there afterwards', () => {
    const one = run('from 4-out 1-in', 'step "Go"', '  1 drives left', '  look 1: layup', '  1 drives to the left corner', '  look 1: three');
    expect(way(one, 'go/1.1').at(-1)!.y).toBeLessThan(1);
  });

  it('without a direction `stops at` says where it ends; `dribbles back out` is from the rim', () => {
    const text = (next: string): Run => run('from horns', 'step "Go"', '  4 ball-screens for 1', '  1 drives off 4', `  1 ${next}`, '  look 1: jumper');
    near(way(text('stops at the right elbow'), 'go/1.1').at(-1), elbow.right);
    expect(way(text('dribbles to the top'), 'go/1.1').at(-1)!.y).toBeLessThan(1);
  });
});

describe('`behind`', () => {
  it('a man who screens is off him', () => {
    const text = (how: string): Run => run('from 4-out 1-in', 'step "Go"', '  1 passes to 3', '  5 flare-screens for 2', `  2 fades ${how} 5 to the right corner`, '  3 skips to 2');
    expect(way(text('behind'), 'go/2.1')).toEqual(way(text('off'), 'go/2.1'));
  });

  it('a defender is towards the basket', () => {
    const cut = way(run('from 4-out 1-in', 'step "Go"', '  4 cuts behind X4'), 'go/4.1');
    expect(metres(cut)).toBeLessThan(7.5);
    const step = way(run('from 4-out 1-in', 'step "Go"', '  5 moves behind X2'), 'go/5.1').at(-1)!;
    const man = run('from 4-out 1-in', 'step "Go"', '  5 moves behind X2').tracks['2']!.start;
    expect(distance(step, man)).toBeLessThan(2.5);
    expect(distance(step, { x: 0, y: 0 })).toBeLessThan(distance(man, { x: 0, y: 0 }));
  });

  it('the ball’s man is no loop: `to the slot behind 2`, `steps in behind 1`', () => {
    const straight = way(run('from 4-out 1-in', 'step "Go"', '  1 passes to 3', '  2 relocates to the right wing'), 'go/2.1');
    expect(way(run('from 4-out 1-in', 'step "Go"', '  1 passes to 3', '  2 relocates to the right wing behind 3'), 'go/2.1')).toEqual(straight);
    const thrower = run('from 4-out 1-in', '4 takes it out from the left sideline', 'step "Go"', '  4 inbounds to 1', '  4 steps in behind 1');
    expect(metres(way(thrower, 'go/4.2'))).toBeLessThan(12);
  });
});

describe('`on the left side`', () => {
  const head = ['from 4-out 1-in', 'step "Go"'];

  it('of a pass moves nobody who is there, and brings one across who is not', () => {
    const there = run(...head, '  1 passes to 2 on the right side', '  look 2: three');
    expect(there.tracks['2']!.segments).toEqual([]);
    const across = run(...head, '  1 passes to 2 on the left side', '  look 2: three');
    expect(across.tracks['2']!.segments.at(-1)!.path.at(-1)!.x).toBeLessThan(-1);
  });

  it('of a screen leaves it where it stands for its man', () => {
    const text = (where: string): Run => run(...head, `  5 down-screens for 3${where}`, '  3 curls off 5 to the lane');
    expect(text(' on the left side').screens[0]!.at).toEqual(text('').screens[0]!.at);
    expect(text(' on the right side').screens[0]!.at.x).toBeGreaterThan(0);
  });

  it('of a post-up is the block, of a layup the ring’s left', () => {
    const end = way(run('from 5-out', 'step "Go"', '  4 posts up on the left side'), 'go/4.1').at(-1)!;
    near(end, { x: -2.8, y: 0.825 });
    const one = run(...head, '  1 passes to 5', '  look 5: layup on the left side');
    expect(one.tracks['5']!.segments.every(({ path }) => path.at(-1)!.x > -4)).toBe(true);
  });
});

describe('against a press', () => {
  const head = [
    'from 1 at right backcourt elbow, 2 at left backcourt elbow, 3 at left half court, 5 at right half court', 'against full-court press', '4 takes it out from the far baseline', 'step "Go"',
  ];

  it('`uses it and comes toward the ball` does not run to the far rim first', () => {
    const one = run(...head, '  2 screens for 1', '  1 uses it and comes toward the ball', '  4 inbounds to 1');
    expect(metres(way(one, 'go/1.1'))).toBeLessThan(12);
    expect(Math.min(...way(one, 'go/1.1').map(({ y }) => y))).toBeGreaterThan(14);
  });

  it('`the middle` is by half court while the ball is behind it, and the nail afterwards', () => {
    const one = run(...head, '  5 flashes to the middle', '  4 inbounds to 1', '  1 passes to 5', '  3 sprints to the left wing', '  5 passes to 3', '  1 sprints to the middle');
    expect(way(one, 'go/5.1').at(-1)!.y).toBeGreaterThan(11);
    near(way(one, 'go/1.2').at(-1) ?? way(one, 'go/1.1').at(-1), nail);
  });

  it('`up the middle` is up that of the floor, and to the rim once the ball is over half court', () => {
    const one = run(...head, '  2 runs up the middle', '  4 inbounds to 1', '  1 passes to 5', '  1 sprints up the middle');
    expect(way(one, 'go/2.1').at(-1)!.y).toBeGreaterThan(11);
    expect(run(...head, '  4 inbounds to 1', '  1 dribbles to the top', '  once 1 reaches the top, 5 runs up the middle').tracks['5']!.segments.at(-1)!.path.at(-1)!.y).toBeLessThan(2);
  });

  it('`fills the right lane wide and runs to the right wing` is one way, without the corner', () => {
    const one = run(...head, '  4 inbounds to 1', '  2 fills the right lane wide and runs to the right wing');
    expect(metres(way(one, 'go/2.1'))).toBeLessThan(distance(way(one, 'go/2.1')[0]!, way(one, 'go/2.1').at(-1)!) + 0.5);
  });

  it('`fills the right lane` is the strip of the floor, not the paint', () => {
    expect(way(run(...head, '  4 inbounds to 1', '  2 fills the right lane'), 'go/2.1').at(-1)!.x).toBeGreaterThan(5);
  });
});

it('`into the hole at the right slot` is the gap in the zone, at the slot', () => {
  const text = (words: string): string => playText('from 1-3-1', 'against a 2-3 zone', 'step "Go"', '  1 passes to 2', `  1 slides ${words}`);
  expect(way(timelineOf(text('into the hole at the right slot')).runs[0]!, 'go/1.2')).toEqual(way(timelineOf(text('to the right slot')).runs[0]!, 'go/1.2'));
  expect(readingOf(text('into the hole at the right slot')).problems).toEqual([]);
});

it('`turns the corner off the hand-off` is off nobody who screened before', () => {
  const text = (words: string): Run => run('from 5-out', 'step "Go"', '  1 passes to 2', '  1 screens for 3', '  3 comes off 1 to left slot', '  2 dribbles at 3 and hands it off', `  3 turns the corner${words}`, '  look 3: layup');
  expect(way(text(' off the hand-off'), 'go/3.2')).toEqual(way(text(''), 'go/3.2'));
});

it('a stack on the ball side stands where the thrower is', () => {
  const start = (side: string, where: string): number => run(`from stack on the ${side}: 1, 3, 4, 5 from the top down`, `2 takes it out of bounds on the ${where} side of the basket`, 'step "Go"', '  2 inbounds to 1').tracks['5']!.start.x;
  expect(start('ball side', 'left')).toBeLessThan(0);
  expect(start('ball side', 'right')).toBeGreaterThan(0);
  expect(start('weak side', 'left')).toBeGreaterThan(0);
});

it('`through the gate` is between the two told of last, and `together` beside each other', () => {
  const head = ['from horns', 'step "Go"', '  4 and 5 come together at the nail'];
  const gate = run(...head, '  2 runs through the gate to the top');
  expect(way(gate, 'go/2.1')).toEqual(way(run(...head, '  2 runs between 4 and 5 to the top'), 'go/2.1'));
  expect(distance(way(gate, 'go/4.1').at(-1)!, way(gate, 'go/5.1').at(-1)!)).toBeCloseTo(1);
  expect(readingOf(playText('from horns', 'step "Go"', '  2 runs through the gate to the top')).problems.map(({ code }) => code)).toEqual(['who-is-meant']);
});

it('`throws it back` is a pass, `throws it` one over the head', () => {
  const kind = (words: string): unknown => readingOf(playText('from 5-out', 'step "Go"', `  1 ${words} to 5`)).play.steps[0]!.actions[0];
  expect(kind('throws it back')).toMatchObject({ pass: { value: 'pass' } });
  expect(kind('throws it back out')).toMatchObject({ pass: { value: 'pass' } });
  expect(kind('throws it')).toMatchObject({ pass: { value: 'overhead' } });
  expect(kind('tosses it up')).toMatchObject({ pass: { value: 'lob' } });
});

it('`ducks under it and comes out to the corner` ends in the corner', () => {
  near(way(run('from 4-out 1-in', 'step "Go"', '  5 screens for 3', '  3 ducks under it and comes out to the left corner'), 'go/3.1').at(-1), way(run('from 4-out 1-in', 'step "Go"', '  3 cuts to the left corner'), 'go/3.1').at(-1)!);
});

describe('how a way begins and where it ends, in two clauses, is one way', () => {
  const horns = ['from horns', 'step "Go"', '  5 ball-screens for 1, then rolls'];

  it.each([
    ['1 uses 5 and gets to the left elbow', 'dribble'],
    ['1 comes off 5 and drives to the left elbow', 'dribble'],
    ['1 drives off 5 and gets to the left elbow', 'dribble'],
  ])('%s', (line, kind) => {
    const { play } = readingOf(playText(...horns, `  ${line}`));
    expect(play.steps[0]!.actions.filter(({ who }) => who === '1')).toMatchObject([{ kind, style: 'drive', off: ['5'], to: { value: { name: 'elbow', side: 'left' } } }]);
  });

  it('without the ball too', () => {
    const { play } = readingOf(playText('from horns', 'step "Go"', '  4 screens for 2', '  2 comes off 4 and cuts to the rim'));
    expect(play.steps[0]!.actions.filter(({ who }) => who === '2')).toMatchObject([{ kind: 'move', style: 'cut', off: ['4'], to: { value: { name: 'rim' } } }]);
  });

  it('so that “as 1 drives” is its beginning', () => {
    const one = run(...horns, '  1 turns the corner and drives to the rim', '  4 ducks in as 1 drives', '  look 1: layup');
    expect(at(one, 'go/4.1:start')).toBe(at(one, 'go/1.1:start'));
  });

  it('but a place on the way stays one', () => {
    const { play } = readingOf(playText(...horns, '  1 drives off 5 to left slot and goes to the rim'));
    expect(play.steps[0]!.actions.filter(({ who }) => who === '1')).toHaveLength(2);
  });
});

it('`once 5 is rolling` does not wait until he has rolled, `once 5 has rolled` does', () => {
  const four = (wait: string): number => {
    const one = run('from horns', 'step "Go"', '  5 ball-screens for 1, then rolls', '  1 drives off 5 to left elbow', `  ${wait}, 4 pops to the top`, '  look 4: three');
    return at(one, 'go/4.1:start') - at(one, 'go/5.2:start');
  };
  expect(four('once 5 is rolling')).toBe(0);
  expect(four('once 5 has rolled')).toBeGreaterThan(500);
});

describe('`leaves` a place', () => {
  const five = (wait: string): Run => run('from 5-out', 'step "Go"', '  1 passes to 2', '  3 cuts to the rim', '  3 clears to the right corner', `  ${wait}, 5 lifts to the left wing`, '  look 5: three');

  it.each(['once 3 leaves the left wing', 'when 3 has left the wing'])('%s: a moment after he has set out from there', (wait) => {
    const one = five(wait);
    expect(at(one, 'go/5.1:start') - at(one, 'go/3.1:start')).toBeGreaterThan(100);
    expect(at(one, 'go/5.1:start') - at(one, 'go/3.1:start')).toBeLessThan(600);
  });

  it('from where his way before it ended', () => {
    const one = five('as 3 leaves the rim');
    expect(at(one, 'go/5.1:start')).toBe(at(one, 'go/3.2:start'));
  });

  it('from where the verb of his way before it ends', () => {
    const one = run('from 5-out', 'step "Go"', '  5 dives', '  5 clears to the right corner', '  as 5 leaves the rim, 4 lifts to the top', '  look 4: three');
    expect(at(one, 'go/4.1:start')).toBe(at(one, 'go/5.2:start'));
  });

  it('where he never stands there is nothing to wait for', () => {
    expect(timelineOf(playText('from 5-out', 'step "Go"', '  3 cuts to the rim', '  as 3 leaves the right wing, 5 lifts to the left wing')).problems.map(({ code }) => code)).toContain('wait-unknown');
  });
});

it('`dribbles to the right wing and hands off to 2`, who stands there, ends beside him and is not told of', () => {
  const found = (line: string) => timelineOf(playText('from 5-out', 'step "Go"', `  ${line}`)).problems.filter(({ code }) => code === 'spot-taken').length;
  expect(found('1 dribbles to the right wing and hands off to 2')).toBe(0);
  expect(found('1 dribbles to the right wing and hands off to 3')).toBe(1);
});

it('`replaces 3 on the left wing`: the place says where that is', () => {
  const read = readingOf(playText('from 5-out', 'step "Go"', '  3 cuts to the rim', '  5 replaces 3 on the left wing'));
  expect(read.problems).toEqual([]);
  expect(read.play.steps[0]!.actions[1]).toMatchObject({ to: { value: { name: 'wing', side: 'left' } } });
});

describe('counted steps', () => {
  const from = (line: string, who = '4'): readonly Point[] => way(run('from horns', 'step "Go"', `  ${line}`, '  look 1: jumper'), `go/${who}.1`);

  // Horns: 4 at the right elbow, 3 in the left corner, 1 at the top with the ball.
  it.each([
    ['4 takes two steps toward the ball', 1.5],
    ['4 takes a step up', 0.75],
    ['4 goes two steps down to the right corner', 1.5],
    ['4 moves 3 ft toward the right corner', 0.914],
    ['4 sinks a couple of steps toward the right corner', 1.5],
  ])('go so far on the way, not all of it: %s', (line, far) => expect(metres(from(line))).toBeCloseTo(far, 1));

  it('and never past it', () => expect(metres(from('4 moves 9 m toward the right elbow'))).toBe(0));

  it('of a dribble to one side are across the floor', () => {
    const [begins, ends] = from('1 takes one dribble to the right', '1');
    near(ends, { x: begins!.x + 2, y: begins!.y });
  });
});

it('a wait for a man who comes off the pick is one for him who comes off it', () => {
  const one = run('from horns', 'step "Go"', '  4 screens for 2', '  2 cuts off 4 to the top', '  when 2 comes off the pick, 5 dives', '  look 5: layup');
  expect(at(one, 'go/5.1:start')).toBeGreaterThanOrEqual(at(one, 'go/4.1:use.2'));
});

it('at the same time is with what an attacker does above, never a defender', () => {
  const one = run('from horns', 'step "Go"', '  1 second later, 2 cuts to the rim', '  X2 goes under', '  5 dives at the same time', '  look 5: layup');
  expect(at(one, 'go/5.1:start')).toBe(at(one, 'go/2.1:start'));
});
