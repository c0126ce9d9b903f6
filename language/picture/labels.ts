// Labels on the floor: each beside what it names, on no player and on no other label.
import type { Pt } from './lines.ts';
import type { View } from './view.ts';

export interface Wanted {
  readonly key: string;
  readonly text: string;
  readonly kind: 'look' | 'problem';
  /** What the label speaks of, and how far it keeps from there. */
  readonly anchor: Pt;
  readonly gap: number;
}

export interface Placed extends Wanted {
  /** Middle of the label. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly size: number;
  /** Which of the places round the anchor was taken. */
  readonly place: number;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Something a label should not lie on, though it may where there is no better place: a point with its reach, cm. */
export interface Shy {
  readonly at: Pt;
  readonly reach: number;
  /** How much worse it is to cover this one than a stretch of line. */
  readonly weight: number;
}

/** What labels find when they are placed. */
export interface Room {
  readonly view: View;
  /** Letter height, cm on the floor. */
  readonly size: number;
  /** Never covered: a label that finds no place beside them is left out. */
  readonly bodies: readonly Pt[];
  readonly bodyRadius: number;
  readonly shy?: readonly Shy[];
}

// Above, below, right, left, then the corners and what lies between: and again further out.
const AROUND: readonly Pt[] = [
  [0, -1], [0, 1], [1, 0], [-1, 0], [0.8, -0.8], [-0.8, -0.8], [0.8, 0.8], [-0.8, 0.8],
  [1, -0.45], [-1, -0.45], [1, 0.45], [-1, 0.45], [0.45, -1], [-0.45, -1], [0.45, 1], [-0.45, 1],
];
const RINGS = [0, 28, 55, 90, 130, 180, 240];
const MOST_LETTERS = 26;
// What a label must have a reason to cover: the end of a line, the ring. A stretch of line weighs 1.
export const END_WEIGHT = 12;
// One ring further out is as bad as lying on so many stretches of line: a label far from its man names another one.
const FAR_WEIGHT = 2;

/**
 * Places each label in turn where it covers no body and no label placed before it, and as little else as can be, near its
 * anchor; what finds no place is left out. `before` keeps a label where it was while it covers neither a body nor a line's
 * end there, so that it does not flicker.
 */
export function placeLabels(wanted: readonly Wanted[], room: Room, before: readonly Placed[] = []): readonly Placed[] {
  const { size } = room;
  const placed: Placed[] = [];
  for (const want of wanted) {
    const text = shorten(want.text);
    const width = Math.max(widthOfText(text, size) + size * 0.9, size * 1.5);
    const height = size * 1.5;
    const at = (place: number): Box => {
      const [x, y] = placeAround(want, place, width, height);
      return { x, y, width, height };
    };
    const place = bestPlace(at, room, placed, before.find(({ key }) => key === want.key)?.place);
    if (place !== undefined) placed.push({ ...want, text, ...at(place), size, place });
  }
  return placed;
}

function bestPlace(at: (place: number) => Box, room: Room, placed: readonly Placed[], kept: number | undefined): number | undefined {
  const free = (box: Box) => inside(box, room.view) && !placed.some((other) => overlap(box, other)) && !room.bodies.some((body) => touches(box, body, room.bodyRadius));
  if (kept !== undefined && free(at(kept)) && covered(at(kept), room.shy, END_WEIGHT) === 0) return kept;
  let best: number | undefined;
  let least = Infinity;
  for (let place = 0; place < AROUND.length * RINGS.length; place++) {
    const far = Math.floor(place / AROUND.length) * FAR_WEIGHT;
    if (far >= least) break;
    const box = at(place);
    if (!free(box)) continue;
    const cost = far + covered(box, room.shy);
    if (cost >= least) continue;
    [best, least] = [place, cost];
  }
  return best;
}

/** How much a box covers, of what weighs at least so much. */
function covered(box: Box, shy: readonly Shy[] = [], from = 0): number {
  let sum = 0;
  for (const { at, reach, weight } of shy) if (weight >= from && touches(box, at, reach)) sum += weight;
  return sum;
}

function placeAround({ anchor, gap }: Wanted, place: number, width: number, height: number): Pt {
  const [dx, dy] = AROUND[place % AROUND.length]!;
  const reach = gap + RINGS[Math.floor(place / AROUND.length)]!;
  return [anchor[0] + dx * (reach + width / 2), anchor[1] + dy * (reach + height / 2)];
}

function inside({ x, y, width, height }: Box, view: View): boolean {
  return x - width / 2 >= view.left && x + width / 2 <= view.right && y - height / 2 >= view.top && y + height / 2 <= view.bottom;
}

function overlap(a: Box, b: Box): boolean {
  return Math.abs(a.x - b.x) * 2 < a.width + b.width + 8 && Math.abs(a.y - b.y) * 2 < a.height + b.height + 8;
}

function touches({ x, y, width, height }: Box, [bx, by]: Pt, radius: number): boolean {
  const dx = Math.max(Math.abs(bx - x) - width / 2, 0);
  const dy = Math.max(Math.abs(by - y) - height / 2, 0);
  return dx * dx + dy * dy < radius * radius;
}

function shorten(text: string): string {
  const letters = Array.from(text);
  return letters.length <= MOST_LETTERS ? text : `${letters.slice(0, MOST_LETTERS - 1).join('')}…`;
}

/** Estimated width without a font at hand, on the wide side: narrow and wide letters of a bold sans serif. */
export function widthOfText(text: string, size: number): number {
  let ems = 0;
  for (const letter of text) {
    if (letter > '\u02ff') ems += 1;
    else if ("iljtfI.,:;'!|()[] ".includes(letter)) ems += 0.4;
    else if ('mwMW@%—'.includes(letter)) ems += 1;
    else ems += letter >= 'A' && letter <= 'Z' ? 0.74 : 0.66;
  }
  return ems * size;
}
