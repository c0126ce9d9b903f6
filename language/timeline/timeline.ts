// CONTRACT. What a play means in time: the event graph with its reasons, and for each run-through what moves when.
// All times are whole milliseconds from the call (on a throw-in: from the hand-over); all places are metres, whole millimetres.
import type { Point } from '../court/point.ts';
import type { ActionId, BodyId, LookId, PartId, PassKind, ShotKind, StepKey } from '../play/play.ts';
import type { Problem } from '../names/problem.ts';
import type { Profile } from '../motion/legs.ts';

export type EventKind =
  | 'call' | 'open'                       // the call; a step opens
  | 'start' | 'arrive'                    // a move or dribble begins, is there
  | 'set' | 'use' | 'free'                // a screen is set, its user passes the shoulder, the screener is free
  | 'release' | 'catch' | 'take'          // a pass leaves the hand, is caught; a hand-off is taken
  | 'touch'                               // a throw-in is first touched: the game clock starts
  | 'read' | 'passed-up'                  // a look is there to be taken; it is passed up
  | 'shot' | 'rim' | 'end';               // the ball leaves the shooter's hand; reaches the rim; a stated end

/** `<action, look or step id>:<kind>`, for several users or receivers with the body behind it (`zip/5.1:use.3`). */
export type EventId = string;

export interface TimedEvent {
  readonly id: EventId;
  readonly kind: EventKind;
  /** The action, look or step it belongs to. */
  readonly part: PartId;
  readonly who?: BodyId;
  readonly at: number;
  /** The edge that decided the time: the answer to "why so late?". Absent for the call. */
  readonly because?: Cause;
}

export type Reason =
  | 'own-last-action' | 'chain' | 'step-opens' | 'set-up' | 'reaction' | 'legs' | 'flight' | 'screen' | 'meets-cutter'
  | 'ball-order' | 'written-wait' | 'read' | 'catch-to-release' | 'hand-over' | 'look-order';

/** One edge of the graph: `to` cannot be before `from` plus `delay` ms. */
export interface Cause {
  readonly from: EventId;
  readonly delay: number;
  readonly reason: Reason;
}

/** Straight or bent way on the floor: at least two points. */
export type Path = readonly Point[];

/** One stretch of a body's way. Between segments, and after the last, the body stands at the last point. */
export interface Segment {
  readonly t0: number;
  readonly t1: number;
  readonly action: ActionId;
  readonly path: Path;
  /** How the way is covered in time (distance along `path` at seconds after t0). */
  readonly profile: Profile;
  readonly withBall: boolean;
}

/** A body's track: where it stands first, then its segments in time order, never overlapping; each starts where the one before ended. */
export interface Track {
  readonly start: Point;
  readonly segments: readonly Segment[];
}

/** A defender's track: places at a fixed step from t0, linearly joined. */
export interface Keyframes {
  readonly t0: number;
  readonly stepMs: number;
  readonly points: readonly Point[];
}

/** The ball's states cover the whole run without gap or overlap. */
export type BallState =
  | { readonly kind: 'held'; readonly t0: number; readonly t1: number; readonly by: BodyId; readonly live: boolean /* dribbling */; readonly out: boolean /* out of bounds with a thrower */ }
  | { readonly kind: 'flight'; readonly t0: number; readonly t1: number; readonly from: Point; readonly to: Point; readonly pass: PassKind; readonly by: BodyId; readonly receiver: BodyId; readonly action: ActionId }
  | { readonly kind: 'shot'; readonly t0: number; readonly t1: number; readonly from: Point; readonly to: Point; readonly shot: ShotKind; readonly by: BodyId; readonly action: ActionId };

export interface Run {
  /** As `RunThrough.id`. */
  readonly id: string;
  readonly steps: readonly StepKey[];
  readonly look?: LookId;
  /** First action, after the set-up. */
  readonly startsAt: number;
  /** When the game clock starts to run: 0, or the touch on a throw-in. */
  readonly clockStartsAt: number;
  /** When the shot leaves the hand; absent for a run-through without a shot. */
  readonly releaseAt?: number;
  readonly end: number;
  readonly tracks: Readonly<Partial<Record<BodyId, Track>>>;
  readonly defenders: Readonly<Partial<Record<BodyId, Keyframes>>>;
  readonly ball: readonly BallState[];
  readonly events: readonly TimedEvent[];
  /** Screens as they were set in this run, for the picture and the checks. */
  readonly screens: readonly SetScreen[];
}

export interface SetScreen {
  readonly action: ActionId;
  readonly by: BodyId;
  readonly at: Point;
  /** Unit direction the screener faces (towards the defender he stops). */
  readonly facing: Point;
  readonly from: number;
  readonly to: number;
  readonly users: readonly BodyId[];
}

/** Seconds of a look, its typical run and the spread's percentiles, release measured from the call. */
export interface LookTime {
  readonly look: LookId;
  readonly run: string;
  /** ms */
  readonly early: number;
  readonly typical: number;
  readonly late: number;
  /** Flight of the shot, ms. */
  readonly flight: number;
  /** ms of `late` and `typical` that the set-up takes: what a team already set saves. */
  readonly setUp: number;
  /** The release from when the game clock runs: the call, on a throw-in the touch. */
  readonly onClock: Percentiles;
  /** The release from the first action, which is what `of the start` means. */
  readonly fromStart: Percentiles;
}

/** ms */
export interface Percentiles {
  readonly early: number;
  readonly typical: number;
  readonly late: number;
}

export interface Times {
  readonly looks: readonly LookTime[];
  /** Whole seconds: call it with this or more on the clock for the first look, and for all looks. */
  readonly firstLook?: Needed;
  readonly allLooks?: Needed;
}
export interface Needed {
  readonly fromCall: number;
  readonly alreadySet: number;
}

export interface Timeline {
  readonly runs: readonly Run[];
  readonly times: Times;
  readonly problems: readonly Problem[];
}
