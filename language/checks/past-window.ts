import { message, type Message } from '../message/message.ts';
import { check } from './check.ts';
import { latest, timedLooks, type TimedLook } from './clock.ts';
import type { Subject } from './subject.ts';

const why =
  'The set has a window: every shot is to be in the air within it. The typical time is the run you see; the late time is the one that nine runs of ten keep.';

export const pastWindow = check({
  code: 'past-window',
  severity: 'error',
  needs: 'before',
  source: 'what the play itself asks for',
  message: '{look} comes {typical:seconds} {after}, and the shot is to be away within {window:seconds}: {over:seconds} too late. Take out an action before it, or give the set more time.',
  manual: { title: 'A look after the set’s window', why, wrong: 'shot within 2 seconds of the start\n1 dribbles to left slot, then drives to rim\nlook 1: layup', right: 'shot within 8 seconds of the start\n1 dribbles to left slot, then drives to rim\nlook 1: layup' },
  *find(subject) {
    for (const { timed, typical, window, after } of windows(subject)) {
      if (typical <= window * 1000) continue;
      const params = { look: timed.atStart, typical: latest(typical), after, window, over: latest(typical - window * 1000) };
      yield { ...placeOf(timed), params, fixes: widened(subject, Math.ceil(typical / 1000)) };
    }
  },
});

export const pastWindowWhenLate = check({
  code: 'past-window-when-late',
  severity: 'warning',
  needs: 'before',
  source: 'what the play itself asks for',
  message: '{look} fits typically ({typical:seconds} {after}), but one run in ten takes {late:seconds} or more, and the shot is to be away within {window:seconds}.',
  manual: { title: 'A look that can slip past the set’s window', why, wrong: 'shot within 3.3 seconds of the start\n1 dribbles to left slot, then drives to rim\nlook 1: layup', right: 'shot within 8 seconds of the start\n1 dribbles to left slot, then drives to rim\nlook 1: layup' },
  *find(subject) {
    for (const { timed, typical, late, window, after } of windows(subject)) {
      if (typical > window * 1000 || late <= window * 1000) continue;
      const params = { look: timed.atStart, typical: latest(typical), after, late: latest(late), window };
      yield { ...placeOf(timed), params, fixes: widened(subject, Math.ceil(late / 1000)) };
    }
  },
});

interface Windowed {
  readonly timed: TimedLook;
  /** ms from where the window is counted. */
  readonly typical: number;
  readonly late: number;
  readonly window: number;
  readonly after: Message;
}

/** Every look against `shot within`: from the start or the call, on a throw-in from the touch (rule 24). */
function windows(subject: Subject): readonly Windowed[] {
  const { within } = subject.play.clock;
  if (within === undefined) return [];
  return timedLooks(subject).map((timed) => {
    const { run, time } = timed;
    const touched = run.clockStartsAt > 0;
    const measured = touched ? time.onClock : within.of === 'start' ? time.fromStart : time;
    return { timed, typical: measured.typical, late: measured.late, window: within.seconds, after: touched ? message('after the touch') : within.of === 'start' ? message('after the start') : message('after the call') };
  });
}

function placeOf({ look, time, run }: TimedLook) {
  return { part: look.id, run: run.id, moment: time.typical, related: [{ part: 'window', message: message('the window asked for') }] };
}

function widened(subject: Subject, seconds: number) {
  const place = subject.places.get('window#seconds');
  // A copy has no words of its own.
  if (place === undefined || place.to === place.at) return [];
  return [{ title: message('Give the set {seconds} seconds', { seconds }), edits: [{ line: place.line, at: place.at, to: place.to, text: `${seconds} seconds` }] }];
}
