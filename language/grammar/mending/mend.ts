import { message } from '../../message/message.ts';
import { endOf, said, startWithArticles, singularAt, tried, applyEdits, readsUpTo, written, type Broken } from './broken-line.ts';
import { isPlayer } from '../line-token.ts';
import { ARTICLES, keywordAtoms } from '../reading/lexer.ts';
import type { LineFix } from '../line-fault.ts';
import { lineParser } from '../reading/line-parser.ts';
import { editDistance, reach } from './nearest.ts';
import { otherNumber, verbOf } from '../verbs.ts';

/** A way to make the line readable: which words it puts where. */
export interface Mend {
  readonly kind: 'replace' | 'blank' | 'insert' | 'swap' | 'leave out' | 'quote';
  /** Tokens from, up to and not including to, that it touches. */
  readonly from: number;
  readonly to: number;
  /** The words that stand there afterwards. */
  readonly words: string;
  /** A quote round a word that could be a spot of the coach's own, or a look's label. */
  readonly isOwnName?: boolean;
  readonly fix: LineFix;
}

/** A trade word that the notation says otherwise. Common usage, no source. */
const OTHER_WORDS: ReadonlyMap<string, readonly string[]> = new Map(Object.entries({
  pick: ['screens', 'screen'], picks: ['screens'], block: ['screens', 'block'], hoop: ['rim'], net: ['rim'], ring: ['rim'], goal: ['rim'], bucket: ['rim'], hole: ['rim'], key: ['lane', 'top of the key'], paint: ['lane'], point: ['top'],
  dishes: ['passes'], shakes: ['lifts'], fires: ['passes'], zips: ['passes'], touches: ['tips'], 'touches it': ['tips it'], backdoors: ['back-cuts'], protects: ['gets back'], catches: ['flashes'], penetrates: ['drives'], slashes: ['cuts'], scores: ['shoots'], finishes: ['lays it up'], rebounds: ['crashes'], layups: ['lays it up'], triple: ['three'], shot: ['jumper'],
  center: ['middle'], centre: ['middle'], midcourt: ['half court'], if: ['when'], while: ['as'], after: ['once', 'after'], towards: ['toward', 'to'], onto: ['to'], through: ['via', 'through to'],
  from: ['off'], around: ['off', 'around'], using: ['off'], against: ['on'], near: ['beside'], by: ['beside', 'off'], next: ['beside'], '&': ['and'], '+': ['and'], everybody: ['everyone'], all: ['everyone'], rest: ['others'],
  set: ['is set', 'are set'], open: ['is open', 'are open'], free: ['is free', 'are free'], inbounder: ['is the thrower'], thrower: ['is the thrower'], safety: ['is the safety'], trap: ['traps'], double: ['doubles'], deny: ['denies'], must: ['must have'], needs: ['must have'], requires: ['must have'], with: ['at'],
  // Right words with a meaning of their own that no line has: the nearest word would say something else.
  no: [], unless: [], before: [], out: [], back: [], tight: [], high: [], low: [], wide: [], deep: [], fakes: [], fake: [], jabs: [], pinches: [], faces: [], counts: [], bigs: [], whoever: [], screening: [], lanes: [], long: [], looks: [], splits: [], probes: [], ices: [], opposite: [],
  one: [], two: [], rejects: [], refuses: [], bumps: [], change: ['switch'], changes: ['switches'], tags: [], flies: [], digs: [], stunts: [], spins: [], shuffles: [], but: [],
}));
/** Left out, the line would say the opposite, or another place. */
const MEANT: ReadonlySet<string> = new Set(['unless', 'otherwise', 'else', 'before', 'if', 'not', 'never', 'no', 'without', 'high', 'low', 'wide', 'middle', 'fakes', 'fake', 'whoever', 'except', 'until', 'instead of', 'lanes', 'long', 'open', 'empty', 'opposite', 'side']);
export const NUMBER_WORDS = ['one', 'two', 'three', 'four', 'five'];
const SHORT_WORDS = [',', 'to', 'for', 'off', 'and', ':', 'at', 'on', 'with', 'have', 'of', 'after'] as const;
/** No line needs more tries, and a wrong line must not cost more than a keystroke. */
const MOST_TRIES = 24;

const plainWords = (text: string): string =>
  text.toLowerCase().split(/[\s-]+/).filter((atom) => !ARTICLES.has(atom)).join(' ');

/** Signs that nobody types: a picture or a program named `.play`. Looking for what it was meant to say would take seconds. */
const isNoText = (text: string): boolean => /[\u0000-\u0008\u000E-\u001F\uFFFD]/.test(text);

/** Ways to make the line readable, best first, at most `most`. */
export function mends(broken: Broken, most = 3): readonly Mend[] {
  if (broken.token === undefined || isNoText(broken.text)) return [];
  const found: Mend[] = [];
  const add = (mend: Mend | undefined): boolean => {
    if (mend && !found.some((other) => applyEdits(broken.text, other.fix.edits) === applyEdits(broken.text, mend.fix.edits))) found.push(mend);
    return found.length >= most;
  };
  const isOneKeyword = (candidates(broken)[0]?.distance ?? 1) <= 0.2;
  if (!isOneKeyword) for (const mend of blanks(broken)) if (mend) return [mend];
  for (const mend of replacements(broken)) if (add(mend)) return found;
  if (found.length) return found;
  for (const search of [insertions, swaps, quotes]) {
    for (const mend of search(broken)) if (add(mend)) return found;
    if (found.length && found[0]!.kind !== 'quote') return found;
  }
  for (const mend of omissions(broken)) if (add(mend)) return found;
  if (found.length) return found;
  return partialReplacements(broken);
}

interface Candidate {
  readonly from: number;
  readonly to: number;
  readonly words: string;
  /** The keyword before it agreed with a man: in a look `bounce-pass` is a kind of pass, and nobody's verb. */
  readonly asItIs: string;
  readonly distance: number;
}

const candidatesOf = new WeakMap<Broken, readonly Candidate[]>();

function candidates(broken: Broken): readonly Candidate[] {
  const known = candidatesOf.get(broken);
  if (known) return known;
  const found: Candidate[] = [];
  // The wrong word may be the one before: a right word in the wrong place is seen only at its neighbour.
  for (const from of [broken.index, broken.index - 1]) {
    if (from < 0) continue;
    const keywords = [...new Set(broken.wantedBefore(from).filter(({ isKeyword, token }) => isKeyword && /\w/.test(token)).map(({ token }) => token))];
    for (let count = 1; count <= 3 && from + count <= broken.tokens.length; count++) {
      if (from + count <= broken.index) continue;
      if (broken.tokens.slice(from, from + count).some((token) => isPlayer(token) || ['STRING', 'NUMBER', 'SECONDS', 'LENGTH', 'FORM'].includes(token.tokenType.name))) break;
      const word = plainWords(written(broken, from, from + count));
      if (word.length > 40) break;
      const limit = nearEnough(broken, from, count, word);
      const known = OTHER_WORDS.get(word);
      const others = count === 1 && from === broken.index ? (known ?? []) : [];
      // A word with a meaning of its own is no slip of the pen, nor is a phrase that begins with it.
      const digit = NUMBER_WORDS.indexOf(word) + 1;
      if (digit > 0 && count === 1 && broken.wantedBefore(from).some(({ token }) => token === 'PLAYER')) found.push({ from, to: from + 1, words: String(digit), asItIs: String(digit), distance: 0 });
      if (known?.length === 0 || (count > 1 && OTHER_WORDS.get(plainWords(written(broken, from)))?.length === 0)) continue;
      const letters = lettersOf(word);
      for (const keyword of keywords) {
        const meant = others.indexOf(keyword);
        if (meant < 0 && leastKeystrokes(letters, keywordLetters(keyword)) > limit) continue;
        if (isNotHis(broken, keyword, from)) continue;
        const target = keywordAtoms(keyword).join(' ');
        const distance = meant >= 0 ? meant / 10 : keystrokes(word, target, limit);
        // Two letters off and another beginning: another word, not a slip of the pen.
        if (meant < 0 && distance >= 2 && word[0] !== target[0]) continue;
        // A phrase with another first word is another deed.
        if (count > 1 && distance > 2 && target.split(' ')[0] !== word.split(' ')[0]) continue;
        if (distance <= limit && (distance < target.length || meant >= 0)) found.push({ from, to: from + count, words: agreeing(broken, keyword, from), asItIs: keyword, distance: distance + (from === broken.index ? 0 : 0.5) });
      }
    }
  }
  // Letters are left out more often than added.
  found.sort((a, b) => a.distance - b.distance || a.to - a.from - (b.to - b.from) || b.words.length - a.words.length);
  const kept = found.filter((candidate, index) => found.findIndex((other) => other.from === candidate.from && other.to === candidate.to && other.words === candidate.words) === index);
  candidatesOf.set(broken, kept);
  return kept;
}

/** Which letters a word has, as bits, and how many signs but blanks. */
interface Letters {
  readonly bits: number;
  readonly count: number;
}

function lettersOf(word: string): Letters {
  let bits = 0;
  let count = 0;
  for (let at = 0; at < word.length; at++) {
    const code = word.charCodeAt(at);
    if (code === 32) continue;
    count++;
    bits |= 1 << (code >= 97 && code <= 122 ? code - 97 : 26);
  }
  return { bits, count };
}

const lettersOfKeywords = new Map<string, Letters>();
function keywordLetters(keyword: string): Letters {
  let letters = lettersOfKeywords.get(keyword);
  if (letters === undefined) lettersOfKeywords.set(keyword, (letters = lettersOf(keywordAtoms(keyword).join(' '))));
  return letters;
}

/** No fewer keystrokes lie between two words than one has letters that the other has not: that rules most of a thousand keywords out at once. */
function leastKeystrokes(word: Letters, target: Letters): number {
  let missing = 0;
  for (let bits = target.bits & ~word.bits; bits !== 0; bits &= bits - 1) missing++;
  return Math.max(missing, Math.abs(word.count - target.count));
}

/** How many keystrokes off a word may be: one that the grammar has is seldom mistyped, and farther off it says something else. */
function nearEnough(broken: Broken, from: number, count: number, word: string): number {
  if (count === 1 && broken.tokens[from]!.tokenType.name !== 'UNKNOWN') return 1;
  return word.length < 3 && !/^o/.test(word) ? 1 : reach(word);
}

const OF_A_DEFENDER: ReadonlySet<string> = new Set(['defend', 'move', 'seal', 'rebound', 'hold', 'event']);

/** A defender's verb for 1 to 5, or a shot for a defender. */
function isNotHis(broken: Broken, keyword: string, index: number): boolean {
  const verb = verbOf(keyword);
  const actor = broken.tokens.findLast((token, at) => at < index && isPlayer(token) && (at === index - 1 || token.tokenType.name === 'SUBJECT'));
  if (!verb || !actor) return false;
  return actor.image.startsWith('x') ? !OF_A_DEFENDER.has(verb.class) : verb.class === 'defend';
}

/** Edit distance, with letters swapped or a blank left out counting less than another letter. */
function keystrokes(word: string, target: string, limit: number): number {
  if (word !== target && word.replaceAll(' ', '') === target.replaceAll(' ', '')) return 0.2;
  const distance = editDistance(word, target, limit);
  return distance === 1 && word.length === target.length && [...word].sort().join('') === [...target].sort().join('') ? 0.8 : distance;
}

/** The verb in the number of its subject: `4 scren` → screens. */
function agreeing(broken: Broken, keyword: string, index: number): string {
  const verb = verbOf(keyword);
  if (!verb) return keyword;
  const other = otherNumber.get(keyword);
  // `leave` also begins a header, where `leaves` is no word.
  if (other === undefined || (verb.number === 'singular') === singularAt(broken, index)) return keyword;
  return broken.wantedBefore(index).some(({ token }) => token === other) ? other : keyword;
}

/** A blank left out (`3cuts`, `torim`) or typed a letter too early or too late (`lefte lbow`). */
function* blanks(broken: Broken): Generator<Mend | undefined> {
  const { token, index } = broken;
  if (!token || token.tokenType.name !== 'UNKNOWN' || token.startOffset === broken.lexed.openQuote) return;
  const word = written(broken, index);
  if (word.length > 24) return;
  const mending = (to: number, words: string): Mend | undefined => {
    const edits = [{ at: token.startOffset, to: endOf(broken.tokens[to - 1]!), text: words }];
    const fix = tried(broken, message('Write {words}', { words: said(words.trim()) }), edits);
    return fix && { kind: 'blank', from: index, to, words: words.trim(), fix };
  };
  const next = broken.tokens[index + 1];
  if (next && /^ [^"]/.test(broken.text.slice(endOf(token), endOf(next)))) {
    const after = written(broken, index + 1);
    yield mending(index + 2, `${word.slice(0, -1)} ${word.slice(-1)}${after}`);
    yield mending(index + 2, `${word}${after.slice(0, 1)} ${after.slice(1)}`);
  }
  for (let at = 1; at < word.length; at++) if (!/[\uDC00-\uDFFF]/.test(word[at]!)) yield mending(index + 1, `${word.slice(0, at)} ${word.slice(at)}`);
}

function* replacements(broken: Broken): Generator<Mend | undefined> {
  let nearest: number | undefined;
  for (const candidate of candidates(broken).slice(0, MOST_TRIES)) {
    if (nearest !== undefined && candidate.distance > nearest + 0.6) return;
    const mend = replacing(broken, candidate, true) ?? (candidate.asItIs === candidate.words ? undefined : replacing(broken, { ...candidate, words: candidate.asItIs }, true));
    if (mend && nearest === undefined) nearest = candidate.distance;
    yield mend;
  }
}

/** With a second fault further on, a word that at least moves the first one. */
function partialReplacements(broken: Broken): readonly Mend[] {
  for (const candidate of candidates(broken).slice(0, 6)) {
    const mend = replacing(broken, candidate, false)!;
    if (candidate.from === broken.index && readsUpTo(applyEdits(broken.text, mend.fix.edits)) > broken.index + 1) return [mend];
  }
  return [];
}

function replacing(broken: Broken, { from, to, words }: Candidate, whole: boolean): Mend | undefined {
  const edits = [{ at: broken.tokens[from]!.startOffset, to: endOf(broken.tokens[to - 1]!), text: words }];
  const title = message('Write {words}', { words: said(words.trim()) });
  const fix = whole ? tried(broken, title, edits) : { title, edits };
  return fix && { kind: 'replace', from, to, words, fix };
}

function* insertions(broken: Broken): Generator<Mend | undefined> {
  const { index, token } = broken;
  if (!token || token.tokenType.name === 'UNKNOWN') return;
  const isTaken = isPlayer(token) && /^(?:pass|hand-off|throw-in)$/.test(verbOf(broken.tokens[index - 1]?.image ?? '')?.class ?? '');
  // `1 passes 4, 4 …`: he is passed to, and does not begin another link.
  for (const word of isTaken ? (['to', ...SHORT_WORDS] as const) : SHORT_WORDS) {
    if (!broken.wanted.some((want) => want.token === word)) continue;
    // `to wing left` is the wrong way round, not two places.
    if ((word === 'to' || word === 'on') && (token.image === 'left' || token.image === 'right')) continue;
    // A screen or a pass for an opponent is never meant.
    if ((word === 'for' || word === 'to') && token.image.startsWith('x') && isPlayer(token)) continue;
    const before = broken.tokens[index - 1];
    // Between who looks and what he does stands a colon; a comma there would only be taken for one.
    if (word === ',' && broken.tokens[0]?.image === 'look' && !broken.tokens.slice(0, index).some(({ image }) => image === ':')) continue;
    // `goes under the hand-off`: what a defender goes under is no screen of his men.
    if (word === 'off' && before !== undefined && verbOf(before.image)?.class === 'defend') continue;
    const tight = (word === ',' || word === ':') && before !== undefined;
    const at = tight ? endOf(before) : startWithArticles(broken, index);
    const text = tight ? word : `${word} `;
    const fix = tried(broken, message('Put "{word}" before {words}', { word, words: said(written(broken, index)) }), [{ at, to: at, text }]);
    yield fix && { kind: 'insert', from: index, to: index + 1, words: word === ',' || word === ':' ? `${written(broken, index - 1)}${word} ${written(broken, index)}` : `${word} ${written(broken, index)}`, fix };
  }
}

function* swaps(broken: Broken): Generator<Mend | undefined> {
  for (const from of [broken.index, broken.index - 1]) {
    const first = broken.tokens[from];
    const second = broken.tokens[from + 1];
    if (!first || !second || first.image === 'to') continue;
    const words = `${written(broken, from + 1)} ${written(broken, from)}`;
    const fix = tried(broken, message('Write {words}', { words: said(words.trim()) }), [{ at: first.startOffset, to: endOf(second), text: words }]);
    yield fix && { kind: 'swap', from, to: from + 2, words, fix };
  }
}

function* omissions(broken: Broken): Generator<Mend | undefined> {
  // Where a verb is missing, leaving out the word would leave no play.
  if (broken.wanted.some(({ path }) => path.at(-1)?.endsWith('Verb') === true)) return;
  for (const count of [1, 2]) {
    const last = broken.tokens[broken.index + count - 1];
    if (!last || !broken.token || isPlayer(broken.token)) return;
    // What stands there may hold what the coach means: leaving out a verb or a name changes the play.
    if (broken.tokens.slice(broken.index, broken.index + count).some((token) => isPlayer(token) || lineParser().lexer.verbs.has(token.tokenType.name))) return;
    if (broken.tokens.slice(broken.index, broken.index + count).some(({ image }) => MEANT.has(image.toLowerCase()))) return;
    const next = broken.tokens[broken.index + count];
    const before = broken.tokens[broken.index - 1];
    const edit = next ? { at: broken.token.startOffset, to: next.startOffset, text: '' } : { at: before ? endOf(before) : broken.token.startOffset, to: endOf(last), text: '' };
    const fix = tried(broken, message('Leave out {words}', { words: said(written(broken, broken.index, broken.index + count)) }), [edit]);
    yield fix && { kind: 'leave out', from: broken.index, to: broken.index + count, words: '', fix };
  }
}

/** Quotes round the words that look like a name: the fewest that make the line readable. */
export function* quotes(broken: Broken): Generator<Mend | undefined> {
  for (const from of [broken.index, broken.index - 1, broken.index - 2]) {
    if (from < 0 || !broken.tokens[from]) continue;
    const names = broken.wantedBefore(from).filter(({ token, path }) => token === 'STRING' && path[0] !== 'Entry' && path[0] !== 'Placing');
    if (!names.length) continue;
    // Nearly everywhere a spot of the coach's own or a look's label could stand: only for a word that is no other.
    const isOwnName = names.every(({ path }) => path.at(-1) === 'own' || path.at(-1) === 'label');
    if (isOwnName && (from !== broken.index || broken.token?.tokenType.name !== 'UNKNOWN')) continue;
    const last = broken.tokens.length;
    const ends = [...Array(Math.min(6, last - from)).keys()].map((count) => from + count + 1).filter((to) => to > broken.index);
    if (!ends.includes(last)) ends.push(last);
    // A spot’s name is one word here: several say something else, and quotes would only hide it.
    for (const to of isOwnName ? ends.slice(0, 1) : ends) {
      const at = startWithArticles(broken, from);
      const end = endOf(broken.tokens[to - 1]!);
      // `note: be patient`
      const words = broken.text.slice(at, end).replaceAll(/["“”]/g, '').replace(/^[:\s]+/, '');
      if (words === '') continue;
      const fix = tried(broken, message('Put "{words}" in quotes', { words }), [{ at, to: end, text: `"${words}"` }]);
      if (fix) {
        yield { kind: 'quote', from, to, words, isOwnName, fix };
        return;
      }
    }
  }
}

/** Whether a word near the wrong one makes the line readable: a slip of the pen. */
export function isSlip(broken: Broken): boolean {
  const [mend] = mends(broken, 1);
  return mend !== undefined && ['replace', 'blank', 'swap', 'insert'].includes(mend.kind);
}

/** Whether the last word is the beginning of a word that may stand there. */
export function isBegun(broken: Broken): boolean {
  if (broken.token === undefined || broken.index !== broken.tokens.length - 1) return false;
  const word = written(broken, broken.index).toLowerCase().replaceAll('-', ' ');
  return broken.wanted.some(({ token, isKeyword }) => isKeyword && token !== word && keywordAtoms(token).join(' ').startsWith(word));
}
