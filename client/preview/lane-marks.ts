// What stands on the lanes, as plain data: a lane a player and one for the ball, with bars, looks and findings in time.
import { bodyOfPart } from '../../language/playback/moments.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { looksOf } from '../../language/picture/scene.ts';
import { waysOf, type Way, type WayKind } from '../../language/picture/ways.ts';
import { OFFENCE, type BodyId, type PartId } from '../../language/play/play.ts';
import type { LabelledRun } from './state.ts';
import { clockWords, tenths } from './words.ts';
import { message, type Message, type Words } from '../../language/message/message.ts';
import { severityWords } from './callout.ts';
import { tell } from './tell.ts';

export type MarkKind = WayKind | 'held' | 'wait' | 'look' | 'finding';

export interface LaneMark {
  readonly kind: MarkKind;
  /** ms; a look and a finding stand at `from`. */
  readonly from: number;
  readonly to: number;
  readonly part: PartId | undefined;
  /** Place in `playback.findings`. */
  readonly finding?: number;
  readonly severity?: 'error' | 'warning' | 'hint';
  readonly taken?: boolean;
  /** Once the shot is up: to the boards or back. */
  readonly afterShot?: boolean;
  /** In the bar itself. */
  readonly short: string;
  /** Whole, for the tooltip and the screen reader. */
  readonly words: string;
}

export interface Lane {
  readonly id: BodyId | 'ball';
  readonly name: string;
  readonly marks: readonly LaneMark[];
}

export function lanesOf(playback: Playback, run: LabelledRun): readonly Lane[] {
  const says = (part: PartId, otherwise: string) => playback.says[part] ?? otherwise;
  const lanes = new Map<BodyId | 'ball', LaneMark[]>([...OFFENCE.map((id): [BodyId, LaneMark[]] => [id, []]), ['ball', []]]);
  const add = (lane: BodyId | 'ball' | undefined, mark: LaneMark) => (lanes.get(lane ?? 'ball') ?? lanes.get('ball')!).push(mark);

  for (const way of waysOf(run)) {
    const lane = way.kind === 'pass' || way.kind === 'shot' || way.kind === 'hand-off' ? 'ball' : way.who;
    const words = says(way.part, `${way.who} ${way.part.includes('/') ? way.kind : reboundWords(way)}`);
    // A man who is on his way when the play ends is followed no further.
    const to = Math.min(way.t1, run.end);
    if (way.t0 >= run.end) continue;
    add(lane, { kind: way.kind, from: way.t0, to, part: way.part, afterShot: way.afterShot === true, short: lane === 'ball' ? words : withoutSubject(words, way.who), words: timed(words, way.t0, to) });
  }
  for (const ball of run.ball) {
    if (ball.kind !== 'held' || ball.t1 <= ball.t0) continue;
    const who = ball.by;
    const words = ball.live ? message('{who} dribbles', { who }) : ball.out ? message('{who} has the ball out of bounds', { who }) : message('{who} has the ball', { who });
    add('ball', { kind: 'held', from: ball.t0, to: ball.t1, part: undefined, short: ball.by, words: timed(words, ball.t0, ball.t1) });
  }
  for (const { look, who, from, taken } of looksOf(playback, run)) {
    const name = look.label === '' ? says(look.id, `look ${who}`) : look.label;
    add(who, { kind: 'look', from, to: from, part: look.id, taken, short: '', words: tell(sayLook({ who, name, at: tenths(from) }, taken)) });
  }
  playback.findings.forEach(({ message: told, moment, part, run: only, severity }, finding) => {
    if (moment === undefined || (only !== undefined && only !== run.id) || moment > run.end) return;
    add(part === undefined ? undefined : bodyOfPart(part), { kind: 'finding', from: moment, to: moment, part, finding, severity, short: '', words: `${severityWords(severity)}: ${told}` });
  });

  return [...lanes].map(([id, marks]) => ({ id, name: id === 'ball' ? tell(message('Ball')) : tell(message('Player {id}', { id })), marks: mergeHeld(marks).toSorted((a, b) => a.from - b.from || a.to - b.to) }));
}

// A rebound line sends some to the boards and some back: which of the two shows in where he goes, below or above the free-throw line.
function reboundWords({ points }: Way): string {
  return points.at(-1)![1] < 400 ? 'crashes' : 'gets back';
}

// Held and dribbled by one man is one stretch: who has it, not how.
function mergeHeld(marks: readonly LaneMark[]): readonly LaneMark[] {
  const merged: LaneMark[] = [];
  for (const mark of marks) {
    const last = merged.at(-1);
    if (last !== undefined && mark.kind === 'held' && last.kind === 'held' && last.short === mark.short && last.to === mark.from) {
      merged[merged.length - 1] = { ...last, to: mark.to, words: timed(message('{who} has the ball', { who: mark.short }), last.from, mark.to) };
    } else merged.push(mark);
  }
  return merged;
}

function withoutSubject(words: string, who: BodyId): string {
  return words.startsWith(`${who} `) ? words.slice(who.length + 1) : words;
}

function timed(words: Words, from: number, to: number): string {
  return tell(message('{words}, {from} to {to} s', { words, from: tenths(from), to: tenths(to) }));
}

function sayLook(params: { readonly who: string; readonly name: string; readonly at: string }, taken: boolean): Message {
  return taken ? message('Look for {who}: {name}, at {at} s', params) : message('Look for {who}: {name}, at {at} s, passed up', params);
}

export interface Tick {
  /** ms from the call. */
  readonly at: number;
  readonly words: string;
}

/** Round figures on the line of time, at most about a dozen: of the game clock where the play says when it is called, else seconds since the call. */
export function ticksOf(playback: Playback, run: LabelledRun): readonly Tick[] {
  const step = [1, 2, 5, 10, 15, 30, 60].find((seconds) => run.end / 1000 / seconds <= 13) ?? 120;
  const { callWith } = playback.play;
  if (callWith === undefined) return countUp(step, run.end);
  const first: Tick = { at: 0, words: clockFigure(callWith) };
  const running: Tick[] = [];
  for (let left = Math.ceil(callWith / step - 1) * step; left >= 0; left -= step) {
    const at = run.clockStartsAt + (callWith - left) * 1000;
    if (at > run.end) break;
    // A call with 45 on the clock, told by twos: 44 would lie on 45.
    if (at < step * 800) continue;
    running.push({ at, words: clockFigure(left) });
  }
  return [first, ...running];
}

function countUp(step: number, end: number): readonly Tick[] {
  return Array.from({ length: Math.floor(end / 1000 / step) + 1 }, (_, i) => ({ at: i * step * 1000, words: String(i * step) }));
}

const clockFigure = (seconds: number): string => clockWords(seconds).replace(/\.0$/, '');
