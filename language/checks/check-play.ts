// Everything that is wrong with one play, told once, at its place.
import type { ParsedLine } from '../grammar/parse-line.ts';
import type { PartId, Places, StepKey } from '../play/play.ts';
import type { Reading } from '../play/read-play.ts';
import type { Problem } from '../names/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { allChecks } from './all.ts';
import { silence } from './allowances.ts';
import { entryOf } from './catalogue.ts';
import type { Entry, Found } from './check.ts';
import type { Finding } from './finding.ts';
import { findingsOfLine } from './lines.ts';
import { fixesFor, sayParams } from './problem-fixes.ts';
import { subjectOf, type Subject } from './subject.ts';
import { fillTemplate } from './template.ts';
import { gapsOf, type Gaps } from './unreadable.ts';

export interface Checkable {
  /** The block's lines. */
  readonly lines: readonly ParsedLine[];
  readonly reading: Reading;
  readonly timeline: Timeline;
  /** A line above the play, in its file's header, cannot be read. */
  readonly headGap?: boolean;
}

/** The findings of a play in text order. Pure; the same play gives the same findings. */
export function checkPlay(checkable: Checkable): readonly Finding[] {
  const { lines, timeline, headGap } = checkable;
  const { play, problems, lines: meanings } = checkable.reading;
  const subject = subjectOf(checkable.reading, timeline, lines.map(({ text }) => text));
  const gaps = gapsOf({ lines, meanings, play, headGap });
  const told = [...problems, ...timeline.problems].flatMap((problem) => fromProblem(subject, problem));
  const found = allChecks.flatMap((check) => [...check.find(subject)].map((one) => ({ entry: check as Entry, found: one as Found })));
  const spoken = onceEach(subject, [...told, ...found].filter((one) => maySpeak(gaps, subject, one)));
  const findings = spoken.map((one) => findingOf(subject, one));
  return inTextOrder([...lines.flatMap(findingsOfLine), ...silence(subject, findings, gaps)]);
}

interface Told {
  readonly entry: Entry;
  readonly found: Found;
  /** On how many further ways the same thing is true. */
  readonly more?: number;
}

function fromProblem(subject: Subject, problem: Problem): readonly Told[] {
  const entry = entryOf(problem.code);
  // Told by a check, which knows more.
  if (entry === undefined) return [];
  const { part, run, moment, spot } = problem;
  const params = sayParams(subject, problem);
  const related = (problem.related ?? []).map((other) => ({ part: other, message: '' }));
  return [{ entry, found: { part, params, related, fixes: fixesFor(subject, problem), ...(run !== undefined && { run }), ...(moment !== undefined && { moment }), ...(spot && { spot }) } }];
}

/** A finding that names no way can come from any that passes its part: all of them have to be readable. */
function maySpeak(gaps: Gaps, subject: Subject, { entry, found }: Told): boolean {
  const passing = subject.ways.filter(({ run, actions }) => (found.run === undefined ? actions.some(({ id }) => id === found.part) : run.id === found.run));
  const ways = passing.length === 0 ? [undefined] : passing.map(({ run }) => run.steps);
  return ways.every((steps) => gaps.allow(entry.needs, found.part, lineOf(subject.places, found.part), steps));
}

/** One cause, one finding: the same code at the same part is told of the first way it is true on, and the others are counted. */
function onceEach(subject: Subject, told: readonly Told[]): readonly Told[] {
  const first = new Map<string, Told & { runs: Set<string> }>();
  for (const one of told) {
    const key = `${one.entry.code} ${one.found.part}`;
    const known = first.get(key);
    if (known === undefined) first.set(key, { ...one, runs: new Set(one.found.run === undefined ? [] : [one.found.run]) });
    else if (one.found.run !== undefined) known.runs.add(one.found.run);
  }
  return [...first.values()].map(({ runs, ...one }) => {
    const passing = subject.ways.filter((way) => way.actions.some(({ id }) => id === one.found.part) || way.run.look === one.found.part);
    return runs.size > 1 && runs.size < passing.length ? { ...one, more: runs.size - 1 } : one;
  });
}

function findingOf(subject: Subject, { entry, found, more }: Told): Finding {
  const { run, moment, spot } = found;
  const source = found.source ?? entry.source;
  const text = fillTemplate(entry.message, found.params);
  return {
    code: entry.code,
    severity: entry.severity,
    message: more === undefined ? text : `${text} So too on ${more} other ${more === 1 ? 'way' : 'ways'} through the play.`,
    params: found.params,
    place: placeOf(subject.places, found.part),
    part: found.part,
    ...(run !== undefined && { run }),
    ...(moment !== undefined && { moment }),
    ...(spot !== undefined && { spot }),
    related: (found.related ?? []).flatMap(({ part, message }) => {
      const place = subject.places.get(part);
      return place === undefined ? [] : [{ place, message: message === '' ? 'belongs to it' : message }];
    }),
    ...(source !== undefined && { source }),
    fixes: found.fixes ?? [],
  };
}

function placeOf(places: Places, part: PartId) {
  const owner = part.replace(/#.*$/, '');
  return places.get(part) ?? places.get(owner) ?? places.get(owner.split(/[/?:]/, 1)[0] as StepKey) ?? { line: 0, at: 0, to: 0 };
}

function lineOf(places: Places, part: PartId): number {
  return placeOf(places, part).line;
}

function inTextOrder(findings: readonly Finding[]): readonly Finding[] {
  return findings.toSorted((a, b) => a.place.line - b.place.line || a.place.at - b.place.at);
}
