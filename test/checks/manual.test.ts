import { inEnglish } from '../../language/message/message.ts';
import { describe, expect, test } from 'vitest';
import { catalogue, entries } from '../../language/checks/catalogue.ts';
import type { Entry } from '../../language/checks/check.ts';
import { restsOn } from '../../language/checks/rests-on.ts';
import { asPlay, compileText } from './compiled.ts';

const codes = Object.values(catalogue);

/** What no play of a few lines can show: a line of 2,000 characters, a play of hundreds of steps, a line without a single word. */
const beyondAnExample = ['line-too-long', 'line-not-read', 'play-too-long'];

describe('every code has a manual entry a coach can follow', () => {
  const shown = codes.filter(({ code }) => !beyondAnExample.includes(code)).map((entry) => [entry.code, entry] as const);

  test.each(shown)('%s speaks about its wrong example', (code, { manual }: Entry) => {
    const { findings } = compileText(asPlay(manual.wrong!), manual.beside);
    expect(findings.map((finding) => finding.code)).toContain(code);
  });

  test.each(shown)('%s finds nothing to mend in its right example', (code, { manual }: Entry) => {
    const { findings } = compileText(asPlay(manual.right!), manual.beside);
    expect(findings.filter((finding) => finding.severity !== 'hint' || finding.code === code).map((finding) => `${finding.code}: ${finding.message}`)).toEqual([]);
  });

  test('only what no few lines can show has no example', () => {
    expect(codes.filter(({ manual }) => manual.wrong === undefined || manual.right === undefined).map(({ code }) => code)).toEqual(beyondAnExample);
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

  test('says what it rests on; where nobody has written it down, that too', () => {
    for (const { code, source } of codes) expect(inEnglish(restsOn(source)), code).toMatch(/\S/);
    expect(inEnglish(restsOn(catalogue['spot-taken']!.source))).toBe('common practice, no source');
    expect(inEnglish(restsOn(catalogue['call-too-late']!.source))).toMatch(/\(from memory\)$/);
    expect(inEnglish(restsOn(catalogue['ball-needed']!.source))).toBe('what can happen on a floor');
  });
});
