// A verb that is not known is read by what stands behind it: who slithers to the corner goes there, who rockets it to 3 passes to him. The coach is
// told. A word near a known one is a slip of the pen, and what a line says with other words is told so: neither is guessed at here.
import { message } from '../../message/message.ts';
import { agreementOf, type LineWarning } from './agreement.ts';
import { MOST_WORDS } from './asides.ts';
import { breakDown, endOf, type Broken } from './broken-line.ts';
import type { VerbsRead } from '../reading/lexer.ts';
import { lineParser } from '../reading/line-parser.ts';
import { isDefender, isPlayer, wordOf, type LineToken } from '../line-token.ts';
import { isBegun, isSlip } from './mend.ts';
import { saidOtherwise } from './said-otherwise.ts';
import type { LineTree } from '../tree.ts';
import { unheard } from './unheard.ts';
import { WAITS } from '../waits.ts';

/** In one line. */
const MOST_VERBS = 3;

const BEFORE_A_VERB: ReadonlySet<string> = new Set(['and', 'then', ',', 'he', 'they', 'everyone', 'both', 'others']);
/** They say that something is not done, not yet, or to whom it is: no way to go. */
const NO_DEED = /^(stops?|fails?|refuses?|avoids?|misses|forgets?|declines?|ignores?|loses?|wants?|tries|hopes?|needs?|thinks?|knows?|starts?|begins?|keeps?|counts?|waits?|fakes?|jabs?|feints?|pretends?|reads?|lets?|gets?|gives?|asks?|has|have|does|do|says?|is|are|can|may|might|should|would|could|must|will|never|not|plants?|bumps?|leans?|sees|looks?|watches|yells?|calls?|points?|ducks?|pins?|sets?|traps?|digs?|sits?|demands?|claims?)$/;

const WAY = '(?:(?:right|straight|back|out|over|down|up|across|away|around|on|in|hard|low|high|wide|off|all the way)\\s+)*';
const TO = '(?:to|into|onto|toward|towards|along|up to|down|up|off|via|through|across|under|behind|around|past|baseline|middle)\\b';
/** What stands behind the verb, and the plain verb that says it in one number and the other; `takes` counts the words it says besides. */
const BY_WHAT_FOLLOWS: readonly { readonly behind: RegExp; readonly one: string; readonly several: string; readonly takes?: RegExp }[] = [
  { behind: new RegExp(`^\\s+(?:it|the ball)\\s+${WAY}(?:to|for)\\s+(?:[1-5](?!\\w)|him\\b|her\\b)`, 'iu'), one: 'passes', several: 'pass' },
  { behind: new RegExp(`^\\s+(?:it|the ball)\\s+${WAY}(?:${TO}|at\\b)`, 'iu'), one: 'dribbles it', several: 'dribble it', takes: /^\s+(?:it|the ball)/iu },
  { behind: new RegExp(`^\\s+(?:(?:his|her)\\s+(?:man|girl|defender)|x[1-5])\\s+${WAY}(?:to|into|toward|towards|along|across|under|off)\\b`, 'iu'), one: 'goes', several: 'go', takes: /^\s+(?:(?:his|her)\s+(?:man|girl|defender)|x[1-5])/iu },
  { behind: new RegExp(`^\\s+${WAY}${TO}`, 'iu'), one: 'goes', several: 'go' },
];
/** `as she lands, …`: when he is on his way. */
const ALONE = /^\s*(?:$|,|and\b|#)/iu;

export function withPlainVerbs(broken: Broken): { readonly tree: LineTree; readonly warnings: readonly LineWarning[] } | undefined {
  const first = broken.tokens.length > MOST_WORDS ? -1 : broken.tokens.findIndex((_, at) => isVerbUnknown(broken.tokens, at));
  if (broken.lexed.openQuote !== undefined || first < 0 || plainVerb(broken, first) === undefined) return undefined;
  if (isBegun(broken) || isSlip(broken) || saidOtherwise(broken) !== undefined) return undefined;
  const verbs: Map<number, { readonly image: string; readonly to: number }> = new Map();
  let now = broken;
  for (let turn = 0; turn < MOST_VERBS; turn++) {
    const at = now.tokens.findIndex((_, index) => isVerbUnknown(now.tokens, index));
    const verb = at < 0 ? undefined : plainVerb(now, at);
    if (verb === undefined) return undefined;
    verbs.set(now.tokens[at]!.startOffset, verb);
    const read = readWith(now.text, verbs);
    if ('tree' in read) return { tree: read.tree, warnings: [...read.warnings, ...[...verbs].map(([from, { image }]) => told(now.text, from, image))] };
    now = read.broken;
  }
  return undefined;
}

function isVerbUnknown(tokens: readonly LineToken[], at: number): boolean {
  const before = tokens[at - 1];
  // What a counter stands against is a remark where no defence is known by it.
  if (isDefender(before) && wordOf(tokens[0]) === 'step') return false;
  return tokens[at]!.tokenType.name === 'UNKNOWN' && before !== undefined && (isPlayer(before) || BEFORE_A_VERB.has(wordOf(before))) && !NO_DEED.test(wordOf(tokens[at])) && /^[a-z-]+$/i.test(tokens[at]!.image);
}

function plainVerb({ text, tokens, lexed }: Broken, at: number): { readonly image: string; readonly to: number } | undefined {
  const token = tokens[at]!;
  const end = endOf(token);
  const behind = text.slice(end, lexed.comment?.at);
  const isOne = /s$/i.test(token.image);
  const found = BY_WHAT_FOLLOWS.find((each) => each.behind.test(behind));
  if (found) return { image: isOne ? found.one : found.several, to: end + (found.takes?.exec(behind)?.[0].length ?? 0) };
  const waits = tokens.slice(0, at).findLastIndex((each) => WAITS.has(wordOf(each)));
  return ALONE.test(behind) && waits >= 0 && waits >= at - 4 ? { image: isOne ? 'goes' : 'go', to: end } : undefined;
}

function readWith(text: string, verbs: VerbsRead): { readonly tree: LineTree; readonly warnings: readonly LineWarning[] } | { readonly broken: Broken } {
  const { lexer, parse } = lineParser();
  const lexed = lexer.lex(text, verbs);
  const { tree, whole } = parse(lexed);
  if (whole && tree !== undefined) return { tree, warnings: agreementOf(tree) };
  const broken = breakDown(text, lexed);
  return unheard(broken) ?? { broken };
}

function told(text: string, at: number, image: string): LineWarning {
  const to = at + /^[\w-]+/.exec(text.slice(at))![0].length;
  const verb = image.replace(/ it$/, '');
  const words = text.slice(at, to);
  return { code: 'read-as', at, to, message: message('“{words}” is no verb I know: by what stands behind it, it is read as “{verb}”.', { words, verb }), fixes: [{ title: message('Write "{words}"', { words: verb }), edits: [{ at, to, text: verb }] }] };
}
