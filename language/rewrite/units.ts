// Feet to metres and back.
import { message } from '../message/message.ts';
import { metresPerFoot } from '../court/sources.ts';
import { parseLine } from '../grammar/parse-line.ts';
import { childrenOf, type LengthNode, type NodeOf, type TreeNode } from '../grammar/tree.ts';
import { replace, treeAt, type Here, type Offer } from './here.ts';

interface Measure {
  readonly at: number;
  readonly to: number;
  readonly written: string;
  readonly text: string;
  readonly unit: 'm' | 'ft';
}

/** The lengths of the line in the other unit; the one under the cursor alone if there are several. */
export function otherUnit(here: Here): readonly Offer[] {
  const tree = treeAt(here, here.line);
  const line = here.block.lines[here.line]?.parsed.text ?? '';
  const all = tree === undefined ? [] : measuresIn(tree, line);
  const pointed = all.filter(({ at, to }) => at <= here.to && here.at <= to);
  return (pointed.length > 0 ? pointed : all).map((measure, nth): Offer => ({
    id: `other-unit-${nth}`,
    title: message('Write {text} instead of {written}', { text: measure.text, written: measure.written }),
    kind: 'rewrite',
    write() {
      const after = parseLine(line.slice(0, measure.at) + measure.text + line.slice(measure.to));
      if (after.fault !== undefined) return { refused: message('I cannot write it in the other unit here.') };
      return { edits: [replace(here, here.line, measure.at, measure.to, measure.text)] };
    },
  }));
}

function measuresIn(node: TreeNode, line: string): readonly Measure[] {
  const written = line.slice(node.at, node.to);
  if (node.$type === 'Length') {
    const { unit, metres } = node as LengthNode;
    return [{ at: node.at, to: node.to, written, ...(unit === 'ft' || unit === 'in' ? { text: `${inMetres(metres)} m`, unit: 'm' as const } : { text: `${inFeet(metres)} ft`, unit: 'ft' as const }) }];
  }
  if (node.$type === 'Coordinates') {
    const { x, y, unit } = node as NodeOf<'Coordinates'>;
    if (x === undefined || y === undefined) return [];
    const [text, to] = unit === 'ft' ? [`(${inMetres(x * metresPerFoot)}, ${inMetres(y * metresPerFoot)}) m`, 'm' as const] : [`(${inFeet(x)}, ${inFeet(y)}) ft`, 'ft' as const];
    return [{ at: node.at, to: node.to, written, text, unit: to }];
  }
  return childrenOf(node).flatMap((child) => measuresIn(child, line));
}

/** To the centimetre; to the tenth of a foot (three centimetres): nobody stands more exactly. */
const inMetres = (metres: number): number => Math.round(metres * 100) / 100;
const inFeet = (metres: number): number => Math.round((metres / metresPerFoot) * 10) / 10;
