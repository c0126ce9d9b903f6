import type { BlockKey } from './places.ts';
import type { BookLine } from './lines.ts';
import { slugOf } from './slug.ts';

export type BlockKind = 'file' | 'play' | 'alignment' | 'roster' | 'book';

/**
 * Lines that belong together: what stands above the first opening word of a file (kind and key `file`, maybe no lines), or an opening
 * line and everything down to the next one. A block is never changed: what is kept for it can hang on the object itself.
 */
export interface Block {
  /** `play:lighthouse`; the second of the same kind and name in its file has `#2`. */
  readonly key: BlockKey;
  readonly kind: BlockKind;
  /** As written; `unnamed 1` where an opening word has no name that can be read. Absent for the file's header. */
  readonly name?: string;
  readonly lines: readonly BookLine[];
}

/** A group of lines whose key is not settled yet: the number depends on the blocks above. */
export interface Group {
  readonly kind: BlockKind;
  readonly writtenName?: string;
  readonly base: string;
  readonly lines: readonly BookLine[];
}

/** The kind of block a line opens. A step opens no block: it lives in its play's. */
function blockOpenedBy(line: BookLine): Exclude<BlockKind, 'file'> | undefined {
  const opens = line.parsed.opens;
  return opens === 'play' || opens === 'alignment' || opens === 'roster' || opens === 'book' ? opens : undefined;
}

/** Groups lines at their openers; lines before the first opener make a group of kind `file`. */
export function groupLines(lines: readonly BookLine[]): Group[] {
  const groups: Group[] = [];
  let from = 0;
  for (let at = 0; at <= lines.length; at++) {
    const opener = at < lines.length ? blockOpenedBy(lines[at]!) : undefined;
    if (at < lines.length && (opener === undefined || at === from)) continue;
    if (at > from) groups.push(groupOf(lines.slice(from, at)));
    from = at;
  }
  return groups;
}

function groupOf(lines: readonly BookLine[]): Group {
  const first = lines[0]!;
  const kind = blockOpenedBy(first);
  if (kind === undefined) return { kind: 'file', base: 'file', lines };
  const name = first.parsed.openName;
  const writtenName = name === undefined || name.trim() === '' ? undefined : name.trim();
  return { kind, base: `${kind}:${slugOf(writtenName ?? 'unnamed')}`, lines, ...(writtenName === undefined ? {} : { writtenName }) };
}

/** The block a group becomes when it is the `ordinal`-th (from 1) of its kind and name in the file. */
export function blockOf(group: Group, ordinal: number): Block {
  const key = ordinal === 1 ? group.base : `${group.base}#${ordinal}`;
  if (group.kind === 'file') return { key, kind: 'file', lines: group.lines };
  return { key, kind: group.kind, name: group.writtenName ?? `unnamed ${ordinal}`, lines: group.lines };
}

/** The key without its number. A name never holds `#` in a key. */
export function baseOf(key: BlockKey): string {
  const at = key.indexOf('#');
  return at < 0 ? key : key.slice(0, at);
}
