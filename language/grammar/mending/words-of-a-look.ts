// The words behind a look's colon by sort: how he gets the ball, what he does himself, how it ends, where, what is only said of it. Common usage, no source.
import { isPassKindName, isShotKindName } from '../generated/ast.ts';
import { singular, verbOf } from '../verbs.ts';

/** A word or a sign as the coach wrote it; what stands before and behind a hyphen is a word each. */
export interface SaidWord {
  readonly word: string;
  readonly at: number;
  readonly to: number;
}

const SHORT_FOR: ReadonlyMap<string, string> = new Map(Object.entries({ frm: 'from', w: 'with', n: 'and', '&': 'and', '+': 'and', thru: 'through', rt: 'right', lt: 'left', '3ball': 'three', '3pt': 'three', '3s': 'three' }));

export function wordsIn(text: string): readonly SaidWord[] {
  return [...text.matchAll(/[,;.]|(?:[^\s,;.!?/-]|(?<=\d)\.(?=\d))+/g)].map((match) => {
    const said = match[0].toLowerCase().replaceAll('’', "'");
    return { word: SHORT_FOR.get(said) ?? said, at: match.index, to: match.index + match[0].length };
  });
}

/** Nothing of what a look means hangs on them. */
const SMALL: ReadonlySet<string> = new Set("the a an it ball him her he she they him/her for with can could may might will should to get gets catch catches receive receives just also then now some his open wide easy quick good nice clean hard strong straight big off up who".split(' '));
const IN_BETWEEN: ReadonlySet<string> = new Set(['the', 'a', 'an', 'it', 'ball', 'him', 'her', 'his']);
const WAYS: ReadonlySet<string> = new Set(['back', 'out', 'in', 'inside', 'down', 'over', 'across', 'ahead', 'up']);
/** They say of a shot how, or that it is one. */
const OF_A_SHOT: ReadonlySet<string> = new Set(['power', 'reverse', 'baby', 'running', 'driving', 'trailer', 'contested', 'short', 'deep', 'make', 'makes', 'take', 'takes', 'rhythm', 'uncontested', 'clear', 'hit', 'hits', 'fire', 'fires', 'drop', 'drops', 'throw', 'throws', 'bury', 'buries', 'sink', 'sinks', 'knock', 'knocks']);
/** So a shot may be made, when another is told behind it: `step-back three`. */
const IN_WHAT_WAY: ReadonlySet<string> = new Set(['pull up', 'pull-up', 'step back', 'fadeaway', 'turnaround', 'catch and shoot', 'shoots', 'finish', 'score', 'takes']);
const RING = /^(rim|basket|hoop|ring|bucket|cup|hole)$/;
const SIDE = /^(left|right|near|far|weak-side|strong-side|ball-side)$/;

/** How it ends, by the verb's plain form and without articles. */
const ENDINGS: ReadonlyMap<string, string> = new Map(Object.entries({
  shoot: 'shoots', shot: 'shoots', 'let go': 'shoots', 'let fly': 'shoots', 'let rip': 'shoots', 'fire away': 'shoots', 'take shot': 'shoots', 'take look': 'shoots', 'pull trigger': 'shoots', 'put up': 'shoots', 'get shot': 'shoots', bomb: 'shoots',
  'finish up': 'finish', 'finish in': 'finish', 'finish inside': 'finish', 'finish strong': 'finish', 'power up': 'finish', 'power back up': 'finish', 'muscle up': 'finish', 'go up': 'finish', 'go up strong': 'finish', 'go right up': 'finish', 'go back up': 'finish', 'put in': 'finish', 'put home': 'finish', 'go strong': 'finish',
  'easy two': 'score', 'easy bucket': 'score', bucket: 'score', pullup: 'pull-up', 'stop and pop': 'pull-up', 'stop and pops': 'pull-up',
  'lay up': 'layup', 'lay in': 'layup', lay: 'layup', bunny: 'layup', slam: 'dunk', flush: 'dunk', jam: 'dunk', 'throw down': 'dunk',
  triple: 'three', treble: 'three', trey: 'three', 'three ball': 'three', '3 ball': 'three', '3 pointer': 'three', 'three pointer': 'three', 'three point shot': 'three', '3 point shot': 'three',
  j: 'jumper', jimmy: 'jumper', middy: 'jumper', 'mid range': 'jumper', midrange: 'jumper', 'mid range jumper': 'jumper', 'midrange jumper': 'jumper', 'jumpshot': 'jumper', 'pull up jumper': 'pull-up', 'pull up three': 'three', 'spot up three': 'three', bank: 'bank shot', 'bank in': 'bank shot',
  'tip in': 'tip-in', 'tip home': 'tip-in', 'put back': 'put-back', 'put back in': 'put-back', 'put back up': 'put-back',
}));
/** They say no more than that he shoots. */
export const PLAIN_ENDINGS: ReadonlySet<string> = new Set(['shoots', 'finish', 'score', 'catch and shoot', 'catch and finish', 'catch and score', 'takes']);

/** How the ball comes, where the notation has another word. */
const PASSES: ReadonlyMap<string, string> = new Map(Object.entries({
  hit: 'pass', find: 'pass', give: 'pass', throw: 'pass', send: 'pass', deliver: 'pass', toss: 'pass', fire: 'pass', zip: 'pass', whip: 'pass', bounce: 'bounce-pass', 'bounce pass': 'bounce-pass', drop: 'drop pass', 'drop down': 'drop pass', hand: 'hand-off',
  'dribble hand off': 'hand-off', 'dribble handoff': 'hand-off', 'draw and kick': 'drive and kick', 'draw and kicks': 'drive and kick', 'hand off': 'hand-off', handoff: 'hand-off', dho: 'hand-off', ahead: 'pass ahead', 'throw ahead': 'throw ahead', 'hit ahead': 'hit ahead', oop: 'alley-oop', 'kick out': 'kick out',
}));
const DEEDS: ReadonlyMap<string, string> = new Map(Object.entries({ rip: 'drives', 'rip and go': 'drives', 'pick and pop': 'pops', 'rip through': 'drives', 'dribble in': 'drives', 'all way': 'drives to rim', 'go all way': 'drives to rim', 'take all way': 'drives to rim', 'get downhill': 'drives', 'turn corner': 'turns the corner', penetrate: 'drives' }));
/** Only with `to the rim` behind it. */
const TO_THE_RIM: ReadonlySet<string> = new Set(['pull', 'enter', 'take', 'attack', 'drive', 'dribble', 'go in', 'get', 'rip', 'drive in', 'dribble in']);
const PLACES: ReadonlySet<string> = new Set(['top', 'top of the key', 'wing', 'corner', 'elbow', 'slot', 'block', 'nail', 'short corner', 'high post', 'low post', 'free throw line', 'foul line', 'baseline', 'rim', 'basket', 'lane', 'paint', 'dunker spot']);

export type Sort =
  | { readonly is: 'ending' | 'deed'; readonly words: string }
  | { readonly is: 'pass'; readonly words: string }
  | { readonly is: 'from' | 'to'; readonly man: string }
  | { readonly is: 'place'; readonly words: string }
  | { readonly is: 'small' | 'or' }
  | { readonly is: 'other' };
export type Sorted = Sort & { readonly from: number; readonly to: number };

/** `passes` → pass, `goes` → go. */
const plain = (word: string): string => (/(?:ss|sh|ch|x|zz|o)es$/.test(word) ? word.slice(0, -2) : /[^s']s$/.test(word) && word !== 'as' ? word.slice(0, -1) : word);

/** The words from one on as one, with articles and the ball between left out: as many as may be, longest first. */
function* spans(words: readonly SaidWord[], from: number): Generator<{ readonly said: string; readonly to: number }> {
  const found: { said: string; to: number }[] = [];
  let said = '';
  for (let at = from, count = 0; at < words.length && count < 4; at++) {
    if (at > from && IN_BETWEEN.has(words[at]!.word)) continue;
    said = said === '' ? plain(words[at]!.word) : `${said} ${words[at]!.word}`;
    count++;
    found.push({ said, to: at + 1 });
  }
  yield* found.reverse();
}

function named(said: string, is: (name: string) => boolean): string | undefined {
  return [said, said.replaceAll(' ', '-'), said.replace(' ', '-')].find(is);
}

const isMan = (word: string | undefined): boolean => word !== undefined && /^[1-5]$/.test(word);
const isArticle = (word: string | undefined): boolean => word === 'the' || word === 'a' || word === 'an';

/** `at the left elbow`, `elbow`: the place, with its side. */
function placeAt(words: readonly SaidWord[], from: number): Sorted | undefined {
  let at = from;
  if (/^(at|from|in|on)$/.test(words[at]?.word ?? '')) at++;
  if (isArticle(words[at]?.word)) at++;
  const side = SIDE.test(words[at]?.word ?? '') ? `${words[at++]!.word} ` : '';
  for (const { said, to } of spans(words, at)) {
    const place = PLACES.has(said) ? said : undefined;
    if (place !== undefined) return { is: 'place', words: `${side === '' ? 'the ' : side}${place.replace('free throw line', 'free-throw line').replace('foul line', 'free-throw line')}`, from, to };
  }
  return undefined;
}

/** Behind `to the rim`. */
export function toTheRing(words: readonly SaidWord[], from: number): number | undefined {
  let at = from;
  if (!/^(to|into|at|until|toward|towards)$/.test(words[at++]?.word ?? '')) return undefined;
  if (isArticle(words[at]?.word)) at++;
  return RING.test(words[at]?.word ?? '') ? at + 1 : undefined;
}

/** What the words from one on are, as many as belong together. */
export function sortAt(words: readonly SaidWord[], from: number, before: Sorted | undefined): Sorted {
  const { word } = words[from]!;
  const next = words[from + 1]?.word;
  if (word === 'or') return { is: 'or', from, to: from + 1 };
  // A three, where it is no man: `a 3`, `shoots 3`, `elbow 3`, `kick it 3`.
  if (word === '3' && next === undefined && (before === undefined || before.is !== 'pass' || IN_BETWEEN.has(words[from - 1]!.word)) && !/^(to|from|of|by|off|on)$/.test(words[from - 1]?.word ?? '')) return { is: 'ending', words: 'three', from, to: from + 1 };
  if (/^(from|of|by)$/.test(word) && isMan(next) && !(next === '3' && before?.is === 'ending' && PLAIN_ENDINGS.has(before.words))) return { is: 'from', man: next!, from, to: from + 2 };
  if (word === 'to' && isMan(next)) return { is: 'to', man: next!, from, to: from + 2 };
  if (isMan(word) && before?.is === 'pass') return { is: 'to', man: word, from, to: from + 1 };
  // `shot fake`: none is made.
  if (/^(?:fake|clock)$/.test(next ?? '') && /^(?:shot|pump|ball|head)$/.test(word)) return { is: 'other', from, to: from + 2 };
  const behind = IN_BETWEEN.has(next ?? '') ? from + 2 : from + 1;
  const shot = OF_A_SHOT.has(word) && words[behind] !== undefined ? endingAt(words, behind) : undefined;
  if (shot !== undefined) return { is: 'small', from, to: behind };
  const ending = endingAt(words, from);
  const pass = passAt(words, from);
  if (ending !== undefined && (pass === undefined || ending.to >= pass.to)) return ending;
  const deed = deedAt(words, from);
  if (deed !== undefined && (pass === undefined || deed.to > pass.to)) return deed;
  return pass ?? placeAt(words, from) ?? { is: SMALL.has(word) ? 'small' : 'other', from, to: from + 1 };
}

function endingAt(words: readonly SaidWord[], from: number): Sorted | undefined {
  for (const { said, to } of spans(words, from)) {
    const found = ENDINGS.get(said) ?? named(said, isShotKindName);
    if (found === undefined) continue;
    const more = IN_WHAT_WAY.has(found) && to < words.length ? endingAt(words, to) : undefined;
    return more === undefined || !('words' in more) ? { is: 'ending', words: found, from, to } : { ...more, words: /^(?:pull|step|fade|turn)/.test(found) ? `${found} ${more.words}` : more.words, from };
  }
  return undefined;
}

function passAt(words: readonly SaidWord[], from: number): Sorted | undefined {
  for (const { said, to } of spans(words, from)) {
    const kind = PASSES.get(said) ?? named(said, isPassKindName);
    if (kind === undefined) continue;
    // `throws to the basket`: for him it is a shot.
    const ring = /^(?:throw|fire|toss)$/.test(said) ? toTheRing(words, to) : undefined;
    if (ring !== undefined) return { is: 'ending', words: 'shoots', from, to: ring };
    // `passes out to 3`, but `passes over him`
    let end = to;
    while (IN_BETWEEN.has(words[end]?.word ?? '')) end++;
    const way = words[end]?.word ?? '';
    const behind = words[end + 1]?.word;
    if (!WAYS.has(way) || !(behind === undefined || /^(to|for|and|from|[1-5])$/.test(behind))) return { is: 'pass', words: kind, from, to };
    const there = named(`${said} ${way}`, isPassKindName) ?? (way === 'out' ? 'kick out' : named(`${kind} ${way}`, isPassKindName)) ?? kind;
    return { is: 'pass', words: there, from, to: end + 1 };
  }
  return undefined;
}

function deedAt(words: readonly SaidWord[], from: number): Sorted | undefined {
  for (const { said, to } of spans(words, from)) {
    const ring = TO_THE_RIM.has(said) ? toTheRing(words, to) : undefined;
    if (ring !== undefined) return { is: 'deed', words: 'drives to rim', from, to: ring };
    const found = DEEDS.get(said) ?? (['move', 'seal', 'dribble'].includes(verbOf(said)?.class ?? '') && !/^(take|bring|push)\b/.test(said) ? singular(said) : undefined);
    if (found !== undefined) return { is: 'deed', words: found, from, to };
  }
  return undefined;
}
