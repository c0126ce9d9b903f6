// `1 dribbles to the top while 2 drifts`: what goes on meanwhile is a deed of this line, unless the step tells it elsewhere; then it is waited for.
import type { ClauseTriggerTree, Columns, LineTree, NodeOf } from '../grammar/tree.ts';
import type { BodyId } from './play.ts';
import type { LinkTree } from './one-way.ts';
import { baseForm } from './read-waits.ts';
import type { Scope } from './scope.ts';

type Deed = NodeOf<'PlayerEvent'> & { readonly action: NonNullable<NodeOf<'PlayerEvent'>['action']>; readonly subject: NodeOf<'Players'> };

/** The clauses of a line, those of its deeds meanwhile among them: what stands first begins, the other with it. */
export function withDeeds(clauses: readonly LinkTree[], scope: Scope, trees: readonly (LineTree | undefined)[]): readonly LinkTree[] {
  if (!clauses.some(({ lead, triggers }) => [lead, ...triggers].some((each) => each?.$type === 'Wait' && each.how === 'while'))) return clauses;
  return clauses.flatMap((clause): readonly LinkTree[] => {
    const isDeed = (trigger: ClauseTriggerTree | undefined): boolean => deedOf(trigger, scope, trees) !== undefined;
    const before = isDeed(clause.lead) ? [clause.lead!] : [];
    const behind = clause.triggers.filter(isDeed);
    if (before.length + behind.length === 0) return [clause];
    const { lead, ...rest } = clause;
    const kept: LinkTree = { ...rest, ...(before.length === 0 && lead !== undefined && { lead }), triggers: [...before.map(sameTime), ...clause.triggers.filter((trigger) => !behind.includes(trigger))] };
    const told = (trigger: ClauseTriggerTree, triggers: LinkTree['triggers']): LinkTree => {
      const { subject, action } = deedOf(trigger, scope, trees)!;
      return { ...rest, at: trigger.at, to: trigger.to, subject, action, triggers };
    };
    return [...before.map((each) => told(each, [])), kept, ...behind.map((each) => told(each!, [sameTime(each!)]))];
  });
}

/** Who does something meanwhile: `while 2 and 3 cut`. */
export function meanwhile(trigger: ClauseTriggerTree | undefined): NodeOf<'Players'> | undefined {
  if (trigger?.$type !== 'Wait' || trigger.how !== 'while') return undefined;
  const { event } = trigger;
  return event.$type === 'PlayerEvent' && event.action !== undefined && event.subject?.$type === 'Players' ? event.subject : undefined;
}

function deedOf(trigger: ClauseTriggerTree | undefined, scope: Scope, trees: readonly (LineTree | undefined)[]): Deed | undefined {
  if (meanwhile(trigger) === undefined) return undefined;
  const event = (trigger as NodeOf<'Wait'>).event as Deed;
  const { players } = event.subject;
  // Where no place is said it may go by another word: `while 1 is driving`.
  const kind = 'parts' in event.action && event.action.parts.length > 0 ? event.action.$type : undefined;
  const isTold = players.some((player) => player?.number === undefined || tells(trees, player.number, player.defence, kind, baseForm(event.action.verb)) || hasTold(scope, `${player.defence ? 'X' : ''}${player.number}` as BodyId, baseForm(event.action.verb)));
  return isTold ? undefined : event;
}

/** A line of the step says that he does something of the kind, or anything; of a defender, the very thing. */
function tells(trees: readonly (LineTree | undefined)[], number: number, defence: boolean, kind: string | undefined, verb: string): boolean {
  return trees.some((tree) => tree?.$type === 'Statement' && [tree.first, ...tree.links.map(({ clause }) => clause)].some((clause) => clause?.action !== undefined && (defence ? 'verb' in clause.action && baseForm(clause.action.verb) === verb : kind === undefined || clause.action.$type === kind) && clause.subject?.$type === 'Players' && clause.subject.players.some((player) => player?.number === number && player.defence === defence)));
}

/** He has done it on the way here. */
function hasTold({ acts, before }: Scope, who: BodyId, verb: string): boolean {
  return [...acts, ...(before?.() ?? [])].some((action) => action.who === who && action.verb === verb);
}

/** The words of something that goes on with what is told before it. */
export function sameTime({ at, to }: Columns): NodeOf<'SameTime'> {
  return { $type: 'SameTime', at, to, spans: {} };
}
