// A line of a step → its actions: subjects carried on, links numbered, triggers turned into waits.
import type { ActionTree, ClauseTriggerTree, LineTree, NodeOf, StatementTree } from '../grammar/tree.ts';
import type { Action, BodyId, Wait } from './play.ts';
import { clausesOf, goesWith, type LinkTree } from './one-way.ts';
import { sameTime, withDeeds } from './meanwhile.ts';
import { readAction } from './read-actions.ts';
import { tellWords } from './left-over.ts';
import { readTrigger } from './read-waits.ts';
import type { Meaning, Reader } from './reader.ts';
import type { Line, Scope } from './scope.ts';
import { subjectsOf } from './scope.ts';
import { himOfWait, holderMeant, type Waiting } from './who-is-meant.ts';

/** Reads a statement; the scope's ball moves on with it. `trees` are the step's lines. */
export function readStatement(reader: Reader, scope: Scope, tree: StatementTree, line: Line, trees: readonly (LineTree | undefined)[]): Action[] {
  const clauses = withDeeds(clausesOf(tree), scope, trees);
  const actions: Action[] = [];
  let subjects: readonly BodyId[] = [];
  let him: readonly BodyId[] = [];
  let before: ActionTree | undefined;
  let untils: readonly Wait[] = [];
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
      const about: Waiting = { reader, scope, said: tree, action, subjects, him };
      return readTriggers(reader, scope, triggers, (trigger) => ({ part: line.key, subjects, him: himOfWait(trigger, trigger === lead, about) }), line.index, owner);
    };
    const told = reader.problems.length;
    const made = readAction(reader, scope, action, { subjects, him, said: tree, columns, line, link, waitsOf, taken });
    actions.push(...made.map((each) => withUntils(each, untils)));
    untils = made.some(({ kind }) => kind === 'defend') ? made.flatMap(({ waits }) => waits.filter(({ kind }) => kind === 'until')) : [];
    if (reader.problems.length === told) tellWords(reader, line, triggers.filter(trigger => trigger !== undefined && !taken.has(trigger)));
  }
  return actions;
}

/** `X5 shows on 1 until 1 is past 5, then recovers`: a defender goes on with what he does until he does the next thing, which waits for that. */
function withUntils(action: Action, untils: readonly Wait[]): Action {
  if (action.kind !== 'defend') return action;
  const until = untils.filter((wait) => 'event' in wait).map((wait): Wait => ({ kind: 'once', event: wait.event, part: wait.part }));
  return { ...action, waits: [...action.waits.filter(({ kind }) => kind !== 'until'), ...until] };
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
  // What he goes off or round he has behind him then.
  const isPast = (type: string | undefined): boolean => kinds.has('To') && (type === 'Off' || type === 'Past');
  const parts = [...(before.parts as readonly ({ readonly $type: string } | undefined)[]).filter(part => !kinds.has(part?.$type as never) && !isPast(part?.$type)), ...fresh];
  return { ...before, at: tree.at, to: tree.to, parts } as unknown as ActionTree;
}
