import { entry } from './check.ts';

export const pacesNotCounted = entry({
  code: 'paces-not-counted',
  severity: 'hint',
  needs: 'names',
  source: 'the words of the notation',
  message: 'None of the plays that the book lists counts these paces: a play runs at those of its own file, or of a file it uses. Put the roster into a file of its own and name that with “use” in theirs, or leave the paces out.',
  manual: {
    beside: { name: 'sets.play', text: 'play "Ferry"\n  from 5-out, ball with 1\n  1 passes to 2\n  look 2: three\n' },
    title: 'Paces that no play counts',
    why: 'The names of a roster stand beside the jobs in every play that its book lists. A pace changes times, so it counts only where the play’s own file, or one that file uses, says so.',
    wrong: 'level u14\nuse "sets.play"\nroster "Otters"\n1 "Wren", fast\nbook "Season"\nsection "Late": "Ferry"',
    right: 'level u14\nuse "sets.play"\nroster "Otters"\n1 "Wren"\nbook "Season"\nsection "Late": "Ferry"',
  },
});
