// What can be taken hold of on the floor at a moment, as plain data: players, the ends of ways, the middle of the way that is picked.
import type { Point } from '../../language/court/point.ts';
import type { Intent } from '../../language/edit/intent.ts';
import { phaseOf, stepAt } from '../../language/picture/scene.ts';
import { lengthOf, toPicture, trim, type Pt } from '../../language/picture/lines.ts';
import { waysOf, type Way } from '../../language/picture/ways.ts';
import type { Moment } from '../../language/playback/at.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { OFFENCE, type BodyId, type PartId, type PlayerNumber } from '../../language/play/play.ts';
import type { LabelledRun } from './state.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface Handle {
  /** The same from picture to picture, so that it keeps the keyboard. */
  readonly key: string;
  readonly kind: 'player' | 'end' | 'bend' | 'draw';
  readonly who: BodyId;
  /** Centimetres in the picture. */
  readonly at: Pt;
  /** A player stands on it: it is neither drawn over his number nor taken hold of in his place. The keyboard still reaches it. */
  readonly under?: boolean;
  /** A player stands on it, but it is what is picked: a hand that draws takes it, a click still means him. */
  readonly over?: boolean;
  /** Where a line to the hand begins; absent where there is none. */
  readonly from?: Pt;
  /** What a click without moving picks. */
  readonly part?: PartId;
  /** For a screen reader: what it is. */
  readonly words: string;
  /** What letting go there means, in metres. */
  readonly intent: (to: Point) => Intent;
}

// A player who stands on the end of his way is its handle.
const ON_HIM = 45;
const LONG_ENOUGH = 150;
/** So near to another player a pass is meant, metres. */
const TO_HIM = 0.7;

/** @param drawing whether a drag from a player draws a new line instead of moving what is written */
export function handlesAt(playback: Playback, run: LabelledRun, moment: Moment, picked: PartId | undefined, drawing: boolean): readonly Handle[] {
  const players = moment.bodies.filter(({ id }) => OFFENCE.includes(id as never));
  if (drawing) return players.map(({ id, x, y }) => drawHandle(playback, run, moment, id, [x * 100, y * 100]));
  const bodies = players.map(({ id, x, y }) => playerHandle(playback, run, moment.t, id, [x * 100, y * 100]));
  const step = stepAt(run, moment.t);
  const shown = waysOf(run).filter((way) => isWritten(playback, way.part) && isLeg(way) && phaseOf(way, step, moment.t) !== undefined);
  const ends = shown.filter((way) => !bodies.some(({ part, at }) => part === way.part && near(at, way.points.at(-1)!, ON_HIM))).map((way) => endHandle(playback, way));
  const bends = shown.filter(({ part, kind, points }) => part === picked && kind !== 'screen' && lengthOf(points) > LONG_ENOUGH).map((way) => bendHandle(playback, way));
  const onTheWay = (handle: Handle): Handle => {
    const covered = bodies.some(({ at }) => near(at, handle.at, ON_HIM));
    return { ...handle, under: covered && handle.part !== picked, over: covered && handle.part === picked };
  };
  return [...ends.map(onTheWay), ...bodies, ...bends.map(onTheWay)];
}

function playerHandle(playback: Playback, run: LabelledRun, t: number, id: BodyId, at: Pt): Handle {
  const latest = run.tracks[id]?.segments.findLast(({ t0, action }) => t0 <= t && isWritten(playback, action));
  const way = latest && waysOf(run).find(({ part, who }) => part === latest.action && who === id);
  if (way === undefined) {
    const start = run.tracks[id]?.start;
    return {
      key: `start ${id}`, kind: 'player', who: id, at, part: `from#${id}`, words: tell(message('Where {id} starts', { id })),
      ...(start !== undefined && near(at, toPicture(start), ON_HIM) ? {} : { from: at }),
      intent: (to) => ({ kind: 'move-start', player: numberOf(id), to }),
    };
  }
  return { ...endHandle(playback, way), key: `player ${id}`, kind: 'player', at };
}

function endHandle(playback: Playback, { part, kind, who, points }: Way): Handle {
  const screen = kind === 'screen';
  return {
    key: `end ${part}`, kind: 'end', who, at: points.at(-1)!, from: points[0]!, part,
    words: screen ? tell(message('Where the screen stands: {words}', { words: playback.says[part] ?? part })) : tell(message('The end of the way: {words}', { words: playback.says[part] ?? part })),
    intent: (to) => ({ kind: screen ? 'move-screen' : 'move-end', action: part, to }),
  };
}

function bendHandle(playback: Playback, { part, who, points }: Way): Handle {
  const at = trim(points, 0, lengthOf(points) / 2).at(-1) ?? points[0]!;
  const from = metres(at);
  return { key: `bend ${part}`, kind: 'bend', who, at, part, words: tell(message('A spot on the way: {words}', { words: playback.says[part] ?? part })), intent: (to) => ({ kind: 'bend', action: part, from, to }) };
}

function drawHandle(playback: Playback, run: LabelledRun, moment: Moment, id: BodyId, at: Pt): Handle {
  const step = stepAt(run, moment.t) ?? playback.steps[0]?.key ?? 'start';
  const hasBall = moment.ball?.holder === id;
  const intent = (to: Point): Intent => {
    const other = hasBall ? moment.bodies.find((body) => body.id !== id && OFFENCE.includes(body.id as never) && Math.hypot(body.x - to.x, body.y - to.y) < TO_HIM) : undefined;
    return other === undefined ? { kind: 'add-cut', player: numberOf(id), step, to } : { kind: 'add-pass', from: numberOf(id), to: numberOf(other.id), step };
  };
  return { key: `draw ${id}`, kind: 'draw', who: id, at, from: at, words: hasBall ? tell(message('Draw a line for {id}, to another player for a pass', { id })) : tell(message('Draw a line for {id}', { id })), intent };
}

export const metres = ([x, y]: Pt): Point => ({ x: Math.round(x) / 100, y: Math.round(y) / 100 });

const numberOf = (id: BodyId): PlayerNumber => Number(id) as PlayerNumber;
const near = (a: Pt, b: Pt, by: number): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < by;
const isLeg = ({ kind, afterShot }: Way): boolean => (kind === 'cut' || kind === 'dribble' || kind === 'screen') && afterShot !== true;
const isWritten = (playback: Playback, part: PartId): boolean => part.includes('/') && playback.text[part] !== undefined;

