// The line being typed is left alone: what is new on it waits until the coach has paused, all else is told at once. What has been told
// of it already stays told. A half-typed line leaves much of its play unsure; what was told of the play's other lines stays until the line
// can be read again or the coach goes elsewhere. So nothing goes with one letter and comes back with the next.
import type { CallOff, Host } from './host.ts';

export interface Placed {
  readonly code: string;
  readonly line: number;
}

export interface Settling<Item> {
  /** The text has changed; `line` is that of the last edit, absent where it is nobody's typing. */
  readonly typed: (uri: string, line: number | undefined, how?: Typing) => void;
  /** Of everything that could be told now, what is. Where some of it waits, `wake` is called once it may be told. */
  readonly ready: (uri: string, items: readonly Item[]) => readonly Item[];
  readonly close: (uri: string) => void;
}

export interface Typing {
  /** The first and last line of the play whose line is being typed, where that line cannot be read yet. */
  readonly play?: Lines | undefined;
  /** Lines have come or gone: what was told stands elsewhere now. */
  readonly moved: boolean;
}

export interface Lines {
  readonly from: number;
  readonly to: number;
}

interface State<Item> {
  readonly shown: readonly Item[];
  readonly line?: number | undefined;
  readonly unfinished?: (Lines & { readonly line: number }) | undefined;
  readonly moved?: boolean;
  readonly waiting?: CallOff;
}

export function startSettling<Item>(host: Pick<Host, 'later'>, milliseconds: () => number, placed: (item: Item) => Placed, wake: (uri: string) => void): Settling<Item> {
  const states = new Map<string, State<Item>>();
  /** Told of another line of the play that is half typed, and not told anew. */
  const isUnsure = (item: Item, { from, to, line }: NonNullable<State<Item>['unfinished']>, items: readonly Item[]): boolean => {
    const at = placed(item);
    return at.line !== line && from <= at.line && at.line <= to && !items.some((one) => placed(one).line === at.line && placed(one).code === at.code);
  };
  const together = (items: readonly Item[], stays: readonly Item[]): readonly Item[] => (stays.length === 0 ? items : [...items, ...stays].toSorted((a, b) => placed(a).line - placed(b).line));
  return {
    typed(uri, line, { play, moved } = { moved: true }) {
      const { shown = [], waiting, moved: movedBefore = false } = states.get(uri) ?? {};
      waiting?.();
      states.set(uri, { shown, line, moved: moved || movedBefore, unfinished: play && line !== undefined ? { ...play, line } : undefined });
    },
    ready(uri, items) {
      const { shown, line, unfinished, moved, waiting } = states.get(uri) ?? { shown: [] };
      const wait = milliseconds();
      if (wait === 0) {
        states.set(uri, { shown: items });
        return items;
      }
      const stays = unfinished === undefined || moved === true ? [] : shown.filter((item) => isUnsure(item, unfinished, items));
      if (line === undefined) {
        const all = together(items, stays);
        states.set(uri, { shown: all, unfinished });
        return all;
      }
      const known = new Set(shown.map(placed).filter((one) => one.line === line).map(({ code }) => code));
      const now = items.filter((item) => placed(item).line !== line || known.has(placed(item).code));
      const ready = together(now, stays);
      const settle = () => {
        states.set(uri, { shown: ready, unfinished });
        wake(uri);
      };
      const next = now.length === items.length ? undefined : (waiting ?? host.later(wait, settle));
      if (next === undefined) waiting?.();
      states.set(uri, { shown: ready, line, unfinished, ...(next !== undefined && { waiting: next }) });
      return ready;
    },
    close(uri) {
      states.get(uri)?.waiting?.();
      states.delete(uri);
    },
  };
}
