// What has become of the plays between two versions of a playbook: in sentences, in seconds, and in what is wrong with them. How a play is
// written makes no difference, only what it means.
import type { Block } from '../book/book.ts';
import type { Finding } from '../checks/finding.ts';
import { inEnglish } from '../message/message.ts';
import type { Play } from '../play/play.ts';
import type { Reading } from '../play/read-play.ts';
import type { LookTime, Needed, Timeline } from '../timeline/timeline.ts';
import { latest } from '../words/say-seconds.ts';
import { wayName } from '../words/way-name.ts';
import { changedLines, type ChangedLine } from './changed-lines.ts';
import { pairsOf } from './pair-plays.ts';
import { linesOf, partsOf, type Part } from './play-parts.ts';

/** A play of one version; a compiled play is one. */
export interface PlayVersion {
  readonly block: Block;
  readonly reading: Pick<Reading, 'lines'>;
  readonly play: Play;
  readonly timeline: Timeline;
  readonly findings: readonly Finding[];
}

export type PlayChange<Version extends PlayVersion = PlayVersion> =
  | { readonly kind: 'came'; readonly after: Version }
  | { readonly kind: 'went'; readonly before: Version }
  | ({ readonly kind: 'changed'; readonly before: Version; readonly after: Version } & WhatChanged);

export interface WhatChanged {
  /** It is the same play under another name. */
  readonly renamed: boolean;
  /** What stands above the steps, as it is written; then step by step, as it is told. */
  readonly parts: readonly PartChange[];
  readonly looks: readonly LookChange[];
  /** Whole seconds on the clock at the call, where they have changed. */
  readonly firstLook?: Between<number>;
  readonly allLooks?: Between<number>;
  readonly findings: FindingsChange;
}

export interface FindingsChange<One extends Finding = Finding> {
  readonly came: readonly One[];
  readonly went: readonly One[];
  /** Said of the same thing before and after, with other numbers. */
  readonly otherwise: readonly { readonly before: One; readonly after: One }[];
}

/** Absent on a side where there is none. */
export interface Between<Value> {
  readonly before?: Value;
  readonly after?: Value;
}

export interface PartChange {
  /** The step's name; absent above the steps. */
  readonly step?: string;
  /** A step that only one version has. */
  readonly only?: ChangedLine['kind'];
  readonly lines: readonly ChangedLine[];
}

export interface LookChange extends Between<LookTime> {
  readonly name: string;
}

/** The changed plays in the order of `after`, behind them those that went. Which two are the same play: `pairsOf`. */
export function comparePlays<Version extends PlayVersion>(before: readonly Version[], after: readonly Version[]): readonly PlayChange<Version>[] {
  const partners = pairsOf(before, after);
  const changes = after.flatMap((now): PlayChange<Version>[] => {
    const was = partners.get(now);
    if (was === undefined) return [{ kind: 'came', after: now }];
    const what = whatChanged(was, now);
    return what === undefined ? [] : [{ kind: 'changed', before: was, after: now, ...what }];
  });
  const known = new Set(partners.values());
  return [...changes, ...before.filter((was) => !known.has(was)).map((was) => ({ kind: 'went' as const, before: was }))];
}

function whatChanged(before: PlayVersion, after: PlayVersion): WhatChanged | undefined {
  const parts = changedParts(partsOf(before), partsOf(after));
  const looks = changedLooks(before, after);
  const firstLook = between(before.timeline.times.firstLook, after.timeline.times.firstLook);
  const allLooks = between(before.timeline.times.allLooks, after.timeline.times.allLooks);
  const findings = changedFindings(before.findings, after.findings);
  const renamed = before.play.name !== after.play.name;
  if (!renamed && [parts, looks, findings.came, findings.went, findings.otherwise].every(({ length }) => length === 0) && firstLook === undefined && allLooks === undefined) return undefined;
  return { renamed, parts, looks, ...(firstLook && { firstLook }), ...(allLooks && { allLooks }), findings };
}

function changedParts(before: readonly Part[], after: readonly Part[]): readonly PartChange[] {
  const was = new Map(before.map((part) => [part.key, part]));
  const is = new Set(after.map(({ key }) => key));
  const named = ({ name }: Part) => (name === undefined ? {} : { step: name });
  const whole = (part: Part, kind: ChangedLine['kind']): PartChange => ({ ...named(part), only: kind, lines: [...(part.heading === undefined || part.heading.bare ? [] : [part.heading.text]), ...part.lines].map((text) => ({ kind, text })) });
  const changed = after.flatMap((part): PartChange[] => {
    const known = was.get(part.key);
    if (known === undefined) return [whole(part, 'came')];
    const written = changedLines(linesOf(known), linesOf(part));
    const lines = [...written, ...(written.some(({ text }) => /^from\b/i.test(text)) ? [] : changedStanding(known, part))];
    return lines.length === 0 ? [] : [{ ...named(part), lines }];
  });
  return [...changed, ...before.filter(({ key }) => !is.has(key)).map((part) => whole(part, 'went'))];
}

/** With the same words they stand elsewhere: in an alignment of the coach's own, or in the play that this one is taken from. */
function changedStanding({ standing: was }: Part, { standing: is }: Part): readonly ChangedLine[] {
  return was === undefined || is === undefined ? [] : changedLines([was], [is]);
}

/** Looks by what they are called; a time has changed when it is printed otherwise. */
function changedLooks(before: PlayVersion, after: PlayVersion): readonly LookChange[] {
  const [was, is] = [before, after].map(({ play, timeline }) => new Map(timeline.times.looks.map((time) => [inEnglish(wayName(play, time.run)), time])));
  return [...new Set([...is!.keys(), ...was!.keys()])].flatMap((name): LookChange[] => {
    const [old, now] = [was!.get(name), is!.get(name)];
    const same = old !== undefined && now !== undefined && latest(old.typical) === latest(now.typical) && latest(old.late) === latest(now.late);
    return same ? [] : [{ name, ...(old && { before: old }), ...(now && { after: now }) }];
  });
}

function between(before: Needed | undefined, after: Needed | undefined): Between<number> | undefined {
  if (before?.fromCall === after?.fromCall) return undefined;
  return { ...(before && { before: before.fromCall }), ...(after && { after: after.fromCall }) };
}

/** What is said word for word before and after is left out. */
export function changedFindings<One extends Finding>(before: readonly One[], after: readonly One[]): FindingsChange<One> {
  const went = onlyIn(before, after);
  const otherwise: { readonly before: One; readonly after: One }[] = [];
  const came = onlyIn(after, before).filter((now) => {
    const at = now.part === undefined ? -1 : went.findIndex((was) => was.code === now.code && was.part === now.part && was.byRules === now.byRules);
    if (at >= 0) otherwise.push({ before: went.splice(at, 1)[0]!, after: now });
    return at < 0;
  });
  return { came, went, otherwise };
}

function onlyIn<One extends Finding>(findings: readonly One[], others: readonly One[]): One[] {
  const known = new Set(others.map(({ code, message }) => `${code} ${message}`));
  return findings.filter(({ code, message }) => !known.has(`${code} ${message}`));
}
