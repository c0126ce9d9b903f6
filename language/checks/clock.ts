// What the clock checks share: each look with its times and the run-through that takes it.
import { message, oneOf, type Message } from '../message/message.ts';
import type { Look } from '../play/play.ts';
import type { LookTime, Run } from '../timeline/timeline.ts';
import type { Subject } from './subject.ts';
import { readsADefender } from '../words/way-name.ts';

export interface TimedLook {
  readonly look: Look;
  readonly time: LookTime;
  readonly run: Run;
  /** As a message says it: `the "pull-up" for 3`, `the look for 4`; the same at the start of a sentence. */
  readonly name: Message;
  readonly atStart: Message;
}

/** The looks in text order. */
export function timedLooks(subject: Subject): readonly TimedLook[] {
  const looks = subject.play.steps.flatMap((step) => step.looks);
  return looks.flatMap((look) => {
    const time = subject.timeline.times.looks.find((one) => one.look === look.id);
    const run = subject.timeline.runs.find((one) => one.id === time?.run);
    if (time === undefined || run === undefined) return [];
    const who = oneOf(look.who);
    const { label } = look;
    if (label === undefined) return [{ look, time, run, name: message('the look for {who}', { who }), atStart: message('The look for {who}', { who }) }];
    if (readsADefender(label)) return [{ look, time, run, name: message('the look for {who} {label}', { who, label }), atStart: message('The look for {who} {label}', { who, label }) }];
    return [{ look, time, run, name: message('the “{label}” for {who}', { label, who }), atStart: message('The “{label}” for {who}', { label, who }) }];
  });
}

export { latest, least } from '../words/say-seconds.ts';
