// What a man does without the ball.
import type { NodeOf } from '../grammar/tree.ts';
import type { Action, BodyId, Hold, Move, MoveStyle, Pace, Place, Wait } from './play.ts';
import type { One } from './read-clause.ts';
import { baseOf, meaningOf, partOf, putValue, take } from './read-clause.ts';
import type { Part } from './read-way.ts';
import { isSpotName, takesSide } from '../court/spots.ts';
import { placeOfStyle } from './default-ends.ts';
import { armLength } from './read-places.ts';
import { goThere, goingOf, rim } from './read-way.ts';
import { baseForm } from './read-waits.ts';
import { bodyOf, isOffence, report } from './reader.ts';

const moveStyles: Readonly<Record<string, MoveStyle>> = {
  cut: 'cut', 'basket-cut': 'cut', 'back-cut': 'back-cut', 'v-cut': 'v-cut', 'l-cut': 'l-cut', 'shallow-cut': 'cut', 'straight-cut': 'straight', curl: 'curl', fade: 'fade',
  flash: 'flash', roll: 'roll', pop: 'pop', slip: 'slip', dive: 'dive', 'post-up': 'post-up', lift: 'lift', drift: 'drift', fill: 'fill', 'step-out': 'step-out', 'step-in': 'step-in',
  clear: 'clear', space: 'space', 'spot-up': 'space', seal: 'seal',
};
const paces: Readonly<Record<string, Pace>> = { sprint: 'sprint', run: 'set', jog: 'jog', walk: 'walk', crash: 'sprint', 'get-back': 'sprint' };

export function readMove(one: One, tree: NodeOf<'Move'>): Move {
  const verb = baseForm(tree.verb);
  if (verb === 'same-cut') return sameCut(one, tree);
  if (verb === 'come-off') return readMove(one, { ...tree, verb: 'cuts' });
  for (const part of tree.parts) if (part?.$type === 'BeforeScreen' || part?.$type === 'OpenSpot') take(one, part);
  const beforeScreen = tree.parts.some(part => part?.$type === 'BeforeScreen');
  const openSpot = tree.parts.some(part => part?.$type === 'OpenSpot');
  const move = moveOf(one, tree.verb, openSpot ? 'fill' : (moveStyles[verb] ?? 'straight'), { parts: tree.parts.filter(part => part.$type !== 'SwapWith') });
  return beforeScreen ? { ...move, beforeScreen: true } : move;
}

function moveOf(one: One, verb: string, style: MoveStyle, going: { readonly parts: readonly Part[] }): Move {
  const base = baseOf(one, verb);
  const way = goingOf(one, base.id, going.parts, { baseline: runs.has(base.verb) ? 'along' : 'as written', toTheRim: endsAtTheRim(style), sideways: endsAtTheRim(style) ? 'to the rim' : 'to the wing' });
  const to = way.to === undefined ? {} : { to: { ...way.to, value: onTheSideOfStyle(way.to.value, style) } };
  return { ...base, kind: 'move', ...way, ...to, style, pace: paces[base.verb] ?? 'set' };
}

function endsAtTheRim(style: MoveStyle): boolean {
  const end = placeOfStyle[style];
  return end?.kind === 'spot' && end.name === 'rim';
}

/** `posts up on the left side`: where such a move ends, on that side. */
function onTheSideOfStyle(place: Place, style: MoveStyle): Place {
  if (place.kind !== 'spot' || place.where !== 'half') return place;
  const own = style === 'space' ? ({ kind: 'spot', name: 'wing' } as const) : placeOfStyle[style];
  return own?.kind === 'spot' && isSpotName(own.name) && takesSide(own.name) === 'needed' ? { ...own, side: place.side! } : place;
}

/** Who runs the baseline runs along it; who cuts baseline comes to the rim that way. */
const runs: ReadonlySet<string> = new Set(['run', 'sprint', 'jog']);

/** `2 and 4 swap`, `2 swaps with 4`: each fills for the other. */
export function readSwap(one: One, tree: NodeOf<'Move'>): Action[] {
  const written = tree.parts.find(part => part?.$type === 'SwapWith');
  take(one, written);
  const partner = written?.$type === 'SwapWith' ? bodyOf(one.reader, written.player, meaningOf(one, partOf(one))) : one.clause.subjects.find(who => who !== one.who);
  if (partner === undefined || !isOffence(partner) || partner === one.who) {
    report(one.reader, 'who-is-meant', partOf(one), { word: tree.verb });
    return [];
  }
  const fill = (who: BodyId, other: BodyId): Move => {
    const base = baseOf({ ...one, who }, 'fills');
    putValue(one, `${base.id}#to`, written);
    return { ...base, kind: 'move', to: { value: { kind: 'player', who: other }, origin: written === undefined ? 'derived' : 'written' }, via: [], off: [], style: 'fill', pace: 'set' };
  };
  return written === undefined ? [fill(one.who, partner)] : [fill(one.who, partner), fill(partner, one.who)];
}

/** `4 trails`: the last man up the floor comes behind the ball, to the top. Common practice, no source. */
export function isTrailer(tree: NodeOf<'Defend'>): boolean {
  return baseForm(tree.verb) === 'trail' && !/^(follow|chase)/.test(tree.verb) && tree.parts.every(part => part?.$type === 'At' || (part?.$type === 'DefendTo' && part.player === undefined));
}

export function trailing(tree: NodeOf<'Defend'>): NodeOf<'Move'> {
  const top = { $type: 'Place', at: tree.to, to: tree.to, spans: {}, name: 'top', each: false, extended: false } as const;
  const spots = tree.parts.flatMap(part => (part?.$type === 'At' || part?.$type === 'DefendTo' ? part.spots : []));
  const to: NodeOf<'To'> = { $type: 'To', at: tree.to, to: tree.to, spans: {}, how: 'to', ball: false, either: false, spots: spots.length > 0 ? spots : [top] };
  return { $type: 'Move', at: tree.at, to: tree.to, spans: tree.spans, verb: 'moves', parts: [to] };
}

/** `2 makes the same cut off 3`: the cut read last, by another man and off whom this line says. */
function sameCut(one: One, tree: NodeOf<'Move'>): Move {
  const last = one.scope.lastMove;
  const base = baseOf(one, tree.verb);
  const going = goingOf(one, base.id, tree.parts);
  if (last === undefined) {
    report(one.reader, 'who-is-meant', base.id, { word: 'the same cut' });
    return { ...base, kind: 'move', ...going, style: 'cut', pace: 'set' };
  }
  const to = going.to ?? (last.to === undefined ? undefined : { value: last.to.value, origin: 'copied' as const });
  return { ...base, kind: 'move', via: going.via.length > 0 ? going.via : last.via, off: going.off, ...(to === undefined ? {} : { to }), style: last.style, pace: last.pace };
}

export function readCrash(one: One, tree: NodeOf<'Crash'>): Action {
  const base = baseOf(one, tree.verb);
  putValue(one, `${base.id}#to`, undefined);
  const on = tree.on === undefined ? undefined : bodyOf(one.reader, tree.on, meaningOf(one, base.id));
  if (base.verb === 'box-out') take(one, tree.on);
  if (base.verb === 'box-out') return { ...base, kind: 'hold', ...(on === undefined ? {} : { on }) };
  const place: Place = base.verb === 'get-back' ? { kind: 'spot', name: 'half court' } : rim;
  return { ...base, kind: 'move', to: { value: place, origin: 'default' }, via: [], off: [], style: 'straight', pace: 'sprint' };
}

export function readHold(one: One, tree: NodeOf<'Hold'>): Action[] {
  const at = tree.parts.find(part => part?.$type === 'At');
  // He goes there at once; what he waits for ends the hold.
  const untilClock = tree.parts.some(part => part?.$type === 'OnClock');
  const endsIt = (wait: Wait) => wait.kind === 'until' || (untilClock && wait.kind === 'clock');
  const going = at?.$type === 'At' ? goThere(one, at, wait => !endsIt(wait)) : [];
  const base = baseOf(one, tree.verb);
  const [waits, link] = going.length === 0 ? [base.waits, base.link] : [base.waits.filter(endsIt), base.link + 1];
  const lasting = take(one, tree.parts.find(part => part?.$type === 'HoldFor'));
  const seconds = lasting?.$type === 'HoldFor' ? { seconds: lasting.time.seconds } : {};
  for (const part of tree.parts) if (part?.$type === 'OnClock') take(one, part);
  if (base.verb === 'keep-dribble') {
    const keeps: Action = { ...base, waits, link, kind: 'dribble', via: [], off: [], style: 'keep' };
    return lasting === undefined ? [...going, keeps] : [...going, keeps, { ...baseOf(one, tree.verb), waits: [], link: link + 1, kind: 'hold', ...seconds }];
  }
  const partner = take(one, tree.parts.find(part => part?.$type === 'With'));
  const on = partner?.$type === 'With' ? bodyOf(one.reader, partner.player, meaningOf(one, base.id)) : undefined;
  const hold: Hold = { ...base, waits, link, kind: 'hold', ...(on === undefined ? {} : { on }) };
  return [...going, { ...hold, ...seconds }];
}

/** `seals X5`: he holds his own man off where he stands; another's he goes to, between him and the basket. */
export function readSeal(one: One, tree: NodeOf<'Seal'>): Move {
  const seal = moveOf(one, tree.verb, 'seal', { parts: tree.parts });
  const on = tree.on === undefined ? undefined : bodyOf(one.reader, tree.on, meaningOf(one, seal.id));
  if (on === undefined) return seal;
  const man = on.slice(-1) as BodyId;
  if (seal.to !== undefined || man === one.who) return { ...seal, on };
  return { ...seal, on, to: { value: { kind: 'offset', by: armLength, direction: 'in front of', from: { kind: 'player', who: man } }, origin: 'derived' } };
}

/** The thrower's part is read with the start. The safety goes to his place; that he is the outlet is worked out once all steps are read. */
export function readRole(one: One, tree: NodeOf<'Role'>): Action[] {
  if (baseForm(tree.verb) !== 'safety') {
    for (const part of tree.parts) take(one, part);
    return [];
  }
  const base = baseOf(one, tree.verb);
  const going = goingOf(one, base.id, tree.parts);
  return [going.to === undefined ? { ...base, kind: 'hold' } : { ...base, kind: 'move', ...going, style: 'straight', pace: 'set' }];
}
