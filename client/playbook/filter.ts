// Which plays of a playbook are listed.
import type { PlayEntry } from '../../server/lsp/playbook-protocol.ts';

/** One of each kind that is not empty has to fit; `seconds` is what is left on the clock. */
export interface Filter {
  readonly against: readonly string[];
  readonly from: readonly string[];
  readonly tags: readonly string[];
  readonly seconds?: number;
}

export const everything: Filter = { against: [], from: [], tags: [] };

/** What can be filtered by beside the clock. */
export const kinds = ['against', 'from', 'tags'] as const;
export type Kind = (typeof kinds)[number];

export function fits(play: PlayEntry, { against, from, tags, seconds }: Filter): boolean {
  const anyOf = (wanted: readonly string[], has: readonly (string | null)[]) => wanted.length === 0 || wanted.some((one) => has.includes(one));
  const inTime = seconds === undefined || (play.first !== null && play.first.fromCall <= seconds);
  return anyOf(against, [play.against]) && anyOf(from, [play.from]) && anyOf(tags, play.tags) && inTime;
}

export const isFiltering = ({ against, from, tags, seconds }: Filter): boolean => against.length + from.length + tags.length > 0 || seconds !== undefined;

/** The words that can be chosen, each once, as these plays have them. */
export function choicesOf(plays: readonly PlayEntry[]): Readonly<Record<Kind, readonly string[]>> {
  const sorted = (words: readonly (string | null)[]) => [...new Set(words.filter((word) => word !== null))].sort((a, b) => a.localeCompare(b, 'en', { sensitivity: 'base' }) || (a < b ? -1 : 1));
  return { against: sorted(plays.map(({ against }) => against)), from: sorted(plays.map(({ from }) => from)), tags: sorted(plays.flatMap(({ tags }) => tags)) };
}
