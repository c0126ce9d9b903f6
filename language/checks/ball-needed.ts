import { message } from '../message/message.ts';
import { check } from './check.ts';
import { howHeGotIt, isBallAction, walkBall, type BallAction } from './ball.ts';
import { lineBefore } from './fixes.ts';

export const ballNeeded = check({
  code: 'ball-needed',
  severity: 'error',
  needs: 'before',
  source: 'what can happen on a floor',
  message: '{who} can’t {does}: {holder}.',
  manual: {
    title: 'A pass, dribble, hand-off or shot without the ball',
    why: 'Ball actions happen in the order they are written. When one is written for a man who has not got the ball by then, a pass to him is missing, or the wrong man is named.',
    wrong: '1 dribbles to left slot\n2 passes to 3\nlook 3: three',
    right: '1 dribbles to left slot\n1 passes to 2\n2 passes to 3\nlook 3: three',
  },
  *find(subject) {
    for (const way of subject.ways) {
      const refused = subject.timeline.problems.filter(({ code, run }) => code === 'ball-elsewhere' && (run === undefined || run === way.run.id));
      if (refused.length === 0) continue;
      for (const { action, before } of walkBall(subject, way)) {
        if (!isBallAction(action) || !refused.some(({ part }) => part === action.id)) continue;
        // A pass that was itself refused leaves its receiver without the ball: the first mistake is told, not what follows from it.
        if (before.holder === undefined || before.holder === action.who) continue;
        const { holder } = before;
        yield {
          part: action.id,
          params: { who: action.who, does: whatHeWants(action), holder: `${holder} has the ball (${howHeGotIt(subject, before)})` },
          run: way.run.id,
          related: before.by === undefined ? [] : [{ part: before.by.id, message: message('here {holder} gets the ball', { holder }) }],
          fixes: lineBefore(subject, action.id, `${holder} passes to ${action.who}`, message('Pass to {who} first', { who: action.who })),
        };
      }
    }
  },
});

function whatHeWants(action: BallAction): string {
  switch (action.kind) {
    case 'pass':
      return `pass to ${action.to}`;
    case 'hand-off':
      return `hand off to ${action.to}`;
    case 'dribble':
      return action.style === 'drive' ? 'drive' : 'dribble';
    case 'shot':
      return 'shoot';
  }
}
