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

// Above, below, right, left, then the corners: and once more further out.
const AROUND: readonly Pt[] = [[0, -1], [0, 1], [1, 0], [-1, 0], [0.8, -0.8], [-0.8, -0.8], [0.8, 0.8], [-0.8, 0.8]];
const RINGS = [0, 55, 120, 200];
const MOST_LETTERS = 26;

/**
 * Places each label in turn at the first place round its anchor where it covers no body and no label placed before it; what
 * finds no place is left out. `before` keeps a label where it was while that place is free, so that it does not flicker.
 * @param size letter height in centimetres on the floor
 */
export function placeLabels(wanted: readonly Wanted[], bodies: readonly Pt[], bodyRadius: number, view: View, size: number, before: readonly Placed[] = []): readonly Placed[] {
  const placed: Placed[] = [];
  for (const want of wanted) {
    const text = shorten(want.text);
    const width = Math.max(widthOfText(text, size) + size * 0.9, size * 1.5);
    const height = size * 1.5;
    const kept = before.find(({ key }) => key === want.key)?.place;
    const order = kept === undefined ? candidates : [kept, ...candidates];
    for (const place of order) {
      const [x, y] = placeAround(want, place, width, height);
      const box = { x, y, width, height };
      if (!inside(box, view) || placed.some((other) => overlap(box, other)) || bodies.some((body) => touches(box, body, bodyRadius))) continue;
      placed.push({ ...want, text, x, y, width, height, size, place });
      break;
    }
  }
  return placed;
}

const candidates: readonly number[] = Array.from({ length: AROUND.length * RINGS.length }, (_, i) => i);

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
