import { check } from './check.ts';
import { inBounds } from '../court/court.ts';
import { OFFENCE } from '../play/play.ts';

export const outOfBounds = check({
  code: 'out-of-bounds',
  severity: 'error',
  needs: 'before',
  message: '{who} ends up out of bounds here. Send him to a spot inside the lines.',
  manual: {
    title: 'Out of bounds',
    why: 'A player who touches the line or the floor outside it is out of bounds (FIBA 23.1, NBA 8-I, NCAA 4-23, NFHS 7-1). Only the thrower stands there.',
    wrong: '1 dribbles to left sideline\nlook 1: jumper',
    right: '1 dribbles to left slot\nlook 1: jumper',
  },
  source: { text: 'The lines are out: FIBA 23.1, NBA 8-I, NCAA 4-23, NFHS 7-1', how: 'read' },
  *find(subject) {
    for (const way of subject.ways) {
      for (const who of OFFENCE) {
        for (const segment of way.run.tracks[who]?.segments ?? []) {
          const end = segment.path.at(-1);
          if (end === undefined || inBounds(subject.court, end)) continue;
          yield { part: segment.action, params: { who }, run: way.run.id, moment: segment.t1, spot: end };
        }
      }
    }
  },
});
