import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { shape } from './shape.ts';

const words = ['they double the ball', 'they go zone', 'the help comes from the corner', '2 is covered', 'X1 ices it', 'nobody picks up the cutter'];

describe('a condition that tells of no defender as the notation does', () => {
  it.each(words)('%s: is read as a remark, and told', (said) => {
    const line = `step "B" instead of "A" when ${said} # as they did on Sunday`;
    const { fault, warnings } = parseLine(line);
    expect(fault).toBeUndefined();
    expect(warnings.map(({ code, at, to }) => [code, line.slice(at, to)])).toEqual([['read-as-a-remark', said]]);
    expect(shape(line)).toEqual(shape(`step "B" instead of "A" when "${said}"`));
    const mended = applyEdits(line, warnings[0]!.fixes[0]!.edits);
    expect(parseLine(mended).warnings).toEqual([]);
    expect(shape(mended)).toEqual(shape(line));
  });

  it.each(['when both defenders go with the ball', "if it's there", 'if they help off the corner'])('look 5 %s: is what the look is called by', (said) => {
    const line = `look 5 ${said}: throw back, three`;
    const { fault, warnings } = parseLine(line);
    expect(fault).toBeUndefined();
    expect(warnings.map(({ code, at, to }) => [code, line.slice(at, to)])).toEqual([['read-as-a-remark', said]]);
    expect(shape(line)).toEqual(shape(`look 5 "${said}": throw back, three`));
  });

  it.each([
    ['look 3: jumper if X3 helps', 'behind the colon it is a choice'],
    ['step "B" instead of "A" when X4 swithces', 'a slip of the pen'],
    ['step "B" instead of "A" when X4 sho', 'half a word'],
    ['step "B" instead of "A" when', 'nothing yet'],
    ['step B instead of "A" when they go zone', 'a name without quotes'],
    ['4 slips when they go zone', 'no step'],
  ])('not %s: %s', (line) => expect(parseLine(line).fault).toBeDefined());
});
