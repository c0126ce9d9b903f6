// Playbacks at random, for laws: whoever holds the ball passes, dribbles or shoots; the others run where they like.
import * as fc from 'fast-check';
import type { Point } from '../../language/court/point.ts';
import { OFFENCE, type BodyId } from '../../language/play/play.ts';
import { placeOf } from '../../language/playback/at.ts';
import type { Playback } from '../../language/playback/playback.ts';
import type { BallState, Run, Segment, Track } from '../../language/timeline/timeline.ts';
import { guardFixture, lighthouse, runs } from './playback-fixture.ts';

const spot = fc.tuple(fc.integer({ min: -7000, max: 7000 }), fc.integer({ min: -1000, max: 11_000 })).map(([x, y]) => [x / 1000, y / 1000] as const);
const player = fc.constantFrom(...OFFENCE);

const legs = fc.array(fc.record({ who: player, to: spot, via: fc.option(spot), rest: fc.integer({ min: 0, max: 1500 }) }), { maxLength: 12 });
const turns = fc.array(fc.record({ to: player, hold: fc.integer({ min: 1, max: 1500 }), flight: fc.integer({ min: 120, max: 900 }), live: fc.boolean(), kind: fc.constantFrom('pass', 'bounce', 'lob', 'skip' as const) }), { maxLength: 6 });

/** A playback with one run; its ball states cover the run without gap, its tracks never overlap. */
export const anyPlayback: fc.Arbitrary<Playback> = fc.tuple(fc.tuple(spot, spot, spot, spot, spot), legs, turns, fc.boolean()).map(([starts, moves, passes, shot]) => {
  const tracks: Record<string, Track & { segments: Segment[] }> = Object.fromEntries(OFFENCE.map((id, i) => [id, { start: point(starts[i]!), segments: [] }]));
  for (const [n, { who, to, via, rest }] of moves.entries()) {
    const track = tracks[who]!;
    const last = track.segments.at(-1);
    const from = last?.path.at(-1) ?? track.start;
    const way = [[from.x, from.y] as const, ...(via === null ? [] : [via]), to];
    if (Math.hypot(to[0] - from.x, to[1] - from.y) < 0.2) continue;
    track.segments.push(runs((last?.t1 ?? 0) + rest, `only/${who}.${n + 1}`, way));
  }
  const movesEnd = Math.max(500, ...Object.values(tracks).flatMap(({ segments }) => segments.map(({ t1 }) => t1)));
  const whole = { end: movesEnd + 20_000, tracks, defenders: {} } as unknown as Run;
  const ball: BallState[] = [];
  let holder: BodyId = '1';
  let t = 0;
  for (const [n, { to, hold, flight, live, kind }] of passes.entries()) {
    ball.push({ kind: 'held', t0: t, t1: (t += hold), by: holder, live, out: false });
    if (to === holder) continue;
    const [from, end] = [placeOf(whole, holder, t)!, placeOf(whole, to, t + flight)!];
    ball.push({ kind: 'flight', t0: t, t1: (t += flight), from, to: end, pass: kind, by: holder, receiver: to, action: `only/${holder}.${90 + n}` });
    holder = to;
  }
  ball.push({ kind: 'held', t0: t, t1: (t = Math.max(t + 100, movesEnd)), by: holder, live: false, out: false });
  const release = t;
  if (shot) ball.push({ kind: 'shot', t0: t, t1: (t += 800), from: placeOf(whole, holder, t - 800)!, to: { x: 0, y: 0 }, shot: 'jumper', by: holder, action: `only/${holder}.99` });
  const run: Playback['runs'][number] = {
    id: 'only', label: 'The only way', steps: ['only'], startsAt: 0, clockStartsAt: 0, ...(shot && { releaseAt: release }), end: t, tracks,
    defenders: guardFixture(tracks, t), ball, events: [{ id: 'call', kind: 'call', part: 'call', at: 0 }], screens: [],
  };
  return { ...lighthouse, runs: [run], findings: [], looks: [], steps: [{ key: 'only', name: 'Only', parent: null, how: 'plain' }] };
});

const point = ([x, y]: readonly [number, number]): Point => ({ x, y });
