import { message, type Message } from '../message/message.ts';
import { secondHand } from '../court/sources.ts';
import { check } from './check.ts';
import { latest } from './clock.ts';
import { ballPartAt, type Held } from './moments.ts';
import type { Subject, Way } from './subject.ts';
import { inFrontcourt } from '../court/court.ts';
import { distance, type Point } from '../court/point.ts';
import type { CloselyGuarded } from '../court/rule-set.ts';
import type { Keyframes, Run } from '../timeline/timeline.ts';
import { trackAt } from '../timeline/track.ts';

const tickMs = 100;

export const closelyGuarded = check({
  code: 'closely-guarded',
  severity: 'hint',
  needs: 'way',
  source: secondHand('FIBA 27.1, NCAA and NFHS as pages quote them; the NBA has no such count'),
  byRules: true,
  message: '{who} holds the ball for {held:seconds} with {guard} within {within}: after {count:seconds} closely guarded the ball is lost. Let him pass or drive sooner.',
  manual: {
    title: 'Closely guarded for too long',
    why: 'Who holds the ball with a defender near must pass, shoot or dribble within five seconds. How near, and whether a dribbler is counted, is another thing in each rule set: FIBA about 1 m, holder only; NCAA men 6 ft, holder only; NFHS 6 ft, holder and dribbler counted apart, in the front court; NBA has no such count. All of these second hand. Where defenders are drawn their distance is measured; where none is, a man who stands with the ball is told as if one were near, a dribbler not. A hint, because it hangs on how near they guard him. A pass that waits is told as that.',
    wrong: 'from 5-out\n1 passes to 2\n2 holds for 7 seconds\n2 drives to rim\nlook 2: layup',
    right: 'from 5-out\n1 passes to 2\n2 drives to rim\nlook 2: layup',
  },
  *find(subject) {
    const rule = subject.rules.counts.closelyGuarded;
    if (rule === undefined) return;
    for (const way of subject.ways) {
      for (const stretch of stretches(way.run, rule)) {
        if (stretch.t1 - stretch.t0 <= rule.seconds.value * 1000) continue;
        const guarded = longestGuarded(subject, way.run, stretch, rule);
        if (guarded === undefined || guarded.to - guarded.from <= rule.seconds.value * 1000 || isToldAsWaiting(subject, way, stretch)) continue;
        const params = { who: stretch.by, held: latest(guarded.to - guarded.from), guard: guarded.by ?? '', within: rule.within.printed, count: rule.seconds.value };
        const moment = guarded.from + rule.seconds.value * 1000;
        yield {
          part: ballPartAt(way, moment),
          params,
          ...insteadOf(params, stretch.live, guarded.by),
          run: way.run.id,
          moment,
          spot: trackAt(way.run.tracks[stretch.by]!, moment),
          source: rule.seconds.source,
        };
      }
    }
  },
});

/** Where no defence is drawn, or he dribbles. */
function insteadOf(params: Readonly<Record<'who' | 'held' | 'guard' | 'within' | 'count', string | number>>, dribbles: boolean, by: string | undefined): { readonly instead?: Message } {
  if (by !== undefined) return dribbles ? { instead: message('{who} dribbles the ball for {held:seconds} with {guard} within {within}: after {count:seconds} closely guarded the ball is lost. Let him pass or drive sooner.', params) } : {};
  const { guard: _, ...alone } = params;
  return { instead: message('{who} holds the ball for {held:seconds}, and a man within {within} is near enough for the count: after {count:seconds} closely guarded the ball is lost. Let him pass or drive sooner.', alone) };
}

/** Who has the ball from when to when: standing with it, and where the rule set counts that too, dribbling. */
function stretches(run: Run, { countsDribbler }: CloselyGuarded): readonly Held[] {
  const found: Held[] = [];
  for (const state of run.ball) {
    if (state.kind !== 'held' || state.out || (state.live && !countsDribbler.value) || run.tracks[state.by] === undefined) continue;
    const last = found.at(-1);
    if (last !== undefined && last.by === state.by && last.live === state.live && last.t1 === state.t0) found[found.length - 1] = { ...last, t1: state.t1 };
    else found.push({ ...state, t0: Math.max(state.t0, run.startsAt) });
  }
  return found;
}

interface Guarded {
  readonly from: number;
  readonly to: number;
  /** Absent where no defence is drawn. */
  readonly by?: string;
}

function longestGuarded({ court, rules, defendersOn }: Subject, run: Run, { by, live, t0, t1 }: Held, { within }: CloselyGuarded): Guarded | undefined {
  const holder = run.tracks[by]!;
  // Read as forum summaries give it: high school counts in the front court only.
  const counts = (t: number) => rules.id !== 'nfhs' || inFrontcourt(court, trackAt(holder, t));
  const defenders = Object.entries(defendersOn(run));
  // A dribbler keeps away from a man who is not even drawn.
  if (defenders.length === 0) return counts(t0) && !live ? { from: t0, to: t1 } : undefined;
  let longest: Guarded | undefined;
  for (const [defender, keyframes] of defenders) {
    let from: number | undefined;
    for (let t = t0; t <= t1; t += tickMs) {
      const near = counts(t) && distance(keyframeAt(keyframes, t), trackAt(holder, t)) <= within.value;
      from = near ? (from ?? t) : undefined;
      if (from !== undefined && (longest === undefined || t - from > longest.to - longest.from)) longest = { from, to: t, by: defender };
    }
  }
  return longest;
}

/** The keyframe at or before a moment. */
export function keyframeAt({ t0, stepMs, points }: Keyframes, t: number): Point {
  return points[Math.max(0, Math.min(points.length - 1, Math.floor((t - t0) / stepMs)))]!;
}

function isToldAsWaiting({ timeline }: Subject, { run }: Way, { by, t0, t1 }: Held): boolean {
  return timeline.problems.some(({ code, params, moment = 0 }) => code === 'pass-waits' && params.who === by && moment >= t0 && moment <= t1 && run.end >= moment);
}
