import { soon, type CallOff, type Host } from './host.ts';

export interface Mailbox {
  /** Something has changed: the work will be done once, on what is newest by then. */
  readonly post: () => void;
  readonly close: () => void;
}

/** Takes what has arrived, keeps only that something has, and works once: several posts before the work make one. */
export function openMailbox(host: Pick<Host, 'turn'>, work: () => void): Mailbox {
  let waiting: CallOff | undefined;
  return {
    post() {
      waiting?.();
      waiting = soon(host, () => {
        waiting = undefined;
        work();
      });
    },
    close() {
      waiting?.();
      waiting = undefined;
    },
  };
}
