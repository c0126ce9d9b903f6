// Whom `him` and `her` mean where it cannot be the man who acts: `1 hits 4 and cuts off her`.
import type { StatementTree, TreeNode } from '../grammar/tree.ts';
import { childrenOf } from '../grammar/tree.ts';
import type { BodyId } from './play.ts';

/** A man of the offence whom a line names, and where. */
export interface Named {
  readonly who: BodyId;
  readonly at: number;
}

/**
 * Those a line names, in text order; nobody from the first `he` or `she` on, behind which a pronoun may mean that man. Who is only come off
 * is seldom meant: `1 drives off 5 and kicks to her`.
 */
export function menNamedIn(tree: StatementTree): readonly Named[] {
  const named: Named[] = [];
  let until = Infinity;
  const walk = (node: TreeNode): void => {
    if (node.$type === 'Off') return;
    if (node.$type === 'Pronoun') until = Math.min(until, node.at);
    if (node.$type === 'Player') {
      const { number, defence, at } = node as TreeNode & { readonly number?: number; readonly defence: boolean };
      if (number !== undefined && !defence) named.push({ who: `${number}` as BodyId, at });
    }
    for (const child of childrenOf(node)) walk(child);
  };
  walk(tree);
  return named.filter(({ at }) => at < until).sort((a, b) => a.at - b.at);
}

/** The other man named last before the pronoun. */
export function anotherBefore(named: readonly Named[], self: BodyId, at: number): BodyId | undefined {
  return named.findLast((one) => one.at < at && one.who !== self)?.who;
}
