// The floor and its lines, from the measures of the rule set. Centimetres, basket at the top: left and right as the offence sees them.
import type { Court } from '../court/court.ts';
import { node, round, type SvgNode } from './nodes.ts';
import type { Part } from './palette.ts';
import type { View } from './view.ts';

type Paint = Readonly<Record<Part, SvgNode['attrs']>>;

export function courtNodes(court: Court, view: View, paint: Paint): readonly SvgNode[] {
  const { left, right, bottom, top } = court.boundary;
  const nodes: SvgNode[] = [node('rect', { class: 'floor', ...box(left, bottom, right, view.full ? top : view.bottom / 100), ...paint.floor })];
  const ends = view.full ? [near, far(court)] : [near];
  for (const end of ends) nodes.push(...endPaint(court, end, paint));
  for (const end of ends) nodes.push(...endLines(court, end, paint));
  const circle = cm(court.centreCircleRadius);
  const half = cm(court.halfLineY);
  const halfLine = line(`M${cm(left)} ${half}H${cm(right)}`, paint);
  if (view.full) {
    nodes.push(halfLine, node('circle', { class: 'line', cx: 0, cy: half, r: circle, ...paint.line }), node('rect', { class: 'line', ...box(left, bottom, right, top), ...paint.line }));
  } else {
    // Nothing is drawn outside the view: whoever shows the picture in another shape sees no stray lines.
    if (view.bottom >= half) nodes.push(halfLine);
    if (view.bottom > half - circle) nodes.push(line(`M${-circle} ${half}A${circle} ${circle} 0 0 1 ${circle} ${half}`, paint));
    nodes.push(line(`M${cm(left)} ${view.bottom}V${cm(bottom)}H${cm(right)}V${view.bottom}`, paint));
  }
  return nodes;
}

/** Turns a y of the end attacked into the y of one end or the other; `s` is the sense of arcs. */
interface End {
  readonly y: (y: number) => number;
  readonly s: 0 | 1;
}
const near: End = { y: (y) => y, s: 0 };
const far = (court: Court): End => ({ y: (y) => 2 * court.halfLineY - y, s: 1 });

const cm = (metres: number): number => round(metres * 100);

function box(left: number, bottom: number, right: number, top: number) {
  return { x: cm(left), y: cm(Math.min(bottom, top)), width: cm(right - left), height: cm(Math.abs(top - bottom)) };
}

const line = (d: string, paint: Paint): SvgNode => node('path', { class: 'line', d, ...paint.line });

function endPaint(court: Court, { y }: End, paint: Paint): readonly SvgNode[] {
  const { left, right } = court.lane;
  return [node('rect', { class: 'paint', ...box(left, y(court.baselineY), right, y(court.freeThrowLineY)), ...paint.paint })];
}

function endLines(court: Court, { y, s }: End, paint: Paint): readonly SvgNode[] {
  const { left, right } = court.lane;
  const base = cm(y(court.baselineY));
  const free = cm(y(court.freeThrowLineY));
  const circle = cm(court.centreCircleRadius);
  const side = cm(court.boundary.right);
  const mark = cm(y(court.throwInMarkY));
  const ring = cm(y(court.ring.y));
  const board = cm(y(court.boardY));
  const half = cm(court.boardWidth / 2);
  const nodes = [
    line(`M${cm(left)} ${base}V${free}H${cm(right)}V${base}`, paint),
    line(`M${-circle} ${free}A${circle} ${circle} 0 0 ${s} ${circle} ${free}`, paint),
    line(`M${-side} ${mark}h30M${side} ${mark}h-30`, paint),
  ];
  if (court.three !== undefined) {
    const corner = cm(court.three.corner);
    const radius = cm(court.three.radius);
    const join = cm(y(court.three.joinY));
    nodes.push(line(`M${-corner} ${base}V${join}A${radius} ${radius} 0 0 ${s} ${corner} ${join}V${base}`, paint));
  }
  if (court.restrictedRadius !== undefined) {
    const radius = cm(court.restrictedRadius);
    nodes.push(line(`M${-radius} ${board}V${ring}A${radius} ${radius} 0 0 ${s} ${radius} ${ring}V${board}`, paint));
  }
  nodes.push(
    node('path', { class: 'board', d: `M${-half} ${board}H${half}`, ...paint.board }),
    node('circle', { class: 'ring', cx: 0, cy: ring, r: cm(court.ringRadius), ...paint.ring }),
  );
  return nodes;
}
