// A lane a player and one for the ball: who does what when, the looks and findings, the clock line above.
import { stepSpans } from '../../language/playback/moments.ts';
import type { Playback } from '../../language/playback/playback.ts';
import type { BodyId, PartId } from '../../language/play/play.ts';
import { element, setHidden, setText, styleOf } from './elements.ts';
import type { LaneHand } from './lane-hand.ts';
import { lanesOf, ticksOf, type Lane, type LaneMark } from './lane-marks.ts';
import { createRows } from './rows.ts';
import { currentRun, type LabelledRun, type PlayerState } from './state.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface LanesView {
  readonly root: HTMLElement;
  readonly load: (playback: Playback | null, run: LabelledRun | undefined) => void;
  readonly frame: (state: PlayerState) => void;
}

export interface LanePicks {
  readonly body: (id: BodyId) => void;
  readonly mark: (mark: LaneMark) => void;
  readonly step: (part: PartId, t: number) => void;
  readonly seek: (t: number) => void;
}

/** A mark on show. */
interface Shown {
  mark: LaneMark;
  readonly button: HTMLButtonElement;
  now: boolean;
  marked: boolean;
}

/** A mark to be shown, and the looks of its lane, ms. */
interface MarkHere {
  readonly mark: LaneMark;
  readonly looks: readonly number[];
}

/** What stands on the line of time, at `from`, or from there to `to`. */
interface AxisMark {
  readonly kind: 'set-up' | 'step' | 'tick' | 'stands';
  readonly words: string;
  readonly from: number;
  readonly to: number;
  readonly step?: PartId;
}

export function createLanes(picks: LanePicks, hand?: LaneHand): LanesView {
  const steps = element('div', { class: 'steps' });
  const clockWord = element('span', { class: 'who' });
  const clockTrack = element('div', { class: 'track' });
  const axis = element('div', { class: 'axis' },
    element('div', { class: 'axis-row step-row' }, element('span', { class: 'who' }), steps),
    element('div', { class: 'axis-row clock-row' }, clockWord, clockTrack));
  const rows = element('div', { class: 'rows' });
  const needle = element('div', { class: 'needle' });
  const rail = element('div', { class: 'rail', 'aria-hidden': 'true' }, needle);
  const root = element('section', { class: 'lanes', 'aria-label': tell(message('Who does what when')) }, axis, rows, rail);
  const setSteps = createRows(steps, ({ kind, words, step }: AxisMark) => [kind, words, step], axisMark);
  const setClock = createRows(clockTrack, ({ kind, words }: AxisMark) => [kind, words], axisMark);
  const setLanes = createRows(rows, ({ id, name }: Lane) => [id, name], laneRow);
  let lanes: readonly ReturnType<typeof laneRow>[] = [];
  let shown: readonly Shown[] = [];
  let end = 1;
  let share = -1;
  let lit: readonly BodyId[] | undefined;

  scrubOn(axis, () => rail.getBoundingClientRect(), (u) => picks.seek(u * end));
  rows.addEventListener('keydown', moveAmongMarks);

  function load(playback: Playback | null, run: LabelledRun | undefined): void {
    setHidden(root, playback === null || run === undefined);
    if (playback === null || run === undefined) return;
    end = Math.max(1, run.end);
    const focused = shown.find(({ button }) => button === document.activeElement);
    setSteps(stepMarks(playback, run));
    setText(clockWord, playback.play.callWith === undefined ? 's' : tell(message('clock')));
    setClock(clockMarks(playback, run));
    lanes = setLanes(lanesOf(playback, run));
    shown = lanes.flatMap(({ marks }) => marks());
    if (focused !== undefined && !focused.button.isConnected) restoreFocus(focused.mark);
    if (!shown.some(({ button }) => button.tabIndex === 0) && shown[0] !== undefined) shown[0].button.tabIndex = 0;
    share = -1;
    lit = undefined;
  }

  function laneRow({ id, name }: Lane) {
    const label = id === 'ball' ? element('span', { class: 'who ball', title: tell(message('The ball')) }, tell(message('ball'))) : element('button', { type: 'button', class: 'who', 'aria-label': name, title: name }, id);
    if (id !== 'ball') label.addEventListener('click', () => picks.body(id));
    const track = element('div', { class: 'track', role: 'group', 'aria-label': name });
    const setMarks = createRows(track, ({ mark: { from: _from, to: _to, words: _words, short, ...made } }: MarkHere) => [short !== '', made], markButton);
    let marks: readonly Shown[] = [];
    return {
      id,
      label,
      root: element('div', { class: 'lane' }, label, track),
      fill(lane: Lane) {
        const looks = lane.marks.filter(({ kind }) => kind === 'look').map(({ from }) => from);
        marks = setMarks(lane.marks.map((mark) => ({ mark, looks }))).map(({ shown: one }) => one);
      },
      marks: () => marks,
    };
  }

  function markButton({ mark }: MarkHere) {
    const point = mark.kind === 'look' || mark.kind === 'finding';
    const kind = `${mark.kind}${mark.taken === false ? ' passed' : ''}${mark.severity === undefined ? '' : ` ${mark.severity}`}${mark.afterShot === true ? ' after-shot' : ''}`;
    const button = element('button', { type: 'button', class: `mark ${point ? 'point' : 'bar'} ${kind}`, tabindex: -1 });
    const short = element('span');
    const room = mark.short === '' ? undefined : element('span', { class: 'room' }, short);
    if (room !== undefined) button.append(room);
    if (!point && mark.part?.includes('/') === true && mark.kind !== 'shot') hand?.give(button, mark, () => end);
    const one: Shown = { mark, button, now: false, marked: false };
    const [place, words] = [styleOf(button), room && styleOf(room)];
    button.addEventListener('click', () => picks.mark(one.mark));
    return {
      root: button,
      shown: one,
      fill({ mark: newest, looks }: MarkHere) {
        one.mark = newest;
        const { from, to } = newest;
        setText(short, newest.short);
        if (button.title !== newest.words) button.title = button.ariaLabel = newest.words;
        // The shortest bar is still seen, and ends where the track does.
        place('left', point ? percent(from) : `min(${percent(from)}, 100% - ${SHORTEST_BAR}px)`);
        if (!point) place('width', percent(to - from));
        if (words !== undefined) leaveFree(words, newest, looks);
      },
    };
  }

  const percent = (ms: number): string => `${((ms / end) * 100).toFixed(3)}%`;

  function stepMarks(playback: Playback, run: LabelledRun): readonly AxisMark[] {
    const spans = stepSpans(run);
    const opening = Math.min(run.startsAt, spans[0]?.to ?? 0);
    const setUp: readonly AxisMark[] = opening > 0 ? [{ kind: 'set-up', words: tell(message('getting set')), from: 0, to: opening }] : [];
    const named = spans.map(({ key, from, to }, i): AxisMark => ({ kind: 'step', step: key, words: playback.steps.find((step) => step.key === key)?.name ?? key, from: i === 0 ? opening : from, to }));
    return [...setUp, ...named.filter(({ from, to }) => to > from)];
  }

  function clockMarks(playback: Playback, run: LabelledRun): readonly AxisMark[] {
    const ticks = ticksOf(playback, run).map(({ at, words }): AxisMark => ({ kind: 'tick', words, from: at, to: at }));
    return run.clockStartsAt > 0 ? [...ticks, { kind: 'stands', words: '', from: 0, to: run.clockStartsAt }] : ticks;
  }

  function axisMark({ kind, words, step }: AxisMark) {
    const made = step === undefined ? element('span', { class: kind }) : element('button', { type: 'button', class: kind, 'aria-label': words, title: tell(message('Step {name}', { name: words })) });
    if (kind === 'tick') made.append(words);
    else if (words !== '') made.append(element('span', {}, words));
    let start = 0;
    const place = styleOf(made);
    if (step !== undefined) made.addEventListener('click', () => picks.step(step, start));
    return {
      root: made,
      fill({ from, to }: AxisMark) {
        start = from;
        place('left', percent(from));
        if (kind !== 'tick') place('width', percent(to - from));
        // Near either end a figure stays inside the track.
        made.classList.toggle('first', kind === 'tick' && from === 0);
        made.classList.toggle('last', kind === 'tick' && from > end * 0.97);
      },
    };
  }

  function restoreFocus(before: LaneMark): void {
    const again = shown.find(({ mark }) => mark.part === before.part && mark.kind === before.kind);
    if (again !== undefined) focusMark(again.button);
  }

  function focusMark(button: HTMLButtonElement): void {
    for (const other of shown) other.button.tabIndex = other.button === button ? 0 : -1;
    button.focus();
  }

  /** Left and right along a lane, up and down between lanes: the lanes are one stop of the Tab key. */
  function moveAmongMarks(event: KeyboardEvent): void {
    const at = shown.findIndex(({ button }) => button === event.target);
    if (at < 0 || event.ctrlKey || event.metaKey || event.altKey) return;
    const target = neighbour(shown, at, event.key);
    if (target === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    focusMark(target.button);
  }

  function frame(state: PlayerState): void {
    const run = currentRun(state);
    if (run === undefined) return;
    const u = Math.min(1, state.t / end);
    if (u !== share) needle.style.transform = `translateX(${((share = u) * 100).toFixed(3)}%)`;
    for (const one of shown) {
      const now = one.mark.from <= state.t && state.t < one.mark.to;
      const marked = state.part !== undefined && one.mark.part === state.part;
      if (one.now !== now) one.button.classList.toggle('now', (one.now = now));
      if (one.marked !== marked) one.button.classList.toggle('marked', (one.marked = marked));
    }
    if (state.lit === lit) return;
    lit = state.lit;
    for (const { id, label } of lanes) if (id !== 'ball') label.classList.toggle('lit', lit.includes(id));
  }

  return { root, load, frame };
}

/** Pixels: half a look's sign with a little air. */
const HALF_A_LOOK = 12;
/** Pixels: `lanes.css` gives a bar no less. */
const SHORTEST_BAR = 14;
/** Pixels on either side between a bar's edge and its words: `lanes.css`. */
const BAR_PADDING = 7;

/** A bar's words stand in the widest stretch that the looks on it leave free. */
function leaveFree(words: ReturnType<typeof styleOf>, { from, to }: LaneMark, looks: readonly number[]): void {
  const { before, after } = widestStretch(from, to, looks);
  words('marginInlineStart', before === undefined ? '' : beside(before));
  words('marginInlineEnd', after === undefined ? '' : beside(after));
}

// A margin is a share of the bar without its padding, a look stands at a share of the whole bar.
function beside(share: number): string {
  return `max(0px, ${(share * 100).toFixed(2)}% + ${(share * 2 * BAR_PADDING - BAR_PADDING + HALF_A_LOOK).toFixed(2)}px)`;
}

/** Shares of a bar that its words leave free before and after them; below 0 where a look stands beyond that edge, undefined where none does. */
function widestStretch(from: number, to: number, looks: readonly number[]): { readonly before: number | undefined; readonly after: number | undefined } {
  const length = Math.max(1, to - from);
  const shares = looks.map((at) => (at - from) / length).toSorted((a, b) => a - b);
  const stretches = [...shares, undefined].map((end, i) => ({ start: shares[i - 1], end }));
  const width = ({ start = 0, end = 1 }: (typeof stretches)[number]) => Math.min(1, end) - Math.max(0, start);
  const { start, end } = stretches.reduce((best, other) => (width(other) > width(best) ? other : best));
  return { before: start, after: end === undefined ? undefined : 1 - end };
}

function neighbour(shown: readonly Shown[], at: number, key: string): Shown | undefined {
  const own = shown[at]!;
  const laneOf = ({ button }: Shown) => button.parentElement;
  if (key === 'ArrowLeft' || key === 'ArrowRight') {
    const next = shown[at + (key === 'ArrowRight' ? 1 : -1)];
    return next !== undefined && laneOf(next) === laneOf(own) ? next : own;
  }
  if (key !== 'ArrowUp' && key !== 'ArrowDown') return undefined;
  const lanes = [...new Set(shown.map(laneOf))];
  const lane = lanes[lanes.indexOf(laneOf(own)) + (key === 'ArrowDown' ? 1 : -1)];
  const others = shown.filter((other) => laneOf(other) === lane);
  return others.toSorted((a, b) => Math.abs(a.mark.from - own.mark.from) - Math.abs(b.mark.from - own.mark.from))[0] ?? own;
}

/** Dragging along a line of time. */
function scrubOn(target: HTMLElement, box: () => DOMRect, moved: (share: number) => void): void {
  const to = (event: PointerEvent) => {
    const { left, width } = box();
    if (width > 0) moved(Math.min(Math.max((event.clientX - left) / width, 0), 1));
  };
  target.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || (event.target as Element).closest('button') !== null) return;
    target.setPointerCapture(event.pointerId);
    to(event);
  });
  target.addEventListener('pointermove', (event) => {
    if (target.hasPointerCapture(event.pointerId)) to(event);
  });
}
