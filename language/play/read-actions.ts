// A clause of a line → its actions, one for each subject.
import type { ActionTree } from '../grammar/tree.ts';
import type { Action, BodyId } from './play.ts';
import { dribbled, readDribble, readHandOff, readPass, readShot, withTheBall } from './read-ball.ts';
import type { Clause, One } from './read-clause.ts';
import { isHolder, partOf, take } from './read-clause.ts';
import { tellLeftOver } from './left-over.ts';
import { defenceAction } from './read-defence.ts';
import { isTrailer, readCrash, readHold, readMove, readRole, readSeal, readSwap, trailing } from './read-moves.ts';
import { readClose, readScreen, together } from './read-screens.ts';
import { baseForm } from './read-waits.ts';
import type { Reader } from './reader.ts';
import { isOffence, report } from './reader.ts';
import type { Scope } from './scope.ts';
import { ballAfter } from './scope.ts';

/** Reads one action for each subject, in the subjects' order, and moves the scope's ball on. */
export function readAction(reader: Reader, scope: Scope, tree: ActionTree, clause: Clause): Action[] {
  const before = reader.problems.length;
  const actions = clause.subjects.flatMap((who, index) => actionsOfOne(reader, scope, tree, clause, who, index));
  const screens = actions.filter(action => action.kind === 'screen');
  const grouped = screens.length > 1 ? actions.map(action => (action.kind === 'screen' ? together(action, screens) : action)) : actions;
  scope.acts.push(...grouped);
  for (const action of grouped) {
    if (action.kind === 'move') scope.lastMove = action;
    if (action.kind === 'screen') scope.screens.set(action.who, action);
    if (action.kind === 'hand-off') scope.handOffs.add(action.to);
  }
  if (clause.subjects.length === 2) scope.pair = clause.subjects;
  if (reader.problems.length === before && clause.subjects.length > 0) tellLeftOver(reader, tree, clause);
  return grouped;
}

function actionsOfOne(reader: Reader, scope: Scope, tree: ActionTree, clause: Clause, who: BodyId, index: number): Action[] {
  const one: One = { reader, scope, clause, who, index, end: tree.to };
  const made = isOffence(who) ? offenceAction(one, tree) : defenceAction(one, tree);
  for (const action of made) scope.ball = ballAfter(scope.ball, action);
  return made;
}

function offenceAction(one: One, tree: ActionTree): Action[] {
  switch (tree.$type) {
    case 'Move':
      if (baseForm(tree.verb) === 'swap') return readSwap(one, tree);
      return [isHolder(one) && tree.verb in withTheBall ? readDribble(one, dribbled(tree)) : readMove(one, tree)];
    case 'Seal':
      return [readSeal(one, tree)];
    case 'Crash':
      return [readCrash(one, tree)];
    case 'Dribble':
      // Without the ball who backs out only goes.
      if (/^backs? out$/.test(tree.verb) && !isHolder(one) && tree.parts.length > 0) return [readMove(one, { ...tree, $type: 'Move', verb: 'goes', parts: tree.parts as never })];
      return [readDribble(one, tree)];
    case 'Pass':
      return readPass(one, tree.verb, tree.parts);
    case 'ThrowIn':
      return readPass(one, tree.verb, tree.parts);
    case 'HandOff':
      return readHandOff(one, tree);
    case 'Screen':
      return [readScreen(one, tree)];
    case 'Close':
      return [readClose(one, tree)];
    case 'Shot':
      return [readShot(one, tree.verb, tree.kinds, tree, tree.from)];
    case 'Hold':
      return readHold(one, tree);
    case 'Role':
      return readRole(one, tree);
    case 'Defend':
      if (isTrailer(tree)) {
        for (const part of tree.parts) take(one, part);
        return [readMove(one, trailing(tree))];
      }
      report(one.reader, 'offence-defends', partOf(one), { who: one.who, verb: tree.verb });
      return [];
    default:
      return [];
  }
}
