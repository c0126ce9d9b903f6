// Whom `him` and `her` mean where it cannot be the man who acts: `1 hits 4 and cuts off her`.
import type { StatementTree, TreeNode } from '../grammar/tree.ts';
import { childrenOf } from '../grammar/tree.ts';
import type { Action, BodyId } from './play.ts';

/**
 * The other man of the offence that a line names last before the pronoun; nobody where `he` or `she` stands before it, who may be meant. Who is
 * only come off is seldom meant: `1 drives off 5 and kicks to her`. Where the line names none it is the one told of last above it: `5 flashes`, `1 hits him`.
 */
export function anotherBefore(tree: StatementTree, self: BodyId, pronoun: number, above: readonly Action[]): BodyId | undefined {
  let last: { readonly who: BodyId; readonly at: number } | undefined;
  let mayBeAnother = true;
  const walk = (node: TreeNode): void => {
    if (node.$type === 'Off' || node.at >= pronoun) return;
    if (node.$type === 'Pronoun') mayBeAnother = false;
    if (node.$type === 'Player') {
      const { number, defence, at } = node as TreeNode & { readonly number?: number; readonly defence: boolean };
      if (number !== undefined && !defence && `${number}` !== self && at >= (last?.at ?? 0)) last = { who: `${number}` as BodyId, at };
    }
    // Nor is who somebody else comes off: `until 1 comes off 4, then passes to her`.
    const by = node.$type === 'PlayerEvent' && 'by' in node ? node.by : undefined;
    for (const child of childrenOf(node)) if (child !== by) walk(child);
  };
  walk(tree);
  return mayBeAnother ? (last?.who ?? toldLast(above, self)) : undefined;
}

/** Nobody where several were told of together. */
function toldLast(above: readonly Action[], self: BodyId): BodyId | undefined {
  const last = above.findLast(({ who }) => who !== self && !who.startsWith('X'));
  return last === undefined || above.some(({ who, line, link }) => line === last.line && link === last.link && who !== last.who) ? undefined : last.who;
}
