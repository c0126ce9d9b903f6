// Pictures for a code host: one file that is readable on a light and on a dark page.
import type { Court } from '../../language/court/court.ts';
import { courtText, paintOf } from '../../language/picture/draw.ts';
import { escapeText, writeSvg, type SvgNode } from '../../language/picture/nodes.ts';
import { dark, light, type Palette } from '../../language/picture/palette.ts';
import type { View } from '../../language/picture/view.ts';

// A dark colour is found by the light one it replaces, so no light colour may stand for two: those that do are made a shade different.
const { palette, twins } = pair();

function pair(): { readonly palette: Palette; readonly twins: ReadonlyMap<string, string> } {
  const found = new Map<string, string>();
  const names = Object.keys(light) as (keyof Palette)[];
  const own = Object.fromEntries(names.map((name) => {
    let bright = light[name];
    while (found.has(bright) && found.get(bright) !== dark[name]) bright = shade(bright);
    found.set(bright, dark[name]);
    return [name, bright];
  })) as unknown as Palette;
  return { palette: own, twins: found };
}

/** The next colour in the blue, where nobody sees it. */
function shade(colour: string): string {
  const value = Number.parseInt(colour.slice(1), 16);
  return `#${(value % 256 === 0 ? value + 1 : value - 1).toString(16).padStart(6, '0')}`;
}

/** The palette every picture of the reference is drawn with. */
export { palette };
export const paint = paintOf(palette);

/**
 * A picture that follows the page it stands on: a small style sheet turns its colours over where the reader's page is dark. Readers that know
 * no style sheet see the light one on its own ground.
 */
export function adaptive(svg: string): string {
  const rules = [...twins].flatMap(([bright, dim]) => (['fill', 'stroke'] as const).flatMap((what) => (svg.includes(`${what}="${bright}"`) ? [`[${what}="${bright}"]{${what}:${dim}}`] : [])));
  return `${svg.replace('</title>', `</title><style>@media (prefers-color-scheme:dark){${rules.join('')}}</style>`)}\n`;
}

/** A box on the floor in metres, as a viewBox in centimetres. */
export function boxOf(left: number, bottom: number, right: number, top: number): string {
  return [left, bottom, right - left, top - bottom].map((metres) => Math.round(metres * 100)).join(' ');
}

/** The part of the floor with these points and the ring on it, four by three, not smaller than a man can be told on. Centimetres. */
export function boxRound({ boundary }: Court, points: readonly (readonly [number, number])[]): string {
  const room = 110;
  const all = [...points, [0, 60] as const];
  const [left, right] = [Math.min(-300, ...all.map(([x]) => x)) - room, Math.max(300, ...all.map(([x]) => x)) + room];
  const top = Math.min(boundary.bottom * 100, ...all.map(([, y]) => y - 20)) - 70;
  const bottom = Math.max(550, ...all.map(([, y]) => y)) + room;
  const width = Math.max(right - left, ((bottom - top) * 4) / 3, 980);
  const middle = Math.min(Math.max((left + right) / 2, boundary.left * 100 - 70 + width / 2), boundary.right * 100 + 70 - width / 2);
  const centre = width > (boundary.right - boundary.left) * 100 + 140 ? 0 : left < boundary.left * 100 - 70 || right > boundary.right * 100 + 70 ? (left + right) / 2 : middle;
  return [centre - width / 2, top, width, (width * 3) / 4].map(Math.round).join(' ');
}

/** Half the floor, cut off a little before half court: for pictures laid side by side. `outside`: metres of it beside the lines. */
export function halfCourt({ boundary }: Court, top = 9.6, outside = 0.6): string {
  return boxOf(boundary.left - outside, boundary.bottom - 0.9, boundary.right + outside, top);
}

export function wholeCourt({ boundary }: Court): string {
  return boxOf(boundary.left - 1.2, boundary.bottom - 1.2, boundary.right + 1.2, boundary.top + 1.2);
}

/** The floor with something on it, as a file. */
export function floorPicture(court: Court, title: string, nodes: readonly SvgNode[], shown: string, full = false): string {
  const [left, top, width, height] = shown.split(' ').map(Number) as [number, number, number, number];
  const view: View = { left, top, right: left + width, bottom: top + height, full, bodies: 1 };
  return adaptive(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${shown}" role="img"><title>${escapeText(title)}</title>` +
    `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${palette.out}"/>${courtText(court, view, palette)}${nodes.map(writeSvg).join('')}</svg>`,
  );
}
