import type { Source } from '../../language/court/sources.ts';

/** What a finding rests on, with how sure that is. */
export function saySource({ text, how }: Source): string {
  return text.includes(how) ? text : `${text} (${how})`;
}
