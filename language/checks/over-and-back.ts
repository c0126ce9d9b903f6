import { message } from '../message/message.ts';
import { check } from './check.ts';
import { partBefore } from './moments.ts';
import { inFrontcourt } from '../court/court.ts';
import type { BallState, Run } from '../timeline/timeline.ts';
import { trackAt } from '../timeline/track.ts';

export const overAndBack = check({
  code: 'over-and-back',
  severity: 'error',
  needs: 'way',
  byRules: true,
  message: '{who} catches the ball behind the half line after his team has had the ball in front of it: that gives the ball away. Keep it in the front court.',
  manual: {
    title: 'Over and back',
    why: 'A team that has the ball in its front court may not be the first to touch it again in the backcourt. The half line itself belongs to the backcourt. A throw-in straight into the backcourt is not meant here. Mini-basketball: its rule was not seen, so nothing is said.',
    wrong: 'from 5-out\n1 passes to 2\n1 cuts to backcourt middle\n2 passes to 1\nlook 1: three',
    right: 'from 5-out\n1 passes to 2\n1 cuts to left slot\n2 passes to 1\nlook 1: three',
  },
  source: { text: 'Ball returned to the backcourt: FIBA 30.1.2 as quoted, NBA 10-IX, NCAA 9-12.4; the high-school article is from memory', how: 'read' },
  *find(subject) {
    // Its record of this was not seen.
    if (subject.rules.id === 'mini') return;
    const inFront = (run: Run, state: BallState & { kind: 'held' }, t: number) => inFrontcourt(subject.court, trackAt(run.tracks[state.by]!, t));
    for (const { run } of subject.ways) {
      let front = false;
      for (const [at, state] of run.ball.entries()) {
        if (state.kind !== 'held' || state.out || run.tracks[state.by] === undefined) continue;
        const before = run.ball[at - 1];
        const caught = before?.kind === 'flight';
        if (front && caught && !inFront(run, state, state.t0)) {
          yield { part: before.action, params: { who: state.by }, run: run.id, moment: state.t0, spot: before.to };
          break;
        }
        front ||= inFront(run, state, state.t0);
        if (front && !inFront(run, state, state.t1)) {
          yield { part: partBefore(run, state.by, state.t1 - 1), params: { who: state.by }, instead: message('{who} takes the ball behind the half line after his team has had the ball in front of it: that gives the ball away. Keep it in the front court.', { who: state.by }), run: run.id, moment: state.t1, spot: trackAt(run.tracks[state.by]!, state.t1) };
          break;
        }
        front ||= inFront(run, state, state.t1);
      }
    }
  },
});
