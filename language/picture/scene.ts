// A moment as a picture in plain data: what is where on the floor, in centimetres, basket at the top.
import { momentOf, runOf, type BallAt, type BodyAt, type Moment } from '../playback/at.ts';
import { stepSpans } from '../playback/moments.ts';
import type { Playback } from '../playback/playback.ts';
import type { Court } from '../court/court.ts';
import type { BodyId, StepKey } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';
import { shyOfRing, shyOfWay } from './keep-clear.ts';
import { placeLabels, type Placed, type Shy, type Wanted } from './labels.ts';
import { BODY_GAP, waysOf, type Way } from './ways.ts';
import type { Pt } from './lines.ts';
import { viewOf, type View } from './view.ts';

export interface SceneOptions {
  /** The ways of the step being run, or none. */
  readonly ways?: 'step' | 'none';
  /** False leaves the five defenders out. */
  readonly defence?: boolean;
  /** Letter height of labels, cm on the floor: larger in a small picture. */
  readonly labelSize?: number;
}

export interface SceneBody {
  readonly id: BodyId;
  readonly label: string;
  readonly team: 'offence' | 'defence';
  readonly x: number;
  readonly y: number;
  /** Radians in the picture, clockwise from the right. */
  readonly facing: number;
  readonly hasBall: boolean;
  /** He stands as a screen: the bar is drawn before him. */
  readonly screening: boolean;
}

export interface SceneBall {
  readonly x: number;
  readonly y: number;
  /** Metres above the floor. */
  readonly z: number;
  readonly state: BallAt['state'];
}

export type Phase = 'ahead' | 'now' | 'done';

export interface Scene {
  readonly title: string;
  readonly court: Court;
  readonly view: View;
  readonly ways: readonly { readonly way: Way; readonly phase: Phase }[];
  readonly bodies: readonly SceneBody[];
  readonly ball: SceneBall | undefined;
  readonly labels: readonly Placed[];
}

/** Letters of labels, and how near one may come to a body's middle, cm. */
export const LABEL_SIZE = 42;
export const BODY_CLEAR = 52;

// A finding's mark is shown so long before and after its moment, a look's from its read so long, ms.
const PROBLEM_SHOWN = 900;
const LOOK_SHOWN = 1600;

/** The scene of a run-through (number or id) at t ms. */
export function sceneAt(playback: Playback, run: number | string, t: number, options: SceneOptions = {}): Scene {
  const { ways = 'step', defence = true, labelSize = LABEL_SIZE } = options;
  const found = runOf(playback, run);
  const view = viewOf(playback);
  const title = playback.play.name;
  if (found === undefined) return { title, court: playback.court, view, ways: [], bodies: [], ball: undefined, labels: [] };
  const moment = momentOf(playback, found, t);
  const bodies = moment.bodies.filter(({ id }) => defence || !id.startsWith('X')).map((body) => sceneBody(playback, found, body, moment));
  const shown = ways === 'none' ? [] : shownWays(found, waysOf(found), moment.t);
  const room = { view, size: labelSize, bodies: bodies.map(({ x, y }): Pt => [x, y]), bodyRadius: BODY_CLEAR * view.bodies, shy: shyOf(playback.court, shown) };
  return {
    title,
    court: playback.court,
    view,
    ways: shown,
    bodies,
    ball: moment.ball === undefined ? undefined : sceneBall(found, moment.ball, moment.t, view.bodies),
    labels: placeLabels(labelsAt(playback, found, moment, view.bodies), room),
  };
}

/** What labels keep off besides players: the ring, and the lines that are not yet faded. */
export function shyOf(court: Court, ways: Scene['ways']): readonly Shy[] {
  return [...shyOfRing(court), ...ways.flatMap(({ way, phase }) => (phase === 'done' ? [] : shyOfWay(way)))];
}

function sceneBody(playback: Playback, run: Run, { id, x, y, facing, moving, action }: BodyAt, { ball }: Moment): SceneBody {
  const { label, team } = playback.bodies.find((body) => body.id === id)!;
  const screening = !moving && action !== undefined && run.screens.some((screen) => screen.action === action && screen.by === id);
  return { id, label, team, x: x * 100, y: y * 100, facing, hasBall: ball?.holder === id, screening };
}

// The ball is held beside the number, never on it: down and to the right, in flight as well, so that it does not jump at a catch.
export const AT_HAND: Pt = [34, 34];

/** The ball where the picture shows it. On a shot it leaves the hand's side and ends in the ring. */
export function sceneBall(run: Run, { x, y, z, state }: BallAt, t: number, scale = 1, atHand = AT_HAND): SceneBall {
  const shot = state === 'shot' ? run.ball.findLast(({ kind, t0 }) => kind === 'shot' && t0 <= t) : undefined;
  const beside = scale * (shot === undefined ? 1 : Math.max(0, 1 - (t - shot.t0) / Math.max(1, shot.t1 - shot.t0)));
  return { x: x * 100 + atHand[0] * beside, y: y * 100 + atHand[1] * beside, z, state };
}

/** The step that is run at t. */
export function stepAt(run: Run, t: number): StepKey | undefined {
  return stepSpans(run).findLast(({ from }) => from <= t)?.key ?? run.steps[0];
}

/** Where a way stands at t, or `undefined` when it is not drawn: what is going on, and the rest of the step that is run. */
export function phaseOf(way: Way, step: StepKey | undefined, t: number): Phase | undefined {
  if (way.t0 <= t && t < way.t1) return 'now';
  if (way.step !== step || (way.afterShot && t < way.t0)) return undefined;
  return t < way.t0 ? 'ahead' : 'done';
}

function shownWays(run: Run, ways: readonly Way[], t: number): Scene['ways'] {
  const step = stepAt(run, t);
  return ways.flatMap((way) => {
    const phase = phaseOf(way, step, t);
    return phase === undefined ? [] : [{ way, phase }];
  });
}

/** What is named on the floor at a moment: looks that are there to be read, and findings. */
export function labelsAt(playback: Playback, run: Run, moment: Moment, scale = 1): readonly Wanted[] {
  const wanted: Wanted[] = [];
  for (const { look, who, from, to } of looksOf(playback, run)) {
    if (moment.t < from || moment.t > to) continue;
    const body = moment.bodies.find(({ id }) => id === who);
    if (body !== undefined) wanted.push({ key: look.id, text: look.label, kind: 'look', anchor: [body.x * 100, body.y * 100], gap: BODY_CLEAR * scale + 6 });
  }
  for (const [i, finding] of playback.findings.entries()) {
    const { spot, moment: when, run: only, unfinished } = finding;
    // What is still being written is told beside the floor, not on it.
    if (unfinished === true) continue;
    if (spot === undefined || when === undefined || (only !== undefined && only !== run.id)) continue;
    if (Math.abs(moment.t - when) > PROBLEM_SHOWN) continue;
    wanted.push({ key: `finding ${i}`, text: '!', kind: 'problem', anchor: [spot.x * 100, spot.y * 100], gap: BODY_GAP * scale + 8 });
  }
  return wanted;
}

export interface LookShown {
  readonly look: Playback['looks'][number];
  readonly who: BodyId;
  /** ms */
  readonly from: number;
  readonly to: number;
  /** The look this run-through takes. */
  readonly taken: boolean;
}

/** The looks of a run with the time each is there: from its read until it is passed up, taken, or a while. */
export function looksOf(playback: Playback, run: Run): readonly LookShown[] {
  return playback.looks.flatMap((look) => {
    const taken = run.look === look.id;
    const read = run.events.find(({ kind, part }) => kind === 'read' && part === look.id)?.at ?? (taken ? run.releaseAt : undefined);
    if (read === undefined) return [];
    const passed = run.events.find(({ kind, part }) => kind === 'passed-up' && part === look.id)?.at;
    const to = taken ? run.end : Math.max(passed ?? 0, read + LOOK_SHOWN);
    return [{ look, who: look.who, from: read, to, taken }];
  });
}
