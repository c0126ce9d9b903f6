// The sheet on top of a printed playbook, for the bench: what each play needs on the clock, and its looks in the order they are read.
import { message } from '../../language/message/message.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { aboutSeconds, inSections, looksOf, neededBy } from './calls.ts';
import { element } from './elements.ts';
import { tell } from './tell.ts';

/** One row a play, in the order of the sheets below it, under the sections of its book. */
export function callSheet(plays: readonly Playback[], sections: readonly (string | undefined)[]): HTMLElement {
  const times = [tell(message('first look')), tell(message('every look'))];
  const rows = inSections(plays.map((playback, i) => ({ playback, number: i + 1, section: sections[i] }))).flatMap(({ head, plays: some }) => [
    ...(head === undefined ? [] : [element('tr', { class: 'section' }, element('th', { colspan: 7, scope: 'rowgroup' }, head))]),
    ...some.map(({ playback, number }) => rowOf(playback, number)),
  ]);
  return element(
    'article',
    { class: 'sheet calls' },
    element('header', {}, element('h1', {}, tell(message('Call sheet'))), element('p', { class: 'call' }, aboutSeconds())),
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

function rowOf(playback: Playback, number: number): HTMLElement {
  const seconds = (['fromCall', 'alreadySet'] as const).flatMap((moment) => {
    const needed = neededBy(playback, moment);
    return needed === undefined ? ['–', '–'] : [String(needed.first), String(needed.every)];
  });
  return element('tr', {}, ...cells('td', String(number)), element('th', { scope: 'row' }, element('span', { class: 'name' }, playback.play.name)), ...cells('td', ...seconds), element('td', {}, looksOf(playback)));
}

function cells(tag: 'td' | 'th', ...words: readonly string[]): readonly HTMLElement[] {
  return words.map((text) => element(tag, {}, text));
}
