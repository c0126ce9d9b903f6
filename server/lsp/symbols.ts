// The outline: plays with their steps, and a step with its looks; alignments, rosters, books.
import { SymbolKind, type DocumentSymbol, type FoldingRange, type Range } from 'vscode-languageserver-types';
import { inEnglish, message, type Say } from '../../language/message/message.ts';
import type { Block } from '../../language/book/book.ts';
import { definitionsOf, type NameInText } from '../../language/names/definitions.ts';
import type { OpenDocument } from './documents.ts';
import { textOfLine } from './positions.ts';

export const symbolKinds: Partial<Readonly<Record<NameInText['kind'], SymbolKind>>> = {
  play: SymbolKind.Class, step: SymbolKind.Method, look: SymbolKind.Event, spot: SymbolKind.Constant, alignment: SymbolKind.Struct, roster: SymbolKind.Array, book: SymbolKind.Package, section: SymbolKind.Namespace,
};

export function symbols({ file }: OpenDocument, say: Say = inEnglish): DocumentSymbol[] {
  let firstLine = 0;
  return file.blocks.flatMap((block) => {
    const made = symbolsOf(block, firstLine, say);
    firstLine += block.lines.length;
    return made;
  });
}

type Named = Pick<NameInText, 'kind' | 'name' | 'place'>;

interface Outlined {
  readonly block: Block;
  readonly firstLine: number;
  readonly say: Say;
}

/** A symbol reaches to the next of its rank, without the blank lines at its end. */
function symbolsOf(block: Block, firstLine: number, say: Say): DocumentSymbol[] {
  const outlined = { block, firstLine, say };
  const names = definitionsOf(block).filter(({ kind }) => symbolKinds[kind] !== undefined);
  const [head, ...rest] = block.kind === 'file' ? [undefined, ...names] : names;
  const steps = rest.filter((name): name is NameInText => name?.kind === 'step');
  const inside = rest.filter((name): name is NameInText => name !== undefined && name.kind !== 'step');
  const unnamed = unnamedLooks(block, new Set(inside.map(({ place }) => place.line)));
  const ofStep = steps.map((step, at): DocumentSymbol => {
    const end = (steps[at + 1]?.place.line ?? block.lines.length) - 1;
    const looks = [...inside, ...unnamed].filter(({ place }) => place.line > step.place.line && place.line <= end).toSorted((a, b) => a.place.line - b.place.line);
    return symbolOf(outlined, step, end, looks.map((look) => symbolOf(outlined, look, look.place.line, [])));
  });
  const above = inside.filter(({ place }) => place.line < (steps[0]?.place.line ?? Infinity)).map((name) => symbolOf(outlined, name, name.place.line, []));
  const children = [...above, ...ofStep];
  return head === undefined ? children : [symbolOf(outlined, head, block.lines.length - 1, children)];
}

/** A look without a name is called by what is written of it: `4 on the roll: layup`. */
function unnamedLooks({ lines }: Block, named: ReadonlySet<number>): readonly Named[] {
  return lines.flatMap(({ parsed }, line): readonly Named[] => {
    if (parsed.tree?.$type !== 'Look' || named.has(line)) return [];
    const text = parsed.text.slice(0, parsed.comment?.at).trimEnd();
    const at = /^\s*\S+\s*/.exec(text)![0].length;
    return at < text.length ? [{ kind: 'look', name: text.slice(at), place: { line, at, to: text.length } }] : [];
  });
}

function symbolOf({ block, firstLine, say }: Outlined, name: Named, lastLine: number, children: DocumentSymbol[]): DocumentSymbol {
  const { line, at, to } = name.place;
  const end = lastWritten(block, line, lastLine);
  const range: Range = { start: { line: firstLine + line, character: 0 }, end: { line: firstLine + end, character: textOfLine(block, end).length } };
  return { name: name.name || say(message('unnamed')), kind: symbolKinds[name.kind]!, range, selectionRange: { start: { line: firstLine + line, character: at }, end: { line: firstLine + line, character: to } }, ...(children.length > 0 && { children }) };
}

function lastWritten(block: Block, from: number, to: number): number {
  let line = to;
  while (line > from && textOfLine(block, line).trim() === '') line--;
  return line;
}

/** Plays and steps fold at their first line. */
export function foldings(document: OpenDocument): FoldingRange[] {
  const fold = ({ range, children }: DocumentSymbol): FoldingRange[] => [...(range.end.line > range.start.line ? [{ startLine: range.start.line, endLine: range.end.line }] : []), ...(children ?? []).flatMap(fold)];
  return symbols(document).flatMap(fold);
}
