// What the man with the ball does.
import { message } from '../message/message.ts';
import type { Columns, NodeOf, PlayerNode, SpotTree } from '../grammar/tree.ts';
import type { Action, BodyId, Dribble, Pass, PassKind, Place, Shot, ShotKind } from './play.ts';
import type { One } from './read-clause.ts';
import { baseOf, isHolder, meaningOf, partOf, putValue, take } from './read-clause.ts';
import { onThatHalf, readPlace } from './read-places.ts';
import { goThere, goingOf, placeOfSubject, rim } from './read-way.ts';
import { baseForm } from './read-waits.ts';
import { bodyOf, putPart, report } from './reader.ts';

/** Words for going off a screen or to a place that leave open whether he has the ball: what he does if he has it. Common usage, no source. */
export const withTheBall: Readonly<Record<string, 'drives' | 'dribbles'>> = {
  'comes off': 'drives', 'come off': 'drives', uses: 'drives', use: 'drives', comes: 'dribbles', come: 'dribbles', goes: 'dribbles', go: 'dribbles', returns: 'dribbles', return: 'dribbles',
  'keeps going': 'dribbles', 'keep going': 'dribbles', continues: 'dribbles', continue: 'dribbles', 'carries on': 'dribbles', 'carry on': 'dribbles',
};

export function dribbled(tree: NodeOf<'Move'>): NodeOf<'Dribble'> {
  // `1 goes left` past his man.
  const isSideways = tree.parts.some(part => part?.$type === 'Heading' && (part.way === 'left' || part.way === 'right'));
  return { ...tree, $type: 'Dribble', verb: isSideways ? 'drives' : withTheBall[tree.verb]!, parts: tree.parts as never };
}

export function readDribble(one: One, tree: NodeOf<'Dribble'>): Dribble {
  const base = baseOf(one, tree.verb);
  const at = take(one, tree.parts.find(part => part?.$type === 'DribbleAt'));
  const isDrive = base.verb === 'drive' || base.verb === 'turn-the-corner';
  const going = goingOf(one, base.id, tree.parts, { baseline: isDrive ? 'to the rim' : 'as written', toTheRim: isDrive, sideways: isDrive ? 'to the rim' : 'to the wing' });
  const meaning = meaningOf(one, base.id);
  const target = at?.$type === 'DribbleAt' ? bodyOf(one.reader, at.player, meaning) : undefined;
  if (target !== undefined) one.scope.dribbledAt = { who: one.who, at: target };
  const style = target !== undefined ? 'dribble-at' : isDrive ? 'drive' : 'dribble';
  const dribble: Dribble = { ...base, kind: 'dribble', ...going, style, ...(target === undefined ? {} : { at: target }) };
  if (dribble.to !== undefined || target !== undefined) return dribble;
  const to = dribbleEnds[base.verb];
  if (to === rim) one.scope.openEnds.set(base.id, {});
  return to === undefined ? dribble : { ...dribble, to: { value: to, origin: 'default' } };
}

/** Where a dribble without a place goes. Common practice, no source. */
const dribbleEnds: Readonly<Record<string, Place>> = {
  drive: rim, 'turn-the-corner': rim, 'bring-the-ball-up': { kind: 'spot', name: 'top' }, 'back-out': { kind: 'spot', name: 'slot' },
};

const passKinds: Readonly<Record<string, PassKind>> = { 'bounce-pass': 'bounce', lob: 'lob', skip: 'skip', throw: 'overhead', tip: 'tip' };
const passStyles: Readonly<Record<string, PassKind>> = { overhead: 'overhead', 'overhead-pass': 'overhead', baseball: 'baseball', 'baseball-pass': 'baseball' };

type PassParts = NodeOf<'Pass'>['parts'] | NodeOf<'ThrowIn'>['parts'];

/** `1 passes to 2 to 3` is two passes, the second by 2. */
export function readPass(one: One, verb: string, parts: PassParts): Action[] {
  const receivers = parts.filter(part => part?.$type === 'PassTo');
  const along = take(one, parts.find(part => part?.$type === 'PassAlong'));
  // `throws it back` names no pass; to throw is over the head.
  const isBack = along?.$type === 'PassAlong' && along.way.startsWith('back');
  const way = along?.$type === 'PassAlong' && !isBack ? along.way : undefined;
  if (way === 'behind the board') report(one.reader, 'not-yet', partOf(one), { what: message('a pass behind the board; it flies straight') });
  const styled = take(one, parts.find(part => part?.$type === 'PassStyle'));
  for (const part of parts) if (part?.$type === 'Early' || part?.$type === 'PassTo' || part?.$type === 'FromSpot') take(one, part);
  const early = parts.some(part => part?.$type === 'Early');
  const isThrowIn = baseForm(verb) === 'inbound';
  if (isThrowIn && !one.scope.ball.out) report(one.reader, 'not-yet', partOf(one), { what: message('a throw-in in the middle of a play. Write it as a play of its own that begins with it, as “3 inbounds from the left sideline”') });
  const meant = receivers.length > 0 || isThrowIn ? undefined : (one.clause.passesTo ?? (isBack ? gaveIt(one) : undefined));
  if (meant !== undefined && meant !== one.who) return [passBack(one, verb, meant)];
  if (receivers.length === 0) {
    if (!isThrowIn) report(one.reader, 'pass-to-nobody', partOf(one), { who: one.who, other: one.who === '3' ? '2' : '3' });
    // Where he throws in from is read with the start.
    for (const part of parts) if (part?.$type === 'At') take(one, part);
    return [];
  }
  const passes: Pass[] = [];
  let passer = one.who;
  for (const [count, receiver] of receivers.entries()) {
    if (receiver.$type !== 'PassTo') continue;
    const to = bodyOf(one.reader, receiver.player, meaningOf(one, partOf(one)));
    if (to === undefined) break;
    if (asksWho(one, receiver.player, to, passer)) break;
    const base = baseOf({ ...one, who: passer }, verb);
    putPart(one.reader, `${base.id}#to`, one.clause.line.index, receiver.player);
    const kind = (styled?.$type === 'PassStyle' ? passStyles[styled.style] : undefined) ?? (isBack && base.verb === 'throw' ? 'pass' : passKinds[base.verb]) ?? (way === 'over the top' ? 'lob' : 'pass');
    const last = count === receivers.length - 1;
    const at = placeBehind(parts, receiver);
    const place = at !== undefined ? placeOfSubject(one, at.spots, meaningOf(one, base.id), false) : undefined;
    if (place?.[0] !== undefined) putPart(one.reader, `${base.id}#at`, one.clause.line.index, place[1]);
    take(one, at);
    passes.push({
      ...base,
      waits: count === 0 ? base.waits : [],
      link: one.clause.link + count,
      kind: 'pass',
      pass: { value: kind, origin: kind === 'pass' && (base.verb === 'pass' || base.verb === 'inbound') ? 'default' : 'written' },
      to,
      ...(place?.[0] === undefined ? {} : { at: { value: onThatHalf(place[0]), origin: 'written' as const } }),
      early: early && last,
      throwIn: count === 0 && one.scope.ball.out && (isThrowIn || one.scope.ball.holder === passer),
      ...(way === undefined || !last ? {} : { way }),
    });
    passer = to;
  }
  return passes;
}

/** Of whom he has the ball by what is told: `1 passes to 2, 2 gives it right back`. */
function gaveIt({ scope, who }: One): BodyId | undefined {
  const last = [...(scope.before?.() ?? []), ...scope.acts].findLast(action => action.kind === 'pass' || action.kind === 'hand-off');
  return last !== undefined && 'to' in last && last.to === who && last.who !== who ? last.who : undefined;
}

function passBack(one: One, verb: string, to: BodyId): Pass {
  const base = baseOf(one, verb);
  const kind = passKinds[base.verb === 'throw' ? 'pass' : base.verb] ?? 'pass';
  putValue(one, `${base.id}#to`, undefined);
  return { ...base, kind: 'pass', pass: { value: kind, origin: kind === 'pass' ? 'default' : 'written' }, to, early: false, throwIn: false };
}

/** `at left wing` behind a receiver and before the next: where that one gets the ball. */
function placeBehind(parts: PassParts, receiver: PassParts[number]): NodeOf<'At'> | undefined {
  const behind = parts.slice(parts.indexOf(receiver as never) + 1);
  const next = behind.findIndex(part => part?.$type === 'PassTo');
  const at = (next === -1 ? behind : behind.slice(0, next)).find(part => part?.$type === 'At');
  return at?.$type === 'At' ? at : undefined;
}

/** `as she comes off 5, 1 passes to her`: a pronoun that would be the passer himself is meant of somebody else. */
function asksWho(one: One, receiver: PlayerNode, to: BodyId, giver: BodyId): boolean {
  if (to !== giver || receiver.number !== undefined) return false;
  report(one.reader, 'who-is-meant', partOf(one), { word: one.reader.lines[one.clause.line.index]!.text.slice(receiver.at, receiver.to) });
  return true;
}

export function readHandOff(one: One, tree: NodeOf<'HandOff'>): Action[] {
  return isTaken(tree.verb) ? handOffTaken(one) : handOffGiven(one, tree);
}

/** Told of the man who gets the ball: `takes the hand-off`. */
export const isTaken = (verb: string): boolean => /^takes? /.test(verb);

/** `2 takes the hand-off`: told of the man who has the ball. */
function handOffTaken(one: One): Action[] {
  const giver = one.scope.ball.holder;
  if (giver === undefined || giver === one.who) {
    report(one.reader, 'who-is-meant', partOf(one), { word: `hands it to ${one.who}` });
    return [];
  }
  const base = baseOf({ ...one, who: giver }, 'hands off');
  putValue(one, `${base.id}#to`, undefined);
  return [{ ...base, kind: 'hand-off', to: one.who }];
}

function handOffGiven(one: One, tree: NodeOf<'HandOff'>): Action[] {
  const receiver = take(one, tree.parts.find(part => part?.$type === 'PassTo'));
  const { dribbledAt } = one.scope;
  const to = receiver?.$type === 'PassTo' ? bodyOf(one.reader, receiver.player, meaningOf(one, partOf(one))) : dribbledAt?.who === one.who ? dribbledAt.at : undefined;
  if (to === undefined) {
    report(one.reader, 'pass-to-nobody', partOf(one), { who: one.who, other: one.who === '3' ? '2' : '3' });
    return [];
  }
  if (receiver?.$type === 'PassTo' && asksWho(one, receiver.player, to, one.who)) return [];
  const at = tree.parts.find(part => part?.$type === 'At');
  const going = at?.$type === 'At' && isHolder(one) ? goThere(one, at, () => true) : [];
  const base = baseOf(one, tree.verb);
  putValue(one, `${base.id}#to`, receiver?.$type === 'PassTo' ? receiver.player : undefined);
  return [...going, { ...base, ...(going.length === 0 ? {} : { waits: [], link: base.link + 1 }), kind: 'hand-off', to }];
}

/** `a layup on the left side`: left of the rim; a shot from outside where he is on that half. */
function onTheSideOf(place: Place, kind: ShotKind | undefined): Place {
  if (place.kind !== 'spot' || place.name !== 'side') return place;
  return kind === 'layup' || kind === 'dunk' || kind === 'tip-in' || kind === 'hook' ? { ...place, name: 'rim' } : onThatHalf(place);
}

const shotKinds: Readonly<Record<string, ShotKind>> = { dunk: 'dunk', 'lay-up': 'layup', 'pull-up': 'jumper', 'tip-in': 'tip-in', hook: 'hook' };

export function readShot(one: Pick<One, 'reader' | 'scope' | 'clause' | 'who' | 'end'>, verb: string, kinds: readonly ShotKind[], columns: Columns | undefined, spot?: SpotTree): Shot {
  const full: One = { ...one, index: 0 };
  const base = baseOf(full, verb);
  const [written, ...or] = kinds;
  const byVerb = shotKinds[base.verb];
  putValue(full, `${base.id}#shot`, written === undefined && byVerb === undefined ? undefined : columns);
  const kind = written ?? byVerb;
  const from = spot === undefined ? undefined : readPlace(one.reader, spot, meaningOf(full, base.id));
  if (spot !== undefined) putPart(one.reader, `${base.id}#from`, one.clause.line.index, spot);
  const taken = from === undefined ? {} : { from: { value: onTheSideOf(from, kind), origin: 'written' as const } };
  return { ...base, ...taken, kind: 'shot', shot: kind === undefined ? { value: 'shot', origin: 'default' } : { value: kind, origin: 'written' }, or };
}
