// What the clock checks share: each look with its times and the run-through that takes it.
import type { Look } from '../play/play.ts';
import type { LookTime, Run } from '../timeline/timeline.ts';
import type { Subject } from './subject.ts';

export interface TimedLook {
  readonly look: Look;
  readonly time: LookTime;
  readonly run: Run;
  /** As a message says it: `the "pull-up" for 3`, `the look for 4`. */
  readonly name: string;
}

/** The looks in text order. */
export function timedLooks(subject: Subject): readonly TimedLook[] {
  const looks = subject.play.steps.flatMap((step) => step.looks);
  return looks.flatMap((look) => {
    const time = subject.timeline.times.looks.find((one) => one.look === look.id);
    const run = subject.timeline.runs.find((one) => one.id === time?.run);
    if (time === undefined || run === undefined) return [];
    const who = look.who.join(' or ');
    return [{ look, time, run, name: look.label === undefined ? `the look for ${who}` : `the “${look.label}” for ${who}` }];
  });
}

export { latest, least } from '../words/say-seconds.ts';
