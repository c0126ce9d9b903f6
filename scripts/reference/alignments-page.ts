// docs/alignments.md: who stands where in each named alignment.
import { alignment, alignmentNames, alignmentPlaces, placePoint, playerNumbers, type AlignmentPlace, type PlayerNumber } from '../../language/court/alignments.ts';
import { courtOf, type Court } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { spotPoint, speakSpot } from '../../language/court/spots.ts';
import { node, round, textNode, type SvgNode } from '../../language/picture/nodes.ts';
import { floorPicture, halfCourt, paint, palette } from './drawing.ts';
import { drawn, type Files } from './files.ts';
import { anchor, code, page, picture, slug, table } from './markdown.ts';

/** Metres beside the lines in which a thrower is seen whole, in every picture of the page so that all floors have one size. */
const THROWER_ROOM = 1.1;

export function alignmentsPage(): Files {
  const court = courtOf(ruleSet('fiba'));
  const files: (readonly [string, string])[] = [];
  const entries = alignmentNames.map((name) => {
    const one = alignment(name)!;
    const forms = one.throwIn === undefined ? [undefined] : ([undefined, 3] as const);
    const pictures = forms.map((thrower) => {
      const path = `${drawn}/alignments/${slug(name)}${thrower === undefined ? '' : '-throw-in'}.svg`;
      const title = thrower === undefined ? `from ${name}` : `from ${name}, ${thrower} throws in`;
      files.push([path, floorPicture(court, title, nodesOf(court, alignmentPlaces(one, thrower), thrower), halfCourt(court, 9.6, THROWER_ROOM))]);
      return picture(path, title, 300);
    });
    const places = playerNumbers.map((player) => sayPlace(one.places[player]));
    const four = one.throwIn === undefined ? '' : `\n\nOn a throw-in the other four, in the order of their numbers: ${one.throwIn.map(sayPlace).join(', ')}.`;
    return `${anchor(slug(name))}\n\n### ${code(name)}\n\n${pictures.join(' ')}\n\n${table(['1', '2', '3', '4', '5'], [places])}${four}`;
  });
  const text = page(
    '# Alignments',
    '[Reference](README.md) · [every kind of line](notation.md#from) · [spots](spots.md)',
    'What stands behind `from`. Numbers and places are common practice, no source: where a pair divides, 2 and 4 take the right, 3 and 5 the left, unless drawn otherwise. The ball is with 1. On a throw-in the thrower leaves his place; where a form for the other four is drawn as well, they take its places in the order of their numbers, else each keeps his own.',
    '`from horns, mirrored` swaps left and right; `from horns, 2 and 3 swapped, 4 at left corner` changes some places; `from 1 top, 2 and 3 wings, 4 and 5 blocks` names them all; `from stack on right lane line: 2, 3, 4, 5 from the baseline up` lists a stack. One of your own is a block: [alignment](notation.md#alignment).',
    'The pictures are by FIBA measures; on other courts the same [spots](spots.md#on-the-other-courts) lie where that court has them.',
    alignmentNames.map((name) => `[${name}](#${slug(name)})`).join(' · '),
    ...entries,
  );
  return [...files, ['alignments.md', text]];
}

function sayPlace({ spot, side, offset }: AlignmentPlace): string {
  const from = speakSpot(spot, side);
  if (offset === undefined) return from;
  const parts = [
    ...(offset.y === 0 ? [] : [`${Math.abs(offset.y).toFixed(2)} m ${offset.y > 0 ? 'above' : 'below'}`]),
    ...(offset.x === 0 ? [] : [`${Math.abs(offset.x).toFixed(2)} m to the ${offset.x > 0 ? 'right' : 'left'} of`]),
  ];
  return parts.length === 0 ? from : `${parts.join(' and ')} ${from}`;
}

function nodesOf(court: Court, places: ReadonlyMap<PlayerNumber, AlignmentPlace>, thrower: PlayerNumber | undefined): readonly SvgNode[] {
  const out = thrower === undefined ? [] : [[thrower, spotPoint(court, 'sideline', 'left')!] as const];
  return [...[...places].map(([player, place]) => [player, placePoint(court, place)] as const), ...out].map(([player, at]) => {
    const holds = player === (thrower ?? 1);
    return node('g', { transform: `translate(${round(at.x * 100)} ${round(at.y * 100)})` }, ...(holds ? [node('circle', { r: 46, ...paint.carrier, fill: palette.floor })] : []), textNode(String(player), paint['printed-number']));
  });
}
