import { message } from '../message/message.ts';
import { check } from './check.ts';

export const passToSelf = check({
  code: 'pass-to-self',
  severity: 'error',
  needs: 'line',
  source: 'what can happen on a floor',
  message: '{who} passes to himself. Name the man who is to get the ball.',
  manual: {
    title: 'A pass to oneself',
    why: 'The passer and the receiver are the same number, so one of them is a slip of the pen.',
    wrong: '1 passes to 1\nlook 1: three',
    right: '1 passes to 2\nlook 2: three',
  },
  *find(subject) {
    const all = [...subject.play.steps, ...subject.leftOut].flatMap((step) => [...step.actions, ...step.looks.flatMap(({ tail }) => tail)]);
    for (const action of all) {
      if ((action.kind === 'pass' || action.kind === 'hand-off') && action.to === action.who) {
        yield { part: action.id, params: { who: action.who }, ...(action.kind === 'hand-off' && { instead: message('{who} hands off to himself. Name the man who is to get the ball.', { who: action.who }) }) };
      }
    }
  },
});
