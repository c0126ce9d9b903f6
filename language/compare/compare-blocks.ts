// What has become of that which is no play: books, rosters, alignments and spots of the coach's own, and which plays use them.
import { lineText, type Block, type BookFile } from '../book/book.ts';
import { definitionsOf, usesOf, type NameKind } from '../names/definitions.ts';
import { nameKey } from '../names/name-key.ts';
import { sectionsOf } from '../names/sections.ts';
import { changedLines, type ChangedLine } from './changed-lines.ts';
import { compareSections, type SectionChange } from './compare-sections.ts';
import { withoutRemark } from './play-parts.ts';

export interface BlockChange {
  readonly what: 'book' | 'roster' | 'alignment' | 'spot';
  readonly kind: 'came' | 'went' | 'changed';
  /** Absent where it has none. */
  readonly name?: string;
  /** What it was called, where it is called otherwise now. */
  readonly was?: string;
  /** The file it stands in; of what went, stood in. */
  readonly uri: string;
  readonly lines: readonly ChangedLine[];
  readonly sections: readonly SectionChange[];
  /** The plays that stand in the alignment or name the spot, now or, of what went, then. */
  readonly usedBy: readonly string[];
}

/** One of them, of one version. */
interface Item {
  readonly name?: string;
  readonly uri: string;
  /** What it says, without its own name. */
  readonly lines: readonly string[];
  readonly block: Block;
}

/** In the order book, roster, alignments, spots; each kind in the order of `after`, behind them those that went. */
export function compareBlocks(before: readonly BookFile[], after: readonly BookFile[], renamedPlays: ReadonlyMap<string, string>): readonly BlockChange[] {
  // A section that names a play by its old name has not followed it: that name means nothing now, which a check says.
  const kept = new Set(after.flatMap(({ blocks }) => blocks.filter(({ kind }) => kind === 'book').flatMap(sectionsOf)).flatMap(({ plays }) => plays.map(({ name }) => nameKey(name))));
  const followed = new Map([...renamedPlays].filter(([was]) => !kept.has(was)));
  return (['book', 'roster', 'alignment', 'spot'] as const).flatMap((what) => {
    const [was, is] = [itemsOf(before, what), itemsOf(after, what)];
    const pairs = pairItems(was, is, what);
    const known = new Set(pairs.values());
    const alone = (kind: 'came' | 'went', item: Item, files: readonly BookFile[]): BlockChange => ({
      what, kind, ...named(item), uri: item.uri, lines: [], sections: what === 'book' ? compareSections(kind === 'came' ? [] : sectionsIn(item), kind === 'came' ? sectionsIn(item) : [], followed) : [], usedBy: usedBy(what, item, files),
    });
    return [
      ...is.flatMap((now): BlockChange[] => {
        const then = pairs.get(now);
        if (then === undefined) return [alone('came', now, after)];
        const lines = what === 'book' ? [] : changedLines(then.lines, now.lines);
        const sections = what === 'book' ? compareSections(sectionsIn(then), sectionsIn(now), followed) : [];
        const renamed = (then.name ?? '') !== (now.name ?? '');
        return renamed || lines.length > 0 || sections.length > 0 ? [{ what, kind: 'changed', ...named(now), ...(renamed && { was: then.name ?? '' }), uri: now.uri, lines, sections, usedBy: usedBy(what, now, after) }] : [];
      }),
      ...was.filter((then) => !known.has(then)).map((then) => alone('went', then, before)),
    ];
  });
}

const named = ({ name }: Item) => (name === undefined ? {} : { name });

function itemsOf(files: readonly BookFile[], what: BlockChange['what']): readonly Item[] {
  return files.flatMap(({ uri, blocks }) => (what === 'spot' ? blocks.filter(({ kind }) => kind === 'file').flatMap((block) => spotsIn(block, uri)) : blocks.filter(({ kind }) => kind === what).map((block) => itemOf(block, uri))));
}

function itemOf(block: Block, uri: string): Item {
  const own = definitionsOf(block).find(({ place, kind }) => place.line === 0 && kind === block.kind);
  const lines = block.lines.map((line, at) => behind(lineText(line), line.parsed.comment?.at, at === 0 ? (own?.place.to ?? block.kind.length) : 0));
  return { ...(own !== undefined && { name: own.name }), uri, block, lines: lines.filter((text) => text !== '') };
}

function spotsIn(block: Block, uri: string): readonly Item[] {
  return definitionsOf(block)
    .filter(({ kind }) => kind === 'spot')
    .map(({ name, place }) => {
      const line = block.lines[place.line]!;
      return { name, uri, block, lines: [behind(lineText(line), line.parsed.comment?.at, place.to)] };
    });
}

/** A line from a column on, without the mark that closes the name before it. */
function behind(text: string, remark: number | undefined, from: number): string {
  return withoutRemark(text, remark).slice(withoutRemark(text.slice(0, from), undefined).length).replace(/^["”]/, '').trim();
}

function sectionsIn({ block }: Item): readonly { readonly name: string; readonly plays: readonly string[] }[] {
  return sectionsOf(block).map(({ name, plays }) => ({ name, plays: plays.map((play) => play.name) }));
}

/** By name, in order where there are several; under another name what says the same, or the only one of its kind that is left. */
function pairItems(before: readonly Item[], after: readonly Item[], what: BlockChange['what']): ReadonlyMap<Item, Item> {
  const pairs = new Map<Item, Item>();
  const left = [...before];
  const pairBy = (same: (was: Item, now: Item) => boolean) => {
    for (const now of after) {
      const was = pairs.has(now) ? undefined : left.find((one) => same(one, now));
      if (was === undefined) continue;
      pairs.set(now, was);
      left.splice(left.indexOf(was), 1);
    }
  };
  pairBy((was, now) => nameKey(was.name ?? '') === nameKey(now.name ?? ''));
  pairBy((was, now) => was.lines.length > 0 && was.lines.join('\n') === now.lines.join('\n'));
  if ((what === 'book' || what === 'roster') && left.length === 1 && after.filter((now) => !pairs.has(now)).length === 1) pairBy(() => true);
  return pairs;
}

/** The plays that name it, or that stand in an alignment which mirrors it. */
function usedBy(what: BlockChange['what'], { name }: Item, files: readonly BookFile[]): readonly string[] {
  if (name === undefined || (what !== 'alignment' && what !== 'spot')) return [];
  const blocks = files.flatMap((file) => file.blocks);
  const names = (block: Block, kind: NameKind, key: string) => usesOf(block).some((use) => use.kind === kind && use.key === key);
  const keys = new Set([nameKey(name)]);
  if (what === 'alignment') for (const key of keys) for (const block of blocks) if (block.kind === 'alignment' && block.name !== undefined && names(block, 'alignment', key)) keys.add(nameKey(block.name));
  return blocks.filter((block) => block.kind === 'play' && [...keys].some((key) => names(block, what, key))).map((block) => block.name ?? '');
}
