// Where a drive or a cut that says no place ends, once it is known what its man does next.
import { lineNumber } from './line-number.ts';
import type { Action, ActionId, BodyId, Dribble, Look, Move, Place } from './play.ts';

/** A drive without a place of its own, and where it could end short of the rim. */
export interface OpenEnd {
  /** The floor its direction names: `drives left` goes by the left elbow. */
  readonly short?: Place;
}

/**
 * `1 drives left`, then `1 stops at the left elbow`: he does not go to the rim first. A direction ends where it names the floor, a drive
 * without one where his next line goes; so does a drive with a direction out of which he is to shoot a jumper. Common usage, no source.
 */
export function endShort(actions: readonly Action[], looks: readonly Look[], openEnds: ReadonlyMap<ActionId, OpenEnd>): Action[] {
  return actions.map((action, index) => {
    if (action.kind === 'move') return comesForTheBall(action, actions.slice(index + 1));
    const open = openEnds.get(action.id);
    if (open === undefined || action.kind !== 'dribble') return action;
    const next = actions.slice(index + 1).find(({ who }) => who === action.who);
    const place = goalOf(next);
    if (place !== undefined && next!.kind === 'dribble' && (open.short !== undefined || goesThereAtOnce(next!)) && !isLookedFor(looks, action, next!.line)) return shortened(action, open, place);
    return open.short !== undefined && shootsFromThere(next, looks, action.who) ? shortened(action, open, open.short) : action;
  });
}

/** `1 cuts off 4`, then `4 hands off to 1`: he comes to 4 for it, and not by way of the rim. Common usage, no source. */
function comesForTheBall(action: Move, later: readonly Action[]): Move {
  const [giver] = action.off;
  if (giver === undefined || action.off.length > 1 || action.via.length > 0 || (action.to !== undefined && action.to.origin !== 'default')) return action;
  const concerns = (man: BodyId, other: Action): boolean => (other.kind === 'hand-off' || other.kind === 'pass') && other.to === man;
  // Who gets the ball only then screens for him.
  const next = later.find((other) => other.who === action.who || concerns(action.who, other) || concerns(giver, other));
  if (next?.kind !== 'hand-off' || next.who !== giver || next.to !== action.who) return action;
  return { ...action, off: [], to: { value: { kind: 'beside', who: giver }, origin: 'derived' } };
}

/** A direction has the floor it names among its corners. */
function shortened(action: Dribble, { short }: OpenEnd, place: Place): Dribble {
  if (short === undefined) return { ...action, to: { value: place, origin: 'derived' } };
  return { ...action, via: action.via.filter((corner) => corner !== short), to: { value: short, origin: 'written' } };
}

/** The written place of his next line, if it is not the rim. */
function goalOf(next: Action | undefined): Place | undefined {
  if (next === undefined || (next.kind !== 'move' && next.kind !== 'dribble') || next.to === undefined || next.to.origin === 'default') return undefined;
  const { value } = next.to;
  return value.kind === 'spot' && value.name === 'rim' ? undefined : value;
}

/** `1 drives off 4`, `1 stops at the elbow`; in `1 dribbles back out to the top` he has been at the rim. */
function goesThereAtOnce(next: Action): boolean {
  return next.origin === 'derived' || next.verb === 'drive';
}

/** Between the two lines he is looked for at the rim: there he goes on to it. */
function isLookedFor(looks: readonly Look[], { who, line }: Dribble, until: string): boolean {
  return looks.some((look) => isHis(look, who) && lineNumber(look.line) > lineNumber(line) && lineNumber(look.line) < lineNumber(until));
}

/** Nothing more of his stands in the step, or the shot itself, and the first shot he is looked for is no layup. */
function shootsFromThere(next: Action | undefined, looks: readonly Look[], who: BodyId): boolean {
  if (next?.kind === 'shot') return isFromOutside(next);
  if (next !== undefined) return false;
  const his = looks.filter((look) => isHis(look, who));
  return his.length > 0 && his.every(({ tail }) => {
    const first = tail[0];
    return first !== undefined && first.who === who && isFromOutside(first);
  });
}

function isHis({ who }: Look, man: BodyId): boolean {
  return `${who[0]}` === man;
}

function isFromOutside(action: Action): boolean {
  return action.kind === 'shot' && action.from === undefined && (action.shot.value === 'jumper' || action.shot.value === 'three');
}
