/**
 * Whose legs a play is written for: one table, a row a quantity, a column a level, a source a row. Metres, seconds, m/s, m/s², shares.
 * Few of these have been measured for children; what no study or rule gives is interpolated between the ends that one does, and
 * says so. The table is for drawing and for planning, not for judging a player.
 */
import type { Source } from '../court/point.ts';
import { commonPractice, fromMemory, read } from '../court/sources.ts';
import type { LevelId } from '../court/youth.ts';
import { levelIds } from '../court/youth.ts';
import type { Pace, PassKind, ShotKind } from '../play/play.ts';

export { levelIds };
export type { LevelId };

export interface Row {
  readonly unit: 'm' | 's' | 'm/s' | 'm/s2' | 'share';
  /** In the order of `levelIds`: u10, u12, u14, u16, hs, college, pro. */
  readonly values: readonly [number, number, number, number, number, number, number];
  readonly source: Source;
  /** Levels the source says nothing of: continued from their neighbours. */
  readonly interpolated?: readonly LevelId[];
  /** What the number means, for the reference. */
  readonly about: string;
}

const sprintTable = fromMemory('sprint top speeds by age, shaped on published sprint profiles; the model’s time constant near 1 s: Clark and Ryan 2022 as cited by an open sprint package');
const releaseTable = fromMemory('catch to release: pro 0.55-0.8, college 0.7-0.9, U16 0.8-1.1, U12 1.0-1.5 s');
const passTable = fromMemory('adult passes: chest 7-11, overhead 8-12, skip and baseball 12-16, bounce 6-9, lob 6-8 m/s; an ordinary pass in one NBA game trace 6.7-7.8, a quick one 13.1-14.7 m/s');
const heightTable = fromMemory('release heights of grown shooters 2.33-2.46 m (Okazaki and Rodacki 2012, its heights only); younger ones scaled by body height');
const stretched = ['u10', 'hs', 'college'] as const;

const rows = {
  vmax: { unit: 'm/s', values: [5.5, 6.0, 6.6, 7.3, 7.9, 8.3, 8.6], source: sprintTable, interpolated: ['u10', 'college'], about: 'top speed of a sprint' },
  tau: { unit: 's', values: [0.9, 0.9, 0.9, 0.95, 1.0, 1.0, 1.0], source: sprintTable, interpolated: ['u10', 'college'], about: 'time to 63 % of top speed' },
  brake: { unit: 'm/s2', values: [3.6, 3.8, 4.0, 4.2, 4.4, 4.7, 5.0], source: fromMemory('maximal stop tests, trained men: mean 3.5-5 m/s²; at 5 the model gives the 180 degree deficit recalled for trained men, 0.5-0.7 s; braking steps load more than accelerating ones: Harper 2022, abstract seen'), interpolated: ['u10', 'u12', 'u14', 'u16', 'hs'], about: 'braking before a stop' },
  cutEffort: { unit: 'share', values: [0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85], source: commonPractice(), about: 'top speed of an ordinary cut in a set, as a share of a sprint’s: hard, but ready to stop and catch' },
  jog: { unit: 'm/s', values: [2.3, 2.4, 2.6, 2.8, 3.0, 3.1, 3.2], source: commonPractice(), about: 'jogging' },
  walk: { unit: 'm/s', values: [1.2, 1.25, 1.3, 1.4, 1.4, 1.4, 1.4], source: fromMemory('ordinary walking about 1.4 m/s'), interpolated: ['u10', 'u12', 'u14'], about: 'walking' },
  slide: { unit: 'm/s', values: [1.7, 1.9, 2.1, 2.3, 2.5, 2.8, 3.0], source: fromMemory('defensive slide, adults 2.0-3.0 m/s, about half a sprint'), interpolated: ['u10', 'u12', 'u14', 'u16'], about: 'sliding sideways on defence' },
  dribbleShare: { unit: 'share', values: [0.75, 0.8, 0.85, 0.88, 0.91, 0.93, 0.95], source: commonPractice('common practice; in grown players the cost of a dribble is small: Scanlan 2018, Ramirez-Campillo 2021, abstracts without numbers'), about: 'speed with the ball, as a share of the speed without' },
  reaction: { unit: 's', values: [0.32, 0.3, 0.28, 0.26, 0.25, 0.23, 0.22], source: fromMemory('simple visual reaction 0.20-0.28 s, athletes near 0.2'), interpolated: ['u10', 'u12'], about: 'from another player’s event to the own start' },
  choiceReaction: { unit: 's', values: [0.55, 0.5, 0.45, 0.42, 0.39, 0.35, 0.32], source: fromMemory('decision in reactive agility tests 0.30-0.45 s'), interpolated: ['u10', 'u12'], about: 'reaction when there is a choice, as a defender’s' },
  read: { unit: 's', values: [0.8, 0.7, 0.6, 0.55, 0.5, 0.45, 0.4], source: commonPractice('common practice; a choice reaction of 0.30-0.45 s (from memory) and the ball-handler’s glance'), about: 'reading whether a look is open' },
  beat: { unit: 's', values: [0.4, 0.35, 0.3, 0.3, 0.25, 0.25, 0.2], source: commonPractice(), about: 'from a set screen to its user at the shoulder' },
  setUp: { unit: 's', values: [2.5, 2.5, 2.5, 2.5, 2.5, 2.5, 2.5], source: commonPractice(), about: 'getting into the places after the call' },
  startDelay: { unit: 's', values: [0.6, 0.5, 0.4, 0.4, 0.3, 0.3, 0.3], source: commonPractice(), about: 'from the call, or the places taken, to the first action' },
  screenHold: { unit: 's', values: [1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0], source: commonPractice(), about: 'how long a screener stays whom nobody uses' },
  layupRelease: { unit: 's', values: [0.9, 0.85, 0.75, 0.7, 0.65, 0.6, 0.55], source: commonPractice('common practice: the two steps of a layup'), about: 'catch to the release of a layup' },
  dunkRelease: { unit: 's', values: [0.9, 0.85, 0.75, 0.7, 0.65, 0.6, 0.55], source: commonPractice('common practice: as a layup'), about: 'catch to dunk' },
  jumperRelease: { unit: 's', values: [1.35, 1.25, 1.05, 0.95, 0.85, 0.8, 0.7], source: releaseTable, interpolated: ['u10', 'u14', 'hs'], about: 'catch to the release of a jump shot' },
  threeRelease: { unit: 's', values: [1.5, 1.4, 1.15, 1.0, 0.9, 0.85, 0.75], source: releaseTable, interpolated: ['u10', 'u14', 'hs'], about: 'catch to the release of a three' },
  layupOffDribble: { unit: 's', values: [0.4, 0.35, 0.3, 0.3, 0.25, 0.25, 0.2], source: commonPractice('common practice: a drive’s last two steps are the layup’s, the jump is left'), about: 'end of a drive at the rim to the release of a layup or a dunk' },
  jumperOffDribble: { unit: 's', values: [0.95, 0.85, 0.75, 0.7, 0.6, 0.55, 0.5], source: commonPractice('common practice: the ball is gathered while the legs still brake; one dribble and a shot take a grown player 1.2-1.5 s in all'), about: 'end of a drive to the release of any other shot' },
  hookRelease: { unit: 's', values: [1.2, 1.1, 1.0, 0.9, 0.85, 0.8, 0.75], source: commonPractice(), about: 'catch to the release of a hook' },
  tipInRelease: { unit: 's', values: [0.2, 0.2, 0.15, 0.15, 0.1, 0.1, 0.1], source: commonPractice('common practice: a tap takes about 0.1 s'), about: 'touch to the release of a tip-in' },
  passRelease: { unit: 's', values: [0.55, 0.5, 0.42, 0.38, 0.35, 0.32, 0.3], source: commonPractice('common practice: catch, see the man, let go; under half a jump shot’s release'), about: 'catch to the release of a pass' },
  releaseHeight: { unit: 'm', values: [1.65, 1.8, 2.0, 2.2, 2.3, 2.4, 2.45], source: heightTable, interpolated: ['u10', 'u12', 'u14', 'u16'], about: 'height of the ball at the release of a jump shot' },
  bodyRadius: { unit: 'm', values: [0.22, 0.23, 0.25, 0.27, 0.28, 0.29, 0.3], source: fromMemory('half a shoulder breadth and a hand’s width of room'), about: 'half the room a body takes' },
  reach: { unit: 'm', values: [0.6, 0.68, 0.77, 0.85, 0.9, 0.95, 1.0], source: read('draft-combine wingspan mean 2.098 m, open dataset: half of it at the pro end, a little bent'), interpolated: ['u10', 'u12', 'u14', 'u16', 'hs', 'college'], about: 'an arm from the middle of the body' },
  step: { unit: 'm', values: [0.5, 0.58, 0.66, 0.74, 0.8, 0.84, 0.88], source: fromMemory('a normal step: 0.7-0.9 m adult, 0.5-0.7 m child; no rule book gives metres'), about: 'a normal step, as the screening rules mean it' },
  passSpeed: { unit: 'm/s', values: [5.8, 6.5, 7.5, 8.2, 8.8, 9.3, 9.8], source: passTable, interpolated: stretched, about: 'chest pass' },
  bounceSpeed: { unit: 'm/s', values: [5.0, 5.5, 6.2, 6.8, 7.2, 7.6, 8.0], source: passTable, interpolated: stretched, about: 'bounce pass, along its way to the floor and up' },
  lobSpeed: { unit: 'm/s', values: [5.0, 5.5, 6.0, 6.4, 6.8, 7.0, 7.2], source: passTable, interpolated: stretched, about: 'lob, along the floor' },
  skipSpeed: { unit: 'm/s', values: [6.5, 7.5, 9.0, 10.5, 11.5, 12.5, 13.5], source: passTable, interpolated: stretched, about: 'skip pass across the floor' },
  overheadSpeed: { unit: 'm/s', values: [6.0, 6.8, 8.0, 8.8, 9.4, 10.0, 10.5], source: passTable, interpolated: stretched, about: 'overhead pass' },
  baseballSpeed: { unit: 'm/s', values: [7.0, 8.2, 10.0, 11.5, 12.5, 13.5, 14.5], source: passTable, interpolated: stretched, about: 'one-hand baseball pass' },
  tipSpeed: { unit: 'm/s', values: [3.5, 3.8, 4.2, 4.4, 4.6, 4.7, 4.8], source: read('jump-ball tip in a game trace 4.4-5.0 m/s, open dataset'), interpolated: ['u10', 'u12', 'u14', 'u16', 'hs'], about: 'tipped ball' },
  legsSpread: { unit: 'share', values: [0.1, 0.09, 0.08, 0.07, 0.06, 0.05, 0.045], source: read('draft combine: 3/4-court sprint SD 4.1 % of its mean, lane agility 5.2 %, open dataset'), interpolated: ['u10', 'u12', 'u14', 'u16', 'hs', 'college'], about: 'standard deviation of a player’s speed' },
  reactionSpread: { unit: 'share', values: [0.25, 0.25, 0.22, 0.2, 0.2, 0.18, 0.18], source: commonPractice(), about: 'standard deviation of a reaction, of the start delay and of the beat after a screen' },
  readSpread: { unit: 'share', values: [0.35, 0.35, 0.3, 0.3, 0.25, 0.25, 0.2], source: commonPractice(), about: 'standard deviation of a read' },
  releaseSpread: { unit: 'share', values: [0.2, 0.2, 0.18, 0.16, 0.15, 0.13, 0.12], source: commonPractice('common practice; fatigue lengthens a release by 15-25 %: Bourdas 2024, abstract'), about: 'standard deviation of catch to release' },
  setUpSpread: { unit: 'share', values: [0.25, 0.25, 0.2, 0.2, 0.15, 0.15, 0.15], source: commonPractice(), about: 'standard deviation of getting into place' },
  passSpread: { unit: 'share', values: [0.15, 0.14, 0.12, 0.11, 0.1, 0.09, 0.08], source: commonPractice(), about: 'standard deviation of a pass’s speed' },
} as const satisfies Readonly<Record<string, Row>>;

export type Quantity = keyof typeof rows;
export const quantities = Object.keys(rows) as readonly Quantity[];

/** The whole table, for the reference and for tests. */
export const levelTable: Readonly<Record<Quantity, Row>> = rows;

/** One level's numbers by quantity, in the units of `levelTable`. */
export type Level = Readonly<Record<Quantity, number>> & { readonly id: LevelId; readonly name: string };

const names: Readonly<Record<LevelId, string>> = {
  u10: 'under 10', u12: 'under 12', u14: 'under 14', u16: 'under 16', hs: 'high school', college: 'college', pro: 'professional',
};

function levelAt(id: LevelId, column: number): Level {
  const numbers = Object.fromEntries(quantities.map((quantity) => [quantity, levelTable[quantity].values[column]])) as Record<Quantity, number>;
  return { ...numbers, id, name: names[id] };
}

export const LEVELS: Readonly<Record<LevelId, Level>> = Object.fromEntries(levelIds.map((id, column) => [id, levelAt(id, column)])) as Record<LevelId, Level>;

/** Top speeds of girls and women where the men's are in the table, m/s. Not used by the model: a roster's own pace is. */
export const womenTopSpeed = {
  values: { u16: 6.7, hs: 7.1, pro: 7.6 },
  source: fromMemory('sprint top speeds by age, women and girls'),
} as const;

/** What a leg may do: hand it on to `legProfile`. */
export interface LegLimits {
  readonly vmax: number;
  readonly tau: number;
  readonly brake: number;
}

/** `set` is the ordinary pace of a set. A player's own pace (1 the level's) scales his top speed. */
export function legLimits(level: Level, pace: Pace, withBall: boolean, ownPace = 1): LegLimits {
  const top = topSpeed(level, pace) * ownPace * (withBall ? level.dribbleShare : 1);
  return { vmax: top, tau: level.tau, brake: level.brake };
}

export function topSpeed(level: Level, pace: Pace): number {
  if (pace === 'walk') return level.walk;
  if (pace === 'jog') return level.jog;
  return pace === 'sprint' ? level.vmax : level.vmax * level.cutEffort;
}

/**
 * The speed one arrives at a spot with, m/s: the lead foot is planted half a step ahead, so the last half step is not braked on the floor.
 * Common practice, no source: "there" is within half a step, not at speed nothing.
 */
export function landingSpeed(level: Level): number {
  return Math.sqrt(level.brake * level.step);
}

/** The speed a drive or a cut that ends at the ring arrives with, m/s: nobody brakes into a layup, he gathers it at a jog. Common practice, no source. */
export function finishSpeed(level: Level): number {
  return Math.max(landingSpeed(level), level.jog);
}

const releases: Readonly<Record<ShotKind, Quantity>> = {
  layup: 'layupRelease', dunk: 'dunkRelease', jumper: 'jumperRelease', three: 'threeRelease', hook: 'hookRelease', 'tip-in': 'tipInRelease', shot: 'jumperRelease',
};

/**
 * Seconds to the release of a shot: from the catch at rest, or with `offDribble` from the end of his own drive, whose last steps
 * already gather the ball.
 */
export function releaseSeconds(level: Level, kind: ShotKind, offDribble = false): number {
  const caught = level[releases[kind]];
  if (!offDribble) return caught;
  return Math.min(caught, kind === 'layup' || kind === 'dunk' ? level.layupOffDribble : level.jumperOffDribble);
}

const passes: Readonly<Record<PassKind, Quantity>> = {
  pass: 'passSpeed', bounce: 'bounceSpeed', lob: 'lobSpeed', skip: 'skipSpeed', overhead: 'overheadSpeed', baseball: 'baseballSpeed', tip: 'tipSpeed',
};

/** Speed of a pass in m/s. */
export function passSpeed(level: Level, kind: PassKind): number {
  return level[passes[kind]];
}
