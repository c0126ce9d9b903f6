// When a player’s job begins, and where he stands without one: from a run-through as it was settled.
import type { Point } from '../court/point.ts';
import type { Action, BodyId, StepKey } from '../play/play.ts';
import type { EventKind, Run } from '../timeline/timeline.ts';
import { isTo } from './to-a-man.ts';

const begins: ReadonlySet<EventKind> = new Set(['start', 'release', 'set', 'take', 'shot']);
const comes: ReadonlySet<EventKind> = new Set(['catch', 'take']);

/** When he does it, or when it comes to him: its earliest event of his in a run. Of a hand-off both have the ball's. */
export function eventOf(run: Run, action: Action, who: BodyId): number | undefined {
  const kinds = action.who === who || !isTo(action, who) ? begins : comes;
  const times = run.events.filter((event) => event.part === action.id && kinds.has(event.kind) && (event.who === undefined || event.who === who || event.kind === 'take')).map(({ at }) => at);
  return times.length === 0 ? undefined : Math.min(...times);
}

/** The first run in which it happens. */
export function momentOfAction(runs: readonly Run[], action: Action, who: BodyId): { readonly at?: number; readonly run?: string } {
  for (const run of runs) {
    const at = eventOf(run, action, who);
    if (at !== undefined) return { at, run: run.id };
  }
  return {};
}

/** Where the steps before this one leave him. */
export function restingPlace({ steps, tracks, releaseAt = Infinity }: Run, step: StepKey, who: BodyId): Point | undefined {
  const track = tracks[who];
  const later = steps.slice(steps.indexOf(step));
  const before = track?.segments.filter(({ action, t0 }) => t0 < releaseAt && !later.some((key) => action.startsWith(`${key}/`) || action.startsWith(`${key}?`)));
  return before?.at(-1)?.path.at(-1) ?? track?.start;
}
