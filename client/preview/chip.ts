// The chip beside the hand: the words that would be written, or why they cannot be.
import { element, setText } from './elements.ts';
import type { Outcome } from './messages.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface Chip {
  readonly root: HTMLElement;
  /** Stays beside what the hand holds. */
  readonly follow: (place: () => DOMRect) => void;
  readonly would: (outcome: Outcome) => void;
  /** What was done in the end stays a moment; a refusal stays longer, to be read. */
  readonly settle: (outcome: Outcome) => void;
  /** Something else is done: a refusal that has been told is over. */
  readonly past: () => void;
  readonly hide: () => void;
}

export function createChip(): Chip {
  const words = element('span', { class: 'words' });
  const changes = element('span', { class: 'changes' });
  const root = element('div', { class: 'chip', 'aria-hidden': 'true' }, words, changes);
  root.hidden = true;
  let beside: (() => DOMRect) | undefined;
  let going: ReturnType<typeof setTimeout> | undefined;

  function lay(): void {
    if (root.hidden || beside === undefined) return;
    const { left, right, top, bottom } = beside();
    const { width, height } = root.getBoundingClientRect();
    const x = Math.min(Math.max((left + right) / 2 - width / 2, 6), innerWidth - width - 6);
    const y = top - height - 8 < 6 ? bottom + 8 : top - height - 8;
    root.style.transform = `translate(${x.toFixed(0)}px, ${y.toFixed(0)}px)`;
  }

  function put(outcome: Outcome): void {
    clearTimeout(going);
    going = undefined;
    setText(words, outcome.refused ?? outcome.words ?? '');
    setText(changes, outcome.refused === undefined && outcome.changes !== undefined ? tell(message('changes {ways}', { ways: outcome.changes })) : '');
    root.classList.toggle('refused', outcome.refused !== undefined);
    // Longer words need more room.
    lay();
  }

  function hide(): void {
    clearTimeout(going);
    going = undefined;
    root.hidden = true;
    setText(words, '');
    setText(changes, '');
  }

  return {
    root,
    follow(place) {
      clearTimeout(going);
      going = undefined;
      root.hidden = false;
      beside = place;
      lay();
    },
    would: put,
    settle(outcome) {
      root.hidden = false;
      beside = undefined;
      put(outcome);
      going = setTimeout(hide, outcome.refused === undefined ? 1200 : 5000);
    },
    past() {
      if (going !== undefined && root.classList.contains('refused')) hide();
    },
    hide,
  };
}
