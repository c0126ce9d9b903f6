import { expect, test } from 'vitest';
import { around, wholeMessage } from '../../language/checks/whole-message.ts';
import { sayFinding } from '../../server/lsp/phrases.ts';
import { catalogue } from '../../language/checks/catalogue.ts';

test('a message says which rules mind, and on how many more ways', () => {
  expect(wholeMessage('Too late.', {})).toBe('Too late.');
  expect(wholeMessage('Too late.', { byRules: 'NFHS', moreWays: 1 })).toBe('By the NFHS rules: Too late. So too on 1 other way through the play.');
  expect(wholeMessage('Too late.', { moreWays: 3 })).toBe('Too late. So too on 3 other ways through the play.');
});

test('in another language all of it is, or none', () => {
  const finding = { code: 'pass-to-self', message: 'English', params: { who: '1' }, byRules: 'NFHS', moreWays: 2 };
  const own = catalogue['pass-to-self']!.message;
  expect(sayFinding({ [around.byTheRules]: 'Nach {rules}: {message}' }, finding)).toBe('English');
  expect(sayFinding({ [own]: '{who} an sich.', [around.byTheRules]: 'Nach {rules}: {message}', [around.onMoreWays]: '{message} Auch auf {more} Wegen.' }, finding)).toBe('Nach NFHS: 1 an sich. Auch auf 2 Wegen.');
});
