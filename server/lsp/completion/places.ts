// Where a place is wanted: the floor's spots, near and free first, and the coach's own.
import { message, type Words } from '../../../language/message/message.ts';
import { distance, type Point } from '../../../language/court/point.ts';
import { allSpots, isThrowInPlace, type Spot } from '../../../language/court/spots.ts';
import type { Expected } from '../../../language/grammar/expected.ts';
import type { Choice } from './choice.ts';
import { has, type Line } from './line.ts';

// A man nearer than this to a spot has it. Common practice, no source.
const taken = 0.9;
const sideWord = /(?:^|\s)((?:left|right|near|far|same|opposite|ball[ -]side|weak[ -]side|strong[ -]side)\s+)$/i;
const seldom: ReadonlySet<string> = new Set(['lane', 'lane line', 'side', 'backcourt', 'low post', 'hash', 'half court', 'free-throw line']);
/** Spots that coaches say without a side. */
const inTheMiddle: ReadonlySet<string> = new Set(['rim', 'high post', 'free-throw line']);
const sides = ['ball-side', 'weak-side', 'near', 'far'];

export function isPlaceWord(item: Expected): boolean {
  return item.kind === 'keyword' && (has(item, 'Place') || (has(item, 'PointRef') && (has(item, 'Spot') || has(item, 'SpotName') || has(item, 'Side'))));
}

export function placeChoices(line: Line, items: readonly Expected[]): readonly Choice[] {
  const words = items.filter(isPlaceWord);
  // Of `right dunker` the spot is written already: only its last word is missing.
  const rest = words.filter(({ text, token }) => text !== token).map(({ text, path }): Choice => ({ text, kind: 'place', rank: path.at(-1)?.startsWith('name') === true ? 12 : 120 }));
  const places = words.filter(({ text, token }) => text === token);
  return places.some(({ path }) => path.at(-1)?.startsWith('name') === true || path.at(-1) === 'side>Side') ? [...rest, ...wholePlaces(line, places)] : rest;
}

function wholePlaces(line: Line, places: readonly Expected[]): readonly Choice[] {
  // Behind a side that is written already the whole spot is offered, from the side on.
  const side = sideWord.exec(line.prefix.slice(0, line.expected.from))?.[1];
  const from = side === undefined ? line.expected.from : line.expected.from - side.length;
  // `inbounds from`: `at` leads to where it is caught.
  const throwIn = places.some(({ path }) => path.some((rule, at) => rule.endsWith('ThrowInPart') && path[at + 1]?.startsWith('spot>') === true));
  const spots = allSpots(line.standing.court).filter(({ name }) => isThrowInPlace(name) === throwIn);
  const rank = places.some((item) => item.path[0] === 'Placing' || has(item, 'From')) ? rankOfStart(line) : (spot: Spot) => rankOf(line, spot);
  const choices = spots.map((spot): Choice => ({ text: spot.label, kind: 'place', rank: rank(spot), from, ...detailOf(line, spot.point) }));
  const loose = side === undefined ? sides.map((word, at): Choice => ({ text: word, kind: 'place', rank: 95 + at, more: true })) : [];
  const own = line.standing.ownSpots.map(({ name, point }): Choice => ({ text: `"${name}"`, kind: 'place', rank: 20 + farFrom(line, point), from, ...detailOf(line, point) }));
  return [...choices, ...loose, ...(side === undefined ? own : [])];
}

/** Where men stand at the call, the usual ones first. */
const usualStarts = ['top', 'wing', 'corner', 'elbow', 'block', 'slot', 'high post', 'nail', 'mid-post', 'short corner', 'dunker spot', 'half court'];

/** Where nobody acts yet: the spots that are written already last. */
function rankOfStart({ prefix, block, at }: Line): (spot: Spot) => number {
  const written = [prefix, ...(block.kind === 'alignment' ? block.lines.map(({ parsed }, line) => (line === at ? '' : parsed.text)) : [])].join('\n').toLowerCase();
  return ({ name, side, label }) => {
    const usual = usualStarts.indexOf(name);
    const isOne = usual >= 0 && (side === undefined || !inTheMiddle.has(name));
    return 10 + (isOne ? usual + (side === 'right' ? 0.5 : 0) : 30) + (written.includes(label) ? 40 : 0);
  };
}

function rankOf(line: Line, { point, name, side }: Spot): number {
  const rare = seldom.has(name) || name.startsWith('far') || (side !== undefined && inTheMiddle.has(name)) ? 20 : 0;
  return 10 + farFrom(line, point) + rare + (standingAt(line, point) === undefined ? 0 : 15);
}

function farFrom({ standing, actors }: Line, point: Point): number {
  const from = actors[0] === undefined ? undefined : standing.where[actors[0]];
  if (from === undefined) return Math.min(9, Math.abs(point.y) / 2);
  const metres = distance(from, point);
  // Where he is already he need not go.
  return metres < taken ? 40 : Math.min(30, metres);
}

function standingAt({ standing, actors }: Line, point: Point): string | undefined {
  return Object.entries(standing.where).find(([body, at]) => !body.startsWith('X') && !actors.includes(body as never) && distance(at, point) < taken)?.[0];
}

function detailOf(line: Line, point: Point): { readonly detail?: Words } {
  const { standing, actors } = line;
  const from = actors[0] === undefined ? undefined : standing.where[actors[0]];
  const who = standingAt(line, point);
  const away = from && distance(from, point) >= taken ? `${distance(from, point).toFixed(1)} m` : undefined;
  if (who === undefined) return away === undefined ? {} : { detail: away };
  return { detail: away === undefined ? message('{who} is there', { who }) : message('{away}, {who} is there', { away, who }) };
}
