// What the words of a line are, by its tree: verbs of what a man does, men, defenders, places, names given and used, times and lengths.
import type { SemanticTokens, SemanticTokensDelta, SemanticTokensEdit } from 'vscode-languageserver-types';
import type { Block } from '../../language/book/book.ts';
import { childrenOf, spanOf, type PlaceNode, type PlayerNode, type TreeNode } from '../../language/grammar/tree.ts';
import { definitionsOf, usesOf, type NameInText, type NameKind } from '../../language/names/definitions.ts';
import { tokenTypes } from './abilities.ts';
import type { OpenDocument } from './documents.ts';

type TokenType = (typeof tokenTypes)[number];

const ofName: Readonly<Record<NameKind, TokenType>> = {
  play: 'class', step: 'method', look: 'event', spot: 'enumMember', alignment: 'struct', roster: 'namespace', 'roster-entry': 'property', book: 'namespace', section: 'namespace', file: 'string',
};
const measures: ReadonlySet<string> = new Set(['Seconds', 'Length', 'ClockTime', 'Speed']);

interface Token {
  /** Line of the block. */
  readonly line: number;
  readonly at: number;
  readonly to: number;
  readonly type: TokenType;
  readonly declares?: true;
}

const kept = new WeakMap<Block, readonly Token[]>();

function tokensOf(block: Block): readonly Token[] {
  const known = kept.get(block);
  if (known !== undefined) return known;
  const found: Token[] = [];
  const named = (names: readonly NameInText[], declares?: true) => names.forEach(({ kind, place }) => place.to > place.at && found.push({ ...place, type: ofName[kind], ...(declares && { declares }) }));
  named(definitionsOf(block), true);
  named(usesOf(block));
  for (const [line, { parsed }] of block.lines.entries()) {
    if (parsed.tree !== undefined) collect(parsed.tree, line, found);
    if (parsed.comment !== undefined) found.push({ line, at: parsed.comment.at, to: parsed.comment.to, type: 'comment' });
  }
  const sorted = found.toSorted((a, b) => a.line - b.line || a.at - b.at || a.to - b.to);
  const apart = sorted.filter(({ line, at }, nth) => nth === 0 || sorted[nth - 1]!.line < line || sorted[nth - 1]!.to <= at);
  kept.set(block, apart);
  return apart;
}

function collect(node: TreeNode, line: number, found: Token[]): void {
  const add = (type: TokenType, columns: { readonly at: number; readonly to: number }) => columns.to > columns.at && found.push({ line, at: columns.at, to: columns.to, type });
  const { verb } = node as { readonly verb?: unknown };
  if (typeof verb === 'string' && node.spans['verb'] !== undefined) add('function', spanOf(node, 'verb'));
  if (node.$type === 'Player' && (node as PlayerNode).number !== undefined) add((node as PlayerNode).defence ? 'parameter' : 'variable', spanOf(node, 'number'));
  else if (node.$type === 'Place' && (node as PlaceNode).own === undefined) add('enumMember', node);
  else if (measures.has(node.$type)) add('number', node);
  else if (node.$type === 'AlignmentRef' && node.spans['name'] !== undefined) add('struct', spanOf(node, 'name'));
  for (const child of childrenOf(node)) collect(child, line, found);
}

/** The tokens as the protocol packs them, of these lines only if asked. */
export function semanticTokens({ file }: OpenDocument, range?: { readonly from: number; readonly to: number }): number[] {
  const data: number[] = [];
  let [lastLine, lastAt, firstLine] = [0, 0, 0];
  for (const block of file.blocks) {
    const behind = firstLine + block.lines.length;
    if (range === undefined || (behind > range.from && firstLine <= range.to)) {
      for (const { line, at, to, type, declares } of tokensOf(block)) {
        const here = firstLine + line;
        if (range !== undefined && (here < range.from || here > range.to)) continue;
        data.push(here - lastLine, here === lastLine ? at - lastAt : at, to - at, tokenTypes.indexOf(type), declares === true ? 1 : 0);
        [lastLine, lastAt] = [here, at];
      }
    }
    firstLine = behind;
  }
  return data;
}

/** What was sent last of each document, so that only what has changed is sent. */
export function keepTokens() {
  const sent = new Map<string, { readonly id: string; readonly data: readonly number[] }>();
  let count = 0;
  const keep = (uri: string, data: number[]): SemanticTokens => {
    const resultId = String(++count);
    sent.set(uri, { id: resultId, data });
    return { resultId, data };
  };
  return {
    full: (document: OpenDocument): SemanticTokens => keep(document.uri, semanticTokens(document)),
    delta(document: OpenDocument, since: string): SemanticTokens | SemanticTokensDelta {
      const before = sent.get(document.uri);
      const now = keep(document.uri, semanticTokens(document));
      return before?.id === since ? { resultId: now.resultId!, edits: change(before.data, now.data) } : now;
    },
    forget: (uri: string): void => void sent.delete(uri),
  };
}

/** Numbers that stay the same at both ends are left out, whole tokens at a time. */
function change(before: readonly number[], now: readonly number[]): SemanticTokensEdit[] {
  let head = 0;
  while (head < before.length && head < now.length && before[head] === now[head]) head++;
  head -= head % 5;
  let tail = 0;
  while (tail < before.length - head && tail < now.length - head && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  tail -= tail % 5;
  if (head + tail >= before.length && head + tail >= now.length) return [];
  return [{ start: head, deleteCount: before.length - head - tail, data: now.slice(head, now.length - tail) }];
}
