/** What does not happen when a look is taken (rule 16): whatever would come only after passing it up, and who stops short because of it. */
import { distance } from '../court/point.ts';
import type { BodyId, LookId } from '../play/play.ts';
import { bodyRoom } from './bodies.ts';
import type { Branch, ReadLook } from './branch.ts';
import { bodyAt, bodyOf, tell, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { looker } from './looks.ts';
import { problem } from './problem-codes.ts';
import { restAfter, stopAt } from './stops.ts';

/** Takes out what would only happen if the look were passed up, and whatever hangs on it. */
export function leaveOut(branch: Branch, read: ReadLook): void {
  const now = whenOf(branch, read.read);
  const dropped = new Set<number>([read.passedUp]);
  const cut = branch.ball.find((link) => link.kind === 'dribble' && whenOf(branch, link.begin) < now && whenOf(branch, link.end) > now);
  for (const link of branch.ball) if (whenOf(branch, link.begin) >= now && whenOf(branch, link.end) > now) dropped.add(link.begin);
  if (cut !== undefined) dropped.add(cut.end);
  const busy = new Set<BodyId>(read.look.tail.flatMap((action) => (action.kind === 'pass' || action.kind === 'hand-off' ? [action.who, action.to] : [action.who])));
  const receiver = looker(read.look);
  const brokenOff: BodyId[] = [];
  for (const who of busy) {
    const meets = who !== receiver || read.meeting === undefined ? now : (read.meeting.stays ?? (read.meeting.stride ? now : read.meeting.when));
    // Coming to rest with a ball he has caught on the move is no way of its own.
    for (const { begin } of branch.bodies.get(who)?.stretches ?? []) {
      if (whenOf(branch, begin) < meets || branch.scene.graph.events[begin]!.timed.kind === 'catch') continue;
      // A look on his cut is read as he sets out: he has set out, and goes no further.
      if (comesFrom(branch, read.read, begin)) brokenOff.push(who);
      else dropped.add(begin);
    }
  }
  branch.ball = branch.ball.map((link) => (link === cut ? { ...link, end: read.read } : link));
  const staying = new Set(takeOut(branch, dropped));
  branch.holder = read.holder;
  if (cut !== undefined) {
    stopAt(branch, cut.by, pastWhoStands(branch, cut.by, now), read.read, branch.holder === cut.by && !passesFirst(read));
    staying.add(cut.by);
  }
  for (const who of brokenOff) {
    breakOff(branch, who, { stop: now, because: read.read, withBall: branch.holder === who && !passesFirst(read) });
    staying.add(who);
  }
  makeWayFor(branch, staying, read.look.id, now);
}

/** With the look taken these stay where they would have made room: whoever is on his way there stops short of them, or it is told. */
export function makeWayFor(branch: Branch, staying: ReadonlySet<BodyId>, look: LookId, now: number): void {
  const stopped = [...staying].flatMap((who) => stopBefore(branch, who, now));
  tellInTheWay(branch, look, new Set([...staying, ...stopped]), now);
}

/** Takes events out with all that hangs on them and is not past by `since`, ms; gives the men who now stay where they would have left. */
function takeOut(branch: Branch, dropped: Set<number>, since = 0): readonly BodyId[] {
  const { graph } = branch.scene;
  const first = Math.min(...dropped);
  branch.events = branch.events.filter((event) => {
    // Causes come first: nothing before the first that goes hangs on it.
    if (event < first || whenOf(branch, event) < since || (!dropped.has(event) && !hangsOn(graph.events[event]!.edges, dropped))) return true;
    dropped.add(event);
    return false;
  });
  branch.ball = branch.ball.filter((link) => !dropped.has(link.begin));
  for (const [id, screen] of branch.screens) {
    if (dropped.has(screen.set)) branch.screens.delete(id);
    else if (screen.free !== undefined && dropped.has(screen.free)) screen.free = undefined;
  }
  const staying: BodyId[] = [];
  for (const body of branch.bodies.values()) {
    if (body.staysFor !== undefined && dropped.has(body.staysFor)) body.staysFor = undefined;
    // What he would have done after it, the braking of a man who stops included, starts from a place he does not come to.
    const begins = body.stretches.findIndex(({ begin }) => dropped.has(begin));
    if (begins === -1) continue;
    const kept = body.stretches.slice(0, begins);
    staying.push(body.who);
    body.stretches = kept;
    const last = kept[kept.length - 1]?.segment;
    body.place = last?.path[last.path.length - 1] ?? body.home;
    body.until = last?.t1 ?? 0;
    body.exit = 0;
  }
  return staying;
}

function hangsOn(edges: readonly Edge[], dropped: ReadonlySet<number>): boolean {
  for (const { from } of edges) if (dropped.has(from)) return true;
  return false;
}

/** Whether an event hangs on another, at whatever remove. */
function comesFrom(branch: Branch, event: number, cause: number): boolean {
  const reached = new Set([event]);
  for (const each of reached) {
    if (each === cause) return true;
    // Causes come first.
    if (each > cause) for (const { from } of branch.scene.graph.events[each]!.edges) reached.add(from);
  }
  return false;
}

/** From `now` on, when he may stop without coming to rest on a man: a dribble cut short beside one goes on past him first. */
function pastWhoStands(branch: Branch, who: BodyId, now: number): number {
  const body = bodyOf(branch, who);
  const room = bodyRoom(branch);
  let at = now;
  while (at < body.until && [...branch.bodies.values()].some((other) => other.who !== who && other.until <= at && distance(restAfter(body, at), other.place) < room)) at += 50;
  return at;
}

// Time to stop in, before he would run into a man who stays; common practice, no source.
const stopsAheadMs = 600;

/** With the look taken somebody stays where he would have made room: whoever is on his way there stops short of him. */
function stopBefore(branch: Branch, staying: BodyId, now: number): readonly BodyId[] {
  const stopped: BodyId[] = [];
  const { place, until } = bodyOf(branch, staying);
  const room = bodyRoom(branch);
  for (const other of branch.bodies.values()) {
    if (other.who === staying || other.until <= now) continue;
    const from = Math.max(now, until);
    if (distance(bodyAt(other, from), place) < room) continue;
    for (let at = from; at <= other.until; at += 50) {
      if (distance(bodyAt(other, at), place) >= room) continue;
      let stop = Math.max(now, at - stopsAheadMs);
      while (stop > now && distance(restAfter(other, stop), place) < room) stop = Math.max(now, stop - 50);
      breakOff(branch, other.who, { stop, now, because: branch.events[0]! });
      stopped.push(other.who);
      break;
    }
  }
  return stopped;
}

/** He stops at `stop`, ms, and what he was about is called off. Who has left by `now` for a screen that now is not set has left. */
export function breakOff(branch: Branch, who: BodyId, { stop, now = stop, because, withBall = false }: { readonly stop: number; readonly now?: number; readonly because: number; readonly withBall?: boolean }): void {
  callOff(branch, who, stop, now);
  stopAt(branch, who, stop, because, withBall);
}

/** What he was about at `since`, ms, does not come about: no arrival, no screen set, and nothing that hangs on them and is not past by `now`. */
export function callOff(branch: Branch, who: BodyId, since: number, now = since): void {
  const gone = branch.events.filter((event) => branch.scene.graph.events[event]!.timed.who === who && whenOf(branch, event) > since);
  if (gone.length > 0) takeOut(branch, new Set(gone), now);
}

/** Whoever still comes too near to a man who stays, or stopped, in this run-through alone. */
function tellInTheWay(branch: Branch, run: LookId, standing: ReadonlySet<BodyId>, now: number): void {
  const room = bodyRoom(branch);
  for (const body of branch.bodies.values()) {
    const moving = body.stretches[body.stretches.length - 1];
    if (moving === undefined) continue;
    for (const who of standing) {
      const other = bodyOf(branch, who);
      const end = Math.max(body.until, other.until);
      if (who === body.who || end <= now || distance(bodyAt(body, now), bodyAt(other, now)) < room) continue;
      for (let at = now; at <= end; at += 100) {
        const gap = distance(bodyAt(body, at), bodyAt(other, at));
        if (gap >= room - 0.05) continue;
        tell(branch, problem('bodies-overlap', moving.segment.action, { who: body.who, other: who, gap: Math.round(gap * 100) / 100 }, { run, moment: at }));
        break;
      }
    }
  }
}

function passesFirst(read: ReadLook): boolean {
  return read.look.tail[0]?.kind === 'pass' || read.look.tail[0]?.kind === 'hand-off';
}
