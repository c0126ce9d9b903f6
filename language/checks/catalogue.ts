// Every code a finding can carry: its severity, its words, its manual entry. `explain`, the reference and `allow` read it.
import { allChecks } from './all.ts';
import { allowanceEntries } from './allowance-entries.ts';
import type { Entry } from './check.ts';
import { notationNewer } from './notation-newer.ts';
import { pacesNotCounted } from './paces-not-counted.ts';
import { toldByLines } from './told-by-lines.ts';
import { toldByReading } from './told-by-reading.ts';
import { toldByTimeline } from './told-by-timeline.ts';

/** As they are declared; a code stands here once. */
export const entries: readonly Entry[] = [...(allChecks as readonly Entry[]), ...Object.values<Entry>(toldByLines), ...Object.values<Entry>(toldByReading), ...Object.values<Entry>(toldByTimeline), ...allowanceEntries, notationNewer, pacesNotCounted];

export const catalogue: Readonly<Record<string, Entry>> = Object.fromEntries(entries.map((entry) => [entry.code, entry]));

/** The entry of a code; `undefined` for a code of a lower layer that a check tells in its own way. */
export function entryOf(code: string): Entry | undefined {
  return Object.hasOwn(catalogue, code) ? catalogue[code] : undefined;
}

export function isCode(text: string): boolean {
  return Object.hasOwn(catalogue, text);
}
