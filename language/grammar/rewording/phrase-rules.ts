// What coaches say that no pattern tells: the words depend on more than those beside them (phrases.ts and its rows have the others).
import { isPlace } from './aside-sorts.ts';
import { nextManBehindThePlace, placeBehindAComma, placeBehindTheVerb } from './bare-places.ts';
import { countedSteps } from './counted-steps.ts';
import { cutsOffTheHandOff, getsItBack, onAHandOff, takesAHandOff } from './hand-offs-and-give-backs.ts';
import type { LineToken } from '../line-token.ts';
import type { Phrase } from './phrase-pattern.ts';
import { after, asSaid, before, inNumberOf, isAttacker, isPlayer, JOINTS, oneOf, singular, standing, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { inParentheses } from './in-parentheses.ts';
import { heAndAnother, hisMan, ifNothingIsThere } from './men-and-chances.ts';
import { crashAndGetBack, getBack } from './rebound-words.ts';
import { spokenTo } from './spoken-to.ts';
import { nextSentence, passWithoutVerb } from './short-sentences.ts';
import { verbOf } from '../verbs.ts';
import { BEGINS_A_WAIT, ENDS_OF_DEEDS } from '../waits.ts';

/** `2 gets to the corner`, `1 gets into the lane`: with the ball or without it he goes there. In a trigger it is an event. */
function getsTo(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const token = tokens[at]!;
  const isOne = /^gets/.test(token.image.toLowerCase());
  const subject = tokens[at - 1];
  const head = at === 1 || JOINTS.has(wordOf(subject)) || (/^(he|they)$/.test(wordOf(subject)) && JOINTS.has(wordOf(tokens[at - 2]))) || (isPlayer(subject) && [',', 'and'].includes(wordOf(tokens[at - 2])) && !tokens.slice(0, at).some(({ image }) => /^(as|once|when|until|after|as soon as|ends|step)$/.test(image)));
  if (!head || tokens[0]?.image === 'ends' || tokens[0]?.image === 'step') return undefined;
  const verb = (): LineToken => standing(types, isOne ? 'goes' : 'go', token);
  const [, little] = /^gets? (to|into)$/.exec(token.image) ?? [];
  if (little !== undefined) return withThese(tokens, at, at + 1, [{ ...verb(), endOffset: token.startOffset + (isOne ? 3 : 2) }, { ...standing(types, little, token), startOffset: token.endOffset - little.length + 1 }]);
  if (!/^gets?$/.test(wordOf(token))) return undefined;
  const to = /^(out|back|up|down|over|downhill|all|all the way)$/.test(wordOf(tokens[at + 1])) ? at + 2 : at + 1;
  if (!/^(to|into|up to|off|out of|(across|through|down|up) the lane|along the baseline|(down|up) the middle)$/.test(wordOf(tokens[to]))) return undefined;
  return withThese(tokens, at, at + 1, [verb()]);
}

/** What an ending is put to: `roll`, `driv(e)`, `pop(p)`. */
const formsOf = (stem: string): readonly string[] => [stem, `${stem}e`, stem.replace(/(.)\1$/, '$1')];

/** `cutting` → cut, `posting up` → post up; nothing where it is no verb. */
function verbOfIng(words: string): string | undefined {
  const [, stem, rest = ''] = /^(\w+)ing( \w+)?$/.exec(words) ?? [];
  return stem === undefined ? undefined : formsOf(stem).map((form) => form + rest).find(isPlural);
}

const isPlural = (word: string): boolean => verbOf(word)?.number === 'plural';

/** Where the word stands that waits for what `1 …` or `4 and 5 …` do before a verb: `once`, `as`. */
const waitBefore = (tokens: Tokens, verb: number): number => tokens.findLastIndex((token, i) => i < verb && !isPlayer(token) && wordOf(token) !== 'and');

/** `2 is cutting`, `2 keeps on running`, `3 comes sprinting off 4`; `once 5 is rolling`, `once 5 starts rolling` has not to wait until he has rolled. */
function isDoing(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const next = wordOf(tokens[at + 1]) === 'on' ? at + 2 : at + 1;
  // `is setting that pick`
  if (/^(sett|lay)ing$/.test(wordOf(tokens[next]))) return setsAScreen(withThese(tokens, at, next + 1, [{ ...standing(types, 'UNKNOWN', tokens[at]!, tokens[next]), image: /^is|s\b/.test(wordOf(tokens[at])) ? 'sets' : 'set' }]), at, types);
  const verb = verbOfIng(wordOf(tokens[next]));
  // `is going to roll`
  if (verb === undefined || (verb === 'go' && wordOf(tokens[next + 1]) === 'to' && verbOf(wordOf(tokens[next + 2]))?.number === 'plural')) return undefined;
  const does = standing(types, /s\b/.test(wordOf(tokens[at])) ? singular(verb) : verb, tokens[at]!, tokens[next]);
  const waits = waitBefore(tokens, at);
  const begins = /^(is|are|starts?|begins?)$/.test(wordOf(tokens[at])) && tokens[0]!.image !== 'step' && ENDS_OF_DEEDS.has(wordOf(tokens[waits])) && !/screen$/.test(verb);
  return withThese(begins ? withThese(tokens, waits, waits + 1, [standing(types, 'as', tokens[waits]!)]) : tokens, at, next + 1, [does]);
}

/** `and he's driving to the rim`: two words, of which the second goes with the verb. */
function heIs(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const token = tokens[at]!;
  const [, he] = /^(s?he|they)['’](?:s|re)$/.exec(wordOf(token)) ?? [];
  if (he === undefined || (verbOfIng(wordOf(tokens[at + 1])) === undefined && !/^(going|used)$/.test(wordOf(tokens[at + 1])))) return undefined;
  const cut = token.startOffset + he.length;
  const who = { ...standing(types, he === 'they' ? 'they' : 'he', token), endOffset: cut - 1, endColumn: token.startColumn! + he.length - 1 };
  return withThese(tokens, at, at + 1, [who, { ...standing(types, he === 'they' ? 'are' : 'is', token), startOffset: cut, startColumn: token.startColumn! + he.length }]);
}

/** `X2 has to close out on 2`, `4 must screen for 2`, `5 will roll`: in a play he does. */
function hasToDo(tokens: Tokens, at: number, types: Types): Tokens | undefined {
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

/** `once 5 has rolled` is when he has done it, `once 3 has left` as he goes. */
function hasDone(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const waits = waitBefore(tokens, at);
  if (at === 0 || !ENDS_OF_DEEDS.has(wordOf(tokens[waits]))) return undefined;
  const [has, ...more] = wordOf(tokens[at]).split(' ');
  const end = more.length > 0 ? at + 1 : at + 2;
  const done = more.length > 0 ? more.join(' ') : wordOf(tokens[at + 1]);
  const inNumber = (verb: string): string => (has === 'has' ? singular(verb) : verb);
  const closed = tokens[end] === undefined || JOINTS.has(wordOf(tokens[end]));
  if (done === 'left' && /^(it|there)$/.test(wordOf(tokens[end]))) return hasDone(withThese(tokens, end, end + 1, []), at, types);
  if (done === 'left' && closed) return withThese(withThese(tokens, at, end, [standing(types, inNumber('go'), tokens[at]!, tokens[end - 1])]), waits, waits + 1, [standing(types, 'as', tokens[waits]!)]);
  const ball = wordOf(tokens[end]);
  if (done === 'caught' && /^(it|the ball)$/.test(ball)) return withThese(tokens, at, end + 1, [standing(types, `${has === 'has' ? 'catches' : 'catch'} ${ball}`, tokens[at]!, tokens[end])]);
  // `has cleared 4`, `has gone` are words of their own.
  if (more.length > 0 && (done !== 'cleared' || !closed)) return undefined;
  const verb = verbOfParticiple(done);
  return verb === undefined ? undefined : withThese(tokens, at, end, [standing(types, inNumber(verb), tokens[at]!, tokens[end - 1])]);
}

/** `rolled` → roll, `caught` → catch; nothing where it is no verb. */
function verbOfParticiple(done: string): string | undefined {
  const stem = /^(.+)ed$/.exec(done)?.[1];
  return (stem === undefined ? [PARTICIPLES[done] ?? ''] : formsOf(stem)).find(isPlural);
}

/** `short rolls`: a roll that ends at the free-throw line. */
function shortRolls(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const joined = /^short-rolls?$/.test(wordOf(tokens[at]));
  const verb = joined ? tokens[at]! : tokens[at + 1];
  if (at === 0 || !verb || (!joined && !/^rolls?$/.test(wordOf(verb)))) return undefined;
  const next = tokens[joined ? at + 1 : at + 2];
  const roll = standing(types, asSaid(wordOf(verb), 'rolls'), tokens[at]!, verb);
  const end = { ...verb, startOffset: verb.endOffset + 1, startColumn: verb.endColumn! + 1 };
  const there = next && /^(to|into|at|in|on|toward|up to)$/.test(wordOf(next)) ? [] : [before(types, 'to', end), before(types, 'nail', end)];
  return withThese(tokens, at, joined ? at + 1 : at + 2, [roll, ...there]);
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
  return withThese(tokens, at, at + 1, [standing(types, 'to', tokens[at]!), before(types, 'beside', man!)]);
}

/** `kills some clock`, `burns the clock down`: he keeps the ball; for how long, what follows says. */
function killsClock(tokens: Tokens, at: number, types: Types): Tokens | undefined {
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
function theClockSays(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const bare = tokens[at + 1]?.tokenType.name === 'SECONDS';
  if (!bare && wordOf(tokens[at + 1]) !== 'clock') return undefined;
  const time = bare ? at + 1 : tokens.findIndex((token, i) => i > at + 1 && i <= at + 4 && /^(NUMBER|PLAYER|SECONDS)$/.test(token.tokenType.name));
  if (time < 0 || /^(on the clock|on the shot clock|left|are|is|later)$/.test(wordOf(tokens[time + 1]))) return undefined;
  return withThese(tokens, at + 1, time + 1, [tokens[time]!, after(types, 'on the clock', tokens[time]!)]);
}

const KINDS_OF_PASS: ReadonlyMap<string, string> = new Map(Object.entries({ lob: 'lobs', 'lob pass': 'lobs', skip: 'skips', 'skip-pass': 'skips', 'bounce-pass': 'bounce-passes', 'pocket pass': 'bounce-passes', 'chest-pass': 'chest-passes' }));

/** `hits 5 with a lob`: the kind of pass is the verb. */
function passesWith(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const kind = KINDS_OF_PASS.get(wordOf(tokens[at + 1]));
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  const known = verb < 0 ? undefined : verbOf(tokens[verb]!.image)!;
  const kept = tokens.slice(verb + 1, at);
  if (kind === undefined || known?.base !== 'pass' || !(isAttacker(kept.at(-1)) || wordOf(kept.at(-1)) === 'him') || kept.some((token) => JOINTS.has(wordOf(token)))) return undefined;
  const to = isAttacker(kept[0]) ? [before(types, 'to', kept[0]!)] : [];
  return withThese(tokens, verb, at + 2, [standing(types, asSaid(wordOf(tokens[verb]), kind), tokens[verb]!), ...to, ...kept]);
}

const LINES = oneOf('sideline', 'baseline');

/** `inbounds, right sideline`; `from under the basket, right of the lane`; `under the basket, right side`; `from the baseline on the left`. */
function whereHeThrowsIn(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (wordOf(tokens[at]) === ',' && !/^(left|right)$/.test(wordOf(tokens[at + 1]))) return undefined;
  const verb = tokens.findIndex(({ image }) => verbOf(image)?.class === 'throw-in');
  if (verb < 0 || verb > at) return undefined;
  if (wordOf(tokens[at]) === ',' && /^(left|right)$/.test(wordOf(tokens[at + 1])) && LINES.has(wordOf(tokens[at + 2])) && tokens[at + 3] === undefined) return withThese(tokens, at, at + 1, [standing(types, 'from', tokens[at]!)]);
  const isUnder = /^under the/.test(tokens[at]!.image);
  const line = isUnder ? 'baseline' : tokens[at]!.image;
  const from = isUnder && wordOf(tokens[at - 1]) !== 'from' ? [before(types, 'from', tokens[at]!)] : [];
  const on = (side: string, to: number): Tokens => withThese(tokens, at, to, [...from, standing(types, side, tokens[at]!), standing(types, line, tokens[at + 1]!, tokens[to - 1])]);
  if (LINES.has(line) && wordOf(tokens[at + 1]) === 'on' && /^(left|right)$/.test(wordOf(tokens[at + 2])) && !/^(left|right)$/.test(wordOf(tokens[at - 1]))) return on(wordOf(tokens[at + 2]), at + 3);
  if (!isUnder && (line !== 'baseline' || /^(left|right|far|own)$/.test(wordOf(tokens[at - 1])))) return undefined;
  let side = at + 1;
  while (/^(,|on|to)$/.test(wordOf(tokens[side]))) side++;
  const whole = /^(left|right)( side)?$/.exec(wordOf(tokens[side]))?.[1];
  const next = wordOf(tokens[side + 1]);
  if (whole !== undefined && (tokens[side + 1] === undefined || JOINTS.has(next) || /^(as|once|when|while|after|until)$/.test(next))) return on(whole, side + 1);
  const said = /^(left|right)(?: side)? of$/.exec(wordOf(tokens[side]))?.[1];
  return said !== undefined && /^(lane|key|paint|basket|rim|hoop)$/.test(wordOf(tokens[side + 1])) ? on(said, side + 2) : undefined;
}

const CHANCES: ReadonlySet<string> = new Set(['layup', 'lay-up', 'dunk', 'jumper', 'jump shot', 'three', '3', 'three-pointer', 'hook', 'hook shot', 'floater', 'runner', 'shot', 'lob', 'skip', 'pull up', 'put-back', 'lay-in', 'finish', 'score', 'bounce-pass', 'kick out', 'pocket pass', 'skip-pass']);
const BETWEEN_CHANCES = oneOf('open', 'corner', 'quick', 'easy', 'wing', 'elbow', 'baseline', 'pull up', 'step back', 'catch', 'wide-open', 'clean', 'backdoor', 'power', 'reverse', 'running', 'driving', 'short');

/** `look 2 for the corner three`, `look 5 on the block, layup`: what follows is the shot. */
function lookForAShot(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (tokens[0]?.image !== 'look' || wordOf(tokens[at - 1]) === 'look' || tokens.some(({ image }) => image === ':')) return undefined;
  let shot = at + 1;
  while (BETWEEN_CHANCES.has(wordOf(tokens[shot])) && !CHANCES.has(wordOf(tokens[shot]))) shot++;
  const end = tokens[shot + 1];
  if (!CHANCES.has(wordOf(tokens[shot])) || (end !== undefined && ![',', 'or', 'then', 'from', 'at', 'in'].includes(end.image))) return undefined;
  if (wordOf(tokens[shot]) === '3' && wordOf(tokens[at]) === ',') return undefined;
  return withThese(tokens, at, at + 1, [standing(types, ':', tokens[at]!)]);
}

const PASSES_AS_SAID = oneOf('lob', 'skip', 'skip pass', 'skip-pass', 'bounce-pass', 'kick out', 'dump off', 'drop-off', 'pocket pass', 'dish', 'pass', 'alley-oop', 'overhead-pass', 'chest-pass', 'post feed', 'post entry', 'entry pass', 'feed', 'high-low', 'high-low pass', 'lob pass', 'dump pass', 'inside pass');
const SHOTS_AS_SAID = oneOf('catch-and-shoot three', 'catch-and-shoot jumper', 'catch and shoot', 'pull up', 'step back', 'bank shot', 'set shot', 'finger roll', 'layin', '3 pointer');
const isShot = (token: LineToken | undefined): boolean => SHOTS_AS_SAID.has(wordOf(token)) || (CHANCES.has(wordOf(token)) && !PASSES_AS_SAID.has(wordOf(token)));
/** What such a word goes with: it is no shot of the look's own. */
const LEADS_ON = oneOf('look', 'for', 'on', 'in', 'at', 'off', 'to', 'into', 'of', 'with', 'from', 'by', 'via', 'or', 'and', ',', '-', 'as', 'when', 'once', 'after', 'until', 'is', 'gets', 'get', 'takes', 'take', 'shoots', 'shoot', 'throws', 'throw', 'no', 'not');

/** `look 2 three`, `look 5 on the roll lob layup`: the colon is forgotten, and the comma behind a pass. */
function colonForgotten(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const look = tokens.findLastIndex(({ image }, i) => i < at && image === 'look');
  if (tokens[0]?.image !== 'look' || tokens.some(({ image }, i) => i > look && image === ':')) return undefined;
  let from = at;
  while (BETWEEN_CHANCES.has(wordOf(tokens[from - 1])) && !LEADS_ON.has(wordOf(tokens[from - 2])) && !SIDES.has(wordOf(tokens[from - 2]))) from--;
  if (from < look + 2 || LEADS_ON.has(wordOf(tokens[from - 1])) || SIDES.has(wordOf(tokens[from - 1])) || verbOf(wordOf(tokens[from - 1]))?.class === 'pass') return undefined;
  const told = PASSES_AS_SAID.has(wordOf(tokens[at])) && isShot(tokens[at + 1]) ? withThese(tokens, at + 1, at + 1, [before(types, ',', tokens[at + 1]!)]) : tokens;
  return withThese(told, from, from, [before(types, ':', tokens[from]!)]);
}

/** `look 2 in the corner 3` */
const threeFrom = (tokens: Tokens, at: number, types: Types): Tokens | undefined =>
  wordOf(tokens[at + 1]) === '3' && tokens[at + 2] === undefined ? colonForgotten(tokens, at + 1, types) : undefined;

const SIDES = oneOf('left', 'right', 'near', 'far', 'ball-side', 'weak-side', 'strong-side', 'short', 'opposite');

/** `passes to 4 who swings it to 3`: 4 goes on. */
function whoGoesOn(line: Tokens, at: number, types: Types): Tokens | undefined {
  const there = whoIsThere(line, at, types);
  if (there !== undefined) return there;
  const tokens = whoHasGone(line, at, types) ?? line;
  const hasComma = wordOf(tokens[at - 1]) === ',';
  const who = tokens[hasComma ? at - 2 : at - 1];
  if (!isAttacker(who) || at < 2 || verbOf(wordOf(tokens[at + 1])) === undefined) return undefined;
  if (hasComma) return withThese(tokens, at, at + 1, [{ ...standing(types, 'PLAYER', tokens[at]!), image: who!.image }]);
  return withThese(tokens, at, at + 1, [before(types, ',', tokens[at]!), { ...standing(types, 'PLAYER', tokens[at]!), image: who!.image }]);
}

/** `to 4, who has come out to the left wing`: there he catches it. */
function whoIsThere(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const begin = wordOf(tokens[at - 1]) === ',' ? at - 1 : at;
  const passes = tokens.slice(0, begin).some((token, i) => /^(pass|hand-off)$/.test(verbOf(wordOf(token))?.class ?? '') && !tokens.slice(i, begin).some((other) => JOINTS.has(wordOf(other))));
  const done = /'s$/.test(wordOf(tokens[at])) ? at + 1 : at + 2;
  if (!passes || !isAttacker(tokens[begin - 1]) || verbOf(verbOfParticiple(wordOf(tokens[done])) ?? '')?.class !== 'move') return undefined;
  let to = done + 1;
  while (/^(out|back|up|down|over|across|away)$/.test(wordOf(tokens[to]))) to++;
  if (!/^(to|into|up to|at|in|on)$/.test(wordOf(tokens[to])) || !(isPlace(tokens[to + 1]) || (SIDES.has(wordOf(tokens[to + 1])) && isPlace(tokens[to + 2])))) return undefined;
  return withThese(tokens, begin, to + 1, [standing(types, 'at', tokens[begin]!, tokens[to])]);
}

/** `to 1, who's drifted to the wing`, `who has drifted`: who drifts there. */
function whoHasGone(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const done = /'s$/.test(wordOf(tokens[at])) ? at + 1 : at + 2;
  const verb = verbOfParticiple(wordOf(tokens[done])) ?? verbOfIng(wordOf(tokens[done]));
  return verb === undefined ? undefined : withThese(tokens, at + 1, done + 1, [standing(types, singular(verb), tokens[done]!)]);
}

/** `hits 3 coming off the screen`, `passes to 5 rolling to the rim`: as he does. */
function asHeDoes(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const verb = verbOfIng(wordOf(tokens[at]));
  const doing = tokens[at]!;
  if (verb === undefined || !(isAttacker(tokens[at - 1]) || wordOf(tokens[at - 1]) === 'him') || tokens[0]!.image === 'look' || !['move', 'seal'].includes(verbOf(verb)!.class) || /^(space|spot up)$/.test(verb)) return undefined;
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

const SCREENS_BY_NOUN: ReadonlyMap<string, string> = new Map(Object.entries({
  flare: 'flare-screens', double: 'double-screens', pindown: 'pin-screens', 'staggered screen': 'stagger-screens', 'staggered screens': 'stagger-screens', drag: 'drag-screens', 'double drag': 'ball-screens', pin: 'pin-screens', wall: 'double-screens',
}));

/** How a screen is set; where it stands is worked out. */
const OF_A_SCREEN = oneOf('flat', 'high', 'side', 'solid', 'wide', 'quick', 'step up', 'second', 'last', 'first', 'big', 'good', 'middle', 'tight', 'late', 'hard', 'strong', 'high-ball', 'step-up', 'another', 'new', 'little', 'small', 'early', 'angled', 'low', 'deep', 'empty', 'mid', 'top', 'slot', 'wing', 'elbow', 'hammer', 'rip', 'ram', 'brush', 'rub', 'two', 'same');

function screenOf(noun: string): string | undefined {
  if (verbOf(noun)?.class === 'screen') return singular(noun);
  return SCREENS_BY_NOUN.get(noun);
}

const GIVES_A_SCREEN = /^(sets?|gives?|makes?|puts?|lays?|throws?|drops?|sticks?|setting|laying)$/;

/** `sets a flare for 2`, `gives 1 a high ball screen`, `turns into a ball screen`: the kind of screen is the verb. */
function setsAScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const first = tokens[at + 1];
  const user = first !== undefined && (wordOf(first) === 'him' || (isAttacker(first) && /^g/.test(wordOf(tokens[at])))) ? first : undefined;
  let noun = at + (user ? 2 : 1);
  while (/^(right|straight|into|that|this)$/.test(wordOf(tokens[noun]))) noun++;
  // `turns into`, never `turns to screen`
  if (!GIVES_A_SCREEN.test(wordOf(tokens[at])) && wordOf(tokens[noun - 1]) !== 'into') return undefined;
  while (screenOf(wordOf(tokens[noun])) === undefined || (OF_A_SCREEN.has(wordOf(tokens[noun])) && screenOf(wordOf(tokens[noun + 1])) !== undefined)) {
    if (!OF_A_SCREEN.has(wordOf(tokens[noun])) || noun > at + 4) return undefined;
    noun++;
  }
  const one = screenOf(wordOf(tokens[noun]))!;
  const verb = asSaid(wordOf(tokens[at]), one);
  const said = user ? [standing(types, verb, tokens[at]!), before(types, 'for', user), user] : [standing(types, verb, tokens[at]!, tokens[noun])];
  return withThese(tokens, at, noun + 1, [...said]);
}

const GOES_ON = oneOf('screen', 'seal', 'rebound', 'close');

/** Where `to` begins no purpose: it is not done. */
const NOT_YET = oneOf('if', 'ready', 'about', 'fakes', 'fake', 'pretends', 'pretend', 'wants', 'want', 'tries', 'looks', 'look', 'has', 'threatens', 'able');

/** `cuts away to screen for 3`, `runs up to post up`: he goes on with that. */
function toScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const to = tokens[at]!;
  if (at < 2 || NOT_YET.has(wordOf(tokens[at - 1]))) return undefined;
  // `waits for 5 to screen`
  if (isPlayer(tokens[at - 1]) && wordOf(tokens[at - 2]) === 'for' && verbOf(wordOf(tokens[at - 3]))?.class === 'hold') return undefined;
  const verb = tokens[at + 1];
  const known = verbOf(wordOf(verb));
  if (!verb || !known || !(GOES_ON.has(known.class) || known.base === 'post up' || known.base === 'fill' || (known.base === 'hand off' && isPlayer(tokens[at + 3]))) || known.number !== 'plural') return undefined;
  return withThese(tokens, at, at + 2, [standing(types, 'and', to), standing(types, inNumberOf(tokens, at, verb.image), verb)]);
}

/** `slam the door behind 2`, `close the gate once 2 is through`. */
function shutsTheGate(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0 || !/^(doors?|gates?|gap|elevator|elevators)$/.test(wordOf(tokens[at + 1]))) return undefined;
  const verb = standing(types, asSaid(wordOf(tokens[at]), 'closes behind'), tokens[at]!, tokens[at + 1]);
  let who = at + 2;
  while (/^(right|just|behind|after|once|as soon as|when|as)$/.test(wordOf(tokens[who]))) who++;
  if (who > at + 2 && (isPlayer(tokens[who]) || wordOf(tokens[who]) === 'him')) {
    const end = tokens.findIndex((token, i) => i > who && [',', 'and', 'then'].includes(token.image));
    const said = tokens.slice(who + 1, end < 0 ? tokens.length : end);
    // Once he is through, that is what it means.
    if (said.every(({ image }) => /through|past|by|comes|goes|gets|is|clears|gone/.test(image))) return withThese(tokens, at, end < 0 ? tokens.length : end, [verb, tokens[who]!]);
  }
  return withThese(tokens, at, at + 2, [verb, after(types, 'him', tokens[at + 1]!)]);
}

/** `screens the back man of the zone, X4` */
function namedLast(tokens: Tokens, at: number): Tokens | undefined {
  const last = tokens[at + 1];
  if (last?.tokenType.name !== 'XPLAYER' || tokens[at + 2] !== undefined) return undefined;
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  if (verb < 1 || verbOf(tokens[verb]!.image)!.class !== 'screen' || at - verb < 2 || tokens.slice(verb + 1, at).some((token) => isPlayer(token) || JOINTS.has(token.image))) return undefined;
  return withThese(tokens, verb + 1, tokens.length, [last]);
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

/** `2 pops to the right wing and 3 to the left wing`: 3 does the same. */
function doesTheSame(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = tokens[at - 1];
  if (!isAttacker(who) || !JOINTS.has(wordOf(tokens[at - 2])) || wordOf(tokens[at + 1]) === 'beside') return undefined;
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(wordOf(token)) !== undefined);
  const known = verb < 1 ? undefined : verbOf(wordOf(tokens[verb]))!;
  if (known?.class !== 'move' || !isAttacker(tokens[verb - 1]) || !tokens.slice(verb, at).some((token) => /^(to|into)$/.test(wordOf(token))) || tokens.slice(verb, at - 2).some((token) => JOINTS.has(wordOf(token)))) return undefined;
  if (/^(as|once|when|after|while|until)$/.test(wordOf(tokens[verb - 2]))) return undefined;
  return [...tokens.slice(0, at), before(types, singular(wordOf(tokens[verb])), tokens[at]!), ...tokens.slice(at)];
}

/** `when 2 is gone 5 turns`: the comma before who does it is often left out. */
function commaBehindTheWait(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at !== 0) return undefined;
  const event = tokens.findIndex((token, i) => i > 1 && (verbOf(wordOf(token)) !== undefined || / /.test(wordOf(token))));
  const who = tokens.findIndex((token, i) => i > event && isPlayer(token) && verbOf(wordOf(tokens[i + 1])) !== undefined);
  if (event < 0 || who < 0 || JOINTS.has(wordOf(tokens[who - 1]))) return undefined;
  // `once 4 and 5 are set 2 cuts`
  const hasSeveral = tokens.slice(1, event).some(({ image }) => image === 'and');
  if (!hasSeveral && tokens.slice(1, who).some(({ image, tokenType }) => tokenType.name === 'STRING' || JOINTS.has(image) || BEGINS_A_WAIT.has(image))) return undefined;
  return [...tokens.slice(0, who), before(types, ',', tokens[who]!), ...tokens.slice(who)];
}

/** `… to the right corner, when 1 turns the corner`: at a line's end the wait is the last deed's, with or without a comma. */
function commaBeforeTheWait(tokens: Tokens, at: number): Tokens | undefined {
  const wait = tokens[at + 1]?.tokenType.name === 'SECONDS' && wordOf(tokens[at + 2]) === 'after' ? at + 2 : at + 1;
  if (at < 2 || !(BEGINS_A_WAIT.has(wordOf(tokens[wait])) || wordOf(tokens[wait]) === 'until') || BEGINS_A_WAIT.has(wordOf(tokens[0]))) return undefined;
  const tail = tokens.slice(wait + 1);
  const isSaid = (token: LineToken): boolean => verbOf(wordOf(token)) !== undefined || / /.test(wordOf(token));
  if (tail.some(({ image }) => JOINTS.has(image)) || tail.filter((token, i) => isPlayer(token) && tail[i + 1] !== undefined && isSaid(tail[i + 1]!)).length > 1) return undefined;
  return [...tokens.slice(0, at), ...tokens.slice(at + 1)];
}

/** `3 calls for 5 to come up and screen`: what is done is 5's. */
function callsFor(tokens: Tokens, at: number): Tokens | undefined {
  if (!isAttacker(tokens[at - 1])) return undefined;
  let who = at + 1;
  while (/^(for|up|to|on|over)$/.test(wordOf(tokens[who]))) who++;
  const verb = tokens[who + 2];
  if (!isAttacker(tokens[who]) || wordOf(tokens[who + 1]) !== 'to' || verb === undefined || verbOf(wordOf(verb))?.number !== 'plural') return undefined;
  const inOne = (token: LineToken, index: number): LineToken => (index === who + 2 || (wordOf(tokens[index - 1]) === 'and' && verbOf(wordOf(token))?.number === 'plural') ? { ...token, image: singular(wordOf(token)) } : token);
  return [...tokens.slice(0, at - 1), tokens[who]!, ...tokens.map(inOne).slice(who + 2)];
}

/** `two beats, then 5 rolls` at the beginning of a line. */
function thenLater(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const who = wordOf(tokens[2]) === 'then' ? 3 : 2;
  if (at !== 0 || wordOf(tokens[1]) !== ',' || !isAttacker(tokens[who]) || verbOf(wordOf(tokens[who + 1])) === undefined) return undefined;
  return withThese(tokens, 1, who, [after(types, 'later', tokens[0]!), tokens[1]!]);
}

/** `- 4 pops`, `* 1 shoots`, `1. 4 pops`, `2) look 1`: the mark of a list. */
function listMark(tokens: Tokens, at: number): Tokens | undefined {
  const isNumbered = /^[.)]$/.test(wordOf(tokens[at]));
  if (isNumbered ? at !== 1 || !/^(NUMBER|PLAYER)$/.test(tokens[0]!.tokenType.name) : at !== 0) return undefined;
  const next = tokens[at + 1];
  // A number may be meant; a stroke before words is none.
  return isPlayer(next) || (isNumbered ? /^(look|step|note)$/ : /^[a-z]/).test(wordOf(next)) ? tokens.slice(at + 1) : undefined;
}

const RULES: readonly (readonly [begins: RegExp, rule: Phrase['apply']])[] = [
  [/^(sets?|gives?|makes?|puts?|lays?|throws?|drops?|sticks?|turns?|flows?|goes|go|sprints?|runs?|steps?|comes?|cuts?|moves?)$/, setsAScreen],
  [/^(to|up to)$/, toScreen],
  [/^(kills?|burns?|milks?|bleeds?|eats?|winds?|wastes?|melts?|lets?|runs?|uses?)$/, killsClock],
  [/^until$/, theClockSays],
  [/^[\d.]+\s*s/, thenLater],
  [/^(calls?|signals?|waves?|asks?|motions?|tells?|yells?|shouts?)$/, callsFor],
  [/^(back|safe|deep|home|safety|protect|out|high|in|inside|hard|boards?|to|goes|go|stays?|stays? home)$/, getBack],
  [/^(crash|hits? the (boards|glass)|go(es)? to the (boards|glass)|get(s)? back|stays? back|rebounds?|box(es)? out)/, crashAndGetBack],
  [/^(on|with|in|via|off|as)$/, onAHandOff],
  [/^with$/, passesWith],
  [/^(,|under the .*|baseline|sideline)$/, whereHeThrowsIn],
  [/^(for|with|,|-)$/, lookForAShot],
  [/^(corner|wing|slot|top|top of the key)$/, threeFrom],
  [/^shoots?( it)?$/, colonForgotten],
  [/^[1-5] second$/, lookThatIsSecond],
  [/^(three|layup|lay-up|lay-in|layin|dunk|jumper|jump shot|hook|floater|runner|shot|lob|skip|finish|score|put-back|alley-oop|dish|pass|three-pointer)$|^(hook|bank|set) shot$|^(post feed|post entry|entry pass|feed|high-low( pass)?|lob pass|dump pass|inside pass)$|^(bounce|skip|overhead|chest|pocket)[- ]pass$|^(kick out|dump off|drop-off|pull up|step back|finger roll|catch[- ]and[- ]shoot( three| jumper)?|3 pointer)$/, colonForgotten],
  [/^(slams?|shuts?|closes?|locks?|seals?)$/, shutsTheGate],
  [/^(s?he|they)['’](s|re)$/, heIs],
  [/^gets?( it| the ball)?$/, getsItBack],
  [/^gets?( to| into)?$/, getsTo],
  [/^(is|are|keeps?|starts?|begins?|continues?|goes|go|comes?)( on)?$/, isDoing],
  [/^(takes?|gets?|receives?|catch(es)?)( it| the ball| the hand off)?$/, takesAHandOff],
  [/^(comes?|cuts?|curls?|runs?|uses?)( off)?$/, cutsOffTheHandOff],
  [/^(has|have)( cleared)?$/, hasDone],
  [/^(has|have|needs?|must|should|will|is|are)$/, hasToDo],
  [/^\w+ing( \w+)?$/, asHeDoes],
  [/^(at|toward|to)$/, atAMan],
  [/^who('s)?$/, whoGoesOn],
  [/^(as|once|when)$/, asThePass],
  [/^(as|once|when|after|as soon as|while)$/, commaBehindTheWait],
  [/^(to|into)$/, doesTheSame],
  [/^short(-rolls?)?$/, shortRolls],
  [/^(one|two|three|four|couple|few|another|extra|[1-4]|steps?( up| in| out| back| down)?)$/, countedSteps],
  [/^(,|you)$/, spokenTo],
  [/^,$/, namedLast],
  [/^\($/, inParentheses],
  [/^[.)*•–—>-]$/, listMark],
  [/^[.;]$/, nextSentence],
  [/^if$/, ifNothingIsThere],
  [/^he$/, heAndAnother],
  [/^man$/, hisMan],
  [/^(to|back|back out|out|over|across|in|inside|down|up|ahead|right|straight)$/, passWithoutVerb],
  [/^,$/, commaBeforeTheWait],
  [/^,$/, placeBehindAComma],
  [/^(rim|basket|block|elbow|nail|high post|top|top of the key|slot|wing|corner|short corner|dunker spot|half court)$/, nextManBehindThePlace],
  [/^(left|right|ball-side|weak-side|strong-side|near|far|opposite|other|far side|near side|rim|nail|high post|top|top of the key|elbows?|wings?|corners?|slots?|blocks?|short corner|dunker spot|half court)$/, placeBehindTheVerb],
];

/** `look 2 second: three`: in which order, and no time. */
function lookThatIsSecond(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (tokens[at]!.tokenType.name !== 'SECONDS' || wordOf(tokens[at - 1]) !== 'look' || !(tokens[at + 1] === undefined || tokens[at + 1]!.image === ':')) return undefined;
  return withThese(tokens, at, at + 1, [{ ...standing(types, 'PLAYER', tokens[at]!), image: tokens[at]!.image[0]! }]);
}

export const phraseRules: readonly Phrase[] = RULES.map(([begins, apply]) => ({ begins: (word) => begins.test(word), apply }));
