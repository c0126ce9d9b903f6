import type { Point } from '../court/point.ts';
import { distance } from '../court/point.ts';
import { distanceAt } from '../motion/legs.ts';
import type { Path, Track } from '../timeline/timeline.ts';

/** Where a body is at a moment of its track, in metres. */
export function placeOnTrack(track: Track, moment: number): Point {
  const segment = track.segments.findLast(({ t0 }) => t0 <= moment);
  if (segment === undefined) return track.start;
  const end = segment.path.at(-1) ?? track.start;
  return moment >= segment.t1 ? end : along(segment.path, distanceAt(segment.profile, (moment - segment.t0) / 1000));
}

function along(path: Path, metres: number): Point {
  let left = metres;
  for (let at = 1; at < path.length; at++) {
    const [a, b] = [path[at - 1]!, path[at]!];
    const length = distance(a, b);
    if (left <= length) return length === 0 ? a : { x: a.x + ((b.x - a.x) * left) / length, y: a.y + ((b.y - a.y) * left) / length };
    left -= length;
  }
  return path.at(-1)!;
}
