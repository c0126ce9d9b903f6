// Scene → SVG text. The same nodes are built as elements by the player.
import type { Court } from '../court/court.ts';
import { courtNodes } from './court-lines.ts';
import { ballNode, bodyNode, labelNode } from './figures.ts';
import { escapeText, node, writeSvg, type SvgNode } from './nodes.ts';
import { paint, palettes, type Palette, type PaletteName } from './palette.ts';
import type { Phase, Scene } from './scene.ts';
import { heightOf, sizeOf, viewBoxOf, widthOf, type View } from './view.ts';
import { drawWay } from './ways.ts';

const OPACITY: Readonly<Record<Phase, number | undefined>> = { ahead: 0.5, now: undefined, done: 0.16 };

/**
 * A scene as a whole SVG file: no style sheet, no script, every text escaped, a title for screen readers. One unit is a
 * centimetre on the floor. The same scene gives the same bytes.
 * @param theme one of the palettes by name, or one of your own
 */
export function drawSvg(scene: Scene, theme: PaletteName | Palette = 'light'): string {
  const palette = typeof theme === 'string' ? palettes[theme] : theme;
  const { view } = scene;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewBoxOf(view)}" ${sizeOf(widthOf(view), heightOf(view))} role="img">` +
    `<title>${escapeText(scene.title)}</title>` +
    `<rect x="${view.left}" y="${view.top}" width="${widthOf(view)}" height="${heightOf(view)}" fill="${escapeText(palette.out)}"/>` +
    courtText(scene.court, view, palette) +
    sceneNodes(scene, palette).map(writeSvg).join('') +
    '</svg>'
  );
}

function sceneNodes({ view, ways, bodies, ball, labels }: Scene, palette: Palette): readonly SvgNode[] {
  const look = paintOf(palette);
  const defence = bodies.filter(({ team }) => team === 'defence');
  // Who has the ball is drawn last, so that nobody stands on him.
  const offence = bodies.filter(({ team }) => team === 'offence').toSorted((a, b) => Number(a.hasBall) - Number(b.hasBall));
  return [
    ...ways.map(({ way, phase }) => node('g', { class: `way ${phase}`, opacity: OPACITY[phase] }, ...drawWay(way, look))),
    ...defence.map((body) => bodyNode(body, view.bodies, look)),
    ...offence.map((body) => bodyNode(body, view.bodies, look)),
    ...(ball === undefined ? [] : [ballNode(ball.x, ball.y, ball.z, view.bodies, look)]),
    ...labels.map((label) => labelNode(label, look)),
  ];
}

// The floor is the same in every frame of a play: written once for a court, a view and a palette.
const floors = new WeakMap<Court, WeakMap<Palette, { readonly view: string; readonly text: string }>>();
const paints = new WeakMap<Palette, ReturnType<typeof paint>>();

export function paintOf(palette: Palette): ReturnType<typeof paint> {
  const known = paints.get(palette);
  if (known !== undefined) return known;
  const made = paint(palette);
  paints.set(palette, made);
  return made;
}

export function courtText(court: Court, view: View, palette: Palette): string {
  const box = viewBoxOf(view);
  const kept = floors.get(court)?.get(palette);
  if (kept?.view === box) return kept.text;
  const text = courtNodes(court, view, paintOf(palette)).map(writeSvg).join('');
  const ofCourt = floors.get(court) ?? new WeakMap();
  floors.set(court, ofCourt.set(palette, { view: box, text }));
  return text;
}
