// Playing, the moments, speed and run-throughs: what buttons and keys do with the time shown.
import { momentOf } from '../../language/playback/at.ts';
import * as change from './state.ts';
import { currentRun, type Showing } from './state.ts';
import { sayWithTime } from './told.ts';
import type { ToEditor } from './to-editor.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

export interface Playing {
  readonly toggle: () => void;
  readonly stepMoment: (by: 1 | -1) => void;
  readonly seek: (t: number) => void;
  /** Seconds forth or back. */
  readonly nudge: (seconds: number) => void;
  readonly setSpeed: (speed: number) => void;
  readonly changeSpeed: (by: 1 | -1) => void;
  readonly chooseRun: (index: number) => void;
}

/** @param say to a screen reader */
export function createPlaying({ state, update }: Showing, editor: Pick<ToEditor, 'select'>, say: (words: string) => void): Playing {
  function sayHere(): void {
    const { playback, t } = state();
    const run = currentRun(state());
    if (playback !== null && run !== undefined) say(sayWithTime(playback, run, momentOf(playback, run, t)));
  }

  const setSpeed = (speed: number) => update(change.setSpeed(state(), speed));

  return {
    toggle() {
      update(change.togglePlaying(state()));
      if (!state().playing) sayHere();
    },
    stepMoment(by) {
      update(change.stepMoment(state(), by));
      sayHere();
      const { part } = state();
      if (part !== undefined) editor.select(part);
    },
    seek: (t) => update(change.seek(state(), t)),
    nudge(seconds) {
      update(change.pause(change.seek(state(), state().t + seconds * 1000)));
      sayHere();
    },
    setSpeed,
    changeSpeed(by) {
      const next = change.SPEEDS[change.SPEEDS.findIndex((speed) => speed === state().speed) + by];
      if (next !== undefined) setSpeed(next);
    },
    chooseRun(index) {
      update(change.chooseRun(state(), index));
      const run = currentRun(state());
      if (run !== undefined) say(tell(message('Run-through {nth}: {run}', { nth: state().run + 1, run: run.label })));
    },
  };
}
