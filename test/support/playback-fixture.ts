// A playback made by hand: three steps, a screen, a dribble, passes, a hand-off and shots, two main run-throughs and a counter.
// It stands in for a compiled play where a test is about the picture or the player, not about what a play means.
import { courtOf } from '../../language/court/court.ts';
import type { Point } from '../../language/court/point.ts';
import { fiba } from '../../language/court/rules/fiba.ts';
import { legProfile } from '../../language/motion/legs.ts';
import type { ActionId, BodyId, PassKind, ShotKind } from '../../language/play/play.ts';
import { DEFENCE, OFFENCE } from '../../language/play/play.ts';
import { placeOf } from '../../language/playback/at.ts';
import { PLAYBACK_VERSION, type Playback } from '../../language/playback/playback.ts';
import type { BallState, Run, Segment, SetScreen, TimedEvent, Track } from '../../language/timeline/timeline.ts';

type Way = readonly (readonly [number, number])[];

const whole = (metres: number): number => Math.round(metres * 1000) / 1000 + 0;
const place = ([x, y]: readonly [number, number]): Point => ({ x: whole(x), y: whole(y) });
const wayLength = (path: readonly Point[]): number =>
  path.slice(1).reduce((sum, b, i) => sum + Math.hypot(b.x - path[i]!.x, b.y - path[i]!.y), 0);

/** A stretch of running: its end follows from the legs. */
export function runs(t0: number, action: ActionId, way: Way, options: { withBall?: boolean; vmax?: number } = {}): Segment {
  const path = way.map(place);
  const profile = legProfile({ distance: wayLength(path), v0: 0, v1: 0, vmax: options.vmax ?? (options.withBall ? 4.6 : 5.2), tau: 0.9, brake: 5 });
  return { t0, t1: t0 + profile.durationMs, action, path, profile, withBall: options.withBall ?? false };
}

/** A slight bow between two places, as a cut off a screen runs. */
export function bow(from: readonly [number, number], to: readonly [number, number], by: number, points = 8): Way {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  return Array.from({ length: points + 1 }, (_, i) => {
    const u = i / points;
    const out = by * 4 * u * (1 - u);
    return [from[0] + dx * u - (dy / length) * out, from[1] + dy * u + (dx / length) * out] as const;
  });
}

/** Man to man: an arm and a half from his man on the line to the ring, a beat late, at keyframes 100 ms apart. */
export function guardFixture(tracks: Run['tracks'], end: number): Run['defenders'] {
  const run = { end, tracks, defenders: {} } as unknown as Run;
  return Object.fromEntries(
    OFFENCE.map((id, i) => {
      const points = Array.from({ length: Math.ceil(end / 100) + 1 }, (_, k) => {
        const man = placeOf(run, id, Math.max(0, k * 100 - 250))!;
        const gap = Math.hypot(man.x, man.y) || 1;
        const back = Math.min(gap * 0.5, 1.1 + (gap > 6 ? 0.5 : 0));
        return place([man.x - (man.x / gap) * back, man.y - (man.y / gap) * back]);
      });
      return [DEFENCE[i], { t0: 0, stepMs: 100, points }];
    }),
  );
}

const start: Record<(typeof OFFENCE)[number], readonly [number, number]> = {
  '1': [0.4, 8.4], '2': [-2.75, 1.4], '3': [-2.75, 0.2], '4': [2.75, 4.5], '5': [-2.75, 3.6],
};

const hold = (by: BodyId, t0: number, t1: number, live = false, out = false): BallState => ({ kind: 'held', t0, t1, by, live, out });
type Flight = Extract<BallState, { kind: 'flight' }>;
const pass = (action: ActionId, by: BodyId, receiver: BodyId, t0: number, t1: number, from: Point, to: Point, kind: PassKind = 'pass'): Flight =>
  ({ kind: 'flight', t0, t1, from, to, pass: kind, by, receiver, action });
const shoot = (action: ActionId, by: BodyId, t0: number, t1: number, from: Point, shot: ShotKind): BallState =>
  ({ kind: 'shot', t0, t1, from, to: { x: 0, y: 0 }, shot, by, action });

const end = (segment: Segment): Point => segment.path.at(-1)!;
const pair = ({ x, y }: Point): readonly [number, number] => [x, y];

const SET_UP = 2500;
const zip1 = runs(SET_UP, 'zip/1.1', [start['1'], [-1.6, 8.2], [-4.6, 6.3]], { withBall: true });
const zip5 = runs(SET_UP + 40, 'zip/5.1', [start['5'], [-2.5, 2.1]], { vmax: 4 });
const set5 = zip5.t1 + 200;
const zip3 = runs(set5 - 150, 'zip/3.1', bow(start['3'], [-0.3, 7.6], -0.9));
const zip2 = runs(SET_UP + 300, 'zip/2.1', [start['2'], [-0.6, -0.75], [6.2, -0.4]]);
const parting = Math.max(zip1.t1, zip3.t1) + 120;

const zipScreen: SetScreen = { action: 'zip/5.1', by: '5', at: end(zip5), facing: { x: 0.555, y: -0.832 }, from: set5, to: zip3.t0 + 900, users: ['3'] };
const pass3 = pass('middle/1.1', '1', '3', parting, parting + 420, end(zip1), end(zip3));
const middle4 = runs(zip3.t1 - 600, 'middle/4.1', [start['4'], [1.1, 6.7]]);
const screen4: SetScreen = { action: 'middle/4.1', by: '4', at: end(middle4), facing: { x: -0.6, y: -0.8 }, from: Math.max(middle4.t1, pass3.t1) + 100, to: pass3.t1 + 1500, users: ['3'] };
const drive3 = runs(pass3.t1 + 500, 'middle/3.1', bow(pair(end(zip3)), [2.35, 4.3], 0.7), { withBall: true });
const roll4 = runs(screen4.to, 'middle/4.2', bow(pair(end(middle4)), [0.5, 1.1], -0.4));
const lift5 = runs(screen4.to - 400, 'middle/5.1', [pair(end(zip5)), [-5.8, -0.3]]);

const event = (id: string, kind: TimedEvent['kind'], at: number, who?: BodyId): TimedEvent => ({ id: `${id}:${kind}`, kind, part: id, who, at: Math.round(at) });
const legEvents = (...legs: readonly Segment[]): TimedEvent[] =>
  legs.flatMap((leg) => [event(leg.action, 'start', leg.t0), event(leg.action, 'arrive', leg.t1)]);

const zipEvents: readonly TimedEvent[] = [
  event('call', 'call', 0), event('zip', 'open', SET_UP), ...legEvents(zip1, zip5, zip3, zip2), event('zip/5.1', 'set', set5, '5'),
  event('zip/3.1', 'use', zip3.t0 + 700, '3'),
];

function makeRun(run: Pick<Run, 'id' | 'steps' | 'look' | 'ball' | 'screens'> & { label: string; legs: readonly Segment[]; events: readonly TimedEvent[] }): Playback['runs'][number] {
  const tracks = Object.fromEntries(
    OFFENCE.map((id): [BodyId, Track] => [
      id,
      { start: place(start[id]), segments: run.legs.filter(({ action }) => action.split(/[/?]/).at(-1)!.startsWith(`${id}.`)).toSorted((a, b) => a.t0 - b.t0) },
    ]),
  );
  const last = run.ball.at(-1)!;
  const release = run.ball.find(({ kind }) => kind === 'shot')?.t0;
  const { legs: _, ...rest } = run;
  return {
    ...rest,
    startsAt: SET_UP,
    clockStartsAt: 0,
    releaseAt: release,
    end: last.t1,
    tracks,
    defenders: guardFixture(tracks, last.t1),
    events: run.events.toSorted((a, b) => a.at - b.at),
  };
}

const zipBall: readonly BallState[] = [hold('1', 0, SET_UP), hold('1', SET_UP, zip1.t1, true), hold('1', zip1.t1, parting)];
const middleLegs = [zip1, zip5, zip3, zip2, middle4];
const middleEvents = [
  ...zipEvents, event('middle', 'open', parting - 100), event('middle/1.1', 'release', parting, '1'), event('middle/1.1', 'catch', pass3.t1, '3'),
  ...legEvents(middle4), event('middle/4.1', 'set', screen4.from, '4'), ...legEvents(drive3),
];

const pullUpAt = drive3.t1 + 450;
const pullUp = makeRun({
  id: 'middle?3.1', label: 'Look 3 pull-up', steps: ['zip', 'middle'], look: 'middle?3.1',
  legs: [...middleLegs, drive3, roll4, lift5],
  ball: [...zipBall, pass3, hold('3', pass3.t1, drive3.t0), hold('3', drive3.t0, drive3.t1, true), hold('3', drive3.t1, pullUpAt),
    shoot('middle?3.1/3.1', '3', pullUpAt, pullUpAt + 900, end(drive3), 'jumper')],
  screens: [zipScreen, screen4],
  events: [...middleEvents, ...legEvents(roll4, lift5), event('middle?3.1', 'read', drive3.t1, '3'), event('middle?3.1/3.1', 'shot', pullUpAt, '3'), event('middle?3.1/3.1', 'rim', pullUpAt + 900)],
});

const lob = pass('middle?4.1/3.1', '3', '4', drive3.t1 + 300, drive3.t1 + 950, end(drive3), end(roll4), 'bounce');
const layupAt = Math.max(lob.t1, roll4.t1) + 250;
const onTheRoll = makeRun({
  id: 'middle?4.1', label: '4 on the roll', steps: ['zip', 'middle'], look: 'middle?4.1',
  legs: [...middleLegs, drive3, roll4, lift5],
  ball: [...zipBall, pass3, hold('3', pass3.t1, drive3.t0), hold('3', drive3.t0, drive3.t1, true), hold('3', drive3.t1, lob.t0), lob,
    hold('4', lob.t1, layupAt), shoot('middle?4.1/4.1', '4', layupAt, layupAt + 500, end(roll4), 'layup')],
  screens: [zipScreen, screen4],
  events: [...middleEvents, ...legEvents(roll4, lift5), event('middle?3.1', 'read', drive3.t1, '3'), event('middle?3.1', 'passed-up', drive3.t1 + 250, '3'),
    event('middle?4.1', 'read', lob.t0, '4'), event('middle?4.1/3.1', 'release', lob.t0, '3'), event('middle?4.1/3.1', 'catch', lob.t1, '4'),
    event('middle?4.1/4.1', 'shot', layupAt, '4'), event('middle?4.1/4.1', 'rim', layupAt + 500)],
});

const slip4 = runs(pass3.t1 - 200, 'slip/4.1', bow(pair(end(middle4)), [0.4, 1], -0.3));
const slipPass = pass('slip?4.1/3.1', '3', '4', slip4.t1 - 500, slip4.t1 + 100, end(zip3), end(slip4), 'lob');
const slipLayup = slipPass.t1 + 350;
const slip = makeRun({
  id: 'slip?4.1', label: 'Slip: 4', steps: ['zip', 'slip'], look: 'slip?4.1',
  legs: [zip1, zip5, zip3, zip2, { ...middle4, action: 'slip/4.0' }, slip4],
  ball: [...zipBall, { ...pass3, action: 'slip/1.1' }, hold('3', pass3.t1, slipPass.t0), slipPass, hold('4', slipPass.t1, slipLayup),
    shoot('slip?4.1/4.1', '4', slipLayup, slipLayup + 450, end(slip4), 'layup')],
  screens: [zipScreen],
  events: [...zipEvents, event('slip', 'open', parting - 100), event('slip/1.1', 'release', parting, '1'), event('slip/1.1', 'catch', pass3.t1, '3'),
    ...legEvents(slip4), event('slip?4.1', 'read', slipPass.t0, '4'), event('slip?4.1/3.1', 'release', slipPass.t0, '3'), event('slip?4.1/3.1', 'catch', slipPass.t1, '4'),
    event('slip?4.1/4.1', 'shot', slipLayup, '4'), event('slip?4.1/4.1', 'rim', slipLayup + 450)],
});

const says: Readonly<Record<string, string>> = {
  'zip/1.1': '1 dribbles to the left wing', 'zip/5.1': '5 screens down for 3', 'zip/3.1': '3 cuts off 5 to the top', 'zip/2.1': '2 clears to the right corner',
  'middle/1.1': '1 passes to 3', 'middle/4.1': '4 screens the ball for 3', 'middle/4.2': '4 rolls to the rim', 'middle/3.1': '3 drives off 4 to the right elbow',
  'middle/5.1': '5 spaces to the left corner', 'middle?3.1': 'Look: 3 pulls up', 'middle?3.1/3.1': '3 shoots the jumper', 'middle?4.1': 'Look: 4 on the roll',
  'middle?4.1/3.1': '3 bounces it to 4', 'middle?4.1/4.1': '4 lays it in', 'slip/1.1': '1 passes to 3', 'slip/4.0': '4 comes up as if to screen', 'slip/4.1': '4 slips to the rim',
  'slip?4.1': 'Look: 4 behind the show', 'slip?4.1/3.1': '3 lobs to 4', 'slip?4.1/4.1': '4 lays it in',
};
const lines: readonly string[] = ['zip', 'zip/1.1', 'zip/5.1', 'zip/3.1', 'zip/2.1', 'middle', 'middle/1.1', 'middle/4.1', 'middle/4.2', 'middle/3.1', 'middle/5.1', 'middle?3.1', 'middle?4.1', 'slip', 'slip/1.1', 'slip/4.1', 'slip?4.1'];

const time = (run: Playback['runs'][number], setUp = SET_UP) => {
  const shot = run.ball.at(-1)!;
  const released = { early: run.releaseAt! - 500, typical: run.releaseAt!, late: run.releaseAt! + 900 };
  const fromStart = { early: released.early - setUp, typical: released.typical - setUp, late: released.late - setUp };
  return { look: run.look!, run: run.id, ...released, flight: shot.t1 - shot.t0, setUp, onClock: released, fromStart };
};

/** The made-up play "Lighthouse" as the player is given it. */
export const lighthouse: Playback = {
  version: PLAYBACK_VERSION,
  play: { key: 'play:lighthouse', name: 'Lighthouse', level: 'u14', rules: 'fiba', tags: ['last-shot'], callWith: 26, throwIn: false },
  court: courtOf(fiba),
  bodies: [
    ...OFFENCE.map((id) => ({ id, team: 'offence' as const, label: id })),
    ...DEFENCE.map((id) => ({ id, team: 'defence' as const, label: id })),
  ],
  steps: [
    { key: 'zip', name: 'Zip', parent: null, how: 'plain' },
    { key: 'middle', name: 'Middle', parent: 'zip', how: 'plain' },
    { key: 'slip', name: 'Slip', parent: 'zip', how: 'instead', condition: 'X4 shows on 3' },
  ],
  looks: [
    { id: 'middle?3.1', step: 'middle', who: '3', label: 'pull-up' },
    { id: 'middle?4.1', step: 'middle', who: '4', label: 'on the roll' },
    { id: 'slip?4.1', step: 'slip', who: '4', label: 'behind the show' },
  ],
  says,
  runs: [pullUp, onTheRoll, slip],
  times: { looks: [time(pullUp), time(onTheRoll), time(slip)], firstLook: { fromCall: 16, alreadySet: 13 }, allLooks: { fromCall: 17, alreadySet: 15 } },
  findings: [
    {
      code: 'shot-window', severity: 'warning',
      message: 'A miss by 4 on the roll leaves 3.6 s of the 4 s you asked for. Call it with 27 or more on the clock, or ask for less.',
      params: { left: 3.6, asked: 4 }, place: { line: 20, at: 8, to: 28 }, part: 'middle?4.1', run: 'middle?4.1', moment: layupAt, spot: { x: 0.5, y: 1.1 },
      related: [], fixes: [],
    },
    {
      code: 'screen-room', severity: 'hint', message: '5 sets his screen 0.4 m from X3, who cannot see him: give him a step.', params: { room: 0.4 },
      place: { line: 10, at: 4, to: 24 }, part: 'zip/5.1', moment: set5, spot: end(zip5), related: [], fixes: [],
    },
  ],
  told: [
    { text: 'Lighthouse starts from a stack; 1 has the ball at the top.', part: 'from' },
    ...['zip/1.1', 'zip/5.1', 'zip/3.1', 'zip/2.1', 'middle/1.1', 'middle/4.1', 'middle/3.1', 'middle/4.2', 'middle?3.1', 'middle?4.1', 'slip/4.1', 'slip?4.1'].map((part) => ({
      text: `${says[part]!}.`, part,
    })),
  ],
  text: { from: { line: 3, at: 2, to: 25 }, ...Object.fromEntries(lines.map((part, i) => [part, { line: i + 8, at: 4, to: 30 }])) },
};

/** The same with a second name, and every word a coach can write turned into an attack on the page. */
export function hostile(text = '<img src=x onerror="window.hacked=1">'): Playback {
  return {
    ...lighthouse,
    play: { ...lighthouse.play, name: text, tags: [text, '</script><script>window.hacked=1</script>'] },
    steps: lighthouse.steps.map((step) => ({ ...step, name: text, condition: text })),
    looks: lighthouse.looks.map((look) => ({ ...look, label: text })),
    says: Object.fromEntries(Object.keys(says).map((part) => [part, text])),
    runs: lighthouse.runs.map((run) => ({ ...run, label: text })),
    findings: lighthouse.findings.map((finding) => ({ ...finding, message: text })),
    told: lighthouse.told.map((said) => ({ ...said, text })),
  };
}

