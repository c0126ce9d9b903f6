// `comes off 5 and drives to the nail`: how a way begins stands in one clause, where it ends in the next. It is one action.
import type { ActionTree, ClauseTree, ClauseTriggerTree, StatementTree } from '../grammar/tree.ts';
import { baseForm } from './read-waits.ts';

/** Only say how a way begins, whatever joins the clause that says where it ends. */
const beginnings: ReadonlySet<string> = new Set(['come-off', 'turn-the-corner']);
/** Say where a way ends; a man who is already driving does not do so anew. Common usage, no source. */
const onwards: ReadonlySet<string> = new Set(['goes', 'go', 'comes', 'come']);
const goings: ReadonlySet<string> = new Set(['drive', 'dribble', 'cut', 'dive', 'run', 'sprint']);

/** A clause, with what it waits for before it. */
export type LinkTree = Omit<ClauseTree, 'lead'> & { readonly lead?: ClauseTriggerTree; /** Joined by `and` alone. */ readonly and?: true };

/** The clauses of a line, the first with the line's own wait; a beginning and its end are one, with the words of both. */
export function clausesOf({ lead, first, links }: StatementTree): readonly LinkTree[] {
  const clauses: LinkTree[] = first === undefined ? [] : [lead === undefined ? first : { ...first, lead }];
  for (const { how, then, clause } of links) {
    if (clause === undefined) continue;
    const last = clauses[clauses.length - 1];
    const joined = last && oneWay(last, clause, how === 'and' && !then);
    if (joined === undefined) clauses.push(how === 'and' && !then ? { ...clause, and: true } : clause);
    else clauses[clauses.length - 1] = joined;
  }
  return clauses;
}

const together: ReadonlySet<string> = new Set(['Move', 'Dribble', 'Screen', 'Seal']);

/** `4 flashes to the nail and 5 ducks in`: two men, each his own way, go together. Who comes off the other's screen hangs on that. */
export function goesWith({ and, subject, action, lead, triggers }: LinkTree, before: LinkTree | undefined): boolean {
  if (and !== true || subject === undefined || lead !== undefined || triggers.length > 0 || before === undefined) return false;
  if (!together.has(action?.$type ?? '') || !together.has(before.action?.$type ?? '')) return false;
  return before.action?.$type !== 'Screen' || action?.$type === 'Screen';
}

function oneWay(before: LinkTree, after: LinkTree, byAnd: boolean): LinkTree | undefined {
  const [begins, ends] = [before.action, after.action];
  if (!isWay(begins) || !isWay(ends) || after.subject !== undefined || after.lead !== undefined || after.triggers.length > 0) return undefined;
  const first = baseForm(begins.verb);
  const onlyGoes = onwards.has(ends.verb);
  // `goes right off 5 and gets to the lane`
  const beginsOff = beginnings.has(first) || (onwards.has(begins.verb) && begins.parts.some((part) => part?.$type === 'Off' || part?.$type === 'Past'));
  // `scrapes off 5 and bursts to the slot`
  const cutsOff = byAnd && first === 'cut' && ends.$type === 'Move' && begins.parts.some((part) => part?.$type === 'Off');
  if (!(cutsOff || (beginsOff ? onlyGoes || goings.has(baseForm(ends.verb)) : first === 'drive' && byAnd && onlyGoes))) return undefined;
  if (begins.parts.some(ended) || !ends.parts.some(ended) || !ends.parts.every((part) => ended(part) || part?.$type === 'Via' || part?.$type === 'Heading')) return undefined;
  // The verb that tells more of the two.
  const verb = (cutsOff || first === 'come-off') && !onlyGoes ? ends : begins;
  return { ...before, to: after.to, action: { ...verb, at: begins.at, to: ends.to, parts: [...begins.parts, ...ends.parts] } as ActionTree };
}

type Way = Extract<ActionTree, { readonly $type: 'Move' | 'Dribble' }>;

function isWay(action: ActionTree | undefined): action is Way {
  return action?.$type === 'Move' || action?.$type === 'Dribble';
}

function ended(part: { readonly $type: string } | undefined): boolean {
  return part?.$type === 'To' || part?.$type === 'At' || part?.$type === 'DribbleAt';
}
