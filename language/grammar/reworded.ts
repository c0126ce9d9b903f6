// Constructions of coaches that a line of the notation says with other words: `sets a flare for 2`, `to screen for 3`, `takes two dribbles
// to`. The tokens of the plain line stand in their place, with the columns of the coach's words.
import type { TokenType } from 'chevrotain';
import type { LineToken } from './line-token.ts';
import { otherNumber, verbOf } from './verbs.ts';

type Tokens = readonly LineToken[];
type Types = { readonly [name: string]: TokenType };

const wordOf = (token: LineToken | undefined): string => token?.image.toLowerCase() ?? '';
const isPlayer = (token: LineToken | undefined): boolean => token?.tokenType.name === 'PLAYER' || token?.tokenType.name === 'XPLAYER';
const isAttacker = (token: LineToken | undefined): boolean => token?.tokenType.name === 'PLAYER';

/** A token of the grammar in the place of the coach's words from one to another. */
function standing(types: Types, name: string, from: LineToken, to: LineToken = from): LineToken {
  const tokenType = types[name]!;
  return { ...from, image: name, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx!, endOffset: to.endOffset, endColumn: to.endColumn };
}

/** A token that the coach has no word for, in the blank before another: the parser takes none without a letter. */
function before(types: Types, name: string, next: LineToken): LineToken {
  const at = Math.max(next.startOffset - 1, 0);
  return { ...standing(types, name, next), startOffset: at, endOffset: at, startColumn: at + 1, endColumn: at + 1 };
}

const singular = (verb: string): string => (verbOf(verb)?.number === 'plural' ? (otherNumber.get(verb) ?? verb) : verb);
const plural = (verb: string): string => (verbOf(verb)?.number === 'singular' ? (otherNumber.get(verb) ?? verb) : verb);

/** Of the verb before: `cuts away to screen` goes on as `and screens`. */
function inNumberOf(tokens: Tokens, index: number, verb: string): string {
  const before = tokens.findLast((token, at) => at < index && verbOf(token.image) !== undefined);
  return before !== undefined && verbOf(before.image)!.number === 'plural' ? plural(verb) : singular(verb);
}

/** Of one word, whether it is said of each of a list. */
const oneOf = (...words: readonly string[]): ReadonlySet<string> => new Set(words);

const JOINTS = oneOf(',', 'and', 'then');
const SETS = oneOf('sets', 'set', 'gives', 'give', 'makes', 'make', 'puts', 'put');
const SCREENS_BY_NOUN: ReadonlyMap<string, string> = new Map(Object.entries({
  flare: 'flare-screens', double: 'double-screens', pindown: 'pin-screens', 'staggered screen': 'stagger-screens', 'staggered screens': 'stagger-screens', drag: 'drag-screens', 'double drag': 'ball-screens', pin: 'pin-screens', wall: 'double-screens',
}));
/** How a screen is set; where it stands is worked out. */
const OF_A_SCREEN = oneOf('flat', 'high', 'side', 'solid', 'wide', 'quick', 'step up', 'second', 'last', 'first', 'big', 'good', 'middle', 'tight', 'late', 'hard', 'strong', 'high-ball', 'step-up', 'another', 'new', 'little', 'small', 'early', 'angled', 'low', 'deep', 'empty', 'mid', 'top', 'slot', 'wing', 'elbow', 'hammer', 'rip', 'ram', 'brush', 'rub', 'two');

function screenOf(noun: string): string | undefined {
  if (verbOf(noun)?.class === 'screen') return singular(noun);
  return SCREENS_BY_NOUN.get(noun);
}

/** `sets a flare for 2`, `gives 1 a high ball screen`: the kind of screen is the verb. */
function setsAScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (!SETS.has(wordOf(tokens[at])) || at === 0) return undefined;
  const user = isAttacker(tokens[at + 1]) && /^g/.test(wordOf(tokens[at])) ? tokens[at + 1] : undefined;
  let noun = at + (user ? 2 : 1);
  while (screenOf(wordOf(tokens[noun])) === undefined || (OF_A_SCREEN.has(wordOf(tokens[noun])) && screenOf(wordOf(tokens[noun + 1])) !== undefined)) {
    if (!OF_A_SCREEN.has(wordOf(tokens[noun])) || noun > at + 4) return undefined;
    noun++;
  }
  const one = screenOf(wordOf(tokens[noun]))!;
  const verb = /s$/.test(wordOf(tokens[at])) ? one : plural(one);
  const said = user ? [standing(types, verb, tokens[at]!), before(types, 'for', user), user] : [standing(types, verb, tokens[at]!, tokens[noun])];
  return [...tokens.slice(0, at), ...said, ...tokens.slice(noun + 1)];
}

const GOES_ON = oneOf('screen', 'seal', 'rebound', 'close');
/** Where `to` begins no purpose: it is not done. */
const NOT_YET = oneOf('if', 'ready', 'about', 'fakes', 'fake', 'pretends', 'pretend', 'wants', 'want', 'tries', 'looks', 'look', 'has', 'threatens', 'able');

/** `cuts away to screen for 3`, `runs up to post up`: he goes on with that. */
function toScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const to = tokens[at]!;
  if ((to.tokenType.name !== 'to' && to.tokenType.name !== 'up to') || at < 2 || NOT_YET.has(wordOf(tokens[at - 1]))) return undefined;
  // `waits for 5 to screen`
  if (isPlayer(tokens[at - 1]) && wordOf(tokens[at - 2]) === 'for' && verbOf(wordOf(tokens[at - 3]))?.class === 'hold') return undefined;
  const verb = tokens[at + 1];
  const known = verbOf(wordOf(verb));
  if (!verb || !known || !(GOES_ON.has(known.class) || known.base === 'post up' || (known.base === 'hand off' && isPlayer(tokens[at + 3]))) || known.number !== 'plural') return undefined;
  return [...tokens.slice(0, at), standing(types, 'and', to), standing(types, inNumberOf(tokens, at, verb.image), verb), ...tokens.slice(at + 2)];
}

/** `the man who guards 4`, `the defender on 2` is X4, X2. */
function theManOn(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (!/^(man|defender|guy)$/.test(wordOf(tokens[at])) || at === 0) return undefined;
  let next = at + 1;
  if (/^(who|that|whos|who's)$/.test(wordOf(tokens[next]))) next++;
  if (wordOf(tokens[next]) === 'is') next++;
  if (!/^(guards|guarding|on|covers|covering|marking)$/.test(wordOf(tokens[next])) || !isAttacker(tokens[next + 1])) return undefined;
  const who = tokens[next + 1]!;
  return [...tokens.slice(0, at), { ...standing(types, 'XPLAYER', tokens[at]!, who), image: `x${who.image}` }, ...tokens.slice(next + 2)];
}

const COUNTS = oneOf('one', 'two', 'three', 'couple', 'couple of', 'few', 'of', 'hard', 'quick', 'long', 'big', 'more', 'last', 'extra', 'power', 'single', 'escape', 'retreat', 'attack', 'rhythm', 'strong', 'another');

/** `takes two hard dribbles to the elbow`, `puts it on the floor`. */
function takesDribbles(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const word = wordOf(tokens[at]);
  const isOne = /s$/.test(word);
  if (at > 0 && /^puts?$/.test(word) && /^(it|ball)$/.test(wordOf(tokens[at + 1])) && wordOf(tokens[at + 2]) === 'on' && /^(floor|deck)$/.test(wordOf(tokens[at + 3])))
    return [...tokens.slice(0, at), standing(types, isOne ? 'dribbles' : 'dribble', tokens[at]!, tokens[at + 3]), ...tokens.slice(at + 4)];
  if (at === 0 || !/^(takes?|gets?|uses?|needs?)$/.test(word)) return undefined;
  let noun = at + 1;
  while (COUNTS.has(wordOf(tokens[noun])) || /^(NUMBER|PLAYER)$/.test(tokens[noun]?.tokenType.name ?? '')) noun++;
  if (!/^(dribbles?|bounces?)$/.test(wordOf(tokens[noun]))) return undefined;
  // Where they end must be said: `one dribble to the right` could end anywhere.
  const where = /^downhill$/.test(wordOf(tokens[noun + 1])) ? noun + 2 : noun + 1;
  const isSide = /^(left|right)$/.test(wordOf(tokens[where + 1])) && (tokens[where + 2] === undefined || JOINTS.has(wordOf(tokens[where + 2])));
  if (!/^(to|into|toward|baseline|middle|off|at)$/.test(wordOf(tokens[where])) || isSide) return undefined;
  return [...tokens.slice(0, at), standing(types, isOne ? 'dribbles' : 'dribble', tokens[at]!, tokens[noun]), ...tokens.slice(noun + 1)];
}

/** `kills some clock`, `burns the clock down`: he keeps the ball; for how long, what follows says. */
function killsClock(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(kills?|burns?|milks?|bleeds?|eats?|winds?|wastes?|melts?|lets?|runs?|uses?)$/.test(wordOf(tokens[at]))) return undefined;
  const clock = tokens.findIndex((token, i) => i > at && i <= at + 3 && /^(clock|time|seconds)$/.test(wordOf(token)));
  if (clock < 0) return undefined;
  let rest = clock + 1;
  while (/^(run|down|off|out|away|tick|go)$/.test(wordOf(tokens[rest]))) rest++;
  if (/^lets?$/.test(wordOf(tokens[at])) && rest === clock + 1) return undefined;
  const keeps = standing(types, /s$/.test(wordOf(tokens[at])) ? 'keeps his dribble' : 'keep their dribble', tokens[at]!, tokens[rest - 1]);
  const time = tokens[rest + 1];
  if (!/^(to|until)$/.test(wordOf(tokens[rest])) || !time || !/^(NUMBER|PLAYER|SECONDS)$/.test(time.tokenType.name)) return [...tokens.slice(0, at), keeps, ...tokens.slice(rest)];
  return [...tokens.slice(0, at), keeps, standing(types, 'until', tokens[rest]!), time, ...(tokens[rest + 2]?.image === 'on the clock' ? [] : [before(types, 'on the clock', { ...time, startOffset: time.endOffset + 1, startColumn: time.endColumn! + 1 })]), ...tokens.slice(rest + 2)];
}

/** `until the clock says 12` is until 12 on the clock. */
function theClockSays(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const bare = tokens[at + 1]?.tokenType.name === 'SECONDS';
  if (!bare && wordOf(tokens[at + 1]) !== 'clock') return undefined;
  const time = bare ? at + 1 : tokens.findIndex((token, i) => i > at + 1 && i <= at + 4 && /^(NUMBER|PLAYER|SECONDS)$/.test(token.tokenType.name));
  if (time < 0 || /^(on the clock|on the shot clock|left|are|is|later)$/.test(wordOf(tokens[time + 1]))) return undefined;
  return [...tokens.slice(0, at + 1), tokens[time]!, before(types, 'on the clock', { ...tokens[time]!, startOffset: tokens[time]!.endOffset + 1, startColumn: tokens[time]!.endColumn! + 1 }), ...tokens.slice(time + 1)];
}

/** `1, 2, 3 back` in a rebound line. */
function getBack(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (tokens[0]?.image !== 'rebound' || at < 2) return undefined;
  const word = wordOf(tokens[at]);
  const who = tokens[at - 1]!;
  const isTo = word === 'to' && /^(glass|boards?|rim|offensive glass)$/.test(wordOf(tokens[at + 1]));
  const end = tokens[isTo ? at + 2 : at + 1];
  const isWho = isPlayer(who) || /^(others|rest|everyone|everybody|else)$/.test(who.image);
  const verb = /^(back|safe|deep|home|safety|protect|out|high|stays? home|stays?)$/.test(word) ? 'get back' : isTo || /^(in|inside|hard|board|boards|go|goes)$/.test(word) ? 'crash' : undefined;
  if (!isWho || verb === undefined || (end !== undefined && ![',', 'and'].includes(end.image))) return undefined;
  return [...tokens.slice(0, at), standing(types, verb, tokens[at]!, tokens[isTo ? at + 1 : at]), ...tokens.slice(isTo ? at + 2 : at + 1)];
}

/** `gives it right back to 1 on a dribble hand-off` hands off. */
function onAHandOff(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (!/^(on|with|in|via|off|as)$/.test(wordOf(tokens[at]))) return undefined;
  const noun = wordOf(tokens[at + 1]) === 'dribble' ? at + 2 : at + 1;
  if (!/^(hand off|handoff|dribble hand off|dho)$/.test(wordOf(tokens[noun]))) return undefined;
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  const known = verb < 0 ? undefined : verbOf(tokens[verb]!.image)!;
  if (known?.class !== 'pass' || known.base === 'skip' || known.base === 'lob') return undefined;
  const kept = tokens.slice(verb + 1, at).filter(({ image }) => !/^(right|back)$/.test(image));
  return [...tokens.slice(0, verb), standing(types, known.number === 'singular' ? 'hands off' : 'hand off', tokens[verb]!), ...kept, ...tokens.slice(noun + 1)];
}

const LINES = oneOf('sideline', 'baseline');

/** `inbounds, right sideline`; `from under the basket, right of the lane`. */
function whereHeThrowsIn(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const verb = tokens.findIndex(({ image }) => verbOf(image)?.class === 'throw-in');
  if (verb < 0 || verb > at) return undefined;
  if (wordOf(tokens[at]) === ',' && /^(left|right)$/.test(wordOf(tokens[at + 1])) && LINES.has(wordOf(tokens[at + 2])) && tokens[at + 3] === undefined) return [...tokens.slice(0, at), standing(types, 'from', tokens[at]!), ...tokens.slice(at + 1)];
  if (!/^under the/.test(tokens[at]!.image)) return undefined;
  const side = wordOf(tokens[at + 1]) === ',' ? at + 2 : at + 1;
  const said = /^(left|right) of$/.exec(wordOf(tokens[side]))?.[1] ?? /^(left|right) side of$/.exec(wordOf(tokens[side]))?.[1];
  if (said === undefined || !/^(lane|key|paint|basket|rim|hoop)$/.test(wordOf(tokens[side + 1]))) return undefined;
  return [...tokens.slice(0, at), standing(types, said, tokens[side]!), standing(types, 'baseline', tokens[side + 1]!), ...tokens.slice(side + 2)];
}

const CHANCES: ReadonlySet<string> = new Set(['layup', 'lay-up', 'dunk', 'jumper', 'jump shot', 'three', '3', 'three-pointer', 'hook', 'hook shot', 'floater', 'runner', 'shot', 'lob', 'skip', 'pull up', 'put-back', 'lay-in', 'finish', 'bounce-pass', 'kick out', 'pocket pass', 'skip-pass']);
const BETWEEN_CHANCES = oneOf('open', 'corner', 'quick', 'easy', 'wing', 'elbow', 'baseline', 'pull up', 'step back', 'catch', 'wide-open', 'clean', 'backdoor', 'power', 'reverse', 'running', 'driving', 'short');

/** `look 2 for the corner three`, `look 5 on the block, layup`: what follows is the shot. */
function lookForAShot(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (tokens[0]?.image !== 'look' || at < 2 || !/^(for|,|-)$/.test(wordOf(tokens[at])) || tokens.some(({ image }) => image === ':')) return undefined;
  let shot = at + 1;
  while (BETWEEN_CHANCES.has(wordOf(tokens[shot])) && !CHANCES.has(wordOf(tokens[shot]))) shot++;
  const end = tokens[shot + 1];
  if (!CHANCES.has(wordOf(tokens[shot])) || (end !== undefined && ![',', 'or', 'then', 'from', 'at', 'in'].includes(end.image))) return undefined;
  if (wordOf(tokens[shot]) === '3' && wordOf(tokens[at]) === ',') return undefined;
  return [...tokens.slice(0, at), standing(types, ':', tokens[at]!), ...tokens.slice(at + 1)];
}

/** `slam the door behind 2`, `close the gate once 2 is through`. */
function shutsTheGate(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(slams?|shuts?|closes?|locks?|seals?)$/.test(wordOf(tokens[at])) || !/^(doors?|gates?|gap|elevator|elevators)$/.test(wordOf(tokens[at + 1]))) return undefined;
  const verb = standing(types, /s$/.test(wordOf(tokens[at])) ? 'closes behind' : 'close behind', tokens[at]!, tokens[at + 1]);
  let who = at + 2;
  while (/^(right|just|behind|after|once|as soon as|when|as)$/.test(wordOf(tokens[who]))) who++;
  if (who > at + 2 && isPlayer(tokens[who])) {
    const end = tokens.findIndex((token, i) => i > who && [',', 'and', 'then'].includes(token.image));
    const said = tokens.slice(who + 1, end < 0 ? tokens.length : end);
    // Once he is through, that is what it means.
    if (said.every(({ image }) => /through|past|by|comes|goes|gets|is|clears|gone/.test(image))) return [...tokens.slice(0, at), verb, tokens[who]!, ...(end < 0 ? [] : tokens.slice(end))];
  }
  return [...tokens.slice(0, at), verb, before(types, 'him', { ...tokens[at + 1]!, startOffset: tokens[at + 1]!.endOffset + 1, startColumn: tokens[at + 1]!.endColumn! + 1 }), ...tokens.slice(at + 2)];
}


/** `2 gets to the corner`, `1 gets into the lane`: with the ball or without it he goes there. In a trigger it is an event. */
function getsTo(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const token = tokens[at]!;
  const isOne = /^gets/.test(token.image.toLowerCase());
  const subject = tokens[at - 1];
  const head = at === 1 || JOINTS.has(wordOf(subject)) || (isPlayer(subject) && [',', 'and'].includes(wordOf(tokens[at - 2])) && !tokens.slice(0, at).some(({ image }) => /^(as|once|when|until|after|as soon as|ends|step)$/.test(image)));
  if (!head || tokens[0]?.image === 'ends' || tokens[0]?.image === 'step') return undefined;
  const verb = (): LineToken => standing(types, isOne ? 'goes' : 'go', token);
  if (/^gets? to$/.test(token.image)) return [...tokens.slice(0, at), { ...verb(), endOffset: token.startOffset + (isOne ? 3 : 2) }, { ...standing(types, 'to', token), startOffset: token.endOffset - 1 }, ...tokens.slice(at + 1)];
  if (!/^gets?$/.test(wordOf(token))) return undefined;
  const to = /^(out|back|up|down|over|downhill|all)$/.test(wordOf(tokens[at + 1])) ? at + 2 : at + 1;
  if (!/^(to|into|up to|off)$/.test(wordOf(tokens[to]))) return undefined;
  return [...tokens.slice(0, at), verb(), ...tokens.slice(at + 1)];
}

const VERB_OF_ING = new Map<string, string>();
/** `2 is cutting`, `X2 is overplaying 2`. */
function isDoing(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const be = wordOf(tokens[at]);
  if ((be !== 'is' && be !== 'are') || at === 0) return undefined;
  const said = /^(.+)ing$/.exec(wordOf(tokens[at + 1]))?.[1];
  if (said === undefined) return undefined;
  let verb = VERB_OF_ING.get(said);
  if (verb === undefined) VERB_OF_ING.set(said, (verb = [said, `${said}e`, said.replace(/(.)\1$/, '$1')].find((form) => verbOf(form)?.number === 'plural') ?? ''));
  if (verb === '') return undefined;
  return [...tokens.slice(0, at), standing(types, be === 'is' ? singular(verb) : verb, tokens[at]!, tokens[at + 1]), ...tokens.slice(at + 2)];
}

/** `steps onto the court` is what a thrower does. */
function ontoTheCourt(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(steps?|comes?|gets?|walks?|runs?|steps? in|steps? up|goes|go)$/.test(wordOf(tokens[at])) || !/^(on|onto|in|into|back)$/.test(wordOf(tokens[at + 1]))) return undefined;
  const court = tokens.findIndex((token, i) => i > at && i <= at + 3 && /^(court|floor|play|bounds|inbounds)$/.test(wordOf(token)));
  if (court < 0 || tokens.slice(at + 1, court).some((token) => !/^(on|onto|in|into|back|to)$/.test(wordOf(token)))) return undefined;
  return [...tokens.slice(0, at), standing(types, /s\b/.test(wordOf(tokens[at])) ? 'steps in' : 'step in', tokens[at]!, tokens[court]), ...tokens.slice(court + 1)];
}

/** `sets up his man`, `takes his man down`: one way, to come back. */
function setsUpHisMan(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const man = (token: LineToken | undefined): boolean => /^(man|defender)$/.test(wordOf(token)) || token?.tokenType.name === 'XPLAYER';
  const word = wordOf(tokens[at]);
  if (/^sets? up$/.test(word) && man(tokens[at + 1])) return [...tokens.slice(0, at), standing(types, word === 'sets up' ? 'v-cuts' : 'v-cut', tokens[at]!, tokens[at + 1]), ...tokens.slice(at + 2)];
  if (/^sets?$/.test(word) && man(tokens[at + 1]) && wordOf(tokens[at + 2]) === 'up') return [...tokens.slice(0, at), standing(types, word === 'sets' ? 'v-cuts' : 'v-cut', tokens[at]!, tokens[at + 2]), ...tokens.slice(at + 3)];
  return undefined;
}

/** `drops it down to 5`: a pass; without the ball he drops as a defender does. */
function dropsIt(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(drops?|leaves?|moves?|gets?|wraps?|shovels?|floats?|slips?|lays?|slides?|whips?|loops?|works?|rifles?|pings?|hooks?|lofts?)$/.test(wordOf(tokens[at])) || !/^(it|ball)$/.test(wordOf(tokens[at + 1]))) return undefined;
  let to = at + 2;
  while (/^(off|down|back|over|right|ahead|around|in|inside|out|up|across|away)$/.test(wordOf(tokens[to])) && to < at + 4) to++;
  if (!/^(to|into|for|in to)$/.test(wordOf(tokens[to])) || !(isAttacker(tokens[to + 1]) || wordOf(tokens[to + 1]) === 'him')) return undefined;
  const joint = standing(types, 'to', tokens[to]!);
  return [...tokens.slice(0, at), standing(types, /s$/.test(wordOf(tokens[at])) ? 'passes' : 'pass', tokens[at]!), tokens[at + 1]!, joint, ...tokens.slice(to + 1)];
}

/** `follows the ball`, `follows his pass`, `chases it`: an attacker goes to the ball. */
function followsTheBall(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at - 1];
  const ball = tokens[at + 1];
  if (at === 0 || !ball || !/^(follows?|chases?|trails?)$/.test(wordOf(tokens[at])) || !/^(ball|it|pass)$/.test(wordOf(ball)) || !(isAttacker(who) || JOINTS.has(wordOf(who))) || tokens[0]!.image.startsWith('x')) return undefined;
  return [...tokens.slice(0, at), standing(types, /s$/.test(wordOf(tokens[at])) ? 'moves' : 'move', tokens[at]!), before(types, 'to', ball), standing(types, 'ball', ball), ...tokens.slice(at + 2)];
}

/** `runs through the gate between 4 and 5` */
function throughTheGate(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0 || !/^(gate|door|doors|gates|elevator|gap)$/.test(wordOf(tokens[at + 1])) || wordOf(tokens[at + 2]) !== 'between') return undefined;
  return [...tokens.slice(0, at), ...tokens.slice(at + 2)];
}

/** `5 ducks in front of the rim` */
function inFrontOf(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && /^ducks? in$/.test(wordOf(tokens[at - 1])) ? [...tokens.slice(0, at), before(types, 'at', tokens[at]!), ...tokens.slice(at)] : undefined;
}

/** `right away`, `right behind the hand-off`: at once, and no side. */
function rightAway(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0) return undefined;
  const next = wordOf(tokens[at + 1]);
  if (next === 'away' && !/^(from)$/.test(wordOf(tokens[at + 2]))) return [...tokens.slice(0, at), ...tokens.slice(at + 2)];
  const isJustThen = /^(behind|after|back|as|when|before|there|now|into)$/.test(next) || (next === 'at' && isPlayer(tokens[at + 2]));
  return isJustThen ? [...tokens.slice(0, at), ...tokens.slice(at + 1)] : undefined;
}

/** `off a stagger from 4 and then 1` */
function andThen(tokens: Tokens, at: number): Tokens | undefined {
  if (wordOf(tokens[at + 1]) !== 'then' || !isAttacker(tokens[at - 1]) || !isAttacker(tokens[at + 2]) || verbOf(wordOf(tokens[at + 3])) !== undefined) return undefined;
  const joint = wordOf(tokens[at - 2]);
  if (joint === 'off') return [...tokens.slice(0, at), ...tokens.slice(at + 1)];
  return /^(from|by|of)$/.test(joint) ? [...tokens.slice(0, at + 1), ...tokens.slice(at + 2)] : undefined;
}

/** `crosses the lane`, `crosses the floor`: not two who change places. */
function crossesTheLane(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const over = tokens[at + 1];
  if (at === 0 || !over || !/^(lane|key|paint|floor|court)$/.test(wordOf(over))) return undefined;
  return [...tokens.slice(0, at), standing(types, /es$/.test(wordOf(tokens[at])) ? 'moves' : 'move', tokens[at]!), standing(types, 'across the lane', over), ...tokens.slice(at + 2)];
}

/** `short rolls`: a roll that ends at the free-throw line. */
function shortRolls(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const joined = /^short-rolls?$/.test(wordOf(tokens[at]));
  const verb = joined ? tokens[at]! : tokens[at + 1];
  if (at === 0 || !verb || (!joined && !/^rolls?$/.test(wordOf(verb)))) return undefined;
  const next = tokens[joined ? at + 1 : at + 2];
  const roll = standing(types, /s$/.test(wordOf(verb)) ? 'rolls' : 'roll', tokens[at]!, verb);
  const end = { ...verb, startOffset: verb.endOffset + 1, startColumn: verb.endColumn! + 1 };
  const there = next && /^(to|into|at|in|on|toward|up to)$/.test(wordOf(next)) ? [] : [before(types, 'to', end), before(types, 'nail', end)];
  return [...tokens.slice(0, at), roll, ...there, ...tokens.slice(joined ? at + 1 : at + 2)];
}

/** `up the middle of the floor`, `the far side of the court` */
function ofTheFloor(tokens: Tokens, at: number): Tokens | undefined {
  return at > 1 && /^(floor|court)$/.test(wordOf(tokens[at + 1])) ? [...tokens.slice(0, at), ...tokens.slice(at + 2)] : undefined;
}

/** `fills the right lane, wide`: a strip of the open floor, whose end is the corner. The lane of the notation is the key. */
function fillsALane(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const isSide = (token: LineToken | undefined): boolean => /^(left|right)$/.test(wordOf(token));
  if (at === 0 || !/^(fills?|runs?|sprints?|takes?|races?|streaks?)$/.test(wordOf(tokens[at]))) return undefined;
  const side = wordOf(tokens[at + 1]) === 'to' ? at + 2 : at + 1;
  if (!isSide(tokens[side]) || !/^(lane|outside lane)$/.test(wordOf(tokens[side + 1]))) return undefined;
  let to = side + 2;
  if (wordOf(tokens[to]) === ',' && /^(wide|hard|deep)$/.test(wordOf(tokens[to + 1]))) to += 2;
  else if (wordOf(tokens[to]) === 'wide') to++;
  return [...tokens.slice(0, at), standing(types, /s$/.test(wordOf(tokens[at])) ? 'sprints' : 'sprint', tokens[at]!), before(types, 'to', tokens[side]!), tokens[side]!, standing(types, 'corner', tokens[side + 1]!, tokens[to - 1]), ...tokens.slice(to)];
}

/** `screens the back man of the zone, X4` */
function namedLast(tokens: Tokens, at: number): Tokens | undefined {
  const last = tokens[at + 1];
  if (last?.tokenType.name !== 'XPLAYER' || tokens[at + 2] !== undefined) return undefined;
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  if (verb < 1 || verbOf(tokens[verb]!.image)!.class !== 'screen' || at - verb < 2 || tokens.slice(verb + 1, at).some((token) => isPlayer(token) || JOINTS.has(token.image))) return undefined;
  return [...tokens.slice(0, verb + 1), last];
}

/** `dribbles once to the baseline` */
function dribblesOnce(tokens: Tokens, at: number): Tokens | undefined {
  if (verbOf(wordOf(tokens[at - 1]))?.class !== 'dribble') return undefined;
  const next = tokens[at + 1];
  return next === undefined || /^(to|into|toward|left|right|and|then|,|baseline|middle|hard)$/.test(wordOf(next)) ? [...tokens.slice(0, at), ...tokens.slice(at + 1)] : undefined;
}

/** `lines up across the free-throw line` */
function standsAcross(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return verbOf(wordOf(tokens[at - 1]))?.class === 'hold' ? [...tokens.slice(0, at), standing(types, 'at', tokens[at]!), ...tokens.slice(at + 1)] : undefined;
}

/** `from behind the baseline` */
function fromBehind(tokens: Tokens, at: number): Tokens | undefined {
  if (!/^(behind|out behind|outside)$/.test(wordOf(tokens[at + 1])) || !/line$/.test(wordOf(tokens[at + 2])) && !/line$/.test(wordOf(tokens[at + 3]))) return undefined;
  return tokens.some(({ image }) => verbOf(image)?.class === 'throw-in') ? [...tokens.slice(0, at + 1), ...tokens.slice(at + 2)] : undefined;
}

/** `spins off his man and dives`, `peels off and rolls`: how he comes free, where he goes on at once. */
function comesFree(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0) return undefined;
  let to = at + 1;
  while (/^(off|around|away|out|free|loose|past|by|of|man|him|defender|back|inside|open)$/.test(wordOf(tokens[to])) || tokens[to]?.tokenType.name === 'XPLAYER') to++;
  if (!['and', 'then'].includes(wordOf(tokens[to]))) return undefined;
  if (wordOf(tokens[to + 1]) === 'then') to++;
  return verbOf(wordOf(tokens[to + 1])) !== undefined ? [...tokens.slice(0, at), ...tokens.slice(to + 1)] : undefined;
}

/** `opens up to the ball` holds his man where he is. */
function opensUp(tokens: Tokens, at: number): Tokens | undefined {
  const to = /^(to|toward)$/.test(wordOf(tokens[at + 1])) && wordOf(tokens[at + 2]) === 'ball';
  return at > 0 && to ? [...tokens.slice(0, at + 1), ...tokens.slice(at + 3)] : undefined;
}

/** `drifts behind the screen` comes off it. */
function behindTheScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 1 && screenOf(wordOf(tokens[at + 1])) !== undefined && !/^double$/.test(wordOf(tokens[at + 1])) ? [...tokens.slice(0, at), standing(types, 'off', tokens[at]!), ...tokens.slice(at + 1)] : undefined;
}

/** `fills the open corner`: which one is open is worked out. */
function theOpenSpot(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const place = tokens[at + 1];
  const verb = tokens[/^(to|into)$/.test(wordOf(tokens[at - 1])) ? at - 2 : at - 1];
  if (!place || !/^(corner|wing|slot|spot|place|elbow|block|spots)$/.test(wordOf(place)) || verbOf(wordOf(verb))?.class !== 'move') return undefined;
  return [...tokens.slice(0, at), standing(types, 'open spot', tokens[at]!, place), ...tokens.slice(at + 2)];
}

/** `runs at 1`, `cuts toward 5`: to his side. */
function atAMan(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const man = tokens[at + 1];
  let verb = at - 1;
  while (/^(out|back|up|down|over|across|right|straight|hard)$/.test(wordOf(tokens[verb]))) verb--;
  const known = verbOf(wordOf(tokens[verb]));
  if (!isAttacker(man) || known?.class !== 'move' || known.base === 'fill' || known.base === 'swap' || verbOf(wordOf(tokens[at + 2])) !== undefined || wordOf(tokens[at + 2]) === "'s") return undefined;
  // A distance without its unit.
  if (/^(above|below|inside|outside|left of|right of|in front of|behind)$/.test(wordOf(tokens[at + 2]))) return undefined;
  if (wordOf(tokens[at]) === 'to' && /^(goes|go|comes|come|returns|return)$/.test(wordOf(tokens[verb]))) return undefined;
  return [...tokens.slice(0, at), standing(types, 'to', tokens[at]!), before(types, 'beside', man!), ...tokens.slice(at + 1)];
}

/** `comes to meet the ball` */
function meetsTheBall(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const ball = tokens[at + 1];
  if (!ball || !/^(to|and)$/.test(wordOf(tokens[at - 1])) || !/^(ball|pass)$/.test(wordOf(ball))) return undefined;
  return [...tokens.slice(0, at - 1), standing(types, 'to', tokens[at - 1]!), standing(types, 'ball', ball), ...tokens.slice(at + 2)];
}

/** Drops tokens where the words behind fit. */
const without = (tokens: Tokens, from: number, to: number): Tokens => [...tokens.slice(0, from), ...tokens.slice(to)];
/** The tokens with others in the place of some. */
const withThese = (tokens: Tokens, from: number, to: number, these: Tokens): Tokens => [...tokens.slice(0, from), ...these, ...tokens.slice(to)];

/** `fights his way to the ball` */
function makesHisWay(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && wordOf(tokens[at + 1]) === 'way' ? withThese(tokens, at, at + 2, [standing(types, /s$/.test(wordOf(tokens[at])) ? 'moves' : 'move', tokens[at]!, tokens[at + 1])]) : undefined;
}

const PASSES_BY_NOUN: ReadonlyMap<string, string> = new Map(Object.entries({ pass: 'passes', 'bounce-pass': 'bounce-passes', 'skip-pass': 'skips', skip: 'skips', lob: 'lobs', 'lob pass': 'lobs', 'chest-pass': 'chest-passes', 'entry pass': 'passes', 'pocket pass': 'bounce-passes', 'swing pass': 'swings', 'kick out': 'kicks out', 'kick-out pass': 'kicks out', 'long pass': 'passes', 'overhead-pass': 'passes', 'touch pass': 'tips' }));

/** `makes the pass to 5`, `throws a hard bounce pass to 3` */
function makesThePass(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  let noun = at + 1;
  while (/^(hard|quick|good|crisp|long|short|simple|sharp|nice|little|soft|high|easy|return|direct|straight|perfect)$/.test(wordOf(tokens[noun]))) noun++;
  const verb = PASSES_BY_NOUN.get(wordOf(tokens[noun]));
  if (at === 0 || verb === undefined || !/^(to|into|back|ahead|inside|over|across|along|in)/.test(wordOf(tokens[noun + 1]))) return undefined;
  return withThese(tokens, at, noun + 1, [standing(types, /s$/.test(wordOf(tokens[at])) ? verb : plural(verb), tokens[at]!, tokens[noun])]);
}

/** `passes to 4 who swings it to 3`: 4 goes on. */
function whoGoesOn(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at - 1];
  if (!isAttacker(who) || at < 2 || verbOf(wordOf(tokens[at + 1])) === undefined) return undefined;
  return withThese(tokens, at, at + 1, [before(types, ',', tokens[at]!), { ...standing(types, 'PLAYER', tokens[at]!), image: who!.image }]);
}

/** `5 pins his man under the basket`, `circles under the basket to the short corner` */
function underTheBasket(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const last = tokens[at - 1];
  const verb = verbOf(wordOf(last));
  if (at < 2 || !(wordOf(last) === 'man' || ['move', 'seal', 'hold', 'dribble'].includes(verb?.class ?? ''))) return undefined;
  const ends = tokens[at + 1] === undefined || [...JOINTS].includes(wordOf(tokens[at + 1]));
  return withThese(tokens, at, at, [before(types, verb?.class === 'move' || verb?.class === 'dribble' ? (ends ? 'to' : 'via') : 'at', tokens[at]!)]);
}

/** `dives down the gut` */
function downTheGut(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && /^(gut|pipe|heart|seam|gap|center|centre)$/.test(wordOf(tokens[at + 1])) ? withThese(tokens, at, at + 2, [standing(types, 'down the middle', tokens[at]!, tokens[at + 1])]) : undefined;
}

/** `sprints the left side`, `runs the right sideline` */
function runsASide(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || verbOf(wordOf(tokens[at - 1]))?.class !== 'move' || !['run', 'sprint', 'jog', 'fill'].includes(verbOf(wordOf(tokens[at - 1]))!.base)) return undefined;
  return withThese(tokens, at, at + 1, [standing(types, `down the ${wordOf(tokens[at])}`, tokens[at]!)]);
}

/** `4 is in the dunker spot`, from the line's head: he stays there. */
function isThere(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(in|at|on)$/.test(wordOf(tokens[at + 1])) || tokens.slice(0, at).some((token) => !isPlayer(token) && ![',', 'and'].includes(token.image))) return undefined;
  return withThese(tokens, at, at + 1, [standing(types, wordOf(tokens[at]) === 'is' ? 'stays' : 'stay', tokens[at]!)]);
}

/** `the middle of the lane` is the lane. */
function middleOf(tokens: Tokens, at: number): Tokens | undefined {
  return wordOf(tokens[at + 1]) === 'of' && /^(lane|paint|key)$/.test(wordOf(tokens[at + 2])) ? without(tokens, at, at + 2) : undefined;
}

/** `holds the seal`, `holds the screen` */
function holdsIt(tokens: Tokens, at: number): Tokens | undefined {
  return at > 0 && /^(seal|post|position|spot|ground|screen|ball-screen|pick|pose|stance)$/.test(wordOf(tokens[at + 1])) ? without(tokens, at + 1, at + 2) : undefined;
}

/** `keeps it alive`: the dribble. */
function keepsItAlive(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 0 && wordOf(tokens[at + 1]) === 'alive' ? withThese(tokens, at, at + 2, [standing(types, /s\b/.test(wordOf(tokens[at])) ? 'keeps his dribble' : 'keep their dribble', tokens[at]!, tokens[at + 1])]) : undefined;
}

/** `slips out of the screen` */
function outOfTheScreen(tokens: Tokens, at: number): Tokens | undefined {
  return at > 1 && screenOf(wordOf(tokens[at + 1])) !== undefined ? without(tokens, at, at + 2) : undefined;
}

/** `a stagger set by 4 and 5` */
function setBy(tokens: Tokens, at: number): Tokens | undefined {
  return at > 1 && /^(by|from)$/.test(wordOf(tokens[at + 1])) ? without(tokens, at, at + 1) : undefined;
}

/** `first look 2: three` */
function firstLook(tokens: Tokens, at: number): Tokens | undefined {
  return at === 0 && tokens[1]?.image === 'look' ? without(tokens, 0, 1) : undefined;
}

/** `switches onto 1` */
function onto(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 1 ? withThese(tokens, at, at + 1, [standing(types, 'to', tokens[at]!)]) : undefined;
}

/** `crosses over and attacks`: how he frees himself. */
function crossesOver(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0 || wordOf(tokens[at + 1]) !== 'over') return undefined;
  let to = at + 2;
  while (/^(to|left|right|hard|quickly|low|dribble)$/.test(wordOf(tokens[to]))) to++;
  return ['and', 'then'].includes(wordOf(tokens[to])) && verbOf(wordOf(tokens[to + 1])) !== undefined ? without(tokens, at, to + 1) : undefined;
}

/** `runs the floor to the block`, `trails the play`: where, what follows says. */
function runsTheFloor(tokens: Tokens, at: number): Tokens | undefined {
  const what = wordOf(tokens[at + 1]);
  if (at === 0 || !/^(floor|court|play|break)$/.test(what)) return undefined;
  return /^(to|into|in|at|hard|behind|and|then|,)$/.test(wordOf(tokens[at + 2])) || (what === 'play' && tokens[at + 2] === undefined) ? without(tokens, at + 1, at + 2) : undefined;
}

/** `off 5's tail`: off 5. */
function offHis(tokens: Tokens, at: number): Tokens | undefined {
  const part = tokens[at + 1];
  return isAttacker(tokens[at - 1]) && /^(tail|hips|butt|back side|backside|body|outside shoulder|inside shoulder|shoulders|elbow)$/.test(wordOf(part)) && wordOf(tokens[at - 2]) === 'off' ? without(tokens, at, at + 2) : undefined;
}

/** `as the pass is in the air`, `once the ball is passed` */
function asThePass(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const pass = tokens[at + 1];
  if (!pass || !/^(pass|ball)$/.test(wordOf(pass)) || !/^(is|goes|leaves|comes)$/.test(wordOf(tokens[at + 2]))) return undefined;
  let to = at + 3;
  while (/^(in|air|on|way|thrown|passed|made|released|gone|out|up)$/.test(wordOf(tokens[to]))) to++;
  if (to === at + 3 && wordOf(pass) === 'ball') return undefined;
  if (tokens.slice(at + 3, to).every((token) => /^(in|on)$/.test(wordOf(token))) && to > at + 3) return undefined;
  return withThese(tokens, at, to, [standing(types, 'on', tokens[at]!), standing(types, 'pass', pass, tokens[to - 1])]);
}

/** `at the same time as 2` is together with him; `at the same time as 2 cuts` is as he cuts. */
function atTheSameTime(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at + 2];
  if (wordOf(tokens[at + 1]) !== 'as' || !who) return undefined;
  const next = tokens[at + 3];
  const isOne = isAttacker(who) && (next === undefined || JOINTS.has(next.image));
  return isOne ? withThese(tokens, at, at + 2, [standing(types, 'together with', tokens[at]!, tokens[at + 1])]) : without(tokens, at, at + 1);
}

const RULES: readonly (readonly [begins: RegExp, rule: (tokens: Tokens, at: number, types: Types) => Tokens | undefined])[] = [
  [/^(sets?|gives?|makes?|puts?)$/, setsAScreen], [/^(sets?|sets? up)$/, setsUpHisMan], [/^(to|up to)$/, toScreen], [/^(man|defender|guy)$/, theManOn], [/^(takes?|gets?|uses?|needs?|puts?)$/, takesDribbles],
  [/^(kills?|burns?|milks?|bleeds?|eats?|winds?|wastes?|melts?|lets?|runs?|uses?)$/, killsClock], [/^until$/, theClockSays], [/^(back|safe|deep|home|safety|protect|out|high|in|inside|hard|boards?|to|goes|go|stays?|stays? home)$/, getBack], [/^(on|with|in|via|off|as)$/, onAHandOff],
  [/^(,|under the .*)$/, whereHeThrowsIn], [/^(for|,|-)$/, lookForAShot], [/^(slams?|shuts?|closes?|locks?|seals?)$/, shutsTheGate], [/^gets?( to)?$/, getsTo], [/^(is|are)$/, isDoing],
  [/^(opens? up|shapes? up)$/, opensUp], [/^behind$/, behindTheScreen], [/^(open|empty|vacated|vacant)$/, theOpenSpot], [/^(at|toward|to)$/, atAMan], [/^meets?$/, meetsTheBall],
  [/^(fights?|works?|makes?|finds?|weaves?|battles?|threads?|picks?|snakes?)$/, makesHisWay], [/^(makes?|throws?|delivers?|fires?|gives?)$/, makesThePass], [/^who$/, whoGoesOn], [/^under the/, underTheBasket], [/^down$/, downTheGut], [/^(left|right) side(line)?$/, runsASide],
  [/^(is|are)$/, isThere], [/^middle$/, middleOf], [/^holds?$/, holdsIt], [/^keeps? (it|the ball|his dribble|their dribble)$/, keepsItAlive], [/^out of$/, outOfTheScreen], [/^set$/, setBy], [/^(first|second|third|last|next|main|best|final)$/, firstLook],
  [/^onto$/, onto], [/^cross(es)?$/, crossesOver], [/^(runs?|sprints?|trails?|races?|jogs?)$/, runsTheFloor], [/^'s$/, offHis], [/^(as|once|when)$/, asThePass],
  [/^at the same time$/, atTheSameTime], [/^(follows?|chases?|trails?)$/, followsTheBall], [/^through$/, throughTheGate], [/^front of/, inFrontOf], [/^right$/, rightAway], [/^and$/, andThen], [/^cross(es)?$/, crossesTheLane], [/^short(-rolls?)?$/, shortRolls], [/^of$/, ofTheFloor],
  [/^(fills?|runs?|sprints?|takes?|races?|streaks?)$/, fillsALane], [/^,$/, namedLast], [/^(once|twice)$/, dribblesOnce], [/^across$/, standsAcross], [/^from$/, fromBehind], [/^(spins?|peels?|peels? off|wheels?|shakes?|breaks? free)$/, comesFree],
  [/^(steps?|comes?|gets?|walks?|runs?|steps? in|steps? up|goes|go)$/, ontoTheCourt], [/^(drops?|leaves?|moves?|gets?|wraps?|shovels?|floats?|slips?|lays?|slides?|whips?|loops?|works?|rifles?|pings?|hooks?|lofts?)$/, dropsIt],
];

const rulesOf = new Map<string, readonly (typeof RULES)[number][1][]>();

/** No line needs more. */
const MOST_REWORDED = 24;

/** The tokens of the plain line. Most lines hold nothing of the kind, and are given back as they are. */
export function reworded(tokens: Tokens, types: Types): Tokens {
  let said = tokens;
  let times = 0;
  for (let at = 0; at < said.length; at++) {
    const token = said[at]!;
    if (token.tokenType.name === 'STRING' || /PLAYER$/.test(token.tokenType.name)) continue;
    const word = token.image.toLowerCase();
    let rules = rulesOf.get(word);
    if (!rules) {
      rules = RULES.filter(([begins]) => begins.test(word)).map(([, rule]) => rule);
      // What coaches misspell is without end.
      if (rulesOf.size < 4000) rulesOf.set(word, rules);
    }
    for (const rule of rules) {
      const next = rule(said, at, types);
      if (next === undefined || ++times > MOST_REWORDED) continue;
      said = next;
      // What stands before may fit now: `to set a screen`.
      at = Math.max(-1, at - 2);
      break;
    }
  }
  return said;
}
