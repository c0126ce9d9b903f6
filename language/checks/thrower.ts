// What the thrower may do before the ball leaves his hands.
import { message } from '../message/message.ts';
import { read } from '../court/sources.ts';
import { check } from './check.ts';
import { throwInOf, type Held } from './moments.ts';
import type { Fix } from './finding.ts';
import { otherWords } from './fixes.ts';
import { wordsOf, type Subject, type Way } from './subject.ts';
import type { Action, HandOff } from '../play/play.ts';
import { inBounds } from '../court/court.ts';
import type { Point } from '../court/point.ts';
import type { Segment } from '../timeline/timeline.ts';

export const throwerMoves = check({
  code: 'thrower-moves',
  severity: 'error',
  needs: 'before',
  source: read('NBA 10-III and 8-III, NCAA 7-6.8, NFHS 7-6; FIBA 17.3.1 as quoted'),
  byRules: true,
  message: '{who} moves {metres} m along the line before he throws in; the spot allows {allowed}. {mend}',
  manual: {
    title: 'The thrower leaves his spot',
    why: 'A thrower keeps to his spot until the release: 1 m in all along the line (FIBA, second hand), a spot 3 ft wide (NCAA, NFHS), one step (NBA; its length here is from memory). Only after a basket against them may a team’s thrower run its own endline: say so with situation after a basket.',
    wrong: '3 inbounds from the left baseline\nfrom 5-out\n3 runs to right baseline\n3 inbounds to 1\nlook 1: three',
    right: '3 inbounds from the left baseline\nfrom 5-out\n3 inbounds to 1\nlook 1: three',
  },
  *find(subject) {
    const { lateral } = subject.rules.throwIn;
    const { throwIn } = subject.play.start;
    if (throwIn === undefined || mayRun(subject)) return;
    for (const way of subject.ways) {
      for (const { segment, out } of beforeRelease(way)) {
        const spot = way.run.tracks[out.by]!.start;
        const along = Math.max(...segment.path.map((point) => (throwIn.side === 'baseline' ? Math.abs(point.x - spot.x) : Math.abs(point.y - spot.y))));
        if (along <= lateral.value + 0.01 || segment.path.some((point) => inBounds(subject.court, point))) continue;
        const mend = throwIn.side === 'baseline' ? message('Let him stay. Only after a basket may he run his own endline: then write situation after a basket.') : message('Let him stay.');
        yield { part: segment.action, params: { who: out.by, metres: along.toFixed(1), allowed: lateral.printed, mend }, run: way.run.id, moment: segment.t1, spot: segment.path.at(-1)!, source: lateral.source };
      }
    }
  },
});

export const throwerStepsIn = check({
  code: 'thrower-steps-in',
  severity: 'error',
  needs: 'before',
  message: '{who} steps onto the court while he still has the ball to throw in. Write the throw first: {who} inbounds to …',
  manual: {
    title: 'The thrower steps in too early',
    why: 'A thrower may not step onto the court before the ball has left his hands, nor dribble it in, nor shoot. After the release he steps in by himself.',
    wrong: '3 inbounds from the left baseline\nfrom 5-out\n3 steps in\n3 inbounds to 1\nlook 1: three',
    right: '3 inbounds from the left baseline\nfrom 5-out\n3 inbounds to 1\n3 steps in\nlook 1: three',
  },
  source: { text: 'FIBA 17.3 as quoted, NBA 10-III, NCAA 7-6 and 9-4, NFHS 7-6 as quoted', how: 'read' },
  *find(subject) {
    for (const way of subject.ways) {
      for (const { segment, out } of beforeRelease(way)) {
        const inside = segment.path.find((point) => inBounds(subject.court, point));
        if (inside !== undefined) yield { part: segment.action, params: { who: out.by }, run: way.run.id, moment: segment.t1, spot: inside };
      }
      const carried = carriedIn(subject, way);
      if (carried !== undefined) {
        const who = carried.who;
        const instead = carried.kind === 'shot' ? message('{who} shoots from behind the line: the ball has to be thrown in first. Write: {who} inbounds to …', { who }) : message('{who} may not dribble the ball in: it has to be thrown. Write: {who} inbounds to …', { who });
        yield { part: carried.id, params: { who }, instead, run: way.run.id };
      }
    }
  },
});

export const throwerHandsOver = check({
  code: 'thrower-hands-over',
  severity: 'error',
  needs: 'before',
  source: read('NBA 10-III, NCAA 7-6.8 and 9-4; FIBA and NFHS from memory'),
  byRules: true,
  message: '{who} may not hand the ball over the line to {to}: it has to be thrown. Write: {who} inbounds to {to}',
  manual: {
    title: 'A hand-off over the line',
    why: 'The ball comes in by a pass. A thrower may not carry it or hand it to a man on the court (NBA 10-III, NCAA 7-6 read; FIBA and NFHS from memory).',
    wrong: '3 inbounds from the left baseline\nfrom 5-out\n3 hands off to 4\nlook 4: layup',
    right: '3 inbounds from the left baseline\nfrom 5-out\n3 inbounds to 4\nlook 4: layup',
  },
  *find(subject) {
    const { mayHandBallOver } = subject.rules.throwIn;
    if (mayHandBallOver.value) return;
    const thrower = subject.play.start.throwIn?.by.value;
    for (const way of subject.ways) {
      const first = way.actions.find(({ kind }) => kind === 'pass' || kind === 'hand-off');
      if (first?.kind !== 'hand-off' || first.who !== String(thrower)) continue;
      yield { part: first.id, params: { who: first.who, to: first.to }, run: way.run.id, spot: way.run.tracks[first.who]?.start ?? origin, moment: 0, source: mayHandBallOver.source, fixes: asThrow(subject, first) };
    }
  },
});

function asThrow(subject: Subject, { id, who, to }: HandOff): readonly Fix[] {
  const words = wordsOf(subject, id);
  return new RegExp(`^${who} hands? off to ${to}$`, 'i').test(words) ? otherWords(subject, id, `${who} inbounds to ${to}`, message('Write “{who} inbounds to {to}”', { who, to })) : [];
}

const origin: Point = { x: 0, y: 0 };

/** What the thrower does with the ball instead of throwing it. */
function carriedIn({ play }: Subject, { actions }: Way): Action | undefined {
  const thrower = play.start.throwIn?.by.value;
  const first = actions.find(({ kind }) => kind === 'pass' || kind === 'hand-off' || kind === 'dribble' || kind === 'shot');
  return first !== undefined && first.who === `${thrower}` && (first.kind === 'dribble' || first.kind === 'shot') ? first : undefined;
}

/** On his own endline, and only where the text says that the other team has just scored. */
function mayRun({ play, rules }: Subject): boolean {
  const { throwIn } = play.start;
  const far = throwIn?.from.value.kind === 'spot' && throwIn.from.value.name === 'far baseline';
  const scored = [...play.situation, ...play.tags].some((words) => /\bafter (a|the|their|an?other) (made )?(basket|goal|score|bucket)\b|\bafter a make\b/i.test(words));
  return far && scored && rules.throwIn.mayRunEndlineAfterGoal.value;
}

function beforeRelease({ run }: Way): readonly { readonly segment: Segment; readonly out: Held }[] {
  const out = throwInOf(run);
  if (out === undefined) return [];
  return (run.tracks[out.by]?.segments ?? []).filter(({ t0, t1 }) => t0 < out.t1 && t1 <= out.t1).map((segment) => ({ segment, out }));
}
