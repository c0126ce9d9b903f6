// What a client has been told of each document, and under which id: the same findings keep theirs.
import type { Diagnostic } from 'vscode-languageserver-types';

export interface Told {
  /** The id these findings go by: the last one where nothing has changed since. */
  readonly idOf: (uri: string, items: readonly Diagnostic[]) => string;
  /** Whether the document would be told the same as last time; true where nothing was told yet. */
  readonly same: (uri: string, items: readonly Diagnostic[]) => boolean;
  readonly forget: (uri: string) => void;
}

export function keepTold(): Told {
  const told = new Map<string, { readonly id: string; readonly items: readonly Diagnostic[] }>();
  let count = 0;
  return {
    idOf(uri, items) {
      const before = told.get(uri);
      if (before !== undefined && equal(before.items, items)) return before.id;
      const id = String(++count);
      told.set(uri, { id, items });
      return id;
    },
    same(uri, items) {
      const before = told.get(uri);
      return before === undefined || equal(before.items, items);
    },
    forget: (uri) => void told.delete(uri),
  };
}

export function equal(a: readonly Diagnostic[], b: readonly Diagnostic[]): boolean {
  return a.length === b.length && a.every((one, at) => one === b[at] || JSON.stringify(one) === JSON.stringify(b[at]));
}
