// Each player's own jobs: one of the five is chosen here or on the floor, and every job leads to its moment.
import type { Playback } from '../../language/playback/playback.ts';
import type { BodyId } from '../../language/play/play.ts';
import { element, setHidden, setText } from './elements.ts';
import { createRows } from './rows.ts';
import type { PlayerState } from './state.ts';
import { tenths } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export type JobsOfPlayer = NonNullable<Playback['jobs']>[number];
export type Job = JobsOfPlayer['jobs'][number];

export interface JobsView {
  readonly root: HTMLElement;
  /** Shown while the jobs of the man who is chosen lie below what is on the screen: leads to them. */
  readonly below: HTMLElement;
  /** Chooses the next man, or the one before, and gives his button the keyboard. */
  readonly step: (by: 1 | -1) => void;
  readonly load: (playback: Playback | null) => void;
  readonly frame: (state: PlayerState) => void;
  /** A page can be printed: whether with these too is asked. `isWanted`: until somebody says otherwise. */
  readonly offerOnPaper: (isWanted: boolean) => void;
  readonly isOnPaper: () => boolean;
}

/** `3 Moss` */
export const playerName = ({ who, name }: Pick<JobsOfPlayer, 'who' | 'name'>): string => (name === undefined ? who : `${who} ${name}`);

const jobsOfMan = (player: JobsOfPlayer): string => tell(message('Jobs of {who}', { who: playerName(player) }));

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
  let isBelow = false;

  const whose = element('span');
  const below = element('button', { type: 'button', class: 'jobs-below', hidden: true }, whose, ' ', element('span', { 'aria-hidden': 'true' }, '↓'));
  below.addEventListener('click', () => {
    root.scrollIntoView({ block: 'start' });
    buttons.find(({ who }) => who === shown?.who)?.root.focus({ preventScroll: true });
  });
  // A click on the floor moves nothing away from under the mouse: where his jobs are is said instead.
  const sight = new IntersectionObserver((entries) => {
    const { isIntersecting, boundingClientRect } = entries.at(-1)!;
    isBelow = !isIntersecting && boundingClientRect.top > 0;
    tellBelow();
  }, { rootMargin: '0px 0px -56px' });

  function tellBelow(): void {
    if (shown !== undefined) setText(whose, jobsOfMan(shown));
    setHidden(below, shown === undefined || !isBelow);
  }

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
    below,
    step(by) {
      if (all === undefined || all.length === 0) return;
      const now = all.findIndex(({ who }) => who === shown?.who);
      const next = all[now < 0 ? (by > 0 ? 0 : all.length - 1) : (now + by + all.length) % all.length]!;
      chosen(next.who);
      buttons.find(({ who }) => who === next.who)?.root.focus();
    },
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
        if (player !== undefined) list.setAttribute('aria-label', jobsOfMan(player));
        setHidden(list, player === undefined);
        if (player !== undefined && inSight && matchMedia('(min-width: 860px)').matches) root.scrollIntoView({ block: 'nearest' });
        // Chosen with a key: the list comes along with his button.
        else if (player !== undefined && men.contains(document.activeElement)) list.scrollIntoView({ block: 'nearest' });
        // It says anew where the list is: one that comes up out of sight is no change to it.
        sight.unobserve(list);
        if (player !== undefined) sight.observe(list);
        shown = player;
        tellBelow();
      }
      marked = part;
      for (const row of rows) row.root.classList.toggle('marked', row.part === part);
    },
  };
}
