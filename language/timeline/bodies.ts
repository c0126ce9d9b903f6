/** Room for bodies on the floor (rule 20): straight, round on the shorter side, round on the other, a short delay, else the smallest overlap. */
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import type { LegLimits } from '../motion/levels.ts';
import { secondsAt } from '../motion/legs.ts';
import type { BodyId } from '../play/play.ts';
import type { Body, Branch } from './branch.ts';
import { bodyAt } from './branch.ts';
import type { Way } from './ways.ts';
import { alongPiece, alongWay, gapToLine, layWay, shareNearest } from './ways.ts';
import { away, sideWhereNothingLeans } from './where.ts';

export interface Errand {
  readonly who: BodyId;
  readonly points: readonly Point[];
  /** ms of the start if nobody is in the way. */
  readonly start: number;
  readonly limits: LegLimits;
  readonly entry: number;
  readonly exit: number;
  /** Partners of a screen or a hand-off: they may touch. */
  readonly partners: readonly BodyId[];
  /** For so many ms of the way only; without it, for all of it. */
  readonly touching?: (way: Way) => number;
  /** May he wait for somebody to pass? Not when he runs on without a stop. */
  readonly mayWait: boolean;
  /** When men whose way is not settled yet will leave their place, ms. */
  readonly leaving: ReadonlyMap<BodyId, number>;
}

export interface Planned {
  readonly way: Way;
  readonly delay: number;
  /** Somebody stands on the end of it; he stops a body away. */
  readonly taken?: BodyId;
  /** Nothing helps: with whom, how near, when. */
  readonly overlaps: readonly { readonly other: BodyId; readonly gap: number; readonly at: number }[];
}

interface Clash {
  readonly other: Body;
  readonly gap: number;
  readonly at: number;
}

/** A way, and who would be in it. */
interface Tried {
  readonly way: Way;
  readonly clash: Clash | undefined;
}

const sampleMs = 50;
// A place is whole millimetres where a stretch ends and not on the way there.
const roundedOff = 0.01;
const waitsMs = [100, 200, 300, 400, 500];
// Besides the two bodies, so that nobody brushes past; common practice, no source.
const spare = 0.1;
const mostBends = 3;
// A man who would lose more than this waits, or brushes by; common practice, no source.
const longestDetourMs = 1000;

/** Centre to centre, metres: nearer than this two bodies touch. */
export function bodyRoom(branch: Branch): number {
  return 2 * branch.scene.level.bodyRadius;
}

/** The way he takes, given everybody whose way is settled. */
export function planWay(branch: Branch, errand: Errand): Planned {
  const room = bodyRoom(branch);
  const { touching } = errand;
  const others = [...branch.bodies.values()].filter(({ who }) => who !== errand.who && (touching !== undefined || !errand.partners.includes(who)));
  const straight = layWay(errand.points, errand.limits, errand.entry, errand.exit);
  const first = worstClash(straight, errand.start, others, room, errand);
  if (first === undefined) return { way: straight, delay: 0, overlaps: [] };

  const ended = keepOffTheEnd(branch, errand, straight, others);
  const direct: Tried = { way: ended.way, clash: ended.way === straight ? first : worstClash(ended.way, errand.start, others, room, errand) };
  let best = { ...direct, delay: 0 };
  for (const side of [1, -1] as const) {
    if (best.clash === undefined) break;
    const bent = bendRound(branch, errand, direct, others, side);
    if (bent.way.ms > straight.ms + longestDetourMs) continue;
    if (bent.clash === undefined || bent.clash.gap > best.clash.gap + 1e-6) best = { ...bent, delay: 0 };
  }
  // Who waits need not go round any more, where the other is gone by then.
  const detour = best.way;
  for (const delay of errand.mayWait ? waitsMs : []) {
    if (best.clash === undefined) break;
    const waiting = whileWaiting(errand, delay, others, room);
    for (const way of new Set([ended.way, detour])) {
      if (best.clash === undefined) break;
      const clash = waiting.reduce(worse, worstClash(way, errand.start + delay, others, room, errand));
      if (clash === undefined || clash.gap > best.clash.gap + 1e-6) best = { way, delay, clash };
    }
  }
  const { way, delay, clash } = best;
  const clashes = clash === undefined ? [] : [...whileWaiting(errand, delay, others, room), ...clashesOf(way, errand.start + delay, others, room, errand)];
  return { way, delay, ...(ended.taken !== undefined && { taken: ended.taken }), overlaps: clashes.map(told) };
}

/** The same errand, set out on this much later because of something else than room: those who come by meanwhile are told too. */
export function planLater(branch: Branch, errand: Errand, late: number): Planned {
  const plan = planWay(branch, { ...errand, start: errand.start + late });
  const meanwhile = whileWaiting(errand, late, [...branch.bodies.values()].filter(({ who }) => who !== errand.who), bodyRoom(branch));
  return { ...plan, overlaps: [...meanwhile.map(told), ...plan.overlaps] };
}

function told({ other, gap, at }: Clash): Planned['overlaps'][number] {
  return { other: other.who, gap: Math.round(gap * 100) / 100, at };
}

function keepOffTheEnd(branch: Branch, errand: Errand, straight: Way, others: readonly Body[]): { readonly way: Way; readonly taken?: BodyId } {
  const room = bodyRoom(branch);
  const end = errand.points[errand.points.length - 1]!;
  const arrival = errand.start + straight.ms;
  const standing = others.find((other) => distance(bodyAt(other, arrival + 500), end) < room && restsFrom(other, arrival + 500) && !hasLeft(errand, other.who, arrival));
  const before = [...errand.points].reverse().find((point) => standing !== undefined && distance(point, standing.place) >= room);
  if (standing === undefined || before === undefined) return { way: straight };
  const gap = distance(before, standing.place);
  const around = [...branch.bodies.values()].filter((other) => other.who !== errand.who);
  const atRest = around.filter((other) => restsFrom(other, arrival + 500));
  const stops = stopsFrom(room + spare / 2, gap).map((short) => commit(away(standing.place, before, -short)));
  const clearOf = (bodies: readonly Body[]) => stops.find((point) => bodies.every(({ place }) => distance(point, place) >= room - 0.01));
  // A body away from him, and from whoever else stands there, or is on his way to there.
  const stop = clearOf(around) ?? clearOf(atRest);
  const kept = errand.points.slice(0, errand.points.lastIndexOf(before) + 1);
  const points = stop === undefined ? kept : [...kept, stop];
  return { way: layWay(points, errand.limits, errand.entry, errand.exit), taken: standing.who };
}

function stopsFrom(nearest: number, farthest: number): readonly number[] {
  const stops: number[] = [];
  for (let short = nearest; short < farthest; short += 0.2) stops.push(short);
  return stops;
}

function restsFrom(body: Body, ms: number): boolean {
  return body.until <= ms;
}

/** Will he be gone by then, though his own way is still to be settled? He then sees this one and keeps clear of it. */
function hasLeft({ leaving }: Errand, who: BodyId, ms: number): boolean {
  return (leaving.get(who) ?? Number.POSITIVE_INFINITY) <= ms;
}

/** Goes round whoever is in the way of `direct`, one after the other, at rest or where they would meet; `side` 1 is the shorter way round. */
function bendRound(branch: Branch, errand: Errand, direct: Tried, others: readonly Body[], side: 1 | -1): Tried {
  const room = bodyRoom(branch);
  let { way, clash } = direct;
  for (let bends = 0; clash !== undefined && bends < mostBends; bends++) {
    const centre = restsFrom(clash.other, errand.start) ? clash.other.place : bodyAt(clash.other, clash.at);
    const index = way.pieces.findIndex(({ from, to }) => gapToLine(from, to, centre) < room);
    if (index === -1) break;
    // A corner of the way that is taken gives way itself.
    const taken = way.points.findIndex((point, at) => at > 0 && at < way.points.length - 1 && distance(point, centre) < room);
    const before = taken === -1 ? index : taken - 1;
    const after = taken === -1 ? index + 1 : taken + 1;
    const corner = roundCorner(branch, errand.who, { from: way.points[before]!, to: way.points[after]!, centre, reach: room + spare, side });
    const points = [...way.points.slice(0, before + 1), inBounds(branch, corner), ...way.points.slice(after)];
    way = layWay(points, errand.limits, errand.entry, errand.exit);
    clash = worstClash(way, errand.start, others, room, errand);
  }
  return { way, clash };
}

/** The nearest point at which a whole body is in bounds. */
export function inBounds(branch: Branch, point: Point): Point {
  const { left, right, bottom, top } = branch.scene.court.boundary;
  const edge = branch.scene.level.bodyRadius;
  return commit({ x: Math.max(left + edge, Math.min(right - edge, point.x)), y: Math.max(bottom + edge, Math.min(top - edge, point.y)) });
}

export interface Bend {
  readonly from: Point;
  readonly to: Point;
  /** Whom he goes round, and how far from him. */
  readonly centre: Point;
  readonly reach: number;
  /** 1 the side where the straight way passes him, -1 the other. */
  readonly side: 1 | -1;
}

/** A point beside a man, to go round him by. */
export function roundCorner(branch: Branch, who: BodyId, { from, to, centre, reach, side }: Bend): Point {
  const length = distance(from, to);
  // There and back: he comes to him and no farther.
  if (length < 0.001) return commit(away(centre, from, -reach));
  const normal = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
  const offset = (centre.x - from.x) * normal.x + (centre.y - from.y) * normal.y;
  const passes = Math.abs(offset) > 0.001 ? -Math.sign(offset) : emptierSide(branch, who, from, normal);
  const sign = passes * side;
  return commit({ x: centre.x + normal.x * reach * sign, y: centre.y + normal.y * reach * sign });
}

/** Straight at him: the side with fewer men, else the one his number has, else away from the baseline; all of it turns round in a mirror. */
function emptierSide(branch: Branch, who: BodyId, from: Point, normal: Point): 1 | -1 {
  let lean = 0;
  for (const { place } of branch.bodies.values()) lean += (place.x - from.x) * normal.x + (place.y - from.y) * normal.y;
  if (Math.abs(lean) > 0.001) return lean > 0 ? -1 : 1;
  return sideWhereNothingLeans(branch, who, normal);
}

/** Who comes too near while he is under way or, once he is there, while the other still runs. */
function clashesOf(way: Way, start: number, others: readonly Body[], room: number, errand: Errand): readonly Clash[] {
  return others.map((other) => clashWith(way, start, other, room, errand)).filter((clash) => clash !== undefined);
}

function worstClash(way: Way, start: number, others: readonly Body[], room: number, errand: Errand): Clash | undefined {
  let worst: Clash | undefined;
  for (const other of others) {
    const clash = clashWith(way, start, other, room, errand);
    if (clash !== undefined && (worst === undefined || clash.gap < worst.gap)) worst = clash;
  }
  return worst;
}

function clashWith(way: Way, start: number, other: Body, room: number, errand: Errand): Clash | undefined {
  const { partners, touching } = errand;
  if (touching !== undefined && partners.includes(other.who)) return movingClash(way, start, other, room, Math.min(way.ms, touching(way)));
  return restsFrom(other, start) ? restingClash(way, start, other, room, errand) : movingClash(way, start, other, room);
}

function worse(a: Clash | undefined, b: Clash | undefined): Clash | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return b.gap < a.gap ? b : a;
}

/** Who comes by where he stands and waits to set out. */
function whileWaiting({ points, start, partners }: Errand, delay: number, others: readonly Body[], room: number): readonly Clash[] {
  const found: Clash[] = [];
  for (const other of others) {
    if (delay === 0 || partners.includes(other.who) || restsFrom(other, start)) continue;
    let nearest: Clash | undefined;
    for (let at = start; at < start + delay; at += sampleMs) nearest = worse(nearest, { other, gap: distance(points[0]!, bodyAt(other, at)), at });
    if (nearest !== undefined && nearest.gap < room) found.push(nearest);
  }
  return found;
}

function restingClash(way: Way, start: number, other: Body, room: number, errand: Errand): Clash | undefined {
  const centre = other.place;
  let gap = room;
  let at = start;
  for (let index = 0; index < way.pieces.length; index++) {
    const { from, to, at: begins, profile } = way.pieces[index]!;
    if (gapToLine(from, to, centre) > gap + roundedOff) continue;
    const share = shareNearest(from, to, centre);
    // He stood that near already and leaves: no clash of this way.
    if (index === 0 && share === 0) continue;
    const there = secondsAt(profile, share * profile.distance) * 1000;
    const leaves = (errand.leaving.get(other.who) ?? Number.POSITIVE_INFINITY) - start - begins;
    if (leaves <= 0) break;
    // Of a man who leaves, what counts is how near this one is by then.
    const here = alongPiece(from, to, profile, Math.min(there, leaves));
    const near = distance(centre, here);
    if (near >= gap) continue;
    gap = near;
    at = start + begins;
  }
  return gap < room ? { other, gap, at } : undefined;
}

/** Sampled, from `after` ms of the way on; while they are too far apart to meet before, samples are passed over. */
function movingClash(way: Way, start: number, other: Body, room: number, after = 0): Clash | undefined {
  const begin = start + after;
  const end = Math.max(start + way.ms, other.until, begin);
  const nearerASample = ((topSpeedOfWay(way) + topSpeedOf(other, begin)) * sampleMs) / 1000;
  let gap = room;
  let at = begin;
  let leaving = true;
  let last = Number.POSITIVE_INFINITY;
  for (let t = begin; ; ) {
    const here = distance(alongWay(way, t - start), bodyAt(other, t));
    // Who stands still does not leave.
    if (here >= room || t >= end || (t > begin && here <= last)) leaving = false;
    if (!leaving && here < gap) {
      gap = here;
      at = t;
    }
    last = here;
    if (t >= end) break;
    const farOff = here - room - roundedOff;
    t = Math.min(end, t + sampleMs * (farOff > nearerASample ? Math.floor(farOff / nearerASample) : 1));
  }
  return gap < room ? { other, gap, at } : undefined;
}

function topSpeedOfWay({ pieces }: Way): number {
  let top = 0;
  for (const { profile } of pieces) top = Math.max(top, profile.vmax);
  return top;
}

/** On what is left of his way at `ms`. */
function topSpeedOf({ stretches }: Body, ms: number): number {
  let top = 0;
  for (const { segment } of stretches) if (segment.t1 > ms) top = Math.max(top, segment.profile.vmax);
  return top;
}
