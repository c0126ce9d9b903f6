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

function change(intent: Intent, source = text): string {
  const book = openFile(emptyBook, 'file:///a.play', source);
  const compiled = compileText(source).plays[0]!;
  const outcome = intentOn(compiled, createLookup(book, 'file:///a.play'), intent);
  if ('refused' in outcome) return `refused: ${outcome.refused}`;
  const lines = source.split('\n');
  const after = applyBlockEdits(lines, outcome.edits);
  return after.filter((line) => !lines.includes(line)).join('\n');
}

describe('a change on the floor becomes the coach’s words', () => {
  test.each<[string, Intent, string]>([
    ['the end of a dribble', { kind: 'move-end', action: 'zip/1.1', to: spot('slot', 'right') }, '    1 dribbles to right slot # a remark'],
    ['a little beside a spot', { kind: 'move-end', action: 'zip/1.1', to: { x: spot('elbow', 'left').x, y: spot('elbow', 'left').y + 0.6 } }, '    1 dribbles to 0.6 m above left elbow # a remark'],
    ['an end that was not written', { kind: 'move-end', action: 'zip/2.1', to: spot('corner', 'left') }, '    2 cuts to left corner'],
    ['the end of a later link', { kind: 'move-end', action: 'zip/5.3', to: spot('short corner', 'left') }, '    5 screens for 3, then rolls to left short corner'],
    ['where a screen stands', { kind: 'move-end', action: 'zip/5.2', to: spot('elbow', 'right') }, '    5 screens for 3 at right elbow, then rolls'],
    ['where a player starts', { kind: 'move-start', player: 3, to: spot('block', 'left') }, '  from 5-out, ball with 1, 3 at left block'],
    ['a wait', { kind: 'set-wait', action: 'zip/2.1', seconds: 1.5 }, '    1.5 seconds later, 2 cuts'],
  ])('%s', (_, intent, line) => expect(change(intent)).toBe(line));

  test('a wait is changed, and taken out again', () => {
    const waiting = text.replace('    2 cuts', '    1.5 seconds later, 2 cuts');
    expect(change({ kind: 'set-wait', action: 'zip/2.1', seconds: 2 }, waiting)).toBe('    2 seconds later, 2 cuts');
    expect(change({ kind: 'set-wait', action: 'zip/2.1', seconds: 0 }, waiting)).toBe('    2 cuts');
  });
});

describe('what cannot be done is refused with its reason', () => {
  test.each<[string, Intent, RegExp]>([
    ['two who share their words', { kind: 'move-end', action: 'zip/4.1', to: spot('corner', 'left') }, /line of his own/],
    ['an action that is gone', { kind: 'move-end', action: 'zip/9.1', to: spot('corner', 'left') }, /no longer in the play/],
    ['a shot', { kind: 'move-end', action: 'zip?3.1/3.1', to: spot('corner', 'left') }, /ring/],
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
  ])('%s', (_, intent) => {
    const book = openFile(emptyBook, 'file:///a.play', copied);
    const compiled = compileText(copied).plays[1]!;
    expect(compiled.play.steps).toHaveLength(1);
    expect(intentOn(compiled, createLookup(book, 'file:///a.play'), intent)).toEqual({ refused: expect.stringMatching(/copied from another play/) });
  });
});
