// The edits that put a play elsewhere in the sections of its book.
import type { TextEdit } from 'vscode-languageserver-types';
import { blockAtLine, type Block, type BookFile } from '../../language/book/book.ts';
import { definitionsOf } from '../../language/names/definitions.ts';
import { sectionsOf, type SectionInText } from '../../language/names/sections.ts';
import type { Slot } from './playbook-protocol.ts';
import { textOfLine } from './positions.ts';

/**
 * Takes a play out of its slot and puts it into another one of the same book: before the play that stands there, or behind the last.
 * One edit a line that changes, empty where nothing does, null where there is no such play or section.
 */
export function arrange(file: BookFile, from: Slot, to: Slot): TextEdit[] | null {
  const { block, firstLine } = blockAtLine(file, from.line);
  if (block.kind !== 'book' || blockAtLine(file, to.line).block !== block) return null;
  const sections = sectionsOf(block);
  const source = sections.find(({ at }) => firstLine + at === from.line);
  const target = sections.find(({ at }) => firstLine + at === to.line);
  const moved = source?.plays[from.index]?.name;
  if (source === undefined || target === undefined || moved === undefined) return null;
  const namesOf = (section: SectionInText) => section.plays.map(({ name }) => name);
  const without = namesOf(source).filter((_, index) => index !== from.index);
  if (source === target) {
    const index = Math.min(to.index > from.index ? to.index - 1 : to.index, without.length);
    return editsOf(block, firstLine, source, without.toSpliced(index, 0, moved));
  }
  return [...editsOf(block, firstLine, source, without), ...editsOf(block, firstLine, target, namesOf(target).toSpliced(to.index, 0, moved))];
}

/** Blanks at the line's ends and a comment behind the list stay. */
function editsOf(block: Block, firstLine: number, section: SectionInText, names: readonly string[]): TextEdit[] {
  if (names.join('\n') === section.plays.map(({ name }) => name).join('\n')) return [];
  const line = firstLine + section.at;
  const text = textOfLine(block, section.at);
  const list = names.map((name) => `"${name}"`).join(', ');
  const title = definitionsOf(block).find(({ kind, place }) => kind === 'section' && place.line === section.at)!.place;
  // Behind the closing quote of the section's name, up to that of its last play.
  const from = Math.min(title.to + 1, text.length);
  const last = section.plays.at(-1);
  const to = last === undefined ? from : Math.min(last.place.to + 1, text.length);
  return [{ range: { start: { line, character: from }, end: { line, character: to } }, newText: list === '' ? '' : `: ${list}` }];
}
