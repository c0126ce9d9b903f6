import type { Point } from './point.ts';

/** Left becomes right: what a play and its mirror share. */
export function mirrorPoint(point: Point): Point {
  return { x: 0 - point.x, y: point.y };
}

export function mirrorSide<S extends string>(side: S): S | 'left' | 'right' {
  if (side === 'left') return 'right';
  return side === 'right' ? 'left' : side;
}
