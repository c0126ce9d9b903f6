import { describe, expect, it } from 'vitest';
import { distance } from '../../language/court/point.ts';
import { guard, guardRuns } from '../../language/defence/guard.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import type { BodyId } from '../../language/play/play.ts';
import { DEFENCE, OFFENCE } from '../../language/play/play.ts';
import { schedule } from '../../language/timeline/schedule.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { lighthouse, playText, readingOf } from '../support/timeline-of.ts';

const { play } = readingOf(lighthouse);
const { runs } = schedule(play);
const main = runs[0]!;

function placeAt(frames: NonNullable<ReturnType<typeof guard>['X1']>, ms: number): { x: number; y: number } {
  return frames.points[Math.min(frames.points.length - 1, Math.round((ms - frames.t0) / frames.stepMs))]!;
}

describe('man-to-man defence', () => {
  it('five defenders stand for the whole run-through, none where the play asks for no defence', () => {
    const defenders = guard(play, main);
    expect(Object.keys(defenders)).toEqual([...DEFENCE]);
    for (const who of DEFENCE) expect((defenders[who]!.points.length - 1) * defenders[who]!.stepMs).toBeGreaterThanOrEqual(main.end);
    const { play: alone } = readingOf(playText('from horns', 'step "Go"', '  1 passes to 2', '  look 2: three'));
    expect(guard({ ...alone, defence: { value: { kind: 'none' }, origin: 'default' } }, schedule(alone).runs[0]!)).toEqual({});
  });

  it('at the call each stands between his man and the rim, the ball man closest', () => {
    const defenders = guard(play, main);
    const gaps = DEFENCE.map((who, index) => {
      const man = trackAt(main.tracks[String(index + 1) as BodyId]!, 0);
      const place = placeAt(defenders[who]!, 0);
      expect(distance(place, { x: 0, y: 0 })).toBeLessThan(distance(man, { x: 0, y: 0 }));
      return distance(place, man);
    });
    expect(gaps[0]).toBeLessThan(1.2);
  });

  it('nobody is faster than his level, and places are whole millimetres', () => {
    for (const run of runs) {
      for (const frames of Object.values(guard(play, run))) {
        frames!.points.forEach((point, index) => {
          expect(Math.round(point.x * 1000) / 1000).toBe(point.x);
          const before = frames!.points[index - 1];
          if (before !== undefined) expect(distance(point, before)).toBeLessThanOrEqual(LEVELS.u14.vmax * 0.2 + 0.002);
        });
      }
    }
  });

  it('X4 shows on 3 when the text says so, and is back with his man afterwards', () => {
    const slip = runs.find(({ id }) => id === 'slip?4.1')!;
    const cue = slip.events.find(({ id }) => id === 'slip:start.X4')!.at;
    const x4 = guard(play, slip)['X4']!;
    const before = distance(placeAt(x4, cue), trackAt(slip.tracks['3']!, cue));
    const shown = distance(placeAt(x4, cue + 1000), trackAt(slip.tracks['3']!, cue + 1000));
    expect(shown).toBeLessThan(before);
    const main4 = guard(play, main)['X4']!;
    expect(placeAt(x4, cue + 800)).not.toEqual(placeAt(main4, cue + 800));
  });

  it('two defenders who switch guard each other’s men from then on', () => {
    const { play: switching } = readingOf(playText(
      'from horns', 'against man', 'step "A"', '  1 dribbles to right slot', 'step "B"', '  5 ball-screens for 1', '  1 drives off 5 to left wing',
      'step "C" instead of "B" when X5 switches to 1', '  1 dribbles to left wing', '  5 cuts to rim', '  look 5: layup',
    ));
    const run = schedule(switching).runs.find(({ id }) => id === 'c?5.1')!;
    const defenders = guard(switching, run);
    const late = run.end;
    const gap = (who: 'X1' | 'X5', man: '1' | '5'): number => distance(placeAt(defenders[who]!, late), trackAt(run.tracks[man]!, late));
    expect(gap('X5', '1')).toBeLessThan(gap('X1', '1'));
  });

  it('no defender stands on one of ours at rest, so that both numbers can be read', () => {
    for (const run of runs) {
      const defenders = guard(play, run);
      for (let t = 0; t <= run.end; t += 200) {
        for (const man of OFFENCE) {
          if (distance(trackAt(run.tracks[man]!, t), trackAt(run.tracks[man]!, Math.max(0, t - 400))) > 0) continue;
          for (const who of DEFENCE) expect(distance(placeAt(defenders[who]!, t), trackAt(run.tracks[man]!, t)), `${run.id} ${who} ${t}`).toBeGreaterThan(0.7);
        }
      }
    }
  });

  it('far from the ball he helps: with his man in the corner and the ball on the other wing, a foot is in the lane', () => {
    const x2 = guard(play, main)['X2']!;
    const wing = main.events.find(({ id }) => id === 'zip/1.1:arrive')!.at;
    expect(Math.abs(placeAt(x2, wing + 1500).x)).toBeLessThan(3.6);
    expect(distance(placeAt(x2, wing + 1500), { x: 0, y: 0 })).toBeGreaterThan(1.5);
  });

  it('what run-throughs share is guarded alike, and all together as each alone', () => {
    expect(JSON.stringify(guardRuns(play, runs))).toBe(JSON.stringify(runs.map((run) => guard(play, run))));
    const [a, b] = [guard(play, runs[0]!), guard(play, runs[2]!)];
    const parting = runs[0]!.events.find(({ id }) => id === 'middle?3.1:read')!.at;
    // A dribble that a look cuts short ends on a whole millimetre.
    for (const who of DEFENCE) a[who]!.points.slice(0, Math.floor(parting / 200)).forEach((point, index) => expect(distance(point, b[who]!.points[index]!)).toBeLessThan(0.005));
  });

  it.each(['X4 shows on 1', 'X1 goes under 4', 'X1 goes over 4', 'X1 and X3 trap 1', 'X2 denies 2', 'X5 helps', 'X3 trails 3', 'X4 drops', 'X3 sags', 'X2 stays home', 'X5 guards 1', 'X5 fronts 5', 'X1 goes behind 4'])('%s is seen', (told) => {
    const lines = (cue: string): string => playText('from horns', 'against man', 'step "A"', '  4 ball-screens for 1', ...(cue === '' ? [] : [`  once 4 is set, ${cue}`]), '  1 drives off 4 to right wing', '  look 1: jumper');
    const frames = (text: string): string => {
      const { play: read } = readingOf(text);
      return JSON.stringify(guard(read, schedule(read).runs[0]!));
    };
    expect(frames(lines(told))).not.toBe(frames(lines('')));
  });

  it('the offence is the same with and without a defence', () => {
    const { play: bare } = readingOf(lighthouse.replace('  against man\n', ''));
    expect(JSON.stringify(schedule(bare).runs)).toBe(JSON.stringify(runs));
  });

  it('the same run-through is guarded in the same way', () => {
    expect(JSON.stringify(guard(play, main))).toBe(JSON.stringify(guard(play, main)));
  });
});

describe('a zone', () => {
  const zoneOf = (formation: string, ...lines: readonly string[]) => {
    const { play: read } = readingOf(playText('from 5-out', `against ${formation}`, 'step "A"', ...lines));
    const run = schedule(read).runs[0]!;
    return { run, defenders: guard(read, run) };
  };

  it('stands in its rows: two before three, three before two', () => {
    const ys = (formation: string): readonly number[] => DEFENCE.map((who) => placeAt(zoneOf(formation, '  1 passes to 2').defenders[who]!, 0).y).sort((a, b) => b - a);
    expect(ys('2-3').filter((y) => y > 4)).toHaveLength(2);
    expect(ys('3-2').filter((y) => y > 4)).toHaveLength(3);
    const oneThreeOne = ys('1-3-1');
    expect(oneThreeOne[0]! - oneThreeOne[1]!).toBeGreaterThan(0.8);
    expect(oneThreeOne[3]! - oneThreeOne[4]!).toBeGreaterThan(0.8);
  });

  it('shifts with the ball, and one of them goes to it', () => {
    const { run, defenders } = zoneOf('2-3', '  1 passes to 2', '  2 holds for 2 seconds');
    const holder = trackAt(run.tracks['2']!, run.end);
    const mean = (ms: number): number => DEFENCE.reduce((sum, who) => sum + placeAt(defenders[who]!, ms).x, 0) / 5;
    expect(Math.sign(mean(run.end))).toBe(Math.sign(holder.x));
    expect(Math.abs(mean(run.end) - mean(0))).toBeGreaterThan(0.8);
    expect(Math.min(...DEFENCE.map((who) => distance(placeAt(defenders[who]!, run.end), holder)))).toBeLessThan(1.2);
  });

  it('a press lies over the floor before the ball, and is back once the ball is at the other end', () => {
    const { play: read } = readingOf(playText('from 1 at the far free-throw line, 2 at right half court, 3 at left wing, 5 at rim', 'against 2-2-1 press', '4 inbounds from the far baseline', 'step "A"', '  4 inbounds to 1', '  1 passes to 2', '  2 passes to 3', '  3 holds for 3 seconds'));
    const run = schedule(read).runs[0]!;
    const defenders = guard(read, run);
    const before = DEFENCE.filter((who) => placeAt(defenders[who]!, 0).y > 14);
    expect(before.length).toBeGreaterThanOrEqual(4);
    for (const who of DEFENCE) expect(placeAt(defenders[who]!, run.end).y).toBeLessThan(9);
  });
});
