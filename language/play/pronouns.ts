// Whom `him` and `her` mean where it cannot be the man who acts: `1 hits 4 and cuts off her`.
import type { StatementTree, TreeNode } from '../grammar/tree.ts';
import { childrenOf } from '../grammar/tree.ts';
import type { BodyId } from './play.ts';

/**
 * The other man of the offence that a line names last before the pronoun; nobody where `he` or `she` stands before it, who may be meant. Who is
 * only come off is seldom meant: `1 drives off 5 and kicks to her`.
 */
export function anotherBefore(tree: StatementTree, self: BodyId, pronoun: number): BodyId | undefined {
  let last: { readonly who: BodyId; readonly at: number } | undefined;
  let mayBeAnother = true;
  const walk = (node: TreeNode): void => {
    if (node.$type === 'Off' || node.at >= pronoun) return;
    if (node.$type === 'Pronoun') mayBeAnother = false;
    if (node.$type === 'Player') {
      const { number, defence, at } = node as TreeNode & { readonly number?: number; readonly defence: boolean };
      if (number !== undefined && !defence && `${number}` !== self && at >= (last?.at ?? 0)) last = { who: `${number}` as BodyId, at };
    }
    for (const child of childrenOf(node)) walk(child);
  };
  walk(tree);
  return mayBeAnother ? last?.who : undefined;
}
