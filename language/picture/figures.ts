// Players, ball and labels as nodes round their own middle; whoever draws them moves them to their place.
import type { Placed } from './labels.ts';
import { across, pathData } from './lines.ts';
import { node, round, textNode, type SvgNode } from './nodes.ts';
import type { Part } from './palette.ts';
import type { SceneBody } from './scene.ts';
import { BAR, BAR_BEFORE } from './ways.ts';

type Paint = Readonly<Record<Part, SvgNode['attrs']>>;

/** Radii in centimetres: larger than life, so that a number can be read across a desk. */
const OFFENCE_RADIUS = 42;
const CARRIER_RADIUS = 51;
const DEFENCE_RADIUS = 41;
const BALL_RADIUS = 15;

/** A man of the offence: a full disc with his number. */
export function offenceNodes(label: string, paint: Paint): readonly SvgNode[] {
  return [node('circle', { class: 'disc', r: OFFENCE_RADIUS, ...paint.offence }), textNode(label, { class: 'number', ...paint['offence-number'] })];
}

/** The circle round the man with the ball. */
export function carrierNode(paint: Paint): SvgNode {
  return node('circle', { class: 'carrier', r: CARRIER_RADIUS, ...paint.carrier });
}

/** A defender's open arms, to the right; turned to where he faces. */
export function armsNode(paint: Paint): SvgNode {
  const angle = (105 * Math.PI) / 180;
  const [x, y] = [round(Math.cos(angle) * DEFENCE_RADIUS), round(Math.sin(angle) * DEFENCE_RADIUS)];
  return node('path', { class: 'arms', d: `M${x} ${-y}A${DEFENCE_RADIUS} ${DEFENCE_RADIUS} 0 1 1 ${x} ${y}`, ...paint.defence });
}

export function defenceLabel(label: string, paint: Paint): SvgNode {
  return textNode(label, { class: 'number', ...paint['defence-label'] });
}

/** The bar a screener stands for, before him when he faces right; turned to where he faces. */
export function screenBar(paint: Paint): SvgNode {
  return node('path', { class: 'bar', d: across([BAR_BEFORE, 0], [1, 0], BAR), ...paint.bar });
}

/** The ball round its own middle. */
export function ballNodes(paint: Paint): readonly SvgNode[] {
  return [
    node('circle', { class: 'ball', r: BALL_RADIUS, ...paint.ball }),
    node('path', { class: 'seam', d: 'M-13 -5Q0 5 13 -5M-3 -14Q5 0 -3 14', ...paint['ball-seam'] }),
  ];
}

/** How large the ball is drawn at a height in metres, and how far its shadow falls off: the eye reads height from both. */
export function ballLook(z: number): { readonly scale: number; readonly shadow: number } {
  return { scale: round((0.82 + Math.min(Math.max(z, 0), 5) * 0.16) * 10) / 10, shadow: round(Math.max(0, z - 1.2) * 9) };
}

export const degrees = (radians: number): number => round((radians * 180) / Math.PI);
const move = (x: number, y: number): string => `translate(${round(x)} ${round(y)})`;

export function bodyNode(body: SceneBody, scale: number, paint: Paint): SvgNode {
  const { x, y, team, label, facing, hasBall, screening } = body;
  const transform = scale === 1 ? move(x, y) : `${move(x, y)} scale(${scale})`;
  const turned = (child: SvgNode) => node('g', { transform: `rotate(${degrees(facing)})` }, child);
  if (team === 'defence') return node('g', { class: 'body defence', transform }, turned(armsNode(paint)), defenceLabel(label, paint));
  return node(
    'g',
    { class: 'body offence', transform },
    ...(screening ? [turned(screenBar(paint))] : []),
    ...(hasBall ? [carrierNode(paint)] : []),
    ...offenceNodes(label, paint),
  );
}

export function ballNode(x: number, y: number, z: number, size: number, paint: Paint): SvgNode {
  const { scale, shadow } = ballLook(z);
  const shadowNode = node('circle', { class: 'shadow', cx: 0, cy: shadow, r: 13, ...paint['ball-shadow'] });
  return node('g', { class: 'ball', transform: move(x, y) }, ...(shadow > 0 ? [shadowNode] : []), node('g', { transform: `scale(${round(scale * size * 10) / 10})` }, ...ballNodes(paint)));
}

/** A look's name on a rounded plate, or a finding's exclamation mark in a triangle. */
export function labelNode({ text, kind, x, y, width, height, size }: Placed, paint: Paint): SvgNode {
  if (kind === 'look') {
    return node(
      'g',
      { class: 'label look', transform: move(x, y) },
      node('rect', { x: round(-width / 2), y: round(-height / 2), width: round(width), height: round(height), rx: round(height / 2), ...paint.look }),
      textNode(text, { 'font-size': round(size), ...paint['look-text'] }),
    );
  }
  const half = height * 0.56;
  const triangle = `${pathData([[0, -half * 1.02], [half * 1.04, half * 0.84], [-half * 1.04, half * 0.84]])}Z`;
  return node(
    'g',
    { class: 'label problem', transform: move(x, y) },
    node('path', { d: triangle, ...paint.problem }),
    textNode(text, { 'font-size': round(size * 0.95), y: round(half * 0.2), ...paint['problem-text'] }),
  );
}
