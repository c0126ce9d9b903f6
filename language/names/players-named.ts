// Where a block speaks of a man by his number.
import type { Block } from '../book/book.ts';
import type { TextPlace } from '../book/places.ts';
import type { BodyId } from '../court/bodies.ts';
import { childrenOf, spanOf, type PlayerNode, type TreeNode } from '../grammar/tree.ts';
import { inTextOrder } from './in-text-order.ts';

export interface PlayerInText {
  readonly body: BodyId;
  readonly place: TextPlace;
  /** He is the one who acts, or stands there; else something is done to, for or off him. */
  readonly acts: boolean;
}

/** Every number of a man in the block, in text order; lines that cannot be read up to their fault. */
export const playersNamed = inTextOrder<PlayerInText>((tree, line, found) => collect(tree, line, false, found));

export function playerAt(block: Block, line: number, column: number): PlayerInText | undefined {
  return playersNamed(block).find(({ place }) => place.line === line && place.at <= column && column <= place.to);
}

function collect(node: TreeNode, line: number, acts: boolean, found: PlayerInText[]): void {
  if (node.$type === 'Player') {
    const { number, defence } = node as PlayerNode;
    if (number !== undefined) found.push({ body: `${defence ? 'X' : ''}${number}` as BodyId, place: { line, ...spanOf(node, 'number') }, acts });
    return;
  }
  const subject = (node as { readonly subject?: unknown }).subject;
  const lookers = node.$type === 'Look' ? (node as TreeNode & { readonly players: readonly unknown[] }).players : [];
  for (const child of childrenOf(node)) collect(child, line, child === subject || lookers.includes(child) || (acts && node.$type === 'Players'), found);
}
