// How much of the floor a play needs: down to the arc and a little further, half a court, or the whole of it when something happens in
// the backcourt. Three sizes, so that the floor does not grow and shrink with every word that is written.
import type { Point } from '../court/point.ts';
import type { Playback } from '../playback/playback.ts';
import { round } from './nodes.ts';

/** Centimetres in the picture's own axes: x to the right, y down, the origin under the ring. */
export interface View {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly full: boolean;
  /** Players are drawn so much larger: on a whole court they would be too small to read. */
  readonly bodies: number;
}

/** Floor outside the lines that is always shown, cm. */
export const MARGIN = 70;
// Room round a man who stands out of bounds.
const BODY_ROOM = 75;
const FULL_COURT_BODIES = 1.3;
// So far past half court a man may still be drawn on the half court.
const PAST_HALF = 0.5;

// So far above the arc men still stand round it. Common practice, no source.
const ABOVE_ARC = 2;
// Where no arc is drawn.
const USUAL_ARC = 6.75;

/** The same for all runs of a play, so that the floor stays still when another run-through is chosen. */
export function viewOf(playback: Playback): View {
  const known = views.get(playback);
  if (known !== undefined) return known;
  const view = measureView(playback);
  views.set(playback, view);
  return view;
}

// The same for every frame of a play.
const views = new WeakMap<Playback, View>();

function measureView(playback: Playback): View {
  const { boundary, halfLineY, farBaselineY, baselineY, three } = playback.court;
  let [left, right, top, deepest] = [boundary.left * 100, boundary.right * 100, baselineY * 100, 0];
  const include = ({ x, y }: Point) => {
    left = Math.min(left, x * 100 - BODY_ROOM + MARGIN);
    right = Math.max(right, x * 100 + BODY_ROOM - MARGIN);
    top = Math.min(top, y * 100 - BODY_ROOM + MARGIN);
    deepest = Math.max(deepest, y);
  };
  for (const run of playback.runs) {
    // Who gets back on defence once the shot is up may leave the picture.
    const shot = run.releaseAt ?? Infinity;
    for (const track of Object.values(run.tracks)) {
      include(track.start);
      for (const { t0, path } of track.segments) if (t0 < shot) path.forEach(include);
    }
    for (const { t0, stepMs, points } of Object.values(run.defenders)) points.forEach((point, i) => t0 + i * stepMs < shot && include(point));
    for (const state of run.ball) if (state.kind !== 'held') include(state.to);
  }
  const full = deepest > halfLineY + PAST_HALF;
  const arc = (three?.radius ?? USUAL_ARC) + ABOVE_ARC;
  const half = deepest <= arc ? arc * 100 + BODY_ROOM : Math.max(halfLineY * 100 + MARGIN, deepest * 100 + BODY_ROOM);
  const bottom = full ? Math.max(farBaselineY, deepest) * 100 + MARGIN : half;
  return { left: round(left - MARGIN), right: round(right + MARGIN), top: round(top - MARGIN), bottom: round(bottom), full, bodies: full ? FULL_COURT_BODIES : 1 };
}

export const widthOf = (view: View): number => round(view.right - view.left);
export const heightOf = (view: View): number => round(view.bottom - view.top);
// A strip of three frames fits into a window of 1,600 px as it is opened; whoever puts it on a page says his own size.
const PIXELS = 0.3;

/** How large a file is shown that nobody has given a size, for its root element. */
export const sizeOf = (width: number, height: number): string => `width="${Math.round(width * PIXELS)}" height="${Math.round(height * PIXELS)}"`;

export const viewBoxOf = (view: View): string => `${view.left} ${view.top} ${widthOf(view)} ${heightOf(view)}`;
