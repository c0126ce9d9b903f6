// The ball in other words: dribbles, passes, hand-offs, throw-ins, looks and the clock; `takes two dribbles to`, `makes the pass to 5`.
import { after, asSaid, before, isAttacker, JOINTS, oneOf, plural, standing, without, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { singular } from './rewording.ts';
import { verbOfIng } from './reworded-moves.ts';
import { verbOf } from './verbs.ts';

const COUNTS = oneOf('one', 'two', 'three', 'couple', 'couple of', 'few', 'of', 'hard', 'quick', 'long', 'big', 'more', 'last', 'extra', 'power', 'single', 'escape', 'retreat', 'attack', 'rhythm', 'strong', 'another');

/** `takes two hard dribbles to the elbow`, `puts it on the floor`. */
export function takesDribbles(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const word = wordOf(tokens[at]);
  const isOne = /s$/.test(word);
  if (at > 0 && /^puts?$/.test(word) && /^(it|ball)$/.test(wordOf(tokens[at + 1])) && wordOf(tokens[at + 2]) === 'on' && /^(floor|deck)$/.test(wordOf(tokens[at + 3])))
    return withThese(tokens, at, at + 4, [standing(types, isOne ? 'dribbles' : 'dribble', tokens[at]!, tokens[at + 3])]);
  if (at === 0 || !/^(takes?|gets?|uses?|needs?)$/.test(word)) return undefined;
  let noun = at + 1;
  while (COUNTS.has(wordOf(tokens[noun])) || /^(NUMBER|PLAYER)$/.test(tokens[noun]?.tokenType.name ?? '')) noun++;
  if (!/^(dribbles?|bounces?)$/.test(wordOf(tokens[noun]))) return undefined;
  // Where they end must be said: `one dribble to the right` could end anywhere.
  const where = /^downhill$/.test(wordOf(tokens[noun + 1])) ? noun + 2 : noun + 1;
  const isSide = /^(left|right)$/.test(wordOf(tokens[where + 1])) && (tokens[where + 2] === undefined || JOINTS.has(wordOf(tokens[where + 2])));
  if (!/^(to|into|toward|baseline|middle|off|at)$/.test(wordOf(tokens[where])) || isSide) return undefined;
  return withThese(tokens, at, noun + 1, [standing(types, isOne ? 'dribbles' : 'dribble', tokens[at]!, tokens[noun])]);
}

/** `kills some clock`, `burns the clock down`: he keeps the ball; for how long, what follows says. */
export function killsClock(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const clock = tokens.findIndex((token, i) => i > at && i <= at + 3 && /^(clock|time|seconds)$/.test(wordOf(token)));
  if (clock < 0) return undefined;
  let rest = clock + 1;
  while (/^(run|down|off|out|away|tick|go)$/.test(wordOf(tokens[rest]))) rest++;
  if (/^lets?$/.test(wordOf(tokens[at])) && rest === clock + 1) return undefined;
  const keeps = standing(types, asSaid(wordOf(tokens[at]), 'keeps his dribble'), tokens[at]!, tokens[rest - 1]);
  const time = tokens[rest + 1];
  if (!/^(to|until)$/.test(wordOf(tokens[rest])) || !time || !/^(NUMBER|PLAYER|SECONDS)$/.test(time.tokenType.name)) return withThese(tokens, at, rest, [keeps]);
  return withThese(tokens, at, rest + 2, [keeps, standing(types, 'until', tokens[rest]!), time, ...(tokens[rest + 2]?.image === 'on the clock' ? [] : [after(types, 'on the clock', time)])]);
}

/** `until the clock says 12` is until 12 on the clock. */
export function theClockSays(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const bare = tokens[at + 1]?.tokenType.name === 'SECONDS';
  if (!bare && wordOf(tokens[at + 1]) !== 'clock') return undefined;
  const time = bare ? at + 1 : tokens.findIndex((token, i) => i > at + 1 && i <= at + 4 && /^(NUMBER|PLAYER|SECONDS)$/.test(token.tokenType.name));
  if (time < 0 || /^(on the clock|on the shot clock|left|are|is|later)$/.test(wordOf(tokens[time + 1]))) return undefined;
  return withThese(tokens, at + 1, time + 1, [tokens[time]!, after(types, 'on the clock', tokens[time]!)]);
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

const LINES = oneOf('sideline', 'baseline');

/** `inbounds, right sideline`; `from under the basket, right of the lane`; `from the baseline on the left`. */
export function whereHeThrowsIn(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const verb = tokens.findIndex(({ image }) => verbOf(image)?.class === 'throw-in');
  if (verb < 0 || verb > at) return undefined;
  if (wordOf(tokens[at]) === ',' && /^(left|right)$/.test(wordOf(tokens[at + 1])) && LINES.has(wordOf(tokens[at + 2])) && tokens[at + 3] === undefined) return withThese(tokens, at, at + 1, [standing(types, 'from', tokens[at]!)]);
  const line = /^under the/.test(tokens[at]!.image) ? 'baseline' : tokens[at]!.image;
  if (LINES.has(line) && wordOf(tokens[at + 1]) === 'on' && /^(left|right)$/.test(wordOf(tokens[at + 2])) && !/^(left|right)$/.test(wordOf(tokens[at - 1])))
    return withThese(tokens, at, at + 3, [standing(types, wordOf(tokens[at + 2]), tokens[at]!), standing(types, line, tokens[at + 1]!, tokens[at + 2])]);
  if (!/^under the/.test(tokens[at]!.image)) return undefined;
  const side = wordOf(tokens[at + 1]) === ',' ? at + 2 : at + 1;
  const said = /^(left|right) of$/.exec(wordOf(tokens[side]))?.[1] ?? /^(left|right) side of$/.exec(wordOf(tokens[side]))?.[1];
  if (said === undefined || !/^(lane|key|paint|basket|rim|hoop)$/.test(wordOf(tokens[side + 1]))) return undefined;
  return withThese(tokens, at, side + 2, [standing(types, said, tokens[side]!), standing(types, 'baseline', tokens[side + 1]!)]);
}

const CHANCES: ReadonlySet<string> = new Set(['layup', 'lay-up', 'dunk', 'jumper', 'jump shot', 'three', '3', 'three-pointer', 'hook', 'hook shot', 'floater', 'runner', 'shot', 'lob', 'skip', 'pull up', 'put-back', 'lay-in', 'finish', 'bounce-pass', 'kick out', 'pocket pass', 'skip-pass']);
const BETWEEN_CHANCES = oneOf('open', 'corner', 'quick', 'easy', 'wing', 'elbow', 'baseline', 'pull up', 'step back', 'catch', 'wide-open', 'clean', 'backdoor', 'power', 'reverse', 'running', 'driving', 'short');

/** `look 2 for the corner three`, `look 5 on the block, layup`: what follows is the shot. */
export function lookForAShot(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (tokens[0]?.image !== 'look' || at < 2 || tokens.some(({ image }) => image === ':')) return undefined;
  let shot = at + 1;
  while (BETWEEN_CHANCES.has(wordOf(tokens[shot])) && !CHANCES.has(wordOf(tokens[shot]))) shot++;
  const end = tokens[shot + 1];
  if (!CHANCES.has(wordOf(tokens[shot])) || (end !== undefined && ![',', 'or', 'then', 'from', 'at', 'in'].includes(end.image))) return undefined;
  if (wordOf(tokens[shot]) === '3' && wordOf(tokens[at]) === ',') return undefined;
  return withThese(tokens, at, at + 1, [standing(types, ':', tokens[at]!)]);
}

/** `drops it down to 5`: a pass; without the ball he drops as a defender does. */
export function dropsIt(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(it|ball)$/.test(wordOf(tokens[at + 1]))) return undefined;
  let to = at + 2;
  while (/^(off|down|back|over|right|ahead|around|in|inside|out|up|across|away)$/.test(wordOf(tokens[to])) && to < at + 4) to++;
  if (!/^(to|into|for|in to)$/.test(wordOf(tokens[to])) || !(isAttacker(tokens[to + 1]) || wordOf(tokens[to + 1]) === 'him')) return undefined;
  const joint = standing(types, 'to', tokens[to]!);
  return withThese(tokens, at, to + 1, [standing(types, asSaid(wordOf(tokens[at]), 'passes'), tokens[at]!), tokens[at + 1]!, joint]);
}

/** `dribbles once to the baseline` */
export function dribblesOnce(tokens: Tokens, at: number): Tokens | undefined {
  if (verbOf(wordOf(tokens[at - 1]))?.class !== 'dribble') return undefined;
  const next = tokens[at + 1];
  return next === undefined || /^(to|into|toward|left|right|and|then|,|baseline|middle|hard)$/.test(wordOf(next)) ? without(tokens, at, at + 1) : undefined;
}

const PASSES_BY_NOUN: ReadonlyMap<string, string> = new Map(Object.entries({ pass: 'passes', 'bounce-pass': 'bounce-passes', 'skip-pass': 'skips', skip: 'skips', lob: 'lobs', 'lob pass': 'lobs', 'chest-pass': 'chest-passes', 'entry pass': 'passes', 'pocket pass': 'bounce-passes', 'swing pass': 'swings', 'kick out': 'kicks out', 'kick-out pass': 'kicks out', 'long pass': 'passes', 'overhead-pass': 'passes', 'touch pass': 'tips' }));

/** `makes the pass to 5`, `throws a hard bounce pass to 3` */
export function makesThePass(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  let noun = at + 1;
  while (/^(hard|quick|good|crisp|long|short|simple|sharp|nice|little|soft|high|easy|return|direct|straight|perfect)$/.test(wordOf(tokens[noun]))) noun++;
  const verb = PASSES_BY_NOUN.get(wordOf(tokens[noun]));
  if (at === 0 || verb === undefined || !/^(to|into|back|ahead|inside|over|across|along|in)/.test(wordOf(tokens[noun + 1]))) return undefined;
  return withThese(tokens, at, noun + 1, [standing(types, /s$/.test(wordOf(tokens[at])) ? verb : plural(verb), tokens[at]!, tokens[noun])]);
}

/** `passes to 4 who swings it to 3`: 4 goes on. */
export function whoGoesOn(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const hasComma = wordOf(tokens[at - 1]) === ',';
  const who = tokens[hasComma ? at - 2 : at - 1];
  if (!isAttacker(who) || at < 2 || verbOf(wordOf(tokens[at + 1])) === undefined) return undefined;
  if (hasComma) return withThese(tokens, at, at + 1, [{ ...standing(types, 'PLAYER', tokens[at]!), image: who!.image }]);
  return withThese(tokens, at, at + 1, [before(types, ',', tokens[at]!), { ...standing(types, 'PLAYER', tokens[at]!), image: who!.image }]);
}

/** `keeps it alive`: the dribble. */
export function keepsItAlive(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && wordOf(tokens[at + 1]) === 'alive' ? withThese(tokens, at, at + 2, [standing(types, asSaid(wordOf(tokens[at]), 'keeps his dribble'), tokens[at]!, tokens[at + 1])]) : undefined;
}

/** `first look 2: three` */
export function firstLook(tokens: Tokens, at: number): Tokens | undefined {
  return at === 0 && tokens[1]?.image === 'look' ? without(tokens, 0, 1) : undefined;
}

/** `gives 3 a dribble hand-off`, `gives him the hand-off` hands off to 3. */
export function givesAHandOff(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at + 1];
  if (at === 0 || !who || !(isAttacker(who) || wordOf(who) === 'him')) return undefined;
  const noun = wordOf(tokens[at + 2]) === 'dribble' ? at + 3 : at + 2;
  if (!/^(hand off|handoff|dribble hand off|dho)$/.test(wordOf(tokens[noun]))) return undefined;
  const verb = standing(types, asSaid(wordOf(tokens[at]), 'hands off'), tokens[at]!);
  return withThese(tokens, at, noun + 1, [verb, before(types, 'to', who), who]);
}

/** `hits 3 coming off the screen`, `passes to 5 rolling to the rim`: as he does. */
export function asHeDoes(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const verb = verbOfIng(wordOf(tokens[at]));
  const doing = tokens[at]!;
  if (verb === '' || !isAttacker(tokens[at - 1]) || tokens[0]!.image === 'look' || !['move', 'seal'].includes(verbOf(verb)!.class) || /^(space|spot up)$/.test(verb)) return undefined;
  const passes = /^(to|into)$/.test(wordOf(tokens[at - 2])) ? tokens.slice(0, at - 2).findLast(({ image }) => verbOf(image) !== undefined) : tokens[at - 2];
  if (verbOf(wordOf(passes))?.class !== 'pass') return undefined;
  const off = /^(.+) off$/.exec(verb)?.[1] === undefined && wordOf(tokens[at + 1]) !== 'off' ? undefined : wordOf(tokens[at + 1]) === 'off' ? at + 1 : at;
  const nothingBehind = off !== undefined && (tokens[off + 1] === undefined || JOINTS.has(wordOf(tokens[off + 1])));
  // Three words of one: each has a letter of its own.
  const he = { ...standing(types, 'he', doing), endOffset: doing.startOffset, endColumn: doing.startColumn! };
  const does = { ...standing(types, verb === 'come' && off === at + 1 ? 'comes off' : singular(verb), doing), startOffset: doing.startOffset + 1, startColumn: doing.startColumn! + 1 };
  const joined = verb === 'come' && off === at + 1 ? { ...does, endOffset: tokens[off]!.endOffset, endColumn: tokens[off]!.endColumn! } : does;
  const to = joined === does ? at + 1 : at + 2;
  return withThese(tokens, at, to, [before(types, 'as', doing), he, joined, ...(nothingBehind && joined !== does ? [after(types, 'screen', joined)] : [])]);
}
