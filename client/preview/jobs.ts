// Each player's own jobs: one of the five is chosen here or on the floor, and every job leads to its moment.
import type { Playback } from '../../language/playback/playback.ts';
import type { BodyId } from '../../language/play/play.ts';
import { element, setHidden } from './elements.ts';
import { createRows } from './rows.ts';
import type { PlayerState } from './state.ts';
import { tenths } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export type JobsOfPlayer = NonNullable<Playback['jobs']>[number];
export type Job = JobsOfPlayer['jobs'][number];

export interface JobsView {
  readonly root: HTMLElement;
  readonly load: (playback: Playback | null) => void;
  readonly frame: (state: PlayerState) => void;
  /** A page can be printed: whether with these too is asked. `isWanted`: until somebody says otherwise. */
  readonly offerOnPaper: (isWanted: boolean) => void;
  readonly isOnPaper: () => boolean;
}

/** `3 Moss` */
export const playerName = ({ who, name }: Pick<JobsOfPlayer, 'who' | 'name'>): string => (name === undefined ? who : `${who} ${name}`);

export const jobsHead = (): string => tell(message('Each player’s jobs'));

/** @param inSight jobs of a man who was chosen on the floor come into sight */
export function createJobs(chosen: (who: BodyId) => void, picked: (job: Job) => void, inSight: boolean): JobsView {
  const men = element('div', { class: 'men', role: 'group', 'aria-labelledby': 'jobs-head' });
  const list = element('ol', { class: 'told-list job-list', hidden: true });
  const printed = element('input', { type: 'checkbox' });
  const onPaper = element('label', { class: 'on-paper', hidden: true }, printed, tell(message('Print the players’ sheets too')));
  const root = element('section', { class: 'jobs', 'aria-labelledby': 'jobs-head' }, element('h2', { id: 'jobs-head' }, jobsHead()), men, list, onPaper);
  const setMen = createRows(men, ({ who, name }: JobsOfPlayer) => [who, name], manButton);
  const setJobs = createRows(list, (job: Job) => job, jobRow);
  let all: Playback['jobs'];
  let buttons: readonly ReturnType<typeof manButton>[] = [];
  let rows: readonly ReturnType<typeof jobRow>[] = [];
  let shown: JobsOfPlayer | undefined;
  let marked: PlayerState['part'];

  function manButton(player: JobsOfPlayer) {
    const button = element('button', { type: 'button' }, playerName(player));
    button.addEventListener('click', () => chosen(player.who));
    return { who: player.who, root: button };
  }

  function jobRow(job: Job) {
    const button = element('button', { type: 'button' }, job.text, ...(job.at === undefined ? [] : [' ', element('span', { class: 'when' }, `${tenths(job.at)} s`)]));
    button.addEventListener('click', () => picked(job));
    return { part: job.part, root: element('li', job.head === true ? { class: 'step' } : {}, button) };
  }

  return {
    root,
    offerOnPaper(isWanted) {
      printed.checked = isWanted;
      setHidden(onPaper, false);
    },
    isOnPaper: () => printed.checked,
    load(playback) {
      setHidden(root, playback?.jobs === undefined);
      if (playback === null || playback.jobs === all) return;
      all = playback.jobs;
      buttons = setMen(all ?? []);
    },
    frame({ man, part }) {
      for (const { who, root: button } of buttons) button.ariaPressed = String(who === man);
      const player = all?.find(({ who }) => who === man);
      if (player === shown && part === marked) return;
      if (player !== shown) {
        rows = setJobs(player?.jobs ?? []);
        if (player !== undefined) list.setAttribute('aria-label', tell(message('Jobs of {who}', { who: playerName(player) })));
        setHidden(list, player === undefined);
        if (player !== undefined && inSight && matchMedia('(min-width: 860px)').matches) root.scrollIntoView({ block: 'nearest' });
      }
      shown = player;
      marked = part;
      for (const row of rows) row.root.classList.toggle('marked', row.part === part);
    },
  };
}
