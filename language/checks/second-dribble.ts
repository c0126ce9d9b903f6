import { check } from './check.ts';
import { walkBall } from './ball.ts';

export const secondDribble = check({
  code: 'second-dribble',
  severity: 'error',
  needs: 'before',
  message: '{who} dribbles again after he picked the ball up. Let him pass, or take out the pick-up.',
  manual: {
    title: 'A second dribble',
    why: 'Who has ended his dribble may not begin another until someone else has touched the ball. A dribble that goes on, or turns into a drive, is one dribble.',
    wrong: '1 dribbles to left slot, then picks up his dribble\n1 drives to rim\nlook 1: layup',
    right: '1 dribbles to left slot\n1 drives to rim\nlook 1: layup',
  },
  source: { text: 'Double dribble: NBA 10-II, NCAA 9-7 and 4-13; FIBA 24', how: 'read' },
  *find(subject) {
    for (const way of subject.ways) {
      for (const { action, before } of walkBall(subject, way)) {
        if (action.kind !== 'dribble' || action.style === 'keep' || action.who !== before.holder || before.dribble !== 'used') continue;
        // `holds at the top` of a man who stands there.
        if (action.origin === 'derived' && way.run.tracks[action.who]?.segments.every((segment) => segment.action !== action.id)) continue;
        yield { part: action.id, params: { who: action.who }, run: way.run.id };
      }
    }
  },
});
