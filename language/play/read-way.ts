// Where a clause sends its man: places, screeners to come off, directions without a spot.
import type { Columns, NodeOf, SpotTree } from '../grammar/tree.ts';
import type { Action, BodyId, Place, Value, Wait } from './play.ts';
import type { One } from './read-clause.ts';
import { asList, baseOf, isHolder, meaningOf, putValue, take } from './read-clause.ts';
import { isAgainstPress, metresOf, onThatHalf, readPlace, readPointRef, setApart } from './read-places.ts';
import { isSpotName, takesSide } from '../court/spots.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodiesOf, bodyOf, report, wordsWritten } from './reader.ts';
import type { Scope } from './scope.ts';

export type Part = NodeOf<'Move'>['parts'][number] | NodeOf<'Dribble'>['parts'][number] | NodeOf<'Seal'>['parts'][number];

export interface Going {
  readonly to?: Value<Place>;
  readonly via: readonly Place[];
  readonly off: readonly BodyId[];
}

/** What the verb makes of a way. */
interface Manner {
  /** Of the baseline: the way along it to the other corner, or to the rim. */
  readonly baseline: 'along' | 'to the rim' | 'as written';
  /** Where nothing else is said he ends there. */
  readonly toTheRim: boolean;
  /** Left and right lead to the rim, or to that side of the floor. */
  readonly sideways: 'to the rim' | 'to the wing';
}

const asWritten: Manner = { baseline: 'as written', toTheRim: false, sideways: 'to the wing' };

/** A way as far as its words are read. */
interface WaySoFar extends Manner {
  readonly one: One;
  readonly id: string;
  readonly meaning: Meaning;
  readonly parts: readonly Part[];
  readonly via: Place[];
  readonly off: BodyId[];
  end?: End;
}

/** Where a clause sends its man: `to`, `via`, `off` and the directions without a spot. */
export function goingOf(one: One, id: string, parts: readonly Part[], manner: Manner = asWritten): Going {
  const way: WaySoFar = { one, id, meaning: meaningOf(one, id), parts, ...manner, via: [], off: [] };
  for (const part of parts) if (part !== undefined) readPart(way, part);
  const { via, off, end } = way;
  putValue(one, `${id}#to`, end?.columns);
  if (end?.short !== undefined) one.scope.openEnds.set(id, { short: end.short });
  return { via, off, ...(end === undefined ? {} : { to: { value: end.place, origin: end.origin } }) };
}

function readPart(way: WaySoFar, part: NonNullable<Part>): void {
  const { one, meaning, via, off } = way;
  switch (part.$type) {
    case 'To':
      if (part.ball) goTo(way, part, ballPlace(one), part, { origin: 'derived' });
      else if (isGapInTheZone(way, part)) take(one, part);
      else goTo(way, part, ...onTheSideSaid(way, placeOfSubject(one, part.spots, meaning, part.either)));
      // Through the lane under the ring and out again; common practice, no source.
      if (part.how === 'through to') via.push(rim);
      break;
    case 'Towards':
      goTo(way, part, towards(way, part));
      break;
    case 'At':
      // `replaces 3 on the left hash`: the place says where that is.
      if (way.end?.part.$type === 'For') delete way.end;
      goTo(way, part, ...onHalves(placeOfSubject(one, part.spots, meaning, false, part.apart)));
      break;
    case 'Via':
      take(one, part);
      for (const spot of spotsOfSubject(one, part.spots)) via.push(...asList(readPlace(one.reader, spot, meaning)));
      break;
    case 'Off':
      take(one, part);
      off.push(...(part.screen && part.players.length === 0 ? screenersOf(one, part, way.id) : screenersNamed(way, part)));
      break;
    case 'Past':
      goPast(way, part);
      break;
    case 'Through':
      goThrough(way, part);
      break;
    case 'For': {
      // `2 and 3 fill for 4 and 5`: each for one.
      const player = part.players[one.clause.subjects.length > 1 ? Math.min(one.index, part.players.length - 1) : 0];
      const who = player && bodyOf(one.reader, take(one, player), meaning);
      if (who !== undefined) goTo(way, part, { kind: 'player', who });
      break;
    }
    case 'Heading':
      goHeading(way, part);
      break;
    default:
      break;
  }
}

/** The way ends here, by the words read so far. */
function goTo(way: WaySoFar, part: NonNullable<Part>, place: Place | undefined, columns: Columns = part, how: Pick<End, 'origin' | 'weak' | 'short'> = { origin: 'written' }): void {
  if (place === undefined) return;
  const { one, via, end } = way;
  // `cuts baseline to right corner`: the place says where the way ends, the direction how it goes there.
  const weak = end?.weak === true || how.weak === true;
  // `cuts to left wing, to right corner`: by way of the first to the last.
  const onwards = end?.part.$type === 'To' && part.$type === 'To';
  if (end !== undefined && !weak && !onwards) return;
  take(one, part);
  if (end !== undefined && how.weak) return;
  if (end !== undefined && onwards) via.splice(end.viaBefore, 0, end.place);
  // `goes left to the left elbow`: which way and where to are one.
  if (weak && isSamePlace(via.at(-1), place)) via.pop();
  way.end = { place, columns, part, viaBefore: via.length, ...how };
}

function isSamePlace(one: Place | undefined, other: Place): boolean {
  return one?.kind === 'spot' && other.kind === 'spot' && one.name === other.name && one.side === other.side;
}

/** `1.5 m toward the top`, `two steps toward the ball`. */
function towards({ one, meaning }: WaySoFar, { by, ball, from }: NodeOf<'Towards'>): Place | undefined {
  const { holder } = one.scope.ball;
  const read = ball ? holder : from && readPointRef(one.reader, from, meaning);
  if (read === undefined || read === one.who) return undefined;
  return { kind: 'offset', by: metresOf(by), direction: 'toward', from: typeof read === 'string' ? { kind: 'player', who: read } : read };
}

function goPast(way: WaySoFar, part: NodeOf<'Past'>): void {
  const { one, via, off } = way;
  take(one, part);
  for (const who of bodiesOf(one.reader, part.players, way.meaning)) {
    if (part.how === 'over' || (part.how === 'around' && (one.scope.screens.has(who) || way.parts.length === 1))) off.push(who);
    else if (part.how === 'behind') goBehind(way, part, who);
    else via.push({ kind: 'beside', who });
  }
}

/**
 * Behind a man who screens one comes off him; behind a defender one is on the way to the basket; `to the slot behind 1` says once more where
 * the slot is; where no place is said he stands behind him. Else the way leads round behind him. Common usage, no source.
 */
function goBehind(way: WaySoFar, part: NodeOf<'Past'>, who: BodyId): void {
  const { one, via, off, parts, toTheRim } = way;
  const hasPlace = parts.some(each => each?.$type === 'To' || each?.$type === 'At');
  if (who.startsWith('X')) {
    if (!hasPlace && !toTheRim) goTo(way, part, { kind: 'behind', who });
    return;
  }
  const screen = one.scope.screens.get(who);
  // `lifts to the top behind 5`: behind the place a screener is come off only where the screen is for him.
  if (screen !== undefined && (way.end === undefined || screen.users.includes(one.who))) off.push(who);
  else if (way.end !== undefined) return;
  else if (hasPlace || toTheRim) via.push({ kind: 'behind', who });
  else goTo(way, part, { kind: 'behind', who });
}

function goThrough({ one, meaning, via, off }: WaySoFar, part: NodeOf<'Through'>): void {
  take(one, part);
  const { reader, scope: { pair } } = one;
  // `through the gate`: between the two told of last.
  if (part.gate && pair.length !== 2) report(reader, 'who-is-meant', meaning.part, { word: 'the gate' });
  const [a, b] = part.gate ? pair : [part.a, part.b].map(player => player && bodyOf(reader, player, meaning));
  if (a === undefined || b === undefined) return;
  via.push({ kind: 'between', a, b });
  // Two who screen for him, or together, are the gate he goes through; two who merely stand are only passed.
  if ([a, b].every(who => one.scope.screens.get(who) !== undefined)) off.push(a, b);
}

function goHeading(way: WaySoFar, part: NodeOf<'Heading'>): void {
  const heading = headingOf(part.way, way);
  if (heading === undefined) return;
  take(way.one, part);
  // Against a press it is up that of the floor, with the ball behind half court; after that to the rim.
  if (part.way === 'up the middle' && isAgainstPress(way.one.reader)) return goTo(way, part, { kind: 'spot', name: 'rim', where: 'open floor' }, part, { origin: 'written', weak: true });
  way.via.push(...heading.via);
  goTo(way, part, heading.to, part, { origin: 'written', weak: true, ...(heading.to === rim && heading.via.length > 0 ? { short: heading.via.at(-1)! } : {}) });
}

/** `into the hole at the right slot`: of a man without the ball the gap in the zone, and where it is the other place says. */
function isGapInTheZone({ one, parts, meaning }: WaySoFar, part: NodeOf<'To'>): boolean {
  const others = parts.some(each => each !== part && (each?.$type === 'At' || each?.$type === 'To'));
  return others && !isHolder(one) && part.spots.some(spot => spot !== undefined && /\bhole$/i.test(wordsWritten(one.reader, spot, meaning)));
}

/** `up the left side over half court` */
function onTheSideSaid({ end }: WaySoFar, [place, columns]: readonly [Place | undefined, Columns]): [Place | undefined, Columns] {
  const side = end?.weak && end.place.kind === 'spot' ? end.place.side : undefined;
  return [place?.kind === 'spot' && place.where === 'over' && (side === 'left' || side === 'right') ? { ...place, side } : place, columns];
}

function onHalves([place, columns]: readonly [Place | undefined, Columns]): [Place | undefined, Columns] {
  return [place && onThatHalf(place), columns];
}

/** Where the clause ends by the words read so far. */
interface End {
  readonly place: Place;
  readonly columns: Columns;
  readonly origin: 'written' | 'derived';
  /** A direction’s own end, which any written place takes over, and the floor it names on the way there. */
  readonly weak?: boolean;
  readonly short?: Place;
  readonly part: Part;
  readonly viaBefore: number;
}

export const rim: Place = { kind: 'spot', name: 'rim' };

/** A direction without a spot ends at the rim, by way of the floor it names; along the baseline one runs behind the ring to the other corner. Common practice, no source. */
const headings: Readonly<Record<string, { readonly via: readonly Place[]; readonly to?: Place }>> = {
  baseline: { via: [{ kind: 'spot', name: 'short corner' }], to: rim },
  middle: { via: [{ kind: 'spot', name: 'nail' }], to: rim },
  'up the middle': { via: [{ kind: 'spot', name: 'nail' }], to: rim },
  'down the middle': { via: [{ kind: 'spot', name: 'nail' }], to: rim },
  'through the middle': { via: [{ kind: 'spot', name: 'nail' }], to: rim },
  left: { via: [{ kind: 'spot', name: 'elbow', side: 'left' }], to: rim },
  right: { via: [{ kind: 'spot', name: 'elbow', side: 'right' }], to: rim },
  'down the left side': { via: [], to: { kind: 'spot', name: 'wing', side: 'left' } },
  'down the right side': { via: [], to: { kind: 'spot', name: 'wing', side: 'right' } },
  'up the left side': { via: [], to: { kind: 'spot', name: 'wing', side: 'left' } },
  'up the right side': { via: [], to: { kind: 'spot', name: 'wing', side: 'right' } },
  'down the side': { via: [], to: { kind: 'spot', name: 'wing' } },
  'up the side': { via: [], to: { kind: 'spot', name: 'wing' } },
  'left side': { via: [], to: { kind: 'spot', name: 'wing', side: 'left' } },
  'right side': { via: [], to: { kind: 'spot', name: 'wing', side: 'right' } },
  through: { via: [{ kind: 'spot', name: 'lane' }] },
  'up the lane': { via: [], to: { kind: 'spot', name: 'nail' } },
  'down the lane': { via: [{ kind: 'spot', name: 'nail' }], to: rim },
  'along the baseline': { via: [{ kind: 'spot', name: 'dunker spot' }], to: { kind: 'spot', name: 'corner', side: 'far' } },
  'across the lane': { via: [], to: { kind: 'spot', name: 'block', side: 'far' } },
  'through the lane': { via: [{ kind: 'spot', name: 'lane' }] },
};

function headingOf(said: string, { baseline, sideways, parts }: WaySoFar): (typeof headings)[string] | undefined {
  // `1 dribbles left`, `2 goes right`: to that side. Who drives, or comes off somebody, turns to the rim.
  if ((said === 'left' || said === 'right') && sideways === 'to the wing' && !parts.some(part => part?.$type === 'Off' || part?.$type === 'Past' || part?.$type === 'Through')) return headings[`${said} side`];
  if (baseline === 'as written' || !said.endsWith('baseline')) return headings[said];
  return headings[baseline === 'along' ? 'along the baseline' : 'baseline'];
}

/** Metres between a thrower and a man who comes to the ball. Common practice, no source. */
export const roomToThrow = 3;

function ballPlace(one: One): Place | undefined {
  const { holder } = one.scope.ball;
  if (holder === undefined || holder === one.who) return undefined;
  // To a thrower nobody comes nearer than he can throw: he needs room to step in.
  return one.scope.ball.out ? { kind: 'offset', by: roomToThrow, direction: 'in front of', from: { kind: 'player', who: holder } } : { kind: 'beside', who: holder };
}

/** Of several places joined by `and` each subject takes one; of those joined by `or` he has the choice. */
export function placeOfSubject(one: One, spots: readonly (SpotTree | undefined)[], meaning: Meaning, either: boolean, apart?: NodeOf<'At'>['apart']): [Place | undefined, Columns] {
  const { reader, clause, index } = one;
  const written = spots.filter(spot => spot !== undefined);
  if (either && written.length > 1) {
    for (const spot of written) take(one, spot);
    const options = written.flatMap(spot => asList(readPlace(reader, spot, meaning)));
    const columns = { at: written[0]!.at, to: written[written.length - 1]!.to };
    return [options.length > 1 ? { kind: 'either', options } : options[0], columns];
  }
  const spot = written[clause.subjects.length > 1 ? Math.min(index, written.length - 1) : 0];
  if (spot === undefined) return [undefined, { at: one.end, to: one.end }];
  take(one, spot);
  const place = readPlace(reader, spot, meaning);
  if (place === undefined || written.length > 1 || clause.subjects.length < 2) return [place, spot];
  return [apart === undefined ? shared(place, clause.subjects) : setApart(place, metresOf(apart), index, clause.subjects.length), spot];
}

/** `2 and 3 cut via left elbow and right elbow`: each by his own; one man by all of them. */
function spotsOfSubject(one: One, spots: readonly (SpotTree | undefined)[]): readonly SpotTree[] {
  const written = spots.filter(spot => spot !== undefined);
  const own = one.clause.subjects.length > 1 && written.length === one.clause.subjects.length ? [written[one.index]!] : written;
  return own.map(spot => take(one, spot));
}

/** `2 and 3 to the wings`: which of the two is whose is known once they start. */
function shared(place: Place, among: readonly BodyId[]): Place {
  if (place.kind !== 'spot' || place.side !== undefined || !isSpotName(place.name)) return place;
  return takesSide(place.name) === 'needed' || place.extended ? { ...place, among } : place;
}

/** `off the screen`: whose screen for him was read last. */
export function latestScreener(reader: Reader, scope: Scope, user: BodyId, part: string): BodyId | undefined {
  const screens = [...scope.screens.values()];
  // `5 screens the ball`: that is for who has it.
  const last = screens.findLast(screen => screen.users.includes(user)) ?? (scope.ball.holder === user ? screens.findLast(screen => screen.style === 'ball' && screen.users.length === 0) : undefined);
  if (last === undefined) report(reader, 'who-is-meant', part, { word: 'the screen' });
  return last?.who;
}

/** `off the screen`, `off the stagger`: of several who screen for him together all, where the word means them all. */
function screenersOf(one: One, off: Columns, part: string): readonly BodyId[] {
  const screen = one.reader.lines[one.clause.line.index]?.text.slice(off.at, off.to) ?? '';
  // Off a hand-off he has the ball from nobody screens; they stand shoulder to shoulder.
  if (/hand-? ?off$/i.test(screen) && (one.scope.handOffs.has(one.who) || isHolder(one))) return [];
  const passedTo = /hip|shoulder|tail/i.test(screen) ? lastPassOf(one) : undefined;
  if (passedTo !== undefined) return [passedTo];
  const last = latestScreener(one.reader, one.scope, one.who, part);
  if (last === undefined || !/stagger|double|screens$|picks$/i.test(screen)) return asList(last);
  return one.scope.screens.get(last)?.together ?? [last];
}

/** `3 uses them`, `3 cuts off both of them`: nobody comes off himself. They are those who screen for him, or the two told of last. */
function screenersNamed({ one, meaning }: WaySoFar, { players }: NodeOf<'Off'>): readonly BodyId[] {
  const named = bodiesOf(one.reader, players, meaning);
  if (players.length !== 1 || players[0]?.pronoun !== 'them' || !named.includes(one.who)) return named;
  const { screens, pair } = one.scope;
  const last = [...screens.values()].findLast(({ users }) => users.includes(one.who));
  return last?.together ?? pair.filter(who => who !== one.who);
}

/** `3 hits 4 and cuts off her hip`: off the man he has just passed to. */
function lastPassOf({ scope: { acts }, who }: One): BodyId | undefined {
  const last = acts.findLast(action => action.who === who);
  return last?.kind === 'pass' ? last.to : undefined;
}

/** `holds at left wing`, `hands off at the top`: he goes there first, with the ball if he has it. Of its own words the line has only the place. */
export function goThere(one: One, spots: NodeOf<'At'>, waits: (wait: Wait) => boolean): Action[] {
  const base = baseOf(one, isHolder(one) ? 'dribble' : 'move');
  const [place, columns] = onHalves(placeOfSubject(one, spots.spots, meaningOf(one, base.id), false, spots.apart));
  if (place === undefined) return [];
  const there = inBounds(one, place);
  putValue(one, `${base.id}#to`, columns);
  take(one, spots);
  const go = { ...base, waits: base.waits.filter(waits), origin: 'derived' as const, to: { value: there, origin: 'written' as const }, via: [], off: [] };
  return [isHolder(one) ? { ...go, kind: 'dribble', style: 'dribble' } : { ...go, kind: 'move', style: 'straight', pace: 'set' }];
}

/** `waits on the baseline` is said of one who stands before it; behind it stands only the thrower. */
function inBounds(one: One, place: Place): Place {
  return place.kind === 'spot' && place.name === 'baseline' && !(one.scope.ball.out && isHolder(one)) ? { ...place, name: 'short corner' } : place;
}
