import { message } from '../message/message.ts';
import { read } from '../court/sources.ts';
import { check } from './check.ts';
import { latest } from './clock.ts';
import { ballPartAt, countedFrom } from './moments.ts';
import type { Subject } from './subject.ts';
import { inFrontcourt } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { LEVELS } from '../motion/levels.ts';
import type { Run } from '../timeline/timeline.ts';
import { ballAt, ballStateAt } from '../timeline/track.ts';

const tickMs = 50;

export const backcourtCount = check({
  code: 'backcourt-count',
  severity: 'error',
  needs: 'way',
  source: read('FIBA 28, NBA 10-VIII, NCAA 9-10, NFHS 9-8'),
  byRules: true,
  message: 'The ball is only over half court {took:seconds} {after}; the count in the backcourt is {count:seconds}. Throw it ahead sooner, or let fewer men touch it behind the line.',
  manual: {
    title: 'Too long in the backcourt',
    why: 'A team has eight seconds to bring the ball into its front court (FIBA, NBA), ten in the college and high-school rules. It is over when the ball, and of a dribbler both feet, are wholly in front of the half line. A live ball is counted from the call, a throw-in from the touch. Mini-basketball: no count was found in the part of its rules that was seen, so none is made.',
    wrong: 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 blocks\nalready set\n1 holds for 8 seconds\n1 dribbles to top\nlook 1: three',
    right: 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 blocks\nalready set\n1 dribbles to top\nlook 1: three',
  },
  *find(subject) {
    const { backcourt } = subject.rules.counts;
    if (backcourt === undefined) return;
    for (const way of subject.ways) {
      const { run } = way;
      const from = run.clockStartsAt;
      if (from >= run.end || isOver(subject, run, from)) continue;
      const over = crossing(subject, run, from);
      const took = (over ?? run.end) - from;
      if (took <= backcourt.value * 1000) continue;
      const moment = from + backcourt.value * 1000;
      const params = { took: latest(took), after: countedFrom(subject), count: backcourt.value };
      yield {
        part: ballPartAt(way, moment),
        params,
        ...(over === undefined && { instead: message('The ball is still not over half court {took:seconds} {after}; the count in the backcourt is {count:seconds}. Throw it ahead sooner, or let fewer men touch it behind the line.', params) }),
        run: run.id,
        moment,
        spot: ballAt(run, moment),
        source: backcourt.source,
      };
    }
  },
});

function crossing(subject: Subject, run: Run, from: number): number | undefined {
  for (let t = from; t <= run.end; t += tickMs) if (isOver(subject, run, t)) return t;
  return undefined;
}

function isOver({ court, play }: Subject, run: Run, t: number): boolean {
  const state = ballStateAt(run, t);
  const ball = ballAt(run, t);
  const feet: Point = state?.kind === 'held' ? { x: ball.x, y: ball.y + LEVELS[play.level.value].bodyRadius } : ball;
  return inFrontcourt(court, feet);
}
