// The player's own words and how it prints numbers. Coach's English, in one place.
import type { Playback } from '../../language/playback/playback.ts';
import { levelAtStart } from '../../language/words/say-level.ts';
import { rulesWords } from '../../language/words/say-rules.ts';
import { sayTenths } from '../../language/words/say-seconds.ts';
import { message, type Words } from '../../language/message/message.ts';
import { tell } from './tell.ts';

/** For whom a play is, by whose rules, against which defence, and what it is found by. A line breaks behind a dot, never before it, nor inside a tag. */
export function factsOf({ level, rules, against, tags }: Playback['play'], ...before: readonly string[]): string {
  const defence = against === undefined ? [] : [tell(againstWords(against)).replaceAll(' ', '\u00a0')];
  return [...before, tell(levelAtStart(level)), tell(rulesWords(rules)), ...defence, ...tags.filter((tag) => !saysAgain(tag, against)).map(tagWords)].join('\u00a0· ');
}

type Against = NonNullable<Playback['play']['against']>;

function againstWords({ zone, press }: Against): Words {
  if (zone === undefined) return press ? message('against a man press') : message('against man');
  return press ? message('against a {zone} press', { zone }) : message('against a {zone} zone', { zone });
}

/** A tag that names the defence as well, as plays are sorted by it. */
function saysAgain(tag: string, against: Against | undefined): boolean {
  if (against === undefined) return false;
  const { zone, press } = against;
  return (zone === undefined ? ['man', 'man-to-man'] : ['zone', zone, `${zone}-zone`]).includes(tag) || (press === true && tag === 'press');
}

/** `last-shot` is two words; a throw-in is one. */
const tagWords = (tag: string): string => tag.replaceAll('-', '\u00a0').replaceAll('throw\u00a0in', 'throw\u2011in');

/** `8.8` of 8,712 ms, as every message prints it. */
export const tenths = (ms: number): string => sayTenths(Math.max(0, ms));

/** A game clock: `1:04` from a minute up, `24.3` below. Tenths round up: the clock shows 0.0 only when time is out. */
export function clockWords(seconds: number): string {
  const left = Math.max(0, seconds);
  if (left >= 60) return `${Math.floor(Math.ceil(left) / 60)}:${String(Math.ceil(left) % 60).padStart(2, '0')}`;
  return (Math.ceil(left * 10 - 1e-6) / 10).toFixed(1);
}

export const speedWords = (speed: number): string => ({ 0.25: '¼ ×', 0.5: '½ ×' })[speed] ?? `${speed} ×`;

/** No line breaks at a hyphen: `hand-over` is one word. */
export const unbroken = (text: string): string => text.replaceAll(/(?<=\p{L})-(?=\p{L})/gu, '\u2011');

/** The first letter large, as at the head of a line. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
