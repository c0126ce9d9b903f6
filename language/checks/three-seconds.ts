import { message } from '../message/message.ts';
import { read } from '../court/sources.ts';
import { check } from './check.ts';
import { inLane, type Court } from '../court/court.ts';
import { OFFENCE, type BodyId } from '../play/play.ts';
import type { Run, Segment, Track } from '../timeline/timeline.ts';
import { partBefore } from './moments.ts';
import { trackAt } from '../timeline/track.ts';
import type { Subject } from './subject.ts';

const tickMs = 50;

export const threeSeconds = check({
  code: 'three-seconds',
  severity: 'warning',
  needs: 'way',
  source: read('NBA 10-VI, NCAA 9-9; FIBA 26 and NFHS 9-7 from memory'),
  byRules: true,
  message: '{who} stands in the lane for {stay:seconds}, from {from:seconds} to {to:seconds} {after}; more than {count:seconds} is a violation. Let him step out, or stand just outside the lane.',
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
        const part = partBefore(way.run, who, stay.from);
        yield {
          part,
          params: { who, stay: (stay.to - stay.from) / 1000, from: stay.from / 1000, to: stay.to / 1000, after: way.run.clockStartsAt > 0 ? message('after the hand-over') : message('after the call'), count: count.value },
          run: way.run.id,
          moment: stay.from + count.value * 1000,
          source: count.source,
        };
      }
    }
  },
});

interface Stay {
  readonly from: number;
  readonly to: number;
}

/** The longest time on end in the lane from his coming to a stand there, with the clock running, up to the shot: the ball in the air belongs to nobody. */
function longestStay({ court }: Subject, run: Run, who: BodyId): Stay | undefined {
  const track = run.tracks[who];
  if (track === undefined) return undefined;
  const end = run.releaseAt ?? run.end;
  let longest: Stay | undefined;
  let from = inLane(court, track.start) ? 0 : undefined;
  const stayedUntil = (to: number): void => {
    const since = from === undefined ? end : Math.max(from, run.clockStartsAt);
    const until = Math.min(to, end);
    if (until > since && (longest === undefined || until - since > longest.to - longest.from)) longest = { from: since, to: until };
  };
  for (const [at, segment] of track.segments.entries()) {
    const [start, stop] = [segment.path[0]!, segment.path.at(-1)!];
    // The lane has no dents: between two places in it a straight way stays in it.
    if (from !== undefined && !(inLane(court, start) && inLane(court, stop))) {
      stayedUntil(leaves(court, track, segment));
      from = undefined;
    }
    // He has to come to a stand: a way that goes on at once goes through.
    if (from === undefined && inLane(court, stop) && (track.segments[at + 1]?.t0 ?? Infinity) > segment.t1) from = segment.t1;
  }
  stayedUntil(end);
  return longest;
}

function leaves(court: Court, track: Track, { t0, t1 }: Segment): number {
  for (let t = t0; t < t1; t += tickMs) if (!inLane(court, trackAt(track, t))) return t;
  return t1;
}
