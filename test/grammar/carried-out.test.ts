import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { inEnglish } from '../../language/message/message.ts';
import { codes, readLines } from '../play/reading.ts';
import { linesOfTrials } from './lines-of-trials.ts';

const wordsCarriedOut = (line: string): string | undefined => {
  const { carriedOut, fault } = parseLine(line);
  return carriedOut && `${(fault!.message.params['words'] as string | undefined) ?? ''}`;
};

describe('of a line that cannot be read as a whole is carried out', () => {
  it.each([
    ['1 passes to 3 on the wing, then blorps 4', '1 passes to 3 on the wing'],
    ['5 rolls to the rim once 1 blorps 4', '5 rolls to the rim'],
    ['1 dribbles to the left slot until the horn blorps', '1 dribbles to the left slot'],
    ['4 screens for 2 and 5 blorps', '4 screens for 2'],
    ['1 passes to 3 and 3 blorps, then 5 cuts', '1 passes to 3'],
    ['once she blorps it, 5 rolls to the rim', '5 rolls to the rim'],
    ['blorping it 5 rolls to the rim', '5 rolls to the rim'],
    ['Once 1 blorps 4, 2 and 5 cut to the rim # soon', '2 and 5 cut to the rim'],
    ['3 cuts to the rím, then blörps 🏀', undefined],
    // Nor is a man one of those before without his.
    ['4 pindowns for 3 into the zoom with 2', undefined],
    ['1 goes out blorp the left wing to the left elbow', '1 goes … to the left elbow'],
    // Without its little word the corner would be where he goes.
    ['3 creeps in from the weak-side corner', '3 creeps'],
    ['4 and 5 set a stagger for 3 going to the top', '4 and 5 set a stagger for 3'],
    // Found by the law below.
    ['3 takes it out under the basket on the left side, then blorps 4', '3 takes it out under the basket on the left side'],
    ['look 5 on the blorp: layup', 'look 5 … : layup'],
    ['3 cuts to the rim, then blörps 🏀', '3 cuts to the rim'],
  ])('%s: %s', (line, carried) => expect(wordsCarriedOut(line)).toBe(carried));

  it.each([
    // A man or a place more that is not understood may change what stands before it.
    '1 passes to 2 and 3',
    '4 screens for 1, 2 and blorp',
    '5 cuts off 4 to the blorp',
    // What follows may turn it round, or it may hang on that.
    '1 passes to 2 if X2 blorps',
    '1 passes to 2, unless X2 blorps',
    '5 screens for 1, but never blorps',
    'if 2 blorps, 5 rolls to the rim',
    // No deed.
    'blorp',
    'step blorp, then 5 rolls',
    'note 5 rolls, then blorps',
  ])('nothing: %s', (line) => expect(wordsCarriedOut(line)).toBeUndefined());

  it('and the message says what', () => {
    const { fault } = parseLine('1 passes to 3 on the wing, then blorps 4');
    expect(inEnglish(fault!.message)).toMatch(/^"blorps" is no word I know here\..* Until that is mended, only this is carried out: “1 passes to 3 on the wing”\.$/);
  });
});

describe('the play goes on with it', () => {
  it('so that the lines below know who has the ball', () => {
    const { problems, play } = readLines('  from horns, ball with 1', '1 passes to 4, then blorps 4', '4 drives to the rim');
    expect(codes({ problems } as never)).not.toContain('no-ball');
    expect(play.steps[0]!.actions.map(({ kind, who }) => [kind, who])).toEqual([['pass', '1'], ['dribble', '4']]);
  });

  it('and the line stays one that cannot be read', () => {
    expect(parseLine('1 passes to 4, then blorps 4').fault).toBeDefined();
  });
});

it('what is carried out reads by itself as it does there', () => {
  const broken = fc.tuple(fc.constantFrom(...linesOfTrials.map(([, plain]) => plain)), fc.constantFrom(', then blorps 4', ' once 1 blorps 4', ' and 5 blorps'));
  fc.assert(fc.property(broken, ([line, tail]) => {
    const words = wordsCarriedOut(`${line}${tail}`);
    if (words === undefined || words.includes('…')) return;
    const { carriedOut } = parseLine(`${line}${tail}`);
    const alone = parseLine(' '.repeat(line.indexOf(words)) + words);
    expect(alone.fault).toBeUndefined();
    expect(alone.tree).toEqual(carriedOut);
  }), { numRuns: 150, seed: 2026 });
});
