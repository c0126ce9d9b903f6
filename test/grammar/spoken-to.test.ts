// A coach speaks to his players, and joins his sentences as one speaks.
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';
import { shape } from './shape.ts';

const rows: readonly (readonly [spoken: string, notation: string])[] = [
  ['5, set a screen for 1', '5 screens for 1'],
  ['5, you come up to the right elbow and screen for 2', '5 comes up to the right elbow and screens for 2'],
  ['1, throw it ahead to 2 in the right corner', '1 throws it ahead to 2 in the right corner'],
  ['2, please pass to 3, then cut to the rim', '2 passes to 3, then cuts to the rim'],
  ['5, you stay home in your left corner', '5 stays in the left corner'],
  ['2 you cut to the rim', '2 cuts to the rim'],
  ['1, pass to 3 and go to the left corner, then 4 screens for 3', '1 passes to 3 and goes to the left corner, then 4 screens for 3'],
  ['1, pass to 3, 4 and 5 screen for 2', '1 passes to 3, 4 and 5 screen for 2'],
  ['and 3 cuts to the rim', '3 cuts to the rim'],
  ['so first 4 screens for 1', '4 screens for 1'],
  ['also, 5 screens for 2', '5 screens for 2'],
  ['but then 5 rolls', 'then, 5 rolls'],
  ['okay now once 4 is set, 3 cuts off 4', 'once 4 is set, 3 cuts off 4'],
  ['right when 3 cuts, 5 screens for 2', 'when 3 cuts, 5 screens for 2'],
  ['4 goes to the left block and makes a solid block for 3', '4 goes to the left block and screens for 3'],
  ['4 and 5 make a block for 2', '4 and 5 screen for 2'],
];
/** Two who do it together, as before. */
const together: readonly (readonly [line: string, notation: string])[] = [
  ['1, 2 cut to the rim', '1 and 2 cut to the rim'],
  ['4, 5 screen for 3', '4 and 5 screen for 3'],
];

describe('who is spoken to does it', () => {
  it.each([...rows, ...together])('%s', (spoken, notation) => {
    const said = parseLine(spoken);
    expect(said.fault && inEnglish(said.fault.message)).toBeUndefined();
    expect(shape(spoken)).toEqual(shape(notation));
    expect(said.warnings).toEqual([]);
  });

  it('with the wait behind his name, the right order is offered', () => {
    const line = '  3, once 4 is set, cut hard to the rim';
    const { fault } = parseLine(line);
    expect(fault?.code).toBe('word-order');
    expect(fault?.fixes.map(({ edits }) => applyEdits(line, edits))).toEqual(['  once 4 is set, 3 cuts hard to the rim']);
  });
});

describe('a message that spoke of something else', () => {
  const told = (line: string): string => inEnglish(parseLine(line).fault!.message);
  const mends = (line: string): readonly string[] => parseLine(line).fault!.fixes.map(({ edits }) => applyEdits(line, edits));
  it('who makes a move is not asked whether his shot goes in', () => {
    expect(told('1 makes a move')).not.toContain('Whether a shot goes in');
    expect(told('1 makes the layup')).toContain('Whether a shot goes in');
    expect(told('1 makes it')).toContain('Whether a shot goes in');
  });
  it('“but” is no slip of the pen for “cuts”', () => expect(told('5 rolls, but on the empty side')).not.toContain('"cuts"'));
  it('who spaces out says where to', () => expect(told('1 spaces out to the right corner when he has glorped')).not.toContain('or where to'));
  it('a note holds the whole line', () => {
    expect(mends('  2 gets two feet in the paint, middle of the floor')).toEqual(['  note 2 "gets two feet in the paint, middle of the floor"']);
  });
});
