// The hand on the floor: what can be taken hold of lies over the picture; a ghost goes with the hand, a chip says what would be written.
import type { Point } from '../../language/court/point.ts';
import { node } from '../../language/picture/nodes.ts';
import type { Pt } from '../../language/picture/lines.ts';
import type { Asking } from './asking.ts';
import type { Chip } from './chip.ts';
import type { Drawn } from './draw.ts';
import { build, setAttribute } from './elements.ts';
import { metres, type Handle } from './handles.ts';
import type { Outcome } from './messages.ts';
import { UPRIGHT, type Turning } from './turning.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface Hand {
  readonly root: SVGSVGElement;
  readonly show: (handles: readonly Handle[], drawn: Drawn) => void;
  /** What the words in the chip belong to has come back. */
  readonly answered: (outcome: Outcome) => void;
  /** A new picture: what was held is let go. */
  readonly letGo: () => void;
  readonly holds: () => boolean;
}

interface Wishes {
  readonly asking: Asking;
  readonly chip: Chip;
  readonly picked: (handle: Handle) => void;
  readonly say: (words: string) => void;
}

interface Made {
  readonly target: SVGElement;
  handle: Handle;
}

// Less than this is a click, pixels.
const STILL = 4;
// An arrow key, with Shift, centimetres.
const NUDGE = 30;
const FINE = 10;
/** Radius of what is taken hold of, on a floor as large as it is on paper. */
const GRIP = 34;
const GRIP_OF_MAN = 50;

export function createHand({ asking, chip, picked, say }: Wishes): Hand {
  const root = build(node('svg', { class: 'hand', preserveAspectRatio: 'xMidYMin meet', role: 'group', 'aria-label': tell(message('Move by hand')) })) as SVGSVGElement;
  const line = build(node('path', { class: 'ghost-line' }));
  const ghost = build(node('g', { class: 'ghost', visibility: 'hidden' }, node('circle', { r: 44 }), node('text', { 'text-anchor': 'middle', dy: '0.36em', 'font-size': 50 })));
  const lands = build(node('circle', { class: 'lands', r: 14, visibility: 'hidden' }));
  root.append(line, ghost, lands);
  const made = new Map<string, Made>();
  let turning = UPRIGHT;
  let scale = 1;
  let held: { readonly handle: Handle; readonly start: Pt; at: Pt; moved: boolean; readonly keyboard: boolean; readonly grip: Pt } | undefined;

  function show(handles: readonly Handle[], { viewBox, scale: size, turning: lies }: Drawn): void {
    if (root.getAttribute('viewBox') !== viewBox) root.setAttribute('viewBox', viewBox);
    [turning, scale] = [lies, size];
    const seen = new Set<string>();
    for (const handle of handles.map((upright) => asDrawn(upright, lies))) {
      seen.add(handle.key);
      const known = made.get(handle.key);
      const entry = known ?? { target: makeTarget(handle), handle };
      entry.handle = handle;
      if (known === undefined) {
        made.set(handle.key, entry);
        root.append(entry.target);
      }
      setAttribute(entry.target, 'transform', `translate(${handle.at[0].toFixed(1)} ${handle.at[1].toFixed(1)}) scale(${scale})`);
      setAttribute(entry.target, 'class', `handle ${handle.kind}${handle.under === true ? ' under' : handle.over === true ? ' over' : ''}`);
      // The mouse is to find it before the man; what has the keyboard would lose it by being moved.
      if (handle.over === true && root.lastChild !== entry.target && document.activeElement !== entry.target) root.append(entry.target);
      setAttribute(entry.target, 'aria-label', tell(message('{what}. Enter takes hold of it.', { what: handle.words })));
    }
    for (const [key, { target }] of made) {
      if (seen.has(key)) continue;
      target.remove();
      made.delete(key);
    }
    const first = made.values().next().value;
    if (first !== undefined && ![...made.values()].some(({ target }) => target.getAttribute('tabindex') === '0')) first.target.setAttribute('tabindex', '0');
  }

  function makeTarget({ key, kind }: Handle): SVGElement {
    const target = build(node('g', { class: `handle ${kind}`, role: 'button', tabindex: -1 }, node('circle', { class: 'grip', r: gripOf(kind) }), node('circle', { class: 'dot', r: kind === 'player' || kind === 'draw' ? GRIP_OF_MAN : 13 })));
    target.dataset.handle = key;
    target.addEventListener('pointerdown', take);
    target.addEventListener('pointermove', (event) => move(event));
    target.addEventListener('pointerup', () => release());
    target.addEventListener('pointercancel', () => letGo());
    // The button came up where nobody heard it, outside of the panel.
    target.addEventListener('lostpointercapture', () => held?.keyboard === false && letGo());
    target.addEventListener('keydown', (event) => keyed(event, key));
    target.addEventListener('blur', () => held?.keyboard === true && letGo());
    return target;
  }

  function onFloor(event: PointerEvent): Pt {
    const matrix = root.getScreenCTM();
    if (matrix === null) return [0, 0];
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return [x, y];
  }

  function take(event: PointerEvent): void {
    if (event.button !== 0) return;
    const at = onFloor(event);
    const { target, handle } = drawnFrom(at);
    event.preventDefault();
    focus(target);
    target.setPointerCapture(event.pointerId);
    held = { handle, start: [event.clientX, event.clientY], at: handle.at, moved: false, keyboard: false, grip: [handle.at[0] - at[0], handle.at[1] - at[1]] };
  }

  const far = ({ handle: { at } }: Made, [x, y]: Pt): number => Math.hypot(at[0] - x, at[1] - y);

  /** Men stand close together: the one whose middle is nearest is meant. */
  const nearest = (at: Pt): Made => [...made.values()].filter(({ handle }) => handle.under !== true && handle.over !== true).reduce((best, one) => (far(one, at) < far(best, at) ? one : best));

  /** What is picked goes before the man who stands on it. */
  const drawnFrom = (at: Pt): Made => [...made.values()].find((one) => one.handle.over === true && far(one, at) <= gripOf(one.handle.kind) * scale) ?? nearest(at);

  function move(event: PointerEvent): void {
    if (held === undefined || held.keyboard) return;
    if (!held.moved && Math.hypot(event.clientX - held.start[0], event.clientY - held.start[1]) < STILL) return;
    const [x, y] = onFloor(event);
    held.moved = true;
    goTo([x + held.grip[0], y + held.grip[1]]);
  }

  function goTo(at: Pt): void {
    if (held === undefined) return;
    held.at = at;
    const { handle } = held;
    root.classList.add('holding');
    ghost.setAttribute('class', `ghost ${handle.kind}`);
    ghost.removeAttribute('visibility');
    ghost.setAttribute('transform', `translate(${at[0].toFixed(1)} ${at[1].toFixed(1)})`);
    ghost.lastChild!.textContent = handle.kind === 'bend' ? '' : handle.who;
    line.setAttribute('d', handle.from === undefined ? '' : `M${handle.from.map((n) => n.toFixed(1)).join(' ')}L${at.map((n) => n.toFixed(1)).join(' ')}`);
    chip.follow(() => ghost.getBoundingClientRect());
    asking.wouldBe(handle.intent(metres(at)));
  }

  function release(): void {
    if (held === undefined || held.keyboard) return;
    const { moved, handle } = held;
    if (moved) return commit();
    held = undefined;
    picked(handle.over === true ? nearest(handle.at).handle : handle);
  }

  function commit(): void {
    if (held === undefined) return;
    const { handle, at } = held;
    held = undefined;
    root.classList.remove('holding');
    asking.write(handle.intent(metres(at)), (outcome) => {
      clear();
      chip.settle(outcome);
      say(outcome.refused ?? tell(message('Written: {words}', { words: outcome.words ?? '' })));
    });
  }

  function letGo(): void {
    if (held === undefined) return;
    held = undefined;
    asking.drop();
    clear();
    chip.hide();
  }

  function clear(): void {
    root.classList.remove('holding', 'refused');
    ghost.setAttribute('visibility', 'hidden');
    lands.setAttribute('visibility', 'hidden');
    line.setAttribute('d', '');
  }

  function focus(target: SVGElement): void {
    for (const { target: other } of made.values()) other.setAttribute('tabindex', other === target ? '0' : '-1');
    target.focus({ preventScroll: true });
  }

  /** Arrows go from one handle to the next; Enter takes hold, then the arrows move, Enter writes and Escape lets go, of what the mouse holds too. */
  function keyed(event: KeyboardEvent, key: string): void {
    const handle = made.get(key)?.handle;
    if (handle === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = arrows[event.key];
    if (held?.keyboard === false) {
      // Under the mouse only the one key means something: it stays where it was.
      if (event.key !== 'Escape') return;
      letGo();
    } else if (held?.keyboard === true) {
      if (event.key === 'Escape') letGo();
      else if (event.key === 'Enter' || event.key === ' ') held.moved ? commit() : letGo();
      else if (arrow !== undefined) {
        const by = event.shiftKey ? FINE : NUDGE;
        held.moved = true;
        goTo([held.at[0] + arrow[0] * by, held.at[1] + arrow[1] * by]);
      } else return;
    } else if (event.key === 'Enter' || event.key === ' ') {
      held = { handle, start: [0, 0], at: handle.at, moved: false, keyboard: true, grip: [0, 0] };
      root.classList.add('holding');
      say(tell(message('{what}. Arrow keys move it, Enter writes, Escape lets go.', { what: handle.words })));
    } else if (arrow !== undefined) neighbour(key, arrow);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** The next handle that way: as near as possible, and as straight. */
  function neighbour(key: string, [dx, dy]: Pt): void {
    const here = made.get(key)!.handle.at;
    let best: SVGElement | undefined;
    let least = Infinity;
    for (const { target, handle } of made.values()) {
      const [x, y] = [handle.at[0] - here[0], handle.at[1] - here[1]];
      const along = x * dx + y * dy;
      const cost = along + 2 * Math.abs(x * dy - y * dx);
      if (along > 1 && cost < least) [best, least] = [target, cost];
    }
    if (best !== undefined) focus(best);
  }

  function answered(outcome: Outcome): void {
    if (held === undefined) return;
    chip.would(outcome);
    root.classList.toggle('refused', outcome.refused !== undefined);
    if (held.keyboard) say(outcome.refused ?? outcome.words ?? '');
    showLanding(outcome.at);
  }

  function showLanding(at: Point | undefined): void {
    if (at === undefined) return lands.setAttribute('visibility', 'hidden');
    lands.removeAttribute('visibility');
    const [x, y] = turning.toDrawn([at.x * 100, at.y * 100]);
    lands.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
  }

  return { root, show, answered, letGo, holds: () => held !== undefined };
}

/** On a court that lies on its side a hand goes where the eye sees it, and means the place on the floor. */
function asDrawn(handle: Handle, { turned, toDrawn, toUpright }: Turning): Handle {
  if (!turned) return handle;
  return {
    ...handle,
    at: toDrawn(handle.at),
    ...(handle.from !== undefined && { from: toDrawn(handle.from) }),
    intent: ({ x, y }) => handle.intent(metres(toUpright([x * 100, y * 100]))),
  };
}

const arrows: Readonly<Record<string, Pt>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

const gripOf = (kind: Handle['kind']): number => (kind === 'player' || kind === 'draw' ? GRIP_OF_MAN : GRIP);
