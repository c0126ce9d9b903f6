/** Written waits and times (rule 18): which event they speak of, and the edges they make. */
import { distance } from '../court/point.ts';
import { endOf } from '../play/default-ends.ts';
import type { Action, ActionId, BodyId, EventRef, Place, Wait } from '../play/play.ts';
import type { ActionItem, Branch, Item, Need, Settled } from './branch.ts';
import { bodyOf, tell, whenOf, withOne } from './branch.ts';
import type { Edge } from './graph.ts';
import { delayed, edge, varyingEdge } from './graph.ts';
import { isKept, nearestAbove } from './items.ts';
import { problem } from './problem-codes.ts';
import { isRunning, type Running } from './running.ts';
import { usedScreens } from './screens.ts';
import { gapToLine, passingBy } from './ways.ts';
import { atThePlace, pointOf, situationOf, standingOf } from './where.ts';

/** The action a wait speaks of, and which of its moments. */
export interface Spoken {
  readonly item: ActionItem;
  /** `done` for everything but a catch (somebody else's pass) and a screen passed. */
  readonly moment: 'done' | 'got' | 'start' | 'there' | 'in';
  readonly screen?: ActionId;
}

export function waitNeeds(branch: Branch, item: ActionItem): readonly Need[] {
  const needs: Need[] = [];
  for (const wait of item.action.waits) {
    if (wait.kind === 'later' || wait.kind === 'clock' || item.dropped.has(wait)) continue;
    const spoken = spokenOf(branch, item, wait.event);
    if (spoken !== undefined && spoken.item.key !== item.key) needs.push({ on: spoken.item.key, tie: 'wait', wait });
    else {
      item.dropped = withOne(item.dropped, wait);
      if (!isKept(branch, item)) tell(branch, problem('wait-unknown', wait.part, { who: wait.event.who, does: wait.event.does.replaceAll('-', ' ') }, { related: [item.key] }));
    }
  }
  return needs;
}

/** The latest such event above on this path, else the first below it in the same step; what is called otherwise there counts where nothing has its name. */
export function spokenOf(branch: Branch, item: { readonly order: number; readonly step: string }, event: EventRef): Spoken | undefined {
  const found = eventFor(branch, item, (other) => fits(branch, other, event)) ?? eventFor(branch, item, (other) => fitsInOtherWords(other, event));
  return found && momentOf(branch, found, event);
}

function eventFor(branch: Branch, item: { readonly order: number; readonly step: string }, isMeant: (other: Item) => boolean): ActionItem | undefined {
  const above = nearestAbove(branch, item, (other): other is ActionItem => isMeant(other));
  return above ?? branch.items.find((other): other is ActionItem => other.order > item.order && other.step === item.step && isMeant(other));
}

const receives = new Set(['catch', 'receive', 'take', 'get']);
const passes = new Set(['pass', 'release', 'throw', 'swing', 'reverse', 'inbound', 'skip', 'lob']);
const arrives = new Set(['reach', 'arrive', 'get', 'be']);

function fits(branch: Branch, other: Item, event: EventRef): boolean {
  if (other.kind !== 'action') return false;
  const { action } = other;
  const { does, who } = event;
  if (receives.has(does) && event.place === undefined) return (action.kind === 'pass' || action.kind === 'hand-off') && action.to === who;
  if (action.who !== who) return false;
  if (action.verb === does) return event.other === undefined || speaksOf(action, event.other);
  if (does === 'set' || does === 'screen') return action.kind === 'screen' && (event.other === undefined || action.users.includes(event.other));
  if ((does === 'clear' || does === 'come-off') && event.other !== undefined) return goesOff(branch, other, event.other);
  if (does === 'come-off') return (action.kind === 'move' || action.kind === 'dribble') && action.off.length > 0;
  // Who is open has run his way, or is by his screener.
  if (does === 'open') return action.kind === 'move';
  if (does === 'leave') return event.place !== undefined && leaves(branch, other, event.place);
  if (arrives.has(does)) return (action.kind === 'move' || action.kind === 'dribble') && (event.place === undefined || reaches(branch, action, event));
  if (passes.has(does)) return action.kind === 'pass' && (event.other === undefined || action.to === event.other);
  if (does === 'shoot') return action.kind === 'shot';
  if (does === 'hand-off' || does === 'hand') return action.kind === 'hand-off';
  if (does === 'drive' || does === 'dribble') return action.kind === 'dribble' && (does === 'dribble' || action.style === 'drive');
  return action.kind === 'move' && action.style === does;
}

const sets: ReadonlySet<string> = new Set(['move', 'run', 'sprint']);
const drives: ReadonlySet<string> = new Set(['drive', 'turn-the-corner', 'dribble', 'come-off']);

/** `as 1 goes` of a man who drives off a screen, `as 1 drives` of one who goes right off it, `as 2 steps in` of the thrower, who does so untold (rule 14). */
function fitsInOtherWords(other: Item, { does, who }: EventRef): boolean {
  if (other.kind !== 'action' || other.action.who !== who) return false;
  const { action } = other;
  if (does === 'step-in') return action.kind === 'pass' && action.throwIn;
  // `once 4 has given it up`
  if (does === 'pass') return action.kind === 'hand-off';
  // Past a man who does not screen for him.
  if (does === 'clear') return action.kind === 'move';
  const goes = action.kind === 'dribble' && action.style !== 'keep';
  return (goes && (sets.has(does) || drives.has(does))) || (action.kind === 'move' && sets.has(does));
}

function speaksOf(action: Action, other: BodyId): boolean {
  if (action.kind === 'pass' || action.kind === 'hand-off') return action.to === other;
  if (action.kind === 'screen') return action.users.includes(other);
  if (action.kind === 'move' || action.kind === 'dribble') return action.off.length === 0 || action.off.includes(other);
  return true;
}

function goesOff(branch: Branch, item: ActionItem, screener: BodyId): boolean {
  const { action } = item;
  if (action.kind !== 'move' && action.kind !== 'dribble') return false;
  return usedScreens(branch, item).some(({ by }) => by === screener);
}

/** Whether a way begins at the place: where his way before it ends, or where he stands at the call. */
function leaves(branch: Branch, item: ActionItem, place: Place): boolean {
  if (!isRunning(item)) return false;
  const { who } = item.action;
  const standing = standingOf(branch, who, undefined);
  const before = nearestAbove(branch, item, (other): other is Running => isRunning(other) && other.action.who === who);
  const from = before === undefined ? bodyOf(branch, who).home : endOf(before.action, situationOf(branch, standing));
  return distance(from, pointOf(branch, place, { ...standing, own: from })) < atThePlace;
}

/** Whether a move goes to the place, or through it on its way. */
function reaches(branch: Branch, action: Action, event: EventRef): boolean {
  if (action.kind !== 'move' && action.kind !== 'dribble') return false;
  const standing = standingOf(branch, action.who, undefined);
  const wanted = event.place && pointOf(branch, event.place, standing);
  if (wanted === undefined) return false;
  // `the elbow` without a side is the one he goes to.
  const { place } = event;
  if (place?.kind === 'spot' && place.side === undefined && action.to?.value.kind === 'spot' && action.to.value.name === place.name) return true;
  const ends = [...action.via, ...(action.to ? [action.to.value] : [])].map((place) => pointOf(branch, place, standing));
  let from = bodyOf(branch, action.who).home;
  return ends.some((end) => {
    if (end === undefined) return false;
    const near = gapToLine(from, end, wanted) < atThePlace;
    from = end;
    return near;
  });
}

function momentOf(branch: Branch, item: ActionItem, event: EventRef): Spoken {
  const { action } = item;
  if (receives.has(event.does) && (action.kind === 'pass' || action.kind === 'hand-off')) return { item, moment: 'got' };
  const clears = event.does === 'clear' || event.does === 'come-off' || event.does === 'come' || event.does === 'open';
  if (clears && (event.other !== undefined || event.does === 'come-off' || event.does === 'open') && (action.kind === 'move' || action.kind === 'dribble')) {
    const used = usedScreens(branch, item).find(({ by, screen }) => (event.other === undefined || by === event.other) && screen !== undefined);
    if (used?.screen !== undefined) return { item, moment: 'done', screen: used.screen.key };
  }
  if (event.does === 'step-in' && action.kind === 'pass') return { item, moment: 'in' };
  if (event.does === 'leave') return { item, moment: 'start' };
  return { item, moment: arrives.has(event.does) && event.place !== undefined ? 'there' : 'done' };
}

/** The event itself once its action is settled; `as` asks for its start. */
export function eventNumber(branch: Branch, spoken: Spoken, start: boolean): number | undefined {
  const settled: Settled | undefined = branch.settled.get(spoken.item.key);
  if (settled === undefined) return undefined;
  if (spoken.screen !== undefined) return branch.screens.get(spoken.screen)?.uses.get(spoken.item.action.who) ?? settled.done;
  if (spoken.moment === 'got') return settled.got ?? settled.done;
  if (spoken.moment === 'in') return start ? settled.released : settled.free;
  // One reaches a place when he is there, not when he leaves for it.
  if (spoken.moment === 'start' || (start && spoken.moment !== 'there')) return settled.start;
  // Of a pass his own "passes" is the release: for the passer it is done then.
  return settled.released ?? settled.done;
}

/** `as E`: with it; `once`, `when`: done and one reaction; `a second after E`: that much later; `until`: done; clock words pin to a time. */
export function waitEdges(branch: Branch, item: ActionItem): readonly Edge[] {
  const edges: Edge[] = [];
  for (const wait of item.action.waits) {
    if (item.dropped.has(wait) || wait.kind === 'later') continue;
    // It ends a hold and does not keep it from beginning.
    if (wait.kind === 'until' && item.action.kind === 'hold') continue;
    if (wait.kind === 'clock') {
      const pinned = clockEdge(branch, item, wait);
      if (pinned !== undefined) edges.push(pinned);
      continue;
    }
    const spoken = spokenOf(branch, item, wait.event);
    const event = spoken && eventNumber(branch, spoken, wait.kind === 'as' || (wait.kind === 'after' && setsOut(spoken, wait.event)));
    if (event === undefined) continue;
    const onTheWay = spoken && reachedOnTheWay(branch, spoken.item, wait.event);
    const [from, ms] = onTheWay === undefined ? [event, 0] : [branch.settled.get(spoken!.item.key)!.start, onTheWay];
    if (wait.kind === 'as' || wait.kind === 'until') edges.push(edge(from, 'written-wait', ms));
    else if (wait.kind === 'after') edges.push(edge(from, 'written-wait', ms + Math.round(wait.seconds * 1000)));
    else edges.push(delayed(reactionEdge(branch, from, 'written-wait', item), ms));
  }
  return edges;
}

/** `a second after 3 cuts` counts from when he sets out; what else is done, arrived at or caught, from then. */
export function setsOut({ item: { action }, moment }: Spoken, { does }: EventRef): boolean {
  return moment === 'done' && (action.kind === 'move' || action.kind === 'dribble') && !arrives.has(does) && does !== 'clear';
}

/** `once 1 reaches the lane`, who goes on beyond it: when he comes by, ms after he started. */
function reachedOnTheWay(branch: Branch, { action, key }: ActionItem, event: EventRef): number | undefined {
  const settled = branch.settled.get(key);
  if (!arrives.has(event.does) || event.place === undefined || settled === undefined || !branch.bodies.has(action.who)) return undefined;
  const start = whenOf(branch, settled.start);
  const stretches = bodyOf(branch, action.who).stretches.filter(({ segment }) => segment.action === action.id);
  const by = passingBy(stretches, pointOf(branch, event.place, standingOf(branch, action.who, undefined)), start);
  return by === undefined || by.when >= whenOf(branch, settled.done) ? undefined : by.when - start;
}

/** One reaction of the actor after somebody else's event; after his own, none. */
export function reactionEdge(branch: Branch, event: number, reason: Edge['reason'], item: ActionItem): Edge {
  const actor = branch.scene.graph.events[event]!.timed.who;
  if (actor === item.action.who) return edge(event, reason);
  return varyingEdge(event, reason, 0, Math.round(branch.scene.level.reaction * 1000), 'reaction', item.key);
}

/** `2 seconds later`, all told, ms. */
export function laterMs(item: ActionItem): number {
  let ms = 0;
  for (const wait of item.action.waits) if (wait.kind === 'later' && !item.dropped.has(wait)) ms += Math.round(wait.seconds * 1000);
  return ms;
}

function clockEdge(branch: Branch, item: ActionItem, wait: Extract<Wait, { kind: 'clock' }>): Edge | undefined {
  const at = clockMoment(branch, wait);
  if (at === undefined) {
    item.dropped = withOne(item.dropped, wait);
    tell(branch, problem('clock-unknown', wait.part, { who: item.action.who, clock: wait.clock }));
    return undefined;
  }
  return edge(at.event, 'written-wait', at.ms);
}

/** The event a clock word counts from, and ms after it. The clocks run from the call, on a throw-in from the touch. */
export function clockMoment(branch: Branch, wait: { readonly clock: 'period' | 'shot' | 'start' | 'call'; readonly seconds: number }): { readonly event: number; readonly ms: number } | undefined {
  const { clock, start } = branch.scene.play;
  const ms = Math.round(wait.seconds * 1000);
  const call = branch.events[0]!;
  if (wait.clock === 'call' || (wait.clock === 'start' && start.throwIn !== undefined)) return { event: call, ms };
  if (wait.clock === 'start') return { event: branch.opened.get(branch.steps[0]!) ?? call, ms };
  const full = wait.clock === 'shot' ? clock.shotClock : clock.call?.to;
  if (full === undefined) return undefined;
  const touch = start.throwIn === undefined ? undefined : branch.ball.find((link) => link.kind === 'pass' && link.throwIn);
  return { event: touch?.end ?? call, ms: Math.max(0, Math.round(full * 1000) - ms) };
}

/** Written times that the rest of the play does not allow (rules 18, 22), once the start is known. */
export function tellMissedTimes(branch: Branch, item: ActionItem, startsAt: number): void {
  for (const wait of item.action.waits) {
    if (wait.kind !== 'clock' || item.dropped.has(wait)) continue;
    const at = clockMoment(branch, wait);
    if (at === undefined) continue;
    const wanted = branch.scene.graph.events[at.event]!.timed.at + at.ms;
    const late = startsAt - wanted;
    if (late > 50) tell(branch, problem('time-not-kept', wait.part, { who: item.action.who, seconds: Math.round(late / 100) / 10 }, { related: [item.key], moment: startsAt }));
  }
}

/** `holds until …`: the event that ends it. */
export function untilEvent(branch: Branch, item: ActionItem): number | undefined {
  for (const wait of item.action.waits) {
    if (wait.kind !== 'until' || item.dropped.has(wait)) continue;
    const spoken = spokenOf(branch, item, wait.event);
    const event = spoken && eventNumber(branch, spoken, false);
    if (event !== undefined) return event;
  }
  return undefined;
}

