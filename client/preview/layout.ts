// The frame of the page: head, floor, controls on one side, run-throughs, lanes and words on the other.
import { element, setHidden, setText } from './elements.ts';
import { currentRun, type PlayerState } from './state.ts';
import { factsOf, sentence } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface Pieces {
  readonly clock: HTMLElement;
  readonly plays: HTMLElement;
  readonly court: SVGSVGElement;
  readonly controls: HTMLElement;
  readonly runs: HTMLElement;
  readonly jobs: HTMLElement;
  /** What leads to them where they are out of sight. */
  readonly jobsBelow: HTMLElement;
  readonly lanes: HTMLElement;
  readonly findings: HTMLElement;
  readonly told: HTMLElement;
  readonly live: HTMLElement;
  readonly help: HTMLElement;
  readonly bench: HTMLElement;
  readonly callout: HTMLElement;
  /** What can be moved by hand, and the words beside it; only where there is an editor. */
  readonly hand?: SVGSVGElement;
  readonly chip?: HTMLElement;
}

export interface Layout {
  readonly frame: (state: PlayerState) => void;
  /** What is going on, in one line under the floor. */
  readonly caption: (words: string) => void;
  readonly toggleTeam: () => boolean;
  readonly isTeam: () => boolean;
}

export function createFrame(pieces: Pieces): Layout {
  const name = element('h1');
  const facts = element('p', { class: 'facts' });
  const stale = element('p', { class: 'stale', role: 'status' });
  const caption = element('p', { class: 'caption' });
  const under = element('div', { class: 'under' }, caption, stale);
  const empty = element('div', { class: 'empty' });
  const floor = element('div', { class: 'floor-box' }, pieces.court, ...(pieces.hand === undefined ? [] : [pieces.hand]), pieces.callout, empty);
  const main = element(
    'main',
    { class: 'player' },
    element('header', { class: 'head' }, element('div', { class: 'title' }, name, facts), pieces.plays, pieces.clock),
    element('section', { class: 'stage', 'aria-label': tell(message('The floor')) }, floor, under, pieces.jobsBelow, pieces.controls),
    element('div', { class: 'side' }, pieces.runs, pieces.lanes, pieces.findings, pieces.jobs, pieces.told),
  );
  document.body.append(main, pieces.live, pieces.help, pieces.bench, ...(pieces.chip === undefined ? [] : [pieces.chip]));

  let drawn: PlayerState | undefined;

  return {
    frame(state) {
      if (drawn !== undefined && sameHead(drawn, state)) return;
      drawn = state;
      const run = currentRun(state);
      setText(name, state.playback?.play.name ?? (state.title === '' ? 'Setwright' : state.title));
      setText(facts, state.playback === null ? '' : factsOf(state.playback.play));
      if (document.title !== name.textContent) document.title = name.textContent;
      const words = staleWords(state);
      setText(stale, words);
      setHidden(stale, words === '');
      main.classList.toggle('is-stale', words !== '' && run !== undefined);
      main.classList.toggle('is-empty', run === undefined);
      empty.replaceChildren(...(run === undefined ? emptyState(state) : []));
      setHidden(empty, run !== undefined);
      if (run === undefined) floor.style.removeProperty('aspect-ratio');
      pieces.court.setAttribute('aria-label', run === undefined ? tell(message('The empty floor')) : tell(message('{play}: {run}', { play: state.playback!.play.name, run: run.label })));
    },
    caption(words) {
      setText(caption, words === '' ? '\u00a0' : sentence(words));
    },
    toggleTeam() {
      document.body.classList.toggle('team');
      return document.body.classList.contains('team');
    },
    isTeam: () => document.body.classList.contains('team'),
  };
}

/** Nothing has changed but time, speed and marks. */
function sameHead(a: PlayerState, b: PlayerState): boolean {
  return a.playback === b.playback && a.run === b.run && a.title === b.title && a.stale === b.stale && a.refusal === b.refusal && isUnheard(a) === isUnheard(b);
}

function staleWords(state: PlayerState): string {
  if (state.playback === null) return '';
  if (state.refusal !== undefined) return state.refusal;
  if (state.stale === null) return '';
  return state.stale.line === undefined ? tell(message('Older than the text: a line is unfinished')) : tell(message('Older than the text: line {line} is unfinished', { line: state.stale.line }));
}

/** The editor has not said yet what there is to show. */
const isUnheard = ({ seq, refusal }: PlayerState): boolean => seq < 0 && refusal === undefined;

function emptyState(state: PlayerState): readonly HTMLElement[] {
  const { title, refusal, playback, stale } = state;
  if (isUnheard(state)) return [element('p', {}, tell(message('The play is on its way …')))];
  if (refusal !== undefined) return [element('h2', {}, tell(message('This play cannot be shown'))), element('p', {}, refusal)];
  const named = playback?.play.name ?? title;
  if (named !== '') {
    return [
      element('h2', {}, stale === null ? tell(message('Nothing moves yet')) : tell(message('Almost there'))),
      element('p', {}, stale === null ? tell(message('Say where they start and who does what. The floor fills as you write:')) : tell(message('The picture comes with the next whole line:'))),
      sample('from horns', '1 passes to 2 and cuts to rim', 'look 1: layup'),
    ];
  }
  return [
    element('h2', {}, tell(message('No play to show'))),
    element('p', {}, tell(message('Put the cursor into a play and it moves here. A first one to try:'))),
    sample('play "First"', '  from horns', '  4 ball-screens for 1', '  1 drives off 4 to right elbow', '  look 1: jumper'),
  ];
}

const sample = (...lines: readonly string[]): HTMLElement => element('pre', {}, lines.join('\n'));
