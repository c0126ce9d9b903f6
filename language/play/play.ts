// CONTRACT. A play as the coach wrote it, resolved: plain data, serialisable, without a single text position.
// Positions live beside it in the `Places` table, keyed by part ids, so that a play moved down the file is the same play.
import type { BlockKey, PartId, Places, TextPlace } from '../book/places.ts';
import type { BodyId, PlayerNumber } from '../court/bodies.ts';
import type { Point } from '../court/point.ts';
import type { RuleSetId } from '../court/rule-set.ts';
import type { LevelId } from '../court/youth.ts';
import type { Direction, Place, Side, WhereOnTheFloor } from './place.ts';

export { DEFENCE, OFFENCE } from '../court/bodies.ts';
export type { BlockKey, BodyId, Direction, LevelId, PartId, Place, Places, PlayerNumber, RuleSetId, Side, TextPlace, WhereOnTheFloor };

/** A step's name in lower case with blanks as hyphens (`zip`, `give-and-go`), unique in its play; the unnamed first step is `start`. */
export type StepKey = string;
/** `<step>:<n>`: the n-th statement line of the step, counted from 1. */
export type LineKey = string;
/**
 * `<step>/<body>.<n>`: the n-th link of that body in that step, counted from 1 in text order (`zip/3.1`).
 * Lines added for other players, and lines in other steps, leave it as it is. Actions behind a look carry the look's id
 * as their step (`middle?3.1/3.1`).
 */
export type ActionId = string;
/** `<step>?<who>.<n>`: the n-th look for that man in that step (`middle?3.1`). For `look 2 or 3` the first named man. */
export type LookId = string;

/** Where a value comes from. `written` and `copied` have words in the text; for `default` and `derived` the place tells where they would go. */
export type Origin = 'written' | 'default' | 'derived' | 'copied';
export interface Value<T> {
  readonly value: T;
  readonly origin: Origin;
}

export interface Play {
  readonly key: BlockKey;
  readonly name: string;
  readonly level: Value<LevelId>;
  readonly rules: Value<RuleSetId>;
  readonly alsoRules: readonly RuleSetId[];
  readonly tags: readonly string[];
  readonly situation: readonly string[];
  readonly start: Start;
  /** What the roster says of the legs of single players; who is not in it has those of the level. */
  readonly paces: Readonly<Partial<Record<PlayerNumber, OwnPace>>>;
  /** What the roster calls them. */
  readonly names: Readonly<Partial<Record<PlayerNumber, string>>>;
  readonly defence: Value<{ readonly kind: 'none' | 'man' | 'zone'; readonly zone?: string; /** All over the floor. */ readonly press?: true }>;
  readonly clock: ClockLines;
  /** Text order; the first is the root. A step whose parent is unknown, or that is part of a loop, is left out and reported. */
  readonly steps: readonly Step[];
  readonly rebounds: readonly Rebound[];
  readonly notes: readonly Note[];
  readonly demands: readonly Demand[];
  readonly allowances: readonly Allowance[];
  /** Own spots of the play and its file, already points. */
  readonly spots: Readonly<Record<string, Point>>;
}

/** `20 m in 3.6 s`, `pace 6 m/s`, `fast`. */
export type OwnPace =
  | { readonly kind: 'sprint'; readonly metres: number; readonly seconds: number }
  | { readonly kind: 'speed'; readonly metresPerSecond: number }
  | { readonly kind: 'word'; readonly word: 'fast' | 'average' | 'slow' };

export interface Start {
  /** The alignment's name as people say it, when one is named. */
  readonly alignment: Value<string | undefined>;
  /** Where each player stands at the call; always five places (defaults filled in). */
  readonly places: Readonly<Record<PlayerNumber, Value<Place>>>;
  readonly ball: Value<PlayerNumber>;
  /** Set for a play that starts with a throw-in: who throws and from where. The ball is then out of bounds with him. */
  readonly throwIn?: { readonly by: Value<PlayerNumber>; readonly from: Value<Place>; readonly side: 'sideline' | 'baseline' };
  readonly alreadySet: boolean;
  /** A dead ball before the play (time-out, free throw, throw-in): no set-up time runs. */
  readonly dead: boolean;
}

/** What the coach asks of the clock. All seconds. Absent: not asked. */
export interface ClockLines {
  readonly call?: { readonly from: number; readonly to: number };
  readonly shotClock?: number;
  /** `shot within 16 seconds of the start|call`. */
  readonly within?: { readonly seconds: number; readonly of: 'start' | 'call' };
  /** `shot between 30 and 28 on the clock` (from > to), or `shot before the horn` (to 0). `shot`: on the shot clock. */
  readonly between?: { readonly from: number; readonly to: number; readonly clock?: 'shot' };
  readonly leave?: number;
  /** `inbound within 5 seconds`. */
  readonly inboundWithin?: number;
}

export interface Step {
  readonly key: StepKey;
  readonly name: string;
  /** The step this one follows on a run-through; null for the root. For `instead of "B"` it is B's parent (null when B is the root). */
  readonly parent: StepKey | null;
  readonly how: 'plain' | 'after' | 'instead' | 'first';
  /** For `instead`: the step replaced. */
  readonly insteadOf?: StepKey;
  readonly condition?: Condition;
  /** Actions in text order (line, link, body). For `instead of`, kept lines of the replaced step are in `kept`. */
  readonly actions: readonly Action[];
  /** For `instead of`: lines of the replaced step that stay whole, and its actions on those lines (rule 17). */
  readonly kept: readonly Action[];
  readonly looks: readonly Look[];
  readonly end?: StatedEnd;
}

export type Condition =
  /** A sentence about a defender, acted out: `when X4 shows on 3`. */
  | { readonly kind: 'defence'; readonly who: BodyId; /** Who does it with him: `when X4 and X1 trap 1`. */ readonly also?: readonly BodyId[]; readonly verb: string; readonly on?: BodyId; readonly text: string }
  /** `when 5 to 8 seconds are left`: the step opens with `to` on the clock, and not once less than `from` is left. */
  | { readonly kind: 'clock'; readonly clock: 'period' | 'shot'; readonly from: number; readonly to: number; readonly text: string }
  /** A remark in quotes, or `otherwise`: only shown. */
  | { readonly kind: 'remark'; readonly text: string };

export interface StatedEnd {
  readonly part: PartId;
  readonly text: string;
  readonly withinSeconds?: number;
  /** `ends once 2 has the ball over half court`: when it ends. */
  readonly event?: EventRef;
  readonly shot: boolean;
}

interface ActionBase {
  readonly id: ActionId;
  readonly step: StepKey;
  readonly line: LineKey;
  /** 0 for the first link of its line. Links of one line happen in this order (rule 3, 5). */
  readonly link: number;
  readonly who: BodyId;
  /** Base form of the verb as the coach wrote it: `cut`, `back-screen`, `drive`. */
  readonly verb: string;
  readonly waits: readonly Wait[];
  readonly origin: Origin;
  /**
   * In a step that stands `instead of` another: the action of the replaced step whose line this one repeats word for word. The two are one
   * event (rule 17).
   */
  readonly repeats?: ActionId;
}

/** Without the ball. `to` absent: the verb's default end, worked out when the line starts. */
export interface Move extends ActionBase {
  readonly kind: 'move';
  readonly to?: Value<Place>;
  readonly via: readonly Place[];
  /** Screeners to come off, in the order written; users of `off 4`. */
  readonly off: readonly BodyId[];
  /** How the path bends, from the verb: a curl rounds the screener, a slip cancels the screen … */
  readonly style: MoveStyle;
  readonly pace: Pace;
  /** `slips before the screen`: the screen set before it in its chain or step is not set at all. */
  readonly beforeScreen?: true;
  /** `seals X5`: whom he holds off. */
  readonly on?: BodyId;
}
export type MoveStyle = 'straight' | 'cut' | 'curl' | 'fade' | 'back-cut' | 'flash' | 'v-cut' | 'l-cut' | 'roll' | 'pop' | 'slip' | 'dive' | 'seal' | 'post-up' | 'lift' | 'drift' | 'fill' | 'clear' | 'space' | 'step-out' | 'step-in';
export type Pace = 'set' | 'sprint' | 'jog' | 'walk';

/** With the ball: a dribble or a drive. */
export interface Dribble extends ActionBase {
  readonly kind: 'dribble';
  readonly to?: Value<Place>;
  readonly via: readonly Place[];
  readonly off: readonly BodyId[];
  readonly style: 'dribble' | 'drive' | 'dribble-at' | 'keep';
  /** For `dribbles at 2`. */
  readonly at?: BodyId;
}

export type PassKind = 'pass' | 'bounce' | 'lob' | 'skip' | 'overhead' | 'baseball' | 'tip';
export interface Pass extends ActionBase {
  readonly kind: 'pass';
  readonly pass: Value<PassKind>;
  readonly to: BodyId;
  readonly at?: Value<Place>;
  readonly early: boolean;
  /** The pass that brings the ball in from out of bounds. */
  readonly throwIn: boolean;
  /** As written: `along the baseline`, `over the top`. The flight is straight all the same. */
  readonly way?: string;
}

export interface HandOff extends ActionBase {
  readonly kind: 'hand-off';
  readonly to: BodyId;
}

export interface Screen extends ActionBase {
  readonly kind: 'screen';
  readonly style: 'screen' | 'down' | 'up' | 'across' | 'away' | 'back' | 'ball' | 'flare' | 'cross' | 'pin-down';
  readonly users: readonly BodyId[];
  readonly on?: BodyId;
  readonly at?: Value<Place>;
  /** Screeners who set it together, himself included, in text order (double or stagger). */
  readonly together: readonly BodyId[];
  readonly formation: 'single' | 'double' | 'stagger';
}

export type ShotKind = 'layup' | 'dunk' | 'jumper' | 'three' | 'hook' | 'tip-in' | 'shot';
export interface Shot extends ActionBase {
  readonly kind: 'shot';
  readonly shot: Value<ShotKind>;
  /** Further kinds of `three or jumper`; the first is animated. */
  readonly or: readonly ShotKind[];
  /** `shoots from left corner`: he takes the ball there first. */
  readonly from?: Value<Place>;
}

/** Stands, keeps his place or waits: `2 stays`, `everyone else holds`, `holds until …`. */
export interface Hold extends ActionBase {
  readonly kind: 'hold';
  readonly seconds?: number;
  /** `boxes out X5`, `stays with 4`: whom he stays with. */
  readonly on?: BodyId;
}

/** A defender's scripted action. */
export interface Defend extends ActionBase {
  readonly kind: 'defend';
  readonly on?: BodyId;
  readonly to?: Value<Place>;
}

export type Action = Move | Dribble | Pass | HandOff | Screen | Shot | Hold | Defend;

/** A written wait or time (rule 18). `part` is its words' place. */
export type Wait =
  | { readonly kind: 'as' | 'once' | 'when' | 'until'; readonly event: EventRef; readonly part: PartId }
  /** `a second after 4 is set`: no reaction besides. */
  | { readonly kind: 'after'; readonly seconds: number; readonly event: EventRef; readonly part: PartId }
  | { readonly kind: 'later'; readonly seconds: number; readonly part: PartId }
  | { readonly kind: 'clock'; readonly clock: 'period' | 'shot' | 'start' | 'call'; readonly seconds: number; readonly part: PartId };

/** The event a wait speaks of, as written: which body does what (its base verb or state). Resolved to an action when scheduled. */
export interface EventRef {
  readonly who: BodyId;
  /** `roll`, `set`, `catch`, `pass`, `reach`, `clear`, or any base verb. */
  readonly does: string;
  /** For `1 reaches the lane`, `3 clears 4`. */
  readonly place?: Place;
  readonly other?: BodyId;
}

export interface Look {
  readonly id: LookId;
  readonly step: StepKey;
  readonly line: LineKey;
  /** `look 2 or 3`: one read, the first is animated. */
  readonly who: readonly PlayerNumber[];
  readonly label?: string;
  readonly pin?: LookPin;
  /** What happens only if the look is taken, in order: an entry pass if the looker lacks the ball (derived), written links, the shot. */
  readonly tail: readonly Action[];
  readonly rebounds: readonly Rebound[];
}

/** When a look comes, where it is said: on a move of his, at an event, off a screen, at a time, later than it would, where he is at a place. */
export type LookPin =
  | { readonly kind: 'on'; readonly style: string }
  /** `after`: seconds later than the event. */
  | { readonly kind: 'as'; readonly event: EventRef; readonly after?: number }
  | { readonly kind: 'off'; readonly screener: BodyId }
  | { readonly kind: 'at'; readonly seconds: number; readonly of: 'start' | 'call' | 'period' | 'shot' }
  | { readonly kind: 'later'; readonly seconds: number }
  | { readonly kind: 'place'; readonly place: Place };

export interface Rebound {
  readonly part: PartId;
  readonly within: 'play' | StepKey | LookId;
  readonly crash: readonly PlayerNumber[];
  readonly back: readonly PlayerNumber[];
}
export interface Note {
  readonly part: PartId;
  readonly within: 'play' | StepKey;
  readonly who?: PlayerNumber;
  readonly text: string;
}
export interface Demand {
  readonly part: PartId;
  readonly within: 'play' | StepKey;
  readonly must: boolean;
  readonly text: string;
  /** `kind`: `every-touch`, `touch` (by `who`), `hold` (with `seconds`), or what is counted: `pass`, `screen`, `cut`, `dribble` … */
  readonly what: {
    readonly kind: string;
    readonly count?: number;
    readonly bound?: 'at least' | 'at most';
    readonly seconds?: number;
    readonly who?: readonly BodyId[];
  };
}
export interface Allowance {
  readonly part: PartId;
  readonly within: 'play' | StepKey;
  readonly check: string;
  readonly why: string;
}

/** One way through the play: to a look taken, a stated end, or a step with nothing after it. */
export interface RunThrough {
  /** The look's id, or the last step's key. */
  readonly id: string;
  readonly steps: readonly StepKey[];
  readonly look?: LookId;
}
