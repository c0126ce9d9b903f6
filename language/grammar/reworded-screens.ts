// Screens in other words: `sets a flare for 2`, `cuts away to screen for 3`, `slams the door behind 2`.
import { after, asSaid, before, inNumberOf, isAttacker, isPlayer, JOINTS, oneOf, plural, singular, standing, without, withThese, wordOf, type Tokens, type Types } from './rewording.ts';
import { verbOf } from './verbs.ts';

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
export function setsAScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  const user = isAttacker(tokens[at + 1]) && /^g/.test(wordOf(tokens[at])) ? tokens[at + 1] : undefined;
  let noun = at + (user ? 2 : 1);
  while (screenOf(wordOf(tokens[noun])) === undefined || (OF_A_SCREEN.has(wordOf(tokens[noun])) && screenOf(wordOf(tokens[noun + 1])) !== undefined)) {
    if (!OF_A_SCREEN.has(wordOf(tokens[noun])) || noun > at + 4) return undefined;
    noun++;
  }
  const one = screenOf(wordOf(tokens[noun]))!;
  const verb = /s$/.test(wordOf(tokens[at])) ? one : plural(one);
  const said = user ? [standing(types, verb, tokens[at]!), before(types, 'for', user), user] : [standing(types, verb, tokens[at]!, tokens[noun])];
  return withThese(tokens, at, noun + 1, [...said]);
}

const GOES_ON = oneOf('screen', 'seal', 'rebound', 'close');

/** Where `to` begins no purpose: it is not done. */
const NOT_YET = oneOf('if', 'ready', 'about', 'fakes', 'fake', 'pretends', 'pretend', 'wants', 'want', 'tries', 'looks', 'look', 'has', 'threatens', 'able');

/** `cuts away to screen for 3`, `runs up to post up`: he goes on with that. */
export function toScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  const to = tokens[at]!;
  if (at < 2 || NOT_YET.has(wordOf(tokens[at - 1]))) return undefined;
  // `waits for 5 to screen`
  if (isPlayer(tokens[at - 1]) && wordOf(tokens[at - 2]) === 'for' && verbOf(wordOf(tokens[at - 3]))?.class === 'hold') return undefined;
  const verb = tokens[at + 1];
  const known = verbOf(wordOf(verb));
  if (!verb || !known || !(GOES_ON.has(known.class) || known.base === 'post up' || (known.base === 'hand off' && isPlayer(tokens[at + 3]))) || known.number !== 'plural') return undefined;
  return withThese(tokens, at, at + 2, [standing(types, 'and', to), standing(types, inNumberOf(tokens, at, verb.image), verb)]);
}

/** `the man who guards 4`, `the defender on 2` is X4, X2. */
export function theManOn(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  if (at === 0) return undefined;
  let next = at + 1;
  if (/^(who|that|whos|who's)$/.test(wordOf(tokens[next]))) next++;
  if (wordOf(tokens[next]) === 'is') next++;
  if (!/^(guards|guarding|on|covers|covering|marking)$/.test(wordOf(tokens[next])) || !isAttacker(tokens[next + 1])) return undefined;
  const who = tokens[next + 1]!;
  return withThese(tokens, at, next + 2, [{ ...standing(types, 'XPLAYER', tokens[at]!, who), image: `x${who.image}` }]);
}

/** `slam the door behind 2`, `close the gate once 2 is through`. */
export function shutsTheGate(tokens: Tokens, at: number, types: Types): Tokens | undefined {
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

/** `runs through the gate between 4 and 5` */
export function throughTheGate(tokens: Tokens, at: number): Tokens | undefined {
  if (at === 0 || !/^(gate|door|doors|gates|elevator|gap)$/.test(wordOf(tokens[at + 1])) || wordOf(tokens[at + 2]) !== 'between') return undefined;
  return without(tokens, at, at + 2);
}

/** `off a stagger from 4 and then 1` */
export function andThen(tokens: Tokens, at: number): Tokens | undefined {
  if (wordOf(tokens[at + 1]) !== 'then' || !isAttacker(tokens[at - 1]) || !isAttacker(tokens[at + 2]) || verbOf(wordOf(tokens[at + 3])) !== undefined) return undefined;
  const joint = wordOf(tokens[at - 2]);
  if (joint === 'off') return without(tokens, at, at + 1);
  return /^(from|by|of)$/.test(joint) ? without(tokens, at + 1, at + 2) : undefined;
}

/** `screens the back man of the zone, X4` */
export function namedLast(tokens: Tokens, at: number): Tokens | undefined {
  const last = tokens[at + 1];
  if (last?.tokenType.name !== 'XPLAYER' || tokens[at + 2] !== undefined) return undefined;
  const verb = tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  if (verb < 1 || verbOf(tokens[verb]!.image)!.class !== 'screen' || at - verb < 2 || tokens.slice(verb + 1, at).some((token) => isPlayer(token) || JOINTS.has(token.image))) return undefined;
  return withThese(tokens, verb + 1, tokens.length, [last]);
}

/** `drifts behind the screen` comes off it. */
export function behindTheScreen(tokens: Tokens, at: number, types: Types): Tokens | undefined {
  return at > 1 && screenOf(wordOf(tokens[at + 1])) !== undefined && !/^double$/.test(wordOf(tokens[at + 1])) ? withThese(tokens, at, at + 1, [standing(types, 'off', tokens[at]!)]) : undefined;
}

/** `holds the seal`, `holds the screen` */
export function holdsIt(tokens: Tokens, at: number): Tokens | undefined {
  return at > 0 && /^(seal|post|position|spot|ground|screen|ball-screen|pick|pose|stance)$/.test(wordOf(tokens[at + 1])) ? without(tokens, at + 1, at + 2) : undefined;
}

/** `slips out of the screen` */
export function outOfTheScreen(tokens: Tokens, at: number): Tokens | undefined {
  return at > 1 && screenOf(wordOf(tokens[at + 1])) !== undefined ? without(tokens, at, at + 2) : undefined;
}

/** `a stagger set by 4 and 5` */
export function setBy(tokens: Tokens, at: number): Tokens | undefined {
  return at > 1 && /^(by|from)$/.test(wordOf(tokens[at + 1])) ? without(tokens, at, at + 1) : undefined;
}

/** `off 5's tail`: off 5. */
export function offHis(tokens: Tokens, at: number): Tokens | undefined {
  const part = tokens[at + 1];
  return isAttacker(tokens[at - 1]) && /^(tail|hips|butt|back side|backside|body|outside shoulder|inside shoulder|shoulders|elbow)$/.test(wordOf(part)) && wordOf(tokens[at - 2]) === 'off' ? without(tokens, at, at + 2) : undefined;
}
