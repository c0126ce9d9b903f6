// The coach's own spots, worked out to points.
import type { LineTree, NodeOf, SpotTree, TreeNode } from '../grammar/tree.ts';
import { childrenOf } from '../grammar/tree.ts';
import type { Court } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import type { Lookup } from '../names/lookup.ts';
import { nameKey } from '../names/name-key.ts';
import type { PartId, TextPlace } from './play.ts';
import { resolvePlace } from './places.ts';
import type { ReadingProblem } from './problem-codes.ts';
import { readPlace } from './read-places.ts';
import type { OwnSpots, Reader } from './reader.ts';
import { putPart, report } from './reader.ts';

interface Source {
  readonly trees: readonly (LineTree | undefined)[];
  readonly lookup: Lookup;
  readonly court: Court;
  readonly parts: Map<PartId, TextPlace>;
  readonly problems: ReadingProblem[];
  /** Filled here: the play's own spots at once, those of its file when one is first named. */
  readonly spots: Map<string, Point>;
}

/** A spot by a spot by a spot, and so on: no coach goes farther. */
const longestChain = 40;

/** A play's spots: its own lines first (a later one may build on an earlier), then its file's and the files that one uses. */
export function readOwnSpots(source: Source): OwnSpots {
  const { spots, lookup } = source;
  const reading = new Set<string>();
  const find = (name: string): string | undefined => {
    const key = nameKey(name);
    if (spots.has(key)) return key;
    const tree = reading.has(key) || reading.size >= longestChain ? undefined : lookup.spot(name);
    if (tree === undefined) return undefined;
    // What is wrong with it is said in the file that says it.
    const point = fixedPoint({ ...reader, parts: new Map(), problems: [] }, tree, key);
    if (point === undefined) return undefined;
    spots.set(key, point);
    return key;
  };
  const fixedPoint = (on: Reader, tree: SpotTree, key: string): Point | undefined => {
    reading.add(key);
    const place = dependsOnPlayers(tree) ? undefined : readPlace(on, tree, { part: `spot:${key}`, him: [] });
    reading.delete(key);
    return place === undefined ? undefined : resolvePlace(place, { court: source.court, positions: {}, who: '2', spots: Object.fromEntries(spots) });
  };
  const reader: Reader = { lines: [], lookup, court: source.court, parts: source.parts, problems: source.problems, spots: { find } };
  for (const [line, tree] of source.trees.entries()) if (tree?.$type === 'OwnSpot') define(tree, line);

  function define(tree: NodeOf<'OwnSpot'>, line: number): void {
    const key = nameKey(tree.name);
    const part = `spot:${key}`;
    if (spots.has(key)) {
      putPart(reader, `${part}@${line}`, line, tree);
      report(reader, 'duplicate-name', `${part}@${line}`, { kind: 'spot', name: tree.name }, [part]);
      return;
    }
    putPart(reader, part, line, tree);
    if (dependsOnPlayers(tree.spot)) report(reader, 'spot-not-fixed', part, { name: tree.name });
    const point = fixedPoint(reader, tree.spot, key);
    if (point !== undefined) spots.set(key, point);
  }
  return { find };
}

/** Where a coach's own spots lie, by their keys: those of a play's lines, and of these names those that its file or the files that uses have. */
export function pointsOfOwnSpots(trees: Source['trees'], lookup: Lookup, court: Court, names: readonly string[]): ReadonlyMap<string, Point> {
  const spots = new Map<string, Point>();
  const { find } = readOwnSpots({ trees, lookup, court, parts: new Map(), problems: [], spots });
  names.forEach(find);
  return spots;
}

function dependsOnPlayers(tree: TreeNode): boolean {
  return tree.$type === 'Player' || childrenOf(tree).some(dependsOnPlayers);
}
