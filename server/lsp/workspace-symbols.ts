// Plays, steps, looks and whatever else has a name, in all files, by a few letters of it.
import type { SymbolInformation } from 'vscode-languageserver-types';
import type { Book } from '../../language/book/book.ts';
import { definitionsOf } from '../../language/names/definitions.ts';
import { rangeOf } from './positions.ts';
import { symbolKinds } from './symbols.ts';

/** An editor shows fewer. */
const most = 500;

export function workspaceSymbols(book: Book, query: string): SymbolInformation[] {
  const found: { readonly symbol: SymbolInformation; readonly rank: number }[] = [];
  for (const { uri, blocks } of book.files.values()) {
    let firstLine = 0;
    for (const block of blocks) {
      for (const { kind, name, place } of definitionsOf(block)) {
        const rank = rankOf(name, query);
        const symbolKind = symbolKinds[kind];
        if (rank === undefined || symbolKind === undefined) continue;
        const inside = block.kind === 'file' || kind === block.kind ? fileName(uri) : (block.name ?? fileName(uri));
        found.push({ rank, symbol: { name, kind: symbolKind, containerName: inside, location: { uri, range: rangeOf(firstLine, place) } } });
      }
      firstLine += block.lines.length;
    }
  }
  return found.toSorted((a, b) => a.rank - b.rank).slice(0, most).map(({ symbol }) => symbol);
}

/** 0: begins with it, 1: holds it, 2: holds its letters in order; undefined: none of these. */
function rankOf(name: string, query: string): number | undefined {
  const [text, wanted] = [name.toLowerCase(), query.toLowerCase()];
  const at = text.indexOf(wanted);
  if (at >= 0) return at === 0 ? 0 : 1;
  let from = 0;
  for (const letter of wanted) {
    from = text.indexOf(letter, from) + 1;
    if (from === 0) return undefined;
  }
  return 2;
}

function fileName(uri: string): string {
  const last = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
