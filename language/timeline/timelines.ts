// A play on the floor of its own rule set and of each further one (`also nfhs`), and what is kept of that while it is being written.
import { LEVELS } from '../motion/levels.ts';
import type { Play, RuleSetId } from '../play/play.ts';
import { schedule, settlePlay } from './schedule.ts';
import type { Timeline } from './timeline.ts';

export interface Timelines {
  readonly own: Timeline;
  readonly also: readonly UnderRules[];
}

export interface UnderRules {
  readonly rules: RuleSetId;
  readonly timeline: Timeline;
}

export function timelinesOf(play: Play): Timelines {
  const own = schedule(play);
  const further = play.alsoRules.filter((rules) => rules !== play.rules.value);
  return { own, also: further.map((rules) => ({ rules, timeline: scheduleUnder(play, own, rules) })) };
}

/** The same play on another rule set's floor, up to the shots: nothing that its rules mind comes after them. The spread of its looks' times is the play's own. */
function scheduleUnder(play: Play, { times }: Timeline, rules: RuleSetId): Timeline {
  const { runs, scene } = settlePlay({ ...play, rules: { ...play.rules, value: rules } }, LEVELS[play.level.value], true);
  return { runs, times, problems: scene.problems };
}

/** The play with the line that is being typed, and the play without it. */
const mostKept = 2;

/**
 * The same timelines, kept for the plays that were asked for last. A line that cannot be read leaves a play what it is without that line: from
 * its first letter to its last there is nothing new to settle, nor where a letter is taken back.
 */
export function keepTimelines(): (play: Play) => Timelines {
  let kept: readonly { readonly play: Play; readonly timelines: Timelines }[] = [];
  return (play) => {
    const found = kept.find((one) => isSame(one.play, play)) ?? { play, timelines: timelinesOf(play) };
    kept = [found, ...kept.filter((one) => one !== found)].slice(0, mostKept);
    return found.timelines;
  };
}

/** Of plain data; names in another order are another value. */
function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((one, at) => isSame(one, b[at]));
  const names = Object.keys(a);
  const others = Object.keys(b);
  return names.length === others.length && names.every((name, at) => name === others[at] && isSame((a as Named)[name], (b as Named)[name]));
}

type Named = Readonly<Record<string, unknown>>;
