/**
 * What is settled so far on one path of steps. Children of a step start from a copy, so what happened before the parting is one and the
 * same in all of them.
 */
import type { Court } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import type { RuleSet } from '../court/rule-set.ts';
import type { LegLimits, Level } from '../motion/levels.ts';
import { legLimits } from '../motion/levels.ts';
import type { Action, ActionId, BodyId, Look, LookId, Pace, PassKind, Play, Screen, ShotKind, Step, StepKey, Wait } from '../play/play.ts';
import type { Problem } from '../names/problem.ts';
import type { Graph } from './graph.ts';
import { addEvent } from './graph.ts';
import type { Edge } from './graph.ts';
import type { EventId, EventKind, Segment } from './timeline.ts';
import { alongPiece } from './ways.ts';

/** The same for every path of a play. */
export interface Scene {
  readonly play: Play;
  readonly court: Court;
  readonly rules: RuleSet;
  /** Where the five stand at the call, and the side of the even numbers in it. */
  readonly homes: Readonly<Partial<Record<BodyId, Point>>>;
  readonly evenSide: 'left' | 'right';
  readonly level: Level;
  /** What comes after a shot is not asked for: ways to the boards are not worked out. */
  readonly upToTheShots: boolean;
  readonly graph: Graph;
  readonly problems: Problem[];
  /** Own paces of single players, as a share of the level's top speed. */
  readonly paces: ReadonlyMap<BodyId, number>;
  /** What has been told, so that paths that share it tell it once. */
  readonly told: Set<string>;
  /** Steps settled so far, on all paths together. */
  readonly opened: { count: number };
  readonly steps: ReadonlyMap<StepKey, Step>;
  readonly children: ReadonlyMap<StepKey | null, readonly Step[]>;
  /** Where the screen of a replaced step stood, and when it was set, for a slip and for a defender's cue (rules 7, 17). */
  readonly seenScreens: Map<ActionId, { readonly at: Point; readonly set: number }>;
}

/** A stretch of a body's way and the event it begins with. */
export interface Stretch {
  readonly segment: Segment;
  readonly begin: number;
}

export interface Body {
  readonly who: BodyId;
  readonly home: Point;
  /** Where he ends up by what is settled. */
  place: Point;
  /** When he gets there, and how fast he comes, m/s. */
  until: number;
  exit: number;
  /** The ball leaves his hands, or comes into them, with this event: he stays for it, whatever is settled after it. */
  staysFor?: number | undefined;
  stretches: Stretch[];
}

/** Why one line cannot be settled before another. */
export type Tie = 'chain' | 'own' | 'ball' | 'look' | 'wait' | 'screen' | 'user-place' | 'meet' | 'use' | 'stand';

export interface Need {
  readonly on: string;
  readonly tie: Tie;
  readonly wait?: Wait;
}

interface ItemBase {
  /** Action, look, or `<action>:free`. */
  readonly key: string;
  readonly step: StepKey;
  /** Text order along the path. */
  readonly order: number;
  needs: readonly Need[];
  /** Waits dropped because they stand in a circle or name nothing. */
  dropped: ReadonlySet<Wait>;
  ignored: ReadonlySet<string>;
  /** Passes he takes standing before he starts, because meeting him later would close a circle (rule 19). */
  heeds: ReadonlySet<string>;
  /** Edges into its start, once all it needs is settled. */
  ready?: { readonly edges: readonly Edge[]; readonly at: number };
}

/** Few lines have any of these: all share one empty set until one gets something of its own. */
export const nothingYet: Pick<ItemBase, 'dropped' | 'ignored' | 'heeds'> = { dropped: new Set(), ignored: new Set(), heeds: new Set() };

export function withOne<One>(some: ReadonlySet<One>, one: One): ReadonlySet<One> {
  return new Set(some).add(one);
}

export interface ActionItem extends ItemBase {
  readonly kind: 'action';
  readonly action: Action;
  /** Who has the ball when this line's turn comes, by the text. */
  holder: BodyId | undefined;
  /** The screens he comes off, once looked up. */
  uses?: readonly UsedScreen[];
}
/** A screen a move comes off, or (without one) a man it passes who merely stands. */
export interface UsedScreen {
  readonly by: BodyId;
  readonly on: string;
  readonly screen?: ActionItem & { readonly action: Screen };
  /** Written `off 4`; else the next move of the man it is set for. */
  readonly written: boolean;
}
export interface LookItem extends ItemBase {
  readonly kind: 'look';
  readonly look: Look;
  holder: BodyId | undefined;
}
/** The end of a screen: when its last user has passed (rule 10). */
export interface FreeItem extends ItemBase {
  readonly kind: 'free';
  readonly screen: ActionItem & { readonly action: Screen };
}
export type Item = ActionItem | LookItem | FreeItem;

export interface Settled {
  readonly start: number;
  /** What others wait for, and what his own next link waits for (rule 4). */
  readonly done: number;
  readonly free: number;
  /** Of a pass: the ball leaves the hand. */
  readonly released?: number;
  /** The catch or the take, and whose. */
  readonly got?: number;
  readonly gotBy?: BodyId;
  /** Where the actor is when done. */
  readonly place: Point;
}

export interface PlacedScreen {
  readonly action: Screen;
  readonly at: Point;
  readonly facing: Point;
  readonly set: number;
  free?: number;
  /** Who has come off it, and the event of his passing. */
  readonly uses: Map<BodyId, number>;
}

export type BallLink =
  | { readonly kind: 'dribble'; readonly action: ActionId; readonly by: BodyId; readonly begin: number; readonly end: number }
  | { readonly kind: 'pass'; readonly action: ActionId; readonly by: BodyId; readonly to: BodyId; readonly pass: PassKind; readonly throwIn: boolean; readonly begin: number; readonly end: number; readonly from: Point; readonly at: Point }
  | { readonly kind: 'hand-off'; readonly action: ActionId; readonly by: BodyId; readonly to: BodyId; readonly begin: number; readonly end: number }
  | { readonly kind: 'shot'; readonly action: ActionId; readonly by: BodyId; readonly shot: ShotKind; readonly begin: number; readonly end: number; readonly from: Point };

/** A look on the path, as it is read. */
export interface ReadLook {
  readonly look: Look;
  readonly holder: BodyId | undefined;
  readonly read: number;
  passedUp: number;
  /** Catch in stride at this place and moment, where ball and man meet on the move. */
  readonly meeting?: Meeting;
}
export interface Meeting {
  readonly at: Point;
  /** ms of the catch. */
  readonly when: number;
  readonly stride: boolean;
  /** ms from which he stays for the ball, whatever he would have done next. */
  readonly stays?: number;
  /** Edges that hold the release back besides the read. */
  readonly edges: readonly Edge[];
}

export interface Branch {
  readonly scene: Scene;
  steps: StepKey[];
  /** Numbers in the graph, in the order they were settled. */
  events: number[];
  bodies: Map<BodyId, Body>;
  /** Text order along the path. */
  items: Item[];
  index: Map<string, Item>;
  settled: Map<string, Settled>;
  ball: BallLink[];
  holder: BodyId | undefined;
  screens: Map<ActionId, PlacedScreen>;
  looks: Map<LookId, ReadLook>;
  opened: Map<StepKey, number>;
  /** When men leave their place whose way is next to be settled, ms. */
  leaving: ReadonlyMap<BodyId, number>;
}

export function copyBranch(from: Branch): Branch {
  const items = from.items.map((item) => (from.settled.has(item.key) ? item : unsettledCopy(item)));
  return {
    scene: from.scene,
    steps: [...from.steps],
    events: [...from.events],
    bodies: copyBodies(from),
    items,
    index: new Map(items.map((item) => [item.key, item])),
    settled: new Map(from.settled),
    ball: [...from.ball],
    holder: from.holder,
    screens: copyScreens(from),
    looks: new Map(from.looks),
    opened: new Map(from.opened),
    leaving: new Map(),
  };
}

/** A copy for a look that is taken: its lines are settled, so only what the look changes is copied. */
export function copyForLook(from: Branch): Branch {
  return { ...from, bodies: copyBodies(from), ball: [...from.ball], screens: copyScreens(from), leaving: new Map() };
}

function copyBodies(from: Branch): Map<BodyId, Body> {
  const bodies = new Map<BodyId, Body>();
  for (const [who, body] of from.bodies) bodies.set(who, { ...body, stretches: [...body.stretches] });
  return bodies;
}

function copyScreens(from: Branch): Map<ActionId, PlacedScreen> {
  const screens = new Map<ActionId, PlacedScreen>();
  for (const [id, screen] of from.screens) screens.set(id, { ...screen, uses: new Map(screen.uses) });
  return screens;
}

function unsettledCopy(item: Item): Item {
  return { ...item, ready: undefined };
}

/** Adds an event to the graph and to this path. */
export function happen(branch: Branch, id: EventId, kind: EventKind, part: string, who: BodyId | undefined, edges: readonly Edge[]): number {
  const event = addEvent(branch.scene.graph, id, kind, part, who, edges);
  branch.events.push(event);
  return event;
}

export function whenOf(branch: Branch, event: number): number {
  return branch.scene.graph.events[event]!.timed.at;
}

/** Where a body is at this many ms, by what is settled. */
export function bodyAt(body: Body, ms: number): Point {
  const { stretches } = body;
  for (let index = stretches.length - 1; index >= 0; index--) {
    const { segment } = stretches[index]!;
    if (ms < segment.t0) continue;
    const to = segment.path[segment.path.length - 1]!;
    return ms >= segment.t1 ? to : alongPiece(segment.path[0]!, to, segment.profile, ms - segment.t0);
  }
  return body.home;
}

/** His legs: the level's, at his own pace where the roster gives one. */
export function legsOf({ scene }: Branch, who: BodyId, pace: Pace = 'set', withBall = false): LegLimits {
  return legLimits(scene.level, pace, withBall, scene.paces.get(who) ?? 1);
}

export function bodyOf(branch: Branch, who: BodyId): Body {
  return branch.bodies.get(who)!;
}

/** Tells a problem of this play once, however many paths share it. */
export function tell(branch: Branch, problem: Problem): void {
  const key = `${problem.code} ${problem.part} ${problem.params['other'] ?? ''}${problem.params['user'] ?? ''}`;
  if (branch.scene.told.has(key)) return;
  branch.scene.told.add(key);
  branch.scene.problems.push(branch.steps.length === 0 ? problem : { ...problem, steps: [...branch.steps] });
}
