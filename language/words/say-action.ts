// An action in a coach's words: a line that could stand in the play.
import type { Action, BodyId, Move, Pass, PassKind, Place, Screen, ShotKind } from '../play/play.ts';
import { otherNumber } from '../grammar/verbs.ts';
import { roomToThrow } from '../play/read-way.ts';
import { sayList } from './say-list.ts';
import { sayWrittenPlace } from './say-written-place.ts';
import { thirdPerson } from './verbs.ts';

/** `5 screens down for 3`, `3 cuts off 5 to top`, `1 passes to 3`. */
export function sayAction(action: Action): string {
  return `${action.who} ${sayDeed(action)}`;
}

/** The same of several: `4 and 5 close behind 2`. */
export function sayOfSeveral(men: readonly BodyId[], action: Action): string {
  return `${sayList(men)} ${inPlural(sayDeed(action))}`;
}

/** A deed of one man as one of several: `screens down for 3` → `screen down for 3`. A verb that has no other number stays. */
export function inPlural(deed: string): string {
  // The longest verb it begins with.
  for (let end = deed.length; end > 0; end = deed.lastIndexOf(' ', end - 1)) {
    const other = otherNumber.get(deed.slice(0, end));
    if (other !== undefined) return `${other}${deed.slice(end)}`;
  }
  return deed;
}

/** The same without its man: `screens down for 3`. */
export function sayDeed(action: Action): string {
  switch (action.kind) {
    case 'move':
      if (action.verb === 'safety') return joined('is the safety', action.to && `at ${sayWrittenPlace(action.to.value)}`);
      if (action.verb === 'close-behind') return joined('closes behind', ...action.waits.flatMap((wait) => ('event' in wait && wait.event.does === 'reach' ? [wait.event.who] : [])).slice(-1));
      // Where they go the verb says.
      if (action.verb === 'crash' || action.verb === 'get-back') return thirdPerson(action.verb);
      return joined(thirdPerson(action.verb), action.on, sayOff(action.off), sayVia(action.via), action.to && (action.on === undefined || action.to.origin !== 'derived') && (comesToTheBall(action.to) ? 'to the ball' : takesPlace.has(action.verb) ? sayGoal(action.to.value).replace(/^to /, 'at ') : sayGoal(action.to.value)));
    case 'dribble':
      if (action.style === 'keep') return 'keeps his dribble';
      return joined(thirdPerson(action.verb), action.at && `at ${action.at}`, sayOff(action.off), sayVia(action.via), action.to && sayGoal(action.to.value));
    case 'pass':
      return joined(sayPassVerb(action), action.way, `to ${action.to}`, action.at && `at ${sayWrittenPlace(action.at.value)}`, action.early && 'early');
    case 'hand-off':
      return `hands off to ${action.to}`;
    case 'screen':
      if (action.verb === 'close-behind') return joined('closes behind', action.users[0] ?? 'him');
      return joined(sayScreenVerb(action), action.users.length > 0 && `for ${sayList(action.users)}`, action.on && `on ${action.on}`, action.at && `at ${sayWrittenPlace(action.at.value)}`);
    case 'shot':
      return joined(sayShots([action.shot.value, ...action.or]), action.from && `from ${sayWrittenPlace(action.from.value)}`);
    case 'hold':
      if (action.verb === 'safety') return 'is the safety';
      return joined(thirdPerson(action.verb), action.on && (action.verb === 'box-out' ? action.on : `with ${action.on}`), action.seconds !== undefined && `for ${action.seconds} s`);
    case 'defend':
      return joined(thirdPerson(action.verb), action.on && joined(towardsHim[action.verb], action.on), action.to && `${action.verb === 'help' ? 'at' : 'to'} ${sayWrittenPlace(action.to.value)}`);
  }
}

/** What a defender’s verb takes before the man; the others take him as he is. */
const towardsHim: Readonly<Record<string, string>> = { switch: 'to', show: 'on', help: 'on', recover: 'to', rotate: 'to', 'close-out': 'on', jump: 'to' };

const passVerbs: Readonly<Record<Exclude<PassKind, 'pass'>, string>> = {
  bounce: 'bounce-passes', lob: 'lobs', skip: 'skips', overhead: 'throws overhead', baseball: 'throws a baseball pass', tip: 'tips',
};

function sayPassVerb(action: Pass): string {
  // Derived entry passes of a look carry the kind, written ones their verb: swings, kicks out, inbounds.
  return action.pass.value === 'pass' ? thirdPerson(action.verb) : passVerbs[action.pass.value];
}

const shots: Readonly<Record<ShotKind, string>> = {
  layup: 'lays it up', dunk: 'dunks', jumper: 'shoots a jumper', three: 'shoots a three', hook: 'shoots a hook', 'tip-in': 'tips in', shot: 'shoots',
};

/** `shoots a three or a jumper` */
function sayShots(kinds: readonly ShotKind[]): string {
  const said = kinds.map((kind) => shots[kind]);
  const alike = said.every((words) => words.startsWith('shoots a '));
  return said.map((words, index) => (alike && index > 0 ? words.replace('shoots ', '') : words)).join(' or ');
}

/** Verbs that a way may stand behind; `down-screens` says its own. */
const takesAWay: ReadonlySet<string> = new Set(['screen', 'stagger-screen', 'double-screen']);

function sayScreenVerb({ verb, style }: Screen): string {
  const way = takesAWay.has(verb) && ['down', 'up', 'across', 'away'].includes(style) ? ` ${style}` : '';
  return `${thirdPerson(verb)}${way}`;
}

function sayOff(off: readonly BodyId[]): string | undefined {
  return off.length === 0 ? undefined : `off ${off.join(' then ')}`;
}

/** Verbs of a man who takes his place there. */
const takesPlace: ReadonlySet<string> = new Set(['seal', 'post-up', 'spot-up']);

function sayVia(via: readonly Place[]): string | undefined {
  const over = via.some(isOver);
  const others = via.filter((place) => !isOver(place));
  return over || others.length > 0 ? joined(over && 'over half court', others.length > 0 && `via ${others.map(sayWrittenPlace).join(' and ')}`) : undefined;
}

/** `moves toward the ball` before a throw-in: where that ends is worked out, and a place so many metres in front of the thrower helps nobody. */
function comesToTheBall({ value, origin }: NonNullable<Move['to']>): boolean {
  return origin !== 'written' && value.kind === 'offset' && value.by === roomToThrow && value.direction === 'in front of' && value.from.kind === 'player';
}

const isOver = (place: Place): boolean => place.kind === 'spot' && place.where === 'over' && place.side === undefined;

/** Where a way ends: `to left wing`; a man's place is filled for him. */
function sayGoal(place: Place): string {
  if (place.kind === 'spot' && place.where === 'half') return `on ${sayWrittenPlace(place)}`;
  if (isOver(place)) return 'over half court';
  // So far from where he stands: `1.5 m toward left corner`.
  if (place.kind === 'offset' && place.direction === 'toward') return sayWrittenPlace(place);
  return place.kind === 'player' ? `for ${place.who}` : `to ${sayWrittenPlace(place)}`;
}

function joined(...words: readonly (string | false | undefined)[]): string {
  return words.filter((word) => word).join(' ');
}
