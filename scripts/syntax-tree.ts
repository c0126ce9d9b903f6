// The syntax tree of a TypeScript source, for what reads our own code.
import { parseAst } from 'vitest/node';

export interface Node {
  readonly type: string;
  readonly [part: string]: unknown;
}

export const treeOf = (text: string): Node => parseAst(text, { lang: 'ts' }) as unknown as Node;

export const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** A node and all below it, in the order of the text. */
export function* everyNode(node: Node): Generator<Node> {
  yield node;
  for (const part of Object.values(node)) for (const child of Array.isArray(part) ? part : [part]) if (isNode(child)) yield* everyNode(child);
}
