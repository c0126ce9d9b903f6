import { message } from '../message/message.ts';
import { computed } from '../court/sources.ts';
import { check } from './check.ts';
import { pinnedTooEarly } from './look-out-of-order.ts';
import { legalScreen } from './screen-rules.ts';
import { wordsOf, type Subject } from './subject.ts';
import type { Action, PartId } from '../play/play.ts';
import type { Problem } from '../names/problem.ts';
import type { Run, TimedEvent } from '../timeline/timeline.ts';

export const timeNotKept = check({
  code: 'time-not-kept',
  severity: 'warning',
  needs: 'before',
  source: computed('how fast a level’s legs are: docs/assumptions.md'),
  message: '{who} is {seconds:seconds} too late for the time written. Give him more time, or less to do before it.',
  manual: {
    title: 'A time that cannot be kept',
    why: 'Legs beat written times: no player of the level runs what lies before it in the time there is. Shown is when he really can be there.',
    wrong: 'call with 20 on the clock\nalready set\nfrom 4-out 1-in\n2 cuts to left elbow, then clears to right short corner\nat 18 on the clock, 2 cuts to rim\nlook 2: layup',
    right: 'call with 20 on the clock\nalready set\nfrom 4-out 1-in\n2 cuts to left elbow, then clears to right short corner\nat 8 on the clock, 2 cuts to rim\nlook 2: layup',
  },
  *find(subject) {
    const early = pinnedTooEarly(subject);
    for (const problem of missed(subject)) {
      if (screenBehind(subject, problem) !== undefined || early.has(problem.part)) continue;
      const { part, params, run, moment, related = [] } = problem;
      const late = { who: params.who ?? '', seconds: params.seconds ?? 0 };
      const before = whatHolds(subject, problem);
      yield {
        part,
        params: late,
        ...(before !== undefined && { instead: message('{who} is {seconds:seconds} too late for the time written: before it comes “{before}”. Give him more time, or less to do before it.', { ...late, before }) }),
        related: related.map((other) => ({ part: other, message: message('this comes too late') })),
        ...(run !== undefined && { run }),
        ...(moment !== undefined && { moment }),
      };
    }
  },
});

export const screenTooLate = check({
  code: 'screen-too-late',
  severity: 'warning',
  needs: 'before',
  source: legalScreen,
  message: '{screener}’s screen is set {seconds:seconds} too late for the time at which {who} is to come off it. Let {screener} start sooner, or give {who} a later time.',
  manual: {
    title: 'A screen set too late',
    why: 'A user never leaves before his screen is set. Where a written time would have him go earlier, he waits all the same, and the time is not kept.',
    wrong: 'call with 20 on the clock\nalready set\nfrom 5-out\n5 screens for 2\nat 19 on the clock, 2 cuts off 5 to rim\nlook 2: layup',
    right: 'call with 20 on the clock\nalready set\nfrom 5-out\n5 screens for 2\nat 14 on the clock, 2 cuts off 5 to rim\nlook 2: layup',
  },
  *find(subject) {
    for (const problem of missed(subject)) {
      const screen = screenBehind(subject, problem);
      if (screen === undefined) continue;
      const { part, params, moment } = problem;
      yield { part, params: { screener: screen.by, seconds: params.seconds ?? 0, who: params.who ?? '' }, run: screen.run, related: [{ part: screen.action, message: message('this screen') }], ...(moment !== undefined && { moment }) };
    }
  },
});

function missed({ timeline }: Subject): readonly Problem[] {
  return timeline.problems.filter(({ code }) => code === 'time-not-kept');
}

interface Late {
  readonly run: Run;
  readonly start: TimedEvent;
}

/** The late action's start, on the first way that passes it. */
function lateStart({ ways }: Subject, { related = [], run: only }: Problem): Late | undefined {
  const action = related[0];
  for (const { run } of ways) {
    if (only !== undefined && only !== run.id) continue;
    const start = run.events.find(({ id }) => id === `${action}:start`);
    if (start !== undefined) return { run, start };
  }
  return undefined;
}

function screenBehind(subject: Subject, problem: Problem): { readonly by: string; readonly action: PartId; readonly run: string } | undefined {
  const late = lateStart(subject, problem);
  if (late?.start.because?.reason !== 'screen') return undefined;
  const set = late.run.events.find(({ id }) => id === late.start.because!.from);
  return set?.who === undefined ? undefined : { by: set.who, action: set.part, run: late.run.id };
}

/** What keeps him until then: his own last link, or what he has to wait for. */
function whatHolds(subject: Subject, problem: Problem): string | undefined {
  const late = lateStart(subject, problem);
  const cause = late?.run.events.find(({ id }) => id === late.start.because?.from);
  const before = actionOf(subject, cause?.part);
  return before && wordsOf(subject, before.id);
}

function actionOf({ ways }: Subject, part: PartId | undefined): Action | undefined {
  return ways.flatMap(({ actions }) => actions).find(({ id }) => id === part);
}
