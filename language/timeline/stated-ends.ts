/** How a way ends that states it (rule 23): `ends once 2 has the ball over half court`, `ends once 4 is set`. */
import type { BodyId, EventRef, Place, Step } from '../play/play.ts';
import type { Branch } from './branch.ts';
import { bodyAt, bodyOf, happen, tell, whenOf } from './branch.ts';
import { edge } from './graph.ts';
import { problem } from './problem-codes.ts';
import { eventNumber, spokenOf } from './waits.ts';
import { passingBy } from './ways.ts';
import { pointOf, standingOf } from './where.ts';

/** The event of the stated end; without one that comes about, when the last thing with the ball is done. */
export function endAsStated(branch: Branch, step: Step): number {
  const { event } = step.end!;
  const found = event && statedEvent(branch, step, event);
  const from = found?.from ?? branch.ball[branch.ball.length - 1]?.end ?? branch.opened.get(step.key)!;
  if (event !== undefined && found === undefined) tell(branch, problem('end-never-comes', step.end!.part, { who: event.who }));
  return happen(branch, `${step.key}:end`, 'end', step.key, undefined, [edge(from, found === undefined ? 'ball-order' : 'written-wait', found?.after ?? 0)]);
}

/** So many ms after an event. */
interface Moment {
  readonly from: number;
  readonly after: number;
}

function statedEvent(branch: Branch, step: Step, event: EventRef): Moment | undefined {
  if (event.does === 'reach' && event.place !== undefined) return isHalfCourt(event.place) ? overHalfCourt(branch, event.who) : reached(branch, event.who, event.place);
  const spoken = spokenOf(branch, { order: Number.POSITIVE_INFINITY, step: step.key }, event);
  const from = spoken && eventNumber(branch, spoken, false);
  return from === undefined ? undefined : { from, after: 0 };
}

function isHalfCourt(place: Place): boolean {
  return place.kind === 'spot' && place.name === 'half court' && place.side === undefined;
}

const stepMs = 20;

/** He has the ball and is over the line with it: the later of his catch and his crossing. */
function overHalfCourt(branch: Branch, who: BodyId): Moment | undefined {
  if (!branch.bodies.has(who)) return undefined;
  const body = bodyOf(branch, who);
  const { halfLineY } = branch.scene.court;
  for (const { from, since, until } of holdings(branch, who)) {
    for (let at = since; at <= Math.min(until, Math.max(since, body.until)); at += stepMs) if (bodyAt(body, at).y <= halfLineY) return { from, after: at - since };
    if (body.until <= until && body.place.y <= halfLineY) return { from, after: Math.max(0, body.until - since) };
  }
  return undefined;
}

/** When he has the ball: from his catch, his take or the call until it leaves his hand. */
function holdings(branch: Branch, who: BodyId): readonly { readonly from: number; readonly since: number; readonly until: number }[] {
  const call = branch.events[0]!;
  const gets = branch.ball.flatMap((link) => ((link.kind === 'pass' || link.kind === 'hand-off') && link.to === who ? [link.end] : []));
  const lets = branch.ball.flatMap((link) => (link.kind !== 'dribble' && link.by === who ? [whenOf(branch, link.kind === 'hand-off' ? link.end : link.begin)] : []));
  const first = branch.ball[0];
  const starts = first === undefined ? branch.holder === who : first.by === who;
  return [...(starts ? [call] : []), ...gets].map((from) => {
    const since = whenOf(branch, from);
    return { from, since, until: lets.find((at) => at >= since) ?? Number.POSITIVE_INFINITY };
  });
}

function reached(branch: Branch, who: BodyId, place: Place): Moment | undefined {
  if (!branch.bodies.has(who)) return undefined;
  const by = passingBy(bodyOf(branch, who).stretches, pointOf(branch, place, standingOf(branch, who, undefined)), 0);
  return by && { from: branch.events[0]!, after: by.when };
}
