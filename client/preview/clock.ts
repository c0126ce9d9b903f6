// The clock: what the game clock shows, counted from when the play is called, and the seconds since the call.
import type { Playback } from '../../language/playback/playback.ts';
import { element, setHidden, setText } from './elements.ts';
import type { LabelledRun } from './state.ts';
import { clockWords, tenths } from './words.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

/** Seconds on the game clock at t ms, or `undefined` where the play does not say when it is called. It stands until the clock starts. */
export function gameClock(playback: Playback, run: LabelledRun, t: number): number | undefined {
  const { callWith } = playback.play;
  return callWith === undefined ? undefined : Math.max(0, callWith - Math.max(0, t - run.clockStartsAt) / 1000);
}

/** What a coach should know about the clock at t: it stands before the touch, the horn has gone. */
export function clockRemark(playback: Playback, run: LabelledRun, t: number): string {
  if (playback.play.throwIn && t < run.clockStartsAt) return tell(message('clock stands until the touch'));
  return gameClock(playback, run, t) === 0 ? tell(message('the horn has gone')) : '';
}

export interface ClockFace {
  readonly root: HTMLElement;
  readonly load: (playback: Playback | null, run: LabelledRun | undefined) => void;
  readonly frame: (playback: Playback, run: LabelledRun, t: number) => void;
}

export function createClock(): ClockFace {
  const game = element('output', { class: 'figure', 'aria-label': tell(message('on the clock')), 'aria-live': 'off' });
  const remark = element('span', { class: 'remark' });
  const since = element('output', { class: 'figure', 'aria-label': tell(message('seconds since the call')), 'aria-live': 'off' });
  const sinceWords = element('span', { class: 'unit' });
  const gameCell = element('div', { class: 'cell game' }, game, element('span', { class: 'unit' }, tell(message('on the clock'))));
  const sinceCell = element('div', { class: 'cell since' }, since, sinceWords);
  const root = element('div', { class: 'clock' }, remark, sinceCell, gameCell);
  return {
    root,
    load(playback, run) {
      setHidden(root, playback === null || run === undefined);
      if (playback === null || run === undefined) return;
      setHidden(gameCell, playback.play.callWith === undefined);
      root.classList.toggle('throw-in', playback.play.throwIn);
      setText(sinceWords, playback.play.throwIn ? tell(message('s since the hand-over')) : tell(message('s since the call')));
    },
    frame(playback, run, t) {
      const left = gameClock(playback, run, t);
      if (left !== undefined) setText(game, clockWords(left));
      setText(since, tenths(t));
      setText(remark, clockRemark(playback, run, t));
    },
  };
}
