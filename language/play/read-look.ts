// A look → who scores, how it is pinned, and the tail that happens only if it is taken.
import { message } from '../message/message.ts';
import type { Columns, LookTree, NodeOf } from '../grammar/tree.ts';
import { spanOf } from '../grammar/tree.ts';
import type { Action, BodyId, Look, LookId, Pass, PassKind, Rebound } from './play.ts';
import { readAction } from './read-actions.ts';
import { readShot } from './read-ball.ts';
import { tellWords } from './left-over.ts';
import { onThatHalf, readPlace } from './read-places.ts';
import { readEvents } from './read-waits.ts';
import { readReboundGroups } from './read-annotations.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodiesOf, numberOf, isOffence, putGap, putPart, report } from './reader.ts';
import { latestScreener } from './read-way.ts';
import type { Line, Scope } from './scope.ts';
import { ballAfter, openScope, subjectsOf } from './scope.ts';

/** `look 4: layup, look 5: drop-off, layup`: the looks of a line, each with its own columns. */
export function looksOf(tree: LookTree): readonly LookTree[] {
  const { also, ...look } = tree;
  if (also === undefined) return [tree];
  return [{ ...look, to: [...look.players, ...look.pins, ...look.tail].at(-1)?.to ?? also.at }, ...looksOf(also)];
}

/** Reads a look. Its tail starts from the step's ball and leaves it as it was: nothing of a tail happens unless the look is taken. */
export function readLook(reader: Reader, step: Scope, tree: LookTree, line: Line, nextLookId: (who: BodyId) => LookId): Look | undefined {
  const players = bodiesOf(reader, tree.players, { part: line.key, him: [] });
  for (const who of players) if (!isOffence(who)) report(reader, 'defender-attacks', line.key, { who, verb: 'look' });
  const who = players.filter(isOffence);
  const looker = who[0];
  if (looker === undefined) return undefined;
  const id = nextLookId(looker);
  putPart(reader, id, line.index, tree);
  putPart(reader, `${id}#who`, line.index, { at: tree.players[0]!.at, to: tree.players[tree.players.length - 1]!.to });
  if (tree.label !== undefined) putPart(reader, `${id}#label`, line.index, spanOf(tree, 'label'));
  const scope = openScope(id, step.step, step.ball, step.named);
  scope.pair = step.pair;
  const reads = readsADefender(tree);
  if (reads !== undefined && tree.label === undefined) putPart(reader, `${id}#label`, line.index, reads);
  const label = tree.label ?? (reads && reader.lines[line.index]?.text.slice(reads.at, reads.to));
  const pin = readPin(reader, scope, { ...tree, pins: tree.pins.filter(each => each !== reads) }, line, looker, id);
  return {
    id,
    step: step.step,
    line: line.key,
    who: who.map(body => numberOf(body)),
    ...(label === undefined ? {} : { label }),
    ...(pin === undefined ? {} : { pin }),
    tail: readTail(reader, scope, tree, line, looker),
    rebounds: readMisses(reader, scope, tree, line),
  };
}

/** `look 2 when X2 helps`: whether he does is seen in the game, and what the look is called by. */
function readsADefender({ pins }: LookTree): LookTree['pins'][number] | undefined {
  return pins.find(pin => pin?.$type === 'Wait' && pin.event.$type === 'PlayerEvent' && pin.event.subject?.$type === 'Players' && pin.event.subject.players.every(player => player?.defence));
}

function readPin(reader: Reader, scope: Scope, tree: LookTree, line: Line, looker: BodyId, id: LookId): Look['pin'] {
  const meaning = { part: id, him: [looker] };
  let pin: Look['pin'];
  for (const each of tree.pins) {
    if (each === undefined) continue;
    if (pin !== undefined) {
      report(reader, 'not-yet', id, { what: reader.lines[line.index]?.text.slice(each.at, each.to) ?? message('this') });
      continue;
    }
    putPart(reader, `${id}#pin`, line.index, each);
    if (each.$type === 'OnMove') {
      // The catch is that of the look's own pass: `look 2 on the catch: three`.
      if (each.move === 'catch' && scope.ball.holder !== looker) continue;
      pin = offPin(reader, scope, each.off, looker, meaning) ?? { kind: 'on', style: each.move };
      if (each.move !== 'seal' && each.move !== 'duck-in') tellWords(reader, line, [each.on]);
    }
    if (each.$type === 'Off') pin = offPin(reader, scope, each, looker, meaning);
    if (each.$type === 'Later') pin = { kind: 'later', seconds: each.time.seconds };
    if (each.$type === 'OnClock') pin = { kind: 'at', seconds: each.time.seconds, of: each.clock === 'on the shot clock' ? 'shot' : 'period' };
    if (each.$type === 'WhenLeft') pin = { kind: 'at', seconds: each.time.seconds, of: each.clock === undefined ? 'period' : 'shot' };
    if (each.$type === 'At') {
      const place = each.spots[0] === undefined ? undefined : readPlace(reader, each.spots[0], meaning);
      if (place !== undefined) pin = { kind: 'place', place: onThatHalf(place) };
    }
    if (each.$type === 'LookTime') pin = { kind: 'at', seconds: each.time.seconds, of: each.from === 'after the call' ? 'call' : 'start' };
    if (each.$type === 'Wait') {
      const event = readEvents(reader, each.event, scope, meaning)[0];
      if (event === undefined) continue;
      pin = each.gap === undefined && event.does === 'come-off' && event.who === looker && event.other !== undefined ? { kind: 'off', screener: event.other } : { kind: 'as', event, ...(each.gap !== undefined && { after: each.gap.seconds }) };
    }
  }
  return pin;
}

/** `coming off 4`, `off the screen`: of two he comes off, the last one, where he is free. */
function offPin(reader: Reader, scope: Scope, off: NodeOf<'Off'> | undefined, looker: BodyId, meaning: Meaning): Look['pin'] {
  if (off === undefined) return undefined;
  const screener = off.players.length > 0 ? bodiesOf(reader, off.players, meaning).at(-1) : latestScreener(reader, scope, looker, meaning.part);
  return screener === undefined ? undefined : { kind: 'off', screener };
}

/** Each link of the tail in order; what the looker needs the ball for is preceded by a pass to him where nobody gives it to him in words. */
function readTail(reader: Reader, scope: Scope, tree: LookTree, line: Line, looker: BodyId): Action[] {
  const tail: Action[] = [];
  const items = tree.tail.filter(item => item !== undefined);
  const add = (actions: readonly Action[]) => {
    for (const action of actions) {
      tail.push(action);
      scope.ball = ballAfter(scope.ball, action);
    }
  };
  const gap = items[0]?.at ?? tree.to;
  const clause = (columns: Columns, subjects: readonly BodyId[]) => ({
    subjects, him: [looker], passesTo: looker, columns, line, link: tail.length === 0 ? 0 : tail[tail.length - 1]!.link + 1, waitsOf: () => [], taken: new Set(),
  });
  const giveBall = () => {
    if (scope.ball.holder === looker) return;
    if (scope.ball.holder === undefined) report(reader, 'no-holder-for-look', scope.owner, { who: looker });
    else add([passTo(reader, scope, line, looker, scope.ball.holder, undefined, { at: gap, to: gap }, tail)]);
  };
  for (const item of items) {
    if (item.$type === 'OnMiss') continue;
    if (item.$type === 'ShotKinds') {
      giveBall();
      add([readShot({ reader, scope, who: looker, end: item.to, clause: clause(item, [looker]) }, 'shoots', item.kinds, item, item.from)]);
    } else if (item.$type === 'PassKind') {
      const passer = item.passer === undefined ? scope.ball.holder : bodiesOf(reader, [item.passer], { part: scope.owner, him: [looker] })[0];
      if (passer === undefined) report(reader, 'no-holder-for-look', scope.owner, { who: looker });
      else if (passer === looker) report(reader, 'looker-has-ball', scope.owner, { who: looker });
      else add([passTo(reader, scope, line, looker, passer, item.kind, item, tail)]);
    } else {
      const subjects = item.subject === undefined ? [looker] : subjectsOf(reader, item.subject, scope, { part: scope.owner, him: [looker] });
      if (item.action === undefined) continue;
      if (needsBall(item.action.$type) && subjects[0] === looker) giveBall();
      // `readAction` moves the ball itself.
      tail.push(...readAction(reader, scope, item.action, clause(item, subjects)));
    }
  }
  if (!tail.some(action => action.kind === 'shot')) {
    if (scope.ball.holder === undefined || !endsWithAnother(tail, looker)) giveBall();
    const shooter = scope.ball.holder ?? looker;
    add([{ ...readShot({ reader, scope, who: shooter, end: tree.to, clause: clause({ at: tree.to, to: tree.to }, [shooter]) }, 'shoots', [], undefined), origin: 'derived' }]);
  }
  return tail;
}

/** The last written ball link of the tail gave the ball to another man: he is the one who shoots. */
function endsWithAnother(tail: readonly Action[], looker: BodyId): boolean {
  const last = tail.filter(action => action.kind === 'pass' || action.kind === 'hand-off').at(-1);
  return last !== undefined && last.to !== looker;
}

function needsBall(type: string): boolean {
  return type === 'Shot' || type === 'Dribble' || type === 'Pass' || type === 'HandOff';
}

const passKinds: Readonly<Record<NodeOf<'PassKind'>['kind'], PassKind>> = {
  pass: 'pass', 'chest-pass': 'pass', 'bounce-pass': 'bounce', lob: 'lob', skip: 'skip', 'overhead-pass': 'overhead', 'baseball-pass': 'baseball', tip: 'tip', 'kick-out': 'pass', 'hand-off': 'pass',
};

function passTo(
  reader: Reader, scope: Scope, line: Line, to: BodyId, who: BodyId, kind: NodeOf<'PassKind'>['kind'] | undefined, columns: Columns, tail: readonly Action[],
): Action {
  const id = scope.nextId(who);
  if (kind === undefined) putGap(reader, id, line.index, columns.at);
  else putPart(reader, id, line.index, columns);
  const link = tail.length === 0 ? 0 : tail[tail.length - 1]!.link + 1;
  const origin = kind === undefined ? ('derived' as const) : ('written' as const);
  const base = { id, step: scope.step, line: line.key, link, who, verb: kind ?? 'pass', waits: [], origin };
  if (kind === 'hand-off') return { ...base, kind: 'hand-off', to };
  const pass: Pass['pass'] = kind === undefined ? { value: 'pass', origin: 'default' } : { value: passKinds[kind], origin: 'written' };
  return { ...base, kind: 'pass', pass, to, early: false, throwIn: scope.ball.out && scope.ball.holder === who };
}

function readMisses(reader: Reader, scope: Scope, tree: LookTree, line: Line): Rebound[] {
  return tree.tail.flatMap((item, index) => {
    if (item?.$type !== 'OnMiss') return [];
    const part = index === tree.tail.findIndex(each => each?.$type === 'OnMiss') ? `${scope.owner}#rebound` : `${scope.owner}#rebound${index + 1}`;
    putPart(reader, part, line.index, item);
    return [readReboundGroups(reader, scope, item.groups, part, scope.owner)];
  });
}
