// What a selection grows to: the words of a value, a link of the line, the line, its step, its play, the file.
import type { Position, Range, SelectionRange } from 'vscode-languageserver-types';
import { blockAtLine } from '../../language/book/book.ts';
import { childrenOf, type TreeNode } from '../../language/grammar/tree.ts';
import type { OpenDocument } from './documents.ts';
import { holds, textOfLine } from './positions.ts';
import { symbols } from './symbols.ts';
import type { DocumentSymbol } from 'vscode-languageserver-types';

export function selections(document: OpenDocument, positions: readonly Position[]): SelectionRange[] {
  const outline = symbols(document);
  return positions.map((position) => {
    const ranges = [...aroundIn(outline, position), ...lineRanges(document, position)];
    return ranges.reduce<SelectionRange | undefined>((parent, range) => (parent !== undefined && isSame(parent.range, range) ? parent : { range, ...(parent && { parent }) }), undefined)!;
  });
}

/** From the file down to the step. */
function aroundIn(outline: readonly DocumentSymbol[], position: Position): readonly Range[] {
  const around = outline.find(({ range }) => holds(range, position));
  return around === undefined ? [] : [around.range, ...aroundIn(around.children?.filter(({ range }) => range.end.line > range.start.line) ?? [], position)];
}

/** The file, and from the line down to the words. */
function lineRanges({ file }: OpenDocument, { line, character }: Position): readonly Range[] {
  const { block, firstLine } = blockAtLine(file, line);
  const text = textOfLine(block, line - firstLine);
  const range = (at: number, to: number): Range => ({ start: { line, character: at }, end: { line, character: to } });
  const parsed = block.lines[line - firstLine]?.parsed;
  const at = Math.min(character, text.length);
  const words = [...text.matchAll(/[\p{L}\p{N}]+(?:[-'’][\p{L}\p{N}]+)*/gu)].find(({ index, 0: word }) => index <= at && at <= index + word.length);
  const trimmed = range(text.length - text.trimStart().length, Math.max(text.trimEnd().length, text.length - text.trimStart().length));
  const nodes = parsed?.tree === undefined ? [] : nodesAt(parsed.tree, at).map((node) => range(node.at, node.to));
  const inner = words === undefined ? [] : [range(words.index, words.index + words[0].length)];
  const all = [trimmed, ...nodes, ...inner].filter((one) => holds(one, { line, character: at }));
  const inside = all.filter((one, nth) => nth === 0 || isInside(one, all[nth - 1]!));
  return inside.length > 0 ? inside : [range(at, at)];
}

function nodesAt(node: TreeNode, column: number): readonly TreeNode[] {
  if (column < node.at || column > node.to) return [];
  const child = childrenOf(node).toSorted((a, b) => a.at - b.at).find((one) => one.at <= column && column < one.to) ?? childrenOf(node).find((one) => one.to === column);
  return [node, ...(child === undefined ? [] : nodesAt(child, column))];
}

const isSame = (a: Range, b: Range): boolean => JSON.stringify(a) === JSON.stringify(b);
const isInside = (inner: Range, outer: Range): boolean => inner.start.character >= outer.start.character && inner.end.character <= outer.end.character;
