import { check } from './check.ts';
import { distance, type Point } from '../court/point.ts';
import { OFFENCE, type BodyId } from '../play/play.ts';
import type { Way } from './subject.ts';
import type { Run } from '../timeline/timeline.ts';
import { trackAt } from '../timeline/track.ts';

// Two metres: one defender reaches both with a step. Coaches ask for 12 to 18 ft between team-mates; no governing body gives a number.
const nearMetres = 2;
const standingMs = 1000;

export const crowding = check({
  code: 'crowding',
  severity: 'hint',
  needs: 'way',
  message: '{who} and {other} stand {gap} m apart when the shot is taken: one defender guards both. Send one of them further away.',
  manual: {
    title: 'Two who stand on each other’s toes',
    why: 'Two who stand close together can be guarded by one man, and the other is free to help. Nothing is said of screen and hand-off partners, of a stack as it starts, of one who passes through, or against a zone, where an overload is meant.',
    wrong: 'from 5-out\n4 clears to 1.5 m below right wing\n1 dribbles to left slot\n1 dribbles to right slot\n1 dribbles to top\nlook 1: three',
    right: 'from 5-out\n4 clears to right short corner\n1 dribbles to left slot\n1 dribbles to right slot\n1 dribbles to top\nlook 1: three',
  },
  source: { text: 'Spacing of 12 to 18 ft as coaching pages ask for it; the two metres here are common practice, no source', how: 'second-hand' },
  *find(subject) {
    if (subject.play.defence.value.kind === 'zone') return;
    const closing = new Set(subject.play.steps.flatMap(({ actions, kept }) => [...actions, ...kept]).flatMap(({ id, verb }) => (verb === 'close-behind' ? [id] : [])));
    for (const way of subject.ways) {
      const { run } = way;
      if (run.releaseAt === undefined) continue;
      const standing = OFFENCE.flatMap((who) => standingAt(run, who, run.releaseAt!));
      for (const [at, one] of standing.entries()) {
        for (const other of standing.slice(at + 1)) {
          const gap = distance(one.place, other.place);
          if (gap >= nearMetres || arePartners(way, one.who, other.who) || (one.last === undefined && other.last === undefined)) continue;
          // Shoulder to shoulder is how two shut a gate.
          if (one.last !== undefined && other.last !== undefined && closing.has(one.last) && closing.has(other.last)) continue;
          const later = (one.since ?? 0) > (other.since ?? 0) ? one : other;
          yield { part: later.last ?? 'from', params: { who: one.who, other: other.who, gap: gap.toFixed(1) }, run: run.id, moment: run.releaseAt, spot: later.place };
        }
      }
    }
  },
});

interface Standing {
  readonly who: BodyId;
  readonly place: Point;
  /** The move that brought him there and when it ended; absent for one who has not moved. */
  readonly last?: string;
  readonly since?: number;
}

/** Who has stood for a while, without the ball. */
function standingAt(run: Run, who: BodyId, moment: number): readonly Standing[] {
  const track = run.tracks[who];
  if (track === undefined) return [];
  const hasBall = run.ball.some((state) => state.kind === 'held' && state.by === who && state.t0 <= moment && state.t1 >= moment - standingMs);
  const last = track.segments.findLast(({ t0 }) => t0 <= moment);
  if (hasBall || (last !== undefined && last.t1 > moment - standingMs)) return [];
  return [{ who, place: trackAt(track, moment), ...(last && { last: last.action, since: last.t1 }) }];
}

/** A screener and his user, two who have screened for the same man, or two of whom one has handed the other the ball. */
function arePartners({ run, actions }: Way, a: BodyId, b: BodyId): boolean {
  if (actions.some((action) => action.kind === 'hand-off' && [a, b].includes(action.who) && [a, b].includes(action.to))) return true;
  const usersOf = (who: BodyId) => run.screens.flatMap(({ by, users }) => (by === who ? users : []));
  const [ofA, ofB] = [usersOf(a), usersOf(b)];
  return ofA.includes(b) || ofB.includes(a) || ofA.some((user) => ofB.includes(user));
}
