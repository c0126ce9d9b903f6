import type { Play, StepKey } from '../play/play.ts';
import { settlePlay } from './schedule.ts';

/** When each step of a play opens, ms from the call: what reading asks for to repeat steps for a time. */
export function stepOpenings(play: Play): ReadonlyMap<StepKey, number> {
  const opens = new Map<StepKey, number>();
  for (const { events } of settlePlay(play).runs) for (const { kind, part, at } of events) if (kind === 'open') opens.set(part, at);
  return opens;
}
