// Where a block speaks of the floor: the spots and the alignments that every play knows without being told.
import type { Block } from '../book/book.ts';
import type { TextPlace } from '../book/places.ts';
import { childrenOf, type NodeOf, type TreeNode } from '../grammar/tree.ts';
import { inTextOrder } from './in-text-order.ts';

export interface GroundInText {
  /** The same for each way to write it: `hoop` is the rim, `The Left Wing` the left wing. */
  readonly key: string;
  readonly place: TextPlace;
}

/** In text order; a spot or an alignment of the coach's own has a name, and is no ground. */
export const groundNamed = inTextOrder(collect);

export function groundAt(block: Block, line: number, column: number): GroundInText | undefined {
  return groundNamed(block).find(({ place }) => place.line === line && place.at <= column && column <= place.to);
}

function collect(node: TreeNode, line: number, found: GroundInText[]): void {
  const key = keyOf(node);
  if (key !== undefined) found.push({ key, place: { line, at: node.at, to: node.to } });
  for (const child of childrenOf(node)) collect(child, line, found);
}

function keyOf(node: TreeNode): string | undefined {
  if (node.$type === 'AlignmentRef') {
    const { name } = node as NodeOf<'AlignmentRef'>;
    return name === undefined ? undefined : `alignment ${name}`;
  }
  if (node.$type !== 'Place') return undefined;
  const { own, side, half, name, extended } = node as NodeOf<'Place'>;
  if (own !== undefined || (name === undefined && half === undefined)) return undefined;
  return ['spot', side, half, name, extended && 'extended'].filter(Boolean).join(' ');
}
