// On a page of several plays: the call sheet on the screen. With the seconds that are left it says what still fits, the quickest first.
import { message, type Message } from '../../language/message/message.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { aboutSeconds, inSections, looksOf, neededBy } from './calls.ts';
import { element } from './elements.ts';
import { tell } from './tell.ts';

export interface BenchView {
  readonly dialog: HTMLDialogElement;
  readonly load: (plays: readonly Playback[], sections: readonly (string | undefined)[]) => void;
  readonly open: () => void;
}

/** A play by what it needs, in whole seconds; without a look there is nothing to time. */
interface Row {
  readonly index: number;
  readonly section: string | undefined;
  readonly playback: Playback;
  readonly needed: ReturnType<typeof neededBy>;
}

/** @param chosen the play's place in the list */
export function createBench(chosen: (index: number) => void): BenchView {
  const seconds = element('input', { type: 'number', min: 0, max: 3600, step: 1, inputmode: 'numeric', autofocus: true });
  const inPlace = element('input', { type: 'checkbox' });
  const list = element('div');
  const close = element('button', { type: 'button', class: 'close' }, tell(message('Close')));
  const dialog = element(
    'dialog',
    { class: 'help bench', 'aria-labelledby': 'bench-head' },
    element(
      'div',
      { class: 'bench-top' },
      element('h2', { id: 'bench-head' }, tell(message('Call sheet'))),
      close,
      element('div', { class: 'bench-question' }, element('label', {}, tell(message('Seconds left')), seconds), element('label', {}, inPlace, tell(message('Already in place')))),
    ),
    list,
    element('p', {}, aboutSeconds()),
  );
  let all: readonly { readonly playback: Playback; readonly section: string | undefined }[] = [];

  for (const input of [seconds, inPlace]) input.addEventListener('input', answer);
  close.addEventListener('click', () => dialog.close());

  /** The quickest stand at the top: out of sight for whoever had read on. */
  function answer(): void {
    show();
    dialog.scrollTo(0, 0);
  }

  function show(): void {
    const left = seconds.value === '' ? undefined : Number(seconds.value);
    const rows = all.map(({ playback, section }, index): Row => ({ playback, section, index, needed: neededBy(playback, inPlace.checked ? 'alreadySet' : 'fromCall') }));
    const groups = left === undefined ? bySection(rows) : byTime(rows, left);
    list.replaceChildren(...groups.flatMap(({ head, rows: some }) => (some.length === 0 ? [] : [element('h3', {}, left === undefined ? head : `${head}: ${some.length}`), element('ul', {}, ...some.map(rowOf))])));
    if (list.firstChild === null) list.append(element('p', {}, tell(message('No play for this'))));
  }

  function rowOf({ playback, index, needed }: Row): HTMLElement {
    const needs = needed === undefined ? message('no look') : sayNeeds(needed);
    const button = element('button', { type: 'button' }, element('span', { class: 'name' }, playback.play.name), element('span', { class: 'needs' }, tell(needs)), looksOf(playback));
    button.addEventListener('click', () => {
      dialog.close();
      chosen(index);
    });
    return element('li', {}, button);
  }

  return {
    dialog,
    load(plays, sections) {
      all = plays.map((playback, i) => ({ playback, section: sections[i] }));
    },
    open() {
      if (dialog.open) return;
      show();
      dialog.showModal();
    },
  };
}

const sayNeeds = ({ first, every }: NonNullable<Row['needed']>): Message => (first === every ? message('{seconds} s', { seconds: first }) : message('{first} s, every look {all} s', { first, all: every }));

interface Group {
  readonly head: string;
  readonly rows: readonly Row[];
}

const bySection = (rows: readonly Row[]): readonly Group[] => inSections(rows).map(({ head = tell(message('Plays')), plays }) => ({ head, rows: plays }));

function byTime(rows: readonly Row[], left: number): readonly Group[] {
  const quickest = rows.flatMap(({ needed, ...row }) => (needed === undefined ? [] : [{ ...row, needed }])).toSorted(({ needed: a }, { needed: b }) => a.first - b.first || a.every - b.every);
  return [
    { head: tell(message('Time for every look')), rows: quickest.filter(({ needed }) => needed.every <= left) },
    { head: tell(message('Time for the first looks')), rows: quickest.filter(({ needed }) => needed.first <= left && needed.every > left) },
    { head: tell(message('Too late for these')), rows: quickest.filter(({ needed }) => needed.first > left) },
  ];
}
