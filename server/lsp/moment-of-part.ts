import type { Compiled } from '../../language/compile.ts';
import type { PartId } from '../../language/play/play.ts';
import type { Run } from '../../language/timeline/timeline.ts';

/** Where a part is in time, ms from the call: an action's start, a step's opening, a look's release; 0 for a header. */
export function momentOf(compiled: Compiled, part: PartId): number | undefined {
  const run = runOf(compiled, part);
  if (run === undefined) return isHeader(part) ? 0 : undefined;
  if (run.look === part) return run.releaseAt ?? run.end;
  const events = run.events.filter((event) => event.part === part);
  return events.length === 0 ? undefined : Math.min(...events.map(({ at }) => at));
}

/** The run-through a part is told on: a look's own, else the first that has it. */
export function runOf({ timeline }: Compiled, part: PartId): Run | undefined {
  return timeline.runs.find(({ look }) => look === part) ?? timeline.runs.find(({ events }) => events.some((event) => event.part === part));
}

const isHeader = (part: PartId): boolean => !/[/?:]/.test(part);
