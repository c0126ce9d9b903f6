// A mailbox for what the editor sends: only the newest picture and the newest place of the cursor are read, at the next frame.
import { withChange } from '../../language/playback/change.ts';
import type { Cursor, Show } from './messages.ts';

export interface Inbox {
  /** False for a picture that says what has changed of one that is not here. */
  readonly put: (message: Show | Cursor) => boolean;
  readonly takeShow: () => Show | undefined;
  /** The cursor waits here until the picture it belongs to is drawn. */
  readonly takeCursor: () => Cursor | undefined;
}

export function createInbox(): Inbox {
  let show: Show | undefined;
  let cursor: Cursor | undefined;
  /** The last picture that came, read or not: the next may say what has changed of it. */
  let last: { readonly seq: number; readonly playback: unknown } | undefined;
  return {
    put(message) {
      if (message.kind === 'cursor') {
        cursor = message;
        return true;
      }
      const whole = withPicture(message, last);
      if (whole === undefined) return false;
      if (whole.playback !== null) last = { seq: whole.seq, playback: whole.playback };
      if (show === undefined || whole.seq >= show.seq) show = withUnreadPicture(whole, show);
      return true;
    },
    takeShow() {
      const taken = show;
      show = undefined;
      return taken;
    },
    takeCursor() {
      const taken = cursor;
      cursor = undefined;
      return taken;
    },
  };
}

function withPicture({ change, ...message }: Show, last: { readonly seq: number; readonly playback: unknown } | undefined): Show | undefined {
  if (change === undefined) return message;
  const playback = change.from === last?.seq ? withChange(last.playback, change.to) : undefined;
  return playback === undefined ? undefined : { ...message, playback };
}

/** A half-typed line comes without a picture: the one still in the box is then the last good one. */
function withUnreadPicture(message: Show, unread: Show | undefined): Show {
  const keeps = message.stale && message.playback === null && unread?.title === message.title;
  return keeps ? { ...message, playback: unread.playback } : message;
}
