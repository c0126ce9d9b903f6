// What has become of the sections of a book: which there are, in which order, and which plays stand in them.
import { nameKey } from '../names/name-key.ts';
import { changedLines } from './changed-lines.ts';

export interface SectionVersion {
  readonly name: string;
  /** Names as they are written, in order. */
  readonly plays: readonly string[];
}

export type SectionChange =
  | { readonly kind: 'came' | 'went'; readonly section: string; readonly plays: readonly string[] }
  | { readonly kind: 'renamed'; readonly was: string; readonly section: string }
  | { readonly kind: 'moved'; readonly play: string; readonly from: string; readonly to: string }
  | { readonly kind: 'put-in'; readonly play: string; readonly to: string }
  /** `still`: the sections in which it stands all the same. */
  | { readonly kind: 'taken-out'; readonly play: string; readonly from: string; readonly still: readonly string[] }
  /** The whole new order, of the plays of a section, or without one of the sections themselves. */
  | { readonly kind: 'order'; readonly section?: string; readonly names: readonly string[] };

/** `renamed`: by the key of a play's earlier name what it is called now. */
export function compareSections(before: readonly SectionVersion[], after: readonly SectionVersion[], renamed: ReadonlyMap<string, string>): readonly SectionChange[] {
  const was: readonly SectionVersion[] = before.map(({ name, plays }) => ({ name, plays: plays.map((play) => renamed.get(nameKey(play)) ?? play) }));
  const pairs = pairSections(was, after);
  const known = new Set(pairs.values());
  const gone = was.filter((one) => !known.has(one));
  const together = [...pairs].map(([now, then]) => ({ now, then }));
  return [
    ...after.filter((now) => !pairs.has(now)).map(({ name, plays }) => ({ kind: 'came' as const, section: name, plays })),
    ...gone.map(({ name, plays }) => ({ kind: 'went' as const, section: name, plays })),
    ...together.filter(({ now, then }) => now.name !== then.name).map(({ now, then }) => ({ kind: 'renamed' as const, was: then.name, section: now.name })),
    ...order(was.flatMap((then) => together.find((one) => one.then === then)?.now.name ?? []), together.map(({ now }) => now.name), after.map(({ name }) => name)),
    ...movesOf(was, after, pairs),
    ...together.flatMap(({ now, then }) => order(common(then.plays, now.plays), common(now.plays, then.plays), now.plays, now.name)),
  ];
}

/** By name; a section under another name is one that has most of the plays. */
function pairSections(before: readonly SectionVersion[], after: readonly SectionVersion[]): ReadonlyMap<SectionVersion, SectionVersion> {
  const pairs = new Map<SectionVersion, SectionVersion>();
  const left = [...before];
  const pairBy = (same: (was: SectionVersion, now: SectionVersion) => boolean) => {
    for (const now of after) {
      const was = pairs.has(now) ? undefined : left.find((one) => same(one, now));
      if (was === undefined) continue;
      pairs.set(now, was);
      left.splice(left.indexOf(was), 1);
    }
  };
  pairBy((was, now) => nameKey(was.name) === nameKey(now.name));
  pairBy((was, now) => common(was.plays, now.plays).length * 2 > Math.max(was.plays.length, now.plays.length));
  return new Map([...pairs].sort(([a], [b]) => after.indexOf(a) - after.indexOf(b)));
}

/** A play that left one section and came into another has moved. What came or went with its whole section is told with that. */
function movesOf(before: readonly SectionVersion[], after: readonly SectionVersion[], pairs: ReadonlyMap<SectionVersion, SectionVersion>): readonly SectionChange[] {
  const laterName = new Map([...pairs].map(([now, then]) => [then, now.name]));
  const places = new Map<string, { readonly play: string; readonly from: SectionVersion[]; readonly to: SectionVersion[]; readonly still: string[] }>();
  const placesOf = (play: string) => places.get(nameKey(play)) ?? places.set(nameKey(play), { play, from: [], to: [], still: [] }).get(nameKey(play))!;
  const holds = (section: SectionVersion | undefined, play: string) => section !== undefined && common([play], section.plays).length > 0;
  for (const now of after)
    for (const play of now.plays) {
      const { to, still } = placesOf(play);
      if (holds(pairs.get(now), play)) still.push(now.name);
      else if (!to.includes(now)) to.push(now);
    }
  for (const then of before) {
    const now = after.find((one) => pairs.get(one) === then);
    for (const play of then.plays) if (!holds(now, play) && !placesOf(play).from.includes(then)) placesOf(play).from.push(then);
  }
  return [...places.values()].flatMap(({ play, from, to, still }): SectionChange[] => {
    const moved = Math.min(from.length, to.length);
    const nameThen = (section: SectionVersion) => laterName.get(section) ?? section.name;
    return [
      ...from.slice(0, moved).map((section, i) => ({ kind: 'moved' as const, play, from: nameThen(section), to: to[i]!.name })),
      ...to.slice(moved).filter((section) => pairs.has(section)).map((section) => ({ kind: 'put-in' as const, play, to: section.name })),
      ...from.slice(moved).filter((section) => laterName.has(section) || still.length === 0).map((section) => ({ kind: 'taken-out' as const, play, from: nameThen(section), still: [...still, ...to.map(({ name }) => name)] })),
    ];
  });
}

/** The names of the one list that stand in the other too. */
function common(names: readonly string[], others: readonly string[]): readonly string[] {
  const keys = new Set(others.map(nameKey));
  return names.filter((name) => keys.has(nameKey(name)));
}

function order(before: readonly string[], after: readonly string[], names: readonly string[], section?: string): readonly SectionChange[] {
  return changedLines(before.map(nameKey), after.map(nameKey)).length === 0 ? [] : [{ kind: 'order', ...(section !== undefined && { section }), names }];
}
