import type { Source } from '../court/point.ts';
import type { Ground } from './check.ts';

/** What a finding or a code rests on, and how we know it, for people. */
export function restsOn(source: Source | Ground): string {
  if (typeof source === 'string') return source;
  const { text, how } = source;
  if (how === 'read' || text.includes(how)) return text;
  return how.startsWith(text) ? how : `${text} (${how})`;
}
