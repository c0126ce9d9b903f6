// What the language server needs from the place it runs in. The two entries (node.ts, worker.ts) each bring one, tests their own.

export interface Host {
  readonly place: 'Node' | 'web worker';
  /** of this package, as the manifest writes it */
  readonly version: string;
  /** Does the work once the messages that have already arrived are read; returns how to call it off. */
  soon(work: () => void): CallOff;
  /** Does the work after so many milliseconds. */
  later(milliseconds: number, work: () => void): CallOff;
}

export type CallOff = () => void;

/** The clock every JavaScript place has. */
export const ownClock = {
  soon(work: () => void): CallOff {
    // Messages are read one a turn: by the second turn the next one that is already here has been read.
    let called = false;
    let timer = setTimeout(() => (timer = setTimeout(() => called || work())));
    return () => {
      called = true;
      clearTimeout(timer);
    };
  },
  later(milliseconds: number, work: () => void): CallOff {
    const timer = setTimeout(work, milliseconds);
    return () => clearTimeout(timer);
  },
} satisfies Pick<Host, 'soon' | 'later'>;
