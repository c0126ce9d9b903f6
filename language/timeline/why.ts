import type { Cause, EventId, Run, TimedEvent } from './timeline.ts';

export interface WhyStep {
  readonly event: TimedEvent;
  readonly cause: Cause;
}

/**
 * Why an event comes no earlier: its deciding cause, that one's, and so on back to the call. Empty for the call and for an event
 * that is not in the run.
 */
export function why(run: Run, event: EventId): readonly WhyStep[] {
  const byId = new Map(run.events.map((entry) => [entry.id, entry]));
  const chain: WhyStep[] = [];
  let at = byId.get(event);
  while (at?.because !== undefined && chain.length <= run.events.length) {
    chain.push({ event: at, cause: at.because });
    at = byId.get(at.because.from);
  }
  return chain;
}
