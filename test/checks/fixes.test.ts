import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../language/checks/catalogue.ts';
import { inEnglish } from '../../language/message/message.ts';
import { applyBlockEdits } from '../../language/edit/apply-edits.ts';
import { asPlay, compileText } from './compiled.ts';

const texts = [
  ...Object.values(catalogue).flatMap(({ code, manual }) => (manual.wrong === undefined ? [] : [[code, asPlay(manual.wrong)] as const])),
  ['several mistakes in one file', readFileSync('test/cli/mistakes.play', 'utf8')] as const,
];

describe('a fix mends what it is offered for', () => {
  test.each(texts)('%s', (_, text) => {
    const { findings } = compileText(text);
    const count = (found: typeof findings, code: string) => found.filter((one) => one.code === code).length;
    for (const finding of findings) {
      for (const fix of finding.fixes) {
        const mended = applyBlockEdits(text.split('\n'), fix.edits.map((edit) => ({ ...edit, line: edit.line + finding.firstLine }))).join('\n');
        const after = compileText(mended).findings;
        expect(count(after, finding.code), `${finding.code}: ${inEnglish(fix.title)}\n${mended}`).toBeLessThan(count(findings, finding.code));
      }
    }
  });
});

test.each([
  ['look 5 on the roll: layup', 'look 5: layup'],
  ['look 5 "inside" on the roll', 'look 5 "inside"'],
  ['look 5 off 4: layup', 'look 5: layup'],
])('what a look waits for in vain can be left out: %s', (line, mended) => {
  const text = `play "A"\n  from horns, ball with 1\n  1 dribbles to left slot\n  ${line}\n`;
  const finding = compileText(text).findings.find(({ code }) => code === 'pin-unknown');
  const [fix] = finding!.fixes;
  expect(applyBlockEdits(text.split('\n'), fix!.edits.map((edit) => ({ ...edit, line: edit.line + finding!.firstLine })))[3]).toBe(`  ${mended}`);
});

test.each([
  ['4 dunker spot', ['4 cuts to dunker spot', '4 dribbles to dunker spot', '4 stays at dunker spot']],
  ['2 and 5 at left block', ['2 and 5 cut to left block', '2 and 5 stay at left block']],
])('a place without its verb gets one: %s', (line, mended) => {
  const text = `play "A"\n  from horns\n  1 dribbles to left slot\n  ${line}\n  look 1: three\n`;
  const finding = compileText(text).findings.find(({ code }) => code === 'verb-missing')!;
  expect(finding.fixes.map((fix) => applyBlockEdits(text.split('\n'), fix.edits.map((edit) => ({ ...edit, line: edit.line + finding.firstLine })))[3]!.trim())).toEqual(mended);
});

test('a line taken out by a fix leaves no empty line', () => {
  const text = 'play "A"\n  from 5-out\n  allow crowding "old"\n  1 dribbles to left slot\n  look 1: three\n';
  const [finding] = compileText(text).findings;
  expect(finding?.fixes.map(({ title }) => inEnglish(title))).toEqual(['Take the line out']);
  expect(applyBlockEdits(text.split('\n'), finding!.fixes[0]!.edits).join('\n')).toBe(text.replace('  allow crowding "old"\n', ''));
});

test('a line added by a fix stands above its line, as far in', () => {
  const text = 'play "A"\n  from 5-out\n\n  step "One"\n    1 dribbles to left slot\n    1 screens for 3\n    3 cuts off 1 to top\n    look 3: three\n';
  const [finding] = compileText(text).findings;
  expect(finding?.fixes.map(({ title }) => inEnglish(title))).toEqual(['Pass to 3 first: add "1 passes to 3" above', 'Let 5 screen']);
  expect(applyBlockEdits(text.split('\n'), finding!.fixes[0]!.edits)[5]).toBe('    1 passes to 3');
});

test('places as lines of a play become its line that says how they stand', () => {
  const text = 'play "A"\n  1 top\n  2 right wing\n  3 left wing # ours\n  4 and 5 blocks\n  step "One"\n    1 passes to 2\n    look 2: three\n';
  const findings = compileText(text).findings.filter(({ code }) => code === 'line-elsewhere');
  expect(findings.map(({ message }) => /“.*”/.exec(message)![0])).toEqual(['“from 1 top”', '“from 2 right wing”', '“from 3 left wing”', '“from 4 and 5 blocks”']);
  expect(findings.map(({ fixes }) => fixes.length)).toEqual([1, 0, 0, 0]);
  expect(applyBlockEdits(text.split('\n'), findings[0]!.fixes[0]!.edits).slice(0, 4)).toEqual(['play "A"', '  from 1 top, 2 right wing, 3 left wing, 4 and 5 blocks', '  # ours', '  step "One"']);
  expect(compileText('play "A"\n  from box\n  1 top\n  step "One"\n    1 passes to 2\n    look 2: three\n').findings.find(({ code }) => code === 'line-elsewhere')?.fixes).toEqual([]);
});

test('what is waited for in vain is told in the coach’s words', () => {
  const told = (line: string) => compileText(`play "A"\n  from 5-out\n  ${line}\n  look 2: three\n`).findings.filter(({ code }) => code === 'wait-unknown').map(({ message }) => /“(.*?)”/.exec(message)![1]);
  expect(told('as 1 crosses half court, 5 clears to right short corner')).toEqual(['crosses half court']);
  expect(told('3 cuts to rim once 4 and 5 are set')).toEqual(['are set', 'are set']);
});

test('of whom nobody knows who he is, only that is told', () => {
  for (const line of ['he cuts to rim', 'both cut to rim']) expect(compileText(`play "A"\n  from 5-out\n  ${line}\n  look 1: three\n`).findings.map(({ code }) => code)).toEqual(['who-is-meant']);
});

test('a passer who waits too long at rest may keep his dribble until then', () => {
  const text = 'level u14\nplay "A"\n  from 5-out\n  2 v-cuts\n  1 passes to 2\n  look 2: three\n';
  const finding = compileText(text).findings.find(({ code }) => code === 'pass-waits')!;
  expect(finding.message).toContain('let 1 keep his dribble until then');
  const mended = applyBlockEdits(text.split('\n'), finding.fixes[0]!.edits.map((edit) => ({ ...edit, line: edit.line + finding.firstLine }))).join('\n');
  expect(mended).toContain('  1 keeps his dribble\n  1 passes to 2');
  expect(compileText(mended).findings.map(({ code }) => code)).not.toContain('pass-waits');
});
