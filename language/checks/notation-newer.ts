import { entry } from './check.ts';

export const notationNewer = entry({
  code: 'notation-newer',
  severity: 'error',
  needs: 'line',
  source: 'the words of the notation',
  message: 'This file is written in notation {version}, and this Setwright reads up to {known}. Install a newer Setwright, or write the file in notation {known}.',
  manual: { title: 'A newer notation', why: '`notation 1` says in which edition of the language a file is written. Older ones are read; of a newer one nobody can know what its lines mean.', wrong: 'notation 9\nplay "Ferry"\n1 passes to 2\nlook 2: three', right: 'notation 1\nplay "Ferry"\n1 passes to 2\nlook 2: three' },
});
