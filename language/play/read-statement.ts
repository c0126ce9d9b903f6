// A line of a step → its actions: subjects carried on, links numbered, triggers turned into waits.
import type { ActionTree, ClauseTriggerTree, LineTree, NodeOf, StatementTree } from '../grammar/tree.ts';
import type { Action, BodyId } from './play.ts';
import { clausesOf, type LinkTree } from './one-way.ts';
import { sameTime, withDeeds } from './meanwhile.ts';
import { readAction } from './read-actions.ts';
import { tellWords } from './left-over.ts';
import { baseForm, readTrigger } from './read-waits.ts';
import type { Meaning, Reader } from './reader.ts';
import { bodiesOf, isOffence } from './reader.ts';
import type { Line, Scope } from './scope.ts';
import { subjectsOf } from './scope.ts';

/** Reads a statement; the scope's ball moves on with it. `trees` are the step's lines. */
export function readStatement(reader: Reader, scope: Scope, tree: StatementTree, line: Line, trees: readonly (LineTree | undefined)[]): Action[] {
  const clauses = withDeeds(clausesOf(tree), scope, trees);
  const actions: Action[] = [];
  let subjects: readonly BodyId[] = [];
  let him: readonly BodyId[] = [];
  let before: ActionTree | undefined;
  for (const [index, clause] of clauses.entries()) {
    if (clause.action === undefined) continue;
    const meaning: Meaning = { part: line.key, him };
    if (clause.subject !== undefined) subjects = holderMeant(clause, scope, him) ?? subjectsOf(reader, clause.subject, scope, meaning);
    if (index === 0) him = subjects;
    const action: ActionTree = clause.action.$type === 'SameAgain' ? sameAgain(clause.action, before) : clause.action;
    before = action;
    // A leading trigger holds the whole line: its first link, on which the others hang. One in the middle holds what comes behind it.
    const { lead } = clause;
    const triggers = [...(lead === undefined ? [] : [lead]), ...clause.triggers, ...untilOf(action), ...(goesWith(clause, clauses[index - 1]) ? [sameTime(clause)] : [])];
    const link = actions.length === 0 ? 0 : actions[actions.length - 1]!.link + 1;
    const columns = columnsOf(clause, index === 0 ? tree.at : clause.at);
    const taken = new Set<unknown>();
    const waitsOf = (owner: string) => {
      for (const trigger of triggers) taken.add(trigger);
      const whom = (trigger: ClauseTriggerTree): readonly BodyId[] => (catchesHimself(trigger) ? receiverOfLast(scope, him, trigger === lead) : trigger === lead ? toldOfLast(scope, him) : him);
      return readTriggers(reader, scope, triggers, (trigger) => ({ part: line.key, subjects, him: goesHimself(trigger) || action.$type === 'Defend' ? receiversOf(reader, action, whom(trigger), { self: subjects[0]!, said: tree, above: scope.acts }) : whom(trigger) }), line.index, owner);
    };
    const told = reader.problems.length;
    actions.push(...readAction(reader, scope, action, { subjects, him, said: tree, columns, line, link, waitsOf, taken }));
    if (reader.problems.length === told) tellWords(reader, line, triggers.filter(trigger => trigger !== undefined && !taken.has(trigger)));
  }
  return actions;
}

/** `5 screens for 1, then he drives`, `2 swings it to 1, and he moves it on to 3`: what is done with the ball its holder does. */
function holderMeant({ subject, action }: LinkTree, { ball }: Scope, him: readonly BodyId[]): readonly BodyId[] | undefined {
  if (subject?.$type !== 'Pronoun' || subject.word !== 'he' || ball.holder === undefined || him.includes(ball.holder)) return undefined;
  return action !== undefined && ['Dribble', 'Pass', 'HandOff', 'Shot'].includes(action.$type) ? [ball.holder] : undefined;
}

const together: ReadonlySet<string> = new Set(['Move', 'Dribble', 'Screen', 'Seal']);

/** `4 flashes to the nail and 5 ducks in`: two men, each his own way, go together. Who comes off the other's screen hangs on that. */
function goesWith({ and, subject, action, lead, triggers }: LinkTree, before: LinkTree | undefined): boolean {
  if (and !== true || subject === undefined || lead !== undefined || triggers.length > 0 || before === undefined) return false;
  if (!together.has(action?.$type ?? '') || !together.has(before.action?.$type ?? '')) return false;
  return before.action?.$type !== 'Screen' || action?.$type === 'Screen';
}

function columnsOf(clause: LinkTree, at: number): { readonly at: number; readonly to: number } {
  return { at, to: clause.to };
}

function readTriggers(reader: Reader, scope: Scope, triggers: readonly (ClauseTriggerTree | undefined)[], meaningOf: (trigger: ClauseTriggerTree) => Meaning, line: number, owner: string) {
  return triggers.reduce<ReturnType<typeof readTrigger>>((waits, trigger) => {
    if (trigger === undefined) return waits;
    return [...waits, ...readTrigger(reader, trigger, scope, meaningOf(trigger), line, owner, waits.length)];
  }, []);
}

/** `when she goes, 1 drifts`: where the step tells nothing of 1 above, she is the man of the offence it told of last; `they` are those. */
function toldOfLast({ acts }: Scope, him: readonly BodyId[]): readonly BodyId[] {
  const isToldOf = acts.some((action) => him.includes(action.who) || ('to' in action && typeof action.to === 'string' && him.includes(action.to)));
  const last = isToldOf ? undefined : acts.findLast(({ who }) => isOffence(who));
  return last === undefined ? him : acts.filter(({ who, line, link }) => isOffence(who) && line === last.line && link === last.link).map(({ who }) => who);
}

/** `once he catches it`, `as he gets it` */
function catchesHimself(trigger: ClauseTriggerTree): boolean {
  if (trigger.$type !== 'Wait' || trigger.event.$type !== 'PlayerEvent' || trigger.event.subject?.$type !== 'Pronoun' || trigger.event.verb === undefined) return false;
  return ['catch', 'receive', 'have-ball'].includes(baseForm(trigger.event.verb));
}

/** Before what waits he is the man the ball came to last; behind it only where the passer is the one who would be meant. */
function receiverOfLast({ acts }: Scope, him: readonly BodyId[], stands: boolean): readonly BodyId[] {
  const last = acts.findLast((action) => action.kind === 'pass' || action.kind === 'hand-off');
  return last !== undefined && 'to' in last && typeof last.to === 'string' && (stands || him.includes(last.who)) ? [last.to] : him;
}

/** `as he cuts`, `once he comes off 4`: what a man does without the ball. */
function goesHimself(trigger: ClauseTriggerTree): boolean {
  if (trigger.$type !== 'Wait' || trigger.event.$type !== 'PlayerEvent' || trigger.event.subject?.$type !== 'Pronoun') return false;
  const { action, by } = trigger.event;
  return by !== undefined || action?.$type === 'Move' || action?.$type === 'Seal';
}

/** `1 passes to 2 as he cuts`, `4 screens for 2 as he cuts`: that is the man the ball comes to, or the screen is set for. */
function receiversOf(reader: Reader, action: ActionTree, him: readonly BodyId[], whose: Pick<Meaning, 'self' | 'said' | 'above'>): readonly BodyId[] {
  if (action.$type === 'Defend') return guardedIn(reader, action, him);
  if (action.$type !== 'Pass' && action.$type !== 'HandOff' && action.$type !== 'Screen') return him;
  const players = action.parts.flatMap(part => (part?.$type === 'PassTo' ? [part.player] : part?.$type === 'For' ? part.players : []));
  const numbers = players.filter(player => player?.number !== undefined);
  return bodiesOf({ ...reader, problems: [] }, numbers.length === 0 ? players.slice(0, 1) : numbers, { part: '', him, ...whose });
}

/** `X4 helps on 3 as she drives`: she is whom he guards. */
function guardedIn(reader: Reader, { parts }: NodeOf<'Defend'>, him: readonly BodyId[]): readonly BodyId[] {
  const players = parts.flatMap(part => (part !== undefined && 'player' in part && part.player !== undefined ? [part.player] : []));
  const offence = players.filter(player => player.number !== undefined && !player.defence);
  return offence.length === 0 ? him : bodiesOf(reader, offence, { part: '', him });
}

/** `waits until 8 on the clock`: what he does next is pinned there, so the hold is. */
function untilOf(action: ActionTree): readonly NodeOf<'OnClock'>[] {
  return action.$type === 'Hold' ? action.parts.filter(part => part?.$type === 'OnClock') : [];
}

/** `4 screens for 5, then for 2`: the verb before once more, with these words in the place of its own of the same kind. */
function sameAgain(tree: NodeOf<'SameAgain'>, before: ActionTree | undefined): ActionTree {
  if (before === undefined || !('parts' in before)) return tree;
  // Nobody drives for another: those words are left over, and told so.
  const fitting = tree.parts.filter(part => part?.$type !== 'For' || before.$type !== 'Dribble');
  const fresh = fitting.map(part => (part?.$type === 'To' && 'player' in part && part.player !== undefined ? { ...part, $type: 'PassTo' } : part));
  const kinds = new Set(fresh.map(part => part?.$type));
  const parts = [...(before.parts as readonly ({ readonly $type: string } | undefined)[]).filter(part => !kinds.has(part?.$type as never)), ...fresh];
  return { ...before, at: tree.at, to: tree.to, parts } as unknown as ActionTree;
}
