// What differs between two values of plain JSON, such as two playbacks of one play: after most keys that is a fraction of the whole, and
// what has not changed stays the same object for whoever keeps the last one.

/** `is`: another value. `keys`: an object with the same names, some of them changed. `items`: a list of `length`, changed or new at these places. */
export type Change =
  | { readonly is: unknown }
  | { readonly keys: Readonly<Record<string, Change>> }
  | { readonly items: Readonly<Record<string, Change>>; readonly length: number };

/** Of an object that has stayed the same. */
export const noChange: Change = { keys: {} };

/** What makes `after` of `before`, `undefined` where both are the same. Never larger than `after` itself by more than a few letters. */
export function changeBetween(before: unknown, after: unknown): Change | undefined {
  return compare(before, after).change;
}

/** `before` with what has changed; `undefined` where the change is not of such a value, or is none. */
export function withChange(before: unknown, change: unknown): unknown {
  if (!isObject(change)) return undefined;
  if ('is' in change) return change.is;
  if (isObject(change.keys) && isObject(before)) return withKeys(before, Object.entries(change.keys));
  if (isObject(change.items) && Array.isArray(before)) return withItems(before, Object.entries(change.items), change.length);
  return undefined;
}

interface Compared {
  readonly change: Change | undefined;
  /** About how much there is to send: values and names. */
  readonly size: number;
  readonly whole: number;
}

function compare(before: unknown, after: unknown): Compared {
  if (Array.isArray(after)) return Array.isArray(before) ? compareLists(before, after) : other(after);
  if (isObject(after)) return isObject(before) ? compareObjects(before, after) : other(after);
  return before === after ? { change: undefined, size: 0, whole: 1 } : other(after);
}

function other(after: unknown): Compared {
  const whole = sizeOf(after);
  return { change: { is: after }, size: whole, whole };
}

function compareObjects(before: Named, after: Named): Compared {
  const names = namesOf(after);
  const known = namesOf(before);
  // Names come in an order that may mean something: others, or others first, are another object.
  if (names.length !== known.length || names.some((name, i) => name !== known[i])) return other(after);
  return smaller(after, names.map((name) => [name, compare(before[name], after[name])]), (keys) => ({ keys }));
}

function compareLists(before: readonly unknown[], after: readonly unknown[]): Compared {
  const compared = after.map((item, i): [string, Compared] => [String(i), i < before.length ? compare(before[i], item) : other(item)]);
  return smaller(after, compared, (items) => ({ items, length: after.length }), before.length !== after.length);
}

function smaller(after: unknown, parts: readonly (readonly [string, Compared])[], made: (changed: Readonly<Record<string, Change>>) => Change, longer = false): Compared {
  let whole = 1;
  let size = 1;
  const changed: [string, Change][] = [];
  for (const [name, part] of parts) {
    whole += part.whole + 1;
    if (part.change === undefined) continue;
    // A place in a list, and a change's own name.
    size += part.size + 2;
    changed.push([name, part.change]);
  }
  if (changed.length === 0 && !longer) return { change: undefined, size: 0, whole };
  return size < whole ? { change: made(Object.fromEntries(changed)), size, whole } : { change: { is: after }, size: whole, whole };
}

function sizeOf(value: unknown): number {
  if (Array.isArray(value)) return value.reduce<number>((sum, item) => sum + sizeOf(item) + 1, 1);
  return isObject(value) ? namesOf(value).reduce((sum, name) => sum + sizeOf(value[name]) + 1, 1) : 1;
}

function withKeys(before: Named, changed: readonly (readonly [string, unknown])[]): unknown {
  const made = new Map(Object.entries(before));
  for (const [name, change] of changed) {
    const value = withChange(before[name], change);
    if (value === undefined) return undefined;
    made.set(name, value);
  }
  // Not by assignment: a name may be `__proto__`.
  return Object.fromEntries(made);
}

function withItems(before: readonly unknown[], changed: readonly (readonly [string, unknown])[], length: unknown): unknown {
  const made = before.slice(0, typeof length === 'number' ? length : 0);
  for (const [at, change] of changed) {
    const place = Number(at);
    const value = withChange(before[place], change);
    // What is new stands behind what was there, without a gap.
    if (value === undefined || !(place <= made.length)) return undefined;
    made[place] = value;
  }
  return made.length === length ? made : undefined;
}

type Named = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Named => typeof value === 'object' && value !== null && !Array.isArray(value);

/** JSON has no `undefined`: a name without a value is not there for whoever reads it. */
const namesOf = (value: Named): readonly string[] => Object.keys(value).filter((name) => value[name] !== undefined);
