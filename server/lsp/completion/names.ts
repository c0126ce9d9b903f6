// Where a name in quotes is wanted: the names there are.
import { definitionsOf, usesOf, type NameKind } from '../../../language/names/definitions.ts';
import type { Book, BookFile } from '../../../language/book/book.ts';
import type { Expected } from '../../../language/grammar/expected.ts';
import type { Choice } from './choice.ts';
import { has, type Line } from './line.ts';

export function nameChoices(line: Line, items: readonly Expected[], book: Book, file: BookFile): readonly Choice[] {
  const kinds = new Set(items.filter(({ kind }) => kind === 'string').map((item) => kindOf(item)));
  return [...kinds].flatMap((kind) => (kind === undefined ? [] : namesOf(kind, line, book, file))).map((name, at): Choice => ({ text: `"${name}"`, kind: 'name', rank: 10 + at }));
}

function kindOf(item: Expected): NameKind | undefined {
  const last = item.path.at(-1);
  if (has(item, 'Origin')) return 'step';
  if (last === 'own') return has(item, 'AlignmentRef') ? 'alignment' : 'spot';
  if (last === 'mirrors') return item.path.includes('StepHead') ? 'step' : item.path.includes('AlignmentHead') ? 'alignment' : 'play';
  if (last === 'continues' || last === 'plays') return 'play';
  if (last === 'after') return 'step';
  return last === 'file' ? 'file' : undefined;
}

function namesOf(kind: NameKind, line: Line, book: Book, file: BookFile): readonly string[] {
  if (kind === 'file') return [...book.files.keys()].filter((uri) => uri !== file.uri).map((uri) => decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1)));
  const blocks = kind === 'step' || kind === 'spot' ? [line.block, ...(kind === 'spot' && file.blocks[0] ? [file.blocks[0]] : [])] : file.blocks;
  const found = blocks.flatMap((block) =>
    definitionsOf(block)
      .filter((name) => name.kind === kind && !(block === line.block && name.place.line === line.at))
      // Steps above first, the nearest before all: a counter follows what it answers.
      .map((name) => ({ name: name.name, away: block === line.block ? (name.place.line < line.at ? line.at - name.place.line : 1000 + name.place.line) : 0 })),
  );
  const used = new Set(line.block.kind === 'book' ? usesOf(line.block).map(({ key }) => key) : []);
  return found.toSorted((a, b) => a.away - b.away).map(({ name }) => name).filter((name) => !used.has(name.toLowerCase()));
}
