// docs/spots.md: every spot drawn on the FIBA court, its words, and where it lies by the other rule sets.
import { courtOf, type Court } from '../../language/court/court.ts';
import { distance, type Point } from '../../language/court/point.ts';
import { ruleSet, ruleSets } from '../../language/court/rule-sets.ts';
import { spotMeaning } from '../../language/court/spot-meanings.ts';
import { allSpots, isThrowInPlace, spotNames, spotPoint, takesExtended, takesSide, type SpotName } from '../../language/court/spots.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { node, round, textNode, type SvgNode } from '../../language/picture/nodes.ts';
import { boxOf, floorPicture, halfCourt, paint, palette, wholeCourt } from './drawing.ts';
import { drawn, type Files } from './files.ts';
import { anchor, code, gallery, page, picture, slug, table } from './markdown.ts';
import { wordsOf } from './railroad.ts';

interface LabelPlace {
  readonly of: 'left' | 'right' | 'middle';
  readonly at: 'left' | 'right' | 'above' | 'above, to the left' | 'below' | 'below, to the right';
}

/** Where a spot's name is written in the picture, seen from its dot: of the spot on this side. Complete by type. */
const labels: Readonly<Record<SpotName, LabelPlace>> = {
  rim: { of: 'middle', at: 'below' },
  lane: { of: 'middle', at: 'below' },
  'lane line': { of: 'left', at: 'left' },
  block: { of: 'left', at: 'left' },
  'low post': { of: 'right', at: 'right' },
  'mid-post': { of: 'right', at: 'right' },
  'high post': { of: 'middle', at: 'below' },
  elbow: { of: 'right', at: 'right' },
  nail: { of: 'middle', at: 'above' },
  'free-throw line': { of: 'left', at: 'above, to the left' },
  'dunker spot': { of: 'left', at: 'above' },
  'short corner': { of: 'right', at: 'below' },
  corner: { of: 'left', at: 'below, to the right' },
  wing: { of: 'left', at: 'left' },
  slot: { of: 'right', at: 'below' },
  top: { of: 'middle', at: 'below' },
  side: { of: 'right', at: 'left' },
  hash: { of: 'right', at: 'left' },
  'half court': { of: 'middle', at: 'above' },
  backcourt: { of: 'middle', at: 'below' },
  'backcourt top': { of: 'middle', at: 'above' },
  'backcourt wing': { of: 'right', at: 'above' },
  'backcourt elbow': { of: 'left', at: 'above' },
  'backcourt block': { of: 'left', at: 'above' },
  'backcourt corner': { of: 'right', at: 'left' },
  'far free-throw line': { of: 'middle', at: 'below' },
  sideline: { of: 'left', at: 'below, to the right' },
  baseline: { of: 'right', at: 'right' },
  'far sideline': { of: 'left', at: 'below, to the right' },
  'far baseline': { of: 'right', at: 'right' },
};

/** A name of the court's that the grammar reads as another spot is told there. */
const spots = spotNames.filter((name) => readAs(name) === name || readAs(name) === undefined);

/** Letters of the half court, cm: on a phone 360 pixels wide they are ten pixels high. */
const PHONE_LETTERS = 50;

/** Only the whole court shows these. */
const farSpots: readonly SpotName[] = ['half court', 'backcourt', 'backcourt top', 'backcourt wing', 'backcourt elbow', 'backcourt block', 'backcourt corner', 'far free-throw line', 'far sideline', 'far baseline'];

export function spotsPage(): Files {
  const fiba = courtOf(ruleSet('fiba'));
  const near = `${drawn}/spots/near.svg`;
  const far = `${drawn}/spots/whole.svg`;
  const others = ruleSets.filter(({ id }) => id !== 'fiba').map((rules) => ({ rules, path: `${drawn}/spots/${rules.id}.svg` }));
  const text = page(
    '# Spots',
    '[Reference](README.md) · [every kind of line](notation.md) · [alignments](alignments.md) · [courts](courts.md)',
    'Left and right are as the offence faces the basket, everywhere on the court. The basket is at the top of each picture. Elbow, block and their neighbours lie just outside the lane, so that nobody who stands there is counted out. Each spot is worked out from the rule set’s own measures, so a corner three is a three on each court.',
    picture(near, 'The spots of the half court by FIBA rules', 760),
    picture(far, 'The spots of the whole court by FIBA rules', 420),
    table(['spot', 'side', 'where', 'read as the same'], spots.map((name) => [`${anchor(slug(name))}${code(name)}`, sideWords(name), spotMeaning[name] + (isThrowInPlace(name) ? ' (a throw-in place)' : ''), synonyms(name).map(code).join(', ')])),
    'A plural, such as `2 and 3 cut to the wings`, sends each to the one on his own side. `ball-side`, `weak-side`, `near`, `far`, `same` and `opposite` stand for left or right and are worked out when the line starts. A place beside a spot is said in feet or metres: `2 ft above left elbow`, or `2 ft above and 3 ft left of left elbow`; your own has a name in quotes: `spot "pocket" is 3 ft inside right elbow`.',
    '## On the other courts',
    'Metres from the floor under the ring: to the right, and towards half court. Of a spot with two sides the right one. **Bold** where it is more than 5 cm from FIBA’s.',
    table(['spot', ...ruleSets.map(({ name }) => name)], spots.map((name) => [code(name), ...ruleSets.map((rules) => measures(courtOf(rules), fiba, name))])),
    gallery(others.map(({ rules: { name }, path }) => ({ name, picture: picture(path, `The spots by ${name} rules`, 240) }))),
  );
  return [
    [near, floorPicture(fiba, 'Spots of the half court, FIBA', nodesOf(fiba, (name) => !farSpots.includes(name), PHONE_LETTERS, 34), boxOf(fiba.boundary.left - 1.4, fiba.boundary.bottom - 1.1, fiba.boundary.right + 1.4, 9.4))],
    [far, floorPicture(fiba, 'Spots of the whole court, FIBA', nodesOf(fiba, (name) => farSpots.includes(name) || name === 'top' || name === 'rim', 62, 62), wholeCourt(fiba), true)],
    ...others.map(({ rules, path }) => {
      const court = courtOf(rules);
      return [path, floorPicture(court, `Spots by ${rules.name} rules`, dotsOf(court, (name) => !farSpots.includes(name), 20), halfCourt(court))] as const;
    }),
    ['spots.md', text],
  ];
}

function sideWords(name: SpotName): string {
  const asked = takesSide(name);
  return `${asked === 'never' ? 'none' : asked === 'needed' ? 'left or right' : 'with or without'}${takesExtended(name) ? ', `extended`' : ''}`;
}

/** Other words the grammar reads as this spot; plurals are told below the table. */
function synonyms(name: SpotName): readonly string[] {
  return wordsOf('SpotName').filter((word) => word !== name && readAs(word) === name);
}

/** The spot that a word for one man is read as; `undefined` where it is read otherwise, or for several men. */
function readAs(word: string): string | undefined {
  const { tree } = parseLine(`3 cuts to left ${word}`);
  if (tree?.$type !== 'Statement' || tree.first.action.$type !== 'Move') return undefined;
  const to = tree.first.action.parts.find((part) => part.$type === 'To');
  const spot = to?.$type === 'To' ? to.spots[0] : undefined;
  return spot?.$type === 'Place' && !spot.each ? spot.name : undefined;
}

function measures(court: Court, fiba: Court, name: SpotName): string {
  const at = pointOf(court, name);
  const text = `${at.x.toFixed(2)}, ${at.y.toFixed(2)}`;
  return distance(at, pointOf(fiba, name)) > 0.05 ? `**${text}**` : text;
}

function pointOf(court: Court, name: SpotName): Point {
  return spotPoint(court, name, takesSide(name) === 'needed' ? 'right' : undefined) ?? court.ring;
}

function dotsOf(court: Court, wanted: (name: SpotName) => boolean, size: number): readonly SvgNode[] {
  return allSpots(court).filter(({ name }) => spots.includes(name) && wanted(name)).map(({ name, side, point }) => {
    const plain = side === undefined || takesSide(name) === 'needed';
    return node('circle', { cx: round(point.x * 100), cy: round(point.y * 100), r: size * (plain ? 0.42 : 0.28), fill: isThrowInPlace(name) ? palette.problem : palette.offence });
  });
}

function nodesOf(court: Court, wanted: (name: SpotName) => boolean, size: number, dots: number): readonly SvgNode[] {
  const names = spots.filter(wanted).map((name) => {
    const { of, at } = labels[name];
    const point = spotPoint(court, name, of === 'middle' ? undefined : of) ?? court.ring;
    const [dx, dy, side] = { left: [-0.7, 0.33, 'end'] as const, right: [0.7, 0.33, 'start'] as const, above: [0, -0.65, 'middle'] as const, 'above, to the left': [0.2, -0.65, 'end'] as const, below: [0, 1.25, 'middle'] as const, 'below, to the right': [-0.3, 1.3, 'start'] as const }[at];
    return textNode(name, { ...paint['printed-number'], 'font-size': size, 'font-weight': 600, 'stroke-width': size * 0.2, dy: 0, 'text-anchor': side, x: round(point.x * 100 + dx * size), y: round(point.y * 100 + dy * size) });
  });
  return [...dotsOf(court, wanted, dots), ...names];
}
