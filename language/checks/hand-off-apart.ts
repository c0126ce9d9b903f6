import { message, type Message } from '../message/message.ts';
import { commonPractice } from '../court/sources.ts';
import { check } from './check.ts';
import { latest } from './clock.ts';
import { distance } from '../court/point.ts';
import { LEVELS } from '../motion/levels.ts';
import type { HandOff } from '../play/play.ts';
import type { Segment } from '../timeline/timeline.ts';
import { trackAt } from '../timeline/track.ts';
import type { Way } from './subject.ts';

// Half a second on the spot is a hand-off; more is a holder left waiting. Common practice, no source.
const waitsMs = 500;

export const handOffApart = check({
  code: 'hand-off-apart',
  severity: 'warning',
  needs: 'before',
  source: commonPractice('an arm’s reach by level, and half a second on the spot: common practice, no source'),
  message: '{who} and {to} are {gap} m apart when {who} is to hand off, more than an arm’s reach ({reach} m): {why}. Let {to} come sooner, or pass to him.',
  manual: {
    title: 'A hand-off out of arm’s reach',
    why: 'A hand-off needs both at one place. As a rule the taker comes by himself, and nothing is said; but where a line has him stay, or a clock says when, he cannot. Shown is what his legs allow: he comes late.',
    wrong: 'from 5-out\ncall with 20 on the clock\nalready set\n1 dribbles to left slot\nat 19 on the clock, 1 hands off to 4\nlook 4: jumper',
    right: 'from 5-out\ncall with 20 on the clock\nalready set\n1 dribbles to left slot\nat 12 on the clock, 1 hands off to 4\nlook 4: jumper',
  },
  *find(subject) {
    for (const way of subject.ways) {
      for (const action of way.actions) {
        if (action.kind !== 'hand-off') continue;
        const coming = way.run.tracks[action.to]?.segments.filter((segment) => segment.action === action.id) ?? [];
        const why = heldBack(way, action, coming);
        const reach = LEVELS[subject.play.level.value].reach;
        const [holder, taker] = [way.run.tracks[action.who], way.run.tracks[action.to]];
        if (why === undefined || holder === undefined || taker === undefined) continue;
        const gap = distance(trackAt(holder, why.at), trackAt(taker, why.at));
        if (gap <= reach + LEVELS[subject.play.level.value].bodyRadius) continue;
        yield { part: action.id, params: { who: action.who, to: action.to, gap: gap.toFixed(1), reach: reach.toFixed(1), why: why.words }, run: way.run.id, moment: why.at, spot: trackAt(taker, why.at) };
      }
    }
  },
});

/** What in the text keeps the taker away, and when that is. */
function heldBack(way: Way, action: HandOff, coming: readonly Segment[]): { readonly at: number; readonly words: Message } | undefined {
  const first = coming[0];
  if (first === undefined) return undefined;
  const before = way.actions.slice(0, way.actions.indexOf(action));
  const last = before.findLast(({ who, step }) => who === action.to && step === action.step);
  // `holds until …` is over when it is over.
  if (last?.kind === 'hold' && last.seconds === undefined && !last.waits.some(({ kind }) => kind === 'until')) return { at: first.t0, words: message('a line has {to} stay where he is', { to: action.to }) };
  if (!action.waits.some(({ kind }) => kind === 'clock')) return undefined;
  const ready = way.run.events.find(({ id }) => id === `${action.id}:start`)?.at;
  const taken = way.run.events.find(({ id }) => id === `${action.id}:take`)?.at;
  if (ready === undefined || taken === undefined || taken - ready <= waitsMs) return undefined;
  return { at: ready, words: message('{to} comes {seconds} s after the time written', { to: action.to, seconds: latest(taken - ready) }) };
}
