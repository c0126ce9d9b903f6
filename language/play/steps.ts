// Which step follows which: keys, parents, loops. Only the step lines are looked at, no action.
import type { StepTree } from '../grammar/tree.ts';
import { nameKey } from '../names/name-key.ts';
import { numberedKeys, slugOf } from '../book/slug.ts';
import type { Step, StepKey } from './play.ts';
import type { Reader } from './reader.ts';
import { report } from './reader.ts';

/** A step as its line says it, before its actions are read. */
export interface StepHead {
  readonly key: StepKey;
  readonly name: string;
  /** The line it opens on; the unnamed first step opens on its first line. */
  readonly line: number;
  readonly tree?: StepTree;
  /** Lines that stand in it, by index in the block. */
  readonly lines: readonly number[];
}

export interface Link {
  readonly parent: StepKey | null;
  readonly how: Step['how'];
  readonly insteadOf?: StepKey;
}

export interface StepOrder {
  /** How each step hangs on the others; those left out are not here. */
  readonly links: ReadonlyMap<StepKey, Link>;
  /** Keys of the steps that can be played, each behind the ones it needs. */
  readonly order: readonly StepKey[];
}

/** Names and keys of the steps a block opens. `first` are lines above the first step that make an unnamed one. */
export function stepHeads(opened: readonly { readonly line: number; readonly name?: string; readonly tree?: StepTree; readonly lines: readonly number[] }[], given: readonly Step[] = []): StepHead[] {
  const nextKey = numberedKeys();
  for (const { name } of given) nextKey(slugOf(name));
  return opened.map(step => {
    const isUnnamedStart = step.tree === undefined && step.name === undefined && step.lines.includes(step.line);
    const { key, ordinal } = nextKey(isUnnamedStart ? 'start' : slugOf(step.name ?? 'unnamed'));
    const name = step.name?.trim() || (isUnnamedStart ? 'start' : `unnamed ${ordinal}`);
    return { key, name, line: step.line, lines: step.lines, ...(step.tree === undefined ? {} : { tree: step.tree }) };
  });
}

/** Hangs each step where its words put it (rule 2). `given` are steps of a play that this one mirrors: they stand before its own. */
export function orderSteps(reader: Reader, heads: readonly StepHead[], given: readonly Step[] = []): StepOrder {
  const byName = new Map<string, StepHead>();
  for (const { key, name } of given) if (!byName.has(nameKey(name))) byName.set(nameKey(name), { key, name, line: -1, lines: [] });
  for (const head of heads) {
    const known = byName.get(nameKey(head.name));
    if (known === undefined) byName.set(nameKey(head.name), head);
    else report(reader, 'duplicate-name', head.key, { kind: 'step', name: head.name }, [known.key]);
  }
  const wanted = new Map<StepKey, Wanted>();
  let lastPlain = given.findLast(({ how }) => how === 'plain')?.key;
  for (const head of heads) {
    const want = wantedOf(reader, head, byName, lastPlain);
    wanted.set(head.key, want);
    if (want.how === 'plain' && want.on !== null) lastPlain = head.key;
  }
  const links = new Map<StepKey, Link>(given.map(({ key, parent, how, insteadOf }) => [key, { parent, how, ...(insteadOf === undefined ? {} : { insteadOf }) }]));
  const order: StepKey[] = [];
  for (const head of heads) settle(head.key, { wanted, links, order, heads, reader }, new Set());
  reportTwoWays(reader, heads, links, given);
  return { links, order };
}

interface Wanted {
  readonly how: Step['how'];
  /** The step it names or, for a plain step, follows. `undefined` for the root and for `first`; `null` where the name is unknown. */
  readonly on: StepKey | null | undefined;
}

function wantedOf(reader: Reader, head: StepHead, byName: ReadonlyMap<string, StepHead>, lastPlain: StepKey | undefined): Wanted {
  const origin = head.tree?.origin;
  const model = head.tree?.mirrors;
  // Whose lines it takes over has to stand above.
  if (model !== undefined && (byName.get(nameKey(model))?.line ?? head.line) >= head.line) named(reader, head, model, new Map());
  if (origin === undefined) return { how: 'plain', on: lastPlain };
  switch (origin.$type) {
    case 'First':
      return { how: 'first', on: undefined };
    case 'After':
      return { how: 'after', on: named(reader, head, origin.step, byName) };
    case 'InsteadOf':
      return { how: 'instead', on: named(reader, head, origin.step, byName) };
    default: {
      // Its copies follow the last plain step, as a plain step would; which steps they copy has to stand above.
      const names = origin.$type === 'AgainFrom' ? [origin.step] : origin.steps;
      const known = names.every(name => (byName.get(nameKey(name))?.line ?? head.line) < head.line || named(reader, head, name, new Map()) !== null);
      return { how: 'plain', on: known ? lastPlain : null };
    }
  }
}

function named(reader: Reader, head: StepHead, name: string, byName: ReadonlyMap<string, StepHead>): StepKey | null {
  const found = byName.get(nameKey(name));
  if (found !== undefined) return found.key;
  report(reader, 'unknown-step', head.key, { name, step: head.name });
  return null;
}

interface Settling {
  readonly wanted: ReadonlyMap<StepKey, Wanted>;
  readonly links: Map<StepKey, Link>;
  readonly order: StepKey[];
  readonly heads: readonly StepHead[];
  readonly reader: Reader;
}

/** Settles a step after the one it hangs on; `undefined` where that cannot be. */
function settle(key: StepKey, at: Settling, onTheWay: Set<StepKey>): Link | undefined {
  const known = at.links.get(key);
  if (known !== undefined) return known;
  if (onTheWay.has(key)) {
    const head = at.heads.find(each => each.key === key);
    if (!at.reader.problems.some(problem => problem.code === 'step-loop' && onTheWay.has(problem.part))) report(at.reader, 'step-loop', key, { name: head?.name ?? key });
    return undefined;
  }
  const want = at.wanted.get(key);
  if (want === undefined || want.on === null) return undefined;
  const link = linkOf(want, at, new Set(onTheWay).add(key));
  if (link === undefined) return undefined;
  at.links.set(key, link);
  at.order.push(key);
  return link;
}

function linkOf(want: Wanted, at: Settling, onTheWay: Set<StepKey>): Link | undefined {
  if (want.on === undefined || want.on === null) return { parent: null, how: want.how };
  const on = settle(want.on, at, onTheWay);
  if (on === undefined) return undefined;
  return want.how === 'instead' ? { parent: on.parent, how: 'instead', insteadOf: want.on } : { parent: want.on, how: want.how };
}

/** Two ways on from one step need a word that parts them. */
function reportTwoWays(reader: Reader, heads: readonly StepHead[], links: ReadonlyMap<StepKey, Link>, given: readonly Step[]): void {
  const open = new Map<string, Pick<StepHead, 'key' | 'name'>>();
  for (const step of given) if (step.condition === undefined) open.set(step.parent ?? '', step);
  for (const head of heads) {
    const link = links.get(head.key);
    if (link === undefined || head.tree?.when !== undefined || head.tree?.otherwise === true) continue;
    const from = link.parent ?? '';
    const other = open.get(from);
    if (other === undefined) {
      open.set(from, head);
      continue;
    }
    const after = [...heads, ...given].find(each => each.key === link.parent)?.name ?? 'the start';
    report(reader, 'two-ways-on', head.key, { name: head.name, other: other.name, after }, [other.key]);
  }
}
