import { expect, test } from 'vitest';
import { catalogue } from '../../language/checks/catalogue.ts';
import { sayFinding } from '../../language/checks/tell-finding.ts';
import { wholeMessage } from '../../language/checks/whole-message.ts';
import { inEnglish, message, sayWith } from '../../language/message/message.ts';

const late = message('Too late.');

test('a message says which rules mind, and on how many more ways', () => {
  expect(inEnglish(wholeMessage(late, {}))).toBe('Too late.');
  expect(inEnglish(wholeMessage(late, { byRules: 'NFHS', moreWays: 1 }))).toBe('By the NFHS rules: Too late. So too on 1 other way through the play.');
  expect(inEnglish(wholeMessage(late, { moreWays: 3 }))).toBe('Too late. So too on 3 other ways through the play.');
});

test('in another language all of it is, or none', () => {
  const finding = { code: 'pass-to-self', message: 'English', params: { who: '1', does: 'passes' }, byRules: 'NFHS', moreWays: 2 };
  const english = /^By the NFHS rules: 1 passes .* So too on 2 other ways through the play\.$/;
  const own = catalogue['pass-to-self']!.message;
  const byTheRules = { 'By the {rules} rules: {message}': 'Nach {rules}: {message}' };
  expect(sayFinding(finding, sayWith(byTheRules))).toMatch(english);
  expect(sayFinding(finding, sayWith({ ...byTheRules, [own]: '{who} an sich.', '{message} So too on {more} other ways through the play.': '{message} Auch auf {more} Wegen.' }))).toBe('Nach NFHS: 1 an sich. Auch auf 2 Wegen.');
});
