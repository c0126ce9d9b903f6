// Hand-offs and give-backs, whoever the line tells them of: `3 comes off 4 and takes the hand-off from 2`, `1 throws it to 2 and gets it right back`.
import type { LineToken } from '../line-token.ts';
import { asSaid, before, isAttacker, isPlayer, JOINTS, oneOf, standing, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';

const COMES_FOR_IT = oneOf('comes', 'come', 'comes off', 'come off', 'cuts', 'cut', 'curls', 'curl', 'runs', 'run', 'uses', 'use');
const WHERE = oneOf('to', 'into', 'toward', 'at', 'in', 'on', 'via', 'behind', 'beside');

/** `3 comes off 4 and takes the hand-off from 2`: he comes to 2, and 2 hands off to him. */
export function takesAHandOff(line: Tokens, place: number, types: Types): Tokens | undefined {
  const head = behindTheWait(line);
  if (place < head) return undefined;
  const [tokens, at] = [line.slice(head), place - head];
  const taken = fromHim(tokens, at, types) ?? fromTheBall(tokens, at, types);
  return taken && [...line.slice(0, head), ...taken];
}

/** `2 comes up and takes the hand-off`: from who has the ball. */
function fromTheBall(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const noun = at + 1 + (wordOf(tokens[at + 1]) === 'dribble' ? 1 : 0);
  const end = tokens[noun + 1];
  if (at === 0 || !/^(hand off|handoff|hand-off|dho)$/.test(wordOf(tokens[noun])) || (end !== undefined && !JOINTS.has(wordOf(end)))) return undefined;
  return withThese(tokens, at, noun + 1, [standing(types, asSaid(wordOf(tokens[at]), 'takes the hand off'), tokens[at]!, tokens[noun])]);
}

/** What he gets from another, and what the other does. */
const HOW_IT_COMES: readonly (readonly [said: RegExp, does: string])[] = [[/(^| )(hand off|handoff|hand-off|dho)$/, 'hands off'], [/(^| )(pass|feed|reversal|ball|it)$/, 'passes'], [/^skip(-pass)?$/, 'skips'], [/^lob( pass)?$/, 'lobs'], [/^bounce-pass$/, 'bounce-passes']];

/** `4 pops and takes the pass from 1`: 1 passes to him. */
function fromHim(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const [taker, verb] = tokens;
  const isOneWord = / (the hand off|it|the ball)$/.test(wordOf(tokens[at]));
  const noun = isOneWord ? at : at + 1 + (wordOf(tokens[at + 1]) === 'dribble' ? 1 : 0);
  const giver = tokens[noun + 2];
  const how = HOW_IT_COMES.find(([said]) => said.test(wordOf(tokens[noun])))?.[1];
  if (!isAttacker(taker) || !verb || how === undefined || wordOf(tokens[noun + 1]) !== 'from' || giver === undefined || !isAttacker(giver)) return undefined;
  const joint = tokens.findLastIndex((token, i) => i < at && !JOINTS.has(wordOf(token))) + 1;
  if (joint === at ? at !== 1 : tokens.slice(1, joint).some((token, i) => JOINTS.has(wordOf(token)) && isPlayer(tokens[i + 2]))) return undefined;
  const gives = [standing(types, how, tokens[at]!, tokens[noun + 1]!), standing(types, 'to', giver), placedAt(taker, giver)];
  const before = joint === at ? [] : [...tokens.slice(0, joint), ...(how === 'hands off' && comesOffTo(tokens.slice(1, joint)) ? [standing(types, 'to', tokens[joint]!), standing(types, 'beside', tokens[joint]!), placedAt(giver, tokens[joint]!)] : []), standing(types, ',', tokens[joint]!)];
  return [...before, giver, ...gives, ...withSubject(tokens.slice(noun + 3), taker)];
}

/** What the line goes on with, told of a man again: without a subject it would be told of the one just put in. */
function withSubject(rest: Tokens, man: LineToken | undefined): Tokens {
  const first = rest.findIndex((token) => !JOINTS.has(wordOf(token)));
  return first < 1 || isPlayer(rest[first]) ? rest : [...rest.slice(0, first), placedAt(man, rest[first - 1]!), ...rest.slice(first)];
}

/** `1 cuts off 4, 4 hands off to 1`: he comes for it, and comes off the hand-off; as a way of its own the cut would lead on to the rim, and back. */
export function cutsOffTheHandOff(tokens: Tokens, at: number): Tokens | undefined {
  const man = tokens[at - 1];
  if (!isAttacker(man) || (at > 1 && !JOINTS.has(wordOf(tokens[at - 2]))) || !COMES_FOR_IT.has(wordOf(tokens[at]))) return undefined;
  const off = / off$|^uses?$/.test(wordOf(tokens[at])) ? at : at + 1;
  const giver = tokens[off + 1];
  if ((off > at && wordOf(tokens[off]) !== 'off') || !isAttacker(giver)) return undefined;
  const isBeside = wordOf(tokens[off + 2]) === 'to' && wordOf(tokens[off + 3]) === 'beside' && wordOf(tokens[off + 4]) === wordOf(giver);
  const joint = isBeside ? off + 5 : off + 2;
  let again = joint;
  while (JOINTS.has(wordOf(tokens[again]))) again++;
  const gives = verbOf(wordOf(tokens[again + 1]));
  const taker = tokens[again + 3];
  if (again === joint || wordOf(tokens[again]) !== wordOf(giver) || gives?.base !== 'hand off' || wordOf(tokens[again + 2]) !== 'to' || !(wordOf(taker) === wordOf(man) || wordOf(taker) === 'him')) return undefined;
  // `takes the hand-off from 4` names him behind: he stands where he was come off.
  return [...tokens.slice(0, at - 1), tokens[again]!.startOffset > tokens[again + 1]!.startOffset ? giver! : tokens[again]!, ...tokens.slice(again + 1, again + 3), wordOf(taker) === 'him' ? placedAt(man, taker!) : taker!, ...tokens.slice(again + 4)];
}

/** `1 throws it to 2 and gets it right back`, `and gets it again`: 2 passes to 1. */
export function getsItBack(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  let back = at + 1;
  while (/^(right|it|ball|straight)$/.test(wordOf(tokens[back]))) back++;
  const end = tokens[back + 1];
  if (at < 3 || !/^(back|again)$/.test(wordOf(tokens[back])) || !JOINTS.has(wordOf(tokens[at - 1])) || (end !== undefined && !JOINTS.has(wordOf(end)))) return undefined;
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(wordOf(token)) !== undefined);
  const [passer, receiver] = [tokens[verb - 1], tokens.slice(verb, at).findLast(isAttacker)];
  if (verb < 1 || verbOf(wordOf(tokens[verb]))!.class !== 'pass' || !isAttacker(passer) || receiver === undefined) return undefined;
  const [got, last] = [tokens[at]!, tokens[back]!];
  return [...tokens.slice(0, at), placedAt(receiver, before(types, 'to', got)), standing(types, 'passes', got), standing(types, 'to', last), placedAt(passer, last), ...withSubject(tokens.slice(back + 1), passer)];
}

/** Where the line begins behind a wait that stands first: `on the catch, 2 …`. */
function behindTheWait(tokens: Tokens): number {
  return /^(as|once|when|after|on|while|at)$/.test(wordOf(tokens[0])) ? tokens.findIndex(({ image }) => image === ',') + 1 : 0;
}

/** A man named once more, with the columns of other words. */
function placedAt(man: LineToken | undefined, { startOffset, endOffset, startColumn, endColumn }: LineToken): LineToken {
  return { ...man!, startOffset, endOffset, startColumn: startColumn!, endColumn: endColumn! };
}

/** Off a screen, and no word of where to. */
function comesOffTo(said: Tokens): boolean {
  return COMES_FOR_IT.has(wordOf(said[0])) && said.some((token) => /off$/.test(wordOf(token)) || /^uses?$/.test(wordOf(token))) && !said.some((token) => WHERE.has(wordOf(token)));
}

/** `gives it right back to 1 on a dribble hand-off` hands off. */
export function onAHandOff(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const noun = wordOf(tokens[at + 1]) === 'dribble' ? at + 2 : at + 1;
  if (!/^(hand off|handoff|dribble hand off|dho)$/.test(wordOf(tokens[noun]))) return undefined;
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  const known = verb < 0 ? undefined : verbOf(tokens[verb]!.image)!;
  if (known?.class !== 'pass' || known.base === 'skip' || known.base === 'lob') return undefined;
  const kept = tokens.slice(verb + 1, at).filter(({ image }) => !/^(right|back)$/.test(image));
  return withThese(tokens, verb, noun + 1, [standing(types, known.number === 'singular' ? 'hands off' : 'hand off', tokens[verb]!), ...kept]);
}
