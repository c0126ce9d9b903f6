import { describe, expect, test } from 'vitest';
import { catalogue, entries } from '../../language/checks/catalogue.ts';
import { asPlay, compileText } from './compiled.ts';

const codes = Object.values(catalogue);

describe('every code has a manual entry a coach can follow', () => {
  test.each(codes.filter(({ manual }) => manual.wrong !== undefined).map((entry) => [entry.code, entry] as const))('%s speaks about its wrong example', (code, { manual }) => {
    const { findings } = compileText(asPlay(manual.wrong!));
    expect(findings.map((finding) => finding.code)).toContain(code);
  });

  test.each(codes.filter(({ manual }) => manual.right !== undefined).map((entry) => [entry.code, entry] as const))('%s finds nothing to mend in its right example', (_, { manual }) => {
    const { findings } = compileText(asPlay(manual.right!));
    expect(findings.filter(({ severity }) => severity !== 'hint').map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });

  test('and a code of its own', () => {
    expect(entries).toHaveLength(codes.length);
  });

  test('says why, in sentences', () => {
    for (const { code, manual } of codes) {
      expect(manual.title, code).toMatch(/\S/);
      expect(manual.why, code).toMatch(/\.$/);
    }
  });
});
