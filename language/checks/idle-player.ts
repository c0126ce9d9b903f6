import { allOf, message } from '../message/message.ts';
import { check } from './check.ts';
import type { Subject } from './subject.ts';
import type { Court } from '../court/court.ts';
import { distance, type Point } from '../court/point.ts';
import { allSpots } from '../court/spots.ts';
import { OFFENCE, type Action, type BodyId } from '../play/play.ts';

// Standing there is a job: it keeps a defender away from the ball.
const spacing = new Set<string>(['corner', 'wing', 'slot', 'top', 'short corner', 'dunker spot', 'side', 'hash', 'half court']);
const stepAway = 1;

export const isInSpacing = (court: Court, point: Point): boolean => allSpots(court).some((spot) => spacing.has(spot.name) && distance(spot.point, point) <= stepAway);

export const idlePlayer = check({
  code: 'idle-player',
  severity: 'hint',
  needs: 'play',
  stillToCome: 'below',
  message: 'No line names {who}, and he stands where a helper can reach everybody. Give him a job, or a spacing spot.',
  manual: {
    title: 'A player no line names',
    why: 'Four against five is easier to guard. Standing in a corner, on a wing or at the top is a job; so is throwing in, being the safety, or going to the boards. Standing in the way is none.',
    wrong: 'from box\n1 dribbles to left slot\n2 clears to right corner\n3 clears to left corner\n5 screens for 1\n1 drives off 5 to rim\nlook 1: layup',
    right: 'from box\n1 dribbles to left slot\n2 clears to right corner\n3 clears to left corner\n4 clears to right wing\n5 screens for 1\n1 drives off 5 to rim\nlook 1: layup',
  },
  source: { text: 'common practice, no source', how: 'common practice, no source' },
  *find(subject) {
    // A play without a look yet is still being written.
    if (subject.play.steps.every(({ looks, end }) => looks.length === 0 && end === undefined)) return;
    const named = namedIn(subject);
    const run = subject.ways[0]?.run;
    const idle = OFFENCE.filter((who) => {
      const start = run?.tracks[who]?.start;
      return !named.has(who) && start !== undefined && !isInSpacing(subject.court, start);
    });
    if (idle.length > 0) yield { part: 'play', params: { who: allOf(idle) }, ...(idle.length > 1 && { instead: message('No line names {who}, and they stand where a helper can reach everybody. Give them a job, or a spacing spot.', { who: allOf(idle) }) }) };
  },
});

function namedIn({ play }: Subject): ReadonlySet<string> {
  const actions = play.steps.flatMap((step) => [...step.actions, ...step.looks.flatMap(({ tail }) => tail)]);
  const looked = play.steps.flatMap(({ looks }) => looks.flatMap(({ who }) => who.map(String)));
  const boards = play.rebounds.flatMap(({ crash, back }) => [...crash, ...back].map(String));
  const told = play.notes.flatMap(({ who }) => (who === undefined ? [] : [String(who)]));
  return new Set<string>([...actions.flatMap(bodiesOf), ...looked, ...boards, ...told, ...(play.start.throwIn === undefined ? [] : [String(play.start.throwIn.by.value)])]);
}

function bodiesOf(action: Action): readonly BodyId[] {
  switch (action.kind) {
    case 'pass':
    case 'hand-off':
      return [action.who, action.to];
    case 'screen':
      return [action.who, ...action.users];
    default:
      return [action.who];
  }
}
