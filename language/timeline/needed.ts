/** Times of the looks and the seconds a play needs (rules 24, 25). */
import type { LookId, Play } from '../play/play.ts';
import type { Scene } from './branch.ts';
import { timeOf } from './graph.ts';
import { percentiles, spreadOf } from './spread.ts';
import type { LookTime, Needed, Percentiles, Run, Times } from './timeline.ts';

/** The events a look's times are read from. */
export interface TailTimes {
  readonly look: LookId;
  readonly run: string;
  readonly shot: number;
  readonly rim: number;
  /** The first action. */
  readonly start: number;
  /** On a throw-in, when the game clock starts. */
  readonly touch: number | undefined;
}

export function timesOf(scene: Scene, runs: readonly Run[], tails: readonly TailTimes[]): Times {
  const { graph, level, play } = scene;
  if (tails.length === 0) return { looks: [] };
  const spread = spreadOf(graph, level, tails.flatMap(({ shot, start, touch }) => (touch === undefined ? [shot, start] : [shot, start, touch])));
  const setUp = play.start.alreadySet || play.start.dead || play.start.throwIn !== undefined ? 0 : Math.round(level.setUp * 1000);
  const since = (shot: number, from: number | undefined): Percentiles => {
    const typical = timeOf(graph, shot) - (from === undefined ? 0 : timeOf(graph, from));
    const values = from === undefined ? spread.of(shot) : difference(spread.of(shot), spread.of(from));
    const [early, late] = percentiles(values, [0.1, 0.9]) as [number, number];
    return { early: Math.min(typical, early), typical, late: Math.max(typical, late) };
  };
  const byRun = new Map(tails.map((tail) => [tail.run, tail]));
  const looks: LookTime[] = [];
  for (const run of runs) {
    const tail = byRun.get(run.id);
    if (tail === undefined) continue;
    const { look, shot, rim, start, touch } = tail;
    const fromCall = since(shot, undefined);
    looks.push({ look, run: run.id, ...fromCall, flight: timeOf(graph, rim) - timeOf(graph, shot), setUp, onClock: touch === undefined ? fromCall : since(shot, touch), fromStart: since(shot, start) });
  }
  const needs = looks.map((look) => neededFor(play, look));
  return { looks, firstLook: needs[0], allLooks: needs.reduce<Needed | undefined>(most, undefined) };
}

function difference(a: Int32Array, b: Int32Array): Int32Array {
  return a.map((value, index) => value - b[index]!);
}

/** With `leave`: late release, flight, and what a miss must leave; without: the ball has left the hand. Rounded up to whole seconds. */
function neededFor(play: Play, look: LookTime): Needed {
  const { leave } = play.clock;
  const ms = look.onClock.late + (leave === undefined ? 0 : look.flight + leave * 1000);
  return { fromCall: Math.ceil(ms / 1000), alreadySet: Math.ceil((ms - look.setUp) / 1000) };
}

function most(so: Needed | undefined, next: Needed): Needed {
  if (so === undefined) return next;
  return { fromCall: Math.max(so.fromCall, next.fromCall), alreadySet: Math.max(so.alreadySet, next.alreadySet) };
}
