import { expect, test } from 'vitest';
import { wholeMessage } from '../../language/checks/whole-message.ts';
import { inEnglish, message, sayWith } from '../../language/message/message.ts';

const late = message('Too late.');

test('a message says which rules mind, and on how many more ways', () => {
  expect(inEnglish(wholeMessage(late, {}))).toBe('Too late.');
  expect(inEnglish(wholeMessage(late, { byRules: 'NFHS', moreWays: 1 }))).toBe('By the NFHS rules: Too late. So too on 1 other way through the play.');
  expect(inEnglish(wholeMessage(late, { moreWays: 3 }))).toBe('Too late. So too on 3 other ways through the play.');
});

test('in another language all of it is, or none', () => {
  const told = wholeMessage(message('{who} passes to himself.', { who: '1' }), { byRules: 'NFHS', moreWays: 2 });
  const some = { 'By the {rules} rules: {message}': 'Nach {rules}: {message}', '{who} passes to himself.': '{who} an sich.' };
  expect(sayWith(some)(told)).toBe('By the NFHS rules: 1 passes to himself. So too on 2 other ways through the play.');
  expect(sayWith({ ...some, '{message} So too on {more} other ways through the play.': '{message} Auch auf {more} Wegen.' })(told)).toBe('Nach NFHS: 1 an sich. Auch auf 2 Wegen.');
});
