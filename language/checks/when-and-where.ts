// On which way, when and on which spot a finding is to be seen, for those that only name an action, a look or a line.
import type { Finding } from './finding.ts';
import type { Found } from './check.ts';
import { ownerOf } from './parts.ts';
import type { Subject } from './subject.ts';
import type { Run } from '../timeline/timeline.ts';
import { trackAt } from '../timeline/track.ts';

/** Whether a run goes through these steps first; without any, each does. */
export function beginsWith({ steps }: Run, first: readonly string[] = []): boolean {
  return first.every((step, at) => steps[at] === step);
}

/** What the finding brings itself counts; the rest is the first moment of its part, on the first way that has one. */
export function whenAndWhere({ ways }: Subject, found: Found): Pick<Finding, 'run' | 'moment' | 'spot'> {
  const part = ownerOf(found.part);
  const way = ways.find(({ run }) => (found.run === undefined ? beginsWith(run, found.steps) && run.events.some((event) => event.part === part) : run.id === found.run));
  const event = way?.run.events.find((one) => one.part === part);
  const moment = found.moment ?? event?.at;
  // What never comes about has no way on which it could be shown.
  const run = found.run ?? (moment === undefined ? undefined : way?.run.id);
  const track = event?.who === undefined ? undefined : way?.run.tracks[event.who];
  const spot = found.spot ?? (track === undefined || moment === undefined ? undefined : trackAt(track, moment));
  return { ...(run !== undefined && { run }), ...(moment !== undefined && { moment }), ...(spot !== undefined && { spot }) };
}
