import { levelWords } from '../words/say-level.ts';
import { check } from './check.ts';
import { distance } from '../court/point.ts';
import { gravity } from '../motion/ball.ts';
import { LEVELS } from '../motion/levels.ts';

// How much faster than his usual baseball pass a player can throw at all; common practice, no source.
const hardest = 1.35;

/** Metres a player of a level can throw at all: a ball thrown at 45 degrees and caught as high as it left the hand. */
function longestThrow(speed: number): number {
  return (hardest * speed) ** 2 / gravity;
}

export const passTooFar = check({
  code: 'pass-too-far',
  severity: 'warning',
  needs: 'before',
  message: 'From {who} to {to} it is {gap} m through the air, and a player of this level ({level}) throws about {reach} m at the most: nobody can catch it. Pass shorter, or by way of another man.',
  manual: {
    title: 'A pass that does not get there',
    why: 'The speed a throw needs grows with its length. Counted as a ball thrown as hard as a player of the level can, at 45 degrees, without drag. The model’s figure is rough: try it with your own players.',
    wrong: 'level u10\nplay "A"\nfrom 1 backcourt middle, 2 right corner, 3 left wing, 4 right wing, 5 left corner\n1 passes to 2\nlook 2: jumper',
    right: 'level u10\nplay "A"\nfrom 1 backcourt middle, 2 right corner, 3 left wing, 4 right wing, 5 left corner\n1 dribbles to top\n1 passes to 4\n4 passes to 2\nlook 2: jumper',
  },
  source: { text: 'the equation of a thrown ball; hardest throw 1.35 times the level’s baseball pass, common practice, no source', how: 'computed' },
  *find(subject) {
    const level = LEVELS[subject.play.level.value];
    const reach = longestThrow(level.baseballSpeed);
    for (const { run } of subject.ways) {
      for (const state of run.ball) {
        if (state.kind !== 'flight') continue;
        const gap = distance(state.from, state.to);
        if (gap <= reach) continue;
        yield { part: state.action, params: { who: state.by, to: state.receiver, gap: gap.toFixed(1), level: levelWords(subject.play.level.value), reach: reach.toFixed(0) }, run: run.id, moment: state.t0, spot: state.to };
      }
    }
  },
});
