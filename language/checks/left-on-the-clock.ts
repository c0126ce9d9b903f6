import { check } from './check.ts';
import { latest, least, timedLooks, type TimedLook } from './clock.ts';
import { capital } from './past-window.ts';
import type { Fix } from './finding.ts';
import type { Subject } from './subject.ts';

export const callTooLate = check({
  code: 'call-too-late',
  severity: 'error',
  needs: 'before',
  message: '{look} needs {late:seconds} from the call, and it is called with as little as {called:seconds} on the clock. Call it with {needed:seconds} or more.',
  manual: {
    title: 'Called with less on the clock than the look needs',
    why: 'The ball must have left the hand before the horn. Counted from the lower end of `call with`, with the late time: the one that nine runs of ten keep.',
    wrong: 'call with 3 on the clock\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
    right: 'call with 12 on the clock\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
  },
  *find(subject) {
    for (const { timed, called, late } of calledLooks(subject)) {
      if (late <= called * 1000) continue;
      const needed = Math.ceil(late / 1000);
      yield { ...placeOf(timed), params: { look: capital(timed.name), late: latest(late), called, needed }, fixes: calledWith(subject, needed) };
    }
  },
});

export const littleLeft = check({
  code: 'little-left',
  severity: 'warning',
  needs: 'before',
  message: 'A miss of {look} leaves {left:seconds} when called with {called:seconds}: less than the {asked:seconds} asked for. Call it with {needed:seconds} or more, or take it out.',
  manual: {
    title: 'A miss leaves too little',
    why: '`leave 4 seconds after a miss` keeps time for a rebound and a put-back. Counted from the lower end of `call with`, the look’s late release and the flight of its shot. About five seconds are common practice, no source.',
    wrong: 'call with 12 on the clock\nleave 8 seconds after a miss\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
    right: 'call with 20 on the clock\nleave 8 seconds after a miss\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
  },
  *find(subject) {
    const { leave } = subject.play.clock;
    if (leave === undefined) return;
    for (const { timed, called, late } of calledLooks(subject)) {
      const left = called * 1000 - late - timed.time.flight;
      if (left >= leave * 1000 || late > called * 1000) continue;
      const needed = Math.ceil((late + timed.time.flight) / 1000 + leave);
      yield {
        ...placeOf(timed),
        params: { look: timed.name, left: Math.max(0, least(left)), called, asked: leave, needed },
        fixes: calledWith(subject, needed),
      };
    }
  },
});

/** Every look with the clock it is called with; on a throw-in the clock stands until the touch. */
function calledLooks(subject: Subject): readonly { readonly timed: TimedLook; readonly called: number; readonly late: number }[] {
  const { call } = subject.play.clock;
  if (call === undefined) return [];
  return timedLooks(subject).map((timed) => ({ timed, called: call.from, late: timed.time.late - timed.run.clockStartsAt }));
}

function placeOf({ look, time, run }: TimedLook) {
  return { part: look.id, run: run.id, moment: time.typical, related: [{ part: 'call', message: 'the clock it is called with' }] };
}

/** The lower end of the call raised, and the upper one where it would fall below. */
function calledWith(subject: Subject, seconds: number): readonly Fix[] {
  const { call } = subject.play.clock;
  const from = subject.places.get('call#from') ?? subject.places.get('call#to');
  const to = subject.places.get('call#to');
  if (call === undefined || from === undefined) return [];
  const edits = [{ line: from.line, at: from.at, to: from.to, text: String(seconds) }];
  if (to !== undefined && to.at !== from.at && call.to < seconds) edits.push({ line: to.line, at: to.at, to: to.to, text: String(seconds) });
  return [{ title: `Call it with ${seconds} or more`, edits }];
}
