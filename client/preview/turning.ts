// The whole court laid on its side where the screen is wide and low: the basket attacked at the right, the offence's left above. Only what
// stands on the floor is turned; names and numbers stay upright.
import type { Pt } from '../../language/picture/lines.ts';
import { heightOf, widthOf, type View } from '../../language/picture/view.ts';

/** A place of the upright picture in the one that is drawn, and back. */
export interface Turning {
  readonly turned: boolean;
  readonly toDrawn: (at: Pt) => Pt;
  readonly toUpright: (at: Pt) => Pt;
}

const same = (at: Pt): Pt => at;
export const UPRIGHT: Turning = { turned: false, toDrawn: same, toUpright: same };
export const ON_ITS_SIDE: Turning = { turned: true, toDrawn: ([x, y]) => [-y, x], toUpright: ([x, y]) => [y, -x] };

export function drawnView(view: View, { turned }: Turning): View {
  if (!turned) return view;
  const { left, right, top, bottom } = view;
  return { ...view, left: -bottom, right: -top, top: left, bottom: right };
}

/** The window, pixels, and whether the floor has it for itself. */
export interface Screen {
  readonly width: number;
  readonly height: number;
  readonly team: boolean;
}

// What stands above and below the floor, and beside it: as the style sheet lays it out. Two columns from 860 px on.
const TWO_COLUMNS = 860;
const AROUND_TEAM = 160;
const AROUND_TEAM_LOW = 70;
const LOW = 480;
const AROUND_COLUMN = 225;
const AROUND_FLOOR = 330;
// A coach draws his court upright: it is turned only where he sees so much more of it.
const WORTH_IT = 1.3;

/** The court as it is drawn largest; a half court always stands upright. */
export function turningFor(view: View, screen: Screen): Turning {
  if (!view.full) return UPRIGHT;
  return scaleIn(screen, heightOf(view), widthOf(view)) > WORTH_IT * scaleIn(screen, widthOf(view), heightOf(view)) ? ON_ITS_SIDE : UPRIGHT;
}

function scaleIn({ width, height, team }: Screen, across: number, down: number): number {
  if (team) return Math.min((width - 32) / across, (height - (width > height && height <= LOW ? AROUND_TEAM_LOW : AROUND_TEAM)) / down);
  if (width >= TWO_COLUMNS) return Math.min((0.6 * width) / across, (height - AROUND_COLUMN) / down);
  return Math.min((Math.min(width, 720) - 28) / across, Math.max(260, height - AROUND_FLOOR) / down);
}
