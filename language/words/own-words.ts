// How a coach says places himself, read off what he has written: feet or metres, and spots with names of his own.
import type { Block, Book } from '../book/book.ts';
import { keptByBlock } from '../book/kept-by-block.ts';
import type { Court } from '../court/court.ts';
import { childrenOf, type LengthNode, type NodeOf, type TreeNode } from '../grammar/tree.ts';
import { createLookup, filesInReach } from '../names/lookup.ts';
import { nameKey } from '../names/name-key.ts';
import { pointsOfOwnSpots } from '../play/own-spots.ts';
import type { OwnSpot, OwnWords, UnitName } from './say-place.ts';

/** Of a play, else of its file and the files that uses. */
export function ownWordsOf(book: Book, uri: string, block: Block, court: Court): OwnWords {
  const around = filesInReach(book, uri).map(({ blocks }) => blocks);
  const unit = unitWrittenIn(block) ?? around.map(mostWritten).find((one) => one !== undefined);
  const headers = around.flatMap(([header]) => (header?.kind === 'file' ? [header] : []));
  return { unit, spots: spotsOf(book, uri, [block, ...headers], court) };
}

/** Feet or metres, whichever stands there more often; undefined where neither does. */
export const unitWrittenIn = (block: Block): UnitName | undefined => mostWritten([block]);

function mostWritten(blocks: readonly Block[]): UnitName | undefined {
  const [feet, all] = blocks.map(counted).reduce((sum, one) => [sum[0] + one[0], sum[1] + one[1]], [0, 0]);
  if (all === 0) return undefined;
  return feet * 2 > all ? 'ft' : 'm';
}

/** How many measures a block has in feet, and how many in all. */
const counted = keptByBlock(({ lines }): readonly [feet: number, all: number] => {
  const units = lines.flatMap(({ parsed: { tree, text } }) => (tree === undefined || !/\d\s*(?:m|cm|f|in|\))/i.test(text) ? [] : unitsIn(tree)));
  return [units.filter((unit) => unit === 'ft').length, units.length];
});

function unitsIn(node: TreeNode): readonly UnitName[] {
  if (node.$type === 'Length') return [/^(?:ft|in)$/.test((node as LengthNode).unit) ? 'ft' : 'm'];
  if (node.$type === 'Coordinates') return [(node as NodeOf<'Coordinates'>).unit === 'ft' ? 'ft' : 'm'];
  return childrenOf(node).flatMap(unitsIn);
}

function spotsOf(book: Book, uri: string, blocks: readonly Block[], court: Court): readonly OwnSpot[] {
  const names = new Map(blocks.flatMap(namesOfSpots).toReversed().map((name) => [nameKey(name), name]));
  if (names.size === 0) return [];
  const points = pointsOfOwnSpots(blocks[0]!.lines.map(({ parsed }) => parsed.tree), createLookup(book, uri), court, [...names.values()]);
  return [...names].flatMap(([key, name]) => (points.has(key) ? [{ key, name, point: points.get(key)! }] : []));
}

const namesOfSpots = keptByBlock(({ lines }): readonly string[] => lines.flatMap(({ parsed: { tree, fault } }) => (tree?.$type === 'OwnSpot' && fault === undefined ? [tree.name] : [])));
