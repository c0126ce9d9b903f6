// A place that is drawn is written as this coach writes places: in his unit, by the names he has given.
import { describe, expect, test } from 'vitest';
import { compilePlay, intentOn } from '../../language/compile.ts';
import { courtOf } from '../../language/court/court.ts';
import type { Point } from '../../language/court/point.ts';
import { ruleSet } from '../../language/court/rule-sets.ts';
import { spotPoint } from '../../language/court/spots.ts';
import { emptyBook, openFile } from '../../language/book/book.ts';
import { applyBlockEdits } from '../../language/edit/apply-edits.ts';
import type { Intent } from '../../language/edit/intent.ts';
import { inEnglish } from '../../language/message/message.ts';
import { createLookup } from '../../language/names/lookup.ts';
import { ownWordsOf } from '../../language/words/own-words.ts';
import type { RuleSetId } from '../../language/court/rule-set.ts';

const uri = 'file:///a.play';
const elbow = (rules: RuleSetId) => spotPoint(courtOf(ruleSet(rules)), 'elbow', 'left')!;
const above = (rules: RuleSetId, metres: number): Point => ({ x: elbow(rules).x, y: elbow(rules).y + metres });
const play = (first: string, ...more: readonly string[]) => ['play "A"', '  from 5-out, ball with 1', ...more.map((line) => `  ${line}`), '  step "Zip"', `    ${first}`, '    look 1: jumper', ''].join('\n');

/** The lines that a change of the first play brings. */
function changed(text: string, intent: Intent, beside: Readonly<Record<string, string>> = {}): string {
  const book = Object.entries(beside).reduce((known, [name, one]) => openFile(known, `file:///${name}`, one), openFile(emptyBook, uri, text));
  const block = book.files.get(uri)!.blocks.find(({ kind }) => kind === 'play')!;
  const lookup = createLookup(book, uri);
  const compiled = compilePlay(block, lookup);
  const outcome = intentOn(compiled, lookup, intent, ownWordsOf(book, uri, block, compiled.court));
  if ('refused' in outcome) return `refused: ${inEnglish(outcome.refused)}`;
  const lines = block.lines.map(({ parsed }) => parsed.text);
  return applyBlockEdits(lines, outcome.edits).filter((line) => !lines.includes(line)).map((line) => line.trim()).join('\n');
}

const end = (to: Point): Intent => ({ kind: 'move-end', action: 'zip/1.1', to });
const dribbles = '1 dribbles to left wing';

describe('in the unit', () => {
  test.each<[string, string, RuleSetId, string]>([
    ['of the rules’ readers where he measures nothing', play(dribbles), 'fiba', '1 dribbles to 0.6 m above left elbow'],
    ['the same in feet', `rules nfhs\n\n${play(dribbles)}`, 'nfhs', '1 dribbles to 2 ft above left elbow'],
    ['that the line has already', play('1 dribbles to 3 ft below left wing'), 'fiba', '1 dribbles to 2 ft above left elbow'],
    ['that another line of the play has', play(dribbles, 'spot "pocket" is 3 ft inside right elbow'), 'fiba', '1 dribbles to 2 ft above left elbow'],
    ['that another play of the file has', `${play(dribbles)}\n${play('1 dribbles to (10, 12) ft').replace('"A"', '"B"')}`, 'fiba', '1 dribbles to 2 ft above left elbow'],
    ['of this play, whatever the file has', `${play('1 dribbles to 1 m below left wing')}\n${play('1 dribbles to (10, 12) ft').replace('"A"', '"B"')}`, 'fiba', '1 dribbles to 0.6 m above left elbow'],
    ['that most of its measures have', play('1 dribbles to 1 ft below left wing', 'spot "a" is 1 m inside right elbow', 'spot "b" is 20 cm inside right elbow'), 'fiba', '1 dribbles to 0.6 m above left elbow'],
    ['that he writes, on a court of feet too', `rules nfhs\n\n${play('1 dribbles to 1 m below left wing')}`, 'nfhs', '1 dribbles to 0.6 m above left elbow'],
    ['and not one of a remark or a name', play(`${dribbles} # 3 ft more`, 'note "stay 6 ft off him"'), 'fiba', '1 dribbles to 0.6 m above left elbow # 3 ft more'],
  ])('%s', (_, text, rules, line) => expect(changed(text, end(above(rules, 0.6)))).toBe(line));

  test('of the files that his uses', () => {
    expect(changed(`use "ours.play"\n\n${play(dribbles)}`, end(above('fiba', 0.6)), { 'ours.play': 'spot "pocket" is 3 ft inside right elbow\n' })).toBe('1 dribbles to 2 ft above left elbow');
  });

  test('for a start, a screen’s place, a spot on the way, a line that is drawn, two ways from a spot, and where only numbers fit', () => {
    const text = play('1 dribbles to left wing', 'spot "pocket" is 3 ft inside right elbow').replace('    look', '    5 screens for 3\n    look');
    const to = above('fiba', 0.6);
    expect(changed(text, { kind: 'move-start', player: 3, to })).toBe('from 5-out, ball with 1, 3 at 2 ft above left elbow');
    expect(changed(text, { kind: 'move-screen', action: 'zip/5.1', to })).toBe('5 screens for 3 at 2 ft above left elbow');
    expect(changed(text, { kind: 'add-via', action: 'zip/1.1', to })).toBe('1 dribbles via 2 ft above left elbow to left wing');
    expect(changed(text, { kind: 'add-cut', player: 2, step: 'zip', to })).toBe('2 cuts to 2 ft above left elbow');
    expect(changed(text, end({ x: 5.9, y: -0.1 }))).toBe('1 dribbles to 1 ft above and 4 ft left of right corner');
    expect(changed(text, end({ x: 7, y: 10.2 }))).toBe('1 dribbles to (23, 33.5) ft');
  });
});

describe('by the names of his own spots', () => {
  const pocket = { x: 1.2, y: 6.1 };

  test.each([
    ['of the play', play(dribbles, 'spot "Pocket" is (1.2, 6.1) m'), '1 dribbles to "Pocket"'],
    ['of the file, named nowhere yet', `spot "Pocket" is (1.2, 6.1) m\n\n${play(dribbles)}`, '1 dribbles to "Pocket"'],
    ['of the play before that of the file', `spot "POCKET" is (9, 9) m\n\n${play(dribbles, 'spot "Pocket" is (1.2, 6.1) m')}`, '1 dribbles to "Pocket"'],
  ])('%s', (_, text, line) => expect(changed(text, end({ x: pocket.x + 0.1, y: pocket.y }))).toBe(line));

  test('of a file that his uses', () => {
    expect(changed(`use "ours.play"\n\n${play(dribbles)}`, end(pocket), { 'ours.play': 'spot "Pocket" is (1.2, 6.1) m\n' })).toBe('1 dribbles to "Pocket"');
  });

  test('and away from the only place that names it', () => {
    expect(changed(`spot "Pocket" is (1.2, 6.1) m\n\n${play('1 dribbles to "Pocket"')}`, end(elbow('fiba')))).toBe('1 dribbles to left elbow');
  });

  test('where one lies beside a spot of ours, his is meant, unless ours is met exactly', () => {
    const at = elbow('fiba');
    const text = play(dribbles, `spot "Pocket" is (${(at.x + 0.15).toFixed(3)}, ${at.y.toFixed(3)}) m`);
    expect(changed(text, end({ x: at.x + 0.1, y: at.y }))).toBe('1 dribbles to "Pocket"');
    expect(changed(text, end(at))).toBe('1 dribbles to left elbow');
  });

  test('a place away from it is said from the floor’s', () => {
    expect(changed(play(dribbles, 'spot "Pocket" is (1.2, 6.1) m'), end(above('fiba', 0.6)))).toBe('1 dribbles to 0.6 m above left elbow');
  });
});
