import { check } from './check.ts';
import { inLane } from '../court/court.ts';
import { OFFENCE, type BodyId } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';
import { placeOnTrack } from './where.ts';
import type { Subject } from './subject.ts';

const tickMs = 50;

export const threeSeconds = check({
  code: 'three-seconds',
  severity: 'warning',
  needs: 'way',
  message: '{who} stands in the lane for {stay:seconds}, from {from:seconds} to {to:seconds} after {zero}; more than {count:seconds} is a violation. Let him step out, or stand just outside the lane.',
  manual: {
    title: 'Three seconds in the lane',
    why: 'No attacker may be in the lane for more than three seconds on end while his team has the ball in the front court and the game clock runs. Counted here from where he comes to a stand in the lane to the shot: a place just outside the lane line does not count, and neither does one who goes through.',
    wrong: 'from 5-out\n5 cuts to rim\n1 dribbles to left slot\n1 dribbles to right slot\n1 dribbles to top\n1 passes to 2\nlook 2: three',
    right: 'from 5-out\n5 cuts to rim, then clears to left short corner\n1 dribbles to left slot\n1 dribbles to right slot\n1 dribbles to top\n1 passes to 2\nlook 2: three',
  },
  *find(subject) {
    const { threeSeconds: count } = subject.rules.counts;
    for (const way of subject.ways) {
      for (const who of OFFENCE) {
        const stay = longestStay(subject, way.run, who);
        if (stay === undefined || stay.to - stay.from <= count.value * 1000 + tickMs) continue;
        const part = lastPartBefore(way.run, who, stay.from) ?? way.steps[0]?.key;
        if (part === undefined) continue;
        yield {
          part,
          params: { who, stay: (stay.to - stay.from) / 1000, from: stay.from / 1000, to: stay.to / 1000, zero: way.run.clockStartsAt > 0 ? 'the hand-over' : 'the call', count: count.value },
          run: way.run.id,
          moment: stay.from + count.value * 1000,
          source: count.source,
        };
      }
    }
  },
});

/** The longest time on end in the lane from his coming to a stand there, with the clock running, up to the shot: the ball in the air belongs to nobody. */
function longestStay(subject: Subject, run: Run, who: BodyId): { readonly from: number; readonly to: number } | undefined {
  const track = run.tracks[who];
  if (track === undefined) return undefined;
  const end = run.releaseAt ?? run.end;
  let longest: { from: number; to: number } | undefined;
  let from: number | undefined;
  for (let t = run.clockStartsAt; t <= end; t += tickMs) {
    if (!inLane(subject.court, placeOnTrack(track, t))) from = undefined;
    else if (!track.segments.some(({ t0, t1 }) => t0 <= t && t < t1)) from ??= t;
    if (from !== undefined && (longest === undefined || t - from > longest.to - longest.from)) longest = { from, to: t };
  }
  return longest;
}

/** What brought him there: the move he made last before, or his place in `from`. */
function lastPartBefore(run: Run, who: BodyId, moment: number): string | undefined {
  return run.tracks[who]?.segments.findLast((segment) => segment.t0 <= moment)?.action ?? 'from';
}
