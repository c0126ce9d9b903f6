// Rows that stay in place through edits: what a keystroke has not changed is not made anew, and costs neither layout nor paint.

export interface Row<Data> {
  readonly root: Element;
  /** Sets what changes without the row being made anew. */
  readonly fill?: (data: Data) => void;
}

/**
 * The children of `parent`, one a piece of data and in its order. `madeOf` says, as plain data, what of it a row is made of: as long as
 * that is the same at the same place the row is kept, and filled; so `make` may use nothing else of it.
 */
export function createRows<Data, Made extends Row<Data>>(parent: Element, madeOf: (data: Data) => unknown, make: (data: Data, index: number) => Made): (all: readonly Data[]) => readonly Made[] {
  let kept: readonly { readonly key: string; readonly row: Made }[] = [];
  return (all) => {
    const next = all.map((data, index) => {
      const key = JSON.stringify(madeOf(data));
      const known = kept[index];
      const row = known?.key === key ? known.row : make(data, index);
      if (known === undefined) parent.append(row.root);
      else if (row !== known.row) known.row.root.replaceWith(row.root);
      row.fill?.(data);
      return { key, row };
    });
    for (const { row } of kept.slice(all.length)) row.root.remove();
    kept = next;
    return next.map(({ row }) => row);
  };
}
