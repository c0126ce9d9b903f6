// The printed strip: one frame a step, players where the step finds them, the step's ways by the trade's conventions; of a whole play or of one
// way through it.
import { inEnglish, message, type Message, type Say } from '../message/message.ts';
import { runOf } from '../playback/at.ts';
import type { Playback } from '../playback/playback.ts';
import { courtText, paintOf } from './draw.ts';
import { armsNode, defenceLabel, degrees, labelNode } from './figures.ts';
import { stepFrames, stripFrames, type Frame } from './frames.ts';
import { widthOfText } from './labels.ts';
import { comesBack, type Pt } from './lines.ts';
import { escapeText, node, round, textNode, writeSvg, type SvgNode } from './nodes.ts';
import { palettes, type Palette, type PaletteName } from './palette.ts';
import { sayCall } from '../words/say-call.ts';
import { sayCondition } from '../words/say-condition.ts';
import { heightOf, MARGIN, sizeOf, viewBoxOf, viewOf, widthOf, type View } from './view.ts';
import { BODY_GAP, drawWay, type Gaps, type Way, type WayKind } from './ways.ts';

export interface StripOptions {
  readonly theme?: PaletteName | Palette;
  /** Frames side by side; fewer when the run has fewer steps. */
  readonly columns?: number;
  /** Defenders clutter a printed frame: left out unless asked for, and asked for only of one way. */
  readonly defence?: boolean;
  /** The key to the lines below the frames. */
  readonly key?: boolean;
  readonly say?: Say;
}

const NAME_ROOM = 108;
const NAME_SIZE = 92;
/** From the top to the first line of the name, and from its last line to the first below it. */
const NAME_BASELINE = 105;
const BELOW_NAME = 75;
/** From the head's last line to the frames. */
const BELOW_HEAD = 10;
const LINE_ROOM = 68;
const LINE_SIZE = 54;
const TITLE_ROOM = 80;
const CAPTION_ROOM = 60;
const GUTTER = 60;
const KEY_HEIGHT = 130;

/** Every step of a play, counters too, each with its looks in the order they are read, and when to call it. */
export function drawPlay(playback: Playback, options: Omit<StripOptions, 'defence'> = {}): string {
  const { say = inEnglish } = options;
  return drawFrames(playback, stepFrames(playback), sayCall(playback.times).map(say), options);
}

/** One way through a play, up to its end. */
export function drawStrip(playback: Playback, run: number | string, options: StripOptions = {}): string {
  return drawFrames(playback, stripFrames(playback, run, options), [runOf(playback, run)?.label ?? ''], options);
}

/** The frames under a head as one SVG file: numbers for the offence, the man with the ball circled; readable in black and white. */
function drawFrames(playback: Playback, frames: readonly Frame[], told: readonly string[], options: StripOptions): string {
  const { theme = 'print', say = inEnglish } = options;
  const palette = typeof theme === 'string' ? palettes[theme] : theme;
  const view = viewOf(playback);
  const columns = Math.max(1, Math.min(options.columns ?? 3, frames.length));
  const rows = Math.max(1, Math.ceil(frames.length / columns));
  const headRoom = TITLE_ROOM + (frames.some(({ caption }) => caption !== '') ? CAPTION_ROOM : 0);
  const [cellWidth, cellHeight] = [widthOf(view) + GUTTER, heightOf(view) + headRoom + GUTTER];
  const key = options.key === false ? [] : keyNodes(frames, palette, columns * cellWidth - 2 * MARGIN, say);
  const width = round(columns * cellWidth + GUTTER);
  const room = width - 2 * (GUTTER + MARGIN);
  const { name } = playback.play;
  const names = wrapped(name, NAME_SIZE, room);
  const lines = told.flatMap((line) => wrapped(line, LINE_SIZE, room));
  const top = GUTTER / 2 + BELOW_HEAD + NAME_ROOM * names.length + LINE_ROOM * lines.length;
  const keyTop = top + rows * cellHeight;
  const height = round(keyTop + (key.length === 0 ? 0 : KEY_HEIGHT * keyRows(key)) + GUTTER / 2);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" ${sizeOf(width, height)} role="img"><title>${escapeText([name, told.join(' ')].filter((words) => words !== '').join(': '))}</title>` +
    `<rect width="${width}" height="${height}" fill="${escapeText(palette.out)}"/>` +
    headNodes(names, lines, palette).map(writeSvg).join('') +
    frames
      .map((frame, i) => {
        const [x, y] = [GUTTER + (i % columns) * cellWidth, top + Math.floor(i / columns) * cellHeight];
        const caption = frame.caption === '' ? '' : say(sayCondition(frame.caption));
        return frameText(playback, frame, { number: i + 1, caption, x, y, headRoom }, view, palette);
      })
      .join('') +
    key.map(({ nodes, x, row }) => writeSvg(node('g', { transform: `translate(${round(GUTTER + MARGIN + x)} ${round(keyTop + KEY_HEIGHT * (row + 0.5))})` }, ...nodes))).join('') +
    '</svg>'
  );
}

/** Which play it is, and what is told of it: which way through it, or when to call it. */
function headNodes(names: readonly string[], lines: readonly string[], palette: Palette): readonly SvgNode[] {
  const look = paintOf(palette);
  const x = GUTTER + MARGIN;
  const below = NAME_BASELINE + NAME_ROOM * (names.length - 1) + BELOW_NAME;
  return [
    ...names.map((words, nth) => textNode(words, { x, y: NAME_BASELINE + NAME_ROOM * nth, ...look.title, 'font-size': NAME_SIZE })),
    ...lines.map((line, nth) => textNode(line, { x, y: below + LINE_ROOM * nth, ...look.caption, 'font-size': LINE_SIZE })),
  ];
}

interface Cell {
  readonly number: number;
  readonly caption: string;
  readonly x: number;
  readonly y: number;
  readonly headRoom: number;
}

function frameText(playback: Playback, frame: Frame, { number, caption: said, x, y, headRoom }: Cell, view: View, palette: Palette): string {
  const look = paintOf(palette);
  const left = x + MARGIN;
  const head = frame.title === '' ? '' : writeSvg(textNode(fit(`${number} · ${frame.title}`, 68, widthOf(view) - 2 * MARGIN), { x: left, y: y + 70, ...look.title }));
  const caption = said === '' ? '' : writeSvg(textNode(fit(said, 46, widthOf(view) - 2 * MARGIN), { x: left, y: y + 128, ...look.caption }));
  return (
    head + caption +
    `<svg x="${x}" y="${y + headRoom}" width="${widthOf(view)}" height="${heightOf(view)}" viewBox="${viewBoxOf(view)}">` +
    floorText(playback, frame, view, palette) +
    '</svg>'
  );
}

function floorText(playback: Playback, frame: Frame, view: View, palette: Palette): string {
  return courtText(playback.court, view, palette) + frameNodes(frame, view, palette).map(writeSvg).join('');
}

/** What stands on the floor of a frame: ways, men, labels. */
export function frameNodes(frame: Frame, view: View, palette: Palette): readonly SvgNode[] {
  const look = paintOf(palette);
  const occupied = frame.bodies.map(({ at }) => at);
  return [
    ...frame.ways.map((way) => node('g', { class: `way ${way.kind}` }, ...drawWay(way, look, printedGaps(way, occupied)))),
    ...frame.bodies.map((man) => printedBody(man, man.id === frame.carrier, view.bodies, palette)),
    ...frame.labels.map((label) => labelNode(label, look)),
  ];
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

/** Cut between words, a number and its `s` kept together, into lines that have room; a word that has none by itself is shortened. */
function wrapped(text: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ (?!s\b)/)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widthOfText(longer, size) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line].map((one) => fit(one, size, width));
}

function printedBody({ label, team, at, facing }: Frame['bodies'][number], carrier: boolean, scale: number, palette: Palette): SvgNode {
  const look = paintOf(palette);
  const transform = `translate(${round(at[0])} ${round(at[1])})${scale === 1 ? '' : ` scale(${scale})`}`;
  if (team === 'defence') return node('g', { transform }, node('g', { transform: `rotate(${degrees(facing)})` }, armsNode(look)), defenceLabel(label, look));
  const circle = node('circle', { r: 46, ...look.carrier, fill: palette.floor });
  return node('g', { transform }, ...(carrier ? [circle] : []), textNode(label, look['printed-number']));
}

const KEY_WORDS: Readonly<Record<WayKind, Message>> = { cut: message('a cut'), dribble: message('a dribble'), pass: message('a pass'), screen: message('a screen'), 'hand-off': message('a hand-off'), shot: message('a shot') };
const KEY_ORDER: readonly WayKind[] = ['cut', 'dribble', 'pass', 'screen', 'hand-off', 'shot'];

interface KeyEntry {
  readonly x: number;
  readonly row: number;
  readonly nodes: readonly SvgNode[];
}

/** The key holds what the frames use, in a row or two. */
function keyNodes(frames: readonly Frame[], palette: Palette, width: number, say: Say): readonly KeyEntry[] {
  const look = paintOf(palette);
  const isSeen = (way: Way, { bodies }: Frame) => drawWay(way, look, printedGaps(way, bodies.map(({ at }) => at))).length > 0;
  const used = new Set(frames.flatMap((frame) => frame.ways.filter((way) => isSeen(way, frame)).map(({ kind }) => kind)));
  const entries: KeyEntry[] = [];
  let [x, row] = [0, 0];
  const add = (nodes: readonly SvgNode[], words: string, sample: number) => {
    const wide = sample + 26 + widthOfText(words, 46) + 56;
    if (x > 0 && x + wide > width) [x, row] = [0, row + 1];
    entries.push({ x, row, nodes: [...nodes, textNode(words, { x: sample + 26, dy: '0.35em', ...look.key })] });
    x += wide;
  };
  add([node('circle', { cx: 46, cy: 0, r: 40, ...look.carrier }), textNode('1', { x: 46, ...look['printed-number'], 'font-size': 60 })], say(message('has the ball')), 92);
  for (const kind of KEY_ORDER) if (used.has(kind)) add(drawWay(sampleWay(kind), look, { start: 0, end: 0, bodyAtEnd: false }), say(KEY_WORDS[kind]), kind === 'hand-off' ? 60 : 170);
  return entries;
}

const keyRows = (entries: readonly KeyEntry[]): number => entries.reduce((most, { row }) => Math.max(most, row + 1), 0);

// A shot's line stops short of the ring: the sample is longer by as much.
function sampleWay(kind: WayKind): Way {
  const points: readonly Pt[] = kind === 'shot' ? [[0, 0], [204, 0]] : kind === 'hand-off' ? [[0, 0], [60, 0]] : [[0, 0], [170, 0]];
  return { part: '', kind, who: '1', step: undefined, t0: 0, t1: 0, points };
}
