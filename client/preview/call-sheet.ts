// The sheet on top of a printed playbook, for the bench: what each play needs on the clock, and its looks in the order they are read.
import { message } from '../../language/message/message.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { aboutSeconds, inSections, looksOf, neededBy } from './calls.ts';
import { element } from './elements.ts';
import { tell } from './tell.ts';

/** One row a play, in the order of the sheets below it, under the sections of its book: a table each, whose head a browser prints again on the next page. */
export function callSheet(plays: readonly Playback[], sections: readonly (string | undefined)[], title: string): HTMLElement {
  const times = [tell(message('first look')), tell(message('every look'))];
  const [sheet, play, looks] = [tell(message('sheet')), tell(message('play')), tell(message('looks, in order'))];
  const wide = [lettersOf([sheet]), Math.max(leastOfName, lettersOf(plays.map((one) => one.play.name))), ...[...times, ...times].map((time) => lettersOf([time]))];
  const rows = inSections(plays.map((playback, i) => ({ playback, number: i + 1, section: sections[i] }))).flatMap(({ head, plays: some }) => {
    const own = some.map(({ playback, number }) => rowOf(playback, number));
    if (head === undefined) return own;
    const table = element('table', {}, columns(wide), element('thead', {}, element('tr', { class: 'section' }, element('th', { colspan: 7, scope: 'colgroup' }, head))), element('tbody', {}, ...own));
    return [element('tr', {}, element('td', { class: 'of-section', colspan: 7 }, table))];
  });
  return element(
    'article',
    { class: 'sheet calls' },
    element('header', {}, element('div', {}, element('h1', {}, tell(message('Call sheet'))), element('p', { class: 'facts' }, title)), element('p', { class: 'call' }, aboutSeconds())),
    element(
      'table',
      {},
      columns(wide),
      element(
        'thead',
        {},
        element('tr', {}, ...cells('td', '', ''), element('th', { colspan: 2, scope: 'colgroup' }, tell(message('at the call'))), element('th', { colspan: 2, scope: 'colgroup' }, tell(message('already in place'))), ...cells('td', '')),
        element('tr', {}, ...cells('th', sheet, play, ...times, ...times, looks)),
      ),
      element('tbody', {}, ...rows),
    ),
  );
}

const leastOfName = 10;
/** A longer word breaks: it would leave the looks no room. */
const mostOfWord = 18;

/** How many letters the longest word has. */
function lettersOf(texts: readonly string[]): number {
  return Math.min(mostOfWord, Math.max(...texts.flatMap((text) => text.split(/\s+/)).map(({ length }) => length)));
}

/** The same columns in every table of the sheet: as wide as their longest word, the rest for the looks. */
function columns(letters: readonly number[]): HTMLElement {
  const all = letters.map((count, at) => {
    const column = element('col', {});
    // Names are in bold.
    column.style.width = `calc(${at === 1 ? count * 1.15 : count}ch + 3mm)`;
    return column;
  });
  return element('colgroup', {}, ...all, element('col', {}));
}

function rowOf(playback: Playback, number: number): HTMLElement {
  const seconds = (['fromCall', 'alreadySet'] as const).flatMap((moment) => {
    const needed = neededBy(playback, moment);
    return needed === undefined ? ['–', '–'] : [String(needed.first), String(needed.every)];
  });
  return element('tr', { class: 'play' }, ...cells('td', String(number)), element('th', { scope: 'row' }, element('span', { class: 'name' }, playback.play.name)), ...cells('td', ...seconds), element('td', {}, looksOf(playback)));
}

function cells(tag: 'td' | 'th', ...words: readonly string[]): readonly HTMLElement[] {
  return words.map((text) => element(tag, {}, text));
}
