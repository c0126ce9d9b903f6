import { describe, expect, test } from 'vitest';
import { tally, triedTwice } from '../../scripts/tally.mjs';

const file = (status: string, ...tests: string[]) => ({ status, assertionResults: tests.map((one) => ({ status: one })) });
const report = (...files: ReturnType<typeof file>[]) => ({ testResults: files });

describe('the last line of a run tells the truth', () => {
  test.each([
    ['all is well', report(file('passed', 'passed', 'passed')), 0, { passed: 2, failed: 0, skipped: 0 }],
    ['one fails', report(file('failed', 'passed', 'failed')), 1, { passed: 1, failed: 1, skipped: 0 }],
    ['one is skipped, one only planned', report(file('passed', 'skipped', 'todo', 'passed')), 0, { passed: 1, failed: 0, skipped: 2 }],
    ['a file cannot be loaded', report(file('failed'), file('passed', 'passed')), 1, { passed: 1, failed: 1, skipped: 0 }],
    ['a window did not open, so its tests never ran', report(file('failed', 'pending', 'passed')), 1, { passed: 1, failed: 1, skipped: 1 }],
    ['the run ended badly although each test passed', report(file('passed', 'passed')), 1, { passed: 1, failed: 1, skipped: 0 }],
    ['the run did not come to the tests', undefined, 1, { passed: 0, failed: 1, skipped: 0 }],
    ['there were no tests at all', report(), 0, { passed: 0, failed: 1, skipped: 0 }],
  ])('%s', (_what, given, status, told) => {
    expect(tally(given, status)).toEqual(told);
  });

  test('a test that passed when tried again is named', () => {
    const passed = (fullName: string, ...failureMessages: string[]) => ({ status: 'passed', fullName, failureMessages });
    expect(triedTwice({ testResults: [{ status: 'passed', assertionResults: [passed('clicks'), passed('types', 'too late')] }] })).toEqual(['types']);
    expect(triedTwice(undefined)).toEqual([]);
  });
});
