// What a line tells a defender.
import { message } from '../message/message.ts';
import type { ActionTree, Columns, NodeOf } from '../grammar/tree.ts';
import type { Action, BodyId, Defend, Place } from './play.ts';
import type { One } from './read-clause.ts';
import { baseOf, meaningOf, partOf, putValue } from './read-clause.ts';
import { goingOf, placeOfSubject } from './read-way.ts';
import { baseForm } from './read-waits.ts';
import { bodiesOf, bodyOf, report } from './reader.ts';

export function defenceAction(one: One, tree: ActionTree): Action[] {
  switch (tree.$type) {
    case 'Defend':
      return [readDefend(one, tree)];
    case 'Pass': case 'ThrowIn': case 'HandOff': case 'Shot': case 'Dribble': case 'Screen': case 'Close': case 'Role':
      report(one.reader, 'defender-attacks', partOf(one), { who: one.who, verb: baseForm(tree.verb) });
      return [];
    case 'SameAgain':
      return [];
    default: {
      const base = baseOf(one, tree.verb);
      const parts = tree.$type === 'Move' || tree.$type === 'Seal' ? tree.parts : [];
      const { to } = goingOf(one, base.id, parts);
      return [{ ...base, kind: 'defend', ...(to === undefined ? {} : { to }) }];
    }
  }
}

function readDefend(one: One, tree: NodeOf<'Defend'>): Defend {
  const base = baseOf(one, tree.verb);
  const meaning = meaningOf(one, base.id);
  let on: BodyId | undefined;
  let to: [Place | undefined, Columns] | undefined;
  for (const part of tree.parts) {
    if (part?.$type === 'With' || part?.$type === 'Guarded' || (part?.$type === 'DefendTo' && part.player !== undefined)) on ??= bodyOf(one.reader, part.player!, meaning);
    else if (part?.$type === 'At' || part?.$type === 'DefendTo') to ??= placeOfSubject(one, part.spots, meaning, false);
    else if (part?.$type === 'Off') on ??= bodiesOf(one.reader, part.players, meaning)[0];
    else if (part?.$type === 'Heading') report(one.reader, 'not-yet', base.id, { what: part.way === 'middle' ? message('a defender who gives only the way to the middle') : message('a defender who gives only the way along the baseline') });
    else if (part?.$type === 'TheScreen') on ??= [...one.scope.screens.values()].findLast(screen => screen.users.includes(one.who.slice(1) as BodyId))?.who;
  }
  putValue(one, `${base.id}#to`, to?.[0] === undefined ? undefined : to[1]);
  return { ...base, kind: 'defend', ...(on === undefined ? {} : { on }), ...(to?.[0] === undefined ? {} : { to: { value: to[0], origin: 'written' as const } }) };
}
