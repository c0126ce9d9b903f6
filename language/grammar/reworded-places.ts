// Places in other words: `up the middle of the floor`, `the right lane, wide`, `the open corner`.
import type { LineToken } from './line-token.ts';
import { asSaid, before, JOINTS, standing, without, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from './verbs.ts';

/** `up the middle of the floor`, `the far side of the court` */
export function ofTheFloor(tokens: Tokens, at: number): Tokens | undefined {
  return at > 1 && /^(floor|court)$/.test(wordOf(tokens[at + 1])) ? without(tokens, at, at + 2) : undefined;
}

/** `fills the right lane, wide`: a strip of the open floor, whose end is the corner. The lane of the notation is the key. */
export function fillsALane(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const isSide = (token: LineToken | undefined): boolean => /^(left|right)$/.test(wordOf(token));
  if (at === 0) return undefined;
  const side = wordOf(tokens[at + 1]) === 'to' ? at + 2 : at + 1;
  if (!isSide(tokens[side]) || !/^(lane|outside lane)$/.test(wordOf(tokens[side + 1]))) return undefined;
  let to = side + 2;
  if (wordOf(tokens[to]) === ',' && /^(wide|hard|deep)$/.test(wordOf(tokens[to + 1]))) to += 2;
  else if (wordOf(tokens[to]) === 'wide') to++;
  return withThese(tokens, at, to, [standing(types, asSaid(wordOf(tokens[at]), 'sprints'), tokens[at]!), before(types, 'to', tokens[side]!), tokens[side]!, standing(types, 'corner', tokens[side + 1]!, tokens[to - 1])]);
}

/** `from behind the baseline` */
export function fromBehind(tokens: Tokens, at: number): Tokens | undefined {
  if (!/^(behind|out behind|outside)$/.test(wordOf(tokens[at + 1])) || !/line$/.test(wordOf(tokens[at + 2])) && !/line$/.test(wordOf(tokens[at + 3]))) return undefined;
  return tokens.some(({ image }) => verbOf(image)?.class === 'throw-in') ? without(tokens, at + 1, at + 2) : undefined;
}

/** `fills the open corner`: which one is open is worked out. */
export function theOpenSpot(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const place = tokens[at + 1];
  const verb = tokens[/^(to|into)$/.test(wordOf(tokens[at - 1])) ? at - 2 : at - 1];
  if (!place || !/^(corner|wing|slot|spot|place|elbow|block|spots)$/.test(wordOf(place)) || verbOf(wordOf(verb))?.class !== 'move') return undefined;
  return withThese(tokens, at, at + 2, [standing(types, 'open spot', tokens[at]!, place)]);
}

/** `5 pins his man under the basket`, `circles under the basket to the short corner` */
export function underTheBasket(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const last = tokens[at - 1];
  const verb = verbOf(wordOf(last));
  if (at < 2 || !(wordOf(last) === 'man' || ['move', 'seal', 'hold', 'dribble'].includes(verb?.class ?? ''))) return undefined;
  const ends = tokens[at + 1] === undefined || JOINTS.has(wordOf(tokens[at + 1]));
  return withThese(tokens, at, at, [before(types, verb?.class === 'move' || verb?.class === 'dribble' ? (ends ? 'to' : 'via') : 'at', tokens[at]!)]);
}

/** `dives down the gut` */
export function downTheGut(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && /^(gut|pipe|heart|seam|gap|center|centre)$/.test(wordOf(tokens[at + 1])) ? withThese(tokens, at, at + 2, [standing(types, 'down the middle', tokens[at]!, tokens[at + 1])]) : undefined;
}

/** `sprints the left side`, `runs the right sideline` */
export function runsASide(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || verbOf(wordOf(tokens[at - 1]))?.class !== 'move' || !['run', 'sprint', 'jog', 'fill'].includes(verbOf(wordOf(tokens[at - 1]))!.base)) return undefined;
  return withThese(tokens, at, at + 1, [standing(types, `down the ${wordOf(tokens[at])}`, tokens[at]!)]);
}

/** `the middle of the lane` is the lane. */
export function middleOf(tokens: Tokens, at: number): Tokens | undefined {
  return wordOf(tokens[at + 1]) === 'of' && /^(lane|paint|key)$/.test(wordOf(tokens[at + 2])) ? without(tokens, at, at + 2) : undefined;
}

/** `switches onto 1` */
export function onto(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 1 ? withThese(tokens, at, at + 1, [standing(types, 'to', tokens[at]!)]) : undefined;
}
