// Where a name in quotes is wanted: the names there are.
import { definitionsOf, usesOf, type NameKind } from '../../../language/names/definitions.ts';
import { filesInReach, usedUris } from '../../../language/names/lookup.ts';
import { useName } from '../../../language/names/moved-files.ts';
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
  if (kind === 'file') return filesToUse(book, file);
  // A step is known in its play, a spot of a play's own too; all else in the file and in those it uses, nearest first.
  const reached = filesInReach(book, file.uri);
  const blocks = kind === 'step' ? [line.block] : kind === 'spot' ? [line.block, ...reached.flatMap((one) => one.blocks.slice(0, 1))] : reached.flatMap((one) => one.blocks);
  const found = blocks.flatMap((block) =>
    definitionsOf(block)
      .filter((name) => name.kind === kind && !(block === line.block && name.place.line === line.at))
      // Steps above first, the nearest before all: a counter follows what it answers.
      .map((name) => ({ name: name.name, away: block === line.block ? (name.place.line < line.at ? line.at - name.place.line : 1000 + name.place.line) : 0 })),
  );
  const used = new Set(line.block.kind === 'book' ? usesOf(line.block).map(({ key }) => key) : []);
  return [...new Set(found.toSorted((a, b) => a.away - b.away).map(({ name }) => name).filter((name) => !used.has(name.toLowerCase())))];
}

/** Files that are not used yet, as a `use` line of this one names them; the nearest first. */
function filesToUse(book: Book, file: BookFile): readonly string[] {
  const used = new Set(usedUris(file).map(({ uri }) => uri));
  const names = [...book.files.keys()].filter((uri) => uri !== file.uri && !used.has(uri)).flatMap((uri) => useName(file.uri, uri, true) ?? []);
  const away = (name: string): number => name.split('/').length;
  return names.toSorted((a, b) => away(a) - away(b) || (a < b ? -1 : 1));
}
