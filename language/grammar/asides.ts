// Words of an action or a look that nothing on the floor comes of: what for (`to keep his man busy`), how (`with his hands up`), and what cannot
// be read where the line is whole without it. The line is read, and the words are told of. What turns a line round or makes it depend on
// something, and what may be somebody's action, a place or a time, is never passed over so.
import { isPlayer, wordOf, type LineToken } from './line-token.ts';
import type { Follow, Walk } from './follow.ts';
import { verbOf } from './verbs.ts';
import { WAITS } from './waits.ts';

export interface Aside {
  /** Tokens from, up to and not including to. */
  readonly from: number;
  readonly to: number;
  /** `said`: known to change nothing; `unread`: words that could have meant something. */
  readonly sort: 'said' | 'unread';
}

const SIDES: ReadonlySet<string> = new Set(['left', 'right', 'opposite', 'near', 'far', 'weak-side', 'strong-side', 'ball-side', 'other', 'deep']);
const wordsIn = (words: string): ReadonlySet<string> => new Set(words.split(' '));

/** Left out, the line would say the opposite, or would hang on something that it no longer names. */
const TURNS = wordsIn("if unless not never no without except instead only don't doesn't doesnt dont can't cant isn't isnt won't until till otherwise whether or either once when whenever while neither nor but maybe sometimes");
/** What one does for a purpose. Behind `to`, none of these is a place. */
const PURPOSES = wordsIn('keep keeping occupy pull draw drag stretch create make free open empty clear space spread balance attract tempt lure hold tie hide fool sell bring lead show give help relieve threaten distract confuse freeze force get let allow avoid protect beat take change improve shorten widen flatten stop start begin buy set be look find see read catch receive score finish shoot attack play pass drive work go come move stay wait use run maintain support replace provide offer challenge test punish break outnumber overload isolate invite encourage deny seal rescue safety restart reset settle flow clear-out disguise hunt lift loosen line feed follow meet react recover respect cover guard tag');
/** Those that speak of others without moving them. */
const OF_OTHERS = wordsIn('keep occupy pull draw drag stretch create make free open empty clear space tempt lure hold tie hide fool give help relieve threaten distract confuse freeze force let allow protect show support provide offer see watch read meet');
const DOING = wordsIn('looking trying hoping ready calling asking showing facing leaving keeping waiting reading hunting watching holding pointing threatening pretending acting giving making taking expecting seeing demanding wanting using staying being getting creating drawing pulling going coming prepared eyes hands feet head chest palms knees weight');
/** Behind `with`, `on`, `in`, `under`, `at`: how somebody does it. */
const MANNER = wordsIn('left right hand hands back backs pace speed purpose force body shoulder shoulders feet foot eyes balance rhythm control stride time catch bounce move target toes palms inside outside both two full tempo intensity patience energy power contact arms high low knees chest head dribble dribbles live pass timing open short stance second half');
const ADVERBS = wordsIn('first second last again too also together early late hard fast away right now once twice here there strong tight low high wide deep behind downhill already just alone well instantly next both each good nice big slow square ready all');
const ROLES = wordsIn('decoy outlet option target threat trailer release safety release-valve valve screener cutter distraction bait guard shooter helper finisher second third first last low high weak-side strong-side if though');
/** Who stands in the way, not where. */
const DEFENCE = wordsIn('defence defense defender defenders zone press trap traffic coverage help wall bodies everyone everybody man guy men crowd pack line arc three-point three 3-point 3 screen mess double opponents opponent others guards bigs front back outside perimeter edge backside top traffic');
const NEAR: ReadonlySet<string> = new Set(['in front of', 'next to', ...wordsIn('behind around past through inside outside between over beyond under ahead against near off of away from in front top along across within round by')]);
const TALKS = wordsIn('waves wave points point signals signal motions nods yells shouts calls call tells tell shows show presents present looks look waving watches eyes reads read asks ask demands demand claps clap');
/** What is spoken of in a list of chances. */
const CHANCES = wordsIn('option look choice read outlet priority');

const isMeasure = (token: LineToken): boolean => ['SECONDS', 'LENGTH', 'SPEED', 'NUMBER', 'FORM', 'STRING', 'NEGATIVE', 'LABEL'].includes(token.tokenType.name);
const isUnknown = (token: LineToken | undefined): boolean => token?.tokenType.name === 'UNKNOWN';
export const isPlace = (token: LineToken | undefined): boolean => PLACES.has(token?.image ?? '');
const PLACES: ReadonlySet<string> = new Set([
  'rim', 'basket', 'hoop', 'ring', 'bucket', 'block', 'blocks', 'low post', 'high post', 'mid-post', 'elbow', 'elbows', 'nail', 'top', 'top of the key', 'slot', 'slots', 'wing', 'wings', 'corner', 'corners', 'short corner', 'dunker spot', 'free-throw line',
  'half court', 'hash', 'backcourt', 'sideline', 'baseline', 'lane', 'paint', 'key', 'left side', 'right side', 'weak-side', 'ball-side', 'strong-side', 'far side', 'near side', 'opposite side', 'other side', 'up top', 'out top', 'middle',
]);
const ENDS: ReadonlySet<string> = new Set([',', 'and', 'then', ':']);

/** No longer line is anybody's. */
export const MOST_WORDS = 60;
/** Nor any longer aside. */
const LONGEST_ASIDE = 14;

/**
 * What has to be left out for the rest to be read, the longest beginning of the line being kept: nothing where that would leave out what may
 * have been meant. `text` tells what articles the tokens have lost.
 */
export function asidesIn(tokens: readonly LineToken[], follow: Follow, text: string): readonly Aside[] | undefined {
  if (tokens.length > MOST_WORDS) return undefined;
  const kind = tokens[0]?.image === 'look' ? 'look' : isPlayer(tokens[0]) || isSubject(tokens[0]) || WAITS.has(wordOf(tokens[0])) || ['on', 'with', 'at', 'at the same time', 'then', 'after that', 'next'].includes(wordOf(tokens[0])) ? 'action' : undefined;
  if (kind === undefined) return undefined;
  const found: Aside[] = [];
  let rest = tokens;
  // Where each token of the rest stands in the line.
  let at = tokens.map((_, index) => index);
  for (let turn = 0; turn < 3; turn++) {
    const walk = follow.walk(rest);
    if (walk.whole) return found.length > 0 ? found : undefined;
    if (walk.at === rest.length && found.length === 0) return undefined;
    const next = asideAt(rest, Math.min(walk.at, rest.length - 1), follow, text);
    if (next === undefined) return undefined;
    found.push({ from: at[next.from]!, to: at[next.to - 1]! + 1, sort: next.sort });
    rest = [...rest.slice(0, next.from), ...rest.slice(next.to)];
    at = [...at.slice(0, next.from), ...at.slice(next.to)];
  }
  return follow.walk(rest).whole ? found : undefined;
}

export const isSubject = (token: LineToken | undefined): boolean => ['everyone', 'everybody', 'both', 'others', 'rest', 'he', 'they'].includes(token?.image ?? '');

/** The words round the one that does not fit which the line can do without. */
function asideAt(tokens: readonly LineToken[], wrong: number, follow: Follow, text: string): Aside | undefined {
  const lead = leadIn(tokens, wrong);
  if (lead !== undefined && follow.walk([...tokens.slice(0, lead.from), ...tokens.slice(lead.to)]).at > lead.from) return lead;
  const heads = headsOf(tokens, wrong, follow);
  const starts: number[] = [];
  for (let from = wrong; from >= 1 && from >= wrong - 7; from--) if (follow.canEnd(heads[from]!.configs)) starts.push(from);
  if (!starts.includes(wrong)) starts.push(wrong);
  for (const from of starts) {
    const head = heads[from]!;
    const isWhole = from !== wrong || follow.canEnd(head.configs);
    for (let to = wrong + 1; to <= tokens.length && to <= from + LONGEST_ASIDE; to++) {
      const last = tokens[to - 1];
      // Behind a joint a new action begins; `and` may join two nouns.
      if (to > from + 1 && ENDS.has(wordOf(last)) && goesOn(tokens, to)) break;
      const next = tokens[to];
      const rest = follow.walk(tokens.slice(to), head.configs);
      const helps = (rest.whole && !head.asObject) || (rest.at > 0 && next !== undefined && ENDS.has(next.image) && goesOn(tokens, to + 1));
      if (!helps) continue;
      const sort = sortOf(tokens, from, to, text, isWhole);
      if (sort !== undefined) return { from, to, sort };
    }
  }
  return undefined;
}

/** The readings before each token up to `wrong`, the first that does not fit. */
export function headsOf(tokens: readonly LineToken[], wrong: number, follow: Follow): readonly Walk[] {
  const heads: Walk[] = [follow.walk([])];
  for (let at = 0; at < wrong; at++) {
    const { configs, asObject } = heads[at]!;
    const next = follow.walk([tokens[at]!], configs);
    heads.push({ ...next, asObject: asObject || next.asObject });
  }
  return heads;
}

/** Whether words name somebody of whom a pronoun behind them speaks: without them it would mean another. */
export function speaksOfAnother(tokens: readonly LineToken[], from: number, to: number): boolean {
  return tokens.slice(from, to).some((token) => isPlayer(token) || wordOf(token) === 'man') && tokens.slice(to).some((token) => /^(him|them|he|they)$/.test(wordOf(token)));
}

/** `3 fakes low, then pops out`, `5 reads the screen and cuts`: what he does first cannot be drawn, or read, and he goes on. */
function leadIn(tokens: readonly LineToken[], wrong: number): Aside | undefined {
  const from = [wrong, wrong - 1, wrong - 2].find((at) => at >= 1 && (isUnknown(tokens[at]) || isLooking(tokens, at) || /^catch(es)?( it| the ball)?$/.test(wordOf(tokens[at]))) && (isPlayer(tokens[at - 1]) || ['and', 'then', ','].includes(wordOf(tokens[at - 1]))));
  if (from === undefined) return undefined;
  const joint = tokens.findIndex((token, at) => at > from && ENDS.has(token.image));
  if (joint < 0 || tokens.slice(from + 1, joint).some((token) => ((isPlayer(token) || isPlace(token)) && !isLooking(tokens, from)) || isMeasure(token) || TURNS.has(wordOf(token)) || verbOf(token.image)?.number === 'singular')) return undefined;
  if (speaksOfAnother(tokens, from, joint)) return undefined;
  let to = joint;
  while (['and', 'then', ','].includes(wordOf(tokens[to]))) to++;
  if (verbOf(wordOf(tokens[to])) === undefined) return undefined;
  return { from, to, sort: /^(fakes?|sells?|jabs?|feints?|pump-fakes?|shot-fakes?|pretends?|hesitates?|reads?|catches? it|catches the ball|plants?|delays?|slows?|catch|catches|gathers?|changes?|looks?|eyes|pauses?)$/.test(wordOf(tokens[from])) ? 'said' : 'unread' };
}

/** `looks inside, then skips`: a look moves nobody, whoever is looked at. `looks to drive` may be a drive. */
const isLooking = (tokens: readonly LineToken[], at: number): boolean => isPlayer(tokens[at - 1]) && /^looks?$/.test(wordOf(tokens[at])) && !(wordOf(tokens[at + 1]) === 'to' && verbOf(wordOf(tokens[at + 2])) !== undefined);

/** Whether an action begins there. */
function goesOn(tokens: readonly LineToken[], at: number): boolean {
  const first = tokens[at];
  if (first === undefined) return false;
  if (isPlayer(first) || isSubject(first)) return true;
  return verbOf(first.image) !== undefined || (first.image === 'then' && verbOf(wordOf(tokens[at + 1])) !== undefined);
}

function sortOf(tokens: readonly LineToken[], from: number, to: number, text: string, isWhole: boolean): Aside['sort'] | undefined {
  const words = tokens.slice(from, to);
  const [first, second] = words;
  if (first === undefined) return undefined;
  const opener = wordOf(first);
  // Another look is a line of its own.
  if (words.some((token, at) => token.image === 'look' && isPlayer(tokens[from + at + 1]))) return undefined;
  const before = tokens[from - 1];
  const behindVerb = before !== undefined && verbOf(before.image) !== undefined;
  const isLook = tokens[0]!.image === 'look';
  const colon = tokens.findIndex(({ image }) => image === ':');
  // What he does it for goes on to the end.
  const ends = to === tokens.length || ENDS.has(wordOf(tokens[to]));
  // The step says instead of what.
  if (opener === 'instead' && words.length === 1 && ends) return 'said';
  if (opener === 'as' && ends && /^(if|though)$/.test(wordOf(second))) return 'said';
  // `corner right` is the wrong way round.
  if (words.length === 1 && (opener === 'left' || opener === 'right') && isPlace(before)) return undefined;
  // Right behind the man stands his verb, behind a side the place.
  if (!isWhole && before !== undefined && (isPlayer(before) || isSubject(before) || ENDS.has(before.image)) && !(isLook && colon >= 0 && from > colon)) return undefined;
  if (isLook && words.length === 1 && (colon < 0 || from < colon) && /^(back|up|out|down|in|wide|high|low|hard|inside|deep|long|early|late|away|over|there|first|again|behind|underneath)$/.test(opener)) return 'said';
  // `look 5 behind X5`: where the defender is, the picture shows.
  if (isLook && (colon < 0 || to <= colon) && NEAR.has(opener) && words.every((token) => !isPlayer(token) || token.image.startsWith('x'))) return words.some((token) => isPlayer(token) || DEFENCE.has(wordOf(token))) ? 'said' : undefined;
  // `skip to the corner`: he is there, or it would be no look.
  if (isLook && colon >= 0 && from > colon && /^(to|into|in|at|toward|across|over|on|off)$/.test(opener) && words.slice(1).every((token) => isPlace(token) || (opener === 'off' && verbOf(token.image)?.class === 'screen') || SIDES.has(token.image) || ['to', 'into'].includes(token.image) || DEFENCE.has(wordOf(token)))) return words.length > 1 ? 'said' : undefined;
  // What a purpose does not want to happen turns nothing round: `so X4 cannot help`.
  if (ends && (opener === 'so' || (opener === ',' && wordOf(second) === 'so'))) return words.some((token) => wordOf(token) === 'if') ? undefined : 'said';
  if (opener === 'like') return ends ? 'said' : undefined;
  if (SIDES.has(before?.image ?? '') && isUnknown(first)) return undefined;
  if (words.some((token) => TURNS.has(wordOf(token)) && !(wordOf(token) === 'once' && words.length === 1))) return undefined;
  const from1 = opener === ',' || opener === 'and' || opener === 'then' ? 1 : 0;
  const said = words.slice(from1);
  const [one, two] = said;
  if (one === undefined) return undefined;
  const word = wordOf(one);
  // `5 is the second option`: the order of the looks says it.
  if (from1 === 1 && isPlayer(one) && said.some((token) => CHANCES.has(wordOf(token))) && !said.slice(1).some(isPlayer)) return 'unread';
  // `and waves 2 through`, `and looks up the floor`: a word or a look moves nobody.
  if (from1 === 1 && to < tokens.length && !ENDS.has(wordOf(tokens[to])) && !WAITS.has(wordOf(tokens[to]))) return undefined;
  if (from1 === 1 && words.some((token) => WAITS.has(wordOf(token)))) return undefined;
  // `, then blorps`, `and 5 blorps`: what he does, that cannot be read.
  if (opener === ',' && word === 'then' && isUnknown(two)) return undefined;
  if (isUnknown(one) && isPlayer(before) && ['and', 'then', ','].includes(wordOf(tokens[from - 2]))) return undefined;
  if (from1 === 1 && TALKS.has(word)) return 'said';
  // `and we look inside right away`: the looks say it.
  if (from1 === 1 && word === 'we' && ends && /^(look|want|hope|try|like|read|see)$/.test(wordOf(two)) && !said.some(isPlayer)) return 'said';
  if (from1 === 1 && opener !== ',') return undefined;
  if (words.some((token) => /^(safety|safety-valve)$/.test(wordOf(token)))) return undefined;
  if (word === 'over the top' || word === 'across the lane' || word === 'along the baseline') return hasPlace(tokens, from, to) ? 'said' : undefined;
  if (/^(up|down|along|across|through|around)$/.test(word) && said.length === 2 && /^(lane|lane line|baseline|sideline|line|arc|top|free-throw line|key|paint|three-point|perimeter|circle|elbow|outside|wing|middle)$/.test(wordOf(two)) && hasPlace(tokens, from, to)) return 'said';
  if (isLook && colon >= 0 && from < colon && !DOING.has(word)) return undefined;
  if (isLook && colon < 0 && isUnknown(one) && said.length === 1) return undefined;
  if (one.image === 'out of' && said.slice(1).every(isUnknown)) return 'said';
  if (verbOf(before?.image ?? '')?.base === 'swap' && /^(on|in|at)$/.test(word)) return 'said';
  const isOfOthers = (word === 'to' || word === 'up to') && OF_OTHERS.has(wordOf(two));
  if (!isOfOthers && said.some((token) => isPlayer(token) || (isMeasure(token) && token.tokenType.name !== 'NUMBER')) && !/^(in|looking|facing|ready|towards)$/.test(word)) return undefined;
  // An action may be meant.
  if (!isOfOthers && said.slice(1).some((token, index) => isAction(token, said[index]))) return undefined;
  if ((word === 'to' || word === 'up to') && two !== undefined && PURPOSES.has(wordOf(two).split(' ')[0]!)) return ends ? 'said' : undefined;
  // A place that cannot be read is no manner.
  if (/^(to|into|toward|up to|via|onto|until|at)$/.test(word) && !(word === 'at' && MANNER.has(wordOf(two)))) return /^(to|up to)$/.test(word) ? undefined : hasPlace(tokens, from, to) && said.length > 1 && !said.some(isPlace) ? 'unread' : undefined;
  if (said.some(({ image }) => /^(hand off|handoff|shoulder|hip)$/.test(image) || (word === 'for' && verbOf(image)?.class === 'screen'))) return undefined;
  // `passes to 5 for a layup`: that is what happens next, or a chance.
  if (word === 'for' && isPlayer(before) && /^(layup|lay-up|lay-in|layin|dunk|jumper|three|shot|hook)$/.test(wordOf(two))) return undefined;
  // Whom it is done for is no aside.
  if (word === 'for' && /^(him|them)$/.test(wordOf(two))) return undefined;
  if (word === 'for') return /^(hand|ball|double drag|drag|stagger|double)$/.test(wordOf(two)) ? undefined : said.length > 1 ? 'said' : undefined;
  if (word === 'as') return /\bas (an?|the|if|though|fast|hard|wide|far|quick|quickly|late|early|soon|long|high|low|deep|his|our)\b/i.test(text.slice(one.startOffset)) && (ROLES.has(wordOf(two)) || said.length <= 4 || /\bas (fast|hard|wide|far|quick|quickly|late|early|high|low|deep) as\b/i.test(text.slice(one.startOffset))) && two !== undefined ? 'said' : undefined;
  if (DOING.has(word)) return ends && !said.some(({ image }) => image === 'off') ? 'said' : undefined;
  if (/^(with|on|in|under|at|off|from)$/.test(word) && said.length > 1 && (isUnknown(two) || MANNER.has(wordOf(two)))) {
    if (said.some(isPlace)) return undefined;
    if (MANNER.has(wordOf(two)) || said.some((token) => MANNER.has(wordOf(token)))) return 'said';
    return /^(in|on|at)$/.test(word) && behindVerb && !hasPlace(tokens, from, to) ? undefined : 'unread';
  }
  if (NEAR.has(word) && wordOf(said.at(-1)) === 'ball') return hasPlace(tokens, from, to) ? 'said' : undefined;
  if (said.length === 1 && /^(lane line|arc|line|perimeter)$/.test(word) && hasPlace(tokens, from, to)) return 'said';
  if (said.some(isPlace)) return undefined;
  if (said.length === 1 && ADVERBS.has(word)) return isMeant(word, tokens, from) ? undefined : 'said';
  if (NEAR.has(word)) return said.some((token) => DEFENCE.has(wordOf(token))) ? (hasPlace(tokens, from, to) ? 'said' : 'unread') : isUnknown(said.at(-1)) && (hasPlace(tokens, from, to) || !behindVerb) ? 'unread' : undefined;
  if (word === 'before') return said.length > 1 ? 'said' : undefined;
  // Behind the verb itself stands what it is done to: a word of which the line would be nothing without.
  if (behindVerb && from1 === 0 && !/^(seal|seals|ducks in|duck in|posts up|post up|pins|holds|hold|stands|stand|turns|turn|faces up|squares up|keeps going)$/.test(before.image) && !/^(his|her|hard|real)$/.test(word)) return /ly$/.test(word) ? 'said' : hasPlace(tokens, from, to) && isUnknown(one) && !/ing$/.test(word) ? 'unread' : undefined;
  return isUnknown(one) || (from1 === 1 && verbOf(one.image)?.number !== 'singular') ? 'unread' : undefined;
}

/** `high`, `long` without a place are places of their own; `passes to 3 there`, `stays there`: where he is. */
function isMeant(word: string, tokens: readonly LineToken[], from: number): boolean {
  if (/^(there|here)$/.test(word)) {
    const verb = tokens.findLast((token, index) => index < from && verbOf(token.image) !== undefined);
    if (['pass', 'hand-off', 'hold', 'seal', 'shot'].includes(verbOf(wordOf(verb))?.class ?? '')) return false;
  }
  return /^(high|low|wide|deep|long|behind|away|there|here)$/.test(word) && !hasPlace(tokens, from, from + 1, false);
}

/** Whether the clause says a place besides. */
function hasPlace(tokens: readonly LineToken[], from: number, to: number, orMan = true): boolean {
  const begin = tokens.findLastIndex((token, index) => index < from && ENDS.has(token.image) && goesOn(tokens, index + 1)) + 1;
  const end = tokens.findIndex((token, index) => index >= to && ENDS.has(token.image));
  return tokens.slice(begin, end < 0 ? tokens.length : end).some((token, index) => (begin + index < from || begin + index >= to) && (isPlace(token) || (orMan && index > 1 && isPlayer(token))));
}

/** A verb that may be somebody's: behind `to`, a comma, `and`, or a player. */
function isAction(token: LineToken, before: LineToken | undefined): boolean {
  const verb = verbOf(token.image);
  if (verb === undefined || verb.class === 'event') return false;
  return isPlayer(before) || ['and', ',', 'then', 'to', 'up to', 'who', 'he'].includes(wordOf(before)) ? !(verb.number === 'plural' && PURPOSES.has(wordOf(token).split(' ')[0]!)) : verb.number === 'singular' && !/^(holds|hooks|hands|pins|picks|screens|double-screens|passes|cuts|blocks)$/.test(token.image);
}
