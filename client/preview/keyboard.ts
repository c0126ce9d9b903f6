// The keys, and the help that names them.
import { element } from './elements.ts';
import { createKey } from './draw.ts';
import type { TextKey } from './messages.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface KeyWishes {
  readonly togglePlaying: () => void;
  readonly stepMoment: (by: 1 | -1) => void;
  /** Seconds forth or back. */
  readonly nudge: (seconds: number) => void;
  readonly toStart: () => void;
  readonly toEnd: () => void;
  readonly chooseRun: (index: number) => void;
  readonly speed: (by: 1 | -1) => void;
  readonly choosePlay: (by: 1 | -1) => void;
  readonly chooseMan: (by: 1 | -1) => void;
  readonly showTeam: () => void;
  readonly bench: () => void;
  readonly help: () => void;
  /** Absent where nothing can be written. */
  readonly draw?: () => void;
  /** Esc: leave what is marked, or the floor alone. */
  readonly leave: () => void;
  /** What a coach asks of the text while the panel has the keyboard. Absent where there is none. */
  readonly toText?: (key: TextKey) => void;
}

const KEYS: readonly (readonly [string, string])[] = [
  [tell(message('Space')), tell(message('Play or pause'))],
  ['← →', tell(message('The moment before, the next moment'))],
  ['Shift ← →', tell(message('A tenth of a second back or on'))],
  [tell(message('Home, End')), tell(message('To the call, to the end'))],
  [tell(message('1 to 9')), tell(message('Choose a run-through'))],
  ['J, Shift J', tell(message('The jobs of the next player, of the one before'))],
  ['− +', tell(message('Slower, faster'))],
  ['F', tell(message('Show the team: only the floor'))],
  ['Esc', tell(message('Leave that, or what is marked'))],
  ['?', tell(message('This help'))],
];

// On a page, which may hold several plays.
const PAGE_KEYS: readonly (readonly [string, string])[] = [['N, P', tell(message('The next play, the play before'))], ['C', tell(message('The call sheet, and what still fits'))]];

// In the editor's panel, where what is moved is written.
const HAND_KEYS: readonly (readonly [string, string])[] = [
  [tell(message('Drag')), tell(message('Move a player’s start, the end of a way, a screen, a bar’s beginning'))],
  [tell(message('Enter, arrows')), tell(message('On a handle: take hold, move; Enter writes, Esc lets go'))],
  ['W, ← →', tell(message('On a bar: begin later or earlier'))],
  ['D', tell(message('Draw new cuts and passes, and back'))],
  ['Ctrl Z, Ctrl S', tell(message('Take back the last change of the text, save it'))],
];

/** Listens on the whole window. Keys that a field or a button needs for itself are left to it, and so are the editor's own chords. */
export function listenToKeys(wishes: KeyWishes): void {
  addEventListener('keydown', (event) => {
    const forText = textKeyOf(event);
    if (forText !== undefined && wishes.toText !== undefined) {
      event.preventDefault();
      return wishes.toText(forText);
    }
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
    const target = event.target instanceof Element ? event.target : document.body;
    if (target.closest('dialog[open]') !== null) return;
    const slider = target.matches('input[type=range]');
    if (target.matches('select, textarea, input:not([type=range])')) return;
    if ((event.key === ' ' || event.key === 'Enter') && target.closest('button, summary, a') !== null) return;
    const done = wishOf(event, slider, wishes);
    if (done === undefined) return;
    event.preventDefault();
    done();
  });
}

/** The editor's frame has taken these from the browser already, and does nothing with them itself. */
function textKeyOf({ key, ctrlKey, metaKey, altKey, shiftKey, repeat }: KeyboardEvent): TextKey | undefined {
  if (ctrlKey === metaKey || altKey) return undefined;
  const letter = key.toLowerCase();
  if (letter === 'z') return shiftKey ? 'redo' : 'undo';
  if (letter === 'y' && ctrlKey && !shiftKey) return 'redo';
  return letter === 's' && !shiftKey && !repeat ? 'save' : undefined;
}

function wishOf({ key, shiftKey }: KeyboardEvent, slider: boolean, wishes: KeyWishes): (() => void) | undefined {
  if (/^[1-9]$/.test(key)) return () => wishes.chooseRun(Number(key) - 1);
  switch (key) {
    case ' ':
      return wishes.togglePlaying;
    case 'ArrowLeft':
    case 'ArrowRight': {
      const by = key === 'ArrowLeft' ? -1 : 1;
      return shiftKey || slider ? () => wishes.nudge(by * 0.1) : () => wishes.stepMoment(by);
    }
    case 'Home':
      return wishes.toStart;
    case 'End':
      return wishes.toEnd;
    case '-':
      return () => wishes.speed(-1);
    case '+':
    case '=':
      return () => wishes.speed(1);
    case 'n':
    case 'N':
      return () => wishes.choosePlay(1);
    case 'p':
    case 'P':
      return () => wishes.choosePlay(-1);
    case 'j':
    case 'J':
      return () => wishes.chooseMan(shiftKey ? -1 : 1);
    case 'c':
    case 'C':
      return wishes.bench;
    case 'f':
    case 'F':
      return wishes.showTeam;
    case 'd':
    case 'D':
      return wishes.draw;
    case '?':
      return wishes.help;
    case 'Escape':
      return wishes.leave;
    default:
      return undefined;
  }
}

/** The help: keys and the lines on the floor. A page may hold several plays. */
export function createHelp(byHand: boolean): HTMLDialogElement {
  const close = element('button', { type: 'button', class: 'close' }, tell(message('Close')));
  const rowsOf = (keys: typeof KEYS, more = {}) => keys.flatMap(([pressed, words]) => [element('dt', more, element('kbd', {}, pressed)), element('dd', more, words)]);
  const rows = [...rowsOf(KEYS), ...(byHand ? rowsOf(HAND_KEYS) : rowsOf(PAGE_KEYS, { class: 'of-plays' }))];
  const dialog = element(
    'dialog',
    { class: 'help', 'aria-labelledby': 'help-head' },
    element('h2', { id: 'help-head' }, tell(message('Keys and lines'))),
    element('dl', {}, ...rows),
    createKey('screen'),
    element('p', {}, tell(message('Discs are the offence, open arms with X the defence. A second ring marks the man with the ball.'))),
    close,
  );
  close.addEventListener('click', () => dialog.close());
  dialog.addEventListener('keydown', (event) => {
    if (event.key === '?') dialog.close();
  });
  return dialog;
}
