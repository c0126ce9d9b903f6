// Moves in other words: `follows the ball`, `short rolls`, `spins off his man and dives`.
import type { LineToken } from './line-token.ts';
import { asSaid, before, isAttacker, isPlayer, JOINTS, oneOf, singular, standing, without, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from './verbs.ts';

/** `1, 2, 3 back` in a rebound line. */
export function getBack(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (tokens[0]?.image !== 'rebound' || at < 2) return undefined;
  const word = wordOf(tokens[at]);
  const who = tokens[at - 1]!;
  const isTo = word === 'to' && /^(glass|boards?|rim|offensive glass)$/.test(wordOf(tokens[at + 1]));
  const end = tokens[isTo ? at + 2 : at + 1];
  const isWho = isPlayer(who) || /^(others|rest|everyone|everybody|else)$/.test(who.image);
  const verb = /^(back|safe|deep|home|safety|protect|out|high|stays? home|stays?)$/.test(word) ? 'get back' : isTo || /^(in|inside|hard|board|boards|go|goes)$/.test(word) ? 'crash' : undefined;
  if (!isWho || verb === undefined || (end !== undefined && ![',', 'and'].includes(end.image))) return undefined;
  return withThese(tokens, at, isTo ? at + 2 : at + 1, [standing(types, verb, tokens[at]!, tokens[isTo ? at + 1 : at])]);
}

/** `2 gets to the corner`, `1 gets into the lane`: with the ball or without it he goes there. In a trigger it is an event. */
export function getsTo(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const token = tokens[at]!;
  const isOne = /^gets/.test(token.image.toLowerCase());
  const subject = tokens[at - 1];
  const head = at === 1 || JOINTS.has(wordOf(subject)) || (isPlayer(subject) && [',', 'and'].includes(wordOf(tokens[at - 2])) && !tokens.slice(0, at).some(({ image }) => /^(as|once|when|until|after|as soon as|ends|step)$/.test(image)));
  if (!head || tokens[0]?.image === 'ends' || tokens[0]?.image === 'step') return undefined;
  const verb = (): LineToken => standing(types, isOne ? 'goes' : 'go', token);
  if (/^gets? to$/.test(token.image)) return withThese(tokens, at, at + 1, [{ ...verb(), endOffset: token.startOffset + (isOne ? 3 : 2) }, { ...standing(types, 'to', token), startOffset: token.endOffset - 1 }]);
  if (!/^gets?$/.test(wordOf(token))) return undefined;
  const to = /^(out|back|up|down|over|downhill|all)$/.test(wordOf(tokens[at + 1])) ? at + 2 : at + 1;
  if (!/^(to|into|up to|off|out of)$/.test(wordOf(tokens[to]))) return undefined;
  return withThese(tokens, at, at + 1, [verb()]);
}

const VERB_OF_ING = new Map<string, string>();

/** `cutting` → cut, `posting up` → post up; empty where it is no verb. */
export function verbOfIng(words: string): string {
  let verb = VERB_OF_ING.get(words);
  if (verb === undefined) {
    const [, said, rest = ''] = /^(\w+)ing( \w+)?$/.exec(words) ?? [];
    verb = said === undefined ? '' : ([said, `${said}e`, said.replace(/(.)\1$/, '$1')].map((form) => form + rest).find((form) => verbOf(form)?.number === 'plural') ?? '');
    VERB_OF_ING.set(words, verb);
  }
  return verb;
}

/** `2 is cutting`, `2 keeps on running`, `3 comes sprinting off 4`; `once 5 is rolling` has not to wait until he has rolled. */
export function isDoing(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const next = wordOf(tokens[at + 1]) === 'on' ? at + 2 : at + 1;
  const verb = verbOfIng(wordOf(tokens[next]));
  // `is going to roll`
  if (verb === '' || (verb === 'go' && wordOf(tokens[next + 1]) === 'to' && verbOf(wordOf(tokens[next + 2]))?.number === 'plural')) return undefined;
  const does = standing(types, /s\b/.test(wordOf(tokens[at])) ? singular(verb) : verb, tokens[at]!, tokens[next]);
  const who = tokens.findLastIndex((token, i) => i < at && !isPlayer(token) && wordOf(token) !== 'and');
  const begins = /^(is|are)$/.test(wordOf(tokens[at])) && tokens[0]!.image !== 'step' && ENDS_OF_DEEDS.has(wordOf(tokens[who])) && !/screen$/.test(verb);
  return withThese(begins ? withThese(tokens, who, who + 1, [standing(types, 'as', tokens[who]!)]) : tokens, at, next + 1, [does]);
}

/** `X2 has to close out on 2`, `4 must screen for 2`, `5 will roll`: in a play he does. */
export function hasToDo(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const word = wordOf(tokens[at]);
  let next = at + 1;
  if (/^(is|are)$/.test(word)) {
    if (!/^(going|supposed|meant)$/.test(wordOf(tokens[next]))) return undefined;
    next++;
  }
  if (/^(has|have|needs?|is|are)$/.test(word)) {
    if (wordOf(tokens[next]) !== 'to') return undefined;
    next++;
  }
  const subject = tokens[at - 1];
  const verb = tokens[next];
  if (!verb || !(isPlayer(subject) || /^(he|they|both|and|then|everyone)$/.test(wordOf(subject)))) return undefined;
  const known = verbOf(verb.image);
  const base = known?.number === 'plural' ? verb.image : /^(run|fly|rush|come|jump|step|get|go|cheat|slide|duck)$/.test(verb.image) ? verb.image : undefined;
  if (base === undefined) return undefined;
  const areSeveral = /^(they|both|have|need|are)$/.test(word) || /^(they|both)$/.test(wordOf(subject)) || (isPlayer(tokens[at - 3]) && /^(and|,)$/.test(wordOf(tokens[at - 2])) && at === 3);
  const image = areSeveral ? base : known === undefined ? `${base}s`.replace(/^(fly|rush|go)s$/, (_, stem: string) => (stem === 'fly' ? 'flies' : `${stem}es`)) : singular(base);
  return withThese(tokens, at, next + 1, [known === undefined ? { ...verb, image, startOffset: tokens[at]!.startOffset, startColumn: tokens[at]!.startColumn! } : standing(types, image, tokens[at]!, verb)]);
}

const PARTICIPLES: Readonly<Record<string, string>> = { come: 'come', gone: 'go', run: 'run', cut: 'cut', left: 'leave', caught: 'catch', thrown: 'throw', driven: 'drive', held: 'hold', swung: 'swing', taken: 'take', spun: 'spin', stood: 'stay' };
const VERB_OF_ED = new Map<string, string>();

/** `once 5 has rolled` is when he has done it, `once 3 has left` as he goes. */
export function hasDone(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens.findLastIndex((token, i) => i < at && !isPlayer(token) && wordOf(token) !== 'and');
  if (at === 0 || !ENDS_OF_DEEDS.has(wordOf(tokens[who]))) return undefined;
  const [has, ...more] = wordOf(tokens[at]).split(' ');
  const end = more.length > 0 ? at + 1 : at + 2;
  const done = more.length > 0 ? more.join(' ') : wordOf(tokens[at + 1]);
  const inNumber = (verb: string): string => (has === 'has' ? (verb === 'leave' ? 'leaves' : singular(verb)) : verb);
  const closed = tokens[end] === undefined || JOINTS.has(wordOf(tokens[end]));
  if (done === 'left' && closed) return withThese(withThese(tokens, at, end, [standing(types, inNumber('go'), tokens[at]!, tokens[end - 1])]), who, who + 1, [standing(types, 'as', tokens[who]!)]);
  const ball = wordOf(tokens[end]);
  if (done === 'caught' && /^(it|the ball)$/.test(ball)) return withThese(tokens, at, end + 1, [standing(types, `${has === 'has' ? 'catches' : 'catch'} ${ball}`, tokens[at]!, tokens[end])]);
  // `has cleared 4`, `has gone` are words of their own.
  if (more.length > 0 && (done !== 'cleared' || !closed)) return undefined;
  let verb = VERB_OF_ED.get(done);
  if (verb === undefined) VERB_OF_ED.set(done, (verb = baseOfParticiple(done) ?? ''));
  return verb === '' ? undefined : withThese(tokens, at, end, [standing(types, inNumber(verb), tokens[at]!, tokens[end - 1])]);
}

function baseOfParticiple(done: string): string | undefined {
  const stem = /^(.+)ed$/.exec(done)?.[1];
  return [PARTICIPLES[done], ...(stem === undefined ? [] : [stem, `${stem}e`, stem.replace(/(.)\1$/, '$1')])].find((form) => form !== undefined && verbOf(form)?.number === 'plural');
}

const ENDS_OF_DEEDS = oneOf('once', 'when', 'after', 'as soon as');

/** `steps onto the court` is what a thrower does. */
export function ontoTheCourt(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(on|onto|in|into|back)$/.test(wordOf(tokens[at + 1]))) return undefined;
  const court = tokens.findIndex((token, i) => i > at && i <= at + 3 && /^(court|floor|play|bounds|inbounds)$/.test(wordOf(token)));
  if (court < 0 || tokens.slice(at + 1, court).some((token) => !/^(on|onto|in|into|back|to)$/.test(wordOf(token)))) return undefined;
  return withThese(tokens, at, court + 1, [standing(types, asSaid(wordOf(tokens[at]), 'steps in'), tokens[at]!, tokens[court])]);
}

/** `sets up his man`, `takes his man down`: one way, to come back. */
export function setsUpHisMan(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const man = (token: LineToken | undefined): boolean => /^(man|defender)$/.test(wordOf(token)) || token?.tokenType.name === 'XPLAYER';
  const word = wordOf(tokens[at]);
  if (/^sets? up$/.test(word) && man(tokens[at + 1])) return withThese(tokens, at, at + 2, [standing(types, word === 'sets up' ? 'v-cuts' : 'v-cut', tokens[at]!, tokens[at + 1])]);
  if (/^sets?$/.test(word) && man(tokens[at + 1]) && wordOf(tokens[at + 2]) === 'up') return withThese(tokens, at, at + 3, [standing(types, word === 'sets' ? 'v-cuts' : 'v-cut', tokens[at]!, tokens[at + 2])]);
  return undefined;
}

/** `follows the ball`, `follows his pass`, `chases it`: an attacker goes to the ball. */
export function followsTheBall(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at - 1];
  const ball = tokens[at + 1];
  if (at === 0 || !ball || !/^(ball|it|pass)$/.test(wordOf(ball)) || !(isAttacker(who) || JOINTS.has(wordOf(who))) || tokens[0]!.image.startsWith('x')) return undefined;
  return withThese(tokens, at, at + 2, [standing(types, asSaid(wordOf(tokens[at]), 'moves'), tokens[at]!), before(types, 'to', ball), standing(types, 'ball', ball)]);
}

/** `5 ducks in front of the rim` */
export function inFrontOf(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && /^ducks? in$/.test(wordOf(tokens[at - 1])) ? withThese(tokens, at, at, [before(types, 'at', tokens[at]!)]) : undefined;
}

/** `crosses the lane`, `crosses the floor`: not two who change places. */
export function crossesTheLane(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const over = tokens[at + 1];
  if (at === 0 || !over || !/^(lane|key|paint|floor|court)$/.test(wordOf(over))) return undefined;
  return withThese(tokens, at, at + 2, [standing(types, /es$/.test(wordOf(tokens[at])) ? 'moves' : 'move', tokens[at]!), standing(types, 'across the lane', over)]);
}

/** `short rolls`: a roll that ends at the free-throw line. */
export function shortRolls(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const joined = /^short-rolls?$/.test(wordOf(tokens[at]));
  const verb = joined ? tokens[at]! : tokens[at + 1];
  if (at === 0 || !verb || (!joined && !/^rolls?$/.test(wordOf(verb)))) return undefined;
  const next = tokens[joined ? at + 1 : at + 2];
  const roll = standing(types, asSaid(wordOf(verb), 'rolls'), tokens[at]!, verb);
  const end = { ...verb, startOffset: verb.endOffset + 1, startColumn: verb.endColumn! + 1 };
  const there = next && /^(to|into|at|in|on|toward|up to)$/.test(wordOf(next)) ? [] : [before(types, 'to', end), before(types, 'nail', end)];
  return withThese(tokens, at, joined ? at + 1 : at + 2, [roll, ...there]);
}

/** `lines up across the free-throw line` */
export function standsAcross(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return verbOf(wordOf(tokens[at - 1]))?.class === 'hold' ? withThese(tokens, at, at + 1, [standing(types, 'at', tokens[at]!)]) : undefined;
}

/** `spins off his man and dives`, `peels off and rolls`: how he comes free, where he goes on at once. */
export function comesFree(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0) return undefined;
  let to = at + 1;
  while (/^(off|around|away|out|free|loose|past|by|of|man|him|defender|back|inside|open)$/.test(wordOf(tokens[to])) || tokens[to]?.tokenType.name === 'XPLAYER') to++;
  if (!['and', 'then'].includes(wordOf(tokens[to]))) return undefined;
  if (wordOf(tokens[to + 1]) === 'then') to++;
  return verbOf(wordOf(tokens[to + 1])) !== undefined ? without(tokens, at, to + 1) : undefined;
}

/** `runs at 1`, `cuts toward 5`: to his side. */
export function atAMan(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const man = tokens[at + 1];
  let verb = at - 1;
  while (/^(out|back|up|down|over|across|right|straight|hard)$/.test(wordOf(tokens[verb]))) verb--;
  const known = verbOf(wordOf(tokens[verb]));
  if (!isAttacker(man) || known?.class !== 'move' || known.base === 'fill' || known.base === 'swap' || verbOf(wordOf(tokens[at + 2])) !== undefined || wordOf(tokens[at + 2]) === "'s") return undefined;
  // A distance without its unit.
  if (/^(above|below|inside|outside|left of|right of|in front of|behind)$/.test(wordOf(tokens[at + 2]))) return undefined;
  if (wordOf(tokens[at]) === 'to' && /^(goes|go|comes|come|returns|return)$/.test(wordOf(tokens[verb]))) return undefined;
  return withThese(tokens, at, at + 1, [standing(types, 'to', tokens[at]!), before(types, 'beside', man!)]);
}

/** `comes to meet the ball` */
export function meetsTheBall(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const ball = tokens[at + 1];
  if (!ball || !/^(to|and)$/.test(wordOf(tokens[at - 1])) || !/^(ball|pass)$/.test(wordOf(ball))) return undefined;
  return withThese(tokens, at - 1, at + 2, [standing(types, 'to', tokens[at - 1]!), standing(types, 'ball', ball)]);
}

/** `fights his way to the ball` */
export function makesHisWay(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && wordOf(tokens[at + 1]) === 'way' ? withThese(tokens, at, at + 2, [standing(types, asSaid(wordOf(tokens[at]), 'moves'), tokens[at]!, tokens[at + 1])]) : undefined;
}

/** `4 is in the dunker spot`, from the line's head: he stays there. */
export function isThere(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(in|at|on)$/.test(wordOf(tokens[at + 1])) || tokens.slice(0, at).some((token) => !isPlayer(token) && ![',', 'and'].includes(token.image))) return undefined;
  return withThese(tokens, at, at + 1, [standing(types, wordOf(tokens[at]) === 'is' ? 'stays' : 'stay', tokens[at]!)]);
}

/** `crosses over and attacks`: how he frees himself. */
export function crossesOver(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0 || wordOf(tokens[at + 1]) !== 'over') return undefined;
  let to = at + 2;
  while (/^(to|left|right|hard|quickly|low|dribble)$/.test(wordOf(tokens[to]))) to++;
  return ['and', 'then'].includes(wordOf(tokens[to])) && verbOf(wordOf(tokens[to + 1])) !== undefined ? without(tokens, at, to + 1) : undefined;
}

/** `runs the floor to the block`, `trails the play`: where, what follows says. */
export function runsTheFloor(tokens: Tokens, at: number): Tokens | undefined {
  const what = wordOf(tokens[at + 1]);
  if (at === 0 || !/^(floor|court|play|break)$/.test(what)) return undefined;
  return /^(to|into|in|at|hard|behind|and|then|,)$/.test(wordOf(tokens[at + 2])) || (what === 'play' && tokens[at + 2] === undefined) ? without(tokens, at + 1, at + 2) : undefined;
}

const SAID_AS: ReadonlyMap<string, string> = new Map(Object.entries({ slices: 'cuts', slice: 'cut', knifes: 'cuts', knife: 'cut', 'empties out': 'clears out', 'empty out': 'clear out', empties: 'clears', 'rips it': 'drives it', 'rip it': 'drive it' }));

/** `slices to the block`, `empties out to the corner`, `rips it to the rim`: words for a move the notation has another for. */
export function saidAs(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const two = SAID_AS.get(`${wordOf(tokens[at])} ${wordOf(tokens[at + 1])}`);
  if (two !== undefined) return withThese(tokens, at, at + 2, [standing(types, two, tokens[at]!, tokens[at + 1])]);
  const one = SAID_AS.get(wordOf(tokens[at]));
  return one === undefined ? undefined : withThese(tokens, at, at + 1, [standing(types, one, tokens[at]!)]);
}
