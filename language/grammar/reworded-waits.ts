// Waits in other words: `right away`, `as the pass is in the air`, `at the same time as 2`.
import { isAttacker, isPlayer, JOINTS, standing, without, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from './verbs.ts';

/** `right away`, `right behind the hand-off`, `slips right to the rim`: at once or straight, and no side. */
export function rightAway(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0) return undefined;
  const next = wordOf(tokens[at + 1]);
  if (next === 'away' && !/^(from)$/.test(wordOf(tokens[at + 2]))) return without(tokens, at, at + 2);
  const isJustThen = /^(behind|after|back|as|when|before|there|now|into)$/.test(next) || (next === 'at' && isPlayer(tokens[at + 2]));
  const isStraight = /^(down|through|up) the (middle|lane)$/.test(next) || (next === 'to' && /^(rim|basket|hoop)$/.test(wordOf(tokens[at + 2])) && verbOf(wordOf(tokens[at - 1]))?.class === 'move');
  const isOffAHandOff = next === 'off' && /^(hand off|handoff|it)$/.test(wordOf(tokens[at + 2]));
  return isOffAHandOff || isJustThen || isStraight ? without(tokens, at, at + 1) : undefined;
}

/** `as the pass is in the air`, `once the ball is passed` */
export function asThePass(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const pass = tokens[at + 1];
  if (!pass || !/^(pass|ball)$/.test(wordOf(pass)) || !/^(is|goes|leaves|comes)$/.test(wordOf(tokens[at + 2]))) return undefined;
  let to = at + 3;
  while (/^(in|air|on|way|thrown|passed|made|released|gone|out|up)$/.test(wordOf(tokens[to]))) to++;
  if (to === at + 3 && wordOf(pass) === 'ball') return undefined;
  if (tokens.slice(at + 3, to).every((token) => /^(in|on)$/.test(wordOf(token))) && to > at + 3) return undefined;
  return withThese(tokens, at, to, [standing(types, 'on', tokens[at]!), standing(types, 'pass', pass, tokens[to - 1])]);
}

/** `at the same time as 2` is together with him; `at the same time as 2 cuts` is as he cuts. */
export function atTheSameTime(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at + 2];
  if (wordOf(tokens[at + 1]) !== 'as' || !who) return undefined;
  const next = tokens[at + 3];
  const isOne = isAttacker(who) && (next === undefined || JOINTS.has(next.image));
  return isOne ? withThese(tokens, at, at + 2, [standing(types, 'together with', tokens[at]!, tokens[at + 1])]) : without(tokens, at, at + 1);
}
