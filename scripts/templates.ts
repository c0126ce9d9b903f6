// Every English template a coach can read, found where it is written: `message('…')` of the language, the server and the player, `l10n.t('…')`
// of the client, and the messages of the checks.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { globSync } from 'tinyglobby';
import { entries } from '../language/checks/catalogue.ts';
import { root } from './build.ts';
import { everyNode, treeOf, type Node } from './syntax-tree.ts';

/** What a call says: written out as the first argument, or nothing that can be found. */
function templateOf({ arguments: given }: Node): string | undefined {
  const [first] = given as readonly Node[];
  if (first?.type === 'Literal' && typeof first['value'] === 'string') return first['value'];
  const [whole, ...more] = first?.type === 'TemplateLiteral' ? (first['quasis'] as readonly { readonly value: { readonly cooked: string } }[]) : [];
  return more.length === 0 ? whole?.value.cooked : undefined;
}

const isCallOf = (node: Node, name: string): boolean => {
  if (node.type !== 'CallExpression') return false;
  const callee = node['callee'] as Node;
  if (callee.type === 'Identifier') return callee['name'] === name;
  const { object, property } = callee as unknown as { readonly object?: Node; readonly property?: Node };
  return callee.type === 'MemberExpression' && `${String(object?.['name'])}.${String(property?.['name'])}` === name;
};

export interface Templates {
  /** In the order of their letters, each once. */
  readonly found: readonly string[];
  /** Calls that name no template: nobody could translate them. */
  readonly unknown: readonly string[];
}

export function templatesIn(path: string, text: string): Templates {
  const calls = [...everyNode(treeOf(text))].filter((node) => isCallOf(node, 'message') || isCallOf(node, 'l10n.t'));
  const found = calls.map(templateOf);
  return { found: found.filter((template) => template !== undefined), unknown: found.flatMap((template, at) => (template === undefined ? [`${path}: ${text.slice(calls[at]!['start'] as number, calls[at]!['end'] as number).slice(0, 80)}`] : [])) };
}

export function allTemplates(): Templates {
  const paths = globSync(['language/**/*.ts', 'server/lsp/**/*.ts', 'client/**/*.ts'], { cwd: root, ignore: ['**/generated/**', '**/*.d.ts', 'language/message/**'] });
  const each = [...paths, 'language/message/message.ts'].map((path) => templatesIn(path, readFileSync(join(root, path), 'utf8')));
  // A message that is only what the layer below says has no words of its own; its parts are found where they are written.
  const ofChecks = entries.flatMap(({ message, related }) => [message, ...(related === undefined ? [] : [related])]);
  const found = [...new Set([...ofChecks, ...each.flatMap((one) => one.found)])].sort();
  return { found, unknown: each.flatMap((one) => one.unknown) };
}

/** The English bundle: each template as its own translation, the form that editors and translators know. */
export const englishBundle = (): string => `${JSON.stringify(Object.fromEntries(allTemplates().found.map((template) => [template, template])), null, 2)}\n`;
