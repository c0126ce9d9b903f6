/** What the text makes defenders do, and when: conditions acted out and lines of their own (rule 17). */
import type { BodyId, Place, Play } from '../play/play.ts';
import { DEFENCE } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';

export interface Cue {
  readonly who: BodyId;
  /** ms */
  readonly at: number;
  readonly verb: string;
  /** The man, or screener, he does it to. */
  readonly on?: BodyId;
  readonly to?: Place;
}

/** The cues of one run-through, in time order: those of its own steps only. */
export function cuesOf(play: Play, run: Run): readonly Cue[] {
  const cues: Cue[] = [];
  let times: ReadonlyMap<string, number> | undefined;
  const add = (event: string, cue: Omit<Cue, 'at'>): void => {
    times ??= new Map(run.events.map(({ id, at }) => [id, at]));
    const at = times.get(event);
    if (at !== undefined) cues.push({ ...cue, at });
  };
  for (const step of play.steps) {
    if (!run.steps.includes(step.key)) continue;
    const { condition } = step;
    if (condition?.kind === 'defence') {
      for (const who of [condition.who, ...(condition.also ?? [])]) add(`${step.key}:start.${who}`, { who, verb: condition.verb, ...(condition.on && { on: condition.on }) });
    }
    for (const action of [...step.kept, ...step.actions]) {
      if (action.kind === 'defend') add(`${action.id}:start`, { who: action.who, verb: action.verb, ...(action.on && { on: action.on }), ...(action.to && { to: action.to.value }) });
    }
  }
  return cues.sort((a, b) => a.at - b.at);
}

/** He takes this man from now on; the one he leaves is left, or taken over in a switch. */
const takesOver: ReadonlySet<string> = new Set(['guard', 'rotate', 'close-out']);

/** Whom each of X1–X5 guards after these cues: his own number, until he switches or takes another. */
export function menAfter(cues: readonly Cue[]): readonly BodyId[] {
  const men: BodyId[] = DEFENCE.map((who) => who.slice(1) as BodyId);
  const indexOf = (who: BodyId): number => Number(who.slice(1)) - 1;
  for (const { who, verb, on } of cues) {
    if (on === undefined || (verb !== 'switch' && !takesOver.has(verb))) continue;
    const own = indexOf(who);
    const target = on.startsWith('X') ? men[indexOf(on)]! : on;
    const other = men.indexOf(target);
    if (verb === 'switch' && other !== -1) men[other] = men[own]!;
    men[own] = target;
  }
  return men;
}
