import type { Court } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { resolvePlace } from './places.ts';
import type { BodyId, Play, PlayerNumber } from './play.ts';
import { OFFENCE } from './play.ts';

/** Where the five stand at the call; a thrower stands out of bounds. */
export function homesOf({ start, spots }: Play, court: Court): Readonly<Partial<Record<BodyId, Point>>> {
  const positions: Partial<Record<BodyId, Point>> = {};
  const situation = (who: BodyId) => ({ court, positions, ball: String(start.ball.value) as BodyId, who, spots });
  // Twice, so that a place beside a man with a higher number is found too.
  for (const round of [1, 2]) {
    for (const who of OFFENCE) {
      const { value } = start.places[Number(who) as PlayerNumber];
      if (round === 1 || value.kind !== 'spot') positions[who] = resolvePlace(value, situation(who));
    }
  }
  const { throwIn } = start;
  if (throwIn !== undefined) {
    const thrower = String(throwIn.by.value) as BodyId;
    positions[thrower] = resolvePlace(throwIn.from.value, situation(thrower));
  }
  return positions;
}
