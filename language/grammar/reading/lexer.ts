import { createToken, type TokenType } from 'chevrotain';
import { SetLineTerminals } from '../generated/ast.ts';
import type { LineWords } from './line-tables.ts';
import type { LineToken } from '../line-token.ts';
import { readOver } from '../rewording/read-over.ts';
import { reworded } from '../rewording/reworded.ts';
import { verbOf } from '../verbs.ts';

/** Where a word begins, the verb it is read as, and where the words end that the verb stands for. */
export type VerbsRead = ReadonlyMap<number, { readonly image: string; readonly to: number }>;

export interface LexedLine {
  readonly tokens: LineToken[];
  /** Columns of `# …`, the mark included. */
  readonly comment?: { readonly at: number; readonly to: number };
  /** Column of a quote that is never closed. */
  readonly openQuote?: number;
}

export interface LineLexer {
  readonly definition: { [name: string]: TokenType };
  /** Names of the keywords that are verbs of a player. */
  readonly verbs: ReadonlySet<string>;
  /** `verbs`: words that are read as verbs, by where they begin. */
  readonly lex: (text: string, verbs?: VerbsRead) => LexedLine;
  /** Marks each player directly before a verb as its subject. */
  readonly tagged: (tokens: LineToken[]) => LineToken[];
}

/** A word or a sign that has been read: what it is and where it ends. Without a type it says nothing. */
interface Read {
  readonly type: TokenType | undefined;
  readonly image: string;
  readonly to: number;
}

interface Phrase {
  readonly next: Map<string, Phrase>;
  token?: TokenType;
  /** Before this atom stands a hyphen, not a blank: `5-out` is not read out of `4 and 5 out`. */
  hyphened?: boolean;
}

/** A time in words: `for a second`, `half a second`, `two counts`, `a count of two`, `a second and a half`. A count is a second; common practice, no source. */
const TIME_IN_WORDS = /(?:(?:a\s+(?:quick\s+|slow\s+|full\s+|good\s+)?)?count\s+of\s+(one|two|three|four|five)|(half|a\s+half|a\s+couple|an?|one|two|three|four|five|six|seven|eight|nine|ten)(\s+and\s+a\s+half)?(?:(?:\s+(?:an?|of))?\s+(?:seconds?|secs?|counts?|beats?)(\s+and\s+a\s+half)?|(?=\s+(?:left|to\s+go|on\s+the\s+(?:shot\s+)?clock))))(?![\p{L}\p{N}_-])/iuy;
const SECONDS_IN_WORDS: { readonly [word: string]: number } = { half: 0.5, 'a half': 0.5, 'a couple': 2, a: 1, an: 1, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10 };

function secondsSaid([, countedTo, count = countedTo, half, halfBehind]: RegExpExecArray): string {
  return `${SECONDS_IN_WORDS[count!.toLowerCase().replaceAll(/\s+/g, ' ')]! + (half === undefined && halfBehind === undefined ? 0 : 0.5)} s`;
}

/** Words that may stand or not, everywhere but in quotes. */
export const ARTICLES: ReadonlySet<string> = new Set(['the', 'a', 'an', 'his', 'her', 'their', 'our', 'your', 'my']);
/** Women and girls play it too: words that say the same of her. */
const OF_HER: ReadonlyMap<string, string> = new Map(Object.entries({ she: 'he', "she's": "he's", herself: 'himself', girl: 'man', woman: 'man', towards: 'toward', till: 'until' }));
/** `her` is `his` before what she has, and `him` where nothing of hers follows. */
const HER_ALONE = /her(?=\s*(?:$|[,.;!:#]|(?:and|then|or|on|at|in|to|into|off|for|as|when|once|after|until|there|again|through|along|over|under|across|down|up|around|high|low|going|coming|cutting|rolling|running|diving|popping|flashing|curling|an?)(?![\p{L}\p{N}_'’-])))/iuy;
const JOINT = /[ \t]+|-/y;
/** `a ball screen on her left side`: of the man it is set for, not of the floor. */
const ON_HIS_SIDE = /(?:his|her)\s+(?:left|right)(?:\s+(?:side|hand|shoulder))?(?![\p{L}\p{N}_'’-])/iuy;
const NAMES_FOR_A_LOOK: ReadonlySet<string> = new Set(['look', 'for', ',', 'or', 'him', 'them']);
/** `till she's gone`. */
const SHE_IS = /s?he(?=['’]s (?:gone|by|past|through|open|free|clear|off)(?![\p{L}\p{N}_'’-]))/iuy;
/** `once 3's gone`: is, where no noun follows. */
const CONTRACTED = /['’]s(?= (?:gone|by|past|through|set|open|free|there|clear|out|off|in|down|up|cutting|rolling|\w+ing)(?![\p{L}\p{N}_'’-]))/iuy;
/** One of the words behind `tags`, to the next comma. */
const LABEL_WORDS = /[^\s,"“”#][^,"“”#]*/y;
const ATOM = /[\p{L}\p{N}_'’]+/uy;
const TERMINALS_IN_ORDER = ['SECONDS', 'SPEED', 'LENGTH', 'FORM', 'XPLAYER', 'PLAYER', 'NEGATIVE', 'NUMBER'] as const;

const atomsOf = new Map<string, readonly string[]>();
/** The atoms of a keyword of the grammar without its articles: `on the clock` → on, clock. */
export function keywordAtoms(keyword: string): readonly string[] {
  let atoms = atomsOf.get(keyword);
  if (!atoms) atomsOf.set(keyword, (atoms = keyword.split(/[ -]+/).filter((atom) => !ARTICLES.has(atom))));
  return atoms;
}

/**
 * The lexer of a line, built from the grammar's own keywords and terminals. It knows no newline.
 * Blanks, a hyphen and articles inside a phrase may vary: `back-screens`, `back screens`; `on the clock`, `on clock`.
 */
export function buildLexer(words: LineWords): LineLexer {
  const definition: { [name: string]: TokenType } = {};
  const verbs = new Set(words.verbs);
  const root: Phrase = { next: new Map() };
  for (const keyword of words.keywords) {
    const token = createToken({ name: keyword });
    definition[keyword] = token;
    if (!/[\w]/.test(keyword)) continue;
    const hasNumber = /\d-|-\d/.test(keyword);
    let phrase = root;
    for (const atom of keywordAtoms(keyword)) {
      let next = phrase.next.get(atom);
      if (!next) phrase.next.set(atom, (next = { next: new Map() }));
      phrase = next;
      if (hasNumber && keyword.includes(`-${atom}`)) phrase.hyphened = true;
    }
    if (phrase.token) throw new Error(`the keywords "${phrase.token.name}" and "${keyword}" are the same words`);
    phrase.token = token;
  }
  // `backcuts`, `downscreens`: without the hyphen.
  const glued = new Map<string, TokenType>();
  for (const keyword of words.keywords) {
    const word = keyword.replaceAll('-', '');
    if (/^[a-z]+(-[a-z]+)+$/.test(keyword) && definition[word] === undefined) glued.set(word, definition[keyword]!);
  }
  for (const name of words.terminals) definition[name] = createToken({ name });
  const unknown = (definition['UNKNOWN'] = createToken({ name: 'UNKNOWN' }));
  const subject = definition['SUBJECT']!;
  const label = definition['LABEL']!;
  const string = definition['STRING']!;
  const players = new Set([definition['PLAYER']!, definition['XPLAYER']!]);
  const measures = TERMINALS_IN_ORDER.map((name) => ({
    token: definition[name]!,
    pattern: new RegExp(`(?:${SetLineTerminals[name].source})(?![\\p{L}\\p{N}_]|\\.\\d)`, 'iuy'),
  }));
  const closedString = new RegExp(SetLineTerminals.STRING.source, 'uy');

  const atomAt = (text: string, at: number): string | undefined => {
    ATOM.lastIndex = at;
    return ATOM.exec(text)?.[0];
  };

  /** The longest keyword that starts at `at`, or nothing. `isStart`: behind `from` a formation needs no hyphens (`from 5 out`). */
  function phraseAt(text: string, at: number, isStart: boolean): Read | undefined {
    let phrase = root;
    let best: Read | undefined;
    let position = at;
    let joint = '';
    for (;;) {
      const atom = atomAt(text, position);
      if (atom === undefined) return best;
      const written = atom.toLowerCase().replaceAll('’', "'");
      const lower = OF_HER.get(written) ?? written;
      const to = position + atom.length;
      const next = phrase.next.get(lower);
      if (next) {
        if (next.hyphened && joint !== '-' && !isStart) return best;
        phrase = next;
        const glued = text[to] === '-' && atomAt(text, to + 1) !== undefined;
        if (phrase.token && !glued) best = { type: phrase.token, image: phrase.token.name, to };
      } else if (phrase === root || !ARTICLES.has(lower)) {
        // An article inside a phrase is passed over, one before it is not part of it.
        return best;
      }
      JOINT.lastIndex = to;
      const gap = JOINT.exec(text)?.[0];
      if (gap === undefined) return best;
      joint = gap;
      position = to + gap.length;
    }
  }

  function quotedAt(text: string, at: number): Read | undefined {
    closedString.lastIndex = at;
    const quoted = closedString.exec(text)?.[0];
    return quoted === undefined ? undefined : { type: string, image: quoted, to: at + quoted.length };
  }

  /** A coach's own word behind `tags` and `allow`. */
  function labelAt(text: string, at: number): Read | undefined {
    LABEL_WORDS.lastIndex = at;
    const written = LABEL_WORDS.exec(text)?.[0].trimEnd();
    return written === undefined ? undefined : { type: label, image: written.toLowerCase().replace(/\s+/g, '-'), to: at + written.length };
  }

  function timeAt(text: string, at: number): Read | undefined {
    if (!/[haotfsen]/i.test(text[at]!) && !/^count/i.test(text.slice(at, at + 5))) return undefined;
    TIME_IN_WORDS.lastIndex = at;
    const time = TIME_IN_WORDS.exec(text);
    return time === null ? undefined : { type: definition['SECONDS'], image: secondsSaid(time), to: at + time[0].length };
  }

  function sheAt(text: string, at: number): Read | undefined {
    SHE_IS.lastIndex = at;
    const she = SHE_IS.exec(text)?.[0];
    return she === undefined ? undefined : { type: definition['he'], image: 'he', to: at + she.length };
  }

  function contractedAt(text: string, at: number, before: LineToken | undefined): Read | undefined {
    CONTRACTED.lastIndex = at;
    if (before === undefined || !(players.has(before.tokenType) || before.image === 'he') || !CONTRACTED.test(text)) return undefined;
    return phraseAt(`${text.slice(0, at)}is${text.slice(at + 2)}`, at, false);
  }

  function measureAt(text: string, at: number): Read | undefined {
    if (!/[\dxX-]/.test(text[at]!)) return undefined;
    const measure = measures.find(({ pattern }) => {
      pattern.lastIndex = at;
      return pattern.test(text);
    });
    return measure && { type: measure.token, image: text.slice(at, measure.pattern.lastIndex).toLowerCase(), to: measure.pattern.lastIndex };
  }

  /** A word that begins no keyword. `before`: what stands in front of it. */
  function wordAt(text: string, at: number, before: readonly LineToken[]): Read | undefined {
    const atom = atomAt(text, at);
    if (atom === undefined) return undefined;
    const to = at + atom.length;
    ON_HIS_SIDE.lastIndex = at;
    const side = ON_HIS_SIDE.exec(text)?.[0];
    if (side !== undefined && before.some(({ image }) => verbOf(image)?.class === 'screen')) return { type: unknown, image: 'his side', to: at + side.length };
    HER_ALONE.lastIndex = at;
    if (HER_ALONE.test(text)) return { type: definition['him'], image: 'him', to };
    const lower = atom.toLowerCase();
    if (ARTICLES.has(lower)) return { type: undefined, image: lower, to };
    const whole = text[to] === '-' ? undefined : glued.get(lower);
    if (whole !== undefined) return { type: whole, image: whole.name, to };
    const end = wordEnd(text, to);
    return { type: unknown, image: text.slice(at, end), to: end };
  }

  /** `4 + 5`, `4 & 5`, or what nobody knows. */
  function signAt(text: string, at: number): Read {
    const char = text[at]!;
    const sign = definition[/[+&]/.test(char) ? 'and' : char];
    const to = at + (text.codePointAt(at)! > 0xffff ? 2 : 1);
    return { type: sign ?? unknown, image: sign?.name ?? text.slice(at, to), to };
  }

  function lex(text: string, verbs?: VerbsRead): LexedLine {
    const tokens: LineToken[] = [];
    let at = 0;
    let openQuote: number | undefined;
    const take = ({ type, image, to }: Read): void => {
      if (type !== undefined) tokens.push({ image, tokenType: type, tokenTypeIdx: type.tokenTypeIdx!, startOffset: at, endOffset: to - 1, startLine: 1, endLine: 1, startColumn: at + 1, endColumn: to });
      at = to;
    };
    while (at < text.length) {
      const char = text[at]!;
      if (/\s/.test(char)) {
        at++;
        continue;
      }
      if (char === '#') return { tokens: retagged(tokens), comment: { at, to: text.length }, ...(openQuote === undefined ? {} : { openQuote }) };
      if (char === '"' || char === '“' || char === '”') {
        const quoted = quotedAt(text, at);
        if (quoted === undefined) openQuote = at;
        take(quoted ?? { type: unknown, image: text.slice(at), to: text.trimEnd().length });
        continue;
      }
      const opener = tokens[0]?.image;
      const meant = verbs?.get(at);
      const read =
        (opener === 'tags' || opener === 'allow' ? labelAt(text, at) : undefined) ??
        (meant && { type: definition[meant.image], image: meant.image, to: meant.to }) ??
        timeAt(text, at) ??
        sheAt(text, at) ??
        contractedAt(text, at, tokens.at(-1)) ??
        phraseAt(text, at, tokens.length === 1 && opener === 'from') ??
        measureAt(text, at) ??
        wordAt(text, at, tokens);
      // A full stop closes a sentence, as coaches write them.
      if (read === undefined && /[.;!…]/.test(char) && /^[.;!…\s]*$/.test(text.slice(at + 1))) break;
      take(read ?? signAt(text, at));
    }
    return { tokens: retagged(tokens), ...(openQuote === undefined ? {} : { openQuote }) };
  }

  /** A misspelt word with hyphens is one word: `back-sreens`. */
  function wordEnd(text: string, end: number): number {
    let to = end;
    while (text[to] === '-') {
      const more = atomAt(text, to + 1);
      if (more === undefined) break;
      to += 1 + more.length;
    }
    return to;
  }

  /** A player directly before a verb is that verb's subject. In `must have 3 passes` the word is a noun. */
  function retagged(written: LineToken[]): LineToken[] {
    if (written[0]?.image === 'must') return written;
    return tagged(readOver(reworded(written, definition), definition));
  }

  function tagged(tokens: LineToken[]): LineToken[] {
    // `look 4 rolling`, `look 2 backdoor`: whom one looks for is named, not told of.
    const isLook = tokens[0]?.image === 'look';
    let isNamed = isLook;
    for (let i = 1; i < tokens.length; i++) {
      if (isNamed) {
        isNamed = players.has(tokens[i]!.tokenType) || NAMES_FOR_A_LOOK.has(tokens[i]!.image);
        continue;
      }
      isNamed = isLook && tokens[i]!.image === 'look';
      const before = tokens[i - 1]!;
      if (!verbs.has(tokens[i]!.tokenType.name) || !players.has(before.tokenType)) continue;
      before.tokenType = subject;
      before.tokenTypeIdx = subject.tokenTypeIdx!;
    }
    return tokens;
  }

  return { definition, verbs, lex, tagged };
}
