// A lane a player and one for the ball: who does what when, the looks and findings, the clock line above.
import { stepSpans } from '../../language/playback/moments.ts';
import type { Playback } from '../../language/playback/playback.ts';
import type { BodyId, PartId } from '../../language/play/play.ts';
import { element } from './elements.ts';
import type { LaneHand } from './lane-hand.ts';
import { lanesOf, ticksOf, type Lane, type LaneMark, type Tick } from './lane-marks.ts';
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

interface Shown {
  readonly mark: LaneMark;
  readonly button: HTMLButtonElement;
  now: boolean;
  marked: boolean;
}

export function createLanes(picks: LanePicks, hand?: LaneHand): LanesView {
  const axis = element('div', { class: 'axis' });
  const rows = element('div', { class: 'rows' });
  const needle = element('div', { class: 'needle' });
  const rail = element('div', { class: 'rail', 'aria-hidden': 'true' }, needle);
  const root = element('section', { class: 'lanes', 'aria-label': tell(message('Who does what when')) }, axis, rows, rail);
  let shown: Shown[] = [];
  let labels = new Map<BodyId, HTMLElement>();
  let end = 1;
  let share = -1;
  let lit: readonly BodyId[] | undefined;

  scrubOn(axis, () => rail.getBoundingClientRect(), (u) => picks.seek(u * end));
  rows.addEventListener('keydown', moveAmongMarks);

  function load(playback: Playback | null, run: LabelledRun | undefined): void {
    root.hidden = playback === null || run === undefined;
    if (playback === null || run === undefined) return;
    end = Math.max(1, run.end);
    const focused = focusedMark();
    axis.replaceChildren(...axisRows(playback, run));
    shown = [];
    labels = new Map();
    rows.replaceChildren(...lanesOf(playback, run).map((lane) => laneRow(lane)));
    restoreFocus(focused);
    share = -1;
    lit = undefined;
  }

  function laneRow(lane: Lane): HTMLElement {
    const label = lane.id === 'ball' ? element('span', { class: 'who ball', title: tell(message('The ball')) }, tell(message('ball'))) : element('button', { type: 'button', class: 'who', 'aria-label': lane.name, title: lane.name }, lane.id);
    if (lane.id !== 'ball') {
      const id = lane.id;
      labels.set(id, label);
      label.addEventListener('click', () => picks.body(id));
    }
    const track = element('div', { class: 'track', role: 'group', 'aria-label': lane.name });
    const looks = lane.marks.filter(({ kind }) => kind === 'look').map(({ from }) => from);
    for (const mark of lane.marks) {
      const button = markButton(mark, looks);
      button.addEventListener('click', () => picks.mark(mark));
      shown.push({ mark, button, now: false, marked: false });
      track.append(button);
    }
    return element('div', { class: 'lane' }, label, track);
  }

  function markButton(mark: LaneMark, looks: readonly number[]): HTMLButtonElement {
    const point = mark.kind === 'look' || mark.kind === 'finding';
    const kind = `${mark.kind}${mark.taken === false ? ' passed' : ''}${mark.severity === undefined ? '' : ` ${mark.severity}`}${mark.afterShot === true ? ' after-shot' : ''}`;
    const button = element('button', { type: 'button', class: `mark ${point ? 'point' : 'bar'} ${kind}`, title: mark.words, 'aria-label': mark.words, tabindex: shown.length === 0 ? 0 : -1 });
    if (mark.short !== '') button.append(wordsIn(mark, looks));
    if (!point && mark.part?.includes('/') === true && mark.kind !== 'shot') hand?.give(button, mark, () => end);
    // The shortest bar is still seen, and ends where the track does.
    button.style.left = point ? percent(mark.from) : `min(${percent(mark.from)}, 100% - ${SHORTEST_BAR}px)`;
    if (!point) button.style.width = percent(mark.to - mark.from);
    return button;
  }

  /** A bar's words, in the widest stretch that the looks on it leave free. */
  function wordsIn({ short, from, to }: LaneMark, looks: readonly number[]): HTMLElement {
    const room = element('span', { class: 'room' }, element('span', {}, short));
    const { before, after } = widestStretch(from, to, looks);
    if (before !== undefined) room.style.marginInlineStart = beside(before);
    if (after !== undefined) room.style.marginInlineEnd = beside(after);
    return room;
  }

  const percent = (ms: number): string => `${((ms / end) * 100).toFixed(3)}%`;

  function axisRows(playback: Playback, run: LabelledRun): readonly HTMLElement[] {
    const steps = element('div', { class: 'steps' });
    const spans = stepSpans(run);
    const opening = Math.min(run.startsAt, spans[0]?.to ?? 0);
    if (opening > 0) steps.append(span(0, opening, tell(message('getting set')), 'set-up'));
    for (const [i, { key, from, to }] of spans.entries()) {
      const start = i === 0 ? opening : from;
      if (to <= start) continue;
      const name = playback.steps.find((step) => step.key === key)?.name ?? key;
      const button = span(start, to, name, 'step', 'button');
      button.title = tell(message('Step {name}', { name }));
      button.addEventListener('click', () => picks.step(key, start));
      steps.append(button);
    }
    const row = (className: string, words: string, ...children: readonly HTMLElement[]) =>
      element('div', { class: `axis-row ${className}` }, element('span', { class: 'who' }, words), element('div', { class: 'track' }, ...children));
    const out = [element('div', { class: 'axis-row step-row' }, element('span', { class: 'who' }), steps)];
    const ticks = ticksOf(playback, run).map(tick);
    out.push(row('clock-row', playback.play.callWith === undefined ? 's' : tell(message('clock')), ...ticks, ...standing(run)));
    return out;
  }

  function standing(run: LabelledRun): readonly HTMLElement[] {
    return run.clockStartsAt > 0 ? [span(0, run.clockStartsAt, '', 'stands')] : [];
  }

  function tick({ at, words }: Tick): HTMLElement {
    const made = element('span', { class: 'tick' }, words);
    made.style.left = percent(at);
    // Near either end the figure stays inside the track.
    if (at === 0) made.classList.add('first');
    if (at > end * 0.97) made.classList.add('last');
    return made;
  }

  function span(from: number, to: number, words: string, className: string, tag: 'span' | 'button' = 'span'): HTMLElement {
    const made = tag === 'button' ? element('button', { type: 'button', class: className, 'aria-label': words }) : element('span', { class: className });
    if (words !== '') made.append(element('span', {}, words));
    made.style.left = percent(from);
    made.style.width = percent(to - from);
    return made;
  }

  function focusedMark(): LaneMark | undefined {
    return shown.find(({ button }) => button === document.activeElement)?.mark;
  }

  function restoreFocus(before: LaneMark | undefined): void {
    if (before === undefined) return;
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
    for (const [id, label] of labels) label.classList.toggle('lit', lit.includes(id));
  }

  return { root, load, frame };
}

/** Pixels: half a look's sign with a little air. */
const HALF_A_LOOK = 12;
/** Pixels: `lanes.css` gives a bar no less. */
const SHORTEST_BAR = 14;
/** Pixels on either side between a bar's edge and its words: `lanes.css`. */
const BAR_PADDING = 7;

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
