import { read } from '../court/sources.ts';
import { check } from './check.ts';
import { latest, timedLooks, type TimedLook } from './clock.ts';
import type { Source } from '../court/sources.ts';
import type { Subject } from './subject.ts';

const why =
  'The ball must have left the hand before the shot clock ends. Without `shot clock` in the call line a full one is taken, by the rule set’s own count.';

export const pastShotClock = check({
  code: 'past-shot-clock',
  severity: 'error',
  needs: 'before',
  source: read('FIBA 29.1.1, NBA 7-I, NCAA men 2-11.1; NFHS has none but by state adoption, 2-14'),
  byRules: true,
  message: '{look} comes {typical:seconds} after the shot clock starts, and it runs out after {clock:seconds}. Take out actions before it.',
  manual: { title: 'A shot after the shot clock', why, wrong: 'call with 30 on the clock, shot clock 4\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper', right: 'call with 30 on the clock, shot clock 14\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper' },
  *find(subject) {
    for (const { timed, typical, clock, source } of onShotClock(subject)) {
      if (typical <= clock * 1000) continue;
      yield { ...placeOf(timed), params: { look: timed.atStart, typical: latest(typical), clock }, ...source };
    }
  },
});

export const pastShotClockWhenLate = check({
  code: 'past-shot-clock-when-late',
  severity: 'warning',
  needs: 'before',
  source: read('FIBA 29.1.1, NBA 7-I, NCAA men 2-11.1; NFHS has none but by state adoption, 2-14'),
  byRules: true,
  message: '{look} fits typically ({typical:seconds}), but one run in ten takes {late:seconds} or more, and the shot clock runs out after {clock:seconds}.',
  manual: { title: 'A shot that can slip past the shot clock', why, wrong: 'call with 30 on the clock, shot clock 5.2\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper', right: 'call with 30 on the clock, shot clock 14\nfrom 4-out 1-in\n1 dribbles to left slot, then drives to left elbow\n5 clears to right short corner\nlook 1: jumper' },
  *find(subject) {
    for (const { timed, typical, late, clock, source } of onShotClock(subject)) {
      if (typical > clock * 1000 || late <= clock * 1000) continue;
      yield { ...placeOf(timed), params: { look: timed.atStart, typical: latest(typical), late: latest(late), clock }, ...source };
    }
  },
});

interface Counted {
  readonly timed: TimedLook;
  readonly typical: number;
  readonly late: number;
  readonly clock: number;
  readonly source: { readonly source?: Source };
}

function onShotClock(subject: Subject): readonly Counted[] {
  const written = subject.play.clock.shotClock;
  const rule = subject.rules.counts.shotClock;
  const clock = written ?? rule?.value;
  if (clock === undefined) return [];
  const source = rule === undefined ? {} : { source: rule.source };
  return timedLooks(subject).map((timed) => ({
    timed, clock, source, typical: timed.time.typical - timed.run.clockStartsAt, late: timed.time.late - timed.run.clockStartsAt,
  }));
}

function placeOf({ look, time, run }: TimedLook) {
  return { part: look.id, run: run.id, moment: time.typical };
}
