// What the checks say of this run-through, each with its moment.
import type { Playback } from '../../language/playback/playback.ts';
import { fixButtons, severityWords, type FixChosen } from './callout.ts';
import { element } from './elements.ts';
import type { LabelledRun } from './state.ts';
import { tenths } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface FindingsView {
  readonly root: HTMLElement;
  readonly load: (playback: Playback | null, run: LabelledRun | undefined) => void;
  readonly mark: (index: number) => void;
}

export function createFindings(picked: (index: number) => void, chosen: FixChosen): FindingsView {
  const list = element('ul', { class: 'finding-list' });
  const root = element('section', { class: 'findings', 'aria-labelledby': 'findings-head' }, element('h2', { id: 'findings-head' }, tell(message('To look at'))), list);
  let loaded: unknown;
  let buttons = new Map<number, HTMLButtonElement>();

  return {
    root,
    load(playback, run) {
      if (loaded === playback && loaded !== undefined && list.dataset.run === run?.id) return;
      loaded = playback;
      list.dataset.run = run?.id ?? '';
      buttons = new Map();
      const items = (playback?.findings ?? []).flatMap((finding, i) => {
        if (finding.run !== undefined && run !== undefined && finding.run !== run.id) return [];
        const when = finding.moment === undefined ? '' : `${tenths(finding.moment)} s`;
        const button = element(
          'button',
          { type: 'button', class: `finding ${finding.severity}` },
          element('span', { class: 'severity' }, severityWords(finding.severity)),
          element('span', { class: 'message' }, finding.message),
          element('span', { class: 'when' }, when),
        );
        button.addEventListener('click', () => picked(i));
        buttons.set(i, button);
        const fixes = fixButtons(finding, i, chosen);
        return [element('li', {}, button, ...(fixes === undefined ? [] : [fixes]))];
      });
      root.hidden = items.length === 0;
      list.replaceChildren(...items);
    },
    mark(index) {
      for (const [i, button] of buttons) button.classList.toggle('marked', i === index);
      buttons.get(index)?.scrollIntoView({ block: 'nearest' });
    },
  };
}
