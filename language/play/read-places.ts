import type { LengthNode, NodeOf, PlaceNode, SideWord, SpotTree } from '../grammar/tree.ts';
import { isSpotName, takesSide } from '../court/spots.ts';
import type { BodyId, Direction, Place, Side } from './play.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodyOf, report, wordsWritten } from './reader.ts';

/** Metres in a foot. */
export const foot = 0.3048;
/** An arm's length: how far `beside` and `in front of` a man is. Common practice, no source. */
export const armLength = 0.9;

/** The place a coach's words name, or `undefined` (and a problem) where they name none. */
export function readPlace(reader: Reader, tree: SpotTree, meaning: Meaning): Place | undefined {
  switch (tree.$type) {
    case 'Place':
      return readSpot(reader, tree, meaning);
    case 'Between': {
      const a = readPointRef(reader, tree.a, meaning);
      const b = readPointRef(reader, tree.b, meaning);
      return a === undefined || b === undefined ? undefined : { kind: 'between', a, b };
    }
    case 'NextTo':
      return readNextTo(reader, tree, meaning);
    case 'Offset': {
      const from = readPointRef(reader, tree.from, meaning);
      if (from === undefined) return undefined;
      const named: Place = typeof from === 'string' ? { kind: 'player', who: from } : from;
      // `2 ft above and 3 ft left of left elbow`: first aside, then up.
      const place: Place = tree.alsoBy === undefined || tree.also === undefined ? named : { kind: 'offset', by: metresOf(tree.alsoBy), direction: tree.also as Direction, from: named };
      return { kind: 'offset', by: metresOf(tree.by), direction: tree.direction as Direction, from: place };
    }
    case 'Coordinates': {
      const scale = tree.unit === 'ft' ? foot : 1;
      return { kind: 'point', point: { x: wholeMillimetres(tree.x * scale), y: wholeMillimetres(tree.y * scale) } };
    }
    default:
      return undefined;
  }
}

/** `4 and 5 at the nail, 1 m apart`: side by side round the spot, in the order named from left to right. */
export function setApart(place: Place, gap: number, index: number, count: number): Place {
  const by = gap * (index - (count - 1) / 2);
  if (by === 0 || count < 2) return place;
  return { kind: 'offset', by: Math.abs(by), direction: by < 0 ? 'left of' : 'right of', from: place };
}

export function metresOf(length: LengthNode): number {
  return wholeMillimetres(length.metres);
}

function wholeMillimetres(metres: number): number {
  return Number.isFinite(metres) ? Math.round(metres * 1000) / 1000 + 0 : 0;
}

function readNextTo(reader: Reader, tree: NodeOf<'NextTo'>, meaning: Meaning): Place | undefined {
  const who = tree.player === undefined ? undefined : bodyOf(reader, tree.player, meaning);
  if (who === undefined) return undefined;
  if (tree.how === 'in front of') return { kind: 'offset', by: armLength, direction: 'in front of', from: { kind: 'player', who } };
  return { kind: tree.how, who };
}

export function readPointRef(reader: Reader, tree: NodeOf<'Offset'>['from'] | undefined, meaning: Meaning): Place | BodyId | undefined {
  if (tree === undefined) return undefined;
  if (tree.$type === 'PointOfPlayer') return bodyOf(reader, tree.player, meaning);
  return readSpot(reader, tree, meaning);
}

const sides: Readonly<Record<SideWord, Side>> = {
  left: 'left', right: 'right', middle: 'middle', 'ball-side': 'ball', 'strong-side': 'ball', 'weak-side': 'weak', near: 'near', far: 'far', same: 'near', opposite: 'far',
};
const halves: Readonly<Record<NonNullable<PlaceNode['half']>, Side>> = {
  'left side': 'left', 'right side': 'right', 'ball-side': 'ball', 'strong-side': 'ball', 'weak-side': 'weak', 'near side': 'near', 'far side': 'far',
};

function readSpot(reader: Reader, tree: PlaceNode, meaning: Meaning): Place | undefined {
  if (tree.own !== undefined) return readOwnSpot(reader, tree.own, meaning);
  if (tree.half !== undefined) return { kind: 'spot', name: 'side', side: halves[tree.half] };
  const extended = tree.extended || tree.name === 'free-throw line extended';
  const name = tree.name === 'free-throw line extended' ? 'free-throw line' : tree.name;
  if (name === undefined || !isSpotName(name)) return undefined;
  const side = tree.side === undefined ? undefined : sides[tree.side];
  if (name === 'half court' && /^(over|across|past)\b/i.test(wordsWritten(reader, tree, meaning))) return { kind: 'spot', name, where: 'over' };
  const inTheOpenFloor = openFloorSpot(reader, tree, name, side, meaning);
  if (inTheOpenFloor !== undefined) return inTheOpenFloor;
  if (side !== undefined && side !== 'middle' && takesSide(name) === 'never') {
    report(reader, 'spot-without-side', meaning.part, { name, side: tree.side! });
    return { kind: 'spot', name };
  }
  return { kind: 'spot', name, ...(side === undefined ? {} : { side }), ...(extended ? { extended } : {}) };
}

/** Against a press `the middle` is that of the floor, while the ball is in the backcourt, and `the right lane` the strip a man runs in. Common usage, no source. */
function openFloorSpot(reader: Reader, tree: PlaceNode, name: string, side: Side | undefined, meaning: Meaning): Place | undefined {
  if ((name !== 'nail' && (name !== 'lane' || side === undefined)) || !isAgainstPress(reader)) return undefined;
  const words = wordsWritten(reader, tree, meaning);
  if (name === 'nail') return /middle/i.test(words) ? { kind: 'spot', name, where: 'open floor' } : undefined;
  return /lane$/i.test(words) ? { kind: 'spot', name: 'wing', ...(side === undefined ? {} : { side }) } : undefined;
}

export function isAgainstPress({ lines }: Reader): boolean {
  return lines.some(({ tree }) => (tree?.$type === 'Against' && tree.press) || (tree?.$type === 'Situation' && tree.parts.some(part => part?.$type === 'Circumstance' && /press|backcourt/.test(part.what))));
}

/** `on the left side`: where he is, if he is on that half of the floor. */
export function onThatHalf(place: Place): Place {
  return place.kind === 'spot' && place.name === 'side' ? { ...place, where: 'half' } : place;
}

function readOwnSpot(reader: Reader, name: string, meaning: Meaning): Place | undefined {
  const key = reader.spots.find(name);
  if (key !== undefined) return { kind: 'own', name: key };
  report(reader, 'unknown-spot', meaning.part, { name });
  return undefined;
}
