// `takes two steps toward the ball`, `goes two steps down to the corner`, `takes a step up`, `takes one dribble to the right`: so far on the way there.
import type { LineToken } from '../line-token.ts';
import { after, asSaid, isPlayer, JOINTS, standing, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';

/** Metres that a step, or a dribble on the way, covers. Common practice, no source. */
const LENGTHS = { step: 0.75, dribble: 2 } as const;
const COUNTS: ReadonlyMap<string, number> = new Map(Object.entries({ one: 1, '1': 1, two: 2, couple: 2, '2': 2, three: 3, few: 3, '3': 3, four: 4, '4': 4, extra: 1, another: 1 }));
const SIZES = /^(of|big|quick|hard|short|long|small|little|more|slide|sideways)$/;
/** Where he is on his way to, if the line only says which way. */
const WAYS: ReadonlyMap<string, string> = new Map(Object.entries({ up: 'half court', out: 'half court', back: 'half court', in: 'rim', down: 'baseline', inside: 'rim' }));
const LINES = /^(lane line|lane|floor|line|court)$/;
const ENDS: ReadonlySet<string> = new Set([...JOINTS, 'as', 'once', 'when', 'after', 'as soon as', 'until', 'while', 'for']);

/** The words of where to behind the count, and how many of the line's they stand for. */
interface WhereTo {
  readonly written: readonly LineToken[];
  readonly next: number;
}

export function countedSteps(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const verb = tokens[at - 1];
  const isTaken = /^takes?$/.test(wordOf(verb));
  const sort = verbOf(wordOf(verb))?.class;
  if (at < 2 || verb === undefined || !(isTaken || sort === 'move' || sort === 'dribble')) return undefined;
  // `takes a step`: the article is gone.
  const isOne = isTaken && /^step/.test(wordOf(tokens[at]));
  let noun = isOne ? at : at + 1;
  while (SIZES.test(wordOf(tokens[noun]))) noun++;
  const [, what, way] = /^(step|dribble)s?(?: (up|in|out|back|down))?$/.exec(wordOf(tokens[noun])) ?? [];
  const count = isOne ? 1 : COUNTS.get(wordOf(tokens[at]));
  if (what === undefined || count === undefined) return undefined;
  const unit = what === 'dribble' || sort === 'dribble' ? 'dribble' : 'step';
  const length = { ...standing(types, 'LENGTH', tokens[at]!, tokens[noun]), image: `${count * LENGTHS[unit]} m` };
  const goal = toOneSide(tokens, noun + 1, length, types) ?? onTheWay(tokens, noun + 1, length, way, types, unit);
  if (goal === undefined) return undefined;
  const goes = isTaken ? standing(types, asSaid(wordOf(verb), unit === 'dribble' ? 'dribbles' : 'moves'), verb) : verb;
  return [...tokens.slice(0, at - 1), goes, ...goal.written, ...tokens.slice(goal.next)];
}

/** `to the right`: from where he stands himself. */
function toOneSide(tokens: Tokens, from: number, length: LineToken, types: Types): WhereTo | undefined {
  const at = wordOf(tokens[from]) === 'to' ? from + 1 : from;
  const side = tokens[at];
  if (side === undefined || !/^(left|right)$/.test(wordOf(side)) || !isEnd(tokens[at + 1])) return undefined;
  const him = tokens.findLast((token, i) => i < from && isPlayer(token));
  if (him === undefined) return undefined;
  const { startOffset, endOffset, startColumn, endColumn } = side;
  return { written: [after(types, 'to', { ...length, endOffset: length.startOffset - 2, endColumn: length.startColumn! - 2 }), length, standing(types, `${wordOf(side)} of`, side), { ...him, startOffset, endOffset, startColumn: startColumn!, endColumn: endColumn! }], next: at + 1 };
}

/** `toward the ball`, `down to the corner`, `up the lane line`; of so many dribbles `to` a place all are meant. */
function onTheWay(tokens: Tokens, from: number, length: LineToken, said: string | undefined, types: Types, unit: keyof typeof LENGTHS): WhereTo | undefined {
  let next = from;
  let way = said;
  while (WAYS.has(wordOf(tokens[next]))) way = wordOf(tokens[next++]);
  const word = wordOf(tokens[next]);
  if (/^(toward|at|into)$/.test(word) || (word === 'to' && unit === 'step')) return tokens[next + 1] === undefined ? undefined : { written: [length, standing(types, 'toward', tokens[next]!)], next: next + 1 };
  while (way !== undefined && LINES.test(wordOf(tokens[next]))) next++;
  const goal = WAYS.get(way ?? '');
  if (goal === undefined || !isEnd(tokens[next])) return undefined;
  const last = tokens[next - 1]!;
  return { written: [length, after(types, 'toward', last), after(types, goal, last)], next };
}

function isEnd(token: LineToken | undefined): boolean {
  return token === undefined || ENDS.has(wordOf(token));
}
