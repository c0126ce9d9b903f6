/** A look that is taken (rule 16): what is not then happening, and what stands behind its colon. */
import { commit, distance } from '../court/point.ts';
import type { Action, BodyId, LookId } from '../play/play.ts';
import { bodyRoom } from './bodies.ts';
import type { ActionItem, Branch, Meeting, ReadLook } from './branch.ts';
import { bodyAt, bodyOf, copyForLook, happen, legsOf, nothingYet, tell, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { edge, latestOf, varyingEdge } from './graph.ts';
import { breakOff, callOff, leaveOut, makeWayFor } from './left-out.ts';
import { looker } from './looks.ts';
import type { Running } from './running.ts';
import { runRoute, settleMove } from './moves.ts';
import { problem } from './problem-codes.ts';
import { earliestMeeting, flightMs } from './receiving.ts';
import { shoot, shotFrom } from './shots.ts';
import { passReleaseMs } from './start.ts';
import { keepRunning } from './stops.ts';
import { nearSpot } from './ways.ts';
import { away, pointOf, standingOf } from './where.ts';

export interface TakenLook {
  readonly branch: Branch;
  /** The last thing that happens, and the release of the shot. */
  readonly end: number;
  readonly shot?: number;
}

/** The path up to the look, and the look taken. */
export function takeLook(path: Branch, id: LookId): TakenLook | undefined {
  const read = path.looks.get(id);
  if (read === undefined) return undefined;
  const branch = copyForLook(path);
  leaveOut(branch, read);
  return playTail(branch, read);
}

interface Tail {
  readonly branch: Branch;
  readonly read: ReadLook;
  /** What the next link goes on from. */
  edges: readonly Edge[];
  met: boolean;
  caught: boolean;
  /** The ball comes off his own dribble, or to him on the run: the last steps already gather it. */
  driven: boolean;
  last: number;
  shot?: number;
}

function playTail(branch: Branch, read: ReadLook): TakenLook {
  const tail: Tail = { branch, read, edges: [edge(read.read, 'read')], met: false, caught: false, driven: dribbledIn(branch, read), last: read.read };
  for (const action of read.look.tail) {
    if (tail.shot !== undefined) break;
    playLink(tail, action);
  }
  return { branch, end: tail.last, ...(tail.shot !== undefined && { shot: tail.shot }) };
}

/** The looker with the ball comes out of his own dribble. */
function dribbledIn(branch: Branch, read: ReadLook): boolean {
  const last = branch.ball[branch.ball.length - 1];
  return last?.kind === 'dribble' && last.by === looker(read.look);
}

function playLink(tail: Tail, action: Action): void {
  const { branch } = tail;
  if (!branch.bodies.has(action.who)) return;
  switch (action.kind) {
    case 'pass':
      // The entry pass the text leaves out comes from whoever has the ball.
      return playPass(tail, action.origin === 'derived' && branch.holder !== undefined ? { ...action, who: branch.holder } : action);
    case 'hand-off':
      return playHandOff(tail, action);
    case 'shot':
      return playShot(tail, action);
    case 'move':
    case 'dribble':
      return playMove(tail, action);
    case 'screen':
    case 'hold':
    case 'defend':
      return;
  }
}

const samePlace = 0.02;

function playPass(tail: Tail, action: Extract<Action, { kind: 'pass' }>): void {
  const { branch, read } = tail;
  if (branch.holder !== action.who || action.to === action.who || !branch.bodies.has(action.to)) return lacksBall(tail, action);
  const there = goToSpot(tail, action);
  const receiver = bodyOf(branch, action.to);
  const planned = there === undefined && !tail.met && action.to === looker(read.look) ? read.meeting : undefined;
  const ready = tail.caught ? tail.edges.map((way) => passAfter(way, passReleaseMs(branch), action.id)) : tail.edges;
  const release = happen(branch, `${action.id}:release`, 'release', action.id, action.who, there === undefined ? ready : [...ready, there]);
  const now = whenOf(branch, release);
  const from = commit(bodyAt(bodyOf(branch, action.who), now));
  const meeting = planned && meetingKept(branch, action, planned, now);
  const at = meeting?.at ?? commit(bodyAt(receiver, Math.max(now, receiver.until)));
  const flight = flightMs(branch, action.pass.value, from, at);
  const catching = [varyingEdge(release, 'flight', 0, flight, 'pass', action.id)];
  const wait = Math.max(meeting?.when ?? 0, meeting === undefined ? receiver.until : 0) - now;
  if (wait > flight) catching.push(edge(release, 'legs', wait));
  const caught = happen(branch, `${action.id}:catch`, 'catch', action.id, action.to, catching);
  branch.ball.push({ kind: 'pass', action: action.id, by: action.who, to: action.to, pass: action.pass.value, throwIn: action.throwIn, begin: release, end: caught, from, at });
  branch.holder = action.to;
  tail.met = true;
  tail.caught = true;
  tail.driven = meeting?.stride === true && catchInStride(tail, action.to, caught);
  tail.edges = [edge(caught, 'chain')];
  tail.last = caught;
}

/**
 * Where they meet after all: with the look taken he may have had to stop short of the place, and the ball may come from farther away than
 * where its holder was when it was looked for.
 */
function meetingKept(branch: Branch, { to, who, pass }: Extract<Action, { kind: 'pass' }>, planned: Meeting, now: number): Pick<Meeting, 'at' | 'when' | 'stride'> | undefined {
  const receiver = bodyOf(branch, to);
  if (distance(bodyAt(receiver, planned.when), planned.at) >= samePlace) return undefined;
  const from = commit(bodyAt(bodyOf(branch, who), now));
  if (!planned.stride || now + flightMs(branch, pass.value, from, planned.at) <= planned.when) return planned;
  const met = earliestMeeting(branch, pass.value, to, from, now);
  return met && { ...met, stride: true };
}

/** `2 passes to 4 at right elbow`: away from there, he goes there for the ball, and the ball waits for him; when it may leave the hand. */
function goToSpot(tail: Tail, action: Extract<Action, { kind: 'pass' }>): Edge | undefined {
  const { branch } = tail;
  if (action.at === undefined) return undefined;
  const receiver = bodyOf(branch, action.to);
  const spot = commit(pointOf(branch, action.at.value, standingOf(branch, action.to, action.who)));
  if (distance(receiver.place, spot) <= nearSpot) return undefined;
  const edges = afterOwn(tail, action.to).map((way) => varyingEdge(way.from, 'reaction', way.fixed + way.varied, Math.round(branch.scene.level.reaction * 1000), 'reaction', `${action.id}.${action.to}`));
  const run = runRoute(branch, {
    action: action.id, who: action.to, joins: true, withBall: false, mayWait: true, exit: 0, limits: legsOf(branch, action.to),
    edges, startsAt: latestOf(branch.scene.graph, edges).at, route: { points: [receiver.place, spot], shoulders: [], partners: [] },
  });
  const from = commit(bodyAt(bodyOf(branch, action.who), run.startsAt + run.way.ms));
  return edge(run.arrive, 'meets-cutter', -flightMs(branch, action.pass.value, from, receiver.place));
}

function passAfter(way: Edge, ms: number, key: string): Edge {
  return varyingEdge(way.from, 'catch-to-release', way.fixed + way.varied, ms, 'release', key);
}

/** He keeps running if a drive or a finish follows; else he stops with the ball (rule 12). */
function catchInStride(tail: Tail, who: BodyId, caught: number): boolean {
  const { branch, read } = tail;
  const when = whenOf(branch, caught);
  const goesOn = read.look.tail.some((action) => action.who === who && (action.kind === 'dribble' || action.kind === 'move' || (action.kind === 'shot' && (action.shot.value === 'layup' || action.shot.value === 'dunk'))));
  if (!goesOn) {
    breakOff(branch, who, { stop: when, because: caught, withBall: true });
    makeWayFor(branch, new Set([who]), read.look.id, when);
    return false;
  }
  callOff(branch, who, when);
  return keepRunning(branch, who, when) > 1;
}

function playHandOff(tail: Tail, action: Extract<Action, { kind: 'hand-off' }>): void {
  const { branch } = tail;
  if (branch.holder !== action.who || action.to === action.who || !branch.bodies.has(action.to)) return lacksBall(tail, action);
  const holder = bodyOf(branch, action.who);
  const taker = bodyOf(branch, action.to);
  const start = happen(branch, `${action.id}:start`, 'start', action.id, action.who, tail.edges);
  const apart = bodyRoom(branch) + 0.15;
  const points = distance(taker.place, holder.place) <= apart ? [taker.place] : [taker.place, commit(away(holder.place, taker.place, -apart))];
  const edges = [edge(start, 'hand-over', Math.max(0, taker.until - whenOf(branch, start)))];
  const run = runRoute(branch, {
    action: action.id, who: action.to, joins: true, arrival: 'none', withBall: false, mayWait: true, exit: 0, limits: legsOf(branch, action.to),
    edges, startsAt: latestOf(branch.scene.graph, edges).at, route: { points, shoulders: [], partners: [action.who] },
  });
  const take = happen(branch, `${action.id}:take`, 'take', action.id, action.to, [varyingEdge(run.start, 'legs', 0, run.way.ms, 'legs', action.to)]);
  branch.ball.push({ kind: 'hand-off', action: action.id, by: action.who, to: action.to, begin: start, end: take });
  branch.holder = action.to;
  tail.caught = true;
  tail.driven = false;
  tail.edges = [edge(take, 'chain')];
  tail.last = take;
}

function playMove(tail: Tail, action: Extract<Action, { kind: 'move' | 'dribble' }>): void {
  const { branch } = tail;
  const item: Running = tailItem(branch, action) as Running;
  const settled = settleMove(branch, item, afterOwn(tail, action.who));
  tail.edges = [edge(settled.done, 'chain')];
  tail.driven = action.kind === 'dribble' && branch.holder === action.who;
  tail.caught = false;
  tail.last = settled.done;
}

/** A man still under way finishes that first. */
function afterOwn(tail: Tail, who: BodyId): readonly Edge[] {
  const { branch } = tail;
  const { until } = bodyOf(branch, who);
  const ready = latestOf(branch.scene.graph, tail.edges).at;
  return until > ready ? tail.edges.map((way) => ({ ...way, fixed: way.fixed + until - ready })) : tail.edges;
}

function tailItem(branch: Branch, action: Action): ActionItem {
  return { kind: 'action', key: action.id, step: action.step, order: Number.MAX_SAFE_INTEGER, needs: [], ...nothingYet, action, holder: branch.holder };
}

function playShot(tail: Tail, action: Extract<Action, { kind: 'shot' }>): void {
  const { branch } = tail;
  if (branch.holder !== action.who) return lacksBall(tail, action);
  const done = shoot(branch, { action: action.id, who: action.who, kind: action.shot.value, edges: tail.edges, offDribble: tail.driven, ...shotFrom(branch, action) });
  tail.shot = done.shot;
  tail.last = done.rim;
}

function lacksBall(tail: Tail, action: Action): void {
  tell(tail.branch, problem('ball-elsewhere', action.id, { who: action.who, holder: tail.branch.holder ?? '' }));
}
