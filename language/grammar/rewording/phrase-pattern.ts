// Phrases of coaches as patterns over the words of a line: what is said, and what stands in its place.
//   word      the word as the grammar spells it, `_` for a blank in it; `a|b`: either
//   ~give     the verb in both numbers: give, gives
//   LIST      one of a list of words; PLAYER, ATTACKER, DEFENDER, VERB, MOVE … one of a sort
//   x? x* x+  may be missing, may be there several times
//   ^         may begin the line
//   END       behind it the clause is over
//   (x)       must stand there and stays; (..x) somewhere before it in the clause; !x must not stand there
// In what is written, `$2` is what stood for the second word of the pattern, `$2!` in the singular, `x$2` his defender, `passes~` agrees in number with the first; `LENGTH:1_m` is a token of that sort with these words.
import { isAlignmentName } from '../generated/ast.ts';
import { isAttacker, isDefender, isPlayer, wordOf, type LineToken } from '../line-token.ts';
import { after, asSaid, before, JOINTS, plural, singular, standing, type Tokens, type Types } from './rewording.ts';
import { verbOf } from '../verbs.ts';

type Fits = (token: LineToken | undefined, at: number, tokens: Tokens) => boolean;

interface Part {
  readonly fits: Fits;
  readonly least: number;
  readonly most: number;
  /** Looked at only: it takes no word. */
  readonly looks: 'not' | 'yes' | undefined;
  /** It speaks of the place in the line where the phrase begins, not of the word beside it. */
  readonly ofLine: boolean;
}

export interface Phrase {
  /** The words of the grammar it may write; none where a rule does. */
  readonly writes?: readonly string[];
  /** Whether it can begin with a word. */
  readonly begins: (word: string) => boolean;
  /** The words of which one must stand behind that; absent where it can be any. */
  readonly second?: ReadonlySet<string> | undefined;
  readonly apply: (tokens: Tokens, at: number, types: Types) => Tokens | undefined;
}

export type Lists = { readonly [name: string]: string };
export type Rows = readonly (readonly [said: string, written: string])[];

/** `give` → gives; of several words the first changes: `peel off` → peels off. */
function inOne(verb: string): string {
  const [first, ...rest] = verb.split(' ');
  const one = first!.replace(/(?<=[^aeiou])y$/, 'ie').replace(/(?<=s|x|z|ch|sh|o)$/, 'e');
  return [`${one}s`, ...rest].join(' ');
}

const ofClass = (...classes: readonly string[]): Fits => (token) => classes.includes(verbOf(wordOf(token))?.class ?? '');

const PLACE = /^(near|far|weak-side|ball-side|strong-side|top|top of the key|nail|free-throw line|high post|low post|mid-post|elbow|elbows|block|blocks|wing|wings|slot|slots|corner|corners|short corner|rim|basket|lane|hash)$/;

const SORTS: { readonly [sort: string]: Fits } = {
  ANY: (token) => token !== undefined && token.tokenType.name !== 'STRING',
  PLAYER: isPlayer, ATTACKER: isAttacker, DEFENDER: isDefender,
  HIM: (token) => isAttacker(token) || wordOf(token) === 'him',
  VERB: (token) => verbOf(wordOf(token)) !== undefined,
  /** As it stands behind `to`. */
  BASE: (token) => verbOf(wordOf(token))?.number === 'plural',
  MOVE: ofClass('move'), GOING: ofClass('move', 'dribble'), SCREENING: ofClass('screen'), PASSING: ofClass('pass'), HOLDING: ofClass('hold'), SEALING: ofClass('seal'), DRIBBLING: ofClass('dribble'), THROWING: ofClass('throw-in'),
  RUNNING: (token) => ['run', 'sprint', 'jog', 'fill'].includes(verbOf(wordOf(token))?.base ?? ''),
  LINE: (token) => wordOf(token).endsWith('line'),
  COUNT: (token) => /^(NUMBER|PLAYER)$/.test(token?.tokenType.name ?? ''),
  START: (_, at) => at === 0,
  ALIGNMENT: (token) => token !== undefined && token.tokenType.name !== 'UNKNOWN' && isAlignmentName(wordOf(token)),
  IN_FROM: (_, at, tokens) => at > 0 && wordOf(tokens[0]) === 'from',
  IN_LOOK: (_, at, tokens) => at > 0 && wordOf(tokens[0]) === 'look',
  IN_CALL: (_, at, tokens) => at > 0 && wordOf(tokens[0]) === 'call',
  IN_HEAD: (_, at, tokens) => at > 0 && /^(play|step|section|roster|book)$/.test(wordOf(tokens[0])),
  TEXT: (token) => token?.tokenType.name === 'STRING',
  /** The line is over. */
  LAST: (token) => token === undefined,
  /** Only those who do it stand before. */
  HEAD: (_, at, tokens) => tokens.slice(0, at).every((token) => isPlayer(token) || [',', 'and', 'everyone', 'everybody', 'others', 'rest', 'else', 'both'].includes(token.image)),
  JOINT: (token) => JOINTS.has(wordOf(token)),
  END: (token) => token === undefined || JOINTS.has(wordOf(token)) || wordOf(token) === ':',
  FORM: (token) => token?.tokenType.name === 'FORM',
  SECONDS: (token) => token?.tokenType.name === 'SECONDS',
  LENGTH: (token) => token?.tokenType.name === 'LENGTH',
  TIME: (token) => /^(NUMBER|PLAYER|SECONDS)$/.test(token?.tokenType.name ?? ''),
  SUBJECT: (token) => isPlayer(token) || ['he', 'they', 'both', 'everyone', 'others'].includes(wordOf(token)),
  SPOT: (token) => token !== undefined && (/^(left|right|backcourt|half court|up top)$/.test(wordOf(token)) || PLACE.test(wordOf(token))),
  /** Behind the man a look is for, before what he is to do. */
  IN_PIN: (_, at, tokens) => wordOf(tokens[0]) === 'look' && !isBehindTheColon(tokens, at),
  /** Among what happens if the look is taken. */
  IN_TAIL: (_, at, tokens) => wordOf(tokens[0]) === 'look' && isBehindTheColon(tokens, at),
  OF_ATTACKER: (_, at, tokens) => isAttacker(subjectAt(tokens, at)),
  OF_DEFENDER: (_, at, tokens) => isDefender(subjectAt(tokens, at)),
  /** A pass is told of before it in its clause. */
  OF_A_PASS: (_, at, tokens) => tokens.slice(tokens.findLastIndex((token, i) => i < at && JOINTS.has(wordOf(token))) + 1, at).some((token) => verbOf(wordOf(token))?.class === 'pass'),
};
/** They say something of the place in the line, not of a word there. */
const OF_THE_LINE: ReadonlySet<string> = new Set(['IN_PIN', 'IN_TAIL', 'IN_FROM', 'IN_LOOK', 'IN_CALL', 'IN_HEAD', 'START', 'HEAD', 'OF_ATTACKER', 'OF_DEFENDER', 'OF_A_PASS', 'END', 'LAST']);

/** Of several looks in a line it is the last before. */
function isBehindTheColon(tokens: Tokens, at: number): boolean {
  for (let i = at - 1; i > 0 && tokens[i]!.image !== 'look'; i--) if (tokens[i]!.image === ':') return true;
  return false;
}

/** Who does what stands at a place: the last named before a verb, or right before it. */
function subjectAt(tokens: Tokens, at: number): LineToken | undefined {
  for (let i = at - 1; i >= 0; i--) if (isPlayer(tokens[i]) && (i === at - 1 || verbOf(wordOf(tokens[i + 1])) !== undefined)) return tokens[i];
  return isPlayer(tokens[0]) ? tokens[0] : undefined;
}

function wordsOf(written: string, lists: Lists): ReadonlySet<string> | Fits {
  const found = new Set<string>();
  const sorts = written.split('|').flatMap((each) => SORTS[each] ?? []);
  const verb = written.startsWith('~');
  for (const each of written.replace('~', '').split('|')) {
    if (SORTS[each] !== undefined) continue;
    for (const word of lists[each]?.split(' ') ?? [each]) {
      const plain = word.replaceAll('_', ' ');
      found.add(plain);
      if (verb) found.add(inOne(plain));
    }
  }
  return sorts.length === 0 ? found : (token, at, tokens) => isOneOf(token, found) || sorts.some((sort) => sort(token, at, tokens));
}

/** Sorts of which every token begins with a figure, or with the word for one. */
const OF_FIGURES: ReadonlySet<string> = new Set(['COUNT', 'TIME', 'SECONDS', 'LENGTH', 'FORM']);
const BEGINS_A_FIGURE = /^(?:[\d.]|half|an? |one|two|three|four|five|couple)/;

/** Whether a token with this word may be the first that fits. */
function openerOf(written: string, lists: Lists): (word: string) => boolean {
  const each = written.replace('~', '').split('|');
  const sorts = each.filter((one) => SORTS[one] !== undefined);
  if (sorts.some((sort) => !OF_FIGURES.has(sort))) return () => true;
  const found = wordsOf(`${written.startsWith('~') ? '~' : ''}${each.filter((one) => !sorts.includes(one)).join('|')}`, lists) as ReadonlySet<string>;
  return (word) => found.has(word) || (sorts.length > 0 && BEGINS_A_FIGURE.test(word));
}

const isOneOf = (token: LineToken | undefined, words: ReadonlySet<string>): boolean => token !== undefined && token.tokenType.name !== 'STRING' && words.has(wordOf(token));

function partOf(written: string, lists: Lists): Part {
  const not = written.startsWith('!');
  const [, core = '', count] = /^!?(.+?)([?*+]?)$/.exec(written)!;
  const words = wordsOf(core, lists);
  const fits: Fits = typeof words === 'function' ? words : (token) => isOneOf(token, words);
  const ofLine = core.split('|').some((word) => OF_THE_LINE.has(word));
  return { fits, least: count === '?' || count === '*' ? 0 : 1, most: count === '*' || count === '+' ? 12 : 1, looks: not ? 'not' : ofLine ? 'yes' : undefined, ofLine };
}

/** Where the parts end that begin at a token, as many words for each as can be; -1 where they do not fit. */
function matched(parts: readonly Part[], tokens: Tokens, at: number, ends: number[], n = 0): number {
  const part = parts[n];
  if (part === undefined) return at;
  if (part.looks !== undefined) {
    if (part.fits(tokens[at], at, tokens) === (part.looks === 'not')) return -1;
    ends[n] = at;
    return matched(parts, tokens, at, ends, n + 1);
  }
  let count = 0;
  while (count < part.most && tokens[at + count] !== undefined && part.fits(tokens[at + count], at + count, tokens)) count++;
  for (; count >= part.least; count--) {
    const end = matched(parts, tokens, at + count, ends, n + 1);
    if (end < 0) continue;
    ends[n] = at + count;
    return end;
  }
  return -1;
}

/** Whether the parts stand before a token, the last right before it. */
function stands(parts: readonly (Part & { readonly anywhere: boolean })[], tokens: Tokens, at: number): boolean {
  let next = at - 1;
  for (const part of parts.toReversed()) {
    if (part.anywhere) {
      let i = next;
      while (i >= 0 && !part.fits(tokens[i], i, tokens)) {
        if (JOINTS.has(wordOf(tokens[i]))) return false;
        i--;
      }
      if (i < 0) return false;
      next = i - 1;
    } else if (part.looks !== undefined) {
      const where = part.ofLine ? at : next;
      if (part.fits(tokens[where], where, tokens) === (part.looks === 'not')) return false;
    } else {
      let count = 0;
      while (count < part.most && next >= 0 && part.fits(tokens[next], next, tokens)) {
        count++;
        next--;
      }
      if (count < part.least) return false;
    }
  }
  return true;
}

/** Whether the word before a token, or its line, is none that the phrase asks for: of a phrase that does not fit that is mostly why. */
function mayStandBehind(last: Parts['context'][number] | undefined, tokens: Tokens, at: number): boolean {
  if (last === undefined || last.anywhere || last.least === 0) return true;
  const where = last.ofLine ? at : at - 1;
  return last.looks === undefined ? at > 0 && last.fits(tokens[where], where, tokens) : last.fits(tokens[where], where, tokens) !== (last.looks === 'not');
}

const mayStandBeforeBase = (token: LineToken | undefined): boolean => SORTS['SUBJECT']!(token, 0, []) || JOINTS.has(wordOf(token)) || wordOf(token) === 'to';

/** What stands before the words said, those words, and they with what stands behind them. */
interface Parts {
  readonly context: readonly (Part & { readonly anywhere: boolean })[];
  readonly body: readonly Part[];
  readonly whole: readonly Part[];
}

function partsOf(words: readonly string[], first: number, last: number, lists: Lists): Parts {
  const bare = (word: string): string => word.replace(/^\((\.\.)?/, '').replace(/\)$/, '');
  const context = words.slice(0, first).flatMap((word) => bare(word).split(' ').map((each) => ({ ...partOf(each, lists), anywhere: word.startsWith('(..') })));
  const body = words.slice(first, last + 1).map((word) => partOf(word, lists));
  const behind = words.slice(last + 1).flatMap((word) => bare(word).split(' ').map((each) => partOf(each, lists)));
  return { context, body, whole: [...body, ...behind] };
}

/** The words that must come second; nothing where it can be any. */
function secondOf(words: readonly string[], first: number, lists: Lists): ReadonlySet<string> | undefined {
  const next = /^\(?([^\s()]+)\)?/.exec(words[first + 1] ?? '')?.[1];
  if (next === undefined || /^!|[?*+]$/.test(words[first]!) || /^!|[?*]$/.test(next)) return undefined;
  const set = wordsOf(next.replace(/\+$/, ''), lists);
  return typeof set === 'function' ? undefined : set;
}

/** The words that can come first: those that may be missing, and the next. */
function openersOf(words: readonly string[]): readonly string[] {
  const must = words.findIndex((word) => !/[?*]$/.test(word));
  return words.slice(0, must + 1);
}

/** A phrase: the words said, and those that stand in their place. Of hundreds a text has a few: what one is made of is worked out where its first word is met. */
export function phrase(said: string, written: string, lists: Lists): Phrase {
  const mayBegin = said.startsWith('^ ');
  const words = said.replace('^ ', '').split(/\s+(?![^()]*\))/);
  const first = words.findIndex((word) => !word.startsWith('('));
  const last = words.findLastIndex((word) => !word.startsWith('('));
  const openers = openersOf(words.slice(first, last + 1)).map((word) => openerOf(/^(.+?)[?*+]?$/.exec(word)![1]!, lists));
  const second = secondOf(words, first, lists);
  const isVerb = words[first]!.startsWith('~');
  const pieces = written.split(' ').filter(Boolean);
  let parts: Parts | undefined;
  return {
    writes: pieces.filter((piece) => !/^x?\$/.test(piece)).flatMap(formsWritten),
    second,
    begins: (word) => openers.some((opener) => opener(word)),
    apply(tokens, at, types) {
      // `show`, `pop`, `post`: a verb behind those who do it, else a noun or which way. Where they begin, a place follows: `from 5 post on the left side`.
      if (isVerb && !tokens[at]!.image.split(' ')[0]!.endsWith('s') && (tokens[0]!.image === 'from' || !mayStandBeforeBase(tokens[at - 1]))) return undefined;
      if (at === 0 && !mayBegin) return undefined;
      const { context, body, whole } = (parts ??= partsOf(words, first, last, lists));
      if (!mayStandBehind(context.at(-1), tokens, at)) return undefined;
      const ends: number[] = [];
      // What stands before may be as long as the line: the words themselves are asked first.
      if (matched(whole, tokens, at, ends) < 0 || !stands(context, tokens, at)) return undefined;
      const to = ends[body.length - 1]!;
      return [...tokens.slice(0, at), ...inPlaceOf(tokens, at, ends, to, pieces, types), ...tokens.slice(to)];
    },
  };
}

/** The words written, with the columns of those said: what is kept keeps its own, and shares out those between among the others. */
function inPlaceOf(tokens: Tokens, at: number, ends: readonly number[], to: number, pieces: readonly string[], types: Types): LineToken[] {
  const made: LineToken[] = [];
  let fresh: string[] = [];
  let from = at;
  const fill = (until: number): void => {
    const said = tokens.slice(from, until);
    // More words than were said: the first stands for the first, the last for the last, those between for none.
    const extra = Math.max(fresh.length - Math.max(said.length, 1), 0);
    for (const [index, word] of fresh.entries()) {
      const start = index === 0 ? said[0] : index > extra ? said[index - extra] : undefined;
      const next = extra > 0 && index <= extra && said[1] !== undefined ? said[1] : tokens[until];
      const [name, image] = word.includes(':') ? word.split(':') : [word, undefined];
      const token = start !== undefined ? standing(types, name!, start, index === fresh.length - 1 ? said.at(-1)! : start) : next !== undefined ? before(types, name!, next) : after(types, name!, made.at(-1) ?? tokens[until - 1]!);
      made.push(image === undefined ? token : { ...token, image });
    }
    fresh = [];
  };
  for (const piece of pieces) {
    const [, kept, one] = /^\$(\d)(!?)$/.exec(piece) ?? [];
    if (kept === undefined) {
      fresh.push(wordWritten(piece, tokens, at, ends));
      continue;
    }
    const number = Number(kept) - 1;
    const begin = number === 0 ? at : ends[number - 1]!;
    fill(begin);
    const words = tokens.slice(begin, ends[number]);
    made.push(...(one ? words.map((token) => standing(types, singular(wordOf(token)), token)) : words));
    from = ends[number]!;
  }
  fill(to);
  return made;
}

/** `LENGTH:2_ft` is a LENGTH, `goes~` may be `go`. */
function formsWritten(piece: string): readonly string[] {
  const word = piece.replace(/~$|:.*/, '').replaceAll('_', ' ');
  return piece.endsWith('~') ? [word, plural(word)] : [word];
}

function wordWritten(piece: string, tokens: Tokens, at: number, ends: readonly number[]): string {
  const word = piece.replace(/~$/, '').replaceAll('_', ' ');
  if (piece.startsWith('x$')) return `XPLAYER:x${wordOf(tokens[ends[Number(piece[2]) - 1]! - 1])}`;
  if (piece.endsWith('~')) return asSaid(wordOf(tokens[at]), word);
  return word;
}

