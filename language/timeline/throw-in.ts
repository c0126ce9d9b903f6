/** The thrower (rules 1, 14): he keeps his place until the release, then steps in at the nearest place and is free. */
import type { Court } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { commit } from '../court/point.ts';
import type { BodyId } from '../play/play.ts';
import type { Branch } from './branch.ts';
import { bodyOf, legsOf, whenOf } from './branch.ts';
import { edge } from './graph.ts';
import { runRoute } from './moves.ts';

// Both feet inside the line; common practice, no source.
const inside = 0.5;

function nearestInside(court: Court, point: Point): Point {
  const { left, right, bottom, top } = court.boundary;
  return commit({ x: Math.max(left + inside, Math.min(right - inside, point.x)), y: Math.max(bottom + inside, Math.min(top - inside, point.y)) });
}

/** Lets the thrower step in; gives the event he is free with. */
export function stepIn(branch: Branch, action: string, who: BodyId, release: number): number {
  const body = bodyOf(branch, who);
  const spot = nearestInside(branch.scene.court, body.place);
  if (spot.x === body.place.x && spot.y === body.place.y) return release;
  const run = runRoute(branch, {
    action, who, joins: true, withBall: false, mayWait: true, exit: 0, limits: legsOf(branch, who),
    edges: [edge(release, 'own-last-action')], startsAt: whenOf(branch, release), route: { points: [body.place, spot], shoulders: [], partners: [] },
  });
  return run.arrive;
}
