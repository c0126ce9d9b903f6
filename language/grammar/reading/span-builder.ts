import type { IToken } from 'chevrotain';
import type { GrammarAST } from 'langium';

/** What stands in for Langium's concrete syntax tree: only the columns of a node and of its leaf values. */
export class SpanNode {
  at = -1;
  to = -1;
  grammarSource: GrammarAST.AbstractElement | undefined;
  readonly property: string | undefined;
  readonly spans: { [property: string]: number[] } = {};
  astNode: unknown;
  constructor(feature: GrammarAST.AbstractElement | undefined) {
    this.grammarSource = feature;
    this.property = feature && propertyOf(feature);
  }
  get length(): number {
    return this.to - this.at;
  }
  get offset(): number {
    return this.at;
  }
  get end(): number {
    return this.to;
  }
  cover(at: number, to: number): void {
    if (this.at < 0) this.at = at;
    if (to > this.to) this.to = to;
  }
  note(property: string, at: number, to: number): void {
    (this.spans[property] ??= []).push(at, to);
  }
}

const properties = new WeakMap<object, { property: string | undefined }>();
function propertyOf(feature: GrammarAST.AbstractElement): string | undefined {
  const known = properties.get(feature);
  if (known) return known.property;
  type Element = { readonly $type: string; readonly feature?: string; readonly $container?: Element };
  let element = feature as unknown as Element | undefined;
  while (element && element.$type !== 'Assignment' && element.$type !== 'ParserRule') element = element.$container;
  const property = element?.$type === 'Assignment' ? element.feature : undefined;
  properties.set(feature, { property });
  return property;
}

/**
 * Langium's parser reports to this instead of its concrete-tree builder, which costs three times the memory and gives no columns
 * for a verb or a side. Same protocol as `CstNodeBuilder` (langium 4.4.0, pinned: the field `nodeBuilder` is not public).
 */
export class SpanBuilder {
  private stack: SpanNode[] = [];

  buildRootNode(): SpanNode {
    const root = new SpanNode(undefined);
    this.stack = [root];
    return root;
  }

  buildCompositeNode(feature: GrammarAST.AbstractElement): SpanNode {
    const node = new SpanNode(feature);
    this.stack.push(node);
    return node;
  }

  buildLeafNode(token: IToken, feature?: GrammarAST.AbstractElement): SpanNode {
    const leaf = new SpanNode(feature);
    const to = (token.endOffset ?? token.startOffset) + 1;
    leaf.cover(token.startOffset, to);
    const current = this.stack[this.stack.length - 1]!;
    current.cover(token.startOffset, to);
    if (leaf.property !== undefined) current.note(leaf.property, token.startOffset, to);
    return leaf;
  }

  construct(item: { $cstNode?: unknown; $type?: unknown }): void {
    const node = this.stack.pop()!;
    item.$cstNode = node;
    const parent = this.stack[this.stack.length - 1];
    if (!parent || node.at < 0) return;
    parent.cover(node.at, node.to);
    // A data-type rule (`verb=MoveVerb`) is a leaf of its parent; a rule called without an assignment becomes its caller.
    const isLeaf = typeof item.$type === 'symbol';
    if (isLeaf && node.property !== undefined) parent.note(node.property, node.at, node.to);
    if (node.property === undefined) for (const property in node.spans) for (const column of node.spans[property]!) (parent.spans[property] ??= []).push(column);
  }

  addHiddenNodes(): void {}
  appendChild(): void {}
  removeNode(): void {}
}
