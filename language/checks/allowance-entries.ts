import { entry } from './check.ts';

export const allowanceEntries = [
  entry({
    code: 'allow-unknown',
    severity: 'warning',
    needs: 'line',
    message: 'There is no check named “{check}”{near}.',
    manual: { title: 'An allowance for a check that does not exist', why: '`allow` names the check it silences, by the code its finding carries.' },
  }),
  entry({
    code: 'allow-unused',
    severity: 'warning',
    needs: 'play',
    message: '“allow {check}” silences nothing here. Take it out, or it will hide a later mistake.',
    manual: { title: 'An allowance that silences nothing', why: 'What it excused has been mended, or stands in another step. Left in place it would hide the next mistake of its kind.' },
  }),
] as const;
