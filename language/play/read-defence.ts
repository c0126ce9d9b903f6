// What a line tells a defender.
import { message } from '../message/message.ts';
import type { ActionTree, Columns, NodeOf, PlayerNode, TreeNode } from '../grammar/tree.ts';
import { childrenOf } from '../grammar/tree.ts';
import type { Action, BodyId, Defend, Place } from './play.ts';
import type { One } from './read-clause.ts';
import { baseOf, meaningOf, partOf, putValue, take } from './read-clause.ts';
import { goingOf, placeOfSubject } from './read-way.ts';
import { baseForm } from './read-waits.ts';
import type { Meaning } from './reader.ts';
import { bodiesOf, bodyOf, isOffence, report } from './reader.ts';

export function defenceAction(one: One, tree: ActionTree): Action[] {
  switch (tree.$type) {
    case 'Defend':
      return [readDefend(one, tree)];
    case 'Pass': case 'ThrowIn': case 'HandOff': case 'Shot': case 'Dribble': case 'Screen': case 'Close': case 'Role':
      report(one.reader, 'defender-attacks', partOf(one), { who: one.who, verb: tree.verb });
      return [];
    case 'SameAgain':
      return [];
    default: {
      const base = baseOf(one, tree.verb);
      const parts = tree.$type === 'Move' || tree.$type === 'Seal' ? tree.parts : [];
      // A defender goes straight there: what says how is left over.
      const { to } = goingOf(one, base.id, parts.filter((part) => !saysHow.has(part?.$type) && (part?.$type !== 'Heading' || parts.length === 1)));
      const man = tree.$type === 'Seal' || tree.$type === 'Crash' ? tree.on : undefined;
      const on = man && bodyOf(one.reader, take(one, man), meaningOf(one, base.id));
      return [{ ...base, kind: 'defend', ...(on === undefined ? {} : { on }), ...(to === undefined ? {} : { to }) }];
    }
  }
}

const saysHow: ReadonlySet<string | undefined> = new Set(['Via', 'Off', 'Past', 'Through']);

/** What is done to the man with the ball, whoever the line names first; and what is done where his own man is named in the line. */
export const toTheBall: ReadonlySet<string> = new Set(['trap', 'close-out', 'show', 'jump']);
const toHisMan: ReadonlySet<string> = new Set(['deny', 'guard', 'front', 'recover', 'trail', 'sag']);

/** `X1 and X3 trap her`, `1 passes to 4, X4 closes out on him`: him who has the ball; `X2 chases her over`: his own man. */
function attackerMeant(one: One, player: PlayerNode, verb: string, meaning: Meaning): BodyId | undefined {
  const named = bodyOf({ ...one.reader, problems: player.number === undefined ? [] : one.reader.problems }, player, meaning);
  if (player.number !== undefined) return named;
  const [deed, own] = [baseForm(verb), one.who.slice(1) as BodyId];
  const { holder } = one.scope.ball;
  if (toTheBall.has(deed) && holder !== undefined) return holder;
  if (named === undefined || !isOffence(named)) return own;
  return toHisMan.has(deed) && one.clause.said !== undefined && isNamed(one.clause.said, own, player.at) ? own : named;
}

function isNamed(node: TreeNode, who: BodyId, before: number): boolean {
  if (node.at >= before) return false;
  if (node.$type === 'Player' && `${(node as PlayerNode).defence ? 'X' : ''}${(node as PlayerNode).number}` === who) return true;
  return childrenOf(node).some((child) => isNamed(child, who, before));
}

function readDefend(one: One, tree: NodeOf<'Defend'>): Defend {
  const base = baseOf(one, tree.verb);
  const meaning = meaningOf(one, base.id);
  let on: BodyId | undefined;
  let to: [Place | undefined, Columns] | undefined;
  for (const part of tree.parts) {
    switch (part?.$type) {
      case 'With':
      case 'Guarded':
        if (on === undefined) on = attackerMeant(one, take(one, part).player, tree.verb, meaning);
        break;
      case 'DefendTo':
        if (part.player !== undefined && on === undefined) on = attackerMeant(one, take(one, part).player!, tree.verb, meaning);
        else if (part.player === undefined && to === undefined) to = placeOfSubject(one, take(one, part).spots, meaning, false);
        break;
      case 'At':
        if (to === undefined) to = placeOfSubject(one, take(one, part).spots, meaning, false);
        break;
      case 'Off':
        if (on === undefined) on = bodiesOf(one.reader, take(one, part).players, meaning)[0];
        break;
      case 'Heading':
        take(one, part);
        report(one.reader, 'not-yet', base.id, { what: part.way === 'middle' ? message('a defender who gives only the way to the middle') : message('a defender who gives only the way along the baseline') });
        break;
      case 'TheScreen':
        take(one, part);
        on ??= [...one.scope.screens.values()].findLast(screen => screen.users.includes(one.who.slice(1) as BodyId))?.who;
        break;
      default:
        break;
    }
  }
  putValue(one, `${base.id}#to`, to?.[0] === undefined ? undefined : to[1]);
  return { ...base, kind: 'defend', ...(on === undefined ? {} : { on }), ...(to?.[0] === undefined ? {} : { to: { value: to[0], origin: 'written' as const } }) };
}
