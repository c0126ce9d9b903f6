// The line being typed is left alone: what is new on it waits until the coach has paused, all else is told at once. What has been
// told of it already stays told, and nothing is cleared in between.
import type { CallOff, Host } from './host.ts';

export interface Placed {
  readonly code: string;
  readonly line: number;
}

export interface Settling<Item> {
  /** The text has changed; `line` is that of the last edit, absent where it is nobody's typing. */
  readonly typed: (uri: string, line: number | undefined) => void;
  /** Of everything that could be told now, what is. Where some of it waits, `wake` is called once it may be told. */
  readonly ready: (uri: string, items: readonly Item[]) => readonly Item[];
  readonly close: (uri: string) => void;
}

interface State<Item> {
  readonly shown: readonly Item[];
  readonly line?: number | undefined;
  readonly waiting?: CallOff;
}

export function startSettling<Item>(host: Pick<Host, 'later'>, milliseconds: () => number, placed: (item: Item) => Placed, wake: (uri: string) => void): Settling<Item> {
  const states = new Map<string, State<Item>>();
  return {
    typed(uri, line) {
      const { shown = [], waiting } = states.get(uri) ?? {};
      waiting?.();
      states.set(uri, { shown, line });
    },
    ready(uri, items) {
      const { shown, line, waiting } = states.get(uri) ?? { shown: [] };
      const wait = milliseconds();
      if (line === undefined || wait === 0) {
        states.set(uri, { shown: items });
        return items;
      }
      const known = new Set(shown.map(placed).filter((one) => one.line === line).map(({ code }) => code));
      const ready = items.filter((item) => placed(item).line !== line || known.has(placed(item).code));
      const settle = () => {
        states.set(uri, { shown: ready });
        wake(uri);
      };
      const next = ready.length === items.length ? undefined : (waiting ?? host.later(wait, settle));
      if (next === undefined) waiting?.();
      states.set(uri, { shown: ready, line, ...(next !== undefined && { waiting: next }) });
      return ready;
    },
    close(uri) {
      states.get(uri)?.waiting?.();
      states.delete(uri);
    },
  };
}
