import { distance } from '../../language/court/point.ts';
import { LEVELS } from '../../language/motion/levels.ts';
import type { BodyId, Play } from '../../language/play/play.ts';
import { OFFENCE } from '../../language/play/play.ts';
import { schedule } from '../../language/timeline/schedule.ts';
import type { Run, Timeline } from '../../language/timeline/timeline.ts';
import { trackAt } from '../../language/timeline/track.ts';
import { why } from '../../language/timeline/why.ts';
import { playsOf, readingOf, timelineOf } from './timeline-of.ts';

/** What must hold of the floor in every play: each throws where its law is broken. Text whose play is named "Law". */
export const floorLaws = {
  /** The mirrored play takes the same time, and runs the same ways left for right. */
  mirror(text: string): void {
    const [play, mirror] = playsOf(`${text}\n\nplay "Other" mirrors "Law"\n`).map((entry) => schedule(entry));
    for (const [index, run] of play!.runs.entries()) {
      const other = mirror!.runs[index]!;
      if (run.id !== other.id || run.end !== other.end || run.releaseAt !== other.releaseAt) throw new Error(`${run.id} ends at ${run.end} ms, mirrored ${other.id} at ${other.end} ms`);
      for (const who of OFFENCE) {
        const ways = run.tracks[who]!.segments.map(({ path }) => path);
        const turned = other.tracks[who]!.segments.map(({ path }) => path);
        const same = ways.length === turned.length && ways.every((way, at) => way.every(({ x, y }, corner) => Math.abs(turned[at]![corner]!.x + x) < 0.005 && Math.abs(turned[at]![corner]!.y - y) < 0.005));
        if (!same) throw new Error(`${who} in ${run.id} runs ${JSON.stringify(ways)}, mirrored ${JSON.stringify(turned)}`);
      }
    }
  },

  /** The ball leaves the hand where its man is, and comes to where the other is. */
  flight(text: string): void {
    for (const run of timelineOf(text).runs) {
      for (const state of run.ball) {
        if (state.kind !== 'flight' || state.t1 >= run.end) continue;
        const [off, past] = [distance(trackAt(run.tracks[state.by]!, state.t0), state.from), distance(trackAt(run.tracks[state.receiver]!, state.t1), state.to)];
        if (off > 0.02 || past > 0.02) throw new Error(`${state.action} in ${run.id} leaves ${off.toFixed(2)} m from ${state.by} and comes ${past.toFixed(2)} m from ${state.receiver}`);
      }
    }
  },

  /** Nobody is in two places, and nobody jumps. */
  jump(text: string): void {
    for (const run of timelineOf(text).runs) {
      for (const who of OFFENCE) {
        const { start, segments } = run.tracks[who]!;
        let place = start;
        let since = 0;
        for (const { t0, t1, path, action } of segments) {
          if (t0 < since || distance(path[0]!, place) > 0) throw new Error(`${who} in ${run.id} jumps with ${action} at ${t0} ms`);
          place = path[path.length - 1]!;
          since = t1;
        }
      }
    }
  },

  /** Bodies come together only where they are told to, or a finding says so. */
  apart(text: string): void {
    const { play } = readingOf(text);
    const timeline = schedule(play);
    const room = 2 * LEVELS[play.level.value].bodyRadius;
    for (const run of timeline.runs) {
      for (let t = 0; t < run.end; t += 100) {
        for (const [who, other] of pairs) {
          const gap = distance(trackAt(run.tracks[who]!, t), trackAt(run.tracks[other]!, t));
          if (gap < room - 0.12 && !arePartners(play, who, other) && !isTold(timeline, who, other) && ![who, other].some((man) => isAtTheBoards(play, run, man, t))) throw new Error(`${who} and ${other} are ${gap.toFixed(2)} m apart at ${t} ms of ${run.id}`);
        }
      }
    }
  },

  /** Partners of a screen or a hand-off come apart: nobody stands on another for more than a second and a half, or a finding says so. */
  partners(text: string): void {
    const { play } = readingOf(text);
    const timeline = schedule(play);
    for (const run of timeline.runs) {
      for (const [who, other] of pairs) {
        let since: number | undefined;
        for (let t = 0; t < (run.releaseAt ?? run.end); t += 100) {
          const near = distance(trackAt(run.tracks[who]!, t), trackAt(run.tracks[other]!, t)) < LEVELS[play.level.value].bodyRadius;
          since = near ? (since ?? t) : undefined;
          if (since === undefined || t - since < 1500) continue;
          if (isTold(timeline, who, other)) break;
          throw new Error(`${who} and ${other} stand on one spot from ${since} ms of ${run.id}`);
        }
      }
    }
  },

  /** Every event has a cause that decides its time to the millisecond, back to the call. */
  causes(text: string): void {
    for (const run of timelineOf(text).runs) {
      const byId = new Map(run.events.map((event) => [event.id, event]));
      for (const { id, at, because } of run.events.filter(({ kind }) => kind !== 'call')) {
        const from = because && byId.get(because.from);
        // He left for a screen, or for a man, that the end of the run-through comes before.
        if (because !== undefined && from === undefined && because.delay <= 0) continue;
        if (from === undefined) throw new Error(`${id} in ${run.id} has no cause: ${because?.from ?? 'none'} is not there`);
        if (from.at + because!.delay !== at) throw new Error(`${id} in ${run.id} comes at ${at} ms, ${because!.delay} ms after ${from.id} at ${from.at} ms`);
        if (why(run, id).length === 0) throw new Error(`${id} in ${run.id}: no way back to the call`);
      }
    }
  },

  /** A screen that stands has been set, by a man who is there. */
  screens(text: string): void {
    for (const run of timelineOf(text).runs) {
      for (const { action, by, at, from } of run.screens) {
        const off = distance(trackAt(run.tracks[by]!, from), at);
        if (off >= 0.01 || !run.events.some(({ id }) => id === `${action}:set`)) throw new Error(`the screen ${action} in ${run.id} stands ${off.toFixed(2)} m from ${by}, or was never set`);
      }
    }
  },
} as const;

export type FloorLaw = keyof typeof floorLaws;

const pairs: readonly (readonly [BodyId, BodyId])[] = OFFENCE.flatMap((who, index) => OFFENCE.slice(index + 1).map((other) => [who, other] as const));

function isTold({ problems }: Timeline, a: BodyId, b: BodyId): boolean {
  return problems.some(({ code, params }) => (code === 'bodies-overlap' || code === 'spot-taken') && [params['who'], params['other']].includes(a) && [params['who'], params['other']].includes(b));
}

/** The ball is in the air, and his rebound line has sent him off: where all of them meet they meet. */
function isAtTheBoards({ rebounds }: Play, run: Run, who: BodyId, ms: number): boolean {
  return run.tracks[who]!.segments.some(({ action, t0 }) => t0 <= ms && rebounds.some(({ part }) => part === action));
}

/** Screener and user, or two who hand off, anywhere in the play. */
function arePartners(play: Play, a: BodyId, b: BodyId): boolean {
  const actions = play.steps.flatMap((step) => [...step.actions, ...step.kept]);
  return actions.some((action) => {
    if (action.kind === 'screen') return (action.who === a && action.users.includes(b)) || (action.who === b && action.users.includes(a));
    if (action.kind === 'hand-off') return (action.who === a && action.to === b) || (action.who === b && action.to === a);
    if (action.kind === 'move' || action.kind === 'dribble') return (action.who === a && action.off.includes(b)) || (action.who === b && action.off.includes(a));
    return false;
  });
}
