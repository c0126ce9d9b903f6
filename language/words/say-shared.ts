import { allOf, message, type Words } from '../message/message.ts';
import type { PartId, Play } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';
import { wayName } from './way-name.ts';

/** The run-throughs that a part belongs to, where it is in more than one: `every run-through`, `“pull-up” for 3 and 4 on the roll`. */
export function sayShared(play: Play, runs: readonly Run[], part: PartId): Words | undefined {
  const owner = part.replace(/#.*$/, '');
  const shared = owner === 'from' ? runs : runs.filter(({ events }) => events.some((event) => event.part === owner));
  if (shared.length < 2) return undefined;
  return shared.length === runs.length ? (runs.length === 2 ? message('both run-throughs') : message('all run-throughs')) : allOf(shared.map(({ id }) => wayName(play, id)));
}
