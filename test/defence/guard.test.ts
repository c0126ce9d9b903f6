import { describe, expect, it } from 'vitest';
import { distance } from '../../language/court/point.ts';
import { guard } from '../../language/defence/guard.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import type { BodyId } from '../../language/play/play.ts';
import { DEFENCE } from '../../language/play/play.ts';
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
    for (const who of DEFENCE) expect(defenders[who]!.points.length * 100).toBeGreaterThanOrEqual(main.end);
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
          if (before !== undefined) expect(distance(point, before)).toBeLessThanOrEqual(LEVELS.u14.vmax * 0.1 + 0.002);
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

  it('the offence is the same with and without a defence', () => {
    const { play: bare } = readingOf(lighthouse.replace('  against man\n', ''));
    expect(JSON.stringify(schedule(bare).runs)).toBe(JSON.stringify(runs));
  });

  it('the same run-through is guarded in the same way', () => {
    expect(JSON.stringify(guard(play, main))).toBe(JSON.stringify(guard(play, main)));
  });
});
