// The sheet on top of a printed playbook, for the bench: what each play needs on the clock, and its looks in the order they are read.
import { message } from '../../language/message/message.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { element } from './elements.ts';
import { tell } from './tell.ts';

/** One row a play, in the order of the sheets below it, under the sections of its book. */
export function callSheet(plays: readonly Playback[], sections: readonly (string | undefined)[]): HTMLElement {
  const times = [tell(message('first look')), tell(message('every look'))];
  const rows = plays.flatMap((playback, i) => {
    const section = sections[i];
    const head = section === undefined || section === sections[i - 1] ? [] : [element('tr', { class: 'section' }, element('th', { colspan: 7, scope: 'rowgroup' }, section))];
    return [...head, rowOf(playback, i + 1)];
  });
  return element(
    'article',
    { class: 'sheet calls' },
    element('header', {}, element('h1', {}, tell(message('Call sheet'))), element('p', { class: 'call' }, tell(message('Seconds that must be on the clock at the call, on a throw-in at the hand-over. A model’s figures, not a promise: time your own team.')))),
    element(
      'table',
      {},
      element(
        'thead',
        {},
        element('tr', {}, ...cells('td', '', ''), element('th', { colspan: 2, scope: 'colgroup' }, tell(message('at the call'))), element('th', { colspan: 2, scope: 'colgroup' }, tell(message('already in place'))), ...cells('td', '')),
        element('tr', {}, ...cells('th', tell(message('sheet')), tell(message('play')), ...times, ...times, tell(message('looks, in order')))),
      ),
      element('tbody', {}, ...rows),
    ),
  );
}

function rowOf({ play, times: { firstLook, allLooks = firstLook }, runs }: Playback, number: number): HTMLElement {
  const seconds = [firstLook?.fromCall, allLooks?.fromCall, firstLook?.alreadySet, allLooks?.alreadySet].map((time) => (time === undefined ? '–' : String(time)));
  // A line breaks between two looks.
  const looks = runs.filter(({ look }) => look !== undefined).map(({ label }) => label.replaceAll(' ', '\u00a0'));
  return element('tr', {}, ...cells('td', String(number)), element('th', { scope: 'row' }, play.name), ...cells('td', ...seconds, looks.join('; ')));
}

function cells(tag: 'td' | 'th', ...words: readonly string[]): readonly HTMLElement[] {
  return words.map((text) => element(tag, {}, text));
}
