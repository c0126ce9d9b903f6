// The frames of a printed play: players where a step finds them, the step's ways, its looks by name.
import { runOf } from '../playback/at.ts';
import { lookOfPart } from '../playback/moments.ts';
import type { Playback } from '../playback/playback.ts';
import type { BodyId, LookId, StepKey } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';
import { shyOfRing, shyOfWay } from './keep-clear.ts';
import { placeLabels, type Placed, type Wanted } from './labels.ts';
import { toPicture, type Pt } from './lines.ts';
import { BODY_CLEAR, LABEL_SIZE, looksOf } from './scene.ts';
import { viewOf, type View } from './view.ts';
import { waysOf, type Way, type WayKind } from './ways.ts';

export interface Frame {
  /** Empty, and so the title, where the play has no step. */
  readonly step: StepKey;
  readonly title: string;
  /** The condition of a counter, as written. */
  readonly caption: string;
  readonly bodies: readonly { readonly id: BodyId; readonly label: string; readonly team: 'offence' | 'defence'; readonly at: Pt; readonly facing: number }[];
  readonly carrier: BodyId | undefined;
  readonly ways: readonly Way[];
  readonly labels: readonly Placed[];
}

/** The frames of a run-through (number or id), one a step; of a play that has no step yet: how they stand. */
export function stripFrames(playback: Playback, run: number | string, options: { readonly defence?: boolean } = {}): readonly Frame[] {
  const found = runOf(playback, run);
  if (found === undefined) return [];
  if (playback.steps.length === 0) return [standingFrame(playback, found, options.defence ?? false)];
  const view = viewOf(playback);
  const ways = waysOf(found);
  return found.steps.map((key, i) => frameOf(playback, found, view, ways, key, i, options.defence ?? false));
}

function standingFrame(playback: Playback, run: Run, defence: boolean): Frame {
  return framed(playback, viewOf(playback), '', { run, ways: [], own: [], bodies: bodiesAt(playback, run, [], '', 0, defence), wanted: [], labelSize: LABEL_SIZE });
}

function frameOf(playback: Playback, run: Run, view: View, ways: readonly Way[], key: StepKey, index: number, defence: boolean): Frame {
  const own = ways.filter((way) => way.step === key && !way.afterShot);
  const bodies = bodiesAt(playback, run, ways, key, index, defence);
  return framed(playback, view, key, { run, ways, own, bodies, wanted: looksIn(playback, run, key, own, bodies), labelSize: LABEL_SIZE });
}

// On a sheet three frames stand side by side: 58 cm on a floor 58 mm wide is a letter of six points.
const SHEET_LABEL_SIZE = 58;

/**
 * The frames of a whole play, one a step, counters and all: each step with every look it has, named in the order they are read. The first
 * look is drawn to its end, the others as far as the pass. A step that is run again is drawn once. Of a play that has no step yet: how they stand.
 */
export function stepFrames(playback: Playback): readonly Frame[] {
  const view = viewOf(playback);
  const standing = playback.steps.length === 0 ? playback.runs[0] : undefined;
  if (standing !== undefined) return [standingFrame(playback, standing, false)];
  const named = new Set<string>();
  return playback.steps.flatMap(({ key, name }) => {
    const runs = playback.runs.filter(({ steps }) => steps.includes(key));
    if (runs.length === 0 || named.has(name)) return [];
    named.add(name);
    const [first, ...others] = runs.map((run) => stepWays(run, key)).toSorted((a, b) => b.lines.length - a.lines.length);
    const looks = playback.looks.filter((look) => look.step === key);
    const tails = looks.flatMap(({ id }, nth) => ([first!, ...others].find(({ tails: known }) => known.has(id))?.tails.get(id) ?? []).filter(({ kind }) => nth === 0 || kind !== 'shot'));
    const own = [...first!.lines, ...tails];
    const ways = waysOf(first!.run);
    const bodies = bodiesAt(playback, first!.run, ways, key, first!.run.steps.indexOf(key), false);
    const wanted = looks.flatMap((look, nth) => {
      const of = runs.find((run) => run.look === look.id);
      // The dot tells a rank from a player: “2 on the roll” would be a sentence about 2.
      const label = looks.length > 1 ? `${nth + 1}. ${look.label}`.trimEnd() : look.label;
      return of === undefined ? [] : looksIn(playback, of, key, waysOf(of).filter((way) => way.step === key && !way.afterShot), bodies).filter(({ key: id }) => id === look.id).map((want) => ({ ...want, text: label }));
    });
    return [framed(playback, view, key, { run: first!.run, ways, own, bodies, wanted, labelSize: SHEET_LABEL_SIZE })];
  });
}

interface StepWays {
  readonly run: Run;
  readonly lines: readonly Way[];
  readonly tails: ReadonlyMap<LookId, readonly Way[]>;
}

/** What a run does in a step: its lines, and what hangs on the look it takes there. */
function stepWays(run: Run, key: StepKey): StepWays {
  const own = waysOf(run).filter((way) => way.step === key && !way.afterShot);
  const lines: Way[] = [];
  const tails = new Map<LookId, Way[]>();
  for (const way of own) {
    const look = lookOfPart(way.part);
    if (look === undefined) lines.push(way);
    else tails.set(look, [...(tails.get(look) ?? []), way]);
  }
  return { run, lines, tails };
}

interface Found {
  readonly run: Run;
  /** All ways of the run, and those of the frame. */
  readonly ways: readonly Way[];
  readonly own: readonly Way[];
  readonly bodies: Frame['bodies'];
  readonly wanted: readonly Wanted[];
  readonly labelSize: number;
}

function framed(playback: Playback, view: View, key: StepKey, { run, ways, own, bodies, wanted, labelSize }: Found): Frame {
  const step = playback.steps.find((known) => known.key === key);
  const room = { view, size: labelSize * view.bodies, bodies: bodies.map(({ at }) => at), bodyRadius: BODY_CLEAR * view.bodies };
  return {
    step: key,
    title: step?.name ?? key,
    caption: step?.condition ?? '',
    bodies,
    carrier: carrierBefore(run, ways, key, opening(own)),
    ways: own,
    labels: placeLabels(wanted, { ...room, shy: [...shyOfRing(playback.court), ...own.flatMap(shyOfWay)] }),
  };
}

const opening = (own: readonly Way[]): number => own.reduce((least, { t0 }) => Math.min(least, t0), Infinity);

function bodiesAt(playback: Playback, run: Run, ways: readonly Way[], key: StepKey, index: number, defence: boolean): Frame['bodies'] {
  const earlier = new Set(run.steps.slice(0, index));
  const opens = opening(ways.filter((way) => way.step === key && !way.afterShot));
  return playback.bodies.flatMap(({ id, label, team }) => {
    const at = team === 'offence' ? beforeStep(run, ways, earlier, id) : defence ? defenderAt(run, id, opens) : undefined;
    return at === undefined ? [] : [{ id, label, team, at, facing: Math.atan2(-at[1], -at[0]) + Math.PI }];
  });
}

// Where the last way of the earlier steps leaves him: steps overlap in time, so a moment would catch others in mid-stride.
function beforeStep(run: Run, ways: readonly Way[], earlier: ReadonlySet<StepKey>, id: BodyId): Pt | undefined {
  const last = ways.findLast(({ who, step, kind }) => who === id && step !== undefined && earlier.has(step) && isLeg(kind));
  if (last !== undefined) return last.points.at(-1);
  const track = run.tracks[id];
  return track && toPicture(track.start);
}

const isLeg = (kind: WayKind): boolean => kind === 'cut' || kind === 'dribble' || kind === 'screen';

function defenderAt(run: Run, id: BodyId, t: number): Pt | undefined {
  const frames = run.defenders[id];
  const i = frames === undefined ? 0 : Math.round((Math.min(t, run.end) - frames.t0) / frames.stepMs);
  const point = frames?.points[Math.min(Math.max(i, 0), frames.points.length - 1)];
  return point && toPicture(point);
}

/** Who has the ball as the step begins: the passer of its first pass, else whoever holds it when its first way starts. */
function carrierBefore(run: Run, ways: readonly Way[], key: StepKey, opens: number): BodyId | undefined {
  const first = ways.find(({ step, kind }) => step === key && (kind === 'pass' || kind === 'shot' || kind === 'hand-off' || kind === 'dribble'));
  if (first !== undefined) return first.who;
  const held = run.ball.findLast((state) => state.kind === 'held' && state.t0 <= opens) ?? run.ball.find(({ kind }) => kind === 'held');
  return held?.by;
}

function looksIn(playback: Playback, run: Run, key: StepKey, ways: readonly Way[], bodies: Frame['bodies']): readonly Wanted[] {
  return looksOf(playback, run).flatMap(({ look, who, from }) => {
    if (look.step !== key || look.label === '') return [];
    const shot = ways.find(({ kind, part }) => kind === 'shot' && lookOfPart(part) === look.id);
    const leg = ways.findLast((way) => way.who === who && isLeg(way.kind) && way.t0 <= from);
    const anchor = shot?.points[0] ?? leg?.points.at(-1) ?? bodies.find(({ id }) => id === who)?.at;
    return anchor === undefined ? [] : [{ key: look.id, text: look.label, kind: 'look' as const, anchor, gap: 34 }];
  });
}
