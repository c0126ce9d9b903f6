import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { compileText } from './compiled.ts';

const codesOf = (...lines: readonly string[]): readonly string[] => compileText(`level u14\nplay "A"\n  from 1 top, 2 rim, 3 left corner, 4 right elbow, 5 left elbow\n  against man\n${lines.map((line) => `  ${line}`).join('\n')}\n`).findings.map(({ code }) => code);

test('two who shut the gate behind a shooter stand shoulder to shoulder, and nobody calls that a crowd', () => {
  const { findings } = compileText(readFileSync('examples/sideline.play', 'utf8'));
  expect(findings.map(({ code }) => code)).not.toContain('crowding');
});

test('two who end side by side for nothing are told so', () => {
  expect(codesOf('4 cuts to nail', '5 cuts to beside 4', '1 dribbles to left wing', '1 dribbles to left slot', 'look 1: three')).toContain('crowding');
});

test('two of whom one has handed the other the ball are partners, as screeners are', () => {
  const after = (deed: string) => codesOf(deed, '4 cuts to rim', '4 cuts to right corner', 'look 4: three');
  expect(after('1 hands off to 3')).not.toContain('crowding');
});

test('the same sentence at the same words, of a step that is run again, is said once', () => {
  const round = ['step "Round"', '1 passes to 3', '1 cuts to rim', '3 passes to 2', '2 dribbles to left slot', 'look 2: three', 'step "Again" repeats "Round" 4 times'];
  const { findings } = compileText(`level u14\nplay "A"\n  from 5-out\n${round.map((line) => `  ${line}`).join('\n')}\n`);
  const said = findings.map(({ code, place, message }) => `${code} ${place.line} ${place.at} ${message}`);
  expect(said.filter((one) => one.includes('spot-taken')).length).toBeGreaterThan(0);
  expect(new Set(said).size).toBe(said.length);
});
