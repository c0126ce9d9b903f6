import { describe, expect, test } from 'vitest';
import { compileText } from './compiled.ts';

const throwIn = (lines: string, rules = 'fiba') => compileText(`rules ${rules}\nplay "A"\n  situation sideline throw-in\n  from 1 at right corner, 2 at right wing, 4 at left elbow, 5 at right block\n  3 inbounds from left sideline\n  step "In"\n${lines}`).findings;
const slow = '    1 cuts to rim\n    1 cuts to right corner\n    1 cuts to left slot\n    3 inbounds to 1\n    look 1: three\n';

describe('the five seconds of the throw-in', () => {
  test('run from the hand-over to the release, and the rule is named', () => {
    const late = throwIn(slow).find(({ code }) => code === 'inbound-late');
    expect(late?.message).toMatch(/^3 throws in \d+(\.\d)? s after he is handed the ball; the count is 5 s\./);
    expect(late?.source?.text).toMatch(/17\.3\.1/);
    expect(late?.place.line).toBe(8);
  });

  test('are named by the rule set in force', () => {
    expect(throwIn(slow, 'nfhs').find(({ code }) => code === 'inbound-late')?.source?.text).toMatch(/7-6-2/);
  });

  test('are kept by a man who stands free', () => {
    expect(throwIn('    3 inbounds to 4\n    look 4: jumper\n').map(({ code }) => code)).not.toContain('inbound-late');
  });
});
