// Everything that is wrong with one play, told once, at its place.
import { inWords } from './tell-finding.ts';
import { message } from '../message/message.ts';
import type { ParsedLine } from '../grammar/parse-line.ts';
import type { PartId, Places } from '../play/play.ts';
import type { Reading } from '../play/read-play.ts';
import type { Problem } from '../names/problem.ts';
import type { UnderRules } from '../timeline/timelines.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { allChecks } from './all.ts';
import { silence } from './allowances.ts';
import { entryOf } from './catalogue.ts';
import type { Check, Entry, Found } from './check.ts';
import type { Finding } from './finding.ts';
import { findingsOfLine } from './lines.ts';
import { ownerOf, stepOf } from './parts.ts';
import { fixesFor, sayParams } from './problem-fixes.ts';
import { subjectOf, type Subject } from './subject.ts';
import { toldByChecks } from './told-by-timeline.ts';
import { gapsOf, type Gaps } from './unreadable.ts';
import { beginsWith, whenAndWhere } from './when-and-where.ts';
import { wholeMessage } from './whole-message.ts';

export interface Checkable {
  /** The block's lines. */
  readonly lines: readonly ParsedLine[];
  readonly reading: Reading;
  readonly timeline: Timeline;
  /** A line above the play, in its file's header, cannot be read. */
  readonly headGap?: boolean;
  /** The runs on the floor of each further rule set (`also nfhs`). */
  readonly also?: readonly UnderRules[];
}

/** The findings of a play in text order. Pure; the same play gives the same findings. */
export function checkPlay(checkable: Checkable): readonly Finding[] {
  const { lines, timeline, headGap } = checkable;
  const { play, problems, lines: meanings } = checkable.reading;
  const subject = subjectOf(checkable.reading, timeline, lines.map(({ text }) => text));
  const gaps = gapsOf({ lines, meanings, play, headGap });
  const told = [...problems, ...timeline.problems].flatMap((problem) => fromProblem(subject, problem));
  const found = foundBy(allChecks, subject);
  const others = (checkable.also ?? []).flatMap((under) => foundUnder(subjectOf(checkable.reading, under.timeline, subject.lines, under.rules), found));
  const spoken = onceEach(subject, [...told, ...found, ...others].filter((one) => maySpeak(gaps, subject, one)));
  const findings = spoken.map((one) => findingOf(subject, one));
  return inTextOrder([...lines.flatMap(findingsOfLine), ...silence(subject, findings, gaps)]);
}

const byRules = (allChecks as readonly Check[]).filter((check) => check.byRules === true);

function foundBy(checks: readonly Check[], subject: Subject): readonly Told[] {
  return checks.flatMap((check) => [...check.find(subject)].map((found) => ({ entry: check, found })));
}

/** What only the further rule set minds, named as its own: what both mind is told once. */
function foundUnder(subject: Subject, already: readonly Told[]): readonly Told[] {
  const known = new Set(already.map(({ entry, found }) => `${entry.code} ${found.part}`));
  return foundBy(byRules, subject).filter(({ entry, found }) => !known.has(`${entry.code} ${found.part}`)).map((one) => ({ ...one, rules: subject.rules.name }));
}

interface Told {
  readonly entry: Entry;
  readonly found: Found;
  /** The further rule set by which it is said. */
  readonly rules?: string;
  /** On how many further ways the same thing is true. */
  readonly more?: number;
}

function fromProblem(subject: Subject, problem: Problem): readonly Told[] {
  const entry = entryOf(problem.code);
  // Told by a check, which knows more.
  if (entry === undefined || Object.hasOwn(toldByChecks, problem.code)) return [];
  const { part, run, steps, moment, spot } = problem;
  const params = sayParams(subject, problem);
  const related = (problem.related ?? []).map((other) => ({ part: other }));
  return [{ entry, found: { part, params, related, fixes: fixesFor(subject, problem), ...(run !== undefined && { run }), ...(steps !== undefined && { steps }), ...(moment !== undefined && { moment }), ...(spot && { spot }) } }];
}

/**
 * A finding that names no way can come from any that passes its part: all of them have to be readable. What it rests on counts like its own
 * line: behind a line that cannot be read it may belong to another play.
 */
function maySpeak(gaps: Gaps, subject: Subject, { entry, found }: Told): boolean {
  const passing = subject.ways.filter(({ run, actions }) => (found.run === undefined ? beginsWith(run, found.steps) && actions.some(({ id }) => id === found.part) : run.id === found.run));
  const ways = passing.length === 0 ? [undefined] : passing.map(({ run }) => run.steps);
  const line = Math.max(...[found.part, ...(found.related ?? []).map(({ part }) => part)].map((part) => lineOf(subject.places, part)));
  return ways.every((steps) => gaps.allow(entry.needs, found.part, line, steps));
}

interface ToldOnce extends Told {
  readonly runs: Set<string>;
  readonly parts: Set<string>;
}

/** One cause, one finding: the same code at the same part is told of the first way it is true on, and the others are counted; so is the same sentence at the same words, which a step has that is run again. */
function onceEach(subject: Subject, told: readonly Told[]): readonly Told[] {
  const first = new Map<string, ToldOnce>();
  const sentences = new Map<string, ToldOnce>();
  for (const one of told) {
    const { part, params, instead, run } = one.found;
    const key = `${one.entry.code} ${part} ${one.rules ?? ''}`;
    const { line, at, to } = placeOf(subject.places, part);
    const sentence = JSON.stringify([one.entry.code, one.rules, line, at, to, params, instead]);
    const known = first.get(key) ?? sentences.get(sentence) ?? { ...one, runs: new Set<string>(), parts: new Set<string>() };
    if (!first.has(key)) known.parts.add(part);
    if (!sentences.has(sentence)) sentences.set(sentence, known);
    first.set(key, known);
    if (run !== undefined) known.runs.add(run);
  }
  return [...new Set(first.values())].map(({ runs, parts, ...one }) => {
    const passing = subject.ways.filter((way) => way.actions.some(({ id }) => parts.has(id)) || (way.run.look !== undefined && parts.has(way.run.look)));
    return runs.size > 1 && runs.size < passing.length ? { ...one, more: runs.size - 1 } : one;
  });
}

function findingOf(subject: Subject, { entry, found, more, rules }: Told): Finding {
  const source = found.source ?? (typeof entry.source === 'string' ? undefined : entry.source);
  const told = { ...(rules !== undefined && { byRules: rules }), ...(more !== undefined && { moreWays: more }) };
  return {
    code: entry.code,
    severity: entry.severity,
    ...inWords(wholeMessage(found.instead ?? { template: entry.message, params: found.params }, told)),
    ...told,
    params: rules === undefined ? found.params : { ...found.params, rules },
    place: placeOf(subject.places, found.part),
    part: found.part,
    ...whenAndWhere(subject, found),
    related: (found.related ?? []).flatMap(({ part, message: said }) => {
      const place = subject.places.get(part);
      return place === undefined ? [] : [{ place, message: said ?? (entry.related === undefined ? message('belongs to it') : { template: entry.related, params: {} }) }];
    }),
    ...(source !== undefined && { source }),
    fixes: found.fixes ?? [],
  };
}

function placeOf(places: Places, part: PartId) {
  return places.get(part) ?? places.get(ownerOf(part)) ?? places.get(stepOf(part)) ?? { line: 0, at: 0, to: 0 };
}

function lineOf(places: Places, part: PartId): number {
  return placeOf(places, part).line;
}

function inTextOrder(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted((a, b) => a.place.line - b.place.line || a.place.at - b.place.at);
}
