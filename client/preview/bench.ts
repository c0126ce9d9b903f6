// On a page of several plays: the call sheet on the screen. With the seconds that are left it says what still fits, the quickest first.
import { message, type Message } from '../../language/message/message.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { element } from './elements.ts';
import { tell } from './tell.ts';

export interface BenchView {
  readonly dialog: HTMLDialogElement;
  readonly load: (plays: readonly Playback[], sections: readonly (string | undefined)[]) => void;
  readonly open: () => void;
}

/** A play by what it needs, in whole seconds. */
interface Row {
  readonly index: number;
  readonly section: string | undefined;
  readonly playback: Playback;
  readonly first: number;
  readonly every: number;
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
    element('p', {}, tell(message('Seconds that must be on the clock at the call, on a throw-in at the hand-over. A model’s figures, not a promise: time your own team.'))),
  );
  let all: readonly { readonly playback: Playback; readonly section: string | undefined }[] = [];

  for (const input of [seconds, inPlace]) input.addEventListener('input', show);
  close.addEventListener('click', () => dialog.close());

  function show(): void {
    const left = seconds.value === '' ? undefined : Number(seconds.value);
    const rows = all.map(({ playback, section }, index): Row => ({ playback, section, index, ...neededBy(playback, inPlace.checked) }));
    const groups = left === undefined ? bySection(rows) : byTime(rows, left);
    list.replaceChildren(...groups.flatMap(({ head, rows: some }) => (some.length === 0 ? [] : [element('h3', {}, left === undefined ? head : `${head}: ${some.length}`), element('ul', {}, ...some.map(rowOf))])));
    if (list.firstChild === null) list.append(element('p', {}, tell(message('No play for this'))));
  }

  function rowOf({ playback, index, first, every }: Row): HTMLElement {
    const needs = Number.isFinite(first) ? sayNeeds(first, every) : message('no look');
    const looks = playback.runs.filter(({ look }) => look !== undefined).map(({ label }) => label.replaceAll(' ', '\u00a0'));
    const button = element('button', { type: 'button' }, element('span', { class: 'name' }, playback.play.name), element('span', { class: 'needs' }, tell(needs)), element('span', { class: 'looks' }, looks.join('; ')));
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

/** Without a look there is nothing to time, and nothing that fits. */
function neededBy({ times: { firstLook, allLooks = firstLook } }: Playback, inPlace: boolean): Pick<Row, 'first' | 'every'> {
  const key = inPlace ? 'alreadySet' : 'fromCall';
  return { first: firstLook?.[key] ?? Infinity, every: allLooks?.[key] ?? Infinity };
}

const sayNeeds = (first: number, every: number): Message => (first === every ? message('{seconds} s', { seconds: first }) : message('{first} s, every look {all} s', { first, all: every }));

interface Group {
  readonly head: string;
  readonly rows: readonly Row[];
}

function bySection(rows: readonly Row[]): readonly Group[] {
  const groups: { head: string; rows: Row[] }[] = [];
  for (const row of rows) {
    const head = row.section ?? tell(message('Plays'));
    if (groups.at(-1)?.head === head) groups.at(-1)!.rows.push(row);
    else groups.push({ head, rows: [row] });
  }
  return groups;
}

function byTime(rows: readonly Row[], left: number): readonly Group[] {
  const quickest = rows.filter(({ first }) => Number.isFinite(first)).toSorted((a, b) => a.first - b.first || a.every - b.every);
  return [
    { head: tell(message('Time for every look')), rows: quickest.filter(({ every }) => every <= left) },
    { head: tell(message('Time for the first looks')), rows: quickest.filter(({ first, every }) => first <= left && every > left) },
    { head: tell(message('Too late for these')), rows: quickest.filter(({ first }) => first > left) },
  ];
}
