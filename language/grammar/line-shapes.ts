import type { LineToken } from './line-token.ts';
import { finished } from './plain.ts';
import type { SpanNode } from './span-builder.ts';
import type { LineTree, TreeNode } from './tree.ts';

type Node = { [property: string]: unknown };

/** How a word becomes the value of its leaf. */
type Turned = 'word' | 'number' | 'unquoted' | 'flag';

type Value =
  | { readonly kind: 'leaf'; readonly token: number; readonly turned: Turned }
  | { readonly kind: 'leaves'; readonly leaves: readonly { readonly token: number; readonly turned: Turned }[] }
  | { readonly kind: 'node'; readonly node: Shape }
  | { readonly kind: 'nodes'; readonly nodes: readonly Shape[] }
  /** What the grammar fills in by itself: an absent flag, an empty list. */
  | { readonly kind: 'same'; readonly value: unknown };

/** A tree with the numbers of its tokens in the place of words and columns. */
interface Shape {
  readonly type: string;
  readonly first: number;
  readonly last: number;
  readonly values: readonly (readonly [property: string, value: Value])[];
  readonly spans: readonly (readonly [property: string, tokens: readonly number[]])[];
}

export interface LineShapes {
  /** The tree of a line whose words are of the same kinds as those of a line kept before. */
  readonly treeOf: (tokens: readonly LineToken[]) => LineTree | undefined;
  /** Keeps the shape of what Langium's parser made of the tokens. */
  readonly keep: (tokens: readonly LineToken[], parsed: Node) => void;
  /** All that are kept, as text that another start can begin with. */
  readonly written: () => WrittenShapes;
}

/** Each shape by the kinds of its line's words, as JSON that is read when such a line comes. */
export type WrittenShapes = readonly (readonly [kinds: string, shape: string])[];

/** More different shapes than a season's plays have; then it begins anew. */
const MOST_SHAPES = 4000;

/**
 * The parser looks at the kinds of words only: `3 cuts to left wing` and `5 rolls to right elbow` have one tree with other leaves. Its
 * decisions cost some twenty times what filling in the leaves does, so each shape is parsed once. The law in laws.test.ts: filled in or
 * parsed, the tree is the same.
 */
export function lineShapes(kinds: ReadonlyMap<string, string>, usual: WrittenShapes = []): LineShapes {
  const shapes = new Map<string, Shape | string>(usual);
  const keyOf = (tokens: readonly LineToken[]): string => {
    let key = '';
    for (const { tokenType } of tokens) key += kinds.get(tokenType.name) ?? `\u0000${tokenType.name}\u0000`;
    return key;
  };
  return {
    treeOf(tokens) {
      const key = keyOf(tokens);
      let shape = shapes.get(key);
      if (typeof shape === 'string') shapes.set(key, (shape = JSON.parse(shape) as Shape));
      return shape && (filled(shape, tokens) as unknown as LineTree);
    },
    keep(tokens, parsed) {
      const shape = shapeOf(parsed, { tokens, startingAt: new Map(tokens.map((token, index) => [token.startOffset, index])), endingAt: new Map(tokens.map((token, index) => [token.endOffset + 1, index])) });
      if (shape === undefined) return;
      if (shapes.size >= MOST_SHAPES) shapes.clear();
      shapes.set(keyOf(tokens), shape);
    },
    written: () => [...shapes].map(([key, shape]) => [key, typeof shape === 'string' ? shape : JSON.stringify(shape)]),
  };
}

interface Words {
  readonly tokens: readonly LineToken[];
  /** The token that starts, and that ends, at a column. */
  readonly startingAt: ReadonlyMap<number, number>;
  readonly endingAt: ReadonlyMap<number, number>;
}

/** Nothing where a value is not one of the words as it stands. */
function shapeOf(node: Node, words: Words): Shape | undefined {
  const { at, to, spans } = node['$cstNode'] as SpanNode;
  const { startingAt, endingAt } = words;
  const values: [string, Value][] = [];
  for (const property in node) {
    if (property.startsWith('$')) continue;
    const value = valueOf(node[property], spans[property] ?? [], words);
    if (value === undefined) return undefined;
    values.push([property, value]);
  }
  const columns: [string, number[]][] = [];
  for (const property in spans) {
    const numbers = spans[property]!.map((column, index) => (index % 2 === 0 ? startingAt : endingAt).get(column));
    if (numbers.includes(undefined)) return undefined;
    columns.push([property, numbers as number[]]);
  }
  const first = at < 0 ? -1 : startingAt.get(at);
  const last = at < 0 ? -1 : endingAt.get(to);
  return first === undefined || last === undefined ? undefined : { type: node['$type'] as string, first, last, values, spans: columns };
}

function valueOf(value: unknown, span: readonly number[], words: Words): Value | undefined {
  const { tokens, startingAt } = words;
  const leaf = (each: unknown, index: number): { token: number; turned: Turned } | undefined => {
    const token = startingAt.get(span[index * 2]!);
    const turned = token === undefined ? undefined : turnedFrom(tokens[token]!.image, each);
    return token === undefined || turned === undefined ? undefined : { token, turned };
  };
  if (Array.isArray(value)) {
    if (value.length === 0) return { kind: 'same', value: [] };
    if (isNode(value[0])) {
      const nodes = value.map((each: Node) => shapeOf(each, words));
      return nodes.includes(undefined) ? undefined : { kind: 'nodes', nodes: nodes as Shape[] };
    }
    const leaves = span.length === value.length * 2 ? value.map(leaf) : [undefined];
    return leaves.includes(undefined) ? undefined : { kind: 'leaves', leaves: leaves as { token: number; turned: Turned }[] };
  }
  if (isNode(value)) {
    const node = shapeOf(value, words);
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

function filled(shape: Shape, tokens: readonly LineToken[]): TreeNode {
  const { first, last } = shape;
  const out: Node = { $type: shape.type, at: first < 0 ? 0 : tokens[first]!.startOffset, to: last < 0 ? 0 : tokens[last]!.endOffset + 1 };
  for (const [property, value] of shape.values) out[property] = filledValue(value, tokens);
  const spans: { [property: string]: number[] } = {};
  for (const [property, numbers] of shape.spans) spans[property] = numbers.map((number, index) => (index % 2 === 0 ? tokens[number]!.startOffset : tokens[number]!.endOffset + 1));
  return finished(out, spans);
}

function filledValue(value: Value, tokens: readonly LineToken[]): unknown {
  switch (value.kind) {
    case 'leaf':
      return turn(tokens[value.token]!.image, value.turned);
    case 'leaves':
      return value.leaves.map(({ token, turned }) => turn(tokens[token]!.image, turned));
    case 'node':
      return filled(value.node, tokens);
    case 'nodes':
      return value.nodes.map((node) => filled(node, tokens));
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
