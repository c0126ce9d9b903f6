import { describe, expect, it } from 'vitest';
import { playText, timelineOf } from '../support/timeline-of.ts';

/** The corners of his way, metres. */
function wayOf(who: '3' | '5', line: string): readonly (readonly [number, number])[] {
  const three = who === '3' ? '3 left wing' : '3 left corner';
  const run = timelineOf(playText(`from 1 top, 2 right wing, ${three}, 4 right block, 5 left block`, line, 'ends with no shot')).runs[0]!;
  const { start, segments } = run.tracks[who]!;
  return [start, ...segments.flatMap(({ path }) => path.slice(1))].map(({ x, y }) => [Math.round(x * 10) / 10, Math.round(y * 10) / 10] as const);
}

describe('cuts with a corner in them', () => {
  it.each(['5 l-cuts', '5 l-cuts to left wing'])('%s: up the lane to the elbow, then out to the wing', (line) => {
    expect(wayOf('5', line)).toEqual([[-2.8, 0.8], [-2.8, 4.2], [-5.8, 4.2]]);
  });

  it.each(['3 v-cuts', '3 v-cuts to left wing'])('%s: towards the basket first, and back out', (line) => {
    const [start, turn, end] = wayOf('3', line);
    expect(end).toEqual(start);
    expect(Math.hypot(...turn!)).toBeLessThan(Math.hypot(...start!) * 0.65);
  });

  it('a corner the coach wrote is the only one', () => {
    expect(wayOf('5', '5 l-cuts to left wing via nail')).toHaveLength(3);
  });

  it('from the elbow an l-cut has no way up left: he goes straight out', () => {
    const run = timelineOf(playText('from horns', '5 l-cuts to left wing', 'ends with no shot')).runs[0]!;
    expect(run.tracks['5']!.segments).toHaveLength(1);
  });
});
