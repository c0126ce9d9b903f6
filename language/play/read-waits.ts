import type { ClauseTriggerTree, Columns, EventTree, NodeOf, PlayerNode, SpotTree } from '../grammar/tree.ts';
import { verbOf } from '../grammar/verbs.ts';
import type { BodyId, EventRef, PartId, Place, Wait } from './play.ts';
import { saysNothing, tellWords } from './left-over.ts';
import { readPlace } from './read-places.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodyOf, isOffence, putPart, report } from './reader.ts';
import type { Scope } from './scope.ts';
import { subjectsOf } from './scope.ts';
import { afterThat, atTheSameTime, ofWhatIsAbove } from './told-above.ts';

/** The base form of a verb as it stands in the data: one word with hyphens. */
export function baseForm(word: string): string {
  return (verbOf(word)?.base ?? word).replaceAll(' ', '-');
}

/** The waits a trigger means; none (and a problem) where it cannot be waited for. `owner` is the part that waits. */
export function readTrigger(reader: Reader, tree: ClauseTriggerTree, scope: Scope, meaning: Meaning, line: number, owner: PartId, from = 0): Wait[] {
  const waits = waitsOf(reader, tree, scope, meaning);
  return waits.map((wait, index) => {
    const count = from + index + 1;
    const part = count === 1 ? `${owner}#wait` : `${owner}#wait${count}`;
    putPart(reader, part, line, tree);
    return { ...wait, part };
  });
}

type Unplaced<T> = T extends unknown ? Omit<T, 'part'> : never;

function waitsOf(reader: Reader, tree: ClauseTriggerTree, scope: Scope, meaning: Meaning): Unplaced<Wait>[] {
  switch (tree.$type) {
    case 'Later':
      return [{ kind: 'later', seconds: tree.time.seconds }];
    case 'OnClock':
      return [{ kind: 'clock', clock: tree.clock === 'on the shot clock' ? 'shot' : 'period', seconds: tree.time.seconds }];
    case 'WhenLeft':
      return [{ kind: 'clock', clock: tree.clock === undefined ? 'period' : 'shot', seconds: tree.time.seconds }];
    case 'Wait':
      return readEvents(reader, tree.event, scope, meaning).map(event => (tree.gap !== undefined ? { kind: 'after', seconds: tree.gap.seconds, event } : { kind: tree.how === 'while' ? 'as' : tree.how, event }));
    case 'OfWhatIsAbove':
      return [...ofWhatIsAbove(reader, tree, scope, meaning)];
    case 'SameTime':
      return [...atTheSameTime(reader, tree, scope, meaning)];
    case 'AfterThat':
      return [...afterThat(scope, meaning)];
    default:
      return [];
  }
}

/** The events of a clause like `4 and 5 are set`: one for each body. */
export function readEvents(reader: Reader, tree: EventTree, scope: Scope, meaning: Meaning): EventRef[] {
  if (tree.$type === 'BallEvent') return ballEvent(reader, tree, scope, meaning);
  const bodies = subjectsOf(reader, tree.subject, scope, meaning);
  const defenders = bodies.filter(body => !isOffence(body));
  // What defenders do among themselves is all told.
  const amongThem = meaning.subjects?.every(body => !isOffence(body)) === true && meaning.subjects.length > 0;
  if (defenders.length > 0 && !amongThem) {
    report(reader, 'wait-on-defender', meaning.part, { who: defenders.join(' and ') });
    return [];
  }
  return bodies.map(who => ({ who, ...whatHappens(reader, tree, who, scope, { ...meaning, him: meaning.him.length > 0 ? meaning.him : [who] }) }));
}

function ballEvent(reader: Reader, tree: NodeOf<'BallEvent'>, scope: Scope, meaning: Meaning): EventRef[] {
  const who = scope.ball.holder;
  if (who === undefined) {
    report(reader, 'who-is-meant', meaning.part, { word: 'the ball' });
    return [];
  }
  if (tree.is === 'is inbounds') return [{ who, does: 'inbound' }];
  const place: Place | undefined = tree.spot === undefined ? halfCourt : readPlace(reader, tree.spot as SpotTree, meaning);
  return [{ who, does: 'reach', ...(place === undefined ? {} : { place }) }];
}

const halfCourt: Place = { kind: 'spot', name: 'half court' };

function whatHappens(reader: Reader, tree: NodeOf<'PlayerEvent'>, who: BodyId, scope: Scope, meaning: Meaning): Omit<EventRef, 'who'> {
  if (tree.action !== undefined) return actionMeant(reader, tree.action, who, scope, meaning);
  const does = tree.verb === undefined ? 'start' : baseForm(tree.verb);
  const other = tree.by === undefined ? undefined : notHimself(reader, tree.by, who, meaning);
  // `after 2 has gone by`: past him who waits, if he screens for him; else where 2 goes.
  const [waiting] = meaning.him;
  if (does === 'clear' && other === undefined && tree.verb !== undefined) return waiting !== undefined && waiting !== who && scope.screens.get(waiting)?.users.includes(who) === true ? { does, other: waiting } : { does: 'arrive' };
  const place = tree.overHalfCourt ? halfCourt : tree.spot === undefined ? undefined : readPlace(reader, tree.spot as SpotTree, meaning);
  // `has the ball over half court` is a matter of place; `has the ball` is his catch.
  const named = tree.overHalfCourt ? 'reach' : does === 'have-ball' ? 'catch' : does;
  return { does: named, ...(place === undefined ? {} : { place }), ...(other === undefined ? {} : { other }) };
}

/** `as 1 comes at him, 2 cuts`, `once 1 is by him, 4 rolls`: he is the one who waits, not 1 himself. */
function notHimself(reader: Reader, player: PlayerNode, who: BodyId, meaning: Meaning): BodyId | undefined {
  const named = bodyOf(reader, player, meaning);
  return named === who && player.number === undefined ? meaning.subjects?.[0] : named;
}

const waitsHimself = ({ subjects, him }: Meaning, who: BodyId): boolean => (subjects ?? him).includes(who);

/** Whom he goes off by what is told so far. */
function screenerOf({ acts }: Scope, who: BodyId): BodyId | undefined {
  const last = acts.findLast(action => action.who === who && (action.kind === 'move' || action.kind === 'dribble'));
  return last !== undefined && 'off' in last ? last.off.at(-1) : undefined;
}

function actionMeant(reader: Reader, action: NonNullable<NodeOf<'PlayerEvent'>['action']>, who: BodyId, scope: Scope, meaning: Meaning): Omit<EventRef, 'who'> {
  const does = baseForm(action.verb);
  // For his screener the corner is his own shoulder: he does not leave before.
  const corner = does === 'turn-the-corner' ? screenerOf(scope, who) : undefined;
  if (corner !== undefined && waitsHimself(meaning, corner)) return { does: 'clear', other: corner };
  const parts: readonly (EventPart | undefined)[] = 'parts' in action ? (action.parts ?? []) : [];
  const him = parts.find(part => part?.$type === 'PassTo' || part?.$type === 'For' || part?.$type === 'Off' || part?.$type === 'DribbleAt');
  const there = parts.find(part => part?.$type === 'To');
  const player = him?.player ?? him?.players?.[0] ?? (action.$type === 'Close' ? action.player : undefined);
  const other = player === undefined ? undefined : notHimself(reader, player, who, meaning);
  const spot = there?.spots?.[0];
  const place = spot === undefined ? undefined : readPlace(reader, spot, meaning);
  const line = reader.parts.get(meaning.part)?.line;
  // By so much the action meant is told from others.
  if (line !== undefined) tellWords(reader, { key: meaning.part, index: line }, parts.filter(part => part !== undefined && part !== him && part !== there && !saysNothing.has(part.$type)));
  // `when 1 drives at him`: off him it would be a screen of his.
  return { does: does === 'drive' && him?.$type === 'DribbleAt' && other !== undefined ? 'dribble' : does, ...(place === undefined ? {} : { place }), ...(other === undefined ? {} : { other }) };
}

type EventPart = Columns & { readonly $type: string; readonly player?: PlayerNode; readonly players?: readonly PlayerNode[]; readonly spots?: readonly (SpotTree | undefined)[] };
