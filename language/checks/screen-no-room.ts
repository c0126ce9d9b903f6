import { read } from '../court/sources.ts';
import { check } from './check.ts';
import { keyframeAt } from './closely-guarded.ts';
import { distance, type Point } from '../court/point.ts';
import { LEVELS } from '../motion/levels.ts';
import type { BodyId } from '../play/play.ts';
import type { Run, SetScreen } from '../timeline/timeline.ts';
import { ballAt, trackAt } from '../timeline/track.ts';

export const screenNoRoom = check({
  code: 'screen-no-room',
  severity: 'warning',
  needs: 'before',
  source: read('FIBA 33.7 (2010), NBA 12B-III, NCAA 4-35, NFHS 4-40: a normal step; its length in metres is from memory, no book gives one'),
  message: '{who} sets his screen {gap} m from {defender}, who cannot see him; a normal step, about {step} m at this level, has to be left between them. Set it a step further away.',
  manual: {
    title: 'No room for a player who cannot see the screen',
    why: 'A defender who sees the screener may be screened as close as you like; one who does not must be given a normal step (FIBA 33.7 of 2010, NBA 12B-III, NCAA 4-35, NFHS 4-40). No book says how long a step is; the level’s figure is from memory. Said only of a screen whose place is written and where the defence is drawn: where the tool chooses the place, it is not yours to mend.',
    wrong: 'against man\nfrom 4-out 1-in\n1 dribbles to left slot\n5 back-screens for 2 at (1, 5.1) m\n2 cuts off 5 to rim\nlook 2: layup',
    right: 'against man\nfrom 4-out 1-in\n1 dribbles to left slot\n5 back-screens for 2 at (0.6, 4.3) m\n2 cuts off 5 to rim\nlook 2: layup',
  },
  *find(subject) {
    const level = LEVELS[subject.play.level.value];
    const { blindSideSteps } = subject.rules.screens;
    const step = blindSideSteps.value * level.step;
    for (const { run, actions } of subject.ways) {
      for (const screen of run.screens) {
        const action = actions.find(({ id }) => id === screen.action);
        if (action?.kind !== 'screen' || action.at?.origin !== 'written') continue;
        const man = screen.users[0] ?? action.users[0];
        const defender = action.on ?? (man === undefined ? undefined : (`X${man}` as BodyId));
        const keyframes = defender === undefined ? undefined : subject.defendersOn(run)[defender];
        if (defender === undefined || keyframes === undefined) continue;
        const stands = keyframeAt(keyframes, screen.from);
        // From body to body, as a step is taken.
        const gap = Math.max(0, distance(stands, screen.at) - 2 * level.bodyRadius);
        if (gap >= step || sees(run, defender, stands, screen)) continue;
        yield { part: screen.action, params: { who: screen.by, gap: gap.toFixed(1), defender, step: step.toFixed(1) }, run: run.id, moment: screen.from, spot: screen.at, source: blindSideSteps.source };
      }
    }
  },
});

/** He looks between his man and the ball; what stands in the half behind him he does not see. */
function sees(run: Run, defender: BodyId, at: Point, screen: SetScreen): boolean {
  const man = defender.slice(1) as BodyId;
  const track = run.tracks[man];
  const towards = [ballAt(run, screen.from), ...(track === undefined ? [] : [trackAt(track, screen.from)])].map((point) => direction(at, point));
  const looks = { x: towards.reduce((sum, { x }) => sum + x, 0), y: towards.reduce((sum, { y }) => sum + y, 0) };
  const to = direction(at, screen.at);
  return looks.x * to.x + looks.y * to.y >= 0;
}

function direction(from: Point, to: Point): Point {
  const length = distance(from, to);
  return length === 0 ? { x: 0, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
