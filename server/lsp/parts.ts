// Which part of a play stands at a place of its text.
import type { PartId, Places, TextPlace } from '../../language/play/play.ts';

export interface PartPlace {
  readonly part: PartId;
  readonly place: TextPlace;
}

/**
 * The action, look, step or header whose words hold the column, the innermost first; on a line without such words the one that ends
 * nearest before it, else the first. Values belong to their owner. Undefined where nothing of the play stands on the line.
 */
export function partAt(places: Places, line: number, column: number): PartPlace | undefined {
  const here = partsOnLine(places, line);
  const holding = here.filter(({ place }) => place.at <= column && column <= place.to).toSorted((a, b) => length(a) - length(b));
  return holding[0] ?? here.findLast(({ place }) => place.to < column) ?? here[0];
}

/** Parts with words on the line, from left to right. A line (`zip:3`) counts only where nothing else stands on it. */
function partsOnLine(places: Places, line: number): readonly PartPlace[] {
  const found: PartPlace[] = [];
  for (const [part, place] of places) if (place.line === line && place.to > place.at && !part.includes('#')) found.push({ part, place });
  const named = found.filter(({ part }) => !isLine(part));
  return (named.length > 0 ? named : found).toSorted((a, b) => a.place.at - b.place.at || length(a) - length(b));
}

const length = ({ place }: PartPlace): number => place.to - place.at;
const isLine = (part: PartId): boolean => /:\d+$/.test(part) && !part.includes('/');
