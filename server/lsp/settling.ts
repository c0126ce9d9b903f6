// When findings are published. Every version of a document is published once, whole, at once, except that what is new on the
// line being typed waits until the coach has paused; then the same version is published with it. Nothing is cleared in between.
import type { CallOff, Host } from './host.ts';

export interface Placed {
  readonly code: string;
  readonly line: number;
}

export interface Settling<Item> {
  /** A new version with all its items; `typed` is the line of the last edit, where there was one. */
  readonly next: (uri: string, version: number, items: readonly Item[], typed: number | undefined) => void;
  readonly close: (uri: string) => void;
}

interface State<Item> {
  readonly shown: readonly Item[];
  readonly waiting?: CallOff;
}

export function startSettling<Item>(
  host: Pick<Host, 'later'>,
  milliseconds: () => number,
  placed: (item: Item) => Placed,
  publish: (uri: string, version: number, items: readonly Item[]) => void,
): Settling<Item> {
  const states = new Map<string, State<Item>>();
  return {
    next(uri, version, items, typed) {
      const before = states.get(uri);
      before?.waiting?.();
      const wait = milliseconds();
      // What was said of this line already stays said: it would flicker.
      const known = new Set(before?.shown.map(placed).filter(({ line }) => line === typed).map(({ code }) => code));
      const ready = typed === undefined || wait === 0 ? items : items.filter((item) => placed(item).line !== typed || known.has(placed(item).code));
      publish(uri, version, ready);
      if (ready.length === items.length) return void states.set(uri, { shown: items });
      const waiting = host.later(wait, () => {
        states.set(uri, { shown: items });
        publish(uri, version, items);
      });
      states.set(uri, { shown: ready, waiting });
    },
    close(uri) {
      states.get(uri)?.waiting?.();
      states.delete(uri);
    },
  };
}
