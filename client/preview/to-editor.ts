// What the editor is told of what is shown: the words that were picked, what goes on, what is kept through reloads, which picture is drawn.
import type { Moment } from '../../language/playback/at.ts';
import type { Playback } from '../../language/playback/playback.ts';
import type { PartId, TextPlace } from '../../language/play/play.ts';
import { MESSAGES_VERSION, type Kept } from './messages.ts';
import type { Port } from './port.ts';
import { currentRun, keptOf, type LabelledRun, type PlayerState } from './state.ts';
import { partNow } from './told.ts';

export interface ToEditor {
  /** The words of a part are to be selected, or where it has none those at a place of the play's text. */
  readonly select: (part: PartId | undefined, place?: TextPlace) => void;
  /** What goes on at a moment; told where it is something else than before. */
  readonly now: (playback: Playback, run: LabelledRun, moment: Moment) => void;
  /** Another play or run-through: what goes on is told again. */
  readonly anew: () => void;
  readonly drawn: (seq: number) => void;
  readonly refused: (seq: number, message: string) => void;
  readonly missed: (seq: number) => void;
  /** Keeps play, run-through, time and speed a moment after they change, whoever changes them; while the play moves now and then. */
  readonly keepSoon: () => void;
}

export function createToEditor({ post, keep }: Port, state: () => PlayerState): ToEditor {
  let told: PartId | null | undefined;
  let kept: Kept | undefined;
  let keeping: ReturnType<typeof setTimeout> | undefined;

  function keepNow(): void {
    keeping = undefined;
    kept = keptOf(state()) ?? kept;
    if (kept === undefined) return;
    keep(kept);
    post(kept);
  }

  function isKept(): boolean {
    const { playback, t, speed } = state();
    return playback === null || (kept !== undefined && kept.play === playback.play.key && kept.t === Math.round(t) && kept.speed === speed && kept.run === currentRun(state())?.id);
  }

  return {
    select(part, place) {
      const { playback } = state();
      if (playback === null) return;
      post({ v: MESSAGES_VERSION, kind: 'select', play: playback.play.key, part, place: place ?? (part === undefined ? undefined : playback.text[part]) });
    },
    now(playback, run, moment) {
      const part = partNow(run, moment);
      if (part === told) return;
      told = part;
      post({ v: MESSAGES_VERSION, kind: 'now', play: playback.play.key, part, t: Math.round(moment.t) });
    },
    anew: () => void (told = undefined),
    drawn(seq) {
      // Also for whoever measures from the key to the picture.
      document.documentElement.dataset.seq = String(seq);
      performance.clearMarks('setwright:shown');
      performance.mark('setwright:shown', { detail: seq });
      post({ v: MESSAGES_VERSION, kind: 'shown', seq });
    },
    refused: (seq, message) => post({ v: MESSAGES_VERSION, kind: 'refused', seq, message }),
    missed: (seq) => post({ v: MESSAGES_VERSION, kind: 'missed', seq }),
    keepSoon() {
      if (keeping === undefined && !isKept()) keeping = setTimeout(keepNow, state().playing ? 1000 : 200);
    },
  };
}
