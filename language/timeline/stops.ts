/** A way cut short: a dribble that a look ends, a cutter caught on the run, a man called to the boards (rules 12, 15, 23). */
import { commit, distance } from '../court/point.ts';
import type { Point } from '../court/point.ts';
import type { Profile } from '../motion/legs.ts';
import { distanceAt, legProfile, speedAt } from '../motion/legs.ts';
import type { BodyId } from '../play/play.ts';
import type { Body, Branch, Stretch } from './branch.ts';
import { bodyAt, bodyOf } from './branch.ts';
import type { Segment } from './timeline.ts';

/** Takes back what a body has not yet begun at `ms`, and gives the speed and the way it has there. */
function cutAt(branch: Branch, who: BodyId, ms: number): { readonly speed: number; readonly heading?: Point } {
  const body = bodyOf(branch, who);
  const begun = body.stretches.filter(({ segment }) => segment.t0 < ms);
  const onwards = body.stretches[begun.length]?.segment;
  body.stretches = begun;
  const last = begun[begun.length - 1];
  body.exit = 0;
  if (last === undefined) {
    body.place = body.home;
    body.until = 0;
    return { speed: 0 };
  }
  const { segment } = last;
  const end = segment.path[segment.path.length - 1]!;
  if (segment.t1 <= ms) {
    body.place = end;
    body.until = segment.t1;
    // At a corner of his way he is still on the run.
    return segment.t1 === ms && onwards?.t0 === ms ? { speed: segment.profile.v1, heading: onwards.path[onwards.path.length - 1]! } : { speed: 0 };
  }
  const speed = speedAt(segment.profile, (ms - segment.t0) / 1000);
  const cut = shorten(segment, ms);
  begun[begun.length - 1] = { ...last, segment: cut };
  body.place = cut.path[cut.path.length - 1]!;
  body.until = ms;
  return { speed, heading: end };
}

/** The same run, seen only up to `ms`. */
function shorten(segment: Segment, ms: number): Segment {
  const from = segment.path[0]!;
  const to = segment.path[segment.path.length - 1]!;
  const run = distanceAt(segment.profile, (ms - segment.t0) / 1000);
  const share = segment.profile.distance === 0 ? 1 : run / segment.profile.distance;
  const stop = commit({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
  return { ...segment, t1: ms, path: [from, stop], profile: shortProfile(segment.profile, ms - segment.t0, distance(from, stop)) };
}

function shortProfile(profile: Profile, ms: number, run: number): Profile {
  const seconds = (profile.seconds * ms) / profile.durationMs;
  return { ...profile, distance: run, v1: speedAt(profile, ms / 1000), seconds, durationMs: ms };
}

/** Where a man comes to rest who is told to stop at `ms`. */
export function restAfter(body: Body, ms: number): Point {
  const here = bodyAt(body, ms);
  const segment = body.stretches.find((stretch) => stretch.segment.t0 <= ms && ms < stretch.segment.t1)?.segment;
  if (segment === undefined) return here;
  const end = segment.path[segment.path.length - 1]!;
  const left = distance(here, end);
  const speed = speedAt(segment.profile, (ms - segment.t0) / 1000);
  const share = left === 0 ? 0 : Math.min(1, (speed * speed) / (2 * segment.profile.brake) / left);
  return { x: here.x + (end.x - here.x) * share, y: here.y + (end.y - here.y) * share };
}

/** He goes on from where he is at `ms` to something else, with the speed he has there, m/s. */
export function keepRunning(branch: Branch, who: BodyId, ms: number): number {
  const { speed } = cutAt(branch, who, ms);
  const body = bodyOf(branch, who);
  body.exit = speed;
  body.until = ms;
  return speed;
}

/** He stops as fast as his legs allow, along the way he was on. */
export function stopAt(branch: Branch, who: BodyId, ms: number, because: number, withBall = true): void {
  const { speed, heading } = cutAt(branch, who, ms);
  if (heading === undefined || speed < 0.3) return;
  const body = bodyOf(branch, who);
  const last = body.stretches[body.stretches.length - 1]!;
  const { brake, vmax, tau } = last.segment.profile;
  const left = distance(body.place, heading);
  const needed = Math.min(left, (speed * speed) / (2 * brake));
  if (needed < 0.02) return;
  const share = needed / left;
  const stop = commit({ x: body.place.x + (heading.x - body.place.x) * share, y: body.place.y + (heading.y - body.place.y) * share });
  const profile = legProfile({ distance: distance(body.place, stop), v0: speed, v1: 0, vmax, tau, brake });
  const stretch: Stretch = { segment: { ...last.segment, t0: ms, t1: ms + profile.durationMs, path: [body.place, stop], profile, withBall }, begin: because };
  body.stretches.push(stretch);
  body.place = stop;
  body.until = ms + profile.durationMs;
}
