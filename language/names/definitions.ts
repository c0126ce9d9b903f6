import type { Block } from '../book/book.ts';
import type { TextPlace } from '../book/places.ts';
import type { ParsedLine } from '../grammar/parse-line.ts';
import type { Columns, NodeOf, TreeNode } from '../grammar/tree.ts';
import { childrenOf, spanOf } from '../grammar/tree.ts';
import { nameKey } from './name-key.ts';

export type NameKind = 'play' | 'step' | 'look' | 'spot' | 'alignment' | 'roster' | 'roster-entry' | 'book' | 'section' | 'file';

/** A name in the text of a block: where it is given or where it is used. `place` holds the name without its quotes. */
export interface NameInText {
  readonly kind: NameKind;
  readonly name: string;
  readonly key: string;
  readonly place: TextPlace;
}

/** The names a block gives, in text order: its own, its steps, looks' labels, spots, roster entries, sections. */
export function definitionsOf(block: Block): readonly NameInText[] {
  return namesOf(block).definitions;
}

/** The names a block refers to: steps, plays, alignments, spots and files, known or not. */
export function usesOf(block: Block): readonly NameInText[] {
  return namesOf(block).uses;
}

interface BlockNames {
  readonly definitions: readonly NameInText[];
  readonly uses: readonly NameInText[];
}

const kept = new WeakMap<Block, BlockNames>();

function namesOf(block: Block): BlockNames {
  const known = kept.get(block);
  if (known !== undefined) return known;
  const definitions: NameInText[] = [];
  const uses: NameInText[] = [];
  for (const [line, { parsed }] of block.lines.entries()) {
    for (const { defines, columns, ...name } of namesInLine(parsed)) (defines ? definitions : uses).push({ ...name, place: { line, ...columns } });
  }
  const names = { definitions, uses };
  kept.set(block, names);
  return names;
}

interface NameInLine extends Omit<NameInText, 'place'> {
  readonly defines: boolean;
  readonly columns: Columns;
}

const keptOfLines = new WeakMap<ParsedLine, readonly NameInLine[]>();

/** A line's tree is looked through once: an edit makes its block another, and leaves all other lines the same. */
function namesInLine(parsed: ParsedLine): readonly NameInLine[] {
  const known = keptOfLines.get(parsed);
  if (known !== undefined || parsed.tree === undefined) return known ?? [];
  const found: NameInLine[] = [];
  const collect = (defines: boolean) => (kind: NameKind, node: TreeNode, property: string, index = 0) => {
    const value = (node as unknown as Record<string, unknown>)[property];
    const name = Array.isArray(value) ? value[index] : value;
    if (typeof name === 'string') found.push({ defines, kind, name, key: nameKey(name), columns: withoutQuotes(parsed.text, spanOf(node, property, index)) });
  };
  collectLine(parsed.tree, collect(true), collect(false));
  keptOfLines.set(parsed, found);
  return found;
}

type Collect = (kind: NameKind, node: TreeNode, property: string, index?: number) => void;

function collectLine(tree: TreeNode, defines: Collect, uses: Collect): void {
  switch (tree.$type) {
    case 'PlayHead':
      defines('play', tree, 'name');
      uses('play', tree, 'mirrors');
      uses('play', tree, 'continues');
      // The step of the play it continues: the same kind of name, found there.
      uses('step', tree, 'after');
      break;
    case 'AlignmentHead':
      defines('alignment', tree, 'name');
      uses('alignment', tree, 'mirrors');
      break;
    case 'RosterHead':
      defines('roster', tree, 'name');
      break;
    case 'BookHead':
      defines('book', tree, 'name');
      break;
    case 'Section':
      defines('section', tree, 'name');
      useList(tree, 'plays', 'play', uses);
      break;
    case 'StepHead':
      defines('step', tree, 'name');
      uses('step', tree, 'mirrors');
      break;
    case 'Look':
      for (let look: NodeOf<'Look'> | undefined = tree as NodeOf<'Look'>; look !== undefined; look = look.also) defines('look', look, 'label');
      break;
    case 'Entry':
      defines('roster-entry', tree, 'name');
      break;
    case 'OwnSpot':
      defines('spot', tree, 'name');
      break;
    case 'Use':
      uses('file', tree, 'file');
      break;
  }
  collectBelow(tree, uses);
}

function collectBelow(tree: TreeNode, uses: Collect): void {
  for (const child of childrenOf(tree)) {
    if (child.$type === 'After' || child.$type === 'InsteadOf' || child.$type === 'AgainFrom') uses('step', child, 'step');
    if (child.$type === 'Repeats') useList(child, 'steps', 'step', uses);
    if (child.$type === 'AlignmentRef') uses('alignment', child, 'own');
    if (child.$type === 'Place') uses('spot', child, 'own');
    collectBelow(child, uses);
  }
}

function useList(node: TreeNode, property: string, kind: NameKind, uses: Collect): void {
  const list = (node as unknown as Record<string, unknown>)[property];
  if (Array.isArray(list)) list.forEach((_, index) => uses(kind, node, property, index));
}

function withoutQuotes(text: string, columns: Columns): Columns {
  const quoted = /^["“]/.test(text.slice(columns.at, columns.to));
  return quoted && columns.to - columns.at >= 2 ? { at: columns.at + 1, to: columns.to - 1 } : { at: columns.at, to: columns.to };
}
