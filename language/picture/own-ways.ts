// One player's own play in one picture: all he does in the steps that are run without a counter, and where the others start.
import type { Playback } from '../playback/playback.ts';
import type { BodyId } from '../play/play.ts';
import { stepFrames, type Frame } from './frames.ts';
import { node, type SvgNode } from './nodes.ts';
import type { Palette } from './palette.ts';
import { frameNodes } from './strip.ts';
import { viewOf } from './view.ts';

/** What stands on the floor of his picture; nothing of a play without a run-through. */
export function ownWays(playback: Playback, who: BodyId, palette: Palette): readonly SvgNode[] {
  const [first, ...more] = stepFrames(playback);
  if (first === undefined) return [];
  const counters = new Set(playback.steps.filter(({ how, condition }) => how === 'instead' || condition !== undefined).map(({ key }) => key));
  const ways = [first, ...more.filter(({ step }) => !counters.has(step))].flatMap((frame) => frame.ways.filter((way) => way.who === who));
  const view = viewOf(playback);
  // In a picture of three centimetres.
  const larger = (by: number) => ({ ...view, bodies: view.bodies * by });
  const alone = (isHe: boolean): Frame => ({ ...first, bodies: first.bodies.filter(({ id }) => (id === who) === isHe), ways: isHe ? ways : [], labels: [] });
  return [node('g', { opacity: 0.45 }, ...frameNodes(alone(false), larger(1.4), palette)), ...frameNodes(alone(true), larger(1.6), palette)];
}
