// The hand on a lane: the edge of a bar drawn to a later moment, or back. By the keyboard: W takes hold, arrows move, Enter writes.
import type { Asking } from './asking.ts';
import type { Chip } from './chip.ts';
import { element } from './elements.ts';
import type { LaneMark } from './lane-marks.ts';
import type { Outcome } from './messages.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface LaneHand {
  /** Gives a bar an edge to take hold of. `length`: ms that the whole track stands for. */
  readonly give: (button: HTMLButtonElement, mark: LaneMark, length: () => number) => void;
  readonly answered: (outcome: Outcome) => void;
  readonly letGo: () => void;
  readonly holds: () => boolean;
}

interface Held {
  readonly button: HTMLButtonElement;
  readonly action: string;
  readonly keyboard: boolean;
  /** Where the pointer took hold, pixels. */
  readonly from: number;
  readonly length: number;
  /** Seconds later than now. */
  by: number;
}

const KEY_STEP = 0.1;
const LONG_STEP = 0.5;

export function createLaneHand({ asking, chip, say }: { readonly asking: Asking; readonly chip: Chip; readonly say: (words: string) => void }): LaneHand {
  let held: Held | undefined;

  function give(button: HTMLButtonElement, { part }: LaneMark, length: () => number): void {
    if (part === undefined) return;
    const edge = element('span', { class: 'edge', title: tell(message('Draw it to a later start')) });
    button.append(edge);
    edge.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return;
      event.preventDefault();
      // For the key that lets go.
      button.focus({ preventScroll: true });
      edge.setPointerCapture(event.pointerId);
      takeHold(button, part, length(), event.clientX, false);
    });
    edge.addEventListener('pointermove', (event) => {
      if (held?.button !== button || held.keyboard) return;
      const { width } = button.parentElement!.getBoundingClientRect();
      goTo(Math.round((((event.clientX - held.from) / Math.max(1, width)) * held.length) / 100) / 10);
    });
    edge.addEventListener('pointerup', () => held?.button === button && !held.keyboard && commit());
    edge.addEventListener('pointercancel', letGo);
    // The click that ends a drag picks nothing.
    edge.addEventListener('click', (event) => event.stopPropagation());
    button.addEventListener('keydown', (event) => keyed(event, button, part, length));
    button.addEventListener('blur', () => held?.button === button && held.keyboard && letGo());
  }

  function keyed(event: KeyboardEvent, button: HTMLButtonElement, part: string, length: () => number): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const way = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (held?.keyboard === false && held.button === button) {
      if (event.key !== 'Escape') return;
      letGo();
    } else if (held?.keyboard === true && held.button === button) {
      if (way !== 0) goTo(Math.round((held.by + way * (event.shiftKey ? LONG_STEP : KEY_STEP)) * 10) / 10);
      else if (event.key === 'Enter') commit();
      else if (event.key === 'Escape') letGo();
      else return;
    } else if (event.key === 'w' || event.key === 'W') {
      takeHold(button, part, length(), 0, true);
      say(tell(message('Later or earlier: left and right arrows move the start, Enter writes, Escape lets go.')));
    } else return;
    event.preventDefault();
    event.stopImmediatePropagation();
  }

  function takeHold(button: HTMLButtonElement, action: string, length: number, from: number, keyboard: boolean): void {
    letGo();
    held = { button, action, keyboard, from, length, by: 0 };
    button.classList.add('held-by-hand');
  }

  function goTo(by: number): void {
    if (held === undefined) return;
    held.by = by;
    const { button, length, action } = held;
    const { width } = button.parentElement!.getBoundingClientRect();
    button.style.transform = `translateX(${((by * 1000 * width) / length).toFixed(1)}px)`;
    chip.follow(() => button.getBoundingClientRect());
    asking.wouldBe({ kind: 'shift-wait', action, by });
  }

  function commit(): void {
    if (held === undefined) return;
    const { button, action, by } = held;
    if (by === 0) return letGo();
    held = undefined;
    asking.write({ kind: 'shift-wait', action, by }, (outcome) => {
      reset(button);
      chip.settle(outcome);
      say(outcome.refused ?? tell(message('Written: {words}', { words: outcome.words ?? '' })));
    });
  }

  function letGo(): void {
    if (held === undefined) return;
    reset(held.button);
    held = undefined;
    asking.drop();
    chip.hide();
  }

  function reset(button: HTMLButtonElement): void {
    button.classList.remove('held-by-hand');
    button.style.removeProperty('transform');
  }

  return {
    give,
    answered(outcome) {
      if (held === undefined) return;
      chip.would(outcome);
      if (held.keyboard) say(outcome.refused ?? outcome.words ?? '');
    },
    letGo,
    holds: () => held !== undefined,
  };
}
