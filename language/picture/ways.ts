// What a run-through draws on the floor: each cut, dribble, pass, screen, hand-off and shot by the trade's printed conventions
// (FIBA/WABC coaches manual, "Understanding diagrams": arrow line a player moving, broken line a pass, zigzag a dribble, line
// ending in a cross bar a screen; double bar for a hand-off and double line for a shot from memory, older books).
import type { ActionId, BodyId, StepKey } from '../play/play.ts';
import { stepInRun } from '../playback/moments.ts';
import type { Run, Segment, Track } from '../timeline/timeline.ts';
import { placeOf } from '../playback/at.ts';
import { across, arrowHead, beside, comesBack, endDirection, lengthOf, openedOut, pathData, toPicture, trim, zigzag, type Pt } from './lines.ts';
import { node, type SvgNode } from './nodes.ts';
import type { Part } from './palette.ts';

export type WayKind = 'cut' | 'dribble' | 'screen' | 'pass' | 'hand-off' | 'shot';

export interface Way {
  readonly part: ActionId;
  readonly kind: WayKind;
  readonly who: BodyId;
  /** The other man of a pass or a hand-off. */
  readonly to?: BodyId;
  readonly step: StepKey | undefined;
  readonly t0: number;
  readonly t1: number;
  readonly points: readonly Pt[];
  /** Run once the shot is up: to the boards or back. Not part of the step's picture. */
  readonly afterShot?: boolean;
  /** Where the bar of a screen faces. */
  readonly facing?: Pt;
}

type Paint = Readonly<Record<Part, SvgNode['attrs']>>;

// A shorter dribble has no room for a swing, cm.
const SHORTEST_ZIGZAG = 40;
const HEAD = 30;
export const BAR = 46;
/** How far before a screener's middle his bar is drawn. */
export const BAR_BEFORE = 52;
const RING_GAP = 34;
// How far a way back ends beside its way out, where a man returns to his place.
const OPENED = 62;
// A shot from nearer than this is a finish at the ring: an arrow there would only cover the cut's or the drive's.
const AT_THE_RING = 130;
/** Half a body in the picture, with a little air. */
export const BODY_GAP = 50;
const BALL_GAP = 46;

/** Every way of the run in time order. */
export function waysOf(run: Run): readonly Way[] {
  const known = drawnWays.get(run);
  if (known !== undefined) return known;
  const ways = collectWays(run);
  drawnWays.set(run, ways);
  return ways;
}

// The same for every frame of a run.
const drawnWays = new WeakMap<Run, readonly Way[]>();

function collectWays(run: Run): readonly Way[] {
  const ways: Way[] = [];
  for (const [who, track] of Object.entries(run.tracks) as [BodyId, Track][]) ways.push(...legWays(run, who, track));
  for (const state of run.ball) {
    if (state.kind === 'held') continue;
    const points = [toPicture(state.from), toPicture(state.to)];
    const { action: part, by: who, t0, t1 } = state;
    const common = { part, who, t0, t1, points, step: stepInRun(run, part, t0) };
    ways.push(state.kind === 'shot' ? { ...common, kind: 'shot' } : { ...common, kind: 'pass', to: state.receiver });
  }
  for (const { kind, part, at, who } of run.events) if (kind === 'take' && who !== undefined) ways.push(...handOff(run, part, at, who));
  return ways.toSorted((a, b) => a.t0 - b.t0);
}

/** One man's ways: an action run in several stretches (to the screen, then off it) is one way, and a screen set on the spot a bar. */
function legWays(run: Run, who: BodyId, { segments }: Track): readonly Way[] {
  const ways: Way[] = [];
  for (const segment of segments) {
    const way = legWay(run, who, segment);
    const last = ways.at(-1);
    const goesOn = last !== undefined && last.part === way.part && last.kind === way.kind;
    if (goesOn) ways[ways.length - 1] = { ...last, t1: way.t1, points: [...last.points, ...way.points.slice(1)] };
    else ways.push(way);
  }
  for (const { action: part, by, at, facing, from: t0, to: t1 } of run.screens) {
    if (by !== who || ways.some((way) => way.part === part)) continue;
    ways.push({ part, who, kind: 'screen', t0, t1, points: [toPicture(at)], step: stepInRun(run, part, t0), facing: [facing.x, facing.y] });
  }
  const release = run.releaseAt;
  return release === undefined ? ways : ways.map((way) => (way.t0 >= release ? { ...way, afterShot: true } : way));
}

function legWay(run: Run, who: BodyId, { action: part, t0, t1, path, withBall }: Segment): Way {
  const common = { part, who, t0, points: path.map(toPicture), step: stepInRun(run, part, t0) };
  const screen = run.screens.find(({ action, by }) => action === part && by === who);
  if (screen !== undefined) return { ...common, kind: 'screen', t1: Math.max(t1, screen.to), facing: [screen.facing.x, screen.facing.y] };
  return { ...common, kind: withBall ? 'dribble' : 'cut', t1 };
}

function handOff(run: Run, part: ActionId, at: number, taker: BodyId): readonly Way[] {
  const before = run.ball.findLast((state) => state.kind === 'held' && state.t0 < at && state.by !== taker);
  if (before === undefined) return [];
  const from = placeOf(run, before.by, at);
  const to = placeOf(run, taker, at);
  if (from === undefined || to === undefined) return [];
  return [{ part, kind: 'hand-off', who: before.by, to: taker, t0: Math.max(0, at - 300), t1: at + 150, points: [toPicture(from), toPicture(to)], step: stepInRun(run, part, at) }];
}

/** How far a line keeps from whoever is drawn at its ends, cm. */
export interface Gaps {
  readonly start: number;
  readonly end: number;
  /** The screener's bar stands before him instead of where he stands. */
  readonly bodyAtEnd: boolean;
}

/** In a moving picture a body covers the beginning of its own line; a pass and a shot keep clear of both men. */
function movingGaps({ kind }: Way): Gaps {
  if (kind === 'pass') return { start: BALL_GAP, end: BODY_GAP + 4, bodyAtEnd: true };
  return { start: kind === 'shot' ? BODY_GAP : 0, end: 0, bodyAtEnd: true };
}

/** The marks of one way: first the line, then what stands at its end. Nothing when the gaps leave no line. */
export function drawWay(drawn: Way, paint: Paint, gaps: Gaps = movingGaps(drawn)): readonly SvgNode[] {
  const way = drawn.kind === 'cut' && comesBack(drawn.points) ? { ...drawn, points: openedOut(drawn.points, OPENED) } : drawn;
  const direction = endDirection(way.points);
  const end = way.points.at(-1)!;
  switch (way.kind) {
    case 'cut':
    case 'dribble': {
      const line = trim(way.points, gaps.start, gaps.end + HEAD * 0.7);
      if (line.length === 0) return [];
      const shaft = way.kind === 'dribble' && lengthOf(line) > SHORTEST_ZIGZAG ? zigzag(line, 15, 58) : line;
      const tip = gaps.end === 0 ? end : (trim(way.points, 0, gaps.end).at(-1) ?? end);
      return [path('way', shaft, paint), head(tip, direction, paint)];
    }
    case 'screen': {
      const line = trim(way.points, gaps.start, 0);
      const beforeHim = gaps.bodyAtEnd || way.points.length === 1;
      const faces = beforeHim ? (way.facing ?? direction) : barDirection(way.facing, direction);
      const at: Pt = beforeHim ? [end[0] + faces[0] * BAR_BEFORE, end[1] + faces[1] * BAR_BEFORE] : end;
      return [...(line.length === 0 ? [] : [path('way', line, paint)]), node('path', { class: 'bar', d: across(at, faces, BAR), ...paint.bar })];
    }
    case 'pass': {
      const line = trim(way.points, gaps.start, gaps.end);
      return line.length === 0 ? [] : [path('pass', trim(line, 0, HEAD * 0.8), paint), head(line.at(-1)!, direction, paint)];
    }
    case 'shot': {
      if (lengthOf(way.points) < AT_THE_RING) return [];
      const line = trim(way.points, gaps.start, RING_GAP);
      if (line.length === 0) return [];
      const shaft = trim(line, 0, HEAD * 0.8);
      return [path('shot', beside(shaft, 6), paint), path('shot', beside(shaft, -6), paint), head(line.at(-1)!, direction, paint)];
    }
    case 'hand-off': {
      const from = way.points[0]!;
      const middle: Pt = [(from[0] + end[0]) / 2, (from[1] + end[1]) / 2];
      return [-9, 9].map((apart) => {
        const at: Pt = [middle[0] + direction[0] * apart, middle[1] + direction[1] * apart];
        return node('path', { class: 'way', d: across(at, direction, 26), ...paint.way });
      });
    }
  }
}

// The bar stands across the screener's look. Where he comes in almost along it, line and bar would merge: then across his way.
function barDirection(facing: Pt | undefined, direction: Pt): Pt {
  if (facing === undefined) return direction;
  return Math.abs(facing[0] * direction[0] + facing[1] * direction[1]) > 0.5 ? facing : direction;
}

const path = (part: 'way' | 'pass' | 'shot', points: readonly Pt[], paint: Paint): SvgNode =>
  node('path', { class: part, d: pathData(points), ...paint[part] });

const head = (tip: Pt, direction: Pt, paint: Paint): SvgNode => node('path', { class: 'head', d: arrowHead(tip, direction, HEAD), ...paint.head });
