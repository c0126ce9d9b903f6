// A play's data with other places, other men or another step: what copies are made of.
import type { Action, ActionId, BodyId, EventRef, Look, LookPin, Place, StepKey, Value, Wait } from './play.ts';

/** How a copy differs from its source. */
export interface Change {
  readonly place: (place: Place) => Place;
  readonly body: (body: BodyId) => BodyId;
  /** The step the copy stands in, from the source's. */
  readonly step: (key: StepKey) => StepKey;
}

/** Origin `copied`: the words of a copy stand in its source. */
export function changeAction<A extends Action>(action: A, change: Change): A {
  const { body } = change;
  const value = (written: Value<Place>): Value<Place> => ({ value: changePlace(written.value, change), origin: 'copied' });
  const bodies = (list: readonly BodyId[]): readonly BodyId[] => list.map(body);
  const next: Record<string, unknown> = {
    ...action,
    id: changeId(action.id, change),
    step: change.step(action.step),
    line: changeOwner(action.line, ':', change),
    who: body(action.who),
    // What only follows from the text follows from its copy too.
    origin: action.origin === 'derived' ? 'derived' : 'copied',
    waits: action.waits.map(wait => changeWait(wait, change)),
  };
  if (action.repeats !== undefined) next['repeats'] = changeId(action.repeats, change);
  switch (action.kind) {
    case 'move':
    case 'dribble':
      next['via'] = action.via.map(each => changePlace(each, change));
      next['off'] = bodies(action.off);
      if (action.to !== undefined) next['to'] = value(action.to);
      if (action.kind === 'dribble' && action.at !== undefined) next['at'] = body(action.at);
      if (action.kind === 'move' && action.on !== undefined) next['on'] = body(action.on);
      break;
    case 'pass':
      next['to'] = body(action.to);
      if (action.at !== undefined) next['at'] = value(action.at);
      break;
    case 'hand-off':
      next['to'] = body(action.to);
      break;
    case 'screen':
      next['users'] = bodies(action.users);
      next['together'] = bodies(action.together);
      if (action.on !== undefined) next['on'] = body(action.on);
      if (action.at !== undefined) next['at'] = value(action.at);
      break;
    case 'shot':
      if (action.from !== undefined) next['from'] = value(action.from);
      break;
    case 'hold':
      if (action.on !== undefined) next['on'] = body(action.on);
      break;
    case 'defend':
      if (action.on !== undefined) next['on'] = body(action.on);
      if (action.to !== undefined) next['to'] = value(action.to);
      break;
    default:
      break;
  }
  return next as unknown as A;
}

export function changeLook(look: Look, change: Change): Look {
  const who = look.who.map(number => Number(change.body(`${number}` as BodyId)) as Look['who'][number]);
  const id = changeId(look.id, change);
  const pin = look.pin === undefined ? undefined : changePin(look.pin, change);
  return {
    ...look,
    id,
    step: change.step(look.step),
    line: changeOwner(look.line, ':', change),
    who,
    ...(pin === undefined ? {} : { pin }),
    tail: look.tail.map(action => changeAction(action, change)),
    rebounds: look.rebounds.map(rebound => ({
      ...rebound, part: changeId(rebound.part, change), within: id, crash: rebound.crash.map(number => numberFor(number, change)), back: rebound.back.map(number => numberFor(number, change)),
    })),
  };
}

function numberFor(number: Look['who'][number], change: Change): Look['who'][number] {
  return Number(change.body(`${number}` as BodyId)) as Look['who'][number];
}

function changePin(pin: LookPin, change: Change): LookPin {
  if (pin.kind === 'place') return { ...pin, place: changePlace(pin.place, change) };
  if (pin.kind === 'as') return { ...pin, event: changeEvent(pin.event, change) };
  return pin.kind === 'off' ? { ...pin, screener: change.body(pin.screener) } : pin;
}

function changeWait(wait: Wait, change: Change): Wait {
  const part = changeId(wait.part, change);
  return 'event' in wait ? { ...wait, part, event: changeEvent(wait.event, change) } : { ...wait, part };
}

export function changeEvent(event: EventRef, change: Change): EventRef {
  return {
    ...event,
    who: change.body(event.who),
    ...(event.place === undefined ? {} : { place: changePlace(event.place, change) }),
    ...(event.other === undefined ? {} : { other: change.body(event.other) }),
  };
}

export function changePlace(place: Place, change: Change): Place {
  return withBodies(change.place(place), change.body);
}

function withBodies(place: Place, body: Change['body']): Place {
  switch (place.kind) {
    case 'spot':
      return place.among === undefined ? place : { ...place, among: place.among.map(body) };
    case 'beside': case 'behind': case 'player':
      return { ...place, who: body(place.who) };
    case 'offset':
      return { ...place, from: withBodies(place.from, body) };
    case 'between':
      return { ...place, a: endWith(place.a, body), b: endWith(place.b, body) };
    case 'either':
      return { ...place, options: place.options.map(each => withBodies(each, body)) };
    default:
      return place;
  }
}

function endWith(end: Place | BodyId, body: Change['body']): Place | BodyId {
  return typeof end === 'string' ? body(end) : withBodies(end, body);
}

/** `zip/3.1#to` in another step and for another man: `zip~2/4.1#to`. A look's id holds two men: `zip?3.1/2.1`. */
export function changeId(id: ActionId, change: Change): ActionId {
  const match = /^([^/?#:]+(?:#\d+)?)((?:[/?]X?[1-5]\.\d+)*)(.*)$/su.exec(id);
  if (match === null) return id;
  const [, step = '', men = '', rest = ''] = match;
  return change.step(step) + men.replace(/([/?])(X?[1-5])(?=\.)/g, (_, sign: string, body: string) => sign + change.body(body as BodyId)) + rest;
}

function changeOwner(key: string, sign: string, change: Change): string {
  const at = key.lastIndexOf(sign);
  return at < 0 ? key : change.step(key.slice(0, at)) + key.slice(at);
}
