// Lines as coaches draw them, as geometry alone: cut short, zigzagged, doubled, with an arrow or a bar at the end. Centimetres.
import type { Point } from '../court/point.ts';
import { round } from './nodes.ts';

export type Pt = readonly [number, number];

export const toPicture = ({ x, y }: Point): Pt => [x * 100, y * 100];

export function lengthOf(points: readonly Pt[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]);
  return sum;
}

/** The line without `start` at its beginning and `end` at its end; empty when nothing is left. */
export function trim(points: readonly Pt[], start: number, end: number): readonly Pt[] {
  const length = lengthOf(points);
  if (length - start - end < 1) return [];
  return cutAfter(cutBefore(points, start), length - start - end);
}

function cutBefore(points: readonly Pt[], distance: number): readonly Pt[] {
  let left = distance;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const step = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (step > left) return [mix(a, b, left / step), ...points.slice(i)];
    left -= step;
  }
  return points.slice(-1);
}

function cutAfter(points: readonly Pt[], distance: number): readonly Pt[] {
  let left = distance;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const step = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (step >= left && step > 0) return [...points.slice(0, i), mix(a, b, left / step)];
    left -= step;
  }
  return points;
}

const mix = (a: Pt, b: Pt, u: number): Pt => [a[0] + (b[0] - a[0]) * u, a[1] + (b[1] - a[1]) * u];

/** The direction at the end of a line, as a unit vector; along x for a line without length. */
export function endDirection(points: readonly Pt[]): Pt {
  const end = points.at(-1) ?? [0, 0];
  for (let i = points.length - 2; i >= 0; i--) {
    const [dx, dy] = [end[0] - points[i]![0], end[1] - points[i]![1]];
    const length = Math.hypot(dx, dy);
    // A few centimetres tell no direction on a bent way.
    if (length > 8 || (i === 0 && length > 0)) return [dx / length, dy / length];
  }
  return [1, 0];
}

export function pathData(points: readonly Pt[]): string {
  let d = '';
  for (let i = 0; i < points.length; i++) d += `${i === 0 ? 'M' : 'L'}${round(points[i]![0])} ${round(points[i]![1])}`;
  return d;
}

/** A filled arrow head with its tip at `tip`, pointing along `direction`. */
export function arrowHead(tip: Pt, [dx, dy]: Pt, size: number): string {
  const back: Pt = [tip[0] - dx * size, tip[1] - dy * size];
  const half = size * 0.42;
  return `${pathData([tip, [back[0] - dy * half, back[1] + dx * half], [back[0] + dy * half, back[1] - dx * half]])}Z`;
}

/** A short stroke across `direction`, its middle at `middle`. */
export function across(middle: Pt, [dx, dy]: Pt, half: number): string {
  return pathData([[middle[0] - dy * half, middle[1] + dx * half], [middle[0] + dy * half, middle[1] - dx * half]]);
}

/** The dribble's zigzag along a line; it leaves the man straight, and its last stretch stays straight so that the arrow points where he goes. */
export function zigzag(points: readonly Pt[], swing: number, wave: number): readonly Pt[] {
  const length = lengthOf(points);
  const straight = Math.min(40, length / 3);
  const stub = Math.min(18, length / 6);
  const swings = length - straight - stub;
  const turns = Math.max(2, Math.round(swings / (wave / 2)));
  const out: Pt[] = [points[0]!, alongLine(points, stub).point];
  for (let i = 1; i < turns; i++) {
    const { point, direction } = alongLine(points, stub + (swings * (i - 0.5)) / (turns - 1));
    const side = i % 2 === 0 ? swing : -swing;
    out.push([point[0] - direction[1] * side, point[1] + direction[0] * side]);
  }
  out.push(alongLine(points, length - straight).point, ...cutBefore(points, length - straight).slice(1));
  return out;
}

/** The line ends where it began: out and back. */
export function comesBack(points: readonly Pt[]): boolean {
  return apart(points[0]!, points.at(-1)!) < 60 && points.some((point) => apart(points[0]!, point) > 90);
}

const apart = (a: Pt, b: Pt): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** A line out and back, opened so that both can be seen: what comes back ends `gap` beside where it began. */
export function openedOut(points: readonly Pt[], gap: number): readonly Pt[] {
  const start = points[0]!;
  const turn = points.reduce((far, point, i) => (apart(start, point) > apart(start, points[far]!) ? i : far), 0);
  const reach = apart(start, points[turn]!);
  const across: Pt = [-(points[turn]![1] - start[1]) / reach, (points[turn]![0] - start[0]) / reach];
  return points.map((point, i) => {
    if (i <= turn) return point;
    const share = 1 - Math.min(1, apart(start, point) / reach);
    return [point[0] + across[0] * gap * share, point[1] + across[1] * gap * share];
  });
}

/** The place so far along a line, and the direction there. */
export function alongLine(points: readonly Pt[], distance: number): { readonly point: Pt; readonly direction: Pt } {
  let left = distance;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const step = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (step > 0 && (left <= step || i === points.length - 1)) {
      return { point: mix(a, b, Math.min(1, left / step)), direction: [(b[0] - a[0]) / step, (b[1] - a[1]) / step] };
    }
    left -= step;
  }
  return { point: points.at(-1)!, direction: [1, 0] };
}

/** The line moved to one side, for a shot's double line; only for lines without sharp turns. */
export function beside(points: readonly Pt[], offset: number): readonly Pt[] {
  return points.map((point, i) => {
    const before = points[Math.max(0, i - 1)]!;
    const after = points[Math.min(points.length - 1, i + 1)]!;
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
    return [point[0] - ((after[1] - before[1]) / length) * offset, point[1] + ((after[0] - before[0]) / length) * offset];
  });
}
