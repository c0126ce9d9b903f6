// Where the play starts: the `from` line, the ball, a throw-in.
import type { Block } from '../book/book.ts';
import type { FromTree, NodeOf, SpotTree } from '../grammar/tree.ts';
import type { Alignment } from '../court/alignments.ts';
import { alignment, alignmentPlaces, placePoint, stackAlongLaneLine } from '../court/alignments.ts';
import type { Point } from '../court/point.ts';
import { commit } from '../court/point.ts';
import { isSpotName, isThrowInPlace, outsideCourt, spotPoint, takesSide } from '../court/spots.ts';
import { baseForm } from './read-waits.ts';
import { mirrorPlace } from './mirror-place.ts';
import type { BodyId, Origin, Place, PlayerNumber, Start, Value } from './play.ts';
import { usualSide } from './places.ts';
import { metresOf, readPlace, setApart } from './read-places.ts';
import type { Reader } from './reader.ts';
import { bodiesOf, isOffence, numberOf, putGap, putPart, report } from './reader.ts';
import { openScope, subjectsOf } from './scope.ts';

/** Where five stand who were given no alignment: spaced round the perimeter. Common practice, no source. */
const defaultAlignment = '5-out';

/** An alignment that mirrors one that mirrors another, and so on: a longer chain is told as the circle it might be. */
const longestChain = 40;

const players: readonly PlayerNumber[] = [1, 2, 3, 4, 5];

export interface StartLines {
  readonly from?: { readonly tree: FromTree; readonly line: number };
  readonly ball?: { readonly tree: NodeOf<'BallWith'>; readonly line: number };
  /** The first throw-in or `is the thrower` line of the play, if it is the first step's. */
  readonly throwIn?: { readonly tree: NodeOf<'ThrowIn'> | NodeOf<'Role'>; readonly by: BodyId; readonly line: number };
  readonly situation: readonly string[];
  readonly alreadySet: boolean;
}

export function readStart(reader: Reader, lines: StartLines, gap: number): Start {
  const throwIn = readThrowIn(reader, lines);
  const set = readFrom(reader, lines, throwIn, gap);
  const ball = readBall(reader, lines, set, throwIn?.by.value, gap);
  const places = throwIn === undefined ? set.places : { ...set.places, [throwIn.by.value]: { value: throwIn.from.value, origin: throwIn.from.origin } };
  const dead = throwIn !== undefined || lines.situation.some(part => /throw-in|time-out|free throw|jump ball/.test(part));
  return { alignment: set.alignment, places, ball, ...(throwIn === undefined ? {} : { throwIn }), alreadySet: lines.alreadySet, dead };
}

// ---- the throw-in -------------------------------------------------------------------------------------------------

function readThrowIn(reader: Reader, lines: StartLines): Start['throwIn'] {
  if (lines.throwIn === undefined) return readHolderOutside(reader, lines);
  if (!isOffence(lines.throwIn.by)) return undefined;
  const { tree, line, by } = lines.throwIn;
  putPart(reader, 'throw-in', line, tree);
  // Behind the receiver `at` is where he takes it.
  const receiver = tree.parts.findIndex(part => part?.$type === 'PassTo');
  const from = tree.parts.find(part => part?.$type === 'FromSpot') ?? tree.parts.find((part, index) => part?.$type === 'At' && (receiver < 0 || index < receiver));
  const spot: SpotTree | undefined = from?.$type === 'FromSpot' ? from.spot : from?.$type === 'At' ? from.spots[0] : undefined;
  const outside = spot === undefined ? standsOutside(reader, lines, numberOf(by), true) : undefined;
  const place = spot === undefined ? outside?.place : readPlace(reader, spot, { part: 'throw-in', him: [by] });
  if (spot !== undefined) putPart(reader, 'throw-in#from', line, spot);
  else if (outside !== undefined) putPart(reader, 'throw-in#from', outside.line, outside.spot);
  else putGap(reader, 'throw-in#from', line, tree.to);
  const stands = place === undefined ? usualThrowIn(lines.situation) : withSide(outOfBounds(reader, place, by), by);
  return { by: { value: numberOf(by), origin: 'written' }, from: { value: stands, origin: place === undefined ? 'default' : 'written' }, side: sideOf(stands) };
}

/** Where one throws in of whom no line says it: what the game is like tells the line. */
function usualThrowIn(situation: readonly string[]): Place {
  if (situation.some(part => part.startsWith('backcourt'))) return { kind: 'spot', name: 'far baseline' };
  return { kind: 'spot', name: situation.some(part => part.startsWith('sideline')) ? 'sideline' : 'baseline', side: 'left' };
}

/** `from 3 at left sideline, … ball with 3`: who has the ball behind the line throws it in, whatever the verb of his pass. */
function readHolderOutside(reader: Reader, lines: StartLines): Start['throwIn'] {
  const { from, ball } = lines;
  const inFrom = from?.tree.changes.find(change => change?.$type === 'BallWith' || (change?.$type === 'Placing' && change.withBall));
  const holder = ball?.tree.player ?? (inFrom?.$type === 'BallWith' ? inFrom.player : inFrom?.$type === 'Placing' && inFrom.subject?.$type === 'Players' ? inFrom.subject.players[0] : undefined);
  const by = holder === undefined ? 1 : holder.defence ? undefined : holder.number;
  const outside = by === undefined ? undefined : standsOutside(reader, lines, by as PlayerNumber, false);
  if (by === undefined || outside === undefined) return undefined;
  putPart(reader, 'throw-in', outside.line, outside.spot);
  putPart(reader, 'throw-in#from', outside.line, outside.spot);
  return { by: { value: by as PlayerNumber, origin: 'derived' }, from: { value: withSide(outside.place, `${by}` as BodyId), origin: 'written' }, side: sideOf(outside.place) };
}

/** The place behind a line that the `from` line gives this man; of one who throws in, also the floor beside it. */
function standsOutside(reader: Reader, { from }: StartLines, by: PlayerNumber, throws: boolean): { readonly place: Place; readonly spot: SpotTree; readonly line: number } | undefined {
  for (const change of from?.tree.changes ?? []) {
    if (change?.$type !== 'Placing' || change.subject?.$type !== 'Players') continue;
    const [man, ...others] = change.subject.players;
    const [spot] = change.spots;
    if (man?.number !== by || man.defence || others.length > 0 || spot?.$type !== 'Place') continue;
    const place = readPlace(reader, spot, { part: 'throw-in', him: [`${by}` as BodyId] });
    if (place?.kind !== 'spot' || !isSpotName(place.name)) continue;
    if (isThrowInPlace(place.name) || (throws && (place.name === 'side' || place.name === 'hash'))) return { place, spot, line: from!.line };
  }
  return undefined;
}

const belowTheBasket: readonly string[] = ['rim', 'lane', 'block', 'low post', 'dunker spot', 'short corner'];

/** Nobody throws in from the floor: `on the right side of the basket` is behind the baseline there, `from the right side` behind the sideline, `from half court` level with it. */
function outOfBounds(reader: Reader, place: Place, by: BodyId): Place {
  if (place.kind !== 'spot' || !isSpotName(place.name) || isThrowInPlace(place.name)) return place;
  if (belowTheBasket.includes(place.name)) return { ...place, name: 'baseline' };
  const side = place.side === 'left' || place.side === 'right' ? place.side : usualSide(by);
  if (place.name === 'side' || place.name === 'hash') return { kind: 'spot', name: 'sideline', side: place.side ?? side };
  const at = spotPoint(reader.court, place.name, takesSide(place.name) === 'never' ? undefined : side, place.extended);
  if (at === undefined) return place;
  const beyond = reader.court.boundary.right + outsideCourt - Math.abs(at.x);
  return { kind: 'offset', by: Math.ceil(beyond * 10) / 10, direction: side === 'left' ? 'left of' : 'right of', from: { ...place, ...(takesSide(place.name) === 'never' ? {} : { side }) } };
}

function sideOf(place: Place): 'sideline' | 'baseline' {
  if (place.kind === 'offset') return place.from.kind === 'spot' && isSpotName(place.from.name) && isThrowInPlace(place.from.name) ? sideOf(place.from) : 'sideline';
  return place.kind === 'spot' && place.name.includes('sideline') ? 'sideline' : 'baseline';
}

function readBall(reader: Reader, lines: StartLines, set: StartSet, thrower: PlayerNumber | undefined, gap: number): Value<PlayerNumber> {
  const written = lines.ball ?? set.ball;
  const body = written?.tree.player === undefined ? undefined : bodiesOf(reader, [written.tree.player], { part: 'ball', him: [] })[0];
  if (written === undefined || body === undefined || !isOffence(body)) {
    putGap(reader, 'ball', lines.from?.line ?? 0, lines.from === undefined ? gap : lines.from.tree.to);
    return thrower === undefined ? { value: 1, origin: 'default' } : { value: thrower, origin: 'derived' };
  }
  putPart(reader, 'ball', written.line, written.tree);
  const number = numberOf(body);
  if (thrower === undefined || thrower === number) return { value: number, origin: 'written' };
  report(reader, 'ball-not-with-thrower', 'ball', { thrower: `${thrower}`, written: body }, ['throw-in']);
  return { value: thrower, origin: 'derived' };
}

// ---- the `from` line ----------------------------------------------------------------------------------------------

interface StartSet {
  readonly alignment: Value<string | undefined>;
  readonly places: Start['places'];
  readonly ball?: { readonly tree: NodeOf<'BallWith'>; readonly line: number };
}

type Places = Record<PlayerNumber, Value<Place>>;

function readFrom(reader: Reader, lines: StartLines, throwIn: Start['throwIn'], gap: number): StartSet {
  const from = lines.from;
  const thrower = throwIn?.by.value;
  const defaults = namedPlaces(reader, alignment(defaultAlignment), thrower, 'default');
  if (from === undefined) {
    putGap(reader, 'from', 0, gap);
    for (const player of players) putGap(reader, `from#${player}`, 0, gap);
    return { alignment: { value: undefined, origin: 'default' }, places: defaults };
  }
  const { tree, line } = from;
  putPart(reader, 'from', line, tree);
  for (const player of players) putGap(reader, `from#${player}`, line, tree.to);
  const base = tree.base === undefined ? undefined : readBase(reader, tree.base, throwIn, line);
  let places = base?.places ?? defaults;
  let ball = base?.ball;
  const placed = new Set<PlayerNumber>();
  for (const change of tree.changes) {
    if (change === undefined) continue;
    if (change.$type === 'BallWith') ball = { tree: change, line };
    if (change.$type === 'Mirrored') places = mirrored(places);
    if (change.$type === 'Swapped') places = swapped(reader, places, change);
    if (change.$type === 'Placing') {
      ball = withTheBall(change, line) ?? ball;
      places = placedBy(reader, places, change, line, placed);
    }
  }
  // Only a line that lists men one by one can forget one; the thrower stands where he throws from.
  if (tree.base === undefined)
    for (const player of players) if (!placed.has(player) && player !== thrower) report(reader, 'not-placed', 'from', { who: `${player}` });
  return { alignment: base?.alignment ?? { value: undefined, origin: 'derived' }, places, ...(ball === undefined ? {} : { ball }) };
}

/** `1 with the ball at right slot` */
function withTheBall({ withBall, subject, at }: NodeOf<'Placing'>, line: number): StartSet['ball'] {
  const player = withBall && subject?.$type === 'Players' ? subject.players[0] : undefined;
  return player && { tree: { $type: 'BallWith', at, to: player.to, spans: {}, player }, line };
}

function readBase(reader: Reader, tree: NodeOf<'AlignmentRef'>, throwIn: Start['throwIn'], line: number): StartSet | undefined {
  const thrower = throwIn?.by.value;
  const name = tree.own ?? tree.name;
  if (name === undefined) return undefined;
  putPart(reader, 'from#alignment', line, tree);
  const found = tree.own === undefined ? namedBase(reader, name, thrower) : ownBase(reader, tree.own, thrower, []);
  if (found === undefined) {
    report(reader, 'unknown-alignment', 'from#alignment', { name, known: reader.lookup.names('alignment') });
    return undefined;
  }
  const side = sideStoodOn(tree, throwIn);
  // At a throw-in a stack nobody is listed in stands on the right.
  const listed = tree.order.length > 0 ? listedStack(reader, found.places, tree, side) : throwIn !== undefined && side === 'left' && found.alignment.value === 'stack' ? mirrored(found.places) : found.places;
  const places = tree.mirrored ? mirrored(listed) : listed;
  return { ...found, alignment: { value: name, origin: 'written' }, places };
}

function namedBase(reader: Reader, name: string, thrower: PlayerNumber | undefined): StartSet | undefined {
  const entry = alignment(name) ?? alignment(`${name} high`);
  if (entry === undefined) return undefined;
  return { alignment: { value: entry.name, origin: 'written' }, places: namedPlaces(reader, entry, thrower, 'derived') };
}

function namedPlaces(reader: Reader, entry: Alignment | undefined, thrower: PlayerNumber | undefined, origin: Origin): Places {
  const places: Partial<Places> = {};
  if (entry !== undefined) {
    for (const [player, at] of alignmentPlaces(entry, thrower)) {
      const value: Place =
        at.offset === undefined
          ? { kind: 'spot', name: at.spot, ...(at.side === undefined ? {} : { side: at.side }) }
          : { kind: 'point', point: commit(placePoint(reader.court, at)) };
      places[player] = { value, origin };
    }
  }
  return fiveOf(places);
}

function fiveOf(places: Partial<Places>): Places {
  const top: Value<Place> = { value: { kind: 'spot', name: 'top' }, origin: 'default' };
  return { 1: places[1] ?? top, 2: places[2] ?? top, 3: places[3] ?? top, 4: places[4] ?? top, 5: places[5] ?? top };
}

/** The coach's own alignment, from its block; those it mirrors are followed once each. */
function ownBase(reader: Reader, name: string, thrower: PlayerNumber | undefined, on: readonly Block[]): StartSet | undefined {
  const found = reader.lookup.alignment(name);
  if (found === undefined) return undefined;
  if (on.includes(found.block) || on.length >= longestChain) {
    report(reader, 'copy-loop', 'from#alignment', { name });
    return undefined;
  }
  const head = found.block.lines[0]?.parsed.tree;
  const source = head?.$type === 'AlignmentHead' && head.mirrors !== undefined ? ownBase(reader, head.mirrors, thrower, [...on, found.block]) : undefined;
  let places = source === undefined ? namedPlaces(reader, alignment(defaultAlignment), thrower, 'default') : mirrored(source.places);
  const placed = new Set<PlayerNumber>();
  // Its words stand in another block: what they lack is reported there, and the parts have no place here.
  const quiet: Reader = { ...reader, parts: new Map(), problems: [] };
  for (const { parsed } of found.block.lines) {
    if (parsed.fault !== undefined || parsed.tree?.$type !== 'Placing') continue;
    places = placedBy(quiet, places, parsed.tree, 0, placed);
  }
  return { alignment: { value: name, origin: 'written' }, places };
}

function mirrored(places: Places): Places {
  const turned = players.map(player => [player, { ...places[player], value: mirrorPlace(places[player].value) }] as const);
  return Object.fromEntries(turned) as Places;
}

function swapped(reader: Reader, places: Places, change: NodeOf<'Swapped'>): Places {
  const men = bodiesOf(reader, [change.a, change.b].filter(player => player !== undefined), { part: 'from', him: [] });
  const defender = men.find(man => !isOffence(man));
  if (defender !== undefined) {
    report(reader, 'defender-attacks', 'from', { who: defender, verb: 'swapped' });
    return places;
  }
  const [a, b] = men.map(numberOf);
  return a === undefined || b === undefined ? places : { ...places, [a]: places[b], [b]: places[a] };
}

/** `2 and 3 blocks`: each takes one, on his side; `4 and 5 at the nail, 1 m apart`: side by side round the spot. */
function placedBy(reader: Reader, places: Places, tree: NodeOf<'Placing'>, line: number, placed: Set<PlayerNumber>): Places {
  const scope = openScope('from', 'start', { holder: undefined, out: false }, new Set([...placed].map(player => `${player}` as BodyId)));
  const bodies = (tree.subject === undefined ? [] : subjectsOf(reader, tree.subject, scope, { part: 'from', him: [] })).filter(isOffence);
  const next = { ...places };
  const given = sidesOf(bodies);
  for (const [index, body] of bodies.entries()) {
    const spot = tree.spots[Math.min(index, tree.spots.length - 1)];
    const place = spot === undefined ? undefined : readPlace(reader, spot, { part: 'from', him: [body] });
    if (spot === undefined || place === undefined) continue;
    const number = numberOf(body);
    if (placed.has(number)) report(reader, 'duplicate-name', 'from', { kind: 'player', name: body });
    placed.add(number);
    putPart(reader, `from#${number}`, line, spot);
    next[number] = { value: apart(withSide(place, body, given[index]), tree, index, bodies.length), origin: 'written' };
  }
  return next;
}

function apart(place: Place, tree: NodeOf<'Placing'>, index: number, count: number): Place {
  return tree.apart === undefined || tree.spots.length > 1 ? place : setApart(place, metresOf(tree.apart), index, count);
}

/** Where a pair divides: each number's usual side, or first left and second right where both would take the same. */
function sidesOf(bodies: readonly BodyId[]): ('left' | 'right')[] {
  const usual = bodies.map(usualSide);
  return bodies.length === 2 && usual[0] === usual[1] ? ['left', 'right'] : usual;
}

/** At the call nobody is on a side yet: a spot that needs one takes the number's usual side. */
function withSide(place: Place, body: BodyId, side = usualSide(body)): Place {
  if (place.kind === 'offset') return { ...place, from: withSide(place.from, body, side) };
  if (place.kind !== 'spot' || place.side !== undefined || !isSpotName(place.name)) return place;
  return takesSide(place.name) === 'needed' || place.extended ? { ...place, side } : place;
}

/** `on the left side`, `on the ball side` with the thrower there, and away from him `on the weak side`. */
function sideStoodOn({ on }: NodeOf<'AlignmentRef'>, throwIn: Start['throwIn']): 'left' | 'right' {
  if (on?.$type !== 'Place') return 'right';
  const said = on.side ?? on.half ?? '';
  const from = throwIn?.from.value;
  const ball = from?.kind === 'spot' && (from.side === 'left' || from.side === 'right') ? from.side : 'right';
  if (/^(ball|strong|near)/.test(said)) return ball;
  if (/^(weak|far|opposite)/.test(said)) return ball === 'left' ? 'right' : 'left';
  return said.startsWith('left') ? 'left' : 'right';
}

/** `from stack on right lane line: 2, 3, 4, 5 from the baseline up`. */
function listedStack(reader: Reader, places: Places, tree: NodeOf<'AlignmentRef'>, side: 'left' | 'right'): Places {
  const bodies = bodiesOf(reader, tree.order, { part: 'from', him: [] }).filter(isOffence);
  const points: readonly Point[] = stackAlongLaneLine(reader.court, side, bodies.length);
  const upwards = tree.direction === 'from the top down' ? [...bodies].reverse() : bodies;
  const next = { ...places };
  for (const [index, body] of upwards.entries()) {
    const point = points[index];
    if (point !== undefined) next[numberOf(body)] = { value: { kind: 'point', point: commit(point) }, origin: 'written' };
  }
  return next;
}

export function isThrowInVerb(verb: string): boolean {
  return baseForm(verb) === 'inbound';
}
