/** Times of the looks and the seconds a play needs (rules 24, 25). */
import type { LookId, Play } from '../play/play.ts';
import type { Scene } from './branch.ts';
import { timeOf } from './graph.ts';
import { percentile, spreadOf } from './spread.ts';
import type { LookTime, Needed, Run, Times } from './timeline.ts';

/** The events a look's times are read from. */
export interface TailTimes {
  readonly look: LookId;
  readonly run: string;
  readonly shot: number;
  readonly rim: number;
  /** On a throw-in, when the game clock starts. */
  readonly touch: number | undefined;
}

export function timesOf(scene: Scene, runs: readonly Run[], tails: readonly TailTimes[]): Times {
  const { graph, level, play } = scene;
  if (tails.length === 0) return { looks: [] };
  const spread = spreadOf(graph, level, tails.flatMap(({ shot, touch }) => (touch === undefined ? [shot] : [shot, touch])));
  const setUp = play.start.alreadySet || play.start.dead || play.start.throwIn !== undefined ? 0 : Math.round(level.setUp * 1000);
  const byLook = new Map(tails.map((tail) => [tail.run, tail]));
  const looks: LookTime[] = [];
  const onClock: number[] = [];
  for (const run of runs) {
    const tail = byLook.get(run.id);
    if (tail === undefined) continue;
    const shots = spread.of(tail.shot);
    const typical = timeOf(graph, tail.shot);
    const flight = timeOf(graph, tail.rim) - typical;
    const late = Math.max(typical, percentile(shots, 0.9));
    looks.push({ look: tail.look, run: tail.run, early: Math.min(typical, percentile(shots, 0.1)), typical, late, flight, setUp });
    onClock.push(tail.touch === undefined ? late : Math.max(typical - timeOf(graph, tail.touch), percentile(difference(shots, spread.of(tail.touch)), 0.9)));
  }
  const needs = looks.map((look, index) => neededFor(play, look, onClock[index]!));
  return { looks, firstLook: needs[0], allLooks: needs.reduce<Needed | undefined>(most, undefined) };
}

function difference(a: Int32Array, b: Int32Array): Int32Array {
  return a.map((value, index) => value - b[index]!);
}

/** With `leave`: late release, flight, and what a miss must leave; without: the ball has left the hand. Rounded up to whole seconds. */
function neededFor(play: Play, look: LookTime, late: number): Needed {
  const { leave } = play.clock;
  const ms = late + (leave === undefined ? 0 : look.flight + leave * 1000);
  return { fromCall: Math.ceil(ms / 1000), alreadySet: Math.ceil((ms - look.setUp) / 1000) };
}

function most(so: Needed | undefined, next: Needed): Needed {
  if (so === undefined) return next;
  return { fromCall: Math.max(so.fromCall, next.fromCall), alreadySet: Math.max(so.alreadySet, next.alreadySet) };
}
