// Reduced motion: nothing glides, the picture goes from moment to moment.
import { momentsOf } from '../../language/playback/moments.ts';
import { currentRun, type PlayerState } from './state.ts';

export interface Calm {
  /** As the reader's system asks. */
  readonly ofSystem: () => boolean;
  /** What is shown of a state. */
  readonly inSteps: (state: PlayerState) => PlayerState;
}

export function listenToCalm(changed: () => void): Calm {
  const asked = matchMedia('(prefers-reduced-motion: reduce)');
  asked.addEventListener('change', changed);
  /** Or the editor's own setting. */
  const isWanted = () => asked.matches || document.body.classList.contains('vscode-reduce-motion');
  return {
    ofSystem: () => asked.matches,
    inSteps(state) {
      const run = currentRun(state);
      if (!state.playing || run === undefined || !isWanted()) return state;
      return { ...state, t: momentsOf(run).findLast(({ t }) => t <= state.t)?.t ?? 0 };
    },
  };
}
