import { message, type Message } from '../message/message.ts';
import { check } from './check.ts';
import { least, timedLooks, type TimedLook } from './clock.ts';
import type { Subject } from './subject.ts';

const why =
  '`shot between` says what the period clock is to show when the first look’s shot leaves the hand. It is counted from both ends of `call with`; of a later look only its time is told.';

export const shotOutsideClock = check({
  code: 'shot-outside-clock',
  severity: 'error',
  needs: 'before',
  source: 'what the play itself asks for',
  message: 'The first look’s shot leaves the hand with {shows:seconds} {clock} when called with {called:seconds}; it is to be between {early:seconds} and {late:seconds}.',
  manual: { title: 'The first shot outside the time asked for', why, wrong: 'call with 20 on the clock\nshot between 10 and 5 on the clock\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper', right: 'call with 20 on the clock\nshot between 17 and 10 on the clock\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper' },
  *find(subject) {
    for (const { timed, called, typical, between, clock } of firstLook(subject)) {
      if (!isOutside({ typical, between }) || typical < 0) continue;
      yield { ...placeOf(timed), params: { shows: least(typical * 1000), clock, called, early: between.from, late: between.to } };
      return;
    }
  },
});

export const shotOutsideClockWhenLate = check({
  code: 'shot-may-miss-clock',
  severity: 'warning',
  needs: 'before',
  source: 'what the play itself asks for',
  message: 'Called with {called:seconds}, the first look’s shot leaves the hand with {first:seconds} to {last:seconds} {clock} in eight runs of ten; it is to be between {early:seconds} and {late:seconds}.',
  manual: { title: 'The first shot may miss the time asked for', why, wrong: 'call with 20 on the clock\nshot between 15.1 and 14.9 on the clock\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper', right: 'call with 20 on the clock\nshot between 17 and 10 on the clock\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper' },
  *find(subject) {
    for (const { timed, called, typical, first, last, between, clock } of firstLook(subject)) {
      if (isOutside({ typical, between })) return;
      // After the horn it is called too late, and told so.
      if (first <= between.from && (last >= between.to || last < 0)) continue;
      yield { ...placeOf(timed), params: { called, clock, first: least(first * 1000), last: least(last * 1000), early: between.from, late: between.to } };
      return;
    }
  },
});

export const laterShotOutsideClock = check({
  code: 'later-shot-outside-clock',
  severity: 'hint',
  needs: 'before',
  source: 'what the play itself asks for',
  message: 'Called with {called:seconds}, {look} has its shot away with {shows:seconds} {clock}: outside the {early:seconds} to {late:seconds} asked of the first look.',
  manual: { title: 'A later shot outside the time asked for', why, wrong: 'call with 20 on the clock\nshot between 17 and 14 on the clock\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper\nlook 4: three\nlook 2: three', right: 'call with 20 on the clock\nshot between 17 and 10 on the clock\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper\nlook 4: three\nlook 2: three' },
  *find(subject) {
    const [first, ...later] = timedLooks(subject).flatMap((timed) => aimed(subject, timed).slice(0, 1));
    if (first === undefined || isOutside(first)) return;
    for (const { timed, called, typical, between, clock } of later.filter((one) => isOutside(one) && one.typical >= 0)) yield { ...placeOf(timed), params: { look: timed.name, shows: least(typical * 1000), clock, called, early: between.from, late: between.to } };
  },
});

const isOutside = ({ typical, between }: Pick<Aimed, 'typical' | 'between'>): boolean => typical > between.from || typical < between.to;

interface Aimed {
  readonly timed: TimedLook;
  readonly called: number;
  /** What the clock shows, seconds: typical, early and late run. */
  readonly typical: number;
  readonly first: number;
  readonly last: number;
  readonly clock: Message;
  readonly between: { readonly from: number; readonly to: number };
}

function firstLook(subject: Subject): readonly Aimed[] {
  const timed = timedLooks(subject)[0];
  return timed === undefined ? [] : aimed(subject, timed);
}

/** A look against what is asked of the first, for each end of the call. */
function aimed(subject: Subject, timed: TimedLook): readonly Aimed[] {
  const { call, between } = subject.play.clock;
  // Without a call the clock has no reading; `before the horn` only asks that there is time left.
  if (between === undefined) return [];
  const shotClock = subject.play.clock.shotClock ?? subject.rules.counts.shotClock?.value;
  const calls = between.clock === 'shot' ? [shotClock] : [call?.to, call?.from];
  const shown = (called: number, release: number) => called - (release - timed.run.clockStartsAt) / 1000;
  const { typical, early, late } = timed.time;
  return [...new Set(calls)].filter((called) => called !== undefined).map((called) => ({
    timed, called, between, clock: between.clock === 'shot' ? message('on the shot clock') : message('on the clock'), typical: shown(called, typical), first: shown(called, early), last: shown(called, late),
  }));
}

function placeOf({ look, time, run }: TimedLook) {
  return { part: look.id, run: run.id, moment: time.typical, related: [{ part: 'window', message: message('the time asked for') }] };
}
