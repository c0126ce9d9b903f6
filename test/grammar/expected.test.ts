import { describe, expect, it } from 'vitest';
import { expectedAfter } from '../../language/grammar/expected.ts';
import { parseLine } from '../../language/grammar/parse-line.ts';
import { notationLines } from './notation-lines.ts';

const texts = (prefix: string): string[] => [...new Set(expectedAfter(prefix).items.map((item) => (item.kind === 'keyword' || item.kind === 'player' ? item.text : item.kind)))];

describe('words expected at the cursor', () => {
  // A word that a saying passes over at a line's end may be about to say whom he goes past.
  it.each(['3 cuts behind ', '4 rolls behind ', '3 cuts under ', '3 cuts off ', '3 cuts around ', '2 and 3 cut behind '])('are the players behind %s', (prefix) => expect(texts(prefix)).toEqual(expect.arrayContaining(['1', '2', '3', '4', '5'])));

  it.each([
    ['1 passes to ', ['1', '2', '3', '4', '5', 'xplayer', 'him', 'them'], 12, ''],
    ['1 passes to 2', ['2'], 12, '2'],
    ['3 cuts to the short c', ['short corner', 'short corners'], 14, 'short c'],
    ['3 cuts to the short ', ['short corner', 'short corners'], 14, 'short '],
    ['3 cuts to right corn', ['corner', 'corners', 'short corner', 'short corners', 'backcourt corner', 'backcourt corners'], 16, 'corn'],
    ['step "B" af', ['after'], 9, 'af'],
    ['step "B" after "', ['string'], 15, '"'],
    // A longer phrase that begins the same way hides nothing: it is offered by the words it lacks.
    ['against ', ['man', 'man-to-man', 'form', 'full-court', 'a press'], 8, ''],
    ['situation against ', ['against a press'], 10, 'against '],
    ['call with 22 on', ['on the clock'], 13, 'on'],
    ['call with 22 ', ['to', ',', 'on the clock', 'left'], 13, ''],
    ['from 4-o', ['4-out 1-in', '4-out'], 5, '4-o'],
    ['1 keeps his dr', ['keeps his dribble'], 2, 'keeps his dr'],
    ['5 posts u', ['posts up'], 2, 'posts u'],
    ['level u1', ['u10', 'u12', 'u14', 'u16'], 6, 'u1'],
    ['# 1 pas', [], 7, ''],
    ['hello wor', [], 9, ''],
  ])('%s', (prefix, expected, from, typed) => {
    expect(texts(prefix)).toEqual(expected);
    expect(expectedAfter(prefix)).toMatchObject({ from, typed });
  });

  it('behind "and" in a screen come another user or any verb', () => {
    const items = expectedAfter('4 screens for 2 and ').items;
    expect(items.some((item) => item.kind === 'player' && item.path.includes('players>Player'))).toBe(true);
    expect(items.some((item) => item.text === 'rolls' && item.class === 'move')).toBe(true);
    expect(items.some((item) => item.text === 'switches' && item.class === 'defend')).toBe(true);
  });

  it('a path says what a word would be', () => {
    const [receiver] = expectedAfter('1 passes to ').items;
    expect(receiver!.path).toEqual(['Statement', 'first>Clause', 'action>Action', 'Pass', 'parts>PassPart', 'PassTo', 'player>Player', 'number']);
  });

  it.each([
    ['4 ', [4], undefined],
    ['1 passes to ', [1], 'passes'],
    ['1 passes to 2 and ', [1], undefined],
    ['1 passes to 2, 3 ', [3], undefined],
    ['as 5 rolls, 2 and 3 ', [2, 3], undefined],
    ['once 4 is set, 3 cuts off 4 to ', [3], 'cuts'],
  ])('%s: who acts', (prefix, numbers, verb) => {
    const { acting } = expectedAfter(prefix);
    expect(acting?.subject?.$type === 'Players' && acting.subject.players.map((player) => player.number)).toEqual(numbers);
    expect(acting?.verb).toBe(verb);
  });

  it('at every word of every line of the notation, that word is expected', () => {
    for (const [line, kind] of notationLines) {
      if (kind === '!') continue;
      const text = line.replace(/\s*#.*$/, '');
      for (const match of text.matchAll(/(?<![^\s,:()])[a-z][a-z-]*/gi)) {
        const before = text.slice(0, match.index);
        if ((before.match(/["“”]/g) ?? []).length % 2 || /^\s*(tags|allow) /.test(before) || /^(the|a|an|his|x[1-5])$/i.test(match[0])) continue;
        if (/\d\s*$/.test(before) && parseLine(line).tree && /^(s|m|ft|sec|cm|seconds|inches|metres)$/.test(match[0])) continue;
        const { items } = expectedAfter(before + match[0].slice(0, -1));
        const word = match[0].toLowerCase().split('-')[0]!;
        expect(items.some((item) => item.text.toLowerCase().includes(word)), `${before}|${match[0]}`).toBe(true);
      }
    }
  });
});
