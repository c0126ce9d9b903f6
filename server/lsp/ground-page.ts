// A page about a spot or an alignment that every play knows: what going to its definition opens.
import { alignment, alignmentPoints, playerNumbers } from '../../language/court/alignments.ts';
import { courtOf, type Court } from '../../language/court/court.ts';
import { distance, type Point } from '../../language/court/point.ts';
import { ruleSet, ruleSets } from '../../language/court/rule-sets.ts';
import { spotMeaning } from '../../language/court/spot-meanings.ts';
import { isSpotName, isThrowInPlace, spotPoint, takesSide, type Side, type SpotName } from '../../language/court/spots.ts';
import { sayRoughly } from '../../language/words/say-place.ts';
import type { BodyId } from '../../language/play/play.ts';
import { floorDrawing } from './small-drawing.ts';

interface NamedSpot {
  readonly name: SpotName;
  readonly side: Extract<Side, 'left' | 'right'> | undefined;
  readonly extended: boolean;
}

/** The spot of a key as `groundNamed` makes it. A side that the game decides is none yet. */
function spotOf(key: string): NamedSpot | undefined {
  const [, words, extended] = /^spot (.+?)( extended)?$/.exec(key) ?? [];
  if (words === undefined) return undefined;
  // `far baseline` is a name of its own, `far wing` a wing.
  const [, side, name = words] = isSpotName(words) ? [] : (/^(\S+) (.+)$/.exec(words) ?? []);
  return isSpotName(name) ? { name, side: side === 'left' || side === 'right' ? side : undefined, extended: extended !== undefined } : undefined;
}

export const hasGroundPage = (key: string): boolean => spotOf(key) !== undefined || (key.startsWith('alignment ') && alignment(key.slice('alignment '.length)) !== undefined);

/** As Markdown, words before the picture; undefined for a key of nothing on the floor. */
export function groundPage(key: string): string | undefined {
  const spot = spotOf(key);
  if (spot !== undefined) return spotPage(spot);
  return key.startsWith('alignment ') && hasGroundPage(key) ? alignmentPage(key.slice('alignment '.length)) : undefined;
}

function spotPage({ name, side, extended }: NamedSpot): string {
  const sides = side !== undefined ? [side] : takesSide(name) === 'needed' || extended ? (['left', 'right'] as const) : [undefined];
  const shown = sides.at(-1);
  const pointOn = (court: Court, on: Side | undefined): Point => spotPoint(court, name, on, extended) ?? court.ring;
  const row = (id: (typeof ruleSets)[number]['id']): string => {
    const court = courtOf(ruleSet(id));
    const at = pointOn(court, shown);
    return `| ${ruleSet(id).name} | ${Math.abs(at.x).toFixed(2)} | ${at.y.toFixed(2)} | ${distance(at, court.ring).toFixed(2)} |`;
  };
  const court = courtOf(ruleSet('fiba'));
  const standing = Object.fromEntries(sides.map((on, nth) => [`${nth + 1}`, pointOn(court, on)]));
  const title = `${side === undefined ? '' : `${side} `}${name}${extended ? ' extended' : ''}`;
  const meaning = extended ? 'level with the free-throw line, out behind the arc' : spotMeaning[name];
  return [
    `# ${title}`,
    `${meaning[0]!.toUpperCase()}${meaning.slice(1)}${isThrowInPlace(name) ? ' (a throw-in place)' : ''}. Common practice, no source.`,
    `Left and right are as the offence faces the basket. Metres from the floor under the ring${sides.length > 1 ? ', of the right one' : ''}:`,
    [`| rules | to the ${shown ?? 'right'} | towards half court | from the ring |`, '| --- | --- | --- | --- |', ...ruleSets.map(({ id }) => row(id))].join('\n'),
    picture(court, standing, title),
  ].join('\n\n') + '\n';
}

function alignmentPage(name: string): string {
  const court = courtOf(ruleSet('fiba'));
  const points = alignmentPoints(court, name)!;
  return [
    `# ${name}`,
    'Everybody’s place at the call, with a live ball. Common practice, no source.',
    playerNumbers.map((player) => `- ${player}: ${sayRoughly(court, points.get(player)!)}`).join('\n'),
    `Changes stand behind a comma: \`from ${name}, 2 and 3 swapped\`.`,
    picture(court, Object.fromEntries(points), name),
  ].join('\n\n') + '\n';
}

function picture(court: Court, where: Readonly<Partial<Record<BodyId, Point>>>, title: string): string {
  // A page shows a picture in its own size.
  return floorDrawing(court, { where }, title, 'light').map((image) => image.replace(/\|width=\d+\)$/, ')')).join('');
}
