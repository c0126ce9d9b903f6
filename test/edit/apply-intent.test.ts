import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileText } from '../checks/compiled.ts';
import { applyBlockEdits } from '../../language/edit/apply-edits.ts';
import { intentOn } from '../../language/compile.ts';
import { distance, type Point } from '../../language/court/point.ts';
import type { Intent } from '../../language/edit/intent.ts';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { spotPoint } from '../../language/court/spots.ts';
import { courtOf } from '../../language/court/court.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { resolvePlace } from '../../language/play/places.ts';
import { inEnglish } from '../../language/message/message.ts';

const court = courtOf(ruleSet('fiba'));
const spot = (name: Parameters<typeof spotPoint>[1], side?: 'left' | 'right') => spotPoint(court, name, side)!;

const text = `play "A"
  from 5-out, ball with 1
  step "Zip"
    1 dribbles to left wing # a remark
    2 cuts
    4 and 5 cut to the blocks
    5 screens for 3, then rolls
    once 4 cuts, 3 cuts off 5 to top
    look 3: three
`;

/** The whole text after a change. */
function changed(intent: Intent, source = text): string {
  const outcome = outcomeOf(intent, source);
  return 'refused' in outcome ? `refused: ${inEnglish(outcome.refused)}` : applyBlockEdits(source.split('\n'), outcome.edits).join('\n');
}

function outcomeOf(intent: Intent, source: string, at = 0) {
  const book = openFile(emptyBook, 'file:///a.play', source);
  return intentOn(compileText(source).plays[at]!, createLookup(book, 'file:///a.play'), intent);
}

function change(intent: Intent, source = text): string {
  const outcome = outcomeOf(intent, source);
  if ('refused' in outcome) return `refused: ${inEnglish(outcome.refused)}`;
  const lines = source.split('\n');
  const after = applyBlockEdits(lines, outcome.edits);
  return after.filter((line) => !lines.includes(line)).join('\n');
}

describe('a change on the floor becomes the coach’s words', () => {
  test.each<[string, Intent, string]>([
    ['the end of a dribble', { kind: 'move-end', action: 'zip/1.1', to: spot('slot', 'right') }, '    1 dribbles to right slot # a remark'],
    ['a little beside a spot', { kind: 'move-end', action: 'zip/1.1', to: { x: spot('elbow', 'left').x, y: spot('elbow', 'left').y + 0.6 } }, '    1 dribbles to 0.6 m above left elbow # a remark'],
    ['into open floor', { kind: 'move-end', action: 'zip/1.1', to: { x: 4.16, y: 2.31 } }, '    1 dribbles to 0.3 m below and 1.4 m right of right mid-post # a remark'],
    ['an end that was not written', { kind: 'move-end', action: 'zip/2.1', to: spot('corner', 'left') }, '    2 cuts to left corner'],
    ['the end of a later link', { kind: 'move-end', action: 'zip/5.3', to: spot('short corner', 'left') }, '    5 screens for 3, then rolls to left short corner'],
    ['where a screen stands', { kind: 'move-end', action: 'zip/5.2', to: spot('elbow', 'right') }, '    5 screens for 3 at right elbow, then rolls'],
    ['where a player starts', { kind: 'move-start', player: 3, to: spot('block', 'left') }, '  from 5-out, ball with 1, 3 at left block'],
    ['a wait', { kind: 'set-wait', action: 'zip/2.1', seconds: 1.5 }, '    1.5 seconds later, 2 cuts'],
    ['where a screen is drawn to', { kind: 'move-screen', action: 'zip/5.2', to: spot('elbow', 'right') }, '    5 screens for 3 at right elbow, then rolls'],
    ['a spot on the way', { kind: 'add-via', action: 'zip/3.1', to: spot('nail') }, '    once 4 cuts, 3 cuts off 5 via nail to top'],
    ['a spot on the way of an end that was not written', { kind: 'add-via', action: 'zip/2.1', to: spot('nail') }, '    2 cuts via nail'],
    ['a spot on a dribble’s way', { kind: 'add-via', action: 'zip/1.1', to: spot('slot', 'left') }, '    1 dribbles via left slot to left wing # a remark'],
    ['so much later', { kind: 'shift-wait', action: 'zip/2.1', by: 0.8 }, '    0.8 seconds later, 2 cuts'],
    ['a cut that is drawn', { kind: 'add-cut', player: 2, step: 'zip', to: spot('corner', 'right') }, '    2 cuts to right corner'],
    ['a dribble that is drawn', { kind: 'add-cut', player: 1, step: 'zip', to: spot('top') }, '    1 dribbles to top'],
    ['a pass that is drawn', { kind: 'add-pass', from: 1, to: 3, step: 'zip' }, '    1 passes to 3'],
    ['two who change places', { kind: 'swap', a: 2, b: 3 }, '  from 5-out, ball with 1, 2 and 3 swapped'],
  ])('%s', (_, intent, line) => expect(change(intent)).toBe(line));

  test('a spot on the way is moved, and a second one comes behind it', () => {
    const via = text.replace('off 5 to top', 'off 5 via nail to top');
    expect(change({ kind: 'move-via', action: 'zip/3.1', via: 0, to: spot('elbow', 'left') }, via)).toBe('    once 4 cuts, 3 cuts off 5 via left elbow to top');
    expect(change({ kind: 'bend', action: 'zip/3.1', from: { x: 0.3, y: 4.4 }, to: spot('elbow', 'left') }, via)).toBe('    once 4 cuts, 3 cuts off 5 via left elbow to top');
    expect(change({ kind: 'bend', action: 'zip/3.1', from: spot('slot', 'left'), to: spot('slot', 'left') }, via)).toBe('    once 4 cuts, 3 cuts off 5 via nail and left slot to top');
    expect(change({ kind: 'add-via', action: 'zip/3.1', to: spot('slot', 'left') }, via)).toBe('    once 4 cuts, 3 cuts off 5 via nail and left slot to top');
  });

  test('a line that is drawn stands below the last action of its step, above the looks', () => {
    expect(changed({ kind: 'add-pass', from: 1, to: 3, step: 'zip' }).split('\n').slice(6, 10)).toEqual(['    5 screens for 3, then rolls', '    once 4 cuts, 3 cuts off 5 to top', '    1 passes to 3', '    look 3: three']);
  });

  test('one of two who share their words gets a line of his own, and the other does what he did', () => {
    const shared = text.replace('    2 cuts\n', '    2 and 3 clear # low\n').replace('    once 4 cuts, 3 cuts off 5 to top\n', '');
    expect(changed({ kind: 'move-end', action: 'zip/3.1', to: spot('corner', 'left') }, shared).split('\n').slice(4, 6)).toEqual(['    2 clears # low', '    3 clears to left corner']);
    const together = shared.replace('2 and 3 clear', '2 and 3 cut to right corner');
    expect(changed({ kind: 'move-end', action: 'zip/2.1', to: spot('wing', 'right') }, together).split('\n').slice(4, 6)).toEqual(['    2 cuts to right wing # low', '    3 cuts to right corner']);
  });

  test('what is drawn into a step that has a counter is drawn, and the counter keeps it as it keeps the other lines', () => {
    const countered = `${text.trimEnd()}\n  step "Round" instead of "Zip" when X1 goes under 5\n    1 dribbles to right slot\n    look 1: three\n`;
    expect(change({ kind: 'add-cut', player: 4, step: 'zip', to: spot('nail') }, countered)).toBe('    4 cuts to nail');
  });

  test('a line that a counter repeats word for word says where else it stands', () => {
    const repeated = `${text.trimEnd()}\n  step "Round" instead of "Zip" when X1 goes under 5\n    1 dribbles to left wing\n    look 1: three\n`;
    const why = 'refused: “Round” repeats this line word for word, and both are one. Change it in both places in the text.';
    expect(change({ kind: 'move-end', action: 'zip/1.1', to: spot('slot', 'right') }, repeated)).toBe(why);
    expect(change({ kind: 'set-wait', action: 'zip/1.1', seconds: 2 }, repeated)).toBe(why);
  });

  test('a counter that keeps what he does, and a step that only follows from the safety, say why they take no line', () => {
    const kept = `${text.trimEnd()}\n  step "Round" instead of "Zip" when X1 goes under 5\n    1 dribbles to right slot\n    look 1: three\n`;
    expect(change({ kind: 'add-cut', player: 2, step: 'round', to: spot('nail') }, kept)).toBe('refused: “Round” keeps what 2 does in “Zip”; with a line of his own here that would be gone. Write it yourself if you mean it.');
    const safe = text.replace('    2 cuts\n', '    2 is the safety at top\n');
    expect(change({ kind: 'add-cut', player: 4, step: 'zip~safety', to: spot('nail') }, safe)).toMatch(/^refused: This step only follows from who is the safety\./);
  });

  test('a first line opens a play', () => {
    expect(changed({ kind: 'add-cut', player: 2, step: 'start', to: spot('rim') }, 'play "New"\n  from horns\n')).toBe('play "New"\n  from horns\n    2 cuts to rim\n');
  });

  test('one of two who were placed together leaves the other where he is', () => {
    const pair = text.replace('from 5-out, ball with 1', 'from 1 top, 2 and 3 corners, 4 and 5 blocks');
    expect(change({ kind: 'move-start', player: 2, to: spot('wing', 'right') }, pair)).toBe('  from 1 top, 2 at right wing, 3 at left corner, 4 and 5 blocks');
  });

  test('two who are placed one by one change their words, and two who were swapped are swapped back', () => {
    const placed = text.replace('from 5-out, ball with 1', 'from 1 top, 2 at right corner, 3 at left wing, 4 and 5 blocks');
    expect(change({ kind: 'swap', a: 2, b: 3 }, placed)).toBe('  from 1 top, 2 at left wing, 3 at right corner, 4 and 5 blocks');
    expect(change({ kind: 'swap', a: 3, b: 2 }, text.replace('ball with 1', 'ball with 1, 2 and 3 swapped'))).toBe('  from 5-out, ball with 1');
  });

  test('a play is mirrored, and mirrored back to the same text', () => {
    const sided = 'play "Right now"\n  from 1 top, 2 at right corner, 3 at left wing, 4 at (-1.2, 3) m, 5 at right block\n  step "Left" # on the right\n    1 dribbles to left wing\n    5 screens for 3 at right elbow\n    at 8 seconds left, 3 cuts to right wing\n    look 3: three\n';
    const turned = changed({ kind: 'mirror' }, sided);
    expect(turned).toBe('play "Right now"\n  from 1 top, 2 at left corner, 3 at right wing, 4 at (1.2, 3) m, 5 at left block\n  step "Left" # on the right\n    1 dribbles to right wing\n    5 screens for 3 at left elbow\n    at 8 seconds left, 3 cuts to left wing\n    look 3: three\n');
    expect(changed({ kind: 'mirror' }, turned)).toBe(sided);
    expect(change({ kind: 'mirror' })).toMatch(/^refused|mirrored/);
  });

  test('a wait is changed, and taken out again', () => {
    const waiting = text.replace('    2 cuts', '    1.5 seconds later, 2 cuts');
    expect(change({ kind: 'set-wait', action: 'zip/2.1', seconds: 2 }, waiting)).toBe('    2 seconds later, 2 cuts');
    expect(change({ kind: 'set-wait', action: 'zip/2.1', seconds: 0 }, waiting)).toBe('    2 cuts');
  });
});

describe('what cannot be done is refused with its reason', () => {
  test.each<[string, Intent, RegExp]>([
    ['two who divide two spots between them', { kind: 'move-end', action: 'zip/4.1', to: spot('corner', 'left') }, /^refused: 4 and 5 share the words of this line\. Give 4 a line of his own first, then it can be moved alone\.$/],
    ['an action that is gone', { kind: 'move-end', action: 'zip/9.1', to: spot('corner', 'left') }, /no longer in the play/],
    ['a shot', { kind: 'move-end', action: 'zip?3.1/3.1', to: spot('corner', 'left') }, /ring|follows/],
    ['a pass of a man without the ball', { kind: 'add-pass', from: 2, to: 3, step: 'zip' }, /2 has no ball to pass at the end of “Zip”: 1 has it/],
    ['a pass to himself', { kind: 'add-pass', from: 1, to: 1, step: 'zip' }, /himself/],
    ['a spot on the way of one who shares his line', { kind: 'add-via', action: 'zip/4.1', to: spot('nail') }, /line of his own/],
    ['less than no wait', { kind: 'shift-wait', action: 'zip/2.1', by: -1 }, /no wait to take away/],
    ['a spot that is not on the way', { kind: 'move-via', action: 'zip/3.1', via: 0, to: spot('nail') }, /no such spot/],
  ])('%s', (_, intent, reason) => expect(change(intent)).toMatch(reason));

  test('a line that cannot be read', () => {
    expect(change({ kind: 'move-end', action: 'zip/1.1', to: spot('top') }, text.replace('left wing', 'left wnig'))).toMatch(/refused/);
  });
});

test('wherever a way is dragged, it ends within a hand of there, and nothing else of the play changes', () => {
  const point = fc.record({ x: fc.double({ min: -7, max: 7, noNaN: true }), y: fc.double({ min: -1, max: 11, noNaN: true }) });
  const actionOf = (source: string) => compileText(source).plays[0]!.play;
  fc.assert(
    fc.property(point, fc.constantFrom('zip/1.1', 'zip/2.1', 'zip/3.1', 'zip/5.3'), (to: Point, action) => {
      const line = change({ kind: 'move-end', action, to });
      if (line === '') return;
      expect(line).not.toMatch(/^refused/);
      const before = actionOf(text);
      const lines = text.split('\n');
      const at = lines.findIndex((one) => (action === 'zip/3.1' ? /^ +once/ : new RegExp(`^ +${action.slice(4, 5)} `)).test(one));
      const after = actionOf(lines.with(at, line).join('\n'));
      const moved = after.steps[0]!.actions.find(({ id }) => id === action)!;
      if (moved.kind !== 'move' && moved.kind !== 'dribble') throw new Error('no way');
      const end = resolvePlace(moved.to!.value, { court, positions: {}, who: moved.who, spots: {} });
      expect(distance(end, to)).toBeLessThanOrEqual(0.21);
      const rest = (play: typeof before) => play.steps[0]!.actions.filter(({ id }) => id !== action);
      expect(rest(after)).toEqual(rest(before));
    }),
    { numRuns: 80 },
  );
});

describe('a copy is changed where it is written', () => {
  const copied = `${text}play "B" mirrors "A"\n`;
  test.each<[string, Intent]>([
    ['an end', { kind: 'move-end', action: 'zip/1.1', to: spot('top') }],
    ['a start', { kind: 'move-start', player: 2, to: spot('top') }],
    ['a wait', { kind: 'set-wait', action: 'zip/2.1', seconds: 2 }],
    ['a spot on the way', { kind: 'add-via', action: 'zip/3.1', to: spot('nail') }],
    ['a new cut', { kind: 'add-cut', player: 2, step: 'zip', to: spot('rim') }],
    ['two who change places', { kind: 'swap', a: 2, b: 3 }],
    ['the side', { kind: 'mirror' }],
  ])('%s', (_, intent) => {
    const book = openFile(emptyBook, 'file:///a.play', copied);
    const compiled = compileText(copied).plays[1]!;
    expect(compiled.play.steps).toHaveLength(1);
    expect(intentOn(compiled, createLookup(book, 'file:///a.play'), intent)).toEqual({ refused: expect.objectContaining({ template: expect.stringMatching(/copied from another play/) }) });
  });
});
