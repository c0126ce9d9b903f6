// The play told in words: to read along, and for a screen reader a polite word when something new is shown.
import type { Playback } from '../../language/playback/playback.ts';
import type { PartId } from '../../language/play/play.ts';
import type { Moment } from '../../language/playback/at.ts';
import { element, setHidden, setText } from './elements.ts';
import { createRows } from './rows.ts';
import { tenths } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

type Told = Playback['told'][number];

export interface ToldView {
  readonly root: HTMLElement;
  readonly live: HTMLElement;
  readonly load: (playback: Playback | null) => void;
  readonly frame: (part: PartId | undefined) => void;
  /** Says one thing to a screen reader, when it has nothing else to say. */
  readonly say: (words: string) => void;
}

export function createTold(picked: (part: PartId) => void): ToldView {
  const list = element('ol', { class: 'told-list' });
  // Beside the floor there is room to read along.
  const root = element('details', { class: 'told', open: matchMedia('(min-width: 860px)').matches }, element('summary', {}, tell(message('The play in words'))), list);
  const live = element('div', { class: 'unseen', role: 'status', 'aria-live': 'polite' });
  const setSentences = createRows(list, (told: Told) => [told, isStep(told)], sentence);
  let loaded: Playback | null = null;
  let steps: ReadonlySet<PartId> = new Set();
  let sentences: readonly ReturnType<typeof sentence>[] = [];
  let marked: PartId | undefined;

  function sentence({ text, part }: Told) {
    if (part === undefined) return { part, root: element('li', {}, text) };
    const button = element('button', { type: 'button' }, text);
    button.addEventListener('click', () => picked(part));
    return { part, root: element('li', isStep({ text, part }) ? { class: 'step' } : {}, button) };
  }

  const isStep = ({ part }: Told) => part !== undefined && steps.has(part);

  function mark(): void {
    for (const { part, root: item } of sentences) item.classList.toggle('marked', part !== undefined && part === marked);
  }

  return {
    root,
    live,
    load(playback) {
      setHidden(root, playback === null || playback.told.length === 0);
      if (playback === loaded || playback === null) return;
      loaded = playback;
      steps = new Set(playback.steps.map(({ key }) => key));
      sentences = setSentences(playback.told);
      mark();
    },
    frame(part) {
      if (part === marked) return;
      marked = part;
      mark();
    },
    say: (words) => setText(live, words),
  };
}

/** What goes on at a moment, in the coach's words: `1 dribbles to the left wing; 5 screens down for 3`. */
export function sayMoment(playback: Playback, run: Pick<Playback['runs'][number], 'startsAt'>, moment: Moment): string {
  const words = [...new Set(moment.actions.map((part) => playback.says[part]).filter((words) => words !== undefined))].join('; ');
  return words === '' && moment.t < run.startsAt ? tell(message('getting into place')) : words;
}

export function sayWithTime(playback: Playback, run: Playback['runs'][number], moment: Moment): string {
  const words = sayMoment(playback, run, moment);
  return words === '' ? tell(message('{seconds} seconds. Nobody moves.', { seconds: tenths(moment.t) })) : tell(message('{seconds} seconds. {words}.', { seconds: tenths(moment.t), words }));
}

/** What the time shown is about: the ball's action first, then the latest started. */
export function partNow(run: Playback['runs'][number], moment: Moment): PartId | null {
  if (moment.ball?.action !== undefined && moment.actions.includes(moment.ball.action)) return moment.ball.action;
  const holder = moment.ball?.holder;
  const own = holder === undefined ? undefined : moment.bodies.find(({ id }) => id === holder)?.action;
  if (own !== undefined) return own;
  let latest: PartId | null = null;
  let since = -1;
  for (const part of moment.actions) {
    const start = run.events.find((event) => event.part === part && event.kind === 'start')?.at ?? 0;
    if (start >= since) [latest, since] = [part, start];
  }
  return latest;
}
