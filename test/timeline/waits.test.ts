import { describe, expect, it } from 'vitest';
import { LEVELS } from '../../language/motion/levels.ts';
import type { Run } from '../../language/timeline/timeline.ts';
import { codesOf, eventNamed, playText, timelineOf } from '../support/timeline-of.ts';

const reaction = Math.round(LEVELS.u14.reaction * 1000);
const at = (run: Run, id: string): number => eventNamed(run, id).at;
const run = (...lines: readonly string[]): Run => timelineOf(playText(...lines)).runs[0]!;

describe('rule 18: written waits and times', () => {
  it('`2 seconds later` adds to the start that would hold otherwise', () => {
    const plain = run('from horns', 'step "Go"', '  1 dribbles to right slot', '  2 cuts to rim');
    const later = run('from horns', 'step "Go"', '  1 dribbles to right slot', '  2 seconds later, 2 cuts to rim');
    expect(at(later, 'go/2.1:start')).toBe(at(plain, 'go/2.1:start') + 2000);
  });

  it('`as 5 cuts` goes with him, without a reaction', () => {
    const both = run('from horns', 'step "Go"', '  1 second later, 5 cuts to rim', '  as 5 cuts, 2 cuts to left slot');
    expect(at(both, 'go/2.1:start')).toBe(at(both, 'go/5.1:start'));
  });

  it('`once 5 cuts` waits until he is there, and one reaction', () => {
    const one = run('from horns', 'step "Go"', '  5 cuts to rim', '  once 5 cuts, 2 cuts to left slot');
    expect(at(one, 'go/2.1:start')).toBe(at(one, 'go/5.1:arrive') + reaction);
    expect(eventNamed(one, 'go/2.1:start').because).toMatchObject({ from: 'go/5.1:arrive', reason: 'written-wait' });
  });

  it('`as 2 comes off 4` goes with him at the shoulder, whatever his move off the screen is called', () => {
    const lines = ['from 1 at top, 2 at right block, 3 at left corner, 4 at right elbow, 5 at left block', 'step "Go"', '  4 screens for 2', '  2 cuts off 4 to left slot', '  as 2 comes off 4, 3 cuts to rim'];
    expect(codesOf(timelineOf(playText(...lines)))).toEqual([]);
    const one = run(...lines);
    expect(at(one, 'go/3.1:start')).toBe(at(one, 'go/4.1:use.2'));
  });

  it.each([
    ['5 cuts to rim', 'a second after 5 cuts', 'go/5.1:start'],
    ['5 cuts to rim', 'a second after 5 arrives', 'go/5.1:arrive'],
    ['4 screens for 1', 'a second after 4 is set', 'go/4.1:set'],
    ['1 passes to 3', 'a second after 3 catches', 'go/1.1:catch'],
    ['1 passes to 3', 'a second after 1 passes', 'go/1.1:release'],
  ])('%s, `%s`: that much after it, and no reaction', (above, wait, event) => {
    for (const line of [`  ${wait}, 2 cuts to left slot`, `  2 cuts to left slot ${wait}`]) {
      const one = run('from horns', 'step "Go"', `  ${above}`, line);
      expect(at(one, 'go/2.1:start')).toBe(at(one, event) + 1000);
    }
  });

  it('a look `a second after 5 cuts`', () => {
    const lines = ['from horns', 'step "Go"', '  5 cuts to left block', '  4 steps out'] as const;
    const later = run(...lines, '  look 1 a second after 5 cuts: jumper');
    expect(at(later, 'go?1.1:read')).toBe(at(later, 'go/5.1:start') + 1000);
  });

  it.each(['5 lifts to left elbow as 1 dribbles', 'and as 1 dribbles, 5 lifts to left elbow', 'and at the same time 5 lifts to left elbow', '5 lifts to left elbow at the same time', 'while 5 lifts to left elbow'])('a link of another man that says with what it begins waits for that alone: `1 dribbles …, %s`', (link) => {
    const one = run('from 5-out', 'step "Go"', `  1 dribbles to right slot${/^\d/.test(link) ? ',' : ''} ${link}`);
    expect(at(one, 'go/5.1:start')).toBe(at(one, 'go/1.1:start'));
  });

  it('`4 flashes and 5 ducks in`: two men each his own way begin together; after a comma, a pass or a screen for him the second waits', () => {
    const start = (line: string, id: string) => at(run('from horns', 'step "Go"', `  ${line}`), id);
    expect(start('4 flashes to nail and 5 cuts to rim', 'go/5.1:start')).toBe(start('4 flashes to nail', 'go/4.1:start'));
    expect(start('4 flashes to nail, 5 cuts to rim', 'go/5.1:start')).toBe(start('4 flashes to nail', 'go/4.1:arrive') + reaction);
    expect(start('1 passes to 4 and 5 cuts to rim', 'go/5.1:start')).toBe(start('1 passes to 4', 'go/1.1:catch') + reaction);
    const used = run('from horns', 'step "Go"', '  4 screens for 2 and 2 cuts off 4 to top');
    expect(at(used, 'go/4.1:use.2')).toBeGreaterThanOrEqual(at(used, 'go/4.1:set'));
  });

  it('`once 3 has run by 5`, who screens for nobody: when he is there', () => {
    const one = run('from 5-out', 'step "Go"', '  3 runs to left block', '  5 steps out to right wing once 3 goes past 5');
    expect(at(one, 'go/5.1:start')).toBe(at(one, 'go/3.1:arrive') + reaction);
  });

  it.each(['1 passes to 2, and once he catches it, 5 cuts to rim', '1 passes to 2, then when he catches it 5 cuts to rim'])('a wait may stand before a link: %s', (line) => {
    const one = run('from 5-out', 'step "Go"', `  ${line}`);
    expect(at(one, 'go/5.1:start')).toBe(at(one, 'go/1.1:catch') + reaction);
  });

  it('`and a second later` counts from the link before it', () => {
    const one = run('from 5-out', 'step "Go"', '  1 passes to 2 and a second later 5 cuts to rim');
    expect(at(one, 'go/5.1:start')).toBe(at(one, 'go/1.1:catch') + reaction + 1000);
  });

  it('`when 2 catches` waits for the ball to come to him', () => {
    const one = run('from horns', 'step "Go"', '  1 passes to 2', '  when 2 catches, 5 cuts to rim');
    expect(at(one, 'go/5.1:start')).toBe(at(one, 'go/1.1:catch') + reaction);
  });

  it('`once 4 is set` waits for his screen', () => {
    const one = run('from horns', 'step "Go"', '  4 screens for 1', '  once 4 is set, 3 cuts to rim');
    expect(at(one, 'go/3.1:start')).toBe(at(one, 'go/4.1:set') + reaction);
  });

  it('speaks of the latest such event above, else of the first below it', () => {
    const below = run('from horns', 'step "Go"', '  once 5 cuts, 2 cuts to left slot', '  5 cuts to rim', '  5 cuts to left block');
    expect(at(below, 'go/2.1:start')).toBe(at(below, 'go/5.1:arrive') + reaction);
    const above = run('from horns', 'step "Go"', '  5 cuts to rim', '  5 cuts to left block', '  once 5 cuts, 2 cuts to left slot');
    expect(at(above, 'go/2.1:start')).toBe(at(above, 'go/5.2:arrive') + reaction);
  });

  it('`once 4 has given it up` is a hand-off too, and `the elbow` is the one he goes to', () => {
    const timeline = timelineOf(playText('from 5-out', 'step "Go"', '  1 dribbles at 4', '  1 hands off to 4', '  1 cuts to rim once he has given it up', '  3 stays in the corner until 4 gets to the elbow, then lifts to the wing', '  4 drives to left elbow', '  look 4: jumper'));
    expect(codesOf(timeline)).not.toContain('wait-unknown');
  });

  it.each(['goes', 'drives', 'turns the corner', 'dribbles'])('`as 1 %s` is with him who goes right off a screen, whatever his line calls it', (does) => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  4 ball-screens for 1', '  1 goes right off 4 to right elbow', `  3 lifts to the left wing as 1 ${does}`));
    expect(codesOf(timeline)).toEqual([]);
    expect(at(timeline.runs[0]!, 'go/3.1:start')).toBe(at(timeline.runs[0]!, 'go/1.1:start'));
  });

  it('who is open has run his way, or is by his screener; of a pass it is the man it goes to', () => {
    const flash = run('from 5-out', 'step "Go"', '  4 flashes to the nail', '  1 passes to 4 when she is open');
    expect(at(flash, 'go/1.1:release')).toBe(at(flash, 'go/4.1:arrive') + reaction);
    const curl = run('from horns', 'step "Go"', '  5 screens for 3', '  3 curls off 5 to the rim', '  once 3 is free, 2 cuts to left slot');
    const use = curl.events.find(({ kind }) => kind === 'use')!;
    expect(at(curl, 'go/2.1:start')).toBe(use.at + reaction);
  });

  it('nobody is open who does nothing', () => {
    expect(codesOf(timelineOf(playText('from 5-out', 'step "Go"', '  1 passes to 4 when 4 is open')))).toEqual(['wait-unknown']);
  });

  it('a line that has the name counts before one that is called otherwise', () => {
    const one = run('from horns', 'step "Go"', '  1 dribbles to right slot', '  1 drives to rim', '  1 dribbles to left corner', '  as 1 drives, 2 cuts to left slot');
    expect(at(one, 'go/2.1:start')).toBe(at(one, 'go/1.2:start'));
  });

  it('`as 2 steps in` of the thrower is with his release, `once` when he is in', () => {
    const text = (how: string): readonly string[] => ['from line', '2 takes the ball out from the right sideline', 'step "Go"', '  3 cuts to the right corner', '  2 throws it to 3', `  ${how} 2 steps in, 5 cuts to rim`];
    const together = timelineOf(playText(...text('as')));
    expect(codesOf(together)).toEqual([]);
    expect(at(together.runs[0]!, 'go/5.1:start')).toBe(at(together.runs[0]!, 'go/2.1:release'));
    const then = run(...text('once'));
    expect(at(then, 'go/5.1:start')).toBeGreaterThan(at(then, 'go/2.1:release') + 300 + reaction);
  });

  it('a wait for something that never happens is told and dropped', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  once 4 rolls, 2 cuts to left slot'));
    expect(codesOf(timeline)).toEqual(['wait-unknown']);
    expect(timeline.problems[0]!.params).toEqual({ who: '4', does: 'roll' });
    expect(at(timeline.runs[0]!, 'go/2.1:start')).toBe(at(timeline.runs[0]!, 'go:open'));
  });

  it('a time on the clock pins the start, counted from the call', () => {
    const one = run('from horns', 'call with 14 on the clock', 'step "Go"', '  at 8 on the clock, 1 drives to rim');
    expect(at(one, 'go/1.1:start')).toBe(6000);
  });

  it('a time that cannot be kept is told with the missing seconds', () => {
    const timeline = timelineOf(playText('from horns', 'call with 14 on the clock', 'step "Go"', '  at 13 on the clock, 1 drives to rim'));
    expect(codesOf(timeline)).toEqual(['time-not-kept']);
    expect(timeline.problems[0]!.params).toEqual({ who: '1', seconds: 1.9 });
  });

  it('a clock the play does not give is told', () => {
    expect(codesOf(timelineOf(playText('from horns', 'step "Go"', '  at 8 on the clock, 1 drives to rim')))).toEqual(['clock-unknown']);
  });
});

describe('rule 19: circles of waits', () => {
  it('one finding names every line of the circle, and the last written wait is dropped', () => {
    const timeline = timelineOf(playText('from horns', 'step "Go"', '  once 3 cuts, 2 cuts to left slot', '  once 2 cuts, 3 cuts to rim'));
    expect(codesOf(timeline)).toEqual(['waits-in-circle']);
    expect(timeline.problems[0]!.related).toEqual(expect.arrayContaining(['go/2.1', 'go/3.1']));
    const only = timeline.runs[0]!;
    expect(at(only, 'go/3.1:start')).toBe(at(only, 'go:open'));
    expect(at(only, 'go/2.1:start')).toBe(at(only, 'go/3.1:arrive') + reaction);
  });

  it('without a written wait the pass goes to the man at rest, who then starts', () => {
    const timeline = timelineOf(playText('from box', 'step "Go"', '  2 screens down for 3', '  1 passes to 2', '  3 ball-screens for 2, then rolls', '  2 drives off 3 to left wing'));
    expect(codesOf(timeline)).toContain('waits-in-circle');
    const only = timeline.runs[0]!;
    expect(at(only, 'go/2.1:start')).toBeGreaterThanOrEqual(at(only, 'go/1.1:catch'));
  });
});
