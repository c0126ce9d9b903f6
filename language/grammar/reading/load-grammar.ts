import type { GrammarAST } from 'langium';
import { grammarJson } from '../generated/grammar.ts';

type Json = { [key: string]: unknown };

/** Where a `$ref` such as `#/rules@3/definition` points in the grammar. */
function lookUp(root: Json, ref: string): unknown {
  let found: unknown = root;
  for (const part of ref.slice(2).split('/')) {
    const [property, index] = part.split('@');
    found = (found as Json)[property!];
    if (index !== undefined) found = (found as unknown[])[Number(index)];
  }
  return found;
}

/** What the generated text leaves out. */
function fillIn(node: Json): void {
  if (node['$type'] === 'RuleCall') node['arguments'] ??= [];
  if (node['$type'] === 'ParserRule') {
    node['parameters'] ??= [];
    node['entry'] ??= false;
    node['fragment'] ??= false;
  }
}

function link(node: Json, root: Json): void {
  fillIn(node);
  for (const [property, value] of Object.entries(node)) {
    if (property.startsWith('$')) continue;
    const list = Array.isArray(value) ? value : [value];
    list.forEach((item: unknown, index) => {
      if (typeof item !== 'object' || item === null) return;
      const child = item as Json;
      if (typeof child['$ref'] === 'string') {
        const ref = child['$ref'];
        let target: unknown;
        Object.defineProperty(child, 'ref', { get: () => (target ??= lookUp(root, ref)) });
        child['$refText'] = ref;
        return;
      }
      child['$container'] = node;
      child['$containerProperty'] = property;
      if (Array.isArray(value)) child['$containerIndex'] = index;
      link(child, root);
    });
  }
}

/**
 * The grammar of a line as Langium's own syntax tree. Langium's loader does the same by way of its document services,
 * which would pull the language-server protocol into every bundle.
 */
export function loadGrammar(): GrammarAST.Grammar {
  const root = JSON.parse(grammarJson) as Json;
  link(root, root);
  return root as unknown as GrammarAST.Grammar;
}
