import { describe, expect, it } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { childrenOf, spanOf, type TreeNode } from '../../language/grammar/tree.ts';
import { drawSentence } from './sentences.ts';
import { notationLines } from './notation-lines.ts';

/** Every leaf of a tree with the words of the line that its columns point at. */
function leaves(line: string): string[] {
  const found: { readonly at: number; readonly says: string }[] = [];
  const visit = (node: TreeNode): void => {
    for (const property of Object.keys(node.spans))
      for (let index = 0; index * 2 < node.spans[property]!.length; index++) {
        const { at, to } = spanOf(node, property, index);
        found.push({ at, says: `${node.$type}.${property} ${line.slice(at, to)}` });
      }
    childrenOf(node).forEach(visit);
  };
  const { tree } = parseLine(line);
  if (tree) visit(tree);
  return found.sort((a, b) => a.at - b.at).map(({ says }) => says);
}

function nodes(tree: TreeNode): TreeNode[] {
  return [tree, ...childrenOf(tree).flatMap(nodes)];
}

describe('columns point at the words they claim', () => {
  it.each([
    ['  4  Back-Screens for 2, then rolls to the Left wing', ['Player.number 4', 'Screen.verb Back-Screens', 'Player.number 2', 'Link.how ,', 'Link.then then', 'Move.verb rolls', 'To.how to', 'Place.side Left', 'Place.name wing']],
    ['once X4 is set, 3 cuts 2 seconds later', ['Wait.how once', 'Player.number X4', 'PlayerEvent.verb is set', 'Player.number 3', 'Move.verb cuts', 'Seconds.text 2 seconds']],
    ['call with 22 to 26  on  the clock', ['ClockTime.count 22', 'ClockTime.count 26']],
    ['look 3 or 4 "Über": lay-up or three # "no"', ['Player.number 3', 'Player.number 4', 'Look.label "Über"', 'ShotKinds.kinds lay-up', 'ShotKinds.kinds three']],
    ['step "Ü 🏀" after "A" when X2 denies', ['StepHead.name "Ü 🏀"', 'After.step "A"', 'Player.number X2', 'Defend.verb denies']],
    ['rebound 2, 4 crash, 1 gets back', ['Player.number 2', 'Player.number 4', 'ReboundGroup.verb crash', 'Player.number 1', 'ReboundGroup.verb gets back']],
    ['3 cuts to backcourt left', ['Player.number 3', 'Move.verb cuts', 'To.how to', 'Place.name backcourt', 'Place.side left']],
  ])('%s', (line, expected) => {
    expect(leaves(line)).toEqual(expected);
  });

  it('a value that is not written has the columns of its node', () => {
    const { tree } = parseLine('3 cuts to wing');
    if (tree?.$type !== 'Statement') throw new Error('no action');
    expect(spanOf(tree.first.action, 'side')).toEqual({ at: 2, to: 14 });
  });

  it('every node lies in its parent and in the line, and holds its own leaves', () => {
    const lines = [...notationLines.map(([line]) => line), ...Array.from({ length: 500 }, (_, seed) => drawSentence(seed))];
    for (const line of lines) {
      const { tree } = parseLine(line);
      if (!tree) continue;
      for (const node of nodes(tree)) {
        expect(node.at).toBeGreaterThanOrEqual(0);
        expect(node.to).toBeLessThanOrEqual(line.length);
        for (const child of childrenOf(node)) expect(child.at >= node.at && child.to <= node.to, `${line}: ${child.$type} in ${node.$type}`).toBe(true);
        for (const columns of Object.values(node.spans)) for (const column of columns) expect(column >= node.at && column <= node.to, `${line}: ${node.$type}`).toBe(true);
      }
    }
  });
});
