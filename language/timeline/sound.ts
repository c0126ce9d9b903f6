/** What a line says of bodies, brought into bounds: nobody screens for a defender, nobody comes off himself. Any play can be scheduled. */
import type { Action, BodyId, Look } from '../play/play.ts';
import { DEFENCE, OFFENCE } from '../play/play.ts';

const offence: ReadonlySet<string> = new Set(OFFENCE);
const bodies: ReadonlySet<string> = new Set([...OFFENCE, ...DEFENCE]);

export function isOffence(who: BodyId | undefined): who is BodyId {
  return who !== undefined && offence.has(who);
}

/** The actions that somebody on the floor can do; a defender's are cues and move no one here. */
export function soundActions(actions: readonly Action[]): readonly Action[] {
  return actions.filter(({ who }) => bodies.has(who)).map(soundAction);
}

function soundAction(action: Action): Action {
  if (!isOffence(action.who)) return action.kind === 'defend' ? action : cueOf(action);
  if (action.kind === 'screen') return { ...action, users: partnersOf(action, action.users), together: action.together.filter(isOffence) };
  if (action.kind === 'move') return { ...action, off: partnersOf(action, action.off) };
  if (action.kind === 'dribble') return { ...action, off: partnersOf(action, action.off), at: isOffence(action.at) && action.at !== action.who ? action.at : undefined };
  return action;
}

function cueOf({ id, step, line, link, who, verb, waits, origin }: Action): Action {
  return { kind: 'defend', id, step, line, link, who, verb, waits, origin };
}

function partnersOf(action: Action, men: readonly BodyId[]): readonly BodyId[] {
  return men.filter((man) => isOffence(man) && man !== action.who);
}

/** A look for somebody of the five. */
export function soundLook(look: Look): Look | undefined {
  const who = look.who.filter((man) => offence.has(String(man)));
  if (who.length === 0) return undefined;
  const pin = look.pin?.kind === 'off' && !isOffence(look.pin.screener) ? undefined : look.pin;
  return { ...look, who, pin, tail: soundActions(look.tail) };
}
