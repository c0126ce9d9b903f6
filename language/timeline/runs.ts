/** A run-through, closed in t: from what is settled on its path to tracks, ball states, events and screens. */
import type { BodyId, LookId } from '../play/play.ts';
import { OFFENCE } from '../play/play.ts';
import { isOffence } from './sound.ts';
import type { BallLink, Branch } from './branch.ts';
import { whenOf } from './branch.ts';
import type { BallState, Run, SetScreen, TimedEvent, Track } from './timeline.ts';

export interface RunEnds {
  readonly id: string;
  readonly look?: LookId;
  readonly shot?: number;
  /** ms */
  readonly end: number;
}

export function runOf(branch: Branch, ends: RunEnds): Run {
  const touch = branch.ball.find((link) => link.kind === 'pass' && link.throwIn);
  const events = eventsOf(branch, ends.end);
  return {
    id: ends.id,
    steps: [...branch.steps],
    ...(ends.look !== undefined && { look: ends.look }),
    startsAt: firstAction(events, ends.end),
    clockStartsAt: touch === undefined ? 0 : whenOf(branch, touch.end),
    ...(ends.shot !== undefined && { releaseAt: whenOf(branch, ends.shot) }),
    end: ends.end,
    tracks: tracksOf(branch, ends.end),
    defenders: {},
    ball: ballStates(branch, ends.end),
    events,
    screens: screensOf(branch, ends.end),
  };
}

function eventsOf(branch: Branch, end: number): readonly TimedEvent[] {
  const { events } = branch.scene.graph;
  const inRun: TimedEvent[] = [];
  for (const number of branch.events) {
    const { timed } = events[number]!;
    if (timed.at <= end) inRun.push(timed);
  }
  return inRun.sort((a, b) => a.at - b.at);
}

/** The event of the first action, if there is one. */
export function firstActionOf(branch: Branch): number | undefined {
  const { events } = branch.scene.graph;
  let first: number | undefined;
  for (const number of branch.events) {
    const { timed } = events[number]!;
    if (isAction(timed) && (first === undefined || timed.at < whenOf(branch, first))) first = number;
  }
  return first;
}

function isAction({ kind }: TimedEvent): boolean {
  return kind === 'start' || kind === 'release' || kind === 'shot';
}

function firstAction(events: readonly TimedEvent[], end: number): number {
  return events.find(isAction)?.at ?? end;
}

function tracksOf(branch: Branch, end: number): Run['tracks'] {
  const tracks: Partial<Record<BodyId, Track>> = {};
  for (const who of OFFENCE) {
    const body = branch.bodies.get(who)!;
    tracks[who] = { start: body.home, segments: body.stretches.filter(({ segment }) => segment.t0 < end).map(({ segment }) => segment) };
  }
  return tracks;
}

/** The ball's states from the call to the end, without a gap. */
function ballStates(branch: Branch, end: number): readonly BallState[] {
  const { play } = branch.scene;
  const states: BallState[] = [];
  const named = String(play.start.ball.value) as BodyId;
  let by: BodyId = isOffence(named) ? named : '1';
  let live = play.start.throwIn === undefined && !play.start.dead;
  let out = play.start.throwIn !== undefined;
  let since = 0;
  const hold = (until: number): void => {
    const t1 = Math.min(until, end);
    if (t1 > since) states.push({ kind: 'held', t0: since, t1, by, live, out });
    since = Math.max(since, t1);
  };
  for (const link of branch.ball) {
    const begin = whenOf(branch, link.begin);
    if (begin > end) break;
    hold(begin);
    const done = Math.min(end, whenOf(branch, link.end));
    const state = stateOf(branch, link, since, done);
    if (state !== undefined && done > since) states.push(state);
    if (state !== undefined || link.kind === 'hand-off') out = false;
    if (link.kind === 'hand-off') hold(done);
    since = Math.max(since, done);
    if (link.kind === 'pass' || link.kind === 'hand-off') by = link.to;
    live = link.kind === 'dribble';
  }
  if (since < end || states.length === 0) states.push({ kind: 'held', t0: since, t1: end, by, live, out });
  return states;
}

function stateOf(branch: Branch, link: BallLink, t0: number, t1: number): BallState | undefined {
  if (link.kind === 'dribble') return { kind: 'held', t0, t1, by: link.by, live: true, out: false };
  if (link.kind === 'pass') return { kind: 'flight', t0, t1, from: link.from, to: link.at, pass: link.pass, by: link.by, receiver: link.to, action: link.action };
  if (link.kind === 'shot') return { kind: 'shot', t0, t1, from: link.from, to: branch.scene.court.ring, shot: link.shot, by: link.by, action: link.action };
  return undefined;
}

function screensOf(branch: Branch, end: number): readonly SetScreen[] {
  const screens: SetScreen[] = [];
  for (const screen of branch.screens.values()) {
    const from = whenOf(branch, screen.set);
    if (from > end) continue;
    const { stretches } = branch.bodies.get(screen.action.who)!;
    // After the shot he goes to the boards instead.
    if (stretches.some(({ segment }) => segment.t0 < from && from < segment.t1)) continue;
    const left = stretches.find(({ segment }) => segment.t0 >= from);
    const free = screen.free === undefined ? end : whenOf(branch, screen.free);
    screens.push({ action: screen.action.id, by: screen.action.who, at: screen.at, facing: screen.facing, from, to: Math.min(end, free, left?.segment.t0 ?? end), users: [...screen.uses.keys()] });
  }
  return screens;
}
