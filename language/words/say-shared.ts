import type { PartId, Play } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';
import { sayList } from './say-list.ts';
import { wayName } from './way-name.ts';

/** The run-throughs that a part belongs to, where it is in more than one: `every run-through`, `“pull-up” for 3 and 4 on the roll`. */
export function sayShared(play: Play, runs: readonly Run[], part: PartId): string | undefined {
  const owner = part.replace(/#.*$/, '');
  const shared = owner === 'from' ? runs : runs.filter(({ events }) => events.some((event) => event.part === owner));
  if (shared.length < 2) return undefined;
  return shared.length === runs.length ? `${runs.length === 2 ? 'both' : 'all'} run-throughs` : sayList(shared.map(({ id }) => wayName(play, id)));
}
