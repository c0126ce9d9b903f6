import { allOf, message } from '../message/message.ts';
import { check } from './check.ts';
import { distance } from '../court/point.ts';
import { LEVELS } from '../motion/levels.ts';
import type { BodyId, Rebound } from '../play/play.ts';
import { trackAt } from '../timeline/track.ts';
import type { Subject, Way } from './subject.ts';

// Common practice, no source: three to the boards form a triangle round the rim, and somebody is back for the break.
const enough = 3;
const source = { text: 'common practice, no source', how: 'common practice, no source' } as const;
// A miss comes into the hands about a second after it has hit the rim, so near the ring; common practice, no source.
const tillHandsSeconds = 1;
const triangleMetres = 2.5;
const leastLeftMs = 1000;

export const fewOnTheBoards = check({
  code: 'few-on-the-boards',
  severity: 'hint',
  needs: 'play',
  message: 'Only {count} go to the boards here. Three make a triangle round the rim.',
  manual: {
    title: 'Fewer than three to the boards',
    why: 'Three round the rim cover both sides and the front: a miss from one side mostly comes down on the other. Only said where a rebound line stands, and not with less than a second left when the ball comes down.',
    wrong: 'rebound 4 crashes, 1, 2, 3, 5 get back\n1 dribbles to left slot\nlook 1: jumper',
    right: 'rebound 2, 4, 5 crash, 1, 3 get back\n1 dribbles to left slot\nlook 1: jumper',
  },
  source,
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
  source,
  *find(subject) {
    for (const rebound of spoken(subject)) {
      if (rebound.back.length === 0 && rebound.crash.length === 5) yield { part: rebound.part, params: {} };
    }
  },
});

export const noTriangle = check({
  code: 'no-triangle',
  severity: 'hint',
  needs: 'way',
  message: '{who} is still {gap} m from the ring when the ball hits it, too far for a triangle round it. Send men who are nearer to the boards.',
  manual: {
    title: 'No triangle round the rim',
    why: 'A rebounder has from the release until the ball comes off the rim, and about a second more until it comes down. One who starts at half court is not there, and two are no triangle. Only said where a rebound line sends three or more.',
    wrong: 'from 5-out\nrebound 1, 4, 5 crash, 2, 3 get back\n1 passes to 2\n1 clears to half court\n4 clears to right slot\nlook 2: layup',
    right: 'from 5-out\nrebound 2, 4, 5 crash, 1, 3 get back\n1 passes to 2\n4 clears to right dunker spot\n5 clears to left dunker spot\nlook 2: three',
  },
  source,
  *find(subject) {
    const { vmax, cutEffort } = LEVELS[subject.play.level.value];
    const inReach = triangleMetres + tillHandsSeconds * vmax * cutEffort;
    for (const way of subject.ways) {
      if (way.run.releaseAt === undefined || isLastSecond(subject, way)) continue;
      const line = lineFor(subject, way);
      if (line === undefined || line.crash.length < enough) continue;
      const far = line.crash.map((man) => ({ man, gap: gapAtRim(subject, way, String(man) as BodyId) })).filter(({ gap }) => gap > inReach);
      if (line.crash.length - far.length >= enough || far.length === 0) continue;
      const params = { who: allOf(far.map(({ man }) => man)), gap: allOf(far.map(({ gap }) => gap.toFixed(1))) };
      yield { part: line.part, params, ...(far.length > 1 && { instead: message('{who} are still {gap} m from the ring when the ball hits it, too far for a triangle round it. Send men who are nearer to the boards.', params) }), run: way.run.id, moment: way.run.end };
    }
  },
});

/** Rebound lines of the play and its steps; what stands behind a look names single men and leaves the rest as they are. */
function spoken(subject: Subject): readonly Rebound[] {
  const shots = subject.ways.filter(({ run }) => run.releaseAt !== undefined);
  if (shots.length > 0 && shots.every((way) => isLastSecond(subject, way))) return [];
  return subject.play.rebounds.filter(({ within }) => !within.includes('?'));
}

/** The innermost line counts, as on the floor (rule 23). */
function lineFor({ play }: Subject, { steps, look }: Way): Rebound | undefined {
  if (look !== undefined && (look.rebounds.length > 0 || play.rebounds.some(({ within }) => within === look.id))) return undefined;
  const last = steps.at(-1)?.key;
  return play.rebounds.find(({ within }) => within === last) ?? play.rebounds.find(({ within }) => within === 'play');
}

function gapAtRim({ court }: Subject, { run }: Way, who: BodyId): number {
  const track = run.tracks[who];
  return track === undefined ? 0 : distance(trackAt(track, run.end), court.ring);
}

/** Nobody gets a rebound, or needs to get back, with less than a second left. */
function isLastSecond({ play }: Subject, { run }: Way): boolean {
  const call = play.clock.call?.to;
  return call !== undefined && call * 1000 - (run.end - run.clockStartsAt) < leastLeftMs;
}
