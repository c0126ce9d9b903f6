import { message, type Message } from '../message/message.ts';
import { fromMemory } from '../court/sources.ts';
import { check } from './check.ts';
import { latest, least, timedLooks, type TimedLook } from './clock.ts';
import type { Fix } from './finding.ts';
import type { Subject } from './subject.ts';

export const callTooLate = check({
  code: 'call-too-late',
  severity: 'error',
  needs: 'before',
  source: fromMemory('A goal counts when the ball has left the hand before the signal: every rule book'),
  message: '{look} needs {late:seconds} from the call, and it is called with as little as {called:seconds} on the clock. {mend}',
  manual: {
    title: 'Called with less on the clock than the look needs',
    why: 'The ball must have left the hand before the horn. Counted from the lower end of `call with`, with the late time: the one that nine runs of ten keep.',
    wrong: 'call with 3 on the clock\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
    right: 'call with 12 on the clock\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
  },
  *find(subject) {
    const { leave } = subject.play.clock;
    for (const { timed, called, late, waits } of calledLooks(subject)) {
      if (late <= called * 1000) continue;
      // With what a miss has to leave at once: the next thing told would be that.
      const { params, fixes } = leave === undefined ? mended(subject, waits, Math.ceil(late / 1000)) : mended(subject, waits, Math.ceil((late + timed.time.flight) / 1000 + leave), leave);
      yield { ...placeOf(timed), params: { look: timed.atStart, late: latest(late), called, ...params }, fixes };
    }
  },
});

export const littleLeft = check({
  code: 'little-left',
  severity: 'warning',
  needs: 'before',
  source: 'what the play itself asks for',
  message: 'A miss of {look} leaves {left:seconds} when called with {called:seconds}: less than the {asked:seconds} asked for. {mend}',
  manual: {
    title: 'A miss leaves too little',
    why: '`leave 4 seconds after a miss` keeps time for a rebound and a put-back. Counted from the lower end of `call with`, the look’s late release and the flight of its shot. About five seconds are common practice, no source.',
    wrong: 'call with 12 on the clock\nleave 8 seconds after a miss\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
    right: 'call with 20 on the clock\nleave 8 seconds after a miss\n1 dribbles to left slot, then drives to rim\nlook 1: layup',
  },
  *find(subject) {
    const { leave } = subject.play.clock;
    if (leave === undefined) return;
    for (const { timed, called, late, waits } of calledLooks(subject)) {
      const left = called * 1000 - late - timed.time.flight;
      if (left >= leave * 1000 || late > called * 1000) continue;
      const { params, fixes } = mended(subject, waits, Math.ceil((late + timed.time.flight) / 1000 + leave));
      yield { ...placeOf(timed), params: { look: timed.name, left: Math.max(0, least(left)), called, asked: leave, ...params }, fixes };
    }
  },
});

/**
 * Every look with the clock it is called with: the lower end, for the late call is the tight one. The clock stands until the touch of a
 * throw-in. Where a line waits for the clock ("at 8 on the clock"), a later call only shortens the wait: the call shown counts.
 */
function calledLooks(subject: Subject): readonly Called[] {
  const { call } = subject.play.clock;
  if (call === undefined) return [];
  return timedLooks(subject).map((timed) => {
    const waits = waitsForClock(subject, timed);
    return { timed, waits, called: waits ? call.to : call.from, late: timed.time.late - timed.run.clockStartsAt };
  });
}

interface Called {
  readonly timed: TimedLook;
  /** A line on its way waits for the clock. */
  readonly waits: boolean;
  readonly called: number;
  readonly late: number;
}

/** What helps: an earlier call, or, where a line waits for the clock anyway, an earlier time in that line. */
function mended(subject: Subject, waits: boolean, needed: number, leaves?: number): { readonly params: { readonly mend: Message }; readonly fixes: readonly Fix[] } {
  if (waits) return { params: { mend: message('Let the line that waits for the clock begin sooner.') }, fixes: [] };
  const mend = leaves === undefined ? message('Call it with {needed} s or more, or take it out.', { needed }) : message('Call it with {needed} s or more, which leaves {leaves} s after a miss, or take it out.', { needed, leaves });
  return { params: { mend }, fixes: calledWith(subject, needed) };
}

function waitsForClock(subject: Subject, { run }: TimedLook): boolean {
  const way = subject.ways.find((one) => one.run === run);
  return way?.actions.some(({ waits }) => waits.some((wait) => wait.kind === 'clock' && wait.clock === 'period')) ?? false;
}

function placeOf({ look, time, run }: TimedLook) {
  return { part: look.id, run: run.id, moment: time.typical, related: [{ part: 'call', message: message('the clock it is called with') }] };
}

/** The lower end of the call raised, and the upper one where it would fall below. */
function calledWith(subject: Subject, seconds: number): readonly Fix[] {
  const { call } = subject.play.clock;
  const from = subject.places.get('call#from') ?? subject.places.get('call#to');
  const to = subject.places.get('call#to');
  if (call === undefined || from === undefined || from.to === from.at) return [];
  const edits = [{ line: from.line, at: from.at, to: from.to, text: String(seconds) }];
  if (to !== undefined && to.at !== from.at && call.to < seconds) edits.push({ line: to.line, at: to.at, to: to.to, text: String(seconds) });
  return [{ title: message('Call it with {seconds} or more', { seconds }), edits }];
}
