import { describe, expect, test } from 'vitest';
import { whileWritten } from '../../language/checks/while-written.ts';
import { labelsAt } from '../../language/picture/scene.ts';
import { at } from '../../language/playback/at.ts';
import { playbackOf } from '../../language/playback/playback-of.ts';
import { compileText } from './compiled.ts';

const told = (text: string, line: number, left = false) => {
  const [play] = compileText(text).plays;
  return whileWritten(play!.findings, play!.block.lines, { line, left }).map(({ code, severity, unfinished }) => `${code} ${severity}${unfinished === true ? ' unfinished' : ''}`);
};
const begun = 'play "Driftwood"\n  from horns, ball with 1\n  step "Open"\n    4 clears to right wing\n    1 dribbles to left wing\n    5 screens down for 3\n';
const ended = `${begun}    look 1: jumper\n`;

describe('what is missing of a play', () => {
  test.each([5, 6])('is a hint while its end is being written (line %i)', (line) => {
    expect(told(begun, line)).toEqual(expect.arrayContaining(['no-ending hint unfinished', 'screen-unused hint unfinished']));
  });

  test.each([1, 3, 4, -1, 99])('is told in full while something else is (line %i)', (line) => {
    expect(told(begun, line)).toEqual(expect.arrayContaining(['no-ending warning', 'screen-unused warning']));
  });

  test('is told in full once another play stands below and he writes there', () => {
    const [first] = compileText(`${begun}\nplay "Other"\n  from horns, ball with 1\n  1 passes to 2\n`).plays;
    expect(whileWritten(first!.findings, first!.block.lines, { line: first!.block.lines.length + 2 })).toBe(first!.findings);
  });

  test('is told in full where it speaks of something below the line that is written', () => {
    expect(told(ended, 4)).toContain('screen-unused warning');
    expect(told(ended, 6)).toContain('screen-unused hint unfinished');
  });
});

test('a line that may yet say its receiver is given time, one that has been left is not', () => {
  expect(told(`${begun}    1 throws\n`, 6)).toContain('pass-to-nobody hint unfinished');
  expect(told(`${begun}    1 throws\n    2 cuts to rim\n`, 7)).toContain('pass-to-nobody error');
});

describe('a line that just stops, or ends in what may be the beginning of another word', () => {
  test.each([['1 dribbles to', 'line-unfinished'], ['2 cuts to corner right', 'word-order'], ['look 3 "pull-up', 'open-quote']])('is a hint while it is being typed, and told in full once it is left: %s', (line, code) => {
    const text = `${begun}    ${line}\n    look 1: jumper\n`;
    expect(told(text, 6)).toContain(`${code} hint unfinished`);
    expect(told(text, 6, true)).toContain(`${code} error`);
    expect(told(text, 7)).toContain(`${code} error`);
    expect(told(text, -1)).toContain(`${code} error`);
  });

  test('leaves what the play still lacks as quiet as it was', () => {
    expect(told(`${begun}    1 throws\n`, 6, true)).toEqual(expect.arrayContaining(['pass-to-nobody error', 'no-ending hint unfinished']));
  });
});

test('what does not wait for more stays as it is', () => {
  expect(told(begun.replace('5 screens down', '1 screens down'), 6)).toContain('screen-with-ball error');
});

test('of what is still being written the floor shows no sign', () => {
  const [play] = compileText(begun).plays;
  const signs = (line: number) => {
    const playback = playbackOf({ ...play!, findings: whileWritten(play!.findings, play!.block.lines, { line }) });
    const [run] = playback.runs;
    return labelsAt(playback, run!, at(playback, run!.id, run!.end)).filter(({ kind }) => kind === 'problem');
  };
  expect(signs(4).length).toBeGreaterThan(0);
  expect(signs(6)).toEqual([]);
});
