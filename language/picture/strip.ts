// The printed strip: one frame a step, players where the step finds them, the step's ways by the trade's conventions.
import { runOf } from '../playback/at.ts';
import { lookOfPart } from '../playback/moments.ts';
import type { Playback } from '../playback/playback.ts';
import type { BodyId, StepKey } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';
import { courtText, paintOf } from './draw.ts';
import { armsNode, defenceLabel, degrees, labelNode } from './figures.ts';
import { shyOfRing, shyOfWay } from './keep-clear.ts';
import { BODY_CLEAR, LABEL_SIZE, looksOf } from './scene.ts';
import { placeLabels, widthOfText, type Placed, type Wanted } from './labels.ts';
import { comesBack, toPicture, type Pt } from './lines.ts';
import { escapeText, node, round, textNode, writeSvg, type SvgNode } from './nodes.ts';
import { palettes, type Palette, type PaletteName } from './palette.ts';
import { heightOf, MARGIN, viewBoxOf, viewOf, widthOf, type View } from './view.ts';
import { BODY_GAP, drawWay, waysOf, type Gaps, type Way, type WayKind } from './ways.ts';

export interface Frame {
  readonly step: StepKey;
  readonly title: string;
  /** The condition of a counter, as written. */
  readonly caption: string;
  readonly bodies: readonly { readonly id: BodyId; readonly label: string; readonly team: 'offence' | 'defence'; readonly at: Pt; readonly facing: number }[];
  readonly carrier: BodyId | undefined;
  readonly ways: readonly Way[];
  readonly labels: readonly Placed[];
}

export interface StripOptions {
  readonly theme?: PaletteName | Palette;
  /** Frames side by side; fewer when the run has fewer steps. */
  readonly columns?: number;
  /** Defenders clutter a printed frame: left out unless asked for. */
  readonly defence?: boolean;
  /** The key to the lines below the frames. */
  readonly key?: boolean;
}

/** The frames of a run-through (number or id), one a step. */
export function stripFrames(playback: Playback, run: number | string, options: StripOptions = {}): readonly Frame[] {
  const found = runOf(playback, run);
  if (found === undefined) return [];
  const view = viewOf(playback);
  const ways = waysOf(found);
  return found.steps.map((key, i) => frameOf(playback, found, view, ways, key, i, options.defence ?? false));
}

function frameOf(playback: Playback, run: Run, view: View, ways: readonly Way[], key: StepKey, index: number, defence: boolean): Frame {
  const step = playback.steps.find((known) => known.key === key);
  const earlier = new Set(run.steps.slice(0, index));
  const own = ways.filter((way) => way.step === key && !way.afterShot);
  const opens = own.reduce((least, { t0 }) => Math.min(least, t0), Infinity);
  const bodies = playback.bodies.flatMap(({ id, label, team }) => {
    const at = team === 'offence' ? beforeStep(run, ways, earlier, id) : defence ? defenderAt(run, id, opens) : undefined;
    return at === undefined ? [] : [{ id, label, team, at, facing: Math.atan2(-at[1], -at[0]) + Math.PI }];
  });
  return {
    step: key,
    title: step?.name ?? key,
    caption: step?.condition ?? '',
    bodies,
    carrier: carrierBefore(run, ways, key, opens),
    ways: own,
    labels: placeLabels(looksIn(playback, run, key, own, bodies), { view, size: LABEL_SIZE * view.bodies, bodies: bodies.map(({ at }) => at), bodyRadius: BODY_CLEAR * view.bodies, shy: [...shyOfRing(playback.court), ...own.flatMap(shyOfWay)] }),
  };
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

const TITLE_ROOM = 80;
const CAPTION_ROOM = 60;
const GUTTER = 60;
const KEY_HEIGHT = 130;

/** The strip of a run-through as one SVG file: numbers for the offence, the man with the ball circled; readable in black and white. */
export function drawStrip(playback: Playback, run: number | string, options: StripOptions = {}): string {
  const theme = options.theme ?? 'print';
  const palette = typeof theme === 'string' ? palettes[theme] : theme;
  const frames = stripFrames(playback, run, options);
  const view = viewOf(playback);
  const columns = Math.max(1, Math.min(options.columns ?? 3, frames.length));
  const rows = Math.max(1, Math.ceil(frames.length / columns));
  const headRoom = TITLE_ROOM + (frames.some(({ caption }) => caption !== '') ? CAPTION_ROOM : 0);
  const [cellWidth, cellHeight] = [widthOf(view) + GUTTER, heightOf(view) + headRoom + GUTTER];
  const key = options.key === false ? [] : keyNodes(frames, palette, columns * cellWidth - 2 * MARGIN);
  const keyTop = rows * cellHeight + GUTTER / 2;
  const width = round(columns * cellWidth + GUTTER);
  const height = round(keyTop + (key.length === 0 ? 0 : KEY_HEIGHT * keyRows(key)) + GUTTER / 2);
  const title = `${playback.play.name}: ${runOf(playback, run)?.label ?? ''}`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img"><title>${escapeText(title)}</title>` +
    `<rect width="${width}" height="${height}" fill="${escapeText(palette.out)}"/>` +
    frames
      .map((frame, i) => {
        const [x, y] = [GUTTER + (i % columns) * cellWidth, GUTTER / 2 + Math.floor(i / columns) * cellHeight];
        return frameText(playback, frame, { number: i + 1, x, y, headRoom }, view, palette);
      })
      .join('') +
    key.map(({ nodes, x, row }) => writeSvg(node('g', { transform: `translate(${round(GUTTER + MARGIN + x)} ${round(keyTop + KEY_HEIGHT * (row + 0.5))})` }, ...nodes))).join('') +
    '</svg>'
  );
}

interface Cell {
  readonly number: number;
  readonly x: number;
  readonly y: number;
  readonly headRoom: number;
}

function frameText(playback: Playback, frame: Frame, { number, x, y, headRoom }: Cell, view: View, palette: Palette): string {
  const look = paintOf(palette);
  const left = x + MARGIN;
  const head = writeSvg(textNode(fit(`${number} · ${frame.title}`, 68, widthOf(view) - 2 * MARGIN), { x: left, y: y + 70, ...look.title }));
  const caption = frame.caption === '' ? '' : writeSvg(textNode(fit(frame.caption, 46, widthOf(view) - 2 * MARGIN), { x: left, y: y + 128, ...look.caption }));
  return (
    head + caption +
    `<svg x="${x}" y="${y + headRoom}" width="${widthOf(view)}" height="${heightOf(view)}" viewBox="${viewBoxOf(view)}">` +
    floorText(playback, frame, view, palette) +
    '</svg>'
  );
}

function floorText(playback: Playback, frame: Frame, view: View, palette: Palette): string {
  const look = paintOf(palette);
  const occupied = frame.bodies.map(({ at }) => at);
  const body = [
    ...frame.ways.map((way) => node('g', { class: `way ${way.kind}` }, ...drawWay(way, look, printedGaps(way, occupied)))),
    ...frame.bodies.map((man) => printedBody(man, man.id === frame.carrier, view.bodies, palette)),
    ...frame.labels.map((label) => labelNode(label, look)),
  ];
  return courtText(playback.court, view, palette) + body.map(writeSvg).join('');
}

/**
 * One frame alone as an SVG file, without title and key.
 * @param shown the piece of the floor to show, a viewBox in centimetres; the whole view where it is left out
 */
export function drawFrame(playback: Playback, frame: Frame, theme: PaletteName | Palette = 'print', shown = viewBoxOf(viewOf(playback))): string {
  const palette = typeof theme === 'string' ? palettes[theme] : theme;
  const [left, top, width, height] = shown.split(' ');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${shown}" role="img"><title>${escapeText(frame.title)}</title>` +
    `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${escapeText(palette.out)}"/>` +
    floorText(playback, frame, viewOf(playback), palette) +
    '</svg>'
  );
}

/** A line keeps clear of a number, but not of a place where nobody is drawn. */
function printedGaps({ kind, points }: Way, occupied: readonly Pt[]): Gaps {
  const start = occupied.some((at) => near(at, points[0]!)) ? BODY_GAP : 10;
  const moves = comesBack(points) || !near(points[0]!, points.at(-1)!);
  const taken = occupied.some((at) => near(at, points.at(-1)!)) && moves;
  const ends = kind === 'screen' ? 0 : taken ? BODY_GAP + 4 : kind === 'pass' ? 26 : 0;
  return { start, end: ends, bodyAtEnd: false };
}

const near = (a: Pt, b: Pt): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 40;

function fit(text: string, size: number, width: number): string {
  const letters = Array.from(text);
  while (letters.length > 1 && widthOfText(letters.join(''), size) > width) letters.pop();
  return letters.length === Array.from(text).length ? text : `${letters.join('').trimEnd()}…`;
}

function printedBody({ label, team, at, facing }: Frame['bodies'][number], carrier: boolean, scale: number, palette: Palette): SvgNode {
  const look = paintOf(palette);
  const transform = `translate(${round(at[0])} ${round(at[1])})${scale === 1 ? '' : ` scale(${scale})`}`;
  if (team === 'defence') return node('g', { transform }, node('g', { transform: `rotate(${degrees(facing)})` }, armsNode(look)), defenceLabel(label, look));
  const circle = node('circle', { r: 46, ...look.carrier, fill: palette.floor });
  return node('g', { transform }, ...(carrier ? [circle] : []), textNode(label, look['printed-number']));
}

const KEY_WORDS: Readonly<Record<WayKind, string>> = { cut: 'cut', dribble: 'dribble', pass: 'pass', screen: 'screen', 'hand-off': 'hand-off', shot: 'shot' };
const KEY_ORDER: readonly WayKind[] = ['cut', 'dribble', 'pass', 'screen', 'hand-off', 'shot'];

interface KeyEntry {
  readonly x: number;
  readonly row: number;
  readonly nodes: readonly SvgNode[];
}

/** The key holds what the frames use, in a row or two. */
function keyNodes(frames: readonly Frame[], palette: Palette, width: number): readonly KeyEntry[] {
  const look = paintOf(palette);
  const used = new Set(frames.flatMap(({ ways }) => ways.filter((way) => drawWay(way, look).length > 0).map(({ kind }) => kind)));
  const entries: KeyEntry[] = [];
  let [x, row] = [0, 0];
  const add = (nodes: readonly SvgNode[], words: string, sample: number) => {
    const wide = sample + 26 + widthOfText(words, 46) + 56;
    if (x > 0 && x + wide > width) [x, row] = [0, row + 1];
    entries.push({ x, row, nodes: [...nodes, textNode(words, { x: sample + 26, dy: '0.35em', ...look.key })] });
    x += wide;
  };
  add([node('circle', { cx: 46, cy: 0, r: 40, ...look.carrier }), textNode('1', { x: 46, ...look['printed-number'], 'font-size': 60 })], 'has the ball', 92);
  for (const kind of KEY_ORDER) if (used.has(kind)) add(drawWay(sampleWay(kind), look, { start: 0, end: 0, bodyAtEnd: false }), KEY_WORDS[kind], kind === 'hand-off' ? 60 : 170);
  return entries;
}

const keyRows = (entries: readonly KeyEntry[]): number => entries.reduce((most, { row }) => Math.max(most, row + 1), 0);

// A shot's line stops short of the ring: the sample is longer by as much.
function sampleWay(kind: WayKind): Way {
  const points: readonly Pt[] = kind === 'shot' ? [[0, 0], [204, 0]] : kind === 'hand-off' ? [[0, 0], [60, 0]] : [[0, 0], [170, 0]];
  return { part: '', kind, who: '1', step: undefined, t0: 0, t1: 0, points };
}
