import { entry } from './check.ts';

export const allowanceEntries = [
  entry({
    code: 'allow-unknown',
    severity: 'warning',
    needs: 'line',
    source: 'the words of the notation',
    message: 'There is no check named “{check}”{near}.',
    manual: { title: 'An allowance for a check that does not exist', why: '`allow` names the check it silences, by the code its finding carries.', wrong: 'from 5-out\nallow crowdng "an overload on purpose"\n1 passes to 2\nlook 2: three', right: 'from 5-out\nallow crowding "an overload on purpose"\n4 clears to 1.5 m below right wing\n1 dribbles to left slot\n1 dribbles to right slot\n1 dribbles to top\nlook 1: three' },
  }),
  entry({
    code: 'allow-unused',
    severity: 'warning',
    needs: 'play',
    source: 'the words of the notation',
    message: '“allow {check}” silences nothing here. Take it out, or it will hide a later mistake.',
    manual: { title: 'An allowance that silences nothing', why: 'What it excused has been mended, or stands in another step. Left in place it would hide the next mistake of its kind.', wrong: 'from 5-out\nallow crowding "an overload on purpose"\n1 passes to 2\nlook 2: three', right: 'from 5-out\n1 passes to 2\nlook 2: three' },
  }),
] as const;
