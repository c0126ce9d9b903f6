import type { TokenType } from 'chevrotain';
import { wordOf, type LineToken } from '../line-token.ts';
import { verbOf } from '../verbs.ts';

/** How hard or how fast: said in every gym, drawn in no play. Common usage, no source. */
const MANNER: ReadonlySet<string> = new Set(['hard', 'tight', 'tightly', 'quickly', 'sharply', 'strongly', 'immediately', 'simply', 'slowly', 'patiently', 'straight', 'direct', 'directly', 'downhill', 'just', 'really', 'now']);
/** Which way, as far as the place behind it says the same: `pops out to the top`, `posts up low on the block`. */
const DIRECTIONS: ReadonlySet<string> = new Set(['out', 'back', 'up', 'down', 'over', 'across', 'away', 'around', 'in', 'high', 'low', 'wide', 'deep']);
const BEFORE_A_PLACE: ReadonlySet<string> = new Set(['to', 'into', 'toward', 'at', 'on', 'in', 'off', 'via', 'between', 'out of']);
/** Which way, where the verb says it already. */
const SAID_BY_THE_VERB: { readonly [base: string]: readonly string[] } = {
  pop: ['out', 'back'], lift: ['up'], space: ['out', 'wide'], 'spot up': ['wide'], drift: ['out'], fade: ['out', 'away'], flash: ['up', 'out'], clear: ['away'], dive: ['down', 'in'], roll: ['down'],
  turn: ['around', 'over'], hold: ['wide', 'high', 'low', 'up'], stand: ['wide', 'high', 'low', 'tall'],
  run: ['wide'], sprint: ['wide'], stay: ['wide', 'high', 'low', 'out', 'deep'], wait: ['wide', 'high', 'low'],
};
/** `comes up and ball-screens`: where he comes to, the screen says. */
const SAID_BY_WHAT_FOLLOWS: ReadonlySet<string> = new Set(['comes', 'come']);
/** `a pull-up jumper`, `a trailer three`: the shot is the last word. */
const OF_A_SHOT: ReadonlySet<string> = new Set([
  'one-dribble', 'two-dribble', 'off-the-dribble', 'step-in', 'clean', 'easy', 'good', 'wide', 'rim', 'pull up', 'spot up', 'backdoor', 'corner', 'elbow', 'wing', 'trailer', 'open', 'step back', 'fadeaway', 'face up', 'baby', 'drop-step', 'uncontested', 'rhythm', 'pick-and-pop', 'kick out', 'kick-out pass', 'wide-open', 'turnaround', 'driving', 'baseline', 'free-throw line', 'top of the key', 'short corner', 'reverse', 'power', 'quick', 'running', 'short', 'mid-range', 'midrange', 'deep', 'contested', 'catch-and-shoot', 'catch and shoot',
]);
/** `corner 3`, `a 3 pointer`. */
const THREE_ENDS: ReadonlySet<string> = new Set([',', 'or', 'then']);
/** `catch, three`, `drop step, layup`: what comes before the shot. */
const TO_GET_A_SHOT: ReadonlySet<string> = new Set(['catch', 'catches', 'catch and shoot', 'drop step', 'up and under', 'face up', 'spin', 'rip']);
/** `4 sets` nothing, but `a flat screen`, `a high ball screen` and `the second screen` are screens. */
const OF_A_SCREEN: ReadonlySet<string> = new Set(['flat', 'high', 'side', 'solid', 'wide', 'quick', 'step up', 'second', 'last', 'first', 'big', 'good', 'high-ball', 'middle', 'drag', 'tight', 'late']);
/** `1 shuffle cuts off 5`: how he cuts, the places say. */
const OF_A_CUT: ReadonlySet<string> = new Set(['shuffle', 'flex', 'zip', 'zipper', 'brush', 'rub', 'speed', 'slice', 'banana', 'quick']);
/** Behind the man a look is for. */
const OF_A_LOOK: ReadonlySet<string> = new Set(['long', 'deep', 'early', 'open', 'first', 'ahead']);
/** Of a corner how deep, of a block how low: there is one of each. */
const OF_A_PLACE: ReadonlySet<string> = new Set(['deep', 'low', 'high', 'dead', 'wide']);
const OF_A_PLACE_NAMES: ReadonlySet<string> = new Set(['corner', 'corners', 'left', 'right', 'block', 'blocks', 'wing', 'wings', 'elbow', 'elbows', 'slot', 'slots']);
const SHOTS: ReadonlySet<string> = new Set(['layup', 'lay-up', 'dunk', 'jumper', 'jump shot', 'three', 'three-pointer', 'hook', 'hook shot', 'floater', 'runner', 'bank shot', 'pull up', 'step back', 'fadeaway', 'put-back', 'lay-in', 'finish']);
const CATCHES: ReadonlySet<string> = new Set(['catches', 'catch']);
const JOINTS: ReadonlySet<string> = new Set(['and', 'then', ',']);
const TELLING: ReadonlySet<string> = new Set([...DIRECTIONS, ...OF_A_SHOT, ...CATCHES, 'of', 'off', 'up to', '3', "'s", 'both', 'then', 'and', 'catch', 'drop step', 'middle', 'drag', 'going', 'long', 'early', 'ahead', 'first', 'rim', 'baseline', 'free-throw line', 'top of the key', 'short corner']);
const BEFORE_A_SHOT: ReadonlySet<string> = new Set([':', ',', 'or', 'then', 'shoots', 'shoot', 'takes', 'take']);

/**
 * The tokens without the words that a line means the same without: adverbs of manner, directions that the place repeats, adjectives of a shot.
 * A direction that says something of its own stays, and is then a fault: `2 cuts high` without a place.
 */
export function readOver(tokens: readonly LineToken[], types: { readonly [name: string]: TokenType }): LineToken[] {
  if (!tokens.some(isTelling)) return tokens as LineToken[];
  const kept: LineToken[] = [];
  const spoken = asThrees(asDefenders(withoutCatching(tokens), types), types);
  const verb = spoken.findIndex(({ image }) => verbOf(image) !== undefined);
  for (const [index, token] of spoken.entries()) {
    if (token.image === 'and' && isOutAgain(spoken, index)) {
      kept.push({ ...token, image: 'then', tokenType: types['then']!, tokenTypeIdx: types['then']!.tokenTypeIdx! });
      continue;
    }
    if (spoken[index - 1]?.image === 'and' && isOutAgain(spoken, index - 1)) continue;
    if (isPastAScreen(kept, token, spoken[index + 1])) {
      kept.push({ ...token, image: 'off', tokenType: types['off']!, tokenTypeIdx: types['off']!.tokenTypeIdx! });
      continue;
    }
    if (index < verb && isBetweenSubjectAndVerb(spoken, index, verb)) continue;
    const next = spoken[index + 1];
    // The comma behind what led to the shot goes with it.
    if (token.image === ',' && next !== undefined && SHOTS.has(next.image) && kept.at(-1)?.image === ':' && spoken[index - 1] !== kept.at(-1)) continue;
    if (kept.at(-1)?.image === ':' && TO_GET_A_SHOT.has(wordOf(token)) && next?.image === ',' && SHOTS.has(spoken[index + 2]?.image ?? '')) continue;
    if (kept.length === 0 || token.tokenType.name === 'STRING' || !isReadOver(kept, token, spoken.slice(index + 1, index + 3))) {
      kept.push(token);
      continue;
    }
    // `up to` is one word in `up to 2 times`.
    if (token.tokenType.name === 'up to') kept.push(retyped(token, types['to']!, 2));
  }
  return kept;
}

/** `3 catches and drives`: that he catches, the pass to him says. */
function withoutCatching(tokens: readonly LineToken[]): readonly LineToken[] {
  const at = tokens.findIndex((token, index) => CATCHES.has(token.image) && tokens[index - 1]?.tokenType.name === 'PLAYER' && (index === 1 || tokens[index - 2]!.image === ','));
  if (at === -1) return tokens;
  const next = tokens.findIndex((token, index) => index > at && !JOINTS.has(token.image));
  return next > at + 1 && verbOf(tokens[next]!.image) !== undefined ? [...tokens.slice(0, at), ...tokens.slice(next)] : tokens;
}

/** `cuts to the rim and out to the corner`: the same man goes on. */
function isOutAgain(tokens: readonly LineToken[], index: number): boolean {
  return index > 2 && /^(out|back|up|over|down|back out)$/.test(wordOf(tokens[index + 1] ?? tokens[index]!)) && ['to', 'into', 'toward'].includes(tokens[index + 2]?.image ?? '');
}

/** `4 comes around the screen`, `1 drives over the pick`: off it. */
function isPastAScreen(kept: readonly LineToken[], token: LineToken, next: LineToken | undefined): boolean {
  if (!/^(around|over)$/.test(wordOf(token)) || next === undefined || next.tokenType.name === 'STRING' || verbOf(wordOf(next))?.class !== 'screen') return false;
  return ['move', 'dribble'].includes(verbBefore(kept)?.class ?? '');
}

/** `4 and 5, both roll`; `4 then pops`: the line's own first subject. */
function isBetweenSubjectAndVerb(tokens: readonly LineToken[], index: number, verb: number): boolean {
  const token = tokens[index]!;
  const isJoint = token.image === 'both' ? index === verb - 1 : token.image === ',' ? index === verb - 2 && tokens[verb - 1]!.image === 'both' : token.image === 'then' && index === verb - 1;
  return index > 0 && isJoint && tokens.slice(0, index).every(({ image, tokenType }) => tokenType.name === 'PLAYER' || image === ',' || image === 'and');
}

/** A `3` where a shot is meant is a three: behind a look's colon or `shoots`, at the end of what is said of the shot. */
function asThrees(tokens: readonly LineToken[], types: { readonly [name: string]: TokenType }): readonly LineToken[] {
  const colon = tokens.findIndex(({ image }) => image === ':');
  const isLook = tokens[0]?.image === 'look' && colon > 0;
  return tokens.map((token, index) => {
    const before = tokens[index - 1];
    if (token.image !== '3' || before === undefined) return token;
    const next = tokens[index + 1];
    const ends = next === undefined || THREE_ENDS.has(next.image);
    const isShot = (isLook && index > colon && (BEFORE_A_SHOT.has(before.image) || OF_A_SHOT.has(wordOf(before)))) || ['shoots', 'shoot', 'takes', 'take'].includes(before.image);
    if (!ends || !isShot || (next?.image === ',' && /PLAYER$/.test(tokens[index + 2]?.tokenType.name ?? ''))) return token;
    return { ...token, image: 'three', tokenType: types['three']!, tokenTypeIdx: types['three']!.tokenTypeIdx! };
  });
}

/** `4's man` is X4. */
function asDefenders(tokens: readonly LineToken[], types: { readonly [name: string]: TokenType }): readonly LineToken[] {
  if (!tokens.some(({ image }) => image === "'s")) return tokens;
  const spoken: LineToken[] = [];
  for (const [index, token] of tokens.entries()) {
    const who = spoken.at(-1);
    const isMan = token.image === "'s" && /^(man|defender|guy)$/.test(wordOf(tokens[index + 1] ?? token));
    if (isMan && who?.tokenType.name === 'PLAYER') spoken[spoken.length - 1] = { ...who, image: `x${who.image}`, tokenType: types['XPLAYER']!, tokenTypeIdx: types['XPLAYER']!.tokenTypeIdx!, endOffset: tokens[index + 1]!.endOffset, endColumn: tokens[index + 1]!.endColumn };
    else if (!(/^(man|defender|guy)$/.test(wordOf(token)) && tokens[index - 1]?.image === "'s" && tokens[index - 2]?.tokenType.name === 'PLAYER')) spoken.push(token);
  }
  return spoken;
}

/** Whether a line with this word may hold something to be read over or otherwise; most have none. */
function isTelling({ image, tokenType }: LineToken): boolean {
  return tokenType.name === 'UNKNOWN' || TELLING.has(image);
}

function retyped(token: LineToken, tokenType: TokenType, width: number): LineToken {
  return { ...token, image: tokenType.name, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx!, startOffset: token.endOffset + 1 - width };
}

function isReadOver(kept: readonly LineToken[], token: LineToken, next: readonly LineToken[]): boolean {
  const word = wordOf(token);
  if (MANNER.has(word)) return token.tokenType.name === 'UNKNOWN';
  // `quickly`, `aggressively`: how; but not `only` and `hardly`, which turn the line round.
  if (/..ly$/.test(word) && token.tokenType.name === 'UNKNOWN' && !/^(only|hardly|barely|rarely|nearly|possibly|probably|likely|rely|fly|apply|supply|early)$/.test(word)) return true;
  // `the deep corner`, `the low block`
  if (OF_A_PLACE.has(word) && OF_A_PLACE_NAMES.has(next[0]?.image ?? '') && !(word === 'low' && next[0]!.image === 'post')) return true;
  if (OF_A_SCREEN.has(word) && verbOf(next[0]?.image ?? '')?.class === 'screen' && (/^PLAYER$/.test(kept.at(-1)!.tokenType.name) || ['off', 'and', "'s", 'then'].includes(kept.at(-1)!.image))) return true;
  if (OF_A_CUT.has(word) && verbOf(next[0]?.image ?? '')?.base.endsWith('cut') === true && kept.at(-1)!.tokenType.name === 'PLAYER') return true;
  if (OF_A_LOOK.has(word) && kept[0]!.image === 'look' && kept.at(-1)!.tokenType.name === 'PLAYER' && (next[0] === undefined || next[0].image === ':')) return true;
  if (word === 'going' && kept[0]!.image !== 'look' && ['middle', 'baseline', 'to', 'toward', 'away'].includes(next[0]?.image ?? '')) return true;
  // `off of 5's screen`, `dumps it off to 5`
  if (word === 'of' && kept.at(-1)!.image === 'off') return true;
  if (word === 'off' && next[0]?.image === 'to' && verbBefore(kept)?.class === 'pass') return true;
  // `, short shot`
  if (OF_A_SHOT.has(word) && next[0]?.image === 'shot' && (kept.at(-1)!.image === ':' || (kept.at(-1)!.image === ',' && kept[0]!.image === 'look'))) return true;
  if (OF_A_SHOT.has(word) && BEFORE_A_SHOT.has(kept.at(-1)!.image)) return next.some((other, index) => SHOTS.has(other.image) && (index === 0 || OF_A_SHOT.has(wordOf(next[0]!))));
  const isUpTo = token.tokenType.name === 'up to';
  if (!isUpTo && !DIRECTIONS.has(word)) return false;
  const verb = verbBefore(kept);
  if (!verb) return false;
  const { class: verbClass, base, word: verbWord } = verb;
  const direction = isUpTo ? 'up' : word;
  // `comes around 5`: it is he who is gone round.
  const isRoundAMan = direction === 'around' && /PLAYER$/.test(next[0]?.tokenType.name ?? '');
  const isSaid = SAID_BY_THE_VERB[base]?.includes(direction) === true || (SAID_BY_WHAT_FOLLOWS.has(verbWord) && direction !== 'in' && !isRoundAMan);
  const following = isUpTo ? 'to' : next[0]?.image;
  const standsBeforePlace = following !== undefined && BEFORE_A_PLACE.has(following);
  // `sprints up and ball-screens`: where to, what follows says.
  if (!standsBeforePlace) return isSaid || (verbClass === 'move' && direction !== 'in' && next[0]?.image === 'and' && next[1] !== undefined && (verbOf(next[1].image) !== undefined || OF_A_SCREEN.has(wordOf(next[1]))));
  if (direction === 'in' && following === 'off') return verbClass === 'move';
  if (direction === 'in') return (following === 'to' || following === 'toward') && ['move', 'dribble', 'pass'].includes(verbClass);
  // Behind a screen `up` and `down`, behind a pass `back` and `across` are words of the notation.
  if (verbClass === 'hand-off' && (direction === 'back' || direction === 'off')) return true;
  if (verbClass === 'screen' || verbClass === 'pass' || verbClass === 'hand-off') return isUpTo ? verbClass !== 'screen' : token.tokenType.name === 'UNKNOWN' || (verbClass === 'pass' && (direction === 'up' || direction === 'over' || direction === 'down'));
  return ['move', 'seal', 'dribble', 'hold', 'defend', 'shot'].includes(verbClass);
}

/** The verb that the word belongs to: directly before it, or with the ball and another direction between. */
function verbBefore(kept: readonly LineToken[]): { readonly class: string; readonly base: string; readonly word: string } | undefined {
  for (let index = kept.length - 1; index >= 0; index--) {
    const { image } = kept[index]!;
    const verb = verbOf(image);
    if (verb) return { class: verb.class, base: verb.base, word: image };
    if (!['it', 'ball', 'back', 'ahead'].includes(image)) return undefined;
  }
  return undefined;
}
