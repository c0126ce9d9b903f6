import { message } from '../message/message.ts';
import { check } from './check.ts';
import { otherWords } from './fixes.ts';
import { wordsOf } from './subject.ts';

export const passToDefender = check({
  code: 'pass-to-defender',
  severity: 'error',
  needs: 'line',
  source: 'what can happen on a floor',
  message: '{who} passes to {to}, and that is a defender. Write {number}, or whom you mean.',
  manual: {
    title: 'A pass to a defender',
    why: 'X1 to X5 guard; a pass goes to one of 1 to 5. The line is left out of the picture.',
    wrong: '1 dribbles to left slot\n1 passes to X2\nlook 2: three',
    right: '1 dribbles to left slot\n1 passes to 2\nlook 2: three',
  },
  *find(subject) {
    for (const step of [...subject.play.steps, ...subject.leftOut]) {
      for (const action of [...step.actions, ...step.looks.flatMap(({ tail }) => tail)]) {
        if ((action.kind !== 'pass' && action.kind !== 'hand-off') || !action.to.startsWith('X')) continue;
        const number = action.to.slice(1);
        const words = wordsOf(subject, action.id);
        const fixed = words.replace(new RegExp(`\\b${action.to}\\b`, 'i'), number);
        yield { part: action.id, params: { who: action.who, to: action.to, number }, fixes: fixed === words || number === action.who ? [] : otherWords(subject, action.id, fixed, message('Write {number}', { number })) };
      }
    }
  },
});
