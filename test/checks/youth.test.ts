import { describe, expect, test } from 'vitest';
import { catalogue } from '../../language/checks/catalogue.ts';
import { compileText } from './compiled.ts';
import { codesIn } from './codes.ts';

const play = (lines: string) => `from 5-out\n${lines}\n1 passes to 2\nlook 2: jumper`;
const young = 'level u10\nrules mini';

describe('what an age is advised against', () => {
  test('screens under 11', () => {
    expect(codesIn('from 5-out\n5 screens for 3\n3 cuts off 5 to rim\nlook 3: layup', young)).toEqual(['youth-screens']);
    expect(codesIn('from 5-out\n5 screens for 3\n3 cuts off 5 to rim\nlook 3: layup', 'level u14\nrules fiba')).toEqual([]);
  });
  test('a zone up to under 16', () => {
    expect(codesIn(play('against 2-3'), 'level u14\nrules fiba')).toEqual(['youth-zone']);
    expect(codesIn(play('against 2-3'), 'level hs\nrules nfhs')).toEqual([]);
    expect(codesIn(play('against man'), young)).toEqual([]);
  });
  test('a press under 12, and it is not told as a zone', () => {
    expect(codesIn(play('against 2-2-1 press'), young)).toEqual(['youth-press']);
    expect(codesIn(play('against 2-2-1 press'), 'level u14\nrules fiba')).toEqual([]);
  });
  test('a three under 12', () => {
    expect(codesIn(play('').replace('jumper', 'three'), 'level u12\nrules nfhs')).toContain('youth-three');
    expect(codesIn(play('').replace('jumper', 'three'), 'level u14\nrules nfhs')).toEqual([]);
  });
  test('ring and ball, only of one who has chosen a rule set', () => {
    expect(codesIn(play(''), 'level u10\nrules fiba')).toEqual(['youth-ring-and-ball']);
    expect(codesIn(play(''), 'level u10')).toEqual([]);
    expect(codesIn(play(''), young)).toEqual([]);
  });
});

test('is always a hint, names its source, and leaves the word to the league and the coach', () => {
  const { findings } = compileText('level u12\nrules fiba\nplay "A"\n  from 5-out\n  against 2-3\n  5 screens for 3\n  3 cuts off 5 to rim\n  look 2: three\n');
  const youth = findings.filter(({ code }) => code.startsWith('youth-'));
  expect(youth.map(({ code }) => code)).toEqual(['youth-ring-and-ball', 'youth-zone', 'youth-screens', 'youth-three'].filter((code) => youth.some((finding) => finding.code === code)));
  expect(youth.length).toBeGreaterThanOrEqual(3);
  for (const { severity, message, source } of youth) {
    expect(severity).toBe('hint');
    expect(message).toMatch(/Your local rules and a qualified coach decide\.$/);
    expect(source?.text).toMatch(/\S/);
  }
  for (const [code, { manual }] of Object.entries(catalogue)) if (code.startsWith('youth-')) expect(manual.why).toContain('Your local rules and a qualified coach decide.');
});
