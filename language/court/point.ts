// CONTRACT. A place on the floor and a fact's source: the two things every layer shares.

/**
 * A place on the floor in metres. The origin is the floor under the centre of the ring; x grows to the right as the
 * offence faces the basket, y grows towards half court. Committed places are whole millimetres.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where a number or a rule comes from, and how we know it. */
export interface Source {
  /** For people: rule set, article, paper or "common practice". */
  readonly text: string;
  readonly how: 'read' | 'second-hand' | 'computed' | 'from memory' | 'common practice, no source';
}

// Not `Math.hypot`: its last digit is each engine's own, a square root's is not.
export function distance(a: Point, b: Point): number {
  const x = a.x - b.x;
  const y = a.y - b.y;
  return Math.sqrt(x * x + y * y);
}

/** Rounds a place to whole millimetres, the form in which every place is committed. */
export const commit = (p: Point): Point => ({ x: roundMm(p.x), y: roundMm(p.y) });

// By size, so that left rounds as right does.
const roundMm = (metres: number): number => (Math.sign(metres) * Math.round(Math.abs(metres) * 1000)) / 1000 + 0;
