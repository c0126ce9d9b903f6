/** To the boards and back on defence once the shot leaves the hand (rule 23). */
import type { Point } from '../court/point.ts';
import type { BodyId, LookId, Rebound } from '../play/play.ts';
import { nearestTo } from '../play/places.ts';
import type { Branch } from './branch.ts';
import { bodyAt, bodyOf, legsOf, whenOf } from './branch.ts';
import { latestOf, varyingEdge } from './graph.ts';
import { breakOff } from './left-out.ts';
import { runRoute } from './moves.ts';
import { isOffence } from './sound.ts';
import { situationOf, standingOf } from './where.ts';

/** The innermost rebound line counts: behind the look, in the step, for the play. */
function linesFor(branch: Branch, look: LookId | undefined): readonly Rebound[] {
  const { play } = branch.scene;
  const step = branch.steps[branch.steps.length - 1];
  const own = look === undefined ? [] : (branch.looks.get(look)?.look.rebounds ?? []);
  if (own.length > 0) return own;
  const inLook = play.rebounds.filter(({ within }) => within === look);
  if (inLook.length > 0) return inLook;
  const inStep = play.rebounds.filter(({ within }) => within === step);
  return inStep.length > 0 ? inStep : play.rebounds.filter(({ within }) => within === 'play');
}

/** Where nobody asks for what comes after the shot (`scene.upToTheShots`) they only leave off what they were about. */
export function sendToTheBoards(branch: Branch, shot: number, shooter: BodyId | undefined, look: LookId | undefined): void {
  const lines = linesFor(branch, look);
  const { court, level } = branch.scene;
  // A triangle round the rim, and the middle of the floor; common practice, no source.
  const boards: Point[] = [{ x: -1.6, y: 0.9 }, { x: 1.6, y: 0.9 }, { x: 0, y: 2.4 }];
  const backs: Point[] = [{ x: 0, y: court.halfLineY - 3 }, { x: -3.5, y: court.halfLineY - 4 }, { x: 3.5, y: court.halfLineY - 4 }];
  const at = whenOf(branch, shot);
  for (const line of lines) {
    const send = (men: readonly number[], spots: Point[]): void => {
      for (const man of men) {
        const who = String(man) as BodyId;
        if (!isOffence(who)) continue;
        const body = bodyOf(branch, who);
        const now = bodyAt(body, at);
        const spot = nearestTo(now, spots, situationOf(branch, { ...standingOf(branch, who, undefined), own: now }));
        if (spot === undefined) continue;
        spots.splice(spots.indexOf(spot), 1);
        if (body.until > at) breakOff(branch, who, { stop: at, because: shot });
        if (branch.scene.upToTheShots) continue;
        const landing = who === shooter ? 400 : 0;
        const edges = [varyingEdge(shot, 'reaction', landing + Math.max(0, body.until - at), Math.round(level.reaction * 1000), 'reaction', `${line.part}/${who}`)];
        runRoute(branch, {
          action: line.part, who, joins: true, withBall: false, mayWait: true, untold: true, exit: 0, limits: legsOf(branch, who), edges,
          startsAt: latestOf(branch.scene.graph, edges).at, route: { points: [body.place, spot], shoulders: [], partners: [] },
        });
      }
    };
    send(line.crash, boards);
    send(line.back, backs);
  }
}
