/** Shots: from the catch or the end of the drive to the release, and the ball's flight. A layup is finished at the rim, run in with the ball. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import { shotFlight } from '../motion/ball.ts';
import { releaseSeconds } from '../motion/levels.ts';
import type { ActionId, BodyId, Shot, ShotKind } from '../play/play.ts';
import type { Branch } from './branch.ts';
import { bodyOf, happen, legsOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { edge, latestOf, varyingEdge } from './graph.ts';
import { runRoute } from './moves.ts';
import { away, pointOf, standingOf } from './where.ts';

export interface ShotOrder {
  readonly action: ActionId;
  readonly who: BodyId;
  readonly kind: ShotKind;
  /** Catch, end of the dribble, or whatever frees him. */
  readonly edges: readonly Edge[];
  readonly offDribble: boolean;
  /** `shoots from left corner`: he takes the ball there first. */
  readonly from?: Point;
}

export interface ShotDone {
  readonly start: number;
  readonly shot: number;
  readonly rim: number;
}

// A finish is let go within a stride of the ring, two steps on from where he takes the ball; from farther out he runs in first. Common
// practice, no source.
const atTheRim = 1.6;
const finishFrom = 0.9;
const atTheSpot = 0.6;

export function shoot(branch: Branch, order: ShotOrder): ShotDone {
  const { court, level } = branch.scene;
  const body = bodyOf(branch, order.who);
  const near = order.kind === 'layup' || order.kind === 'dunk' || order.kind === 'tip-in';
  let { edges, offDribble } = order;
  let start: number | undefined;
  const goal = near ? finishOf(branch, body.place) : order.from;
  if (goal !== undefined && (near || distance(body.place, goal) > atTheSpot)) {
    const startsAt = latestOf(branch.scene.graph, edges).at;
    const run = runRoute(branch, {
      action: order.action, who: order.who, withBall: true, mayWait: false, exit: 0, limits: legsOf(branch, order.who, 'set', true), edges, startsAt,
      route: { points: [body.place, goal], shoulders: [], partners: [] },
    });
    start = run.start;
    edges = [edge(run.arrive, 'catch-to-release')];
    offDribble = true;
    branch.ball.push({ kind: 'dribble', action: order.action, by: order.who, begin: run.start, end: run.arrive });
  }
  const release = Math.round(releaseSeconds(level, order.kind, offDribble) * 1000);
  const from = body.place;
  const shot = happen(branch, `${order.action}:shot`, 'shot', order.action, order.who, edges.map((way) => releaseAfter(way, release, order.action)));
  const flight = shotFlight(order.kind, distance(from, court.ring), level.releaseHeight, court.ringHeight).durationMs;
  const rim = happen(branch, `${order.action}:rim`, 'rim', order.action, undefined, [edge(shot, 'flight', flight)]);
  branch.ball.push({ kind: 'shot', action: order.action, by: order.who, shot: order.kind, begin: shot, end: rim, from });
  return { start: start ?? shot, shot, rim };
}

/** Where a finish is let go; `undefined` from where he stands. */
function finishOf(branch: Branch, place: Point): Point | undefined {
  const { court, level } = branch.scene;
  const gap = distance(place, court.ring);
  if (gap <= atTheRim) return undefined;
  return commit(away(court.ring, place, -Math.min(atTheRim, Math.max(finishFrom, gap - 2 * level.step))));
}

/** Where a shot is to be taken from, if its words say so. */
export function shotFrom(branch: Branch, { who, from }: Shot): { readonly from?: Point } {
  return from === undefined ? {} : { from: commit(pointOf(branch, from.value, standingOf(branch, who, who))) };
}

/** An edge carries one varying part; where the way in has its own, that one is held at its typical value. */
function releaseAfter(way: Edge, release: number, action: ActionId): Edge {
  return varyingEdge(way.from, 'catch-to-release', way.fixed + way.varied, release, 'release', action);
}
