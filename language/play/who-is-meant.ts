// Whom `he` and `they` mean, in a wait and as the subject of a link, where the line's first men are not meant.
import type { ActionTree, ClauseTriggerTree, NodeOf, StatementTree } from '../grammar/tree.ts';
import type { LinkTree } from './one-way.ts';
import type { BodyId } from './play.ts';
import { anotherBefore } from './pronouns.ts';
import { baseForm } from './read-waits.ts';
import type { Reader } from './reader.ts';
import { bodiesOf, isOffence } from './reader.ts';
import type { Scope } from './scope.ts';

/** The link that waits. */
export interface Waiting {
  readonly reader: Reader;
  readonly scope: Scope;
  readonly said: StatementTree;
  readonly action: ActionTree;
  /** Who acts in it. */
  readonly subjects: readonly BodyId[];
  /** The line's first men. */
  readonly him: readonly BodyId[];
}

/** Whom a pronoun of the wait means. One that stands before its link speaks of what is told above; one behind it, of those whom the link names. */
export function himOfWait(trigger: ClauseTriggerTree, isBefore: boolean, waiting: Waiting): readonly BodyId[] {
  const { scope, him, action } = waiting;
  const thrower = throwsIn(trigger) ? throwerOf(scope) : undefined;
  if (thrower !== undefined) return [thrower];
  const above = catchesHimself(trigger) ? receiverOfLast(scope, him, isBefore) : isBefore ? toldOfLast(scope, him) : him;
  if (!goesHimself(trigger) && action.$type !== 'Defend') return above;
  const meant = receiversOf(waiting, above);
  return anotherThan(waiting, meant, trigger) ?? meant;
}

/** `after he throws it in`: he who does, whoever is told of above. */
function throwsIn(trigger: ClauseTriggerTree): boolean {
  return whatHeDoes(trigger)?.action?.$type === 'ThrowIn';
}

function throwerOf({ ball, acts }: Scope): BodyId | undefined {
  return ball.out ? ball.holder : acts.findLast((action) => action.kind === 'pass' && action.throwIn)?.who;
}

/** `2 screens for 1 and holds it till she's gone`: nobody waits for himself to go; who is named before is meant. */
function anotherThan({ said, subjects, scope }: Waiting, meant: readonly BodyId[], trigger: ClauseTriggerTree): readonly BodyId[] | undefined {
  const [self] = subjects;
  const verb = whatHeDoes(trigger)?.verb;
  if (self === undefined || meant.length !== 1 || meant[0] !== self || verb === undefined || baseForm(verb) !== 'clear') return undefined;
  const other = anotherBefore(said, self, trigger.at, scope.acts);
  return other === undefined ? undefined : [other];
}

/** `5 screens for 1, then he drives`, `2 swings it to 1, and he moves it on to 3`: what is done with the ball its holder does. */
export function holderMeant({ subject, action }: LinkTree, { ball }: Scope, him: readonly BodyId[]): readonly BodyId[] | undefined {
  if (subject?.$type !== 'Pronoun' || subject.word !== 'he' || ball.holder === undefined || him.includes(ball.holder)) return undefined;
  return action !== undefined && ['Dribble', 'Pass', 'HandOff', 'Shot'].includes(action.$type) ? [ball.holder] : undefined;
}

/** `when she goes, 1 drifts`: where the step tells nothing of 1 above, she is the man of the offence it told of last; `they` are those. */
function toldOfLast({ acts }: Scope, him: readonly BodyId[]): readonly BodyId[] {
  const isToldOf = acts.some((action) => him.includes(action.who) || ('to' in action && typeof action.to === 'string' && him.includes(action.to)));
  const last = isToldOf ? undefined : acts.findLast(({ who }) => isOffence(who));
  return last === undefined ? him : acts.filter(({ who, line, link }) => isOffence(who) && line === last.line && link === last.link).map(({ who }) => who);
}

/** The event of a wait whose subject is a pronoun. */
function whatHeDoes(trigger: ClauseTriggerTree): NodeOf<'PlayerEvent'> | undefined {
  if (trigger.$type !== 'Wait' || trigger.event.$type !== 'PlayerEvent') return undefined;
  return trigger.event.subject?.$type === 'Pronoun' ? trigger.event : undefined;
}

/** `once he catches it`, `as he gets it` */
function catchesHimself(trigger: ClauseTriggerTree): boolean {
  const verb = whatHeDoes(trigger)?.verb;
  return verb !== undefined && ['catch', 'receive', 'have-ball'].includes(baseForm(verb));
}

/** Before what waits he is the man the ball came to last; behind it only where the passer is the one who would be meant. */
function receiverOfLast({ acts }: Scope, him: readonly BodyId[], stands: boolean): readonly BodyId[] {
  const last = acts.findLast((action) => action.kind === 'pass' || action.kind === 'hand-off');
  return last !== undefined && 'to' in last && typeof last.to === 'string' && (stands || him.includes(last.who)) ? [last.to] : him;
}

/** `as he cuts`, `once he comes off 4`, `as he gets there`, `when he is open`: what a man does without the ball. */
function goesHimself(trigger: ClauseTriggerTree): boolean {
  const event = whatHeDoes(trigger);
  if (event === undefined) return false;
  const { action, by, verb } = event;
  return by !== undefined || action?.$type === 'Move' || action?.$type === 'Seal' || (verb !== undefined && ['arrive', 'clear', 'open'].includes(baseForm(verb)));
}

/** `1 passes to 2 as he cuts`, `4 screens for 2 as he cuts`, `1 fills for 4 when he has gone`: that is the man the ball comes to, the screen is set for, or whose place is filled. */
function receiversOf({ reader, scope, said, action, subjects }: Waiting, him: readonly BodyId[]): readonly BodyId[] {
  if (action.$type === 'Defend') return guardedIn(reader, action, him);
  if (!('parts' in action) || action.parts === undefined) return him;
  const players = (action.parts as readonly (NodeOf<'PassTo'> | NodeOf<'For'> | undefined)[]).flatMap(part => (part?.$type === 'PassTo' ? [part.player] : part?.$type === 'For' ? part.players : []));
  if (players.length === 0) return him;
  const numbers = players.filter(player => player?.number !== undefined);
  return bodiesOf({ ...reader, problems: [] }, numbers.length === 0 ? players.slice(0, 1) : numbers, { part: '', him, self: subjects[0]!, said, above: scope.acts });
}

/** `X4 helps on 3 as she drives`: she is whom he guards. */
function guardedIn(reader: Reader, { parts }: NodeOf<'Defend'>, him: readonly BodyId[]): readonly BodyId[] {
  const players = parts.flatMap(part => (part !== undefined && 'player' in part && part.player !== undefined ? [part.player] : []));
  const offence = players.filter(player => player.number !== undefined && !player.defence);
  return offence.length === 0 ? him : bodiesOf(reader, offence, { part: '', him });
}
