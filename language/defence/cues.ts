/** What the text makes defenders do, and when: conditions acted out and lines of their own (rule 17). */
import type { BodyId, Place, Play } from '../play/play.ts';
import type { Run } from '../timeline/timeline.ts';

export interface Cue {
  readonly who: BodyId;
  /** ms */
  readonly at: number;
  readonly verb: string;
  /** The man he does it to. */
  readonly on?: BodyId;
  readonly to?: Place;
}

/** The cues of one run-through, in time order: those of its own steps only. */
export function cuesOf(play: Play, run: Run): readonly Cue[] {
  const times = new Map(run.events.map((event) => [event.id, event.at]));
  const cues: Cue[] = [];
  for (const step of play.steps) {
    if (!run.steps.includes(step.key)) continue;
    const { condition } = step;
    if (condition?.kind === 'defence') {
      for (const who of [condition.who, ...(condition.also ?? [])]) {
        const at = times.get(`${step.key}:start.${who}`);
        if (at !== undefined) cues.push({ who, at, verb: condition.verb, ...(condition.on && { on: condition.on }) });
      }
    }
    for (const action of [...step.kept, ...step.actions]) {
      if (action.kind !== 'defend') continue;
      const at = times.get(`${action.id}:start`);
      if (at !== undefined) cues.push({ who: action.who, at, verb: action.verb, ...(action.on && { on: action.on }), ...(action.to && { to: action.to.value }) });
    }
  }
  return cues.sort((a, b) => a.at - b.at);
}

/** Whom a defender guards at this moment: his own number, until he switches. */
export function manOf(who: BodyId, cues: readonly Cue[], now: number): BodyId {
  const men = new Map<BodyId, BodyId>();
  const man = (defender: BodyId): BodyId => men.get(defender) ?? (defender.slice(1) as BodyId);
  for (const { who: switcher, at, verb, on } of cues) {
    if (at > now || verb !== 'switch' || on === undefined) continue;
    const target = on.startsWith('X') ? man(on) : on;
    const other = (['X1', 'X2', 'X3', 'X4', 'X5'] as const).find((defender) => man(defender) === target);
    const left = man(switcher);
    men.set(switcher, target);
    if (other !== undefined && other !== switcher) men.set(other, left);
  }
  return man(who);
}
