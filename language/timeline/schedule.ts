/** From a play to its timeline: a pure function; the same play gives the same bytes, and nothing throws. */
import { courtOf } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import { ruleSet } from '../court/rule-sets.ts';
import { LEVELS, type Level } from '../motion/levels.ts';
import { paceShare } from '../motion/own-pace.ts';
import type { BodyId, Play, Step, StepKey } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import { mostSteps } from '../play/repeated-steps.ts';
import { homesOf } from '../play/homes.ts';
import { evenSideOf, sideOfNumber, sideSign } from '../play/places.ts';
import type { Problem } from '../names/problem.ts';
import type { Body, Branch, LookItem, Scene } from './branch.ts';
import { copyBranch, copyForLook, happen, tell, whenOf } from './branch.ts';
import { createGraph } from './graph.ts';
import { problem } from './problem-codes.ts';
import { sendToTheBoards } from './rebounds.ts';
import { firstActionOf, runOf } from './runs.ts';
import { isOffence } from './sound.ts';
import { settleStep } from './stage.ts';
import { endAsStated } from './stated-ends.ts';
import { takeLook } from './tails.ts';
import { looker } from './looks.ts';
import { timesOf } from './needed.ts';
import type { TailTimes } from './needed.ts';
import type { Run, Timeline } from './timeline.ts';

/**
 * What a play means in time. Every run-through with its tracks closed in t, the times of its looks, and the problems that only
 * time and floor show. Times are whole milliseconds from the call (on a throw-in from the hand-over), places whole millimetres.
 * @param level other legs than those of the play's own level: how the reference measures what an assumption is worth
 */
export function schedule(play: Play, level: Level = LEVELS[play.level.value]): Timeline {
  const { scene, runs, tails } = settlePlay(play, level);
  return { runs, times: timesOf(scene, runs, tails), problems: scene.problems };
}

export interface SettledPlay {
  readonly scene: Scene;
  /** In text order. */
  readonly runs: readonly Run[];
  readonly tails: readonly TailTimes[];
}

/** Everything but the times of the looks, which take the graph through many draws. */
export function settlePlay(play: Play, level: Level = LEVELS[play.level.value], upToTheShots = false): SettledPlay {
  const scene = sceneOf(play, level, upToTheShots);
  const root = startBranch(scene);
  const runs: Run[] = [];
  const tails: TailTimes[] = [];
  for (const step of replacedFirst(scene.children.get(null) ?? [])) walk(copyBranch(root), step, runs, tails);
  if (runs.length === 0) runs.push(runOf(root, { id: play.steps[0]?.key ?? 'start', end: 0 }));
  return { scene, runs: inTextOrder(play, runs), tails };
}

/** Settles a step on its path, then its looks taken, then every way on. */
function walk(branch: Branch, step: Step, runs: Run[], tails: TailTimes[]): void {
  if (branch.scene.opened.count >= mostSteps) {
    tell(branch, problem('play-too-long', step.key, { steps: mostSteps }));
    runs.push(endOf(branch, branch.scene.steps.get(branch.steps[branch.steps.length - 1] ?? '') ?? step));
    return;
  }
  branch.scene.opened.count++;
  settleStep(branch, step);
  for (const { look } of branch.items.filter((item) => item.kind === 'look' && item.step === step.key) as LookItem[]) {
    const taken = takeLook(branch, look.id);
    if (taken === undefined) continue;
    if (taken.shot !== undefined) sendToTheBoards(taken.branch, taken.shot, looker(look), look.id);
    const run = runOf(taken.branch, { id: look.id, look: look.id, shot: taken.shot, end: whenOf(taken.branch, taken.end) });
    runs.push(run);
    if (taken.shot !== undefined) tails.push({ look: look.id, run: run.id, shot: taken.shot, rim: taken.end, start: firstActionOf(taken.branch) ?? taken.shot, touch: taken.branch.ball.find((link) => link.kind === 'pass' && link.throwIn)?.end });
  }
  const children = replacedFirst(branch.scene.children.get(step.key) ?? []);
  if (children.length === 0 ? step.looks.length === 0 || step.end !== undefined : step.end !== undefined) runs.push(endOf(branch, step));
  children.forEach((child, index) => walk(index === children.length - 1 ? branch : copyBranch(branch), child, runs, tails));
}

/** A step with nothing after it, or a stated end: when what it states has come about, the ball is at the rim, else when everybody is done. */
function endOf(path: Branch, step: Step): Run {
  const branch = { ...copyForLook(path), events: [...path.events] };
  const shot = branch.ball.find((link) => link.kind === 'shot');
  if (shot !== undefined) sendToTheBoards(branch, shot.begin, shot.by, undefined);
  const last = Math.max(...branch.events.map((event) => whenOf(branch, event)));
  const stated = step.end !== undefined && shot === undefined ? whenOf(branch, endAsStated(branch, step)) : undefined;
  if (shot !== undefined) return runOf(branch, { id: step.key, end: whenOf(branch, shot.end), shot: shot.begin });
  return runOf(branch, { id: step.key, end: stated !== undefined && step.end?.event !== undefined ? stated : last });
}

/** A replaced step before its counters: they may need to know where its screen would have stood. */
function replacedFirst(steps: readonly Step[]): readonly Step[] {
  return [...steps].sort((a, b) => Number(a.how === 'instead') - Number(b.how === 'instead'));
}

function inTextOrder(play: Play, runs: readonly Run[]): readonly Run[] {
  const order = new Map<string, number>();
  for (const step of play.steps) {
    for (const look of step.looks) order.set(look.id, order.size);
    order.set(step.key, order.size);
  }
  return [...runs].sort((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0));
}

function sceneOf(play: Play, level: Level, upToTheShots: boolean): Scene {
  const rules = ruleSet(play.rules.value);
  const children = new Map<StepKey | null, Step[]>();
  const steps = new Map<StepKey, Step>();
  for (const step of play.steps) {
    steps.set(step.key, step);
    const siblings = children.get(step.parent);
    if (siblings === undefined) children.set(step.parent, [step]);
    else siblings.push(step);
  }
  const problems: Problem[] = [];
  const court = courtOf(rules);
  const homes = homesOf(play, court);
  return { play, court, homes, evenSide: evenSideOf(homes), rules, level, upToTheShots, graph: createGraph(), problems, steps, children, seenScreens: new Map(), told: new Set(), opened: { count: 0 }, paces: pacesOf(play, level) };
}

function pacesOf({ paces }: Play, level: Level): ReadonlyMap<BodyId, number> {
  return new Map(Object.entries(paces).map(([man, pace]) => [man as BodyId, paceShare(level, pace)]));
}

function startBranch(scene: Scene): Branch {
  const bodies = new Map<BodyId, Body>();
  for (const who of OFFENCE) {
    const home = besideWhoStandsThere(scene, who, [...bodies.values()]);
    bodies.set(who, { who, home, place: home, until: 0, exit: 0, stretches: [] });
  }
  const branch: Branch = {
    scene, steps: [], events: [], bodies, items: [], index: new Map(), settled: new Map(), ball: [],
    holder: holderOf(scene.play), screens: new Map(), looks: new Map(), opened: new Map(), leaving: new Map(),
  };
  happen(branch, 'call', 'call', 'call', undefined, []);
  return branch;
}

/** Where he starts: a body aside of a man who starts on that very spot, away from the lane where there is room, which is told (rule 20). */
function besideWhoStandsThere(scene: Scene, who: BodyId, others: readonly Body[]): Point {
  const { bodyRadius } = scene.level;
  const { left, right } = scene.court.boundary;
  const written = scene.homes[who]!;
  const outwards = 2 * bodyRadius * (Math.sign(written.x) || sideSign(sideOfNumber(who, scene.evenSide)));
  // One way only, however many stand there.
  const aside = written.x + outwards > left + bodyRadius && written.x + outwards < right - bodyRadius ? outwards : -outwards;
  let home = written;
  for (let there = standing(home); there !== undefined; there = standing(home)) {
    if (home === written) scene.problems.push(problem('spot-taken', `from#${who}`, { who, other: there.who }));
    home = commit({ x: there.home.x + aside, y: there.home.y });
  }
  return home;

  function standing(spot: Point): Body | undefined {
    return others.find((other) => distance(other.home, spot) < bodyRadius);
  }
}

/** Whoever the text names; with nobody of the five, 1. */
function holderOf(play: Play): BodyId {
  const named = String(play.start.ball.value) as BodyId;
  return isOffence(named) ? named : '1';
}
