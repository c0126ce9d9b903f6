/**
 * The tree of a line: plain data, the only thing that later layers see of the parser. CONTRACT.
 *
 * Every node has `$type`, its columns `[at, to)` in the line (UTF-16) and `spans`, the columns of its leaf values:
 * `spanOf(node, 'verb')`, `spanOf(place, 'side')`, `spanOf(player, 'number')`. Absent optional parts are absent; lists are always there; flags are `true` or `false`.
 * Words are as the grammar spells them (lower case, single blanks, hyphens and articles mended): `Back  Screens` → 'back-screens'. What verb a word is: verbs.ts.
 * Metres and seconds are converted (`Length.metres`, `Seconds.seconds`). Synonyms of places and shots are one name (`basket` → 'rim', `lay-up` → 'layup'), plurals of
 * places are singular with `each: true` (`2 and 3 pop to the wings`: each to his own side).
 * Of a broken line the tree holds what stands before the fault, and only whole nodes: `1 passes to 2 as` is the pass without a trigger, `look` is no tree at all.
 *
 * Words that a line means the same without are not in the tree (read-over.ts): `rolls hard`, `pops out to the top`, `a trailer three`.
 *
 * | line | tree |
 * |---|---|
 * | `play "A" mirrors "B"` | PlayHead { name, mirrors?, continues?, after? } |
 * | `alignment "Wide box"`, `roster "U14"`, `book` | AlignmentHead { name, mirrors? }, RosterHead { name? }, BookHead { name? } |
 * | `step "Slip" instead of "Middle" when X4 shows on 3` | StepHead { name, mirrors?, origin?: After { step } · InsteadOf { step } · First · AgainFrom { step, parts: PartSwap { player, plays }[], times? } · Repeats { steps[], lasting?, times? }, when?: DefenceDoes { subject, action } · Remark { text } · TimeLeft { low?, under?, time, clock? }, otherwise } |
 * | `notation 1`, `use "x.play"`, `level u14`, `rules fiba, also nfhs` | Notation { version }, Use { file }, Level { level }, Rules { rules, also[] } |
 * | `spot "pocket" is 3 ft inside right elbow` | OwnSpot { name, spot: Spot } |
 * | `section "Last shots": "A", "B"` | Section { name, plays[] } |
 * | `4 "Mia", 20 m in 3.4 s` | Entry { number, name, pace?: SprintTime { distance, time } · Speed { speed: metres a second } · PaceWord { word } } (in an alignment: number at his own spot) |
 * | `tags last-shot, man` | Tags { tags[] } |
 * | `from horns, 2 and 3 swapped, 4 at left corner, ball with 1` | From { base?: AlignmentRef { name?, own?, fourMan, throwIn, mirrored, on?: Place, order: Player[], direction? }, changes: (Placing · Swapped { a, b } · BallWith { player } · Mirrored)[] } |
 * | `from 1 top, 2 and 3 blocks` | From { changes: Placing[] }, no base |
 * | `ball with 1`, `against 2-2-1 press`, `leave 4 seconds after a miss` | BallWith { player }, Against { man, formation?, press }, Leave { time } |
 * | `call with 22 to 26 on the clock, shot clock 24` | Call { low?, time, shotClock? }, each a ClockTime { seconds: number } |
 * | `shot within 16 seconds of the start`, `shot by 4 on the clock`, `no shot before 6 on the clock` | ShotWindow { within?, from?: start|call, early?, late?, clock?, by?, notBefore?, beforeHorn }, times each a ClockTime |
 * | `situation sideline throw-in, down 1` | Situation { parts: (Circumstance { what } · Score { how, by } · Remark { text })[] } |
 * | `already set`, `clock at 3 seconds`, `inbound within 5 seconds` | AlreadySet, ClockAt { time: ClockTime, shotClock? }, InboundWithin { time } |
 * | `look 3 "pull-up" as he comes off 4: jumper or three` | Look { players[], label?, pins: (OnMove { move, off? } · Off · LookTime { about, time, from } · At · Trigger)[], tail: (ShotKinds { kinds[], plain?, from? } · PassKind { kind, passer? } · TailClause { subject?, action } · OnMiss { groups })[], also?: Look } |
 * | `ends once 2 has the ball over half court, within 8 seconds` | Ends { noShot, event?, within? } |
 * | `rebound 2, 4, 5 crash, 1, 3 get back` | Rebound { groups: ReboundGroup { subject, verb }[] } |
 * | `note 3 "keep low"`, `allow crowding "why"` | Note { players[], text }, Allow { check, why? } |
 * | `must have at least 3 passes` | Amount { none, bound?, count?, what } · EveryTouch · Touch { subject } · NotHold { time } |
 * | `1 top`, `2 and 3 at the nail, 1 m apart` | Placing { subject, spots: Spot[], apart? } (in a step: the verb is missing, see `verbMissing`) |
 * | `once 4 is set, 3 cuts off 4 to top, then 4 rolls` | Statement { lead?: Trigger, first: Clause, links: Link { how?, then, clause }[], ends?: Ends } |
 *
 * Clause { lead?, subject?, action, triggers[] }: no subject means the subject carries on; a lead stands in a link behind `and` or `then`. Subjects: Players { players } · Everyone { all, else } · Pronoun { word }.
 * Player { number?, defence, pronoun? }: `X4` is { number: 4, defence: true }; `him` has a pronoun and no number.
 * Trigger: Wait { how: as|while|once|when|until, gap?, event } (`as soon as`, `after`: once; `a second after`: once with a gap) · Later { time } · OnClock { time, clock } (`with 8 seconds left` too) · WhenLeft { time, clock? };
 * of an action also OfWhatIsAbove { how: after|on|with|behind, player?, what } (`with the drive`, `after 4's screen`) · SameTime { player? } (`at the same time`, `together with 2`); before a line AfterThat { words } (`then`, `after that`).
 * Event: PlayerEvent { subject, verb?, spot?, by?, overHalfCourt, action? } (verb for set, catches, reaches, comes off …, else an action) · BallEvent { spot?, is? }.
 *
 * Actions have a verb and parts in the order written:
 *   Move { verb, parts: To · Via · Off · At · Past { how, players } · Through { a, b, or gate: the two told of last } · For { players } · OpenSpot · Heading { way } · ComesFrom { spot } (it changes nothing) · BeforeScreen · SwapWith { player } }
 *     (`replaces 3`: For; `fills the top`: To; `comes off 4`, `uses 4's screen`: Off, and the reader says whether he drives or cuts; `2 and 4 swap`: no part)
 *   Seal { verb, on?, parts: At · To }, Crash { verb, on? }, Close { verb, player }, Role { verb, parts: At }
 *   Dribble { verb, parts: To · Via · Off · Heading · DribbleAt { player } · Past · Through }
 *   Pass { verb, parts: PassTo { player } · PassAlong { way } · PassStyle { style } · PassBall · Early · At }, HandOff { verb, parts: PassTo · At · PassBall }
 *   Screen { verb, parts: For { players } · On { player } · ScreenWay { way } · At }
 *   Shot { verb, kinds[], from?: Spot }, Hold { verb, parts: At · PassBall · HoldFor { time } · OnClock (`until 8 on the clock`) · With }, ThrowIn { verb, parts: PassTo · FromSpot { spot } · At · PassAlong · PassBall · Early }
 *   Defend { verb, parts: DefendTo { player?, spots } · With · Guarded { player } · At · Off · OffSpot { spot } · TheScreen · Heading }
 *   SameAgain { parts: For · To · Off }: `then for 2`, the verb before once more (only in a Link with `then`)
 * To { how, ball, spots, either, player? }: spots joined by `or` are choices (`either`), by `and` one for each subject; a player only in SameAgain (`1 passes to 2, then to 3`). Off { double, then, screen, players }: `screen` without players is `off the screen`, the last one set for him. At { how: at|in, spots, apart? }: `on the wing` is `at`.
 * Spot: Place { side?, name?, each, extended, half?, own? } · Between { a, b } · NextTo { how, player } · Offset { by: Length, direction, alsoBy?: Length, also?, from } · Coordinates { x, y, unit? };
 * a and b, from: Place or PointOfPlayer { player }.
 */
import type * as ast from './generated/ast.ts';

/** Columns in the line, `[at, to)`, in UTF-16 units. */
export interface Columns {
  readonly at: number;
  readonly to: number;
}

export interface TreeNode extends Columns {
  readonly $type: string;
  /** For each leaf value: at, to, and again for each further item of a list. */
  readonly spans: { readonly [property: string]: readonly number[] };
}

export interface PlayerNode extends TreeNode {
  readonly $type: 'Player';
  /** 1 to 5; absent for a pronoun. */
  readonly number?: number;
  /** Whether this is X1–X5. */
  readonly defence: boolean;
  readonly pronoun?: 'him' | 'them';
}

export interface SecondsNode extends TreeNode {
  readonly $type: 'Seconds';
  readonly value: number;
  readonly unit: 's';
  readonly seconds: number;
}

export interface LengthNode extends TreeNode {
  readonly $type: 'Length';
  /** As written, in `unit`. */
  readonly value: number;
  readonly unit: LengthUnit;
  readonly metres: number;
}
export type LengthUnit = 'm' | 'cm' | 'ft' | 'in';

export interface ClockTimeNode extends TreeNode {
  readonly $type: 'ClockTime';
  readonly seconds: number;
}

export interface PlaceNode extends TreeNode {
  readonly $type: 'Place';
  readonly side?: SideWord;
  /** Singular, synonyms mended: 'wing', 'rim', 'top', 'block'. */
  readonly name?: PlaceName;
  /** The coach wrote the plural: each of the players takes one, on his own side. */
  readonly each: boolean;
  readonly extended: boolean;
  /** A whole side: `to the weak side`. */
  readonly half?: Exclude<NonNullable<ast.Place['half']>, 'opposite side' | 'other side' | 'left' | 'right'>;
  /** The name of the coach's own spot. */
  readonly own?: string;
}
export type SideWord = Exclude<NonNullable<ast.Place['side']>, 'other'>;
export type PlaceName =
  | Exclude<ast.SpotName, 'basket' | 'hoop' | 'ring' | 'hole' | 'bucket' | `under the ${string}` | 'low posts' | 'top of the key' | 'top of the arc' | 'top of the circle' | 'up top' | 'out top' | 'paint' | 'key' | 'blocks' | 'mid-posts' | 'elbows' | 'high posts' | 'slots' | 'wings' | 'corners' | 'short corners' | 'dunker spots' | 'hashes' | 'post' | 'middle' | `front of the ${string}` | `backcourt ${string}s` | `own ${string}` | `${string} line` | `mid${string}` | `mid court` | `${'center' | 'centre'} court`>
  | 'lane line' | 'free-throw line' | 'far free-throw line';

export interface SpeedNode extends TreeNode {
  readonly $type: 'Speed';
  /** Metres a second. */
  readonly speed: number;
}

export interface CountableNode extends TreeNode {
  readonly $type: 'Amount';
  readonly none: boolean;
  readonly bound?: 'at least' | 'at most' | 'exactly';
  readonly count?: number;
  /** Singular. */
  readonly what: 'pass' | 'screen' | 'ball-screen' | 'cut' | 'dribble' | 'drive' | 'hand-off' | 'reversal' | 'look';
}

type ShotKind = 'layup' | 'dunk' | 'jumper' | 'three' | 'hook' | 'tip-in';

export interface ShotKindsNode extends TreeNode {
  readonly $type: 'ShotKinds';
  /** Joined by `or`: whichever is there. */
  readonly kinds: readonly ShotKind[];
  /** `shoots`, `catch and shoot`: the place says what kind it is. */
  readonly plain?: ast.PlainShot;
  readonly from?: Plain<ast.Spot>;
}

export interface ShotNode extends TreeNode {
  readonly $type: 'Shot';
  readonly verb: ast.ShotVerb;
  readonly kinds: readonly ShotKind[];
  readonly from?: Plain<ast.Spot>;
}

export interface PassKindNode extends TreeNode {
  readonly $type: 'PassKind';
  readonly kind: 'pass' | 'bounce-pass' | 'chest-pass' | 'overhead-pass' | 'baseball-pass' | 'lob' | 'skip' | 'tip' | 'hand-off' | 'kick-out';
  readonly passer?: PlayerNode;
}

export interface OnMoveNode extends TreeNode {
  readonly $type: 'OnMove';
  /** The base form of the verb, or what he catches: `roll`, `post-up`, `lob`. */
  readonly move: string;
  /** `coming off 4`. The place behind the move says where he goes anyhow. */
  readonly off?: OffNode;
  /** `sealing X4`: whom he holds off. */
  readonly on?: PlayerNode;
}

export interface StatementNode extends TreeNode {
  readonly $type: 'Statement';
  readonly lead?: Plain<ast.Lead>;
  readonly first: Plain<ast.Clause>;
  readonly links: readonly LinkNode[];
  /** `…, ends with no shot`: how the play ends with what the line tells. */
  readonly ends?: Plain<ast.Ends>;
}

export interface LinkNode extends TreeNode {
  readonly $type: 'Link';
  /** Absent where the link begins with `then` alone. */
  readonly how?: ',' | 'and';
  readonly then: boolean;
  readonly clause: Plain<ast.Clause>;
}

export interface WaitNode extends TreeNode {
  readonly $type: 'Wait';
  /** `as soon as` and `after` are `once`. */
  readonly how: 'as' | 'while' | 'once' | 'when' | 'until';
  /** `a second after …`. */
  readonly gap?: Plain<ast.Seconds>;
  readonly event: Plain<ast.Event>;
}

export interface OnClockNode extends TreeNode {
  readonly $type: 'OnClock';
  readonly time: ClockTimeNode;
  readonly clock: 'on the clock' | 'on the shot clock';
}

export interface EveryoneNode extends TreeNode {
  readonly $type: 'Everyone';
  readonly all: 'everyone' | 'everybody' | 'both' | 'others';
  readonly else: boolean;
}

export interface CircumstanceNode extends TreeNode {
  readonly $type: 'Circumstance';
  /** One name: `slob` is a sideline throw-in. */
  readonly what: Exclude<ast.Circumstance['what'], 'sideline out of bounds' | 'slob' | 'baseline out of bounds' | 'blob' | 'after a timeout' | 'tie game' | 'tie' | 'need a 3' | 'vs a press'>;
}

export interface OffNode extends TreeNode {
  readonly $type: 'Off';
  readonly double: boolean;
  readonly then: boolean;
  /** `off the screen`: the last one set for him; nobody is named. */
  readonly screen: boolean;
  readonly players: readonly PlayerNode[];
}

export interface AgainFromNode extends TreeNode {
  readonly $type: 'AgainFrom';
  readonly step: string;
  readonly parts: readonly Plain<ast.PartSwap>[];
  readonly times?: number;
}

export interface RepeatsNode extends TreeNode {
  readonly $type: 'Repeats';
  readonly steps: readonly string[];
  readonly lasting?: SecondsNode;
  readonly times?: number;
}

interface Reshaped {
  AgainFrom: AgainFromNode;
  Repeats: RepeatsNode;
  Circumstance: CircumstanceNode;
  Off: OffNode;
  Wait: WaitNode;
  OnClock: OnClockNode;
  Everyone: EveryoneNode;
  Link: LinkNode;
  Statement: StatementNode;
  ShotKinds: ShotKindsNode;
  Shot: ShotNode;
  PassKind: PassKindNode;
  OnMove: OnMoveNode;
  Player: PlayerNode;
  Seconds: SecondsNode;
  Length: LengthNode;
  ClockTime: ClockTimeNode;
  Place: PlaceNode;
  Speed: SpeedNode;
  Amount: CountableNode;
}

/** The plain form of a node of the generated syntax tree. */
export type Plain<T> = T extends { readonly $type: infer N extends string }
  ? N extends keyof Reshaped
    ? Reshaped[N]
    : TreeNode & { readonly $type: N } & { readonly [K in keyof T as K extends `$${string}` ? never : K]: Plain<T[K]> }
  : T extends readonly (infer U)[]
    ? readonly Plain<U>[]
    : T;

export type LineTree = Plain<ast.Line>;
export type ActionTree = Plain<ast.Action | ast.SameAgain>;
export type SpotTree = Plain<ast.Spot>;
/** What an action waits for; a look is pinned by the former only. */
export type ClauseTriggerTree = Plain<ast.Lead>;
export type EventTree = Plain<ast.Event>;
export type SubjectsTree = Plain<ast.Subjects>;
export type ClauseTree = Plain<ast.Clause>;
export type StatementTree = Plain<ast.Statement>;
export type LookTree = Plain<ast.Look>;
export type StepTree = Plain<ast.StepHead>;
export type FromTree = Plain<ast.From>;

/** The plain node of a type by its name: `NodeOf<'Move'>`. */
export type NodeOf<N extends keyof ast.SetLineAstType> = Plain<ast.SetLineAstType[N]>;

/** Columns of a leaf value of a node (the index-th of a list); of the node itself if the value is not there. */
export function spanOf(node: TreeNode, property: string, index = 0): Columns {
  const columns = node.spans[property];
  if (!columns || columns.length <= index * 2) return { at: node.at, to: node.to };
  return { at: columns[index * 2]!, to: columns[index * 2 + 1]! };
}

/** All child nodes, in the order of the properties. */
export function childrenOf(node: TreeNode): readonly TreeNode[] {
  const found: TreeNode[] = [];
  for (const key in node) {
    if (key === 'spans') continue;
    const value: unknown = node[key as keyof TreeNode];
    if (!Array.isArray(value)) putNode(found, value);
    else for (const item of value) putNode(found, item);
  }
  return found;
}

function putNode(found: TreeNode[], value: unknown): void {
  if (typeof value === 'object' && value !== null && '$type' in value) found.push(value as TreeNode);
}
