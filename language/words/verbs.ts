// The forms of a coach's verbs: `cut`, `cuts`; `post up`, `posts up`; `back-screen`, `back-screens`.
import { verbs } from '../grammar/verbs.ts';

/** Bases that stand for several words. */
const spelledOut: Readonly<Record<string, string>> = { 'keep dribble': 'keep his dribble', 'same cut': 'make the same cut', 'have ball': 'have the ball', 'pick up': 'pick up his dribble' };

/** A play's verbs have hyphens for blanks (`post-up`). */
const keyOf = (base: string) => base.replaceAll(' ', '-');
const rows = [...verbs].filter(([, { number }]) => number === 'singular').map(([singular, { base }]) => [keyOf(base), { singular, base }] as const);
/** The first row of a base counts: `cuts` of `cut`. */
const byKey: ReadonlyMap<string, { readonly singular: string; readonly base: string }> = new Map(rows.reverse());

/** `cut` → `cuts`, `post-up` → `posts up`, `basket-cut` → `basket-cuts`: reads back to the same verb. */
export function thirdPerson(verb: string): string {
  return byKey.get(keyOf(verb))?.singular ?? changeFirst(verb, (word) => (/(s|x|z|ch|sh)$/.test(word) ? `${word}es` : `${word}s`));
}

/** `hand-off` → `hand off`, `back-cut` → `back-cut`, `keep-dribble` → `keep his dribble`. */
export function infinitive(verb: string): string {
  const base = byKey.get(keyOf(verb))?.base ?? verb;
  return spelledOut[base] ?? base;
}

/** The part of a verb that changes: the last piece of its first word (`basket-cut`, `post up`). */
function changeFirst(base: string, change: (word: string) => string): string {
  const [first = '', ...rest] = base.split(' ');
  const at = first.lastIndexOf('-') + 1;
  return [first.slice(0, at) + change(first.slice(at)), ...rest].join(' ');
}
