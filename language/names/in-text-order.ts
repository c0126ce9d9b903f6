import type { Block } from '../book/book.ts';
import { keptByBlock } from '../book/kept-by-block.ts';
import type { TextPlace } from '../book/places.ts';
import type { TreeNode } from '../grammar/tree.ts';

/** What a block speaks of, line by line in text order, of lines that cannot be read up to their fault; gone through once. `collect` adds what a line's tree holds. */
export function inTextOrder<Told extends { readonly place: TextPlace }>(collect: (tree: TreeNode, line: number, found: Told[]) => void): (block: Block) => readonly Told[] {
  return keptByBlock((block) =>
    block.lines.flatMap(({ parsed }, line) => {
      const found: Told[] = [];
      if (parsed.tree !== undefined) collect(parsed.tree, line, found);
      return found.toSorted((a, b) => a.place.at - b.place.at);
    }),
  );
}
