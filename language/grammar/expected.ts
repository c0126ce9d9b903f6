import type { Wanted } from './reading/follow.ts';
import { ARTICLES, keywordAtoms } from './reading/lexer.ts';
import { lineParser } from './reading/line-parser.ts';
import type { SubjectsTree } from './tree.ts';
import { verbOf, type VerbClass } from './verbs.ts';

export type ExpectedKind = 'keyword' | 'player' | 'xplayer' | 'string' | 'number' | 'seconds' | 'length' | 'speed' | 'form' | 'label';

/** A word that may stand at the cursor. */
export interface Expected {
  /** What would be written: a keyword, a player's number; empty where the coach chooses (a name, a time). */
  readonly text: string;
  /** The token of the grammar: the keyword, or the terminal's name. */
  readonly token: string;
  readonly kind: ExpectedKind;
  /** Where in the grammar: `['Statement', 'first>Clause', 'action>Action', 'Pass', 'parts>PassPart', 'PassTo', 'player>Player', 'number']`. */
  readonly path: readonly string[];
  readonly class?: VerbClass;
}

/** CONTRACT. What may stand at the end of a line's beginning. The same text with different paths is several items. */
export interface Expectations {
  /** Column where the word being typed begins. */
  readonly from: number;
  /** That word, as far as it is typed; of several words if a keyword of several has begun. */
  readonly typed: string;
  readonly items: readonly Expected[];
  /** In an action line: who acts in the link being typed (carried on from the link before if not said), and the verb if it stands already. */
  readonly acting?: { readonly subject?: SubjectsTree; readonly verb?: string };
}

const KINDS: { readonly [terminal: string]: ExpectedKind } = {
  PLAYER: 'player', XPLAYER: 'xplayer', STRING: 'string', NUMBER: 'number', SECONDS: 'seconds', LENGTH: 'length', SPEED: 'speed', FORM: 'form', LABEL: 'label',
};

function itemsOf(wanted: Wanted): Expected[] {
  const { token, path } = wanted;
  if (wanted.isKeyword) {
    const verb = path.at(-1)?.endsWith('Verb') ? verbOf(token) : undefined;
    return [{ text: token, token, kind: 'keyword', path, ...(verb ? { class: verb.class } : {}) }];
  }
  const kind = KINDS[token];
  if (!kind) return [];
  if (kind === 'player' || kind === 'xplayer') return [1, 2, 3, 4, 5].map((number) => ({ text: kind === 'player' ? String(number) : `X${number}`, token, kind, path }));
  return [{ text: '', token, kind, path }];
}

/** A beginning of a line with whole words only, and everything that can follow it. */
interface Begun {
  readonly items: readonly Expected[];
  /** Undefined where no word stands yet. */
  readonly acting: () => Acting | undefined;
}

interface Typed extends Begun {
  readonly from: number;
  readonly typed: string;
}

type Acting = NonNullable<Expectations['acting']>;
type Tokens = ReturnType<ReturnType<typeof lineParser>['lexer']['lex']>['tokens'];

/** What fits if the word being typed begins at `from`. Nothing if the line is already wrong before it. */
function expectedFrom(prefix: string, from: number): Typed | undefined {
  const begun = kept(prefix.slice(0, from));
  return begun && { ...begun, from, typed: prefix.slice(from) };
}

function begin(text: string): Begun | undefined {
  const { follow } = lineParser();
  const tokens = tokensOfBeginning(text);
  if (tokens === undefined) return undefined;
  // A player whose verb is not typed yet is a subject or an object: both ways on are open.
  const walk = follow.walk(tokens);
  if (walk.at < tokens.length) return undefined;
  let acting: Acting | undefined;
  return { items: follow.expected(walk.configs).flatMap(itemsOf), acting: () => (tokens.length === 0 ? undefined : (acting ??= actingIn(tokens))) };
}

const somethingMore = '\u0004';

/**
 * A line that ends here may be read with words it leaves out (`3 comes off` the screen) or without its last sign (`"First",`): this one goes on.
 * Where what is to come would take the last word away with it, the line is read as it stands.
 */
function tokensOfBeginning(text: string): Tokens | undefined {
  const { lexer } = lineParser();
  const { tokens, comment, openQuote } = lexer.lex(text + somethingMore);
  if (comment || openQuote !== undefined) return undefined;
  const begun = tokens.at(-1)?.startOffset === text.length ? tokens.slice(0, -1) : tokens;
  return begun.length === 0 || words(text.slice(begun.at(-1)!.endOffset! + 1).trim()).join('') === '' ? begun : lexer.lex(text).tokens;
}

/** While a word is typed the same beginnings are asked for at each letter: four at most, and the one behind it. */
const mostKept = 8;
const beginnings = new Map<string, Begun | undefined>();

function kept(text: string): Begun | undefined {
  const found = beginnings.has(text) ? beginnings.get(text) : begin(text);
  beginnings.delete(text);
  beginnings.set(text, found);
  if (beginnings.size > mostKept) beginnings.delete(beginnings.keys().next().value!);
  return found;
}

/** The last word may be an article not yet finished, so it stays. */
const words = (text: string): string[] => text.toLowerCase().split(/[\s-]+/).filter((word, index, all) => index === all.length - 1 || !ARTICLES.has(word));

/** Whether `typed` is the beginning of the keyword (`anywhere`: of any of its words). */
function begins(typed: readonly string[], keyword: string, anywhere: boolean): boolean {
  const atoms = keywordAtoms(keyword);
  const last = typed.length - 1;
  for (let start = 0; start + last < atoms.length && (anywhere || start === 0); start++)
    if (typed.every((word, index) => (index === last ? atoms[start + index]!.startsWith(word) : atoms[start + index] === word))) return true;
  return false;
}

function fits(item: Expected, typed: string, anywhere: boolean): boolean {
  if (typed === '') return true;
  if (item.kind === 'player' || item.kind === 'xplayer') return item.text.toLowerCase().startsWith(typed.toLowerCase());
  if (item.kind === 'string') return /^["“]/.test(typed);
  if (item.kind === 'label') return true;
  if (item.kind !== 'keyword') return /^\d/.test(typed);
  return begins(words(typed), item.token, anywhere);
}

/**
 * Behind a blank the words so far may be a whole keyword too: `against ` begins `against a press`, and is `against` with everything
 * that follows it. Then the longer phrase is offered by the words it still lacks.
 */
function withShorter(text: string, longer: Typed): Typed {
  if (!/\s$/.test(text)) return longer;
  const shorter = expectedFrom(text, text.length);
  if (!shorter?.items.length) return longer;
  const said = words(longer.typed).length - 1;
  return { ...shorter, items: [...shorter.items, ...longer.items.map((item) => ({ ...item, text: withoutFirst(item.token, said) }))] };
}

/** A keyword without its first words, articles not counted: of `against a press` without one, `a press`. */
function withoutFirst(keyword: string, count: number): string {
  const said = [...keyword.matchAll(/[^\s-]+/g)].filter(([word]) => !ARTICLES.has(word))[count - 1];
  return said === undefined ? keyword : keyword.slice(said.index + said[0].length).replace(/^[\s-]+/, '');
}

/** What may be written at the end of `prefix`, the beginning of a line up to the cursor. Pure; never throws. */
export function expectedAfter(prefix: string): Expectations {
  const text = prefix.length > 2000 ? '' : prefix;
  const { lexer } = lineParser();
  const lexed = lexer.lex(text);
  if (lexed.comment || prefix.length > 2000) return { from: prefix.length, typed: '', items: [] };
  const found = lexed.openQuote === undefined ? atWord(text) : inQuotes(text, lexed.openQuote);
  if (!found) return { from: text.length, typed: '', items: [] };
  const { from, typed, items } = found;
  const acting = items.some(({ path }) => path[0] === 'Statement') ? found.acting() : undefined;
  return { from, typed, items, ...(acting && { acting }) };
}

function actingIn(tokens: Tokens): Acting {
  const { first, links } = lineParser().parseBeginning(tokens);
  const clauses = [first, ...(links ?? []).map((link) => link.clause)].filter((clause) => clause !== undefined);
  const subject = clauses.findLast((clause) => clause.subject !== undefined)?.subject as SubjectsTree | undefined;
  const joint = tokens.at(-1)!.image;
  const action = ['and', 'then', ','].includes(joint) ? undefined : (clauses.at(-1)?.action as { verb?: string } | undefined);
  return { ...(subject ? { subject } : {}), ...(action?.verb === undefined ? {} : { verb: action.verb }) };
}

function inQuotes(text: string, from: number): Typed | undefined {
  const found = expectedFrom(text, from);
  return found && { ...found, items: found.items.filter(({ kind }) => kind === 'string') };
}

function atWord(text: string): Typed | undefined {
  // The longest run of last words that begins a keyword: of `cuts to the short c` it is `short c`.
  const starts = [...text.matchAll(/[^\s,:()"“”]+/g)].map(({ index }) => index).slice(-4);
  for (const from of starts) {
    if (ARTICLES.has(/^[^\s]+(?=\s)/.exec(text.slice(from))?.[0].toLowerCase() ?? '')) continue;
    if (!/[\s-]/.test(text.slice(from).trim()) && !/\s$/.test(text)) break;
    const found = expectedFrom(text, from);
    const items = found?.items.filter((item) => item.kind === 'keyword' && fits(item, found.typed.replace(/\s+$/, ' '), false) && begins(words(found.typed), item.token, false));
    if (found && items!.length) return withShorter(text, { ...found, items: items! });
  }
  const from = /[^\s,:()"“”]*$/.exec(text)!.index;
  const found = expectedFrom(text, from);
  if (!found) return undefined;
  return { ...found, items: found.items.filter((item) => fits(item, found.typed, true)) };
}
