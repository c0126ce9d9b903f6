// The forms of a coach's verbs: `cut`, `cuts`, `cut`; `post up`, `posts up`, `posted up`; `back-screen`, `back-screens`, `back-screened`.

// What English does not build by rule. The first word of a verb of several words is the one that changes.
const irregularPast: Readonly<Record<string, string>> = {
  bring: 'brought', catch: 'caught', cut: 'cut', drive: 'drove', get: 'got', give: 'gave', go: 'went', hold: 'held', is: 'was', keep: 'kept',
  lay: 'laid', make: 'made', reset: 'reset', run: 'ran', set: 'set', shoot: 'shot', step: 'stepped', swing: 'swung', take: 'took', throw: 'threw',
};

const doubled = /^(slip|pop|trap|tip|drop|clip|step|pin|skip|spot|sag|jog)$/;

/** `cut` → `cuts`, `pass` → `passes`, `post up` → `posts up`, `basket-cut` → `basket-cuts`. */
export function thirdPerson(base: string): string {
  return changeLast(base, (word) => {
    if (word === 'is') return 'is';
    if (/(s|x|z|ch|sh)$/.test(word)) return `${word}es`;
    if (/[^aeiou]y$/.test(word)) return `${word.slice(0, -1)}ies`;
    return /[^aeiou]o$/.test(word) ? `${word}es` : `${word}s`;
  });
}

/** `cut` → `cut`, `dribble` → `dribbled`, `hand off` → `handed off`, `back-cut` → `back-cut`. */
export function past(base: string): string {
  return changeLast(base, (word) => {
    const known = irregularPast[word];
    if (known !== undefined) return known;
    if (word.endsWith('e')) return `${word}d`;
    if (/[^aeiou]y$/.test(word)) return `${word.slice(0, -1)}ied`;
    return doubled.test(word) ? `${word}${word.at(-1)}ed` : `${word}ed`;
  });
}

/** The part of a verb that changes: the last piece of its first word (`basket-cut`, `post up`). */
function changeLast(base: string, change: (word: string) => string): string {
  const [first = '', ...rest] = base.split(' ');
  const at = first.lastIndexOf('-') + 1;
  return [first.slice(0, at) + change(first.slice(at)), ...rest].join(' ');
}
