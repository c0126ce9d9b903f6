/**
 * Where the five defenders are in a run-through: each between his man and the rim, close to the ball, others sagging by how far the
 * ball is. They follow a moment behind and no faster than their level. What a line or a condition tells them, they do.
 * The offence is settled before and never looks at them. Simple on purpose: common practice, no source.
 */
import type { Point } from '../court/point.ts';
import { commit } from '../court/point.ts';
import type { Level } from '../motion/levels.ts';
import { LEVELS } from '../motion/levels.ts';
import type { BodyId, Play } from '../play/play.ts';
import { DEFENCE, OFFENCE } from '../play/play.ts';
import type { Keyframes, Run } from '../timeline/timeline.ts';
import { ballAt, ballStateAt, trackAt } from '../timeline/track.ts';
import { cuesOf } from './cues.ts';
import type { Floor } from './stances.ts';
import { goalOf } from './stances.ts';

const stepMs = 100;
/** He sees with this delay what his man does; the level's reaction to a choice. */
const following = (level: Level): number => Math.round(level.choiceReaction * 1000);

/** Keyframes of X1–X5 for one run-through; empty for a play without defence, and for a zone, which is not drawn yet. */
export function guard(play: Play, run: Run): Readonly<Partial<Record<BodyId, Keyframes>>> {
  if (play.defence.value.kind !== 'man') return {};
  const level = LEVELS[play.level.value];
  const cues = cuesOf(play, run);
  const steps = Math.ceil(run.end / stepMs) + 1;
  const places: Point[] = [];
  const speeds = [0, 0, 0, 0, 0];
  const points: Point[][] = DEFENCE.map(() => []);
  for (let step = 0; step < steps; step++) {
    const now = Math.min(run.end, step * stepMs);
    const floor = floorAt(run, now, following(level));
    DEFENCE.forEach((who, index) => {
      const goal = goalOf(floor, level, who, cues, now);
      if (step === 0) places[index] = goal;
      else places[index] = stepTowards(places, speeds, index, goal, floor, level);
      points[index]!.push(commit(places[index]!));
    });
  }
  return Object.fromEntries(DEFENCE.map((who, index) => [who, { t0: 0, stepMs, points: points[index]! }]));
}

function floorAt(run: Run, now: number, delay: number): Floor {
  const seen = Math.max(0, now - delay);
  const state = ballStateAt(run, now);
  return {
    men: OFFENCE.map((who) => trackAt(run.tracks[who]!, seen)),
    bodies: OFFENCE.map((who) => trackAt(run.tracks[who]!, now)),
    ball: ballAt(run, seen),
    holder: state === undefined || state.kind === 'shot' ? undefined : state.kind === 'held' ? state.by : state.receiver,
    out: state?.kind === 'held' && state.out,
  };
}

/** One step of his legs: no faster than his level, sliding near his man and running far from him, never into a body. */
function stepTowards(places: readonly Point[], speeds: number[], index: number, goal: Point, floor: Floor, level: Level): Point {
  const seconds = stepMs / 1000;
  const here = places[index]!;
  const gap = Math.hypot(goal.x - here.x, goal.y - here.y);
  const top = gap > 1 ? level.vmax * level.cutEffort : Math.max(level.slide, speeds[index]! - level.brake * seconds);
  const speed = Math.min(top, speeds[index]! + (level.vmax / level.tau) * seconds, gap / (2 * seconds));
  const share = gap === 0 ? 0 : Math.min(1, (speed * seconds) / gap);
  const wanted = { x: here.x + (goal.x - here.x) * share, y: here.y + (goal.y - here.y) * share };
  const kept = keepApart(wanted, places, index, floor, level);
  const most = level.vmax * seconds;
  const moved = Math.hypot(kept.x - here.x, kept.y - here.y);
  const cut = moved > most ? most / moved : 1;
  speeds[index] = Math.min(moved, most) / seconds;
  return { x: here.x + (kept.x - here.x) * cut, y: here.y + (kept.y - here.y) * cut };
}

/** Pushed out of anybody he would stand in: a screen holds him up, a team-mate makes room. */
function keepApart(wanted: Point, places: readonly Point[], index: number, floor: Floor, level: Level): Point {
  const room = 2 * level.bodyRadius;
  let { x, y } = wanted;
  const push = (other: Point): void => {
    const gap = Math.hypot(x - other.x, y - other.y);
    if (gap >= room) return;
    const away = gap < 0.001 ? { x: 0, y: -1 } : { x: (x - other.x) / gap, y: (y - other.y) / gap };
    x = other.x + away.x * room;
    y = other.y + away.y * room;
  };
  floor.bodies.forEach(push);
  places.forEach((other, at) => {
    if (at !== index) push(other);
  });
  return { x, y };
}

