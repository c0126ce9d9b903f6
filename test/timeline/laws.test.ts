import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { distance } from '../../language/court/point.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import { speedAt } from '../../language/motion/legs.ts';
import type { Play } from '../../language/play/play.ts';
import { OFFENCE } from '../../language/play/play.ts';
import { guard } from '../../language/defence/guard.ts';
import { schedule } from '../../language/timeline/schedule.ts';
import type { Run, TimedEvent } from '../../language/timeline/timeline.ts';
import { ballAt, trackAt } from '../../language/timeline/track.ts';
import { writtenPlays } from '../support/plays.ts';
import { widePlays } from '../support/wide-plays.ts';
import type { FloorLaw } from '../support/floor-laws.ts';
import { floorLaws } from '../support/floor-laws.ts';
import { readingOf } from '../support/timeline-of.ts';

/** `LAWS=5000` runs each of them on so many plays, `LAWS_SEED=7` on others. */
const many = { numRuns: Number(process.env['LAWS'] ?? 200), seed: Number(process.env['LAWS_SEED'] ?? 20_26) };
if (many.numRuns > 200) vi.setConfig({ testTimeout: many.numRuns * 500 });

function everyPlay(law: (play: Play) => void): void {
  fc.assert(fc.property(writtenPlays, ({ text }) => law(readingOf(text).play)), many);
}

function everyRun(law: (run: Run, play: Play) => void): void {
  everyPlay((play) => {
    for (const run of schedule(play).runs) law(run, play);
  });
}

describe('laws of every play', () => {
  it('the same play gives the same bytes', () => {
    everyPlay((play) => {
      expect(JSON.stringify(schedule(play))).toBe(JSON.stringify(schedule(JSON.parse(JSON.stringify(play)) as Play)));
    });
  });

  it('there is a run-through for every look and every end, and each one ends', () => {
    everyPlay((play) => {
      const { runs } = schedule(play);
      expect(runs.length).toBeGreaterThan(0);
      const looks = play.steps.flatMap((step) => step.looks.map(({ id }) => id));
      for (const look of looks) expect(runs.filter(({ id }) => id === look)).toHaveLength(1);
      for (const run of runs) expect(Number.isInteger(run.end) && run.end >= 0).toBe(true);
    });
  });

  it('the ball is always in exactly one place', () => {
    everyRun((run) => {
      let now = 0;
      for (const state of run.ball) {
        expect(state.t0).toBe(now);
        expect(state.t1).toBeGreaterThanOrEqual(state.t0);
        now = state.t1;
      }
      expect(now).toBe(run.end);
    });
  });

  it('nobody is faster than his level', () => {
    everyRun((run, play) => {
      const top = LEVELS[play.level.value].vmax;
      for (const who of OFFENCE) {
        for (const { profile, t0, t1 } of run.tracks[who]!.segments) {
          for (let t = 0; t <= t1 - t0; t += 50) expect(speedAt(profile, t / 1000)).toBeLessThanOrEqual(top + 1e-6);
        }
        for (let t = 0; t < run.end; t += 100) {
          expect(distance(trackAt(run.tracks[who]!, t), trackAt(run.tracks[who]!, t + 100))).toBeLessThanOrEqual(top * 0.1 + 0.01);
        }
      }
    });
  });

  it('nothing that takes time happens before what causes it', () => {
    everyRun((run) => {
      const at = new Map(run.events.map((event) => [event.id, event.at]));
      for (const { id } of run.events) {
        if (!id.endsWith(':catch')) continue;
        expect(at.get(id)).toBeGreaterThan(at.get(id.replace(':catch', ':release'))!);
      }
      for (const { id, kind } of run.events) {
        if (kind === 'use') expect(at.get(id)).toBeGreaterThanOrEqual(at.get(`${id.slice(0, id.lastIndexOf(':'))}:set`)!);
      }
    });
  });

  it('two run-throughs are the same until they part', () => {
    everyPlay((play) => {
      const { runs } = schedule(play);
      for (let a = 0; a < runs.length; a++) for (let b = a + 1; b < runs.length; b++) agree(runs[a]!, runs[b]!);
    });
  });

  it('a later call delays everything by as much', () => {
    everyPlay((play) => {
      const set: Play = { ...play, start: { ...play.start, alreadySet: true } };
      const delay = Math.round(LEVELS[play.level.value].setUp * 1000);
      const [late, early] = [schedule(play), schedule(set)];
      expect(late.runs.map((run) => run.end - delay)).toEqual(early.runs.map((run) => run.end));
      late.runs.forEach((run, index) => {
        const shifted = run.events.filter(({ kind }) => kind !== 'call').map((event) => [event.id, event.at - delay]);
        expect(shifted).toEqual(early.runs[index]!.events.filter(({ kind }) => kind !== 'call').map((event) => [event.id, event.at]));
      });
    });
  });
});

describe('written times', () => {
  /** Plays with a time on the clock before some of their lines. */
  const timed = fc.tuple(writtenPlays, fc.infiniteStream(fc.integer({ min: 0, max: 60 }))).map(([{ lines }, dice]) => {
    const pinned = lines.map((line) => {
      const clock = dice.next().value as number;
      return clock < 22 && /^ {2}\d [a-z-]+/.test(line) ? `  at ${clock} on the clock, ${line.trim()}` : line;
    });
    return ['notation 1', 'play "Timed"', '  call with 24 on the clock', ...pinned.map((line) => `  ${line}`)].join('\n');
  });

  it('a time on the clock is kept to the millisecond, or told', () => {
    fc.assert(fc.property(timed, (text) => {
      const { play } = readingOf(text);
      const { runs, problems } = schedule(play);
      const told = new Set(problems.filter(({ code }) => code === 'time-not-kept' || code === 'waits-in-circle').map(({ part }) => part));
      for (const step of play.steps) {
        for (const action of step.actions) {
          for (const wait of action.waits) {
            if (wait.kind !== 'clock' || told.has(wait.part)) continue;
            for (const { events } of runs) {
              const start = events.find(({ id }) => id === `${action.id}:${action.kind === 'pass' ? 'release' : 'start'}`);
              if (start !== undefined && Math.abs(start.at - (24 - wait.seconds) * 1000) > 50) throw new Error(`${action.id} is to start with ${wait.seconds} s on the clock and starts ${start.at} ms after the call`);
            }
          }
        }
      }
    }), many);
  });

  it('seconds later are added, never taken off', () => {
    everyPlay((play) => {
      const others = play.steps.some(({ how, actions }) => how === 'instead' || actions.some(({ waits }) => waits.some(({ kind }) => kind !== 'later')));
      if (others) return;
      const later = play.steps.flatMap(({ actions }) => actions).filter(({ waits }) => waits.some(({ kind }) => kind === 'later'));
      const without: Play = { ...play, steps: play.steps.map((step) => ({ ...step, actions: step.actions.map((action) => ({ ...action, waits: action.waits.filter(({ kind }) => kind !== 'later') })) })) };
      const [long, short] = [schedule(play), schedule(without)];
      const first = later[0];
      if (first === undefined || later.length > 1) return;
      const seconds = first.waits.reduce((sum, wait) => sum + (wait.kind === 'later' ? wait.seconds : 0), 0);
      const start = ({ events }: Run): number | undefined => events.find(({ id }) => id === `${first.id}:start`)?.at;
      long.runs.forEach((run) => {
        const other = short.runs.find(({ id }) => id === run.id);
        const [at, before] = [start(run), other && start(other)];
        // Bodies give way to each other in another order: up to the half second a man waits for room.
        if (at !== undefined && before !== undefined) expect(at).toBeGreaterThanOrEqual(before + seconds * 1000 - 500);
      });
    });
  });
});

describe('damaged plays', () => {
  it('a play with any part of it wrong is scheduled all the same', () => {
    fc.assert(fc.property(writtenPlays, fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), ({ text }, dice) => {
      const play = damage(readingOf(text).play, '', () => dice.next().value as number) as Play;
      const timeline = schedule(play);
      for (const run of timeline.runs) guard(play, run);
      JSON.stringify(timeline);
    }), many);
  });

  it('a play of thousands of steps is cut, and that is told', () => {
    const steps = Array.from({ length: 2000 }, (_, index) => `  step "S${index}"\n    1 dribbles to top`).join('\n');
    const timeline = schedule(readingOf(`notation 1\nplay "Long"\n  from horns\n${steps}`).play);
    expect(timeline.problems.map(({ code }) => code)).toEqual(['play-too-long']);
    expect(timeline.runs).toHaveLength(1);
  });

  it('so is one whose steps are copies of copies, forty times each', () => {
    const copies = Array.from({ length: 500 }, (_, index) => `  step "S${index + 1}" again from "S${index}", up to 40 times`).join('\n');
    const { play } = readingOf(`notation 1\nplay "Loop"\n  from horns, ball with 1\n  step "S0"\n    1 passes to 2\n    2 passes to 1\n${copies}`);
    expect(play.steps.length).toBeLessThan(1000);
    expect(schedule(play).problems.map(({ code }) => code)).toContain('play-too-long');
  }, 20_000);
});

const wrong = ['1', '3', '5', 'X1', 'X4', 'roll', 'catch', 's1', 's2', ''];
const fields = new Set(['who', 'to', 'a', 'b', 'on', 'parent', 'insteadOf', 'step', 'does', 'line', 'id', 'screener']);

/** Puts wrong names and absurd numbers into a play here and there. */
function damage(value: unknown, field: string, dice: () => number): unknown {
  if (Array.isArray(value)) return value.map((entry) => damage(entry, field, dice));
  if (typeof value === 'object' && value !== null) return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, damage(entry, key, dice)]));
  if (typeof value === 'string' && fields.has(field) && dice() < 0.04) return wrong[Math.floor(dice() * wrong.length)] ?? '';
  if (typeof value === 'number' && dice() < 0.04) return [0, -5, 1e9, 2.5][Math.floor(dice() * 4)] ?? 0;
  return value;
}

function agree(a: Run, b: Run): void {
  const parts = Math.min(partingOf(a.events, b.events), partingOf(b.events, a.events), takenAt(a), takenAt(b), a.end, b.end);
  for (let t = 0; t < parts; t += 100) {
    for (const who of OFFENCE) expect(distance(trackAt(a.tracks[who]!, t), trackAt(b.tracks[who]!, t))).toBeLessThan(0.002);
    expect(distance(ballAt(a, t), ballAt(b, t))).toBeLessThan(0.01);
  }
}

/** When the look is taken that this one ends with: there the ways part, though the next event comes later. */
function takenAt({ look, events }: Run): number {
  return events.find(({ id }) => id === `${look}:read`)?.at ?? Number.POSITIVE_INFINITY;
}

/** The first moment of `events` that the other run does not have. */
function partingOf(events: readonly TimedEvent[], others: readonly TimedEvent[]): number {
  const known = new Set(others.map((event) => `${event.id}@${event.at}`));
  return Math.min(Number.POSITIVE_INFINITY, ...events.filter((event) => !known.has(`${event.id}@${event.at}`)).map(({ at }) => at));
}

describe('laws of the floor', () => {
  const words: Readonly<Record<FloorLaw, string>> = {
    flight: 'the ball leaves the hand where its man is, and comes to where the other is',
    jump: 'nobody is in two places, and nobody jumps',
    mirror: 'a play and its mirror take the same time, and run the same ways left for right',
    apart: 'bodies come together only where they are told to, or a finding says so',
    causes: 'every event has a cause that decides its time to the millisecond, back to the call',
    screens: 'a screen that stands has been set, by a man who is there',
    partners: 'partners of a screen or a hand-off come apart: nobody stands on another for more than a second and a half, or a finding says so',
  };

  it.each(Object.entries(words) as [FloorLaw, string][])('%s: %s', (law) => {
    fc.assert(fc.property(writtenPlays, ({ text }) => floorLaws[law](text)), many);
    fc.assert(fc.property(widePlays, (text) => floorLaws[law](text)), many);
  });
});
