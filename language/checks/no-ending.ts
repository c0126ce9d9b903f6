import { check } from './check.ts';

export const noEnding = check({
  code: 'no-ending',
  severity: 'warning',
  needs: 'way',
  source: 'the words of the notation',
  stillToCome: 'below',
  message: 'The way to “{step}” ends with neither a shot nor a stated end. Add a look, or a line such as `ends with no shot`.',
  manual: {
    title: 'A way that ends in nothing',
    why: 'Every way through a play ends with a look, a shot, or an end that is said. Otherwise nobody knows when it is over, and the clock cannot be told.',
    wrong: '1 dribbles to left slot\n1 passes to 3',
    right: '1 dribbles to left slot\n1 passes to 3\nlook 3: jumper',
  },
  *find(subject) {
    for (const way of subject.ways) {
      const last = way.steps.at(-1);
      if (last === undefined || way.look !== undefined || last.end !== undefined) continue;
      if (way.actions.some(({ kind }) => kind === 'shot')) continue;
      yield { part: last.actions.at(-1)?.id ?? last.key, params: { step: last.name }, run: way.run.id, moment: way.run.end };
    }
  },
});
