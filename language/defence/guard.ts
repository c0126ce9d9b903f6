/**
 * Where the five defenders are in a run-through. They follow a moment behind and no faster than their level; what a line or a condition
 * tells them, they do. The offence is settled before and never looks at them. Simple on purpose: common practice, no source.
 */
import { courtOf } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { commit } from '../court/point.ts';
import { ruleSet } from '../court/rule-sets.ts';
import type { Level } from '../motion/levels.ts';
import { LEVELS } from '../motion/levels.ts';
import type { BodyId, Play } from '../play/play.ts';
import { DEFENCE } from '../play/play.ts';
import type { Keyframes, Run } from '../timeline/timeline.ts';
import type { Cue } from './cues.ts';
import { cuesOf } from './cues.ts';
import type { Floor, Tactic } from './floor.ts';
import { manToMan } from './man-to-man.ts';
import type { Sight } from './sight.ts';
import { ballAt, holderAt, outAt, partsAt, seenAStep, sightMs, sightOf } from './sight.ts';
import { zone } from './zone.ts';

export type Guarded = Readonly<Partial<Record<BodyId, Keyframes>>>;

/** Every second place is kept: between two of them nobody strays from the straight line by more than a few centimetres. */
const keepEvery = 2;
// Nearer than this two numbers could not be read; bodies touch at twice their radius. Common practice, no source.
const readable = 0.8;

/** Keyframes of X1–X5 for one run-through; empty for a play without defence. */
export function guard(play: Play, run: Run): Guarded {
  return watchRuns(play, [run])(run);
}

/** As `guard`, for all run-throughs of a play: what they share is worked out once. */
export function guardRuns(play: Play, runs: readonly Run[]): readonly Guarded[] {
  return runs.map(watchRuns(play, runs));
}

const watched = new WeakMap<readonly Run[], { readonly play: Play; readonly guarded: (run: Run) => Guarded }>();

/** The defenders of each run-through, worked out when first asked for, and kept as long as the run-throughs are: a check and the picture ask for the same. */
export function watchRuns(play: Play, runs: readonly Run[]): (run: Run) => Guarded {
  const known = watched.get(runs);
  if (known?.play === play) return known.guarded;
  const guarded = watchLazily(play);
  watched.set(runs, { play, guarded });
  return guarded;
}

function watchLazily(play: Play): (run: Run) => Guarded {
  const tactic = tacticOf(play);
  if (tactic === undefined) return () => ({});
  const done: Watch[] = [];
  const known = new Map<Run, Guarded>();
  return (run) => {
    const before = known.get(run);
    if (before !== undefined) return before;
    const watch = startWatch(play, run, done);
    defend(watch, tactic, play);
    done.push(watch);
    const guarded = framesOf(watch);
    known.set(run, guarded);
    return guarded;
  };
}

function tacticOf({ defence }: Play): Tactic | undefined {
  const { kind, zone: written, press } = defence.value;
  if (kind === 'none') return undefined;
  return kind === 'zone' && written !== undefined ? zone(written, press === true || written.endsWith('press')) : manToMan(press === true);
}

/** A run-through as it is being defended. */
interface Watch {
  readonly run: Run;
  readonly sight: Sight;
  readonly cues: readonly Cue[];
  /** `legsAStep` numbers a step: x and y of X1–X5, then the speed of each. */
  readonly legs: Float64Array;
  /** Where each stands at the steps that are kept. */
  readonly kept: readonly Point[][];
  /** The first step not taken over from another run-through. */
  readonly from: number;
}

const legsAStep = 15;
const speedAt = 10;

function startWatch(play: Play, run: Run, done: readonly Watch[]): Watch {
  const cues = cuesOf(play, run);
  let from = 0;
  let alike = 0;
  let like: Watch | undefined;
  for (const other of done) {
    const steps = partsAt(run, other.run);
    const untold = Math.min(steps, firstOther(cues, other.cues));
    if (untold < from || (untold === from && steps <= alike)) continue;
    from = untold;
    alike = steps;
    like = other;
  }
  const sight = sightOf(run, like && { sight: like.sight, steps: alike });
  const legs = new Float64Array(sight.steps * legsAStep);
  if (like !== undefined) legs.set(like.legs.subarray(0, from * legsAStep));
  return { run, sight, cues, legs, kept: DEFENCE.map((_, index) => like?.kept[index]!.slice(0, Math.ceil(from / keepEvery)) ?? []), from };
}

/** The first step at which two are told different things. */
function firstOther(a: readonly Cue[], b: readonly Cue[]): number {
  let at = 0;
  while (at < a.length && at < b.length && a[at]!.at === b[at]!.at && a[at]!.who === b[at]!.who && a[at]!.verb === b[at]!.verb && a[at]!.on === b[at]!.on) at++;
  const next = Math.min(a[at]?.at ?? Number.POSITIVE_INFINITY, b[at]?.at ?? Number.POSITIVE_INFINITY);
  return Math.floor(next / sightMs);
}

function defend({ sight, cues, legs, from }: Watch, tactic: Tactic, play: Play): void {
  const level = LEVELS[play.level.value];
  const court = courtOf(ruleSet(play.rules.value));
  // He sees with this delay what his man does; the level's reaction to a choice.
  const delay = Math.round((level.choiceReaction * 1000) / sightMs);
  let told: readonly Cue[] = [];
  const floor = emptyFloor({ court, level, spots: play.spots });
  for (let step = from; step < sight.steps; step++) {
    const now = step * sightMs;
    while (told.length < cues.length && cues[told.length]!.at <= now) told = cues.slice(0, told.length + 1);
    lookAt(floor, sight, step, Math.max(0, step - delay));
    for (let index = 0; index < 5; index++) {
      const goal = tactic(floor, index, told);
      moveOn(legs, step, index, goal, sight, level);
    }
  }
}

/** One floor for a whole run-through, its places overwritten at each step: thousands of small objects would cost more than all the rest. */
type Watched = { -readonly [Key in keyof Floor]: Key extends 'men' ? readonly { x: number; y: number }[] : Key extends 'ball' ? { x: number; y: number } : Floor[Key] };

function emptyFloor({ court, level, spots }: Pick<Floor, 'court' | 'level' | 'spots'>): Watched {
  const place = () => ({ x: 0, y: 0 });
  return { court, level, spots, now: 0, men: [place(), place(), place(), place(), place()], ball: place(), holder: 0, out: false };
}

function lookAt(floor: Watched, { seen }: Sight, step: number, before: number): void {
  const at = before * seenAStep;
  for (let index = 0; index < 5; index++) {
    const man = floor.men[index]!;
    man.x = seen[at + index * 2]!;
    man.y = seen[at + index * 2 + 1]!;
  }
  floor.ball.x = seen[at + ballAt]!;
  floor.ball.y = seen[at + ballAt + 1]!;
  floor.holder = seen[step * seenAStep + holderAt]!;
  floor.out = seen[step * seenAStep + outAt] === 1;
  floor.now = step * sightMs;
}

/** One step of his legs: no faster than his level, sliding near his man and running far from him, never into a body. */
function moveOn(legs: Float64Array, step: number, index: number, goal: Point, sight: Sight, level: Level): void {
  const at = step * legsAStep + index * 2;
  const seconds = sightMs / 1000;
  if (step === 0) {
    legs[at] = goal.x;
    legs[at + 1] = goal.y;
    keepApart(legs, 0, index, sight, index);
    return;
  }
  const hereX = legs[at - legsAStep]!;
  const hereY = legs[at - legsAStep + 1]!;
  const before = legs[(step - 1) * legsAStep + speedAt + index]!;
  const dx = goal.x - hereX;
  const dy = goal.y - hereY;
  const gap = Math.sqrt(dx * dx + dy * dy);
  const top = gap > 1 ? level.vmax * level.cutEffort : Math.max(level.slide, before - level.brake * seconds);
  const speed = Math.min(top, before + (level.vmax / level.tau) * seconds, gap / (2 * seconds));
  const share = gap === 0 ? 0 : Math.min(1, (speed * seconds) / gap);
  legs[at] = hereX + dx * share;
  legs[at + 1] = hereY + dy * share;
  keepApart(legs, step, index, sight, 5);
  const most = level.vmax * seconds;
  const movedX = legs[at]! - hereX;
  const movedY = legs[at + 1]! - hereY;
  const moved = Math.sqrt(movedX * movedX + movedY * movedY);
  if (moved > most) {
    legs[at] = hereX + (movedX * most) / moved;
    legs[at + 1] = hereY + (movedY * most) / moved;
  }
  legs[step * legsAStep + speedAt + index] = Math.min(moved, most) / seconds;
}

/** Pushed out of anybody he would stand in: a screen holds him up, a team-mate makes room. Of team-mates the first `known`. */
function keepApart(legs: Float64Array, step: number, index: number, { seen }: Sight, known: number): void {
  const at = step * legsAStep + index * 2;
  for (let other = 0; other < known; other++) {
    if (other === index) continue;
    // Who has not moved yet stands where he stood.
    const theirs = (other < index || step === 0 ? step : step - 1) * legsAStep + other * 2;
    pushOut(legs, at, legs[theirs]!, legs[theirs + 1]!);
  }
  const men = step * seenAStep;
  for (let man = men; man < men + ballAt; man += 2) pushOut(legs, at, seen[man]!, seen[man + 1]!);
}

function pushOut(legs: Float64Array, at: number, x: number, y: number): void {
  const dx = legs[at]! - x;
  const dy = legs[at + 1]! - y;
  const square = dx * dx + dy * dy;
  if (square >= readable * readable) return;
  const gap = Math.sqrt(square);
  legs[at] = gap < 0.001 ? x : x + (dx / gap) * readable;
  legs[at + 1] = gap < 0.001 ? y - readable : y + (dy / gap) * readable;
}

function framesOf({ legs, sight, kept }: Watch): Guarded {
  const frames: Partial<Record<BodyId, Keyframes>> = {};
  const last = sight.steps - 1;
  DEFENCE.forEach((who, index) => {
    const points = kept[index]!;
    for (let step = points.length * keepEvery; step < last + keepEvery; step += keepEvery) {
      const at = Math.min(step, last) * legsAStep + index * 2;
      points.push(commit({ x: legs[at]!, y: legs[at + 1]! }));
    }
    frames[who] = { t0: 0, stepMs: sightMs * keepEvery, points };
  });
  return frames;
}
