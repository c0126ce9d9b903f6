// What the language server needs from the place it runs in. A Node process (node-host.ts) and a worker (worker.ts) each bring one, tests their own.
import type { FileAccess } from './play-files.ts';

export interface Host {
  readonly place: 'Node' | 'web worker';
  /** of this package, as the manifest writes it */
  readonly version: string;
  /** Where a finding is explained, with `{code}` for its code, for a client that says nothing of it. */
  readonly manual?: string;
  /** Does the work at the next turn of the event loop: at once, but after a message that is already here. */
  turn(work: () => void): void;
  /** Does the work after so many milliseconds; returns how to call it off. */
  later(milliseconds: number, work: () => void): CallOff;
  /** The files of these folders, for a client that does not read them itself; absent where there are none. */
  files?(folders: readonly string[]): FileAccess;
}

export type CallOff = () => void;

/** What every place has. */
export const later: Host['later'] = (milliseconds, work) => {
  const timer = setTimeout(work, milliseconds);
  return () => clearTimeout(timer);
};

/** Waits for somebody else's answer, but no longer than so many milliseconds; a failure counts as an answer. */
export function atMost(host: Pick<Host, 'later'>, milliseconds: number, answer: Promise<unknown>): Promise<void> {
  return new Promise((resolve) => {
    const callOff = host.later(milliseconds, resolve);
    const done = () => {
      callOff();
      resolve();
    };
    void answer.then(done, done);
  });
}

/** Does the work once the messages that have already arrived are read; `turns`: the more, the later among those that wait. */
export function soon(host: Pick<Host, 'turn'>, work: () => void, turns = 2): CallOff {
  let off = false;
  // Messages are read one a turn: by the second turn the next one that is already here has been read.
  const wait = (left: number): void => {
    if (left > 0) host.turn(() => off || wait(left - 1));
    else work();
  };
  wait(turns);
  return () => {
    off = true;
  };
}
