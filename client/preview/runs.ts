// The choice of run-through, in the coach's words, with the time each look takes.
import type { Playback } from '../../language/playback/playback.ts';
import { element, setHidden, setText } from './elements.ts';
import { createRows } from './rows.ts';
import type { LabelledRun } from './state.ts';
import { tenths, unbroken } from './words.ts';
import { message } from '../../language/message/message.ts';
import { sayCall } from '../../language/words/say-call.ts';
import { tell } from './tell.ts';

export interface RunsView {
  readonly root: HTMLElement;
  readonly load: (playback: Playback | null, run: LabelledRun | undefined) => void;
}

interface RunRow {
  readonly label: string;
  readonly takes: string;
}

export function createRuns(chosen: (index: number) => void): RunsView {
  const list = element('ol', { class: 'run-list' });
  const advice = element('p', { class: 'advice' });
  const legend = element('span', { class: 'legend' });
  const root = element('section', { class: 'runs', 'aria-labelledby': 'runs-head' }, element('div', { class: 'runs-head' }, element('h2', { id: 'runs-head' }, tell(message('Run-throughs'))), legend), list, advice);
  const setRuns = createRows(list, (run: RunRow) => run, runButton);
  let loaded: Playback | null = null;
  let buttons: readonly HTMLButtonElement[] = [];

  function load(playback: Playback | null, run: LabelledRun | undefined): void {
    setHidden(root, playback === null || playback.runs.length === 0);
    if (playback === null) return;
    if (playback !== loaded) {
      loaded = playback;
      const focused = buttons.indexOf(document.activeElement as HTMLButtonElement);
      buttons = setRuns(playback.runs.map((one) => ({ label: one.label, takes: takes(playback, one) }))).map(({ button }) => button);
      // One that was made anew, or is gone, had the keyboard.
      if (focused >= 0) buttons[Math.min(focused, buttons.length - 1)]?.focus();
      setText(advice, callWith(playback));
      setHidden(advice, advice.textContent === '');
      setText(legend, playback.times.looks.length === 0 ? '' : unbroken(playback.play.throwIn ? tell(message('shot after the hand-over: typical, late')) : tell(message('shot after the call: typical, late'))));
    }
    buttons.forEach((button, i) => {
      button.ariaPressed = String(playback.runs[i] === run);
    });
  }

  function runButton(run: RunRow, index: number) {
    const button = element(
      'button',
      { type: 'button', class: 'run' },
      element('span', { class: 'nth', 'aria-hidden': 'true' }, String(index + 1)),
      element('span', { class: 'name' }, run.label),
      element('span', { class: 'takes' }, run.takes),
    );
    button.addEventListener('click', () => chosen(index));
    return { root: element('li', {}, button), button };
  }

  return { root, load };
}

/** `9.4 s, 11.2 s`: when the shot usually leaves the hand, and the time it is later than once in ten. */
export function takes(playback: Playback, run: LabelledRun): string {
  const time = playback.times.looks.find((look) => look.run === run.id && look.look === run.look);
  if (time !== undefined) return `${tenths(time.typical)} s, ${tenths(time.late)} s`;
  return run.releaseAt === undefined ? `${tenths(run.end)} s` : `${tenths(run.releaseAt)} s`;
}

/** When to call it, as the coach needs it at the bench. */
export function callWith({ times }: Playback): string {
  return sayCall(times).map(tell).join(' ');
}
