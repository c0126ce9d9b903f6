// Rebounds, notes, demands and exceptions: lines that belong to the innermost open block.
import type { NodeOf } from '../grammar/tree.ts';
import type { Allowance, BodyId, Demand, Note, PartId, PlayerNumber, Rebound, StatedEnd } from './play.ts';
import { baseForm, readEvents } from './read-waits.ts';
import type { Reader } from './reader.ts';
import { bodiesOf, isOffence, numberOf, report } from './reader.ts';
import type { Scope } from './scope.ts';
import { subjectsOf } from './scope.ts';
import { OFFENCE } from './play.ts';

/** Who crashes and who gets back. Nobody goes twice: the first word for a man counts. `everyone else` is who was not named in the line, and is no `safety`. */
export function readReboundGroups(reader: Reader, scope: Scope, groups: NodeOf<'Rebound'>['groups'], part: PartId, within: string, safety: readonly BodyId[] = []): Rebound {
  const crash: PlayerNumber[] = [];
  const back: PlayerNumber[] = [];
  const named = new Set<BodyId>(safety);
  for (const group of groups) if (group?.subject?.$type === 'Players') for (const body of bodiesOf(reader, group.subject.players, { part, him: [] })) named.add(body);
  for (const group of groups) {
    if (group?.subject === undefined) continue;
    const isRest = group.subject.$type === 'Everyone' && (group.subject.else || group.subject.all === 'others');
    const bodies = isRest ? OFFENCE.filter(body => !named.has(body)) : subjectsOf(reader, group.subject, scope, { part, him: [] });
    const list = baseForm(group.verb) === 'get-back' ? back : crash;
    for (const body of bodies) {
      const number = numberOf(body);
      if (isOffence(body) && !crash.includes(number) && !back.includes(number)) list.push(number);
    }
  }
  return { part, within, crash, back };
}

/** A note for several players is one note each. */
export function readNote(reader: Reader, tree: NodeOf<'Note'>, part: PartId, within: string): Note[] {
  const players = bodiesOf(reader, tree.players, { part, him: [] }).filter(isOffence);
  if (players.length === 0) return [{ part, within, text: tree.text }];
  return players.map(body => ({ part, within, who: numberOf(body), text: tree.text }));
}

type DemandTree = NodeOf<'EveryTouch'> | NodeOf<'Touch'> | NodeOf<'Amount'> | NodeOf<'NotHold'>;

/** What a team must do. `exactly 2` is two demands: at least and at most. */
export function readDemand(reader: Reader, scope: Scope, tree: DemandTree, part: PartId, within: string, text: string): Demand[] {
  const demand = (what: Demand['what'], must = true): Demand => ({ part, within, must, text, what });
  switch (tree.$type) {
    case 'EveryTouch':
      return [demand({ kind: 'every-touch' })];
    case 'Touch':
      return [demand({ kind: 'touch', who: subjectsOf(reader, tree.subject, scope, { part, him: [] }) })];
    case 'NotHold':
      return [demand({ kind: 'hold', seconds: tree.time.seconds }, false)];
    case 'Amount': {
      if (tree.none) return [demand({ kind: tree.what, count: 0, bound: 'at most' })];
      const count = tree.count ?? 1;
      if (tree.bound === 'exactly') return (['at least', 'at most'] as const).map(bound => demand({ kind: tree.what, count, bound }));
      return [demand({ kind: tree.what, count, bound: tree.bound ?? 'at least' })];
    }
  }
}

export function readAllowance(tree: NodeOf<'Allow'>, part: PartId, within: string): Allowance {
  return { part, within, check: tree.check, why: tree.why ?? '' };
}

/** `ends once 2 has the ball over half court, within 8 seconds`, `ends with no shot`. */
export function readEnd(reader: Reader, scope: Scope, tree: NodeOf<'Ends'>, part: PartId, text: string): StatedEnd {
  const event = tree.event === undefined ? undefined : readEvents(reader, tree.event, scope, { part, him: [] })[0];
  if (tree.event !== undefined && event === undefined) report(reader, 'who-is-meant', part, { word: 'ends once' });
  return {
    part,
    text,
    shot: false,
    ...(event === undefined ? {} : { event }),
    ...(tree.within === undefined ? {} : { withinSeconds: tree.within.seconds }),
  };
}
