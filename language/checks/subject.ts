// What the checks look at: everything known of one play, cut along its run-throughs.
import { courtOf, type Court } from '../court/court.ts';
import type { RuleSet, RuleSetId } from '../court/rule-set.ts';
import { ruleSet } from '../court/rule-sets.ts';
import { watchRuns, type Guarded } from '../defence/guard.ts';
import type { Action, Look, PartId, Places, Play, Step } from '../play/play.ts';
import type { Problem } from '../names/problem.ts';
import type { Reading } from '../play/read-play.ts';
import type { Run, Timeline } from '../timeline/timeline.ts';

export interface Subject {
  readonly play: Play;
  readonly places: Places;
  /** Steps that hang on nothing that can be played: their lines are still looked at by themselves. */
  readonly leftOut: readonly Step[];
  /** What reading has noted as wrong. */
  readonly problems: readonly Problem[];
  readonly timeline: Timeline;
  /** The block's lines as they stand in the file. */
  readonly lines: readonly string[];
  readonly rules: RuleSet;
  readonly court: Court;
  readonly ways: readonly Way[];
  /** Where the defenders are on a run; worked out when first asked for, since few checks do. Empty for a play without defence. */
  readonly defendersOn: (run: Run) => Guarded;
}

/** One run-through: what happens on it, in text order, and when. */
export interface Way {
  readonly run: Run;
  readonly steps: readonly Step[];
  readonly look?: Look;
  /** The steps' actions, then what stands behind the look's colon. Looks passed up leave nothing. */
  readonly actions: readonly Action[];
}

/** `by`: another rule set than the play's own, with the runs on its floor. */
export function subjectOf({ play, places, leftOut, problems }: Reading, timeline: Timeline, lines: readonly string[], by: RuleSetId = play.rules.value): Subject {
  const rules = ruleSet(by);
  return { play, places, leftOut, problems, timeline, lines, rules, court: courtOf(rules), ways: timeline.runs.map((run) => wayOf(play, run)), defendersOn: watchRuns(play, timeline.runs) };
}

function wayOf(play: Play, run: Run): Way {
  const steps = run.steps.map((key) => play.steps.find((step) => step.key === key)).filter((step) => step !== undefined);
  const look = run.look === undefined ? undefined : steps.flatMap((step) => step.looks).find(({ id }) => id === run.look);
  const actions = [...steps.flatMap((step) => [...step.kept, ...step.actions]), ...(look?.tail ?? [])];
  return look === undefined ? { run, steps, actions } : { run, steps, look, actions };
}

/** The text of a part's own words, or of its whole line. */
export function wordsOf(subject: Subject, part: PartId): string {
  const place = subject.places.get(part);
  return place === undefined ? '' : (subject.lines[place.line] ?? '').slice(place.at, place.to).trim();
}
