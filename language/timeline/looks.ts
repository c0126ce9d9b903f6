/** Looks (rules 15, 16): when each is there to be taken, where ball and man would meet, when it is passed up. */
import { commit, distance } from '../court/point.ts';
import type { Point } from '../court/point.ts';
import { isSpotName, spotLabel } from '../court/spots.ts';
import type { BodyId, Look, PassKind, Place } from '../play/play.ts';
import type { ActionItem, Branch, LookItem, Meeting, Need, Settled } from './branch.ts';
import { bodyAt, bodyOf, happen, tell, whenOf } from './branch.ts';
import type { Edge } from './graph.ts';
import { delayed, edge, latestOf, varyingEdge } from './graph.ts';
import { freeKey, hasBall, isScreenItem, lookBefore, nearestAbove } from './items.ts';
import { tenths } from './passes.ts';
import { problem } from './problem-codes.ts';
import { earliestMeeting, flightMs, lastToDo, meetingBy } from './receiving.ts';
import { usedScreens } from './screens.ts';
import { clockMoment, eventNumber, setsOut, spokenOf } from './waits.ts';
import type { Spoken } from './waits.ts';
import { atThePlace, inTheLane, pointOf, standingOf } from './where.ts';

/** Ball and roller meet when he has half his way behind him; common practice, no source. */
const halfWay = 0.5;

export function looker(look: Look): BodyId {
  return String(look.who[0] ?? 1) as BodyId;
}

export function lookNeeds(branch: Branch, item: LookItem): readonly Need[] {
  const who = looker(item.look);
  const needs: Need[] = [];
  const passed = ballAbove(branch, item);
  if (passed !== undefined) needs.push({ on: passed.key, tie: 'ball' });
  const before = lookBefore(branch, item);
  if (before !== undefined) needs.push({ on: before.key, tie: 'look' });
  const last = lastMove(branch, item, who);
  if (last !== undefined) needs.push({ on: doneKey(branch, item, last), tie: 'meet' });
  const pinned = pinOf(branch, item, who);
  if (pinned !== undefined) needs.push({ on: pinned.item.key, tie: 'wait' });
  for (const { key } of timedAbove(branch, item)) needs.push({ on: key, tie: 'meet' });
  return needs;
}

/** `1 holds until 8 on the clock`, `at 9 on the clock, 1 drives`: what who has the ball is told to do for so long, or then, comes before his look or his pass. */
function timedAbove(branch: Branch, item: LookItem): readonly ActionItem[] {
  const own = (fits: (action: ActionItem['action']) => boolean) => nearestAbove(branch, item, (other): other is ActionItem => other.kind === 'action' && other.action.who === item.holder && fits(other.action) && !item.ignored.has(`meet ${other.key}`));
  return [own(endsByItself), own((action) => action.kind === 'dribble' && !endsByItself(action) && hasTime(action))].filter((found) => found !== undefined);
}

const hasTime = ({ waits }: ActionItem['action']): boolean => waits.some(({ kind }) => kind === 'clock' || kind === 'later');

function endsByItself(action: ActionItem['action']): boolean {
  const stands = action.kind === 'hold' || (action.kind === 'dribble' && action.style === 'keep');
  return stands && ((action.kind === 'hold' && action.seconds !== undefined) || hasTime(action) || action.waits.some(({ kind }) => kind === 'until'));
}

/** The pass or hand-off written last before it; a dribble does not hold a look. */
function ballAbove(branch: Branch, item: LookItem): ActionItem | undefined {
  return nearestAbove(branch, item, (other): other is ActionItem => other.kind === 'action' && hasBall(other) && other.action.kind !== 'dribble');
}

/** What the looker still does himself: without the ball his moves, with it his own dribble. */
function lastMove(branch: Branch, item: LookItem, who: BodyId): ActionItem | undefined {
  if (item.holder !== who) return lastToDo(branch, item, who);
  return nearestAbove(branch, item, (other): other is ActionItem => other.kind === 'action' && other.action.who === who && (other.action.kind === 'dribble' || other.action.kind === 'move') && !item.ignored.has(`meet ${other.key}`));
}

/** What tells that he is there to be looked for: a screener whose man goes before the look is, once he is free of him. */
function doneKey(branch: Branch, item: LookItem, last: ActionItem): string {
  if (!isScreenItem(last) || item.ignored.has(`meet ${freeKey(last.key)}`)) return last.key;
  const used = branch.items.some((other) => other.kind === 'action' && other.step === last.step && other.order < item.order && usedScreens(branch, other).some(({ screen }) => screen === last));
  return used ? freeKey(last.key) : last.key;
}

function settledOf(branch: Branch, item: LookItem, last: ActionItem | undefined): Settled | undefined {
  return last && branch.settled.get(doneKey(branch, item, last));
}

/** What a pinned look waits for: his roll, his way off a screen, somebody's event. */
function pinOf(branch: Branch, item: LookItem, who: BodyId): Spoken | undefined {
  const { pin } = item.look;
  if (pin === undefined || pin.kind === 'at' || pin.kind === 'later') return undefined;
  if (pin.kind === 'as') return spokenOf(branch, item, pin.event);
  if (pin.kind === 'place') return spokenOf(branch, item, { who, does: 'reach', place: pin.place });
  const fits = (other: ActionItem): boolean => {
    const { action } = other;
    if (action.who !== who || (action.kind !== 'move' && action.kind !== 'dribble')) return false;
    if (pin.kind === 'off') return usedScreens(branch, other).some(({ by }) => by === pin.screener);
    return action.verb === pin.style || action.style === pin.style || (pin.style === 'roll' && action.kind === 'move' && action.style === 'slip');
  };
  const isFitting = (other: { readonly kind: string }): other is ActionItem => other.kind === 'action' && fits(other as ActionItem);
  const found = nearestAbove(branch, item, isFitting) ?? branch.items.find((other): other is ActionItem => other.step === item.step && other.order > item.order && isFitting(other));
  if (found === undefined) return undefined;
  const screen = pin.kind === 'off' ? usedScreens(branch, found).find(({ by }) => by === pin.screener)?.screen?.key : undefined;
  return { item: found, moment: 'start', ...(screen !== undefined && { screen }) };
}

export function lookEdges(branch: Branch, item: LookItem): readonly Edge[] {
  const who = looker(item.look);
  const edges: Edge[] = [edge(branch.opened.get(item.step) ?? branch.events[0]!, 'step-opens')];
  const passed = ballAbove(branch, item);
  const caught = passed && branch.settled.get(passed.key);
  if (caught !== undefined) edges.push(edge(caught.done, 'ball-order'));
  const before = lookBefore(branch, item);
  const read = before && branch.looks.get(before.look.id);
  if (read !== undefined) edges.push(edge(read.passedUp, 'look-order'));
  const pin = pinEdge(branch, item, who);
  if (pin !== undefined) edges.push(pin);
  for (const { key, action } of timedAbove(branch, item)) {
    const told = branch.settled.get(key);
    if (told !== undefined) edges.push(edge(endsByItself(action) ? told.done : told.start, 'written-wait'));
  }
  const last = lastMove(branch, item, who);
  const settled = settledOf(branch, item, last);
  if (item.holder === who && settled !== undefined && pin === undefined) edges.push(edge(settled.done, 'legs'));
  return edges;
}

/** `2 seconds later` than it would come. */
function laterMs({ look: { pin } }: LookItem): number {
  return pin?.kind === 'later' ? Math.round(pin.seconds * 1000) : 0;
}

function pinEdge(branch: Branch, item: LookItem, who: BodyId): Edge | undefined {
  const { pin } = item.look;
  if (pin === undefined) return undefined;
  if (pin.kind === 'at') {
    const at = clockMoment(branch, { clock: pin.of, seconds: pin.seconds });
    return at && edge(at.event, 'written-wait', at.ms);
  }
  if (pin.kind === 'later') return undefined;
  const pinned = pinOf(branch, item, who);
  // Where he is to be he may already stand.
  if (pinned === undefined && pin.kind === 'place' && standsAt(branch, item, who, pin.place)) return undefined;
  if (pinned !== undefined && pin.kind === 'place' && item.holder !== who) return undefined;
  const event = pinned && eventNumber(branch, pinned, goesByStart(pin, pinned));
  if (event !== undefined) return edge(event, pin.kind === 'off' ? 'screen' : 'written-wait', pin.kind === 'as' ? Math.round((pin.after ?? 0) * 1000) : 0);
  tell(branch, problem('pin-unknown', item.look.id, { who, does: awaited(pin), pin: pin.kind }));
  return undefined;
}

function goesByStart(pin: NonNullable<Look['pin']>, pinned: Spoken): boolean {
  if (pin.kind === 'as' && pin.after !== undefined) return setsOut(pinned, pin.event);
  return pin.kind !== 'off' && pin.kind !== 'place';
}

/** What the look waits for: a move, a place, the screener he comes off, or what somebody does. */
function awaited(pin: NonNullable<Look['pin']>): string {
  if (pin.kind === 'on') return pin.style;
  if (pin.kind === 'place') return pin.place.kind === 'spot' && isSpotName(pin.place.name) ? spotLabel(pin.place.name, pin.place.side === 'left' || pin.place.side === 'right' ? pin.place.side : undefined) : '';
  return pin.kind === 'off' ? pin.screener : pin.kind === 'as' ? pin.event.does : '';
}

function standsAt(branch: Branch, item: LookItem, who: BodyId, place: Place): boolean {
  const near = place.kind === 'spot' && place.name === 'lane' ? inTheLane : atThePlace;
  return distance(bodyOf(branch, who).place, pointOf(branch, place, standingOf(branch, who, item.holder))) < near;
}

export function settleLook(branch: Branch, item: LookItem, edges: readonly Edge[]): void {
  const { look } = item;
  const who = looker(look);
  const last = moveMeant(branch, item, who, edges) ?? lastMove(branch, item, who);
  const settled = settledOf(branch, item, last);
  const meeting = item.holder === who || item.holder === undefined ? undefined : meetingOf(branch, item, who, edges, settled);
  const later = laterMs(item);
  const read = happen(branch, `${look.id}:read`, 'read', look.id, who, [...edges, ...(meeting?.edges ?? [])].map((way) => delayed(way, later)));
  tellLate(branch, item, who, read, settled);
  const passedUp = happen(branch, `${look.id}:passed-up`, 'passed-up', look.id, item.holder ?? who, passedUpEdges(branch, item, who, read, lastMove(branch, item, who)));
  branch.looks.set(look.id, { look, holder: item.holder, read, passedUp, ...(meeting && { meeting }) });
  const place = bodyOf(branch, who).place;
  branch.settled.set(item.key, { start: read, done: passedUp, free: passedUp, place });
}

/** The move of his own that a pin names, as long as it is not past: what he does after it is not waited for. */
function moveMeant(branch: Branch, item: LookItem, who: BodyId, edges: readonly Edge[]): ActionItem | undefined {
  const { pin } = item.look;
  if (item.holder === who || (pin?.kind !== 'on' && pin?.kind !== 'off' && pin?.kind !== 'place')) return undefined;
  const pinned = pinOf(branch, item, who)?.item;
  const settled = pinned && branch.settled.get(pinned.key);
  return settled !== undefined && latestOf(branch.scene.graph, edges).at < whenOf(branch, settled.done) ? pinned : undefined;
}

function entryKind(look: Look, who: BodyId): PassKind {
  const entry = look.tail.find((action) => action.kind === 'pass' && action.to === who);
  return entry?.kind === 'pass' ? entry.pass.value : 'pass';
}

/** Where the entry pass would meet the looker: at rest where his last move ends, or on the run for a pinned look. */
function meetingOf(branch: Branch, item: LookItem, who: BodyId, edges: readonly Edge[], settled: Settled | undefined): Meeting {
  const { look } = item;
  const body = bodyOf(branch, who);
  const ready = latestOf(branch.scene.graph, edges).at;
  const from = commit(bodyAt(bodyOf(branch, item.holder!), ready));
  const kind = entryKind(look, who);
  const start = settled === undefined ? 0 : whenOf(branch, settled.start);
  const done = settled === undefined ? 0 : whenOf(branch, settled.done);
  // Whatever he does next, with the ball coming he does not.
  const stays = done > ready ? { stays: done } : {};
  if (look.pin?.kind === 'place' && settled !== undefined) {
    const spot = pointOf(branch, look.pin.place, standingOf(branch, who, item.holder));
    const met = meetingBy(branch, kind, who, from, ready, spot, start);
    if (met !== undefined && met.when < done) return { ...strideMeeting(branch, kind, from, met, settled), ...stays };
  } else if (look.pin !== undefined && look.pin.kind !== 'at' && look.pin.kind !== 'later' && settled !== undefined) {
    const half = start + Math.round((done - start) * halfWay);
    const earliest = look.pin.kind === 'on' ? Math.max(ready, half - flightMs(branch, kind, from, bodyAt(body, half))) : ready;
    const met = earliest < body.until ? earliestMeeting(branch, kind, who, from, earliest, start) : undefined;
    if (met !== undefined && met.when <= Math.max(done, ready)) return { ...strideMeeting(branch, kind, from, met, settled), ...stays };
  }
  const at = settled === undefined ? commit(bodyAt(body, ready)) : settled.place;
  const flight = flightMs(branch, kind, from, at);
  const when = Math.max(ready + flight, done);
  return { at, when, stride: false, ...stays, edges: settled === undefined ? [] : [edge(settled.done, 'meets-cutter', -flight)] };
}

function strideMeeting(branch: Branch, kind: PassKind, from: Point, met: { readonly at: Point; readonly when: number }, settled: Settled): Meeting {
  const release = met.when - flightMs(branch, kind, from, met.at);
  return { at: met.at, when: met.when, stride: true, edges: [edge(settled.start, 'meets-cutter', release - whenOf(branch, settled.start))] };
}

/** Later of his arrival or catch, and one reading time after he came into sight. */
function passedUpEdges(branch: Branch, item: LookItem, who: BodyId, read: number, last: ActionItem | undefined): readonly Edge[] {
  const edges: Edge[] = [edge(read, 'read')];
  const settled = settledOf(branch, item, last);
  if (settled !== undefined) edges.push(edge(settled.done, 'legs'));
  const caught = ballAbove(branch, item);
  const got = caught && branch.settled.get(caught.key);
  if (item.holder === who && got?.got !== undefined) edges.push(edge(got.got, 'ball-order'));
  const readMs = Math.round(branch.scene.level.read * 1000);
  edges.push(varyingEdge(inSight(branch, item, last, settled), 'read', 0, readMs, 'read', item.look.id));
  return edges;
}

/** Off the screen; else the start of his last move; standing, the step's opening. */
function inSight(branch: Branch, item: LookItem, last: ActionItem | undefined, settled: Settled | undefined): number {
  const open = branch.opened.get(item.step) ?? branch.events[0]!;
  if (last === undefined || settled === undefined) return open;
  const uses = usedScreens(branch, last).map(({ screen }) => screen && branch.screens.get(screen.key)?.uses.get(last.action.who)).filter((event) => event !== undefined);
  const latest = uses[uses.length - 1] ?? settled.start;
  return whenOf(branch, latest) > whenOf(branch, open) ? latest : open;
}

/** A pin already past goes late, to where he then is, and is told. */
function tellLate(branch: Branch, item: LookItem, who: BodyId, read: number, settled: Settled | undefined): void {
  const { pin } = item.look;
  if (pin === undefined) return;
  const at = whenOf(branch, read);
  const pinned = pinEdge(branch, item, who);
  if (pinned === undefined) return;
  const wanted = whenOf(branch, pinned.from) + pinned.fixed;
  // A man who only seals, or stands where he popped to, is still there a moment later: one reading time is not late.
  const slack = Math.round(branch.scene.level.read * 1000);
  const moved = settled !== undefined && whenOf(branch, settled.done) > whenOf(branch, settled.start);
  if (pin.kind === 'on' && !moved) return;
  const past = (pin.kind === 'on' && settled !== undefined ? whenOf(branch, settled.done) : wanted) + slack;
  if (at <= past) return;
  if (pin.kind === 'at') tell(branch, problem('time-not-kept', item.look.id, { who, seconds: tenths(at - wanted) }, { moment: at }));
  else tell(branch, problem('pin-late', item.look.id, { who, seconds: tenths(at - past + slack) }, { moment: at }));
}

