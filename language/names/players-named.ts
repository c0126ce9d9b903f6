// Where a block speaks of a man by his number.
import type { Block } from '../book/book.ts';
import type { TextPlace } from '../book/places.ts';
import type { BodyId } from '../court/bodies.ts';
import { childrenOf, spanOf, type PlayerNode, type TreeNode } from '../grammar/tree.ts';

export interface PlayerInText {
  readonly body: BodyId;
  readonly place: TextPlace;
  /** He is the one who acts, or stands there; else something is done to, for or off him. */
  readonly acts: boolean;
}

const kept = new WeakMap<Block, readonly PlayerInText[]>();

/** Every number of a man in the block, in text order; lines that cannot be read up to their fault. */
export function playersNamed(block: Block): readonly PlayerInText[] {
  const known = kept.get(block);
  if (known !== undefined) return known;
  const found: PlayerInText[] = [];
  for (const [line, { parsed }] of block.lines.entries()) {
    if (parsed.tree === undefined) continue;
    const ofLine: PlayerInText[] = [];
    collect(parsed.tree, line, false, ofLine);
    found.push(...ofLine.toSorted((a, b) => a.place.at - b.place.at));
  }
  kept.set(block, found);
  return found;
}

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
