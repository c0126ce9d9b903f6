import { check } from './check.ts';
import { latest } from './clock.ts';
import { countedFrom } from './moments.ts';

export const endTooLate = check({
  code: 'end-too-late',
  severity: 'error',
  needs: 'way',
  source: 'what the play itself asks for',
  message: 'This end comes {took:seconds} {after}, and it is to come within {asked:seconds}: {over:seconds} too late. Take out an action before it, or give it more time.',
  manual: {
    title: 'A stated end after its time',
    why: '`ends once 2 has the ball over half court, within 8 seconds` asks for a time. It is counted as the officials count: from the call, on a throw-in from the touch, along the run that is shown.',
    wrong: 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 blocks\n1 dribbles to half court\nends once 1 has the ball over half court, within 2 seconds',
    right: 'from 1 backcourt middle, 2 right corner, 3 left corner, 4 and 5 blocks\n1 dribbles to half court\nends once 1 has the ball over half court, within 8 seconds',
  },
  *find(subject) {
    for (const { run, steps, look } of subject.ways) {
      const end = steps.at(-1)?.end;
      if (end?.withinSeconds === undefined || look !== undefined) continue;
      const took = run.end - run.clockStartsAt;
      if (took <= end.withinSeconds * 1000) continue;
      yield { part: end.part, params: { took: latest(took), after: countedFrom(subject), asked: end.withinSeconds, over: latest(took - end.withinSeconds * 1000) }, run: run.id, moment: run.end };
    }
  },
});
