import { message } from '../message/message.ts';
import { check } from './check.ts';
import { throwInOf } from './moments.ts';
import type { Subject, Way } from './subject.ts';
import { inBounds, type Court } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import { OFFENCE, type BodyId } from '../play/play.ts';
import type { Segment } from '../timeline/timeline.ts';

const source = { text: 'The lines are out: FIBA 23.1, NBA 8-I, NCAA 4-23, NFHS 7-1', how: 'read' } as const;
// Half a shoe's length: nearer than this one foot is on the line. No source.
const halfShoe = 0.12;

export const outOfBounds = check({
  code: 'out-of-bounds',
  severity: 'error',
  needs: 'before',
  byRules: true,
  message: '{who} ends up out of bounds here. Send him to a spot inside the lines.',
  manual: {
    title: 'Out of bounds',
    why: 'A player who touches the line or the floor outside it is out of bounds (FIBA 23.1, NBA 8-I, NCAA 4-23, NFHS 7-1). Only the thrower stands there; a screener may not (NBA 10-XIV, NCAA 4-35, NFHS 4-40). The measures are those of the rule set in force.',
    wrong: '1 dribbles to left sideline\nlook 1: jumper',
    right: '1 dribbles to left slot\nlook 1: jumper',
  },
  source,
  *find(subject) {
    const { court } = subject;
    for (const way of subject.ways) {
      const { run } = way;
      for (const who of OFFENCE) {
        const start = run.tracks[who]?.start;
        if (start !== undefined && !inBounds(court, start) && who !== thrower(subject)) yield { part: `from#${who}`, params: { who }, instead: message('{who} stands out of bounds here. Place him inside the lines; or, to let him throw in, write below this line: {line}', { who, line: `${who} inbounds from the ${lineBeside(court, start)}` }), run: run.id, moment: 0, spot: start };
        for (const { segment, point, ends } of outside(subject, way, who)) {
          yield { part: segment.action, params: { who }, ...(!ends && { instead: message('{who} runs out of bounds here. Lead him inside the lines.', { who }) }), run: run.id, moment: segment.t1, spot: point };
        }
      }
    }
  },
});

/** The line he stands behind, in the words of the notation. */
function lineBeside(court: Court, point: Point): string {
  if (point.y > court.boundary.top) return 'far baseline';
  return `${point.x < 0 ? 'left' : 'right'} ${inBounds(court, { x: 0, y: point.y }) ? `${point.y > court.halfLineY ? 'far ' : ''}sideline` : 'baseline'}`;
}

export const footOnLine = check({
  code: 'foot-on-line',
  severity: 'warning',
  needs: 'before',
  byRules: true,
  message: '{who} ends up {gap} m from the line, so one foot is on it, and the line is out. Send him a step further in.',
  manual: {
    title: 'A foot on the line',
    why: 'The lines are out of bounds. A place nearer than half a shoe’s length to them leaves no room for the foot.',
    wrong: 'from 5-out\n1 dribbles to (-7.45, 2) m\nlook 1: three',
    right: 'from 5-out\n1 dribbles to (-7, 2) m\nlook 1: three',
  },
  source,
  *find(subject) {
    for (const way of subject.ways) {
      for (const who of OFFENCE) {
        for (const segment of ownSegments(way, who)) {
          const end = segment.path.at(-1)!;
          const gap = fromLine(subject.court, end);
          if (gap <= 0 || gap >= halfShoe) continue;
          yield { part: segment.action, params: { who, gap: gap.toFixed(2) }, run: way.run.id, moment: segment.t1, spot: end };
        }
      }
    }
  },
});

function thrower({ play }: Subject): BodyId | undefined {
  return play.start.throwIn === undefined ? undefined : (String(play.start.throwIn.by.value) as BodyId);
}

/** What a man does on the court: the thrower's ways before the release are the thrower's matter, a hand-off over the line his too. */
function ownSegments({ run, actions }: Way, who: BodyId): readonly Segment[] {
  const segments = run.tracks[who]?.segments ?? [];
  const out = throwInOf(run);
  if (out === undefined) return segments;
  const over = new Set(actions.filter((action) => action.kind === 'hand-off' && action.who === out.by).map(({ id }) => id));
  return segments.filter(({ action, t0 }) => !over.has(action) && !(out.by === who && t0 < out.t1));
}

function* outside({ court }: Subject, way: Way, who: BodyId): Iterable<{ readonly segment: Segment; readonly point: Point; readonly ends: boolean }> {
  const segments = ownSegments(way, who);
  for (const [at, segment] of segments.entries()) {
    const last = segments[at + 1]?.action !== segment.action;
    const end = segment.path.at(-1)!;
    if (inBounds(court, end)) continue;
    yield { segment, point: end, ends: last };
  }
}

/** Metres to the nearest boundary line; negative outside. */
function fromLine({ boundary }: Court, { x, y }: Point): number {
  return Math.min(x - boundary.left, boundary.right - x, y - boundary.bottom, boundary.top - y);
}
