// A look told in a coach's own words: `look 1: if X5 stays back, he shoots the jumper at the elbow`, `look 5 slip layup frm 3`. Its words are read
// by sort, and the line is put together anew: who passes and how, what he does, how it ends. What the notation has no words for is what the look is
// called by, in quotes, so that nothing the coach said is lost. Where it stays open how it ends, or another man has a part that cannot be read, there is no mend.
import { message } from '../../message/message.ts';
import { reads, written, type Broken } from './broken-line.ts';
import { isBegun, isSlip, NUMBER_WORDS } from './mend.ts';
import { FINISHES } from './said-of-looks.ts';
import type { LineFix } from '../line-fault.ts';
import { rewriting, unquoted, wholeLine, word, type SaidOtherwise } from './saying.ts';
import { PLAIN_ENDINGS, sortAt, toTheRing, wordsIn, type SaidWord, type Sorted } from './words-of-a-look.ts';
import { verbOf } from '../verbs.ts';

const LONGEST = 240;
const HEAD = /^look (?:for )?([1-5](?:(?: or |, ?)[1-5])*)(?: "([^"]*)")?(?=[\s:]|$)/i;
/** They turn round what is said, or begin what is done instead. */
const TURNS: ReadonlySet<string> = new Set("not no never without instead otherwise else but doesn't don't can't cannot won't isn't".split(' '));
const BEGINS_A_CONDITION: ReadonlySet<string> = new Set(['if', 'when', 'whenever', 'once', 'as', 'while', 'unless', 'until', 'till', 'before', 'after', 'because', 'since', 'only', 'where', 'provided']);
const OF_THE_DEFENCE = /^(?:x[1-5]|nobody|no one|they|their|defen[cs]e|defenders?|everybody|everyone|zone|help|helper|trap)$/;
const SEPARATES: ReadonlySet<string> = new Set([',', ';', '.', 'and', 'then']);
const SUBJECT = /^(?:he|she|they|[1-5])$/;
const BEFORE_A_MAN: ReadonlySet<string> = new Set(['to', 'on', 'with', 'at', 'off', 'for', 'from', 'of', 'by', 'and', 'or', 'double', 'onto']);

/** Who is fouled takes no look. */
const OF_A_FOUL = /^(?:foul(?:s|ed)?|free|misses|miss)$/;

/** What a look says, as far as it is known. */
interface Told {
  readonly text: string;
  readonly lookers: readonly string[];
  /** What can be read stays as the coach wrote it. */
  readonly asSaid: boolean;
  readonly parts: string[];
  readonly remarks: string[];
  passAt: number | undefined;
  /** `lob or bounce`: a look of its own. */
  otherPass: string | undefined;
  passer: string | undefined;
  receiver: string | undefined;
  endings: string[];
  either: boolean;
  place: string | undefined;
  /** As the coach wrote it. */
  placeSaid: string | undefined;
  /** It depends on something. */
  isConditional: boolean;
}

export function toldInOwnWords(broken: Broken): SaidOtherwise | undefined {
  const said = wholeLine(broken);
  if (word(broken.tokens[0]) !== 'look' || said.length > LONGEST || isMisspelt(broken)) return undefined;
  let look: string | undefined;
  let fix: LineFix | undefined;
  // A sentence that can be read by itself may not stand beside the others.
  for (const asSaid of [true, false]) {
    look = inNotation(said, asSaid);
    // Only the joint is wrong: that is told where it stands.
    fix = look === undefined || bare(look) === bare(said) ? undefined : rewriting(broken, look);
    if (fix) break;
  }
  if (!fix) return undefined;
  const colon = broken.tokens.findIndex(({ image }) => image === ':');
  return { code: 'misplaced-word', from: Math.min(colon < 0 ? 2 : colon + 1, broken.tokens.length - 1), to: broken.tokens.length, message: message('A look says who scores, and behind a colon how he gets the ball, what he does and how it ends. What is only said of it stands in quotes: {look}.', { look: look! }), fixes: [fix] };
}

const bare = (look: string): string => look.toLowerCase().replaceAll(/,| and\b|-/g, '');

/** A slip of the pen is mended by the nearest word, half a word by the rest of it. */
function isMisspelt(broken: Broken): boolean {
  const { token } = broken;
  if (token === undefined) return false;
  const words = wordsIn(written(broken, broken.index));
  // Written short is not written wrong: `frm 3`, `two dribbles`.
  const isKnown = (said: SaidWord): boolean => NUMBER_WORDS.includes(said.word) || said.word.length !== said.to - said.at || sortAt([said], 0, undefined).is !== 'other';
  if (words.every(isKnown)) return false;
  return isBegun(broken) || (token.tokenType.name === 'UNKNOWN' && isSlip(broken));
}

/** The look as the notation has it. */
function inNotation(said: string, asSaid: boolean): string | undefined {
  const head = HEAD.exec(said);
  if (head === null || said.slice(head[0].length).includes('"')) return undefined;
  const lookers = head[1]!.match(/[1-5]/g)!;
  const behind = said.slice(head[0].length);
  const colon = behind.indexOf(':');
  if (colon >= 0 && behind.includes(':', colon + 1)) return undefined;
  const who = `look ${head[1]!}`;
  const [pin, tail] = colon < 0 ? pinAndTail(who, behind.trim()) : [behind.slice(0, colon).trim(), behind.slice(colon + 1).trim()];
  const told: Told = { text: tail, lookers, asSaid, parts: [], remarks: [], passAt: undefined, otherPass: undefined, passer: undefined, receiver: undefined, endings: [], either: false, place: undefined, placeSaid: undefined, isConditional: false };
  const isPinRead = pin === '' || reads(`${who} ${pin}: layup`);
  if (!isPinRead && wordsIn(pin).some(({ word }) => TURNS.has(word))) return undefined;
  if (!hear(told)) return undefined;
  const ending = endingOf(told);
  const done = ending === undefined ? undefined : tailsOf(told, ending);
  if (done === undefined) return undefined;
  const names = [head[2], isPinRead ? undefined : pin, ...told.remarks].flatMap((name) => (name === undefined || name === '' ? [] : [uncapitalised(unquoted(name))]));
  if (done[0] === '' && !told.isConditional) return undefined;
  const look = `${who}${names.length === 0 ? '' : ` "${[...new Set(names)].join(', ')}"`}${isPinRead && pin !== '' ? ` ${pin}` : ''}`;
  return done.map((each) => (each === '' ? look : `${look}: ${each}`)).join(', ');
}

const uncapitalised = (name: string): string => (/^[A-Z][a-z]/.test(name) ? `${name[0]!.toLowerCase()}${name.slice(1)}` : name);

/** Without a colon: the longest beginning that says when or where. */
function pinAndTail(who: string, said: string): readonly [pin: string, tail: string] {
  const words = [...said.matchAll(/\S+/g)].slice(0, 5);
  if (!/^(?:(?:on|in|at|off|as|when|after)\b|\w+ing\b)/i.test(said)) return ['', said];
  for (const end of words.reverse().map((match) => match.index + match[0].length)) {
    if (reads(`${who} ${said.slice(0, end)}: layup`)) return [said.slice(0, end), said.slice(end).trim()];
  }
  return ['', said];
}

/** Hears a look's sentences one by one; whether each could be made something of. */
function hear(told: Told): boolean {
  const words = wordsIn(told.text);
  if (words.some(({ word }) => OF_A_FOUL.test(word))) return false;
  let from = 0;
  while (from < words.length) {
    if (SEPARATES.has(words[from]!.word)) {
      from++;
      continue;
    }
    const to = endOfClause(words, from);
    if (!hearClause(told, words.slice(from, to))) return false;
    from = to;
  }
  return true;
}

const isCondition = (words: readonly SaidWord[]): boolean => BEGINS_A_CONDITION.has(words[0]!.word) || (words[0]!.word === 'in' && words[1]?.word === 'case');

function endOfClause(words: readonly SaidWord[], from: number): number {
  const those = words.slice(from);
  if (isCondition(those)) return from + endOfCondition(those);
  for (let at = from + 1; at < words.length; at++) {
    const { word } = words[at]!;
    if (BEGINS_A_CONDITION.has(word) && toTheRing(words, at) === undefined) return at;
    if (!SEPARATES.has(word)) continue;
    // `stop and pop` is one word.
    if (word !== 'and' || sortAt(words, at - 1, undefined).to < at + 2) return at;
  }
  return words.length;
}

/** At its comma, or where somebody does something: `if she's all alone she can shoot`. */
function endOfCondition(words: readonly SaidWord[]): number {
  const comma = words.findIndex(({ word }) => /^[,;.]$|^then$/.test(word));
  if (comma >= 0) return comma;
  for (let at = 3; at < words.length - 1; at++) {
    if (!SUBJECT.test(words[at]!.word) || BEFORE_A_MAN.has(words[at - 1]!.word)) continue;
    const next = sortAt(words, at + 1, undefined);
    if (/^(can|could|may|might|should|just)$/.test(words[at + 1]!.word) || ((next.is === 'pass' || next.is === 'ending') && words[at + 1]!.word.endsWith('s'))) return at;
  }
  return words.length;
}

const rawOf = (told: Told, words: readonly SaidWord[]): string => told.text.slice(words[0]!.at, words.at(-1)!.to);

function hearClause(told: Told, words: readonly SaidWord[]): boolean {
  const raw = rawOf(told, words);
  if (isCondition(words)) {
    told.remarks.push(raw);
    told.isConditional = true;
    // `only if it's a layup`
    const last = sortAt(words, words.length - 1, undefined);
    if (words.some(({ word }) => /^(it's|it|there's)$/.test(word)) && last.is === 'ending' && words[0]!.word === 'only') told.endings.push(last.words);
    return true;
  }
  if (words.some(({ word }) => TURNS.has(word))) return false;
  const isOfTheDefence = OF_THE_DEFENCE.test(words[0]!.word) || (/^(his|her|the|their)$/.test(words[0]!.word) && /^(man|defender|guy|big|guard|bigs|help)$/.test(words[1]?.word ?? ''));
  const heard = isOfTheDefence ? undefined : hearWords(told, words);
  if (heard !== undefined && heard.remarks.length === 0) return take(told, words, heard);
  if (told.asSaid && reads(`look ${told.lookers[0]!}: ${raw}`)) {
    told.parts.push(raw);
    return true;
  }
  if (isOfTheDefence) {
    told.remarks.push(raw);
    return true;
  }
  return heard !== undefined && take(told, words, heard);
}

interface Heard {
  readonly parts: readonly Sorted[];
  readonly passer: string | undefined;
  readonly remarks: readonly string[];
  /** The deed as the notation has it, with what belongs to it. */
  readonly deeds: ReadonlyMap<Sorted, string>;
}

/** Nothing where another man does what is no pass. */
function hearWords(told: Told, words: readonly SaidWord[]): Heard | undefined {
  const parts: Sorted[] = [];
  const remarks: string[] = [];
  const deeds = new Map<Sorted, string>();
  let passer: string | undefined;
  let from = 0;
  const [first, second] = words;
  if (/^[1-5]$/.test(first!.word) && second !== undefined) {
    if (/^(?:dribbles?|hard|bounces?)$/.test(second.word)) {
      remarks.push(rawOf(told, words.slice(0, 2)));
      from = 2;
    } else if (told.lookers.includes(first!.word)) {
      from = 1;
    } else if (second.word === 'to' && told.lookers.includes(words[2]?.word ?? '')) {
      passer = first!.word;
      from = 3;
    } else if (sortAt(words, 1, undefined).is === 'pass') {
      passer = first!.word;
      from = 1;
    } else if (!(first!.word === '3' && sortAt(words, 0, undefined).is === 'ending')) {
      return undefined;
    }
  }
  while (from < words.length) {
    const sorted = sortAt(words, from, parts.at(-1));
    const isOthers = sorted.is === 'other';
    if (!isOthers && !isRemark(words, from, sorted)) {
      if (sorted.is === 'deed') from = hearDeed(told, words, sorted, remarks, deeds);
      else from = sorted.to;
      if (sorted.is !== 'small') parts.push(sorted);
      continue;
    }
    const to = endOfRemark(words, from, isOthers);
    if (words.slice(from, to).some(({ word }) => /^[1-5]$/.test(word) && !told.lookers.includes(word))) return undefined;
    remarks.push(rawOf(told, trimmed(words.slice(from, to))));
    from = to;
  }
  // What is said in bits, or in one word, is kept with what it is said of.
  if (remarks.length > 1 || (remarks.length === 1 && !/[ -]/.test(remarks[0]!))) remarks.splice(0, remarks.length, rawOf(told, words));
  return { parts, passer, remarks, deeds };
}

/** Without the little words that lead on to what comes next. */
function trimmed(words: readonly SaidWord[]): readonly SaidWord[] {
  const last = words.findLastIndex(({ word }) => !/^(?:the|a|an|for|with|to|and)$/.test(word));
  return words.slice(0, Math.max(last + 1, 1));
}

/** Up to the next words that can be read; whoever else does something, does it to the end, or to what is told the team: `double comes kick it`. */
function endOfRemark(words: readonly SaidWord[], from: number, isOthers: boolean): number {
  const isAnothers = isOthers && words[from + 1] !== undefined && verbOf(words[from + 1]!.word)?.number === 'singular' && !LEADS.test(words[from]!.word);
  let to = from + 1;
  // `on the run`: whatever it is, it goes with its little word.
  if (LEADS.test(words[from]!.word)) {
    while (ARTICLE.test(words[to]?.word ?? '')) to++;
    to++;
  }
  while (to < words.length) {
    const next = sortAt(words, to, undefined);
    const isNoun = next.is === 'deed' && verbOf(words[to]!.word)?.number !== 'singular' && sortAt(words, to - 1, undefined).is === 'other';
    if (/^(?:ending|pass|deed|from|or)$/.test(next.is) && !isNoun && !(isAnothers && (next.is === 'deed' || words[to]!.word.endsWith('s')))) break;
    to = next.to;
  }
  return Math.min(to, words.length);
}

const LEADS = /^(?:to|on|in|at|off|with|for|over|under|through|by|past|around|along|across|from|into|behind|near|toward|towards|out)$/;
const ARTICLE = /^(?:the|a|an|his|her|their)$/;

/** A little word before what is neither a pass nor how it ends: `to the corner`, `over him`, `on the run`; but `with a layup`, `off a lob from 1`, `at the elbow`. */
function isRemark(words: readonly SaidWord[], from: number, { is }: Sorted): boolean {
  if (is !== 'small' || !LEADS.test(words[from]!.word)) return false;
  let at = from + 1;
  while (ARTICLE.test(words[at]?.word ?? '')) at++;
  if (at >= words.length) return false;
  const next = sortAt(words, at, undefined);
  return next.is === 'other' || next.is === 'place' || (next.is === 'deed' && at > from + 1);
}

/** A deed takes what stands behind it, if it can be read so; else that is a remark, and where it ends is given. */
function hearDeed(told: Told, words: readonly SaidWord[], deed: Sorted & { readonly words: string }, remarks: string[], deeds: Map<Sorted, string>): number {
  let to = deed.to;
  while (to < words.length) {
    const next = sortAt(words, to, undefined);
    if (/^(ending|pass|from|or)$/.test(next.is)) break;
    to = next.to;
  }
  deeds.set(deed, deed.words);
  const behind = deed.to < to ? trimmed(words.slice(deed.to, to)) : [];
  if (behind.length === 0 || behind.every(({ word }) => /^(the|a|an|it|ball|off|in|out|up|hard|strong|quick|for|with)$/.test(word))) return to;
  const whole = `${deed.words} ${rawOf(told, behind)}`;
  if (reads(`look ${told.lookers[0]!}: ${whole}, layup`)) deeds.set(deed, whole);
  else remarks.push(rawOf(told, trimmed(words.slice(deed.from, to))));
  return to;
}

function take(told: Told, words: readonly SaidWord[], { parts, passer, remarks, deeds }: Heard): boolean {
  told.remarks.push(...remarks);
  if (passer !== undefined) told.passer = passer;
  for (const [at, part] of parts.entries()) {
    if (part.is === 'deed') told.parts.push(deeds.get(part)!);
    if (part.is === 'ending') told.endings.push(part.words);
    if (part.is === 'or') {
      const [one, other] = [parts[at - 1], parts[at + 1]];
      if (one?.is === 'pass' && other?.is === 'pass') told.otherPass = other.words;
      else if (one?.is === 'ending' && other?.is === 'ending') told.either = true;
      else return false;
    }
    if (part.is === 'place') {
      told.place ??= part.words;
      told.placeSaid ??= rawOf(told, words.slice(part.from, part.to));
    }
    if (part.is === 'from') {
      if (told.passer !== undefined && told.passer !== part.man) return false;
      told.passer = part.man;
    }
    if (part.is === 'to') {
      if (told.receiver !== undefined && told.receiver !== part.man) return false;
      told.receiver = part.man;
    }
    if (part.is === 'pass' && parts[at - 1]?.is !== 'or') {
      if (told.passAt !== undefined) return false;
      told.passAt = told.parts.push(part.words) - 1;
    }
  }
  return true;
}

/** What stands behind the colon, of each of two passes; nothing where two things are said. */
function tailsOf(told: Told, ending: string): readonly string[] | undefined {
  const { parts, passer, receiver, lookers, otherPass } = told;
  if (passer !== undefined && lookers.includes(passer)) return undefined;
  if (passer !== undefined && told.passAt === undefined) told.passAt = parts.push('pass') - 1;
  if (receiver !== undefined && !lookers.includes(receiver)) return handedOn(told, ending);
  const kinds = told.passAt === undefined ? [undefined] : [parts[told.passAt]!, ...(otherPass === undefined ? [] : [otherPass])];
  return kinds.map((kind) => [...parts.map((part, at) => (at === told.passAt ? `${kind!}${passer === undefined ? '' : ` from ${passer}`}` : part)), ...(ending === '' ? [] : [ending])].join(', '));
}

/** Of several the one that says most; with its place, where it has one. */
function endingOf({ endings, either, place, placeSaid, parts, remarks, lookers }: Told): string | undefined {
  const kinds = [...new Set(endings)];
  // `drop step, hook`: the one is a deed of the other.
  const steps = kinds.filter((kind) => kinds.length > 1 && /^(?:drop step|up and under)$/.test(kind));
  const told = kinds.filter((kind) => !PLAIN_ENDINGS.has(kind) && !steps.includes(kind));
  parts.push(...steps);
  if (told.length > 1 && !either) return undefined;
  const plain = kinds.filter((kind) => !steps.includes(kind));
  const ending = told.length > 0 ? told.join(' or ') : (plain.find((kind) => kind !== 'shoots') ?? plain[0] ?? '');
  if (place === undefined) return ending;
  const there = `${ending} at ${place}`;
  // Where else would it be?
  if (/rim|basket/.test(place) && /^(?:layup|dunk|finish|score|tip-in|put-back)/.test(ending)) return ending;
  if (!either && /^(?:three|jumper|shoots|pull.up|floater|hook|runner|bank shot)$/.test(ending) && !parts.some((part) => /^(?:drives|dribbles|goes|attacks)\b/.test(part)) && reads(`look ${lookers[0]!}: ${there}`)) return there;
  remarks.push(placeSaid!);
  return ending;
}

/** `look 2: catch, high-low to 4, layup`: he gets it, and passes on. */
function handedOn({ parts, passer, receiver, passAt, remarks }: Told, ending: string): readonly string[] | undefined {
  const finishes = FINISHES.get(ending === 'shoots' ? 'shot' : ending === 'finish' ? 'layup' : ending);
  if (passer !== undefined || passAt !== parts.length - 1 || finishes === undefined) return undefined;
  const kind = parts[passAt]!;
  if (kind !== 'pass') remarks.push(kind);
  return [['pass', ...parts.slice(0, -1), `passes to ${receiver!}`, `${receiver!} ${finishes}`].join(', ')];
}
