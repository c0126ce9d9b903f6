// Lines of coaches who knew the README and no more, written before any of it was tried: what was read otherwise than meant, or mended into something else.
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../language/grammar/mending/broken-line.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';
import { shape } from './shape.ts';

describe('is read as meant', () => {
  it.each([
    ['1 cuts past 4 to the basket', '1 cuts off 4 to the basket'],
    ['2 turns downhill to the nail', '2 drives to the nail'],
    ['5 buries X1 on the right block', '5 seals X1 on the right block'],
    ['1 goes right and gets to his spot at the right elbow', '1 goes right and gets to the right elbow'],
    ['1 takes the ball in the hands of 4', '1 takes the hand-off from 4'],
    ['1 goes off his right shoulder', '1 goes right'],
    ['look 4 who rolls: he finishes near the circle', 'look 4 who rolls: finish'],
    ['look 2: 3 skips it over, three', 'look 2: 3 skips it, three'],
  ])('“%s” as “%s”', (said, plain) => {
    const { fault, warnings } = parseLine(said);
    expect([fault, warnings]).toEqual([undefined, []]);
    expect(shape(said)).toEqual(shape(plain));
  });

  it('what X2 does in a counter and no defence has a name for is a remark', () => {
    expect(parseLine('step "Reject" instead of "Get" when X2 top-locks').warnings.map(({ code }) => code)).toEqual(['read-as-a-remark']);
  });
});

describe('is mended as meant', () => {
  it.each([
    ['step "Fake" instead of "Hand to hand" when X4 and X1 change', 'step "Fake" instead of "Hand to hand" when X4 and X1 switch'],
    ['1 dribbles out to the middle and waits until 7', '1 dribbles out to the middle and waits until 7 on the clock'],
    // To ask for the ball is not to dribble it.
    ['4 demands the ball at the left elbow', 'note 4 "demands the ball at the left elbow"'],
  ])('“%s” with “%s”', (said, mended) => expect(applyEdits(said, parseLine(said).fault!.fixes[0]!.edits)).toBe(mended));
});

it.each(['then rolls', 'and rolls', ', then rolls'])('“%s” as a line of its own is asked who does it', (line) => {
  const { fault } = parseLine(line);
  expect([fault!.code, fault!.fixes]).toEqual(['verb-first', []]);
  expect(inEnglish(fault!.message)).toBe('Who rolls? What goes on stands behind the line above, "4 ball-screens for 1, then rolls", or names its player: "4 rolls".');
});
