// A mailbox for what the editor sends: only the newest picture and the newest place of the cursor are read, at the next frame.
import type { Cursor, Show } from './messages.ts';

export interface Inbox {
  readonly put: (message: Show | Cursor) => void;
  readonly takeShow: () => Show | undefined;
  /** The cursor waits here until the picture it belongs to is drawn. */
  readonly takeCursor: () => Cursor | undefined;
}

export function createInbox(): Inbox {
  let show: Show | undefined;
  let cursor: Cursor | undefined;
  return {
    put(message) {
      if (message.kind === 'cursor') cursor = message;
      else if (show === undefined || message.seq >= show.seq) show = withUnreadPicture(message, show);
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

/** A half-typed line comes without a picture: the one still in the box is then the last good one. */
function withUnreadPicture(message: Show, unread: Show | undefined): Show {
  const keeps = message.stale && message.playback === null && unread?.title === message.title;
  return keeps ? { ...message, playback: unread.playback } : message;
}
