// Who a pass goes to: likeliest first is the man who has just come open, at a distance that is passed in a game.
import { distance } from '../../../language/court/point.ts';
import type { BodyId } from '../../../language/play/play.ts';
import type { Line } from './line.ts';

// All of it common practice, no source.
/** A pass that is neither handed over nor thrown across the floor, metres. */
const usualPass = 5;
/** Nearer to the ring than this a man is among defenders, unless he is just coming there. */
const inside = 3;

/** Smaller is likelier: 0 to about 6. */
export function unlikelihood({ standing, actors }: Line, body: BodyId): number {
  const from = actors[0] === undefined ? undefined : standing.where[actors[0]];
  const to = standing.where[body];
  if (from === undefined || to === undefined) return 6;
  const did = standing.lastDid[body];
  const isFree = did?.kind === 'move' && did.inStep;
  const way = Math.min(3, Math.abs(distance(from, to) - usualPass) / 2);
  const crowded = distance(to, standing.court.ring) < inside && !isFree ? 1.5 : 0;
  return way + crowded + (did?.kind === 'screen' ? 1.5 : 0) + (isFree ? 0 : 1.5);
}
