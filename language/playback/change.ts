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
  return compare(before, after, { whole: 0, changed: 0 });
}

/** `before` with what has changed; `undefined` where the change is not of such a value, or is none. */
export function withChange(before: unknown, change: unknown): unknown {
  if (!isObject(change)) return undefined;
  if ('is' in change) return change.is;
  if (isObject(change.keys) && isObject(before)) return withKeys(before, Object.entries(change.keys));
  if (isObject(change.items) && Array.isArray(before)) return withItems(before, Object.entries(change.items), change.length);
  return undefined;
}

/**
 * About how much there is to send, values and names: of all that has been compared so far, and of what has changed in it. One counter for a whole
 * comparison: most values are the same after a key, and an object for each would be most of the work.
 */
interface Size {
  whole: number;
  changed: number;
}

function compare(before: unknown, after: unknown, size: Size): Change | undefined {
  if (Array.isArray(after)) return Array.isArray(before) ? compareLists(before, after, size) : other(after, size);
  if (isObject(after)) return isObject(before) ? compareObjects(before, after, size) : other(after, size);
  if (before !== after) return other(after, size);
  size.whole++;
  return undefined;
}

function other(after: unknown, size: Size): Change {
  const whole = sizeOf(after);
  size.whole += whole;
  size.changed += whole;
  return { is: after };
}

function compareObjects(before: Named, after: Named, size: Size): Change | undefined {
  // Names come in an order that may mean something: others, or others first, are another object.
  const names = namesOf(after);
  const known = namesOf(before);
  if (!sameNames(names, known)) return other(after, size);
  const { whole, changed } = size;
  size.whole++;
  let keys: [string, Change][] | undefined;
  for (const name of names) {
    const change = compare(before[name], after[name], size);
    size.whole++;
    if (change === undefined) continue;
    // Its name.
    size.changed += 2;
    (keys ??= []).push([name, change]);
  }
  // Not by assignment: a name may be `__proto__`.
  return keys === undefined ? undefined : smaller({ keys: Object.fromEntries(keys) }, after, size, whole, changed);
}

function compareLists(before: readonly unknown[], after: readonly unknown[], size: Size): Change | undefined {
  const { whole, changed } = size;
  size.whole++;
  let items: Record<string, Change> | undefined;
  for (let i = 0; i < after.length; i++) {
    const change = i < before.length ? compare(before[i], after[i], size) : other(after[i], size);
    size.whole++;
    if (change === undefined) continue;
    // Its place.
    size.changed += 2;
    (items ??= {})[i] = change;
  }
  if (items === undefined && before.length === after.length) return undefined;
  return smaller({ items: items ?? {}, length: after.length }, after, size, whole, changed);
}

/** The change, or the value itself where that is less to send. `whole` and `changed`: what had been counted before this value. */
function smaller(change: Change, after: unknown, size: Size, whole: number, changed: number): Change {
  size.changed++;
  if (size.changed - changed < size.whole - whole) return change;
  size.changed = changed + size.whole - whole;
  return { is: after };
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
function namesOf(value: Named): readonly string[] {
  const names = Object.keys(value);
  for (const name of names) if (value[name] === undefined) return names.filter((one) => value[one] !== undefined);
  return names;
}

function sameNames(names: readonly string[], others: readonly string[]): boolean {
  if (names.length !== others.length) return false;
  for (let i = 0; i < names.length; i++) if (names[i] !== others[i]) return false;
  return true;
}
