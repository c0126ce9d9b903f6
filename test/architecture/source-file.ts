// What the rules of the tree need to know of a source file: whom it imports, which globals it uses, what it is for others, how long it is.
import { posix } from 'node:path';
import { everyNode, isNode, treeOf, type Node } from '../../scripts/syntax-tree.ts';

export interface Import {
  /** path below the repository for one of our files, else the package's name as written */
  readonly to: string;
  readonly ours: boolean;
  /** leaves nothing behind when the program runs */
  readonly typeOnly: boolean;
}

export interface SourceFile {
  /** below the repository, with slashes */
  readonly path: string;
  readonly lines: number;
  readonly imports: readonly Import[];
  /** names used but not declared in the file, `Math.random` written out */
  readonly globals: ReadonlySet<string>;
  /** functions, constants and classes declared for others */
  readonly exported: readonly string[];
  /** every name in it, and how often it stands there */
  readonly names: ReadonlyMap<string, number>;
}

export function readSource(path: string, text: string): SourceFile {
  const nodes = [...everyNode(treeOf(text))];
  return { path, lines: text.trimEnd().split('\n').length, imports: nodes.flatMap((node) => importOf(path, node)), globals: globalsOf(nodes), exported: nodes.flatMap(exportedBy), names: namesOf(nodes) };
}

function importOf(path: string, node: Node): Import[] {
  const from = (where: unknown, typeOnly: boolean): Import[] => {
    const name = isNode(where) ? where.value : undefined;
    if (typeof name !== 'string') return [];
    const ours = name.startsWith('.');
    return [{ to: ours ? posix.join(posix.dirname(path), name) : name, ours, typeOnly }];
  };
  switch (node.type) {
    case 'ImportDeclaration': {
      const specifiers = node.specifiers as readonly Node[];
      const onlyTypes = specifiers.length > 0 && specifiers.every(({ importKind }) => importKind === 'type');
      return from(node.source, node.importKind === 'type' || onlyTypes);
    }
    case 'ExportNamedDeclaration':
    case 'ExportAllDeclaration':
      return from(node.source, node.exportKind === 'type');
    case 'ImportExpression':
      return from(node.source, false);
    case 'TSImportType':
      return from(node.source ?? node.argument, true);
    default:
      return [];
  }
}

function exportedBy({ type, declaration }: Node): string[] {
  if (type !== 'ExportNamedDeclaration' || !isNode(declaration)) return [];
  const declared = declaration.type === 'VariableDeclaration' ? (declaration.declarations as readonly Node[]) : /^(Function|Class)Declaration$/.test(declaration.type) ? [declaration] : [];
  return declared.flatMap(({ id }) => (isNode(id) && typeof id.name === 'string' ? [id.name] : []));
}

function namesOf(nodes: readonly Node[]): ReadonlyMap<string, number> {
  const names = new Map<string, number>();
  for (const { type, name } of nodes) if (type === 'Identifier' && typeof name === 'string') names.set(name, (names.get(name) ?? 0) + 1);
  return names;
}

function globalsOf(nodes: readonly Node[]): ReadonlySet<string> {
  const declared = new Set<string>();
  const declare = (part: unknown) => {
    for (const one of Array.isArray(part) ? part : [part]) {
      if (!isNode(one)) continue;
      for (const inner of everyNode(one)) if (inner.type === 'Identifier') declared.add(inner.name as string);
    }
  };
  const used = new Set<string>();
  const use = (part: unknown) => {
    if (isNode(part) && part.type === 'Identifier') used.add(part.name as string);
  };
  for (const node of nodes) {
    if (node.type === 'VariableDeclarator' || node.type === 'FunctionDeclaration' || node.type === 'ClassDeclaration') declare(node.id);
    if (node.type.startsWith('Import') && node.local) declare(node.local);
    if (node.params) declare(node.params);
    if (node.type === 'CatchClause') declare(node.param);
    if (node.type === 'MemberExpression') {
      use(node.object);
      const property = node.property as Node;
      if (isNode(node.object) && node.object.name === 'Math' && property.name === 'random') used.add('Math.random');
    }
    if (node.type === 'CallExpression' || node.type === 'NewExpression') use(node.callee);
  }
  return new Set([...used].filter((name) => !declared.has(name)));
}
