// Colours and strokes of the picture. Shapes differ wherever colours do: a colour is never the only sign.
import type { SvgNode } from './nodes.ts';

export interface Palette {
  /** Around the floor. */
  readonly out: string;
  readonly floor: string;
  readonly paint: string;
  readonly line: string;
  readonly ring: string;
  readonly offence: string;
  readonly offenceInk: string;
  readonly defence: string;
  readonly ball: string;
  readonly ballEdge: string;
  readonly way: string;
  readonly look: string;
  readonly lookInk: string;
  readonly problem: string;
  readonly problemInk: string;
  readonly ink: string;
  readonly muted: string;
}

export const light: Palette = {
  out: '#ffffff', floor: '#eef3f7', paint: '#dde7f0', line: '#6d859b', ring: '#c4590a',
  offence: '#17366b', offenceInk: '#ffffff', defence: '#55616d', ball: '#ee7a1c', ballEdge: '#6b2f00',
  way: '#17366b', look: '#0a6e53', lookInk: '#ffffff', problem: '#9a4d00', problemInk: '#ffffff', ink: '#16212c', muted: '#51606e',
};

export const dark: Palette = {
  out: '#10161d', floor: '#18232e', paint: '#20303f', line: '#617b95', ring: '#ff9a45',
  offence: '#aecbff', offenceInk: '#0c1a32', defence: '#a3b1bf', ball: '#ff9a45', ballEdge: '#2b1400',
  way: '#aecbff', look: '#66d6b0', lookInk: '#05261c', problem: '#f2b45c', problemInk: '#2b1800', ink: '#e8eef4', muted: '#a3b1bf',
};

/** For paper: black on white, the lines of the court grey. */
export const print: Palette = {
  out: '#ffffff', floor: '#ffffff', paint: '#ffffff', line: '#8a8a8a', ring: '#000000',
  offence: '#000000', offenceInk: '#ffffff', defence: '#000000', ball: '#000000', ballEdge: '#ffffff',
  way: '#000000', look: '#000000', lookInk: '#ffffff', problem: '#000000', problemInk: '#ffffff', ink: '#000000', muted: '#333333',
};

const highContrast: Palette = {
  out: '#000000', floor: '#000000', paint: '#000000', line: '#8c8c8c', ring: '#ffffff',
  offence: '#ffffff', offenceInk: '#000000', defence: '#ffffff', ball: '#ffb000', ballEdge: '#000000',
  way: '#ffffff', look: '#00e0a0', lookInk: '#000000', problem: '#ffe000', problemInk: '#000000', ink: '#ffffff', muted: '#ffffff',
};

export const palettes = { light, dark, print, 'high-contrast': highContrast } as const;
export type PaletteName = keyof typeof palettes;

/** The kinds of thing a picture is made of. */
export type Part =
  | 'floor' | 'paint' | 'line' | 'ring' | 'board'
  | 'way' | 'pass' | 'shot' | 'head' | 'bar'
  | 'offence' | 'offence-number' | 'printed-number' | 'carrier' | 'defence' | 'defence-label' | 'ball' | 'ball-seam' | 'ball-shadow'
  | 'look' | 'look-text' | 'problem' | 'problem-text' | 'title' | 'caption' | 'key';

const FONT = 'system-ui, -apple-system, Segoe UI, Roboto, Helvetica, Arial, sans-serif';
const TEXT = { 'font-family': FONT, 'text-anchor': 'middle' } as const;

/** How each part is drawn: presentation attributes, which need no style sheet. Widths are centimetres on the floor. */
export function paint(palette: Palette): Readonly<Record<Part, SvgNode['attrs']>> {
  const stroke = (colour: string, width: number, more: SvgNode['attrs'] = {}): SvgNode['attrs'] =>
    ({ fill: 'none', stroke: colour, 'stroke-width': width, 'stroke-linecap': 'round', 'stroke-linejoin': 'round', ...more });
  return {
    floor: { fill: palette.floor },
    paint: { fill: palette.paint },
    line: stroke(palette.line, 5, { 'stroke-linecap': 'butt' }),
    ring: stroke(palette.ring, 6),
    board: stroke(palette.line, 9),
    way: stroke(palette.way, 7),
    pass: stroke(palette.way, 7, { 'stroke-dasharray': '26 17', 'stroke-linecap': 'butt' }),
    shot: stroke(palette.way, 5),
    head: { fill: palette.way, stroke: palette.way, 'stroke-width': 4, 'stroke-linejoin': 'round' },
    bar: stroke(palette.way, 13, { 'stroke-linecap': 'butt' }),
    offence: { fill: palette.offence, stroke: palette.floor, 'stroke-width': 6 },
    'offence-number': { ...TEXT, fill: palette.offenceInk, 'font-weight': 700, 'font-size': 56, dy: '0.36em' },
    'printed-number': { ...TEXT, fill: palette.offence, stroke: palette.floor, 'stroke-width': 14, 'stroke-linejoin': 'round', 'paint-order': 'stroke', 'font-weight': 700, 'font-size': 74, dy: '0.36em' },
    carrier: { fill: 'none', stroke: palette.offence, 'stroke-width': 6 },
    defence: stroke(palette.defence, 8),
    'defence-label': { ...TEXT, fill: palette.defence, stroke: palette.floor, 'stroke-width': 10, 'stroke-linejoin': 'round', 'paint-order': 'stroke', 'font-weight': 600, 'font-size': 44, dy: '0.36em' },
    ball: { fill: palette.ball, stroke: palette.ballEdge, 'stroke-width': 5 },
    'ball-seam': stroke(palette.ballEdge, 3),
    'ball-shadow': { fill: palette.ballEdge, 'fill-opacity': 0.25 },
    look: { fill: palette.look, stroke: palette.floor, 'stroke-width': 5 },
    'look-text': { ...TEXT, fill: palette.lookInk, 'font-weight': 600, dy: '0.35em' },
    problem: { fill: palette.problem, stroke: palette.floor, 'stroke-width': 5, 'stroke-linejoin': 'round' },
    'problem-text': { ...TEXT, fill: palette.problemInk, 'font-weight': 800, dy: '0.35em' },
    title: { ...TEXT, 'text-anchor': 'start', fill: palette.ink, 'font-weight': 700, 'font-size': 68 },
    caption: { ...TEXT, 'text-anchor': 'start', fill: palette.muted, 'font-size': 46 },
    key: { ...TEXT, 'text-anchor': 'start', fill: palette.ink, 'font-size': 46 },
  };
}
