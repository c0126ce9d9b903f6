import type { LineToken } from '../line-token.ts';
import { finished } from './plain.ts';
import type { SpanNode } from './span-builder.ts';
import type { LineTree, TreeNode } from '../tree.ts';

type Node = { [property: string]: unknown };

/** How a word becomes the value of its leaf. */
type Turned = 'word' | 'number' | 'unquoted' | 'flag';

type Value =
  | { readonly kind: 'leaf'; readonly token: number; readonly turned: Turned }
  | { readonly kind: 'leaves'; readonly leaves: readonly { readonly token: number; readonly turned: Turned }[] }
  | { readonly kind: 'node'; readonly node: Part }
  | { readonly kind: 'nodes'; readonly nodes: readonly Part[] }
  /** What the grammar fills in by itself: an absent flag, an empty list. */
  | { readonly kind: 'same'; readonly value: unknown };

/** The number of a shape, and the token its first word is. */
type Part = readonly [shape: number, token: number];

/** A tree with the numbers of its tokens in the place of words and columns. Tokens count from its first, so that a player is one shape wherever he stands. */
interface Shape {
  readonly type: string;
  /** How many tokens; none where the grammar makes the node without a word. */
  readonly length: number;
  readonly values: readonly (readonly [property: string, value: Value])[];
  readonly spans: readonly (readonly [property: string, tokens: readonly number[]])[];
}

export interface LineShapes {
  /** The tree of a line whose words are of the same kinds as those of a line kept before. */
  readonly treeOf: (tokens: readonly LineToken[]) => LineTree | undefined;
  /** Keeps the shape of what Langium's parser made of the tokens. */
  readonly keep: (tokens: readonly LineToken[], parsed: Node) => void;
  /** All that are kept, as plain data that another start can begin with. */
  readonly written: () => WrittenShapes;
}

/** Each shape once, and which of them a line of these kinds of words has. */
export interface WrittenShapes {
  readonly shapes: readonly Shape[];
  readonly lines: readonly (readonly [kinds: string, shape: number])[];
}

/** More different shapes than a season's plays have; then it begins anew. */
const MOST_SHAPES = 4000;

/**
 * The parser looks at the kinds of words only: `3 cuts to left wing` and `5 rolls to right elbow` have one tree with other leaves. Its
 * decisions cost some twenty times what filling in the leaves does, so each shape is parsed once. The law in laws.test.ts: filled in or
 * parsed, the tree is the same.
 */
export function lineShapes(kinds: ReadonlyMap<string, string>, usual?: WrittenShapes): LineShapes {
  const lines = new Map(usual?.lines);
  const shapes = [...(usual?.shapes ?? [])];
  let numbers: Map<string, number> | undefined;
  const numberOf = (shape: Shape): number => {
    numbers ??= new Map(shapes.map((one, number) => [JSON.stringify(one), number]));
    const written = JSON.stringify(shape);
    const known = numbers.get(written);
    if (known !== undefined) return known;
    numbers.set(written, shapes.length);
    return shapes.push(shape) - 1;
  };
  const keyOf = (tokens: readonly LineToken[]): string => {
    let key = '';
    for (const { tokenType } of tokens) key += kinds.get(tokenType.name) ?? `\u0000${tokenType.name}\u0000`;
    return key;
  };
  return {
    treeOf(tokens) {
      const shape = lines.get(keyOf(tokens));
      return shape === undefined ? undefined : (filled([shape, 0], { tokens, shapes }) as unknown as LineTree);
    },
    keep(tokens, parsed) {
      if (lines.size >= MOST_SHAPES) {
        lines.clear();
        shapes.length = 0;
        numbers = undefined;
      }
      const part = shapeOf(parsed, 0, { numberOf, tokens, startingAt: new Map(tokens.map((token, index) => [token.startOffset, index])), endingAt: new Map(tokens.map((token, index) => [token.endOffset + 1, index])) });
      // A whole line begins with its first token.
      if (part?.[1] === 0) lines.set(keyOf(tokens), part[0]);
    },
    written: () => ({ shapes, lines: [...lines] }),
  };
}

interface Words {
  readonly numberOf: (shape: Shape) => number;
  readonly tokens: readonly LineToken[];
  /** The token that starts, and that ends, at a column. */
  readonly startingAt: ReadonlyMap<number, number>;
  readonly endingAt: ReadonlyMap<number, number>;
}

/** `from`: the token its tokens are counted from where it is a part of another. Nothing where a value is not one of the words as it stands. */
function shapeOf(node: Node, from: number, words: Words): Part | undefined {
  const { at, to, spans } = node['$cstNode'] as SpanNode;
  const { startingAt, endingAt } = words;
  const first = at < 0 ? from : startingAt.get(at);
  const last = at < 0 ? from - 1 : endingAt.get(to);
  if (first === undefined || last === undefined) return undefined;
  const values: [string, Value][] = [];
  for (const property in node) {
    if (property.startsWith('$')) continue;
    const value = valueOf(node[property], spans[property] ?? [], first, words);
    if (value === undefined) return undefined;
    values.push([property, value]);
  }
  const columns: [string, number[]][] = [];
  for (const property in spans) {
    const numbers = spans[property]!.map((column, index) => (index % 2 === 0 ? startingAt : endingAt).get(column));
    if (numbers.includes(undefined)) return undefined;
    columns.push([property, (numbers as number[]).map((number) => number - first)]);
  }
  return [words.numberOf({ type: node['$type'] as string, length: last + 1 - first, values, spans: columns }), first - from];
}

function valueOf(value: unknown, span: readonly number[], first: number, words: Words): Value | undefined {
  const { tokens, startingAt } = words;
  const leaf = (each: unknown, index: number): { token: number; turned: Turned } | undefined => {
    const token = startingAt.get(span[index * 2]!);
    const turned = token === undefined ? undefined : turnedFrom(tokens[token]!.image, each);
    return token === undefined || turned === undefined ? undefined : { token: token - first, turned };
  };
  if (Array.isArray(value)) {
    if (value.length === 0) return { kind: 'same', value: [] };
    if (isNode(value[0])) {
      const nodes = value.map((each: Node) => shapeOf(each, first, words));
      return nodes.includes(undefined) ? undefined : { kind: 'nodes', nodes: nodes as Part[] };
    }
    const leaves = span.length === value.length * 2 ? value.map(leaf) : [undefined];
    return leaves.includes(undefined) ? undefined : { kind: 'leaves', leaves: leaves as { token: number; turned: Turned }[] };
  }
  if (isNode(value)) {
    const node = shapeOf(value, first, words);
    return node && { kind: 'node', node };
  }
  if (span.length === 0) return value === false || value === undefined ? { kind: 'same', value } : undefined;
  const one = leaf(value, span.length / 2 - 1);
  return one && { kind: 'leaf', ...one };
}

function turnedFrom(image: string, value: unknown): Turned | undefined {
  if (value === true) return 'flag';
  if (typeof value === 'number') return Number(image) === value ? 'number' : undefined;
  if (value === image) return 'word';
  return value === image.slice(1, -1) ? 'unquoted' : undefined;
}

interface Filling {
  readonly tokens: readonly LineToken[];
  readonly shapes: readonly Shape[];
}

function filled([number, first]: Part, filling: Filling): TreeNode {
  const { tokens, shapes } = filling;
  const { type, length, values, spans: written } = shapes[number]!;
  const out: Node = { $type: type, at: length === 0 ? 0 : tokens[first]!.startOffset, to: length === 0 ? 0 : tokens[first + length - 1]!.endOffset + 1 };
  for (const [property, value] of values) out[property] = filledValue(value, first, filling);
  const spans: { [property: string]: number[] } = {};
  for (const [property, numbers] of written) spans[property] = numbers.map((token, index) => (index % 2 === 0 ? tokens[first + token]!.startOffset : tokens[first + token]!.endOffset + 1));
  return finished(out, spans);
}

function filledValue(value: Value, first: number, filling: Filling): unknown {
  const { tokens } = filling;
  switch (value.kind) {
    case 'leaf':
      return turn(tokens[first + value.token]!.image, value.turned);
    case 'leaves':
      return value.leaves.map(({ token, turned }) => turn(tokens[first + token]!.image, turned));
    case 'node':
      return filled([value.node[0], first + value.node[1]], filling);
    case 'nodes':
      return value.nodes.map(([shape, token]) => filled([shape, first + token], filling));
    default:
      return Array.isArray(value.value) ? [] : value.value;
  }
}

function turn(image: string, turned: Turned): unknown {
  if (turned === 'word') return image;
  if (turned === 'number') return Number(image);
  return turned === 'flag' ? true : image.slice(1, -1);
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && '$type' in value;
}
