// Men told by what they are called on the team sheet.
import { message } from '../../message/message.ts';
import { endOf, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { word, type Recogniser, type SaidOtherwise } from './saying.ts';

/** The numbers by which positions are called in every gym. Common usage, no source. */
const POSITIONS: readonly (readonly [said: RegExp, numbers: readonly string[]])[] = [
  [/^(point guards?|pg|point|playmaker)$/i, ['1']], [/^(shooting guard|sg|two guard)$/i, ['2']], [/^(small forward|sf)$/i, ['3']], [/^(power forward|pf)$/i, ['4']], [/^(center|centre|five man)$/i, ['5']],
  [/^(big|big man|post|post man|post player|forward)$/i, ['4', '5']], [/^(guard|wing man|wing player|shooter)$/i, ['2', '3']],
];

export const saidOfPlayers: readonly Recogniser[] = [byPosition];

/** `PG passes to 4`, `the center rolls`, `our big rolls` */
function byPosition(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  for (const from of [index, index - 1]) {
    if (from < 0) continue;
    for (const length of [2, 1]) {
      const to = from + length;
      if (to > tokens.length || to <= index) continue;
      const numbers = POSITIONS.find(([said]) => said.test(written(broken, from, to)))?.[1];
      // Of a man the ball or a screen is for, `whoIsThat` speaks; `the post` is a place as well.
      if (numbers === undefined || (numbers.length > 1 && from > 0 && !/^(,|and|then)$/.test(word(tokens[from - 1])))) continue;
      const fixes = numbers.map((number) => tried(broken, message('Write "{words}"', { words: number }), [{ at: startWithArticles(broken, from), to: endOf(tokens[to - 1]!), text: number }]));
      if (fixes.some((fix) => fix !== undefined)) return { code: 'unknown-word', from, to, message: message('Players are called by their numbers, 1 (point guard) to 5 (center): say which one "{words}" is.', { words: written(broken, from, to) }), fixes };
    }
  }
  return undefined;
}
