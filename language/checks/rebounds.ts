import { check } from './check.ts';
import type { Rebound } from '../play/play.ts';
import type { Subject } from './subject.ts';

// Common practice, no source: three to the boards form a triangle round the rim, and somebody is back for the break.
const enough = 3;

export const fewOnTheBoards = check({
  code: 'few-on-the-boards',
  severity: 'hint',
  needs: 'play',
  message: 'Only {count} go to the boards here. Three make a triangle round the rim.',
  manual: {
    title: 'Fewer than three to the boards',
    why: 'Three round the rim cover both sides and the front: a miss from one side mostly comes down on the other. Only said where a rebound line stands.',
    wrong: 'rebound 4 crashes, 1, 2, 3, 5 get back\n1 dribbles to left slot\nlook 1: jumper',
    right: 'rebound 2, 4, 5 crash, 1, 3 get back\n1 dribbles to left slot\nlook 1: jumper',
  },
  source: { text: 'common practice, no source', how: 'common practice, no source' },
  *find(subject) {
    for (const rebound of spoken(subject)) {
      if (rebound.crash.length < enough) yield { part: rebound.part, params: { count: rebound.crash.length } };
    }
  },
});

export const nobodyBack = check({
  code: 'nobody-back',
  severity: 'hint',
  needs: 'play',
  message: 'Nobody gets back here. Keep at least one man between the ball and your own basket.',
  manual: {
    title: 'Nobody gets back',
    why: 'With all five at the boards a defensive rebound is a free run the other way. Only said where a rebound line stands.',
    wrong: 'rebound 1, 2, 3, 4, 5 crash\n1 dribbles to left slot\nlook 1: jumper',
    right: 'rebound 2, 4, 5 crash, 1, 3 get back\n1 dribbles to left slot\nlook 1: jumper',
  },
  source: { text: 'common practice, no source', how: 'common practice, no source' },
  *find(subject) {
    for (const rebound of spoken(subject)) {
      if (rebound.back.length === 0 && rebound.crash.length === 5) yield { part: rebound.part, params: {} };
    }
  },
});

/** Rebound lines of the play and its steps; what stands behind a look names single men and leaves the rest as they are. */
function spoken({ play }: Subject): readonly Rebound[] {
  return play.rebounds.filter(({ within }) => !within.includes('?'));
}
