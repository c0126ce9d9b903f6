// What the checks say of this run-through, each with its moment.
import type { Playback } from '../../language/playback/playback.ts';
import { fixButtons, severityWords, type FixChosen } from './callout.ts';
import { element, setHidden } from './elements.ts';
import { createRows } from './rows.ts';
import type { LabelledRun } from './state.ts';
import { tenths } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface FindingsView {
  readonly root: HTMLElement;
  readonly load: (playback: Playback | null, run: LabelledRun | undefined) => void;
  readonly mark: (index: number) => void;
}

interface FindingRow {
  readonly finding: Playback['findings'][number];
  /** Its place in the playback. */
  readonly index: number;
}

export function createFindings(picked: (index: number) => void, chosen: FixChosen): FindingsView {
  const list = element('ul', { class: 'finding-list' });
  const root = element('section', { class: 'findings', 'aria-labelledby': 'findings-head' }, element('h2', { id: 'findings-head' }, tell(message('To look at'))), list);
  const setFindings = createRows(list, ({ finding: { severity, message: told, moment, fixes }, index }: FindingRow) => [index, severity, told, moment, fixes], findingRow);
  let loaded: Playback | null = null;
  let ofRun: string | undefined;
  let rows: readonly ReturnType<typeof findingRow>[] = [];

  function findingRow({ finding, index }: FindingRow) {
    const button = element(
      'button',
      { type: 'button', class: `finding ${finding.severity}` },
      element('span', { class: 'severity' }, severityWords(finding.severity)),
      element('span', { class: 'message' }, finding.message),
      element('span', { class: 'when' }, finding.moment === undefined ? '' : `${tenths(finding.moment)} s`),
    );
    button.addEventListener('click', () => picked(index));
    const fixes = fixButtons(finding, index, chosen);
    return { index, button, root: element('li', {}, button, ...(fixes === undefined ? [] : [fixes])) };
  }

  const mark = (index: number | undefined) => rows.forEach((row) => row.button.classList.toggle('marked', row.index === index));

  return {
    root,
    load(playback, run) {
      if (loaded === playback && loaded !== null && ofRun === run?.id) return;
      loaded = playback;
      ofRun = run?.id;
      const all = (playback?.findings ?? []).map((finding, index): FindingRow => ({ finding, index }));
      rows = setFindings(all.filter(({ finding }) => finding.run === undefined || run === undefined || finding.run === run.id));
      setHidden(root, rows.length === 0);
      mark(undefined);
    },
    mark(index) {
      mark(index);
      rows.find((row) => row.index === index)?.button.scrollIntoView({ block: 'nearest' });
    },
  };
}
