// Where a move goes when its line says no place. All of it common practice, no source.
import type { Point } from '../court/point.ts';
import { commit, distance } from '../court/point.ts';
import type { BodyId, Dribble, Move, MoveStyle, Place } from './play.ts';
import type { Situation } from './places.ts';
import { nearestTo, pointTowards, resolvePlace } from './places.ts';
import { armLength } from './read-places.ts';

const rim: Place = { kind: 'spot', name: 'rim' };

export const placeOfStyle: Readonly<Partial<Record<MoveStyle, Place>>> = {
  cut: rim, curl: rim, 'back-cut': rim, roll: rim, slip: rim, dive: rim,
  fade: { kind: 'spot', name: 'corner' },
  drift: { kind: 'spot', name: 'corner' },
  flash: { kind: 'spot', name: 'elbow', side: 'ball' },
  'l-cut': { kind: 'spot', name: 'wing' },
  'post-up': { kind: 'spot', name: 'block' },
  lift: { kind: 'spot', name: 'wing' },
  clear: { kind: 'spot', name: 'corner', side: 'weak' },
};

/** Spots where a man stands apart from the others, behind the arc. */
const spacing: readonly Place[] = (['corner', 'wing', 'slot'] as const).flatMap(name => (['left', 'right'] as const).map((side): Place => ({ kind: 'spot', name, side })));
const top: Place = { kind: 'spot', name: 'top' };
const perimeter: readonly Place[] = [...spacing, top];
const acrossTheTop: readonly Place[] = [top, { kind: 'spot', name: 'slot', side: 'far' }, { kind: 'spot', name: 'slot', side: 'near' }];

/** Who stands lower than a spot by no more than this stands there, in metres: the top is no farther above a slot on a small court. */
const handsBreadths = 0.2;

/** A spot is open where nobody stands nearer than this, in metres. */
const openWithin = 1.5;

/**
 * Where a move or a dribble ends from here: its written place, or the verb's own end. A pop goes straight out behind the arc, a fill and a
 * spacing man to the nearest open spot, a lift to the next spot up the arc, a shallow cut across the top, a flash towards the ball; who only jogs or seals stays.
 */
export function endOf(action: Move | Dribble, situation: Situation): Point {
  if (action.to !== undefined) return resolvePlace(action.to.value, situation);
  const here = situation.positions[action.who] ?? { x: 0, y: 0 };
  if (action.kind === 'dribble') return action.at === undefined ? here : commit(anArmShortOf(situation, action.at, here));
  if (action.style === 'lift' || (action.verb === 'straight-cut' && action.off.length > 0)) return nextUpTheArc(here, situation);
  if (action.verb === 'straight-cut') return resolvePlace(rim, situation);
  if (action.verb === 'shallow-cut') return resolvePlace(openSpots(situation, action.who, true, acrossTheTop)[0]!, situation);
  if (action.style === 'flash') return flashTo(here, situation);
  const place = placeOfStyle[action.style];
  if (place !== undefined) return resolvePlace(place, situation);
  if (action.style === 'pop' || action.style === 'step-out') return nearest(perimeter, here, situation);
  if (action.style === 'fill' || action.style === 'space') return nearest(openSpots(situation, action.who, action.style === 'fill'), here, situation);
  if (action.style === 'step-in') return commit(insideLines(here, situation));
  return here;
}

function anArmShortOf(situation: Situation, at: BodyId, here: Point): Point {
  const man = situation.positions[at];
  if (man === undefined) return here;
  return distance(man, here) <= armLength ? here : pointTowards(man, here, armLength);
}

/** From the corner to the wing, from there to the slot, from there to the top. */
function nextUpTheArc(here: Point, situation: Situation): Point {
  const up = (['wing', 'slot', 'top'] as const).map(name => resolvePlace({ kind: 'spot', name }, situation));
  return up.find(({ y }) => y > here.y + handsBreadths) ?? here;
}

/** To the ball-side elbow; who stands there, or finds a man there, to the open place in front of him that is nearest to the ball. */
function flashTo(here: Point, situation: Situation): Point {
  const elbow = placeOfStyle.flash!;
  const places = [elbow, { kind: 'spot', name: 'nail' } as const, { kind: 'spot', name: 'mid-post', side: 'ball' } as const];
  const open = openSpots(situation, situation.who, true, places);
  if (open.includes(elbow) || open === places) return resolvePlace(elbow, situation);
  const ball = typeof situation.ball === 'string' ? situation.positions[situation.ball] : situation.ball;
  return nearest(open, ball ?? here, situation);
}

function openSpots(situation: Situation, who: BodyId, another: boolean, places = perimeter): readonly Place[] {
  const others = Object.entries(situation.positions).filter(([body]) => body !== who && body.length === 1);
  const here = situation.positions[who];
  const open = places.filter(place => others.every(([, point]) => point === undefined || distance(point, resolvePlace(place, situation)) >= openWithin));
  // The open spot that he fills is another than his own, where there is another.
  const elsewhere = open.filter(place => !another || here === undefined || distance(here, resolvePlace(place, situation)) >= openWithin);
  return elsewhere.length > 0 ? elsewhere : open.length > 0 ? open : places;
}

function nearest(places: readonly Place[], here: Point, situation: Situation): Point {
  return nearestTo(here, places.map(place => resolvePlace(place, situation)), situation) ?? here;
}

/** The nearest place on the court with both feet inside, half a metre from the line. */
function insideLines(here: Point, situation: Situation): Point {
  const { left, right, bottom, top } = situation.court.boundary;
  const room = 0.5;
  return { x: Math.min(right - room, Math.max(left + room, here.x)), y: Math.min(top - room, Math.max(bottom + room, here.y)) };
}

/** A screen's place by rule 7 where no words give one: an arm from its user on the line to the rim, where a man guarding him stands. */
export function screenPlace(user: Point, situation: Situation): Point {
  const { ring } = situation.court;
  return commit(pointTowards(user, ring, Math.min(armLength, distance(user, ring) / 2)));
}

