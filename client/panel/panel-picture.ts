// What a panel shows: kept whole here, and told its player as what has changed since it was told last.
import { withChange } from '../../language/playback/change.ts';
import type { UnreadFrame } from '../../server/lsp/protocol.ts';
import { MESSAGES_VERSION, type Show } from '../preview/messages.ts';

export interface PanelPicture {
  /** Messages get a number of the panel's own: a language server that starts anew counts from one again. */
  readonly seq: () => number;
  readonly title: () => string;
  /** A frame of the server, as the player is told it. `undefined`: it speaks of a picture that has not come. */
  readonly take: (frame: UnreadFrame) => Show | undefined;
  /** For a player that starts anew, or has missed something. */
  readonly whole: () => Show | undefined;
}

export function keepPicture(): PanelPicture {
  let seq = 0;
  let newest: Show | undefined;
  /** The playback that the server sent last, and the number of its frame: the next may say what has changed of it. */
  let known: { readonly frame: number; readonly playback: unknown } | undefined;
  /** Number of the last message that brought the player a picture. */
  let pictured: number | undefined;

  function playbackOf({ playback, change }: UnreadFrame): unknown {
    if (change === undefined) return playback ?? null;
    return change.from === known?.frame ? withChange(known.playback, change.to) : undefined;
  }

  return {
    seq: () => seq,
    title: () => newest?.title ?? '',
    take(frame) {
      const playback = playbackOf(frame);
      if (playback === undefined) {
        known = undefined;
        return undefined;
      }
      const { change, title, stale, staleLine } = frame;
      const message: Show = { v: MESSAGES_VERSION, kind: 'show', seq: ++seq, title, playback, stale, ...(staleLine !== undefined && { line: staleLine + 1 }) };
      // A player that starts anew needs the last good picture together with its mark.
      newest = playback === null && stale && newest !== undefined ? { ...message, playback: newest.playback } : message;
      if (playback === null) return message;
      known = { frame: frame.seq, playback };
      const from = pictured;
      pictured = seq;
      return change === undefined || from === undefined ? message : { ...message, playback: null, change: { from, to: change.to } };
    },
    whole() {
      pictured = newest === undefined || newest.playback === null ? undefined : newest.seq;
      return newest;
    },
  };
}
