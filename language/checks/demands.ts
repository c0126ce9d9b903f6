import { allOf, message, type Words } from '../message/message.ts';
import { check } from './check.ts';
import type { Way, Subject } from './subject.ts';
import { OFFENCE, type Action, type BodyId, type Demand } from '../play/play.ts';
import { latest } from './clock.ts';

export const demandNotMet = check({
  code: 'demand-not-met',
  severity: 'warning',
  needs: 'way',
  source: 'what the play itself asks for',
  stillToCome: 'below',
  message: 'This is not met on every way through the play: {found}.',
  manual: {
    title: 'A demand that is not met',
    why: '`must have …` and `must not …` are the coach’s own demands. They are checked on every way through the play, up to its shot or end.',
    wrong: 'must have at least 2 passes\n1 passes to 2\nlook 2: three',
    right: 'must have at least 2 passes\n1 passes to 2\n2 passes to 3\nlook 3: three',
  },
  *find(subject) {
    for (const demand of subject.play.demands) {
      for (const way of subject.ways) {
        if (demand.within !== 'play' && !way.steps.some(({ key }) => key === demand.within)) continue;
        const found = shortfall(subject, demand, way);
        if (found !== undefined) yield { part: demand.part, params: { found }, run: way.run.id };
      }
    }
  },
});

/** What a way lacks, in words; `undefined` when it meets the demand. */
function shortfall(subject: Subject, { what, within }: Demand, way: Way): Words | undefined {
  const actions = within === 'play' ? way.actions : way.actions.filter(({ step }) => step === within);
  switch (what.kind) {
    case 'every-touch':
      return missingTouch(subject, way, OFFENCE);
    case 'touch':
      return missingTouch(subject, way, what.who ?? []);
    case 'hold':
      return heldTooLong(way, what.seconds ?? 0);
    default: {
      const count = what.kind === 'look' ? way.steps.flatMap(({ looks }) => looks).length : actions.filter((action) => counts(what.kind, action)).length;
      const asked = what.count ?? 0;
      const met = what.bound === 'at most' ? count <= asked : count >= asked;
      if (met) return undefined;
      if (what.bound !== 'at most') return message('{count} instead of at least {asked}', { count, asked });
      return asked === 0 ? message('{count} instead of none', { count }) : message('{count} instead of at most {asked}', { count, asked });
    }
  }
}

function counts(kind: string, action: Action): boolean {
  switch (kind) {
    case 'ball-screen':
      return action.kind === 'screen' && action.style === 'ball';
    case 'cut':
      return action.kind === 'move';
    case 'drive':
      return action.kind === 'dribble' && action.style === 'drive';
    case 'reversal':
      return action.kind === 'pass' && (action.verb === 'reverse' || action.verb === 'swing');
    default:
      return action.kind === kind;
  }
}

function missingTouch({ play }: Subject, way: Way, wanted: readonly BodyId[]): Words | undefined {
  const touched = new Set<string>([String(play.start.throwIn?.by.value ?? play.start.ball.value), ...way.run.ball.flatMap((state) => (state.kind === 'held' ? [state.by] : []))]);
  const missing = wanted.filter((who) => !touched.has(who));
  if (missing.length === 0) return undefined;
  return missing.length === 1 ? message('{who} never touches the ball', { who: missing[0]! }) : message('{who} never touch the ball', { who: allOf(missing) });
}

function heldTooLong(way: Way, seconds: number): Words | undefined {
  const long = way.run.ball.find((state) => state.kind === 'held' && !state.out && state.t1 - Math.max(state.t0, way.run.startsAt) >= seconds * 1000);
  if (long?.kind !== 'held') return undefined;
  return message('{who} has it for {seconds} s', { who: long.by, seconds: latest(long.t1 - Math.max(long.t0, way.run.startsAt)) });
}
