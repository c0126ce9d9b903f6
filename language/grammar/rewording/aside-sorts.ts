// What a word or several are that a line is whole without: known to change nothing, words that could have meant something, or words that must not
// be passed over. The rules are tried in order, and the first that knows the words decides.
import { isPlayer, wordOf, type LineToken } from '../line-token.ts';
import { verbOf } from '../verbs.ts';
import { WAITS } from '../waits.ts';

const SIDES: ReadonlySet<string> = new Set(['left', 'right', 'opposite', 'near', 'far', 'weak-side', 'strong-side', 'ball-side', 'other', 'deep']);
const wordsIn = (words: string): ReadonlySet<string> => new Set(words.split(' '));

/** Left out, the line would say the opposite, or would hang on something that it no longer names. */
export const TURNS = wordsIn("if unless not never no without except instead only don't doesn't doesnt dont can't cant isn't isnt won't until till otherwise whether or either once when whenever while neither nor but maybe sometimes");
/** What one does for a purpose. Behind `to`, none of these is a place. */
const PURPOSES = wordsIn('keep keeping occupy pull draw drag stretch create make free open empty clear space spread balance attract tempt lure hold tie hide fool sell bring lead show give help relieve threaten distract confuse freeze force get let allow avoid protect beat take change improve shorten widen flatten stop start begin buy set be look find see read catch receive score finish shoot attack play pass drive work go come move stay wait use run maintain support replace provide offer challenge test punish break outnumber overload isolate invite encourage deny seal rescue safety restart reset settle flow clear-out disguise hunt lift loosen line feed follow meet react recover respect cover guard tag');
/** Those that speak of others without moving them. */
const OF_OTHERS = wordsIn('keep occupy pull draw drag stretch create make free open empty clear space tempt lure hold tie hide fool give help relieve threaten distract confuse freeze force let allow protect show support provide offer see watch read meet');
const DOING = wordsIn('looking trying hoping ready calling asking showing facing leaving keeping waiting reading hunting watching holding pointing threatening pretending acting giving making taking expecting seeing demanding wanting using staying being getting creating drawing pulling going coming prepared eyes hands feet head chest palms knees weight');
/** Behind `with`, `on`, `in`, `under`, `at`: how somebody does it. */
const MANNER = wordsIn('left right hand hands back backs pace speed purpose force body shoulder shoulders feet foot eyes balance rhythm control stride time catch bounce move target toes palms inside outside both two full tempo intensity patience energy power contact arms high low knees chest head dribble dribbles live pass timing open short stance second half');
const ADVERBS = wordsIn('first second last again too also together early late hard fast away right now once twice here there strong tight low high wide deep behind downhill already just alone well instantly next both each good nice big slow square ready all quick');
const ROLES = wordsIn('decoy outlet option target threat trailer release safety release-valve valve screener cutter distraction bait guard shooter helper finisher second third first last low high weak-side strong-side if though');
/** Who stands in the way, not where. */
const DEFENCE = wordsIn('defence defense defender defenders zone press trap traffic coverage help wall bodies everyone everybody man guy men crowd pack line arc three-point three 3-point 3 screen mess double opponents opponent others guards bigs front back outside perimeter edge backside top traffic');
const NEAR: ReadonlySet<string> = new Set(['in front of', 'next to', ...wordsIn('behind around past through inside outside between over beyond under ahead against near off of away from in front top along across within round by')]);
const TALKS = wordsIn('waves wave points point signals signal motions nods yells shouts calls call tells tell shows show presents present looks look waving watches eyes reads read asks ask demands demand claps clap');
/** What is spoken of in a list of chances. */
const CHANCES = wordsIn('option look choice read outlet priority');

export const isMeasure = (token: LineToken): boolean => ['SECONDS', 'LENGTH', 'SPEED', 'NUMBER', 'FORM', 'STRING', 'NEGATIVE', 'LABEL'].includes(token.tokenType.name);
export const isUnknown = (token: LineToken | undefined): boolean => token?.tokenType.name === 'UNKNOWN';
export const isPlace = (token: LineToken | undefined): boolean => PLACES.has(token?.image ?? '');
const PLACES: ReadonlySet<string> = new Set([
  'rim', 'basket', 'hoop', 'ring', 'bucket', 'block', 'blocks', 'low post', 'high post', 'mid-post', 'elbow', 'elbows', 'nail', 'top', 'top of the key', 'slot', 'slots', 'wing', 'wings', 'corner', 'corners', 'short corner', 'dunker spot', 'free-throw line',
  'half court', 'hash', 'backcourt', 'sideline', 'baseline', 'lane', 'paint', 'key', 'left side', 'right side', 'weak-side', 'ball-side', 'strong-side', 'far side', 'near side', 'opposite side', 'other side', 'up top', 'out top', 'middle',
]);
export const ENDS: ReadonlySet<string> = new Set([',', 'and', 'then', ':']);
export const isSubject = (token: LineToken | undefined): boolean => ['everyone', 'everybody', 'both', 'others', 'rest', 'he', 'they'].includes(token?.image ?? '');

/** Whether an action begins there. */
export function goesOn(tokens: readonly LineToken[], at: number): boolean {
  const first = tokens[at];
  if (first === undefined) return false;
  if (isPlayer(first) || isSubject(first)) return true;
  return verbOf(first.image) !== undefined || (first.image === 'then' && verbOf(wordOf(tokens[at + 1])) !== undefined);
}

/** `said`: known to change nothing; `unread`: words that could have meant something. */
export type AsideSort = 'said' | 'unread';
/** `kept`: they are never passed over. */
type Verdict = AsideSort | 'kept' | undefined;

/** The words in question, and what stands round them. */
interface Span {
  readonly tokens: readonly LineToken[];
  /** Tokens from, up to and not including to. */
  readonly from: number;
  readonly to: number;
  /** Tells what articles the tokens have lost. */
  readonly text: string;
  /** Whether the line could end before them. */
  readonly isWhole: boolean;
  readonly words: readonly LineToken[];
  readonly opener: string;
  readonly before: LineToken | undefined;
  readonly behindVerb: boolean;
  /** Of a look, before its colon or behind it. */
  readonly isLook: boolean;
  readonly isBehindTheColon: boolean;
  readonly isBeforeTheColon: boolean;
  /** A deed ends behind them, or the line. */
  readonly ends: boolean;
  /** They begin with what joins two deeds. */
  readonly isJoined: boolean;
  /** Without that joint. */
  readonly said: readonly LineToken[];
  readonly one: LineToken | undefined;
  readonly two: LineToken | undefined;
  readonly word: string;
}

type Rule = (span: Span) => Verdict;

const saidIf = (is: boolean): Verdict => (is ? 'said' : 'kept');
const place = ({ tokens, from, to }: Span): boolean => hasPlace(tokens, from, to);

/** Another look is a line of its own. */
const anotherLook: Rule = ({ words, tokens, from }) => (words.some((token, at) => token.image === 'look' && isPlayer(tokens[from + at + 1])) ? 'kept' : undefined);

/** `instead`: of what, the step says. `as if to screen`. */
const knownByThemselves: Rule = ({ words, opener, ends }) => {
  if (!ends) return undefined;
  return (words.length === 1 && /^(for the rebound|instead)$/.test(opener)) || (opener === 'as' && /^(if|though)$/.test(wordOf(words[1]))) ? 'said' : undefined;
};

/** `in case it comes back out`: for that he goes there. */
const inCase: Rule = ({ opener, words, ends }) => (opener === 'in' && wordOf(words[1]) === 'case' && ends ? 'said' : undefined);

/** `corner right` is the wrong way round. */
const sideBehindThePlace: Rule = ({ words, opener, before }) => (words.length === 1 && (opener === 'left' || opener === 'right') && isPlace(before) ? 'kept' : undefined);

/** Right behind the man stands his verb, behind a side the place. */
const whereTheVerbStands: Rule = ({ isWhole, before, isBehindTheColon }) => (!isWhole && before !== undefined && (isPlayer(before) || isSubject(before) || ENDS.has(before.image)) && !isBehindTheColon ? 'kept' : undefined);

/** `look 5 deep` */
const howTheLookerStands: Rule = ({ isBeforeTheColon, words, opener }) => (isBeforeTheColon && words.length === 1 && /^(back|up|out|down|in|wide|high|low|hard|inside|deep|long|early|late|away|over|there|first|again|behind|underneath)$/.test(opener) ? 'said' : undefined);

/** `look 5 behind X5`: where the defender is, the picture shows. */
const whereHisDefenderIs: Rule = ({ isLook, isBehindTheColon, tokens, to, words, opener }) => {
  if (!isLook || isBehindTheColon || !NEAR.has(opener) || tokens.slice(0, to).some(({ image }) => image === ':') || words.some((token) => isPlayer(token) && !token.image.startsWith('x'))) return undefined;
  return saidIf(words.some((token) => isPlayer(token) || DEFENCE.has(wordOf(token))));
};

/** `skip to the corner`: he is there, or it would be no look. */
const whereThePassGoes: Rule = ({ isBehindTheColon, words, opener }) => {
  if (!isBehindTheColon || !/^(to|into|in|at|toward|across|over|on|off)$/.test(opener)) return undefined;
  const isWhere = (token: LineToken): boolean => isPlace(token) || (opener === 'off' && verbOf(token.image)?.class === 'screen') || SIDES.has(token.image) || ['to', 'into'].includes(token.image) || DEFENCE.has(wordOf(token));
  return words.slice(1).every(isWhere) ? saidIf(words.length > 1) : undefined;
};

/** What a purpose does not want to happen turns nothing round: `so X4 cannot help`. */
const soThat: Rule = ({ ends, opener, words }) => (ends && (opener === 'so' || (opener === ',' && wordOf(words[1]) === 'so')) ? saidIf(!words.some((token) => wordOf(token) === 'if')) : undefined);

/** `because X2 must help`: why, whoever it speaks of. */
const why: Rule = ({ ends, opener, words }) => (ends && (opener === 'because' || (opener === ',' && wordOf(words[1]) === 'because')) ? saidIf(!words.some((token) => wordOf(token) === 'if')) : undefined);

/** `, where 1 can always find him`: what can be done there nobody does. */
const whatCanBeDoneThere: Rule = ({ ends, opener, words }) => {
  const where = opener === ',' ? 1 : 0;
  return ends && wordOf(words[where]) === 'where' && words.slice(where + 1, where + 4).some((token) => /^(can|could)$/.test(wordOf(token))) ? saidIf(!words.some((token) => wordOf(token) === 'if')) : undefined;
};

/** `, never under the basket`, `, no panic`: how it is not done, where the clause says where to or to whom. */
const notSo: Rule = (span) => {
  const { opener, words, ends } = span;
  const not = wordOf(words[1]);
  if (opener !== ',' || !ends || !/^(never|not|no)$/.test(not) || words.length < 3) return undefined;
  const rest = words.slice(2);
  if (rest.some((token) => isPlayer(token) || isMeasure(token) || isPlace(token) || SIDES.has(wordOf(token)) || TURNS.has(wordOf(token)) || ENDS.has(wordOf(token)) || verbOf(token.image) !== undefined)) return undefined;
  return not === 'no' ? (rest.every(isUnknown) ? 'said' : undefined) : place(span) ? 'said' : undefined;
};

const likeWhat: Rule = ({ opener, ends }) => (opener === 'like' ? saidIf(ends) : undefined);

const placeOfTheSide: Rule = ({ before, words }) => (SIDES.has(before?.image ?? '') && isUnknown(words[0]) ? 'kept' : undefined);

const whatTurnsItRound: Rule = ({ words }) => (words.some((token) => TURNS.has(wordOf(token)) && !(wordOf(token) === 'once' && words.length === 1)) ? 'kept' : undefined);

/** `, 5 is the second option`: the order of the looks says it. */
const anotherChance: Rule = ({ isJoined, one, said }) => (isJoined && isPlayer(one) && said.some((token) => CHANCES.has(wordOf(token))) && !said.slice(1).some(isPlayer) ? 'unread' : undefined);

/** Behind a joint: nothing, what goes on behind the words, or a wait. */
const noLinkOfItsOwn: Rule = ({ one, isJoined, tokens, to, words }) => {
  if (one === undefined) return 'kept';
  if (!isJoined) return undefined;
  const goesOnBehind = to < tokens.length && !ENDS.has(wordOf(tokens[to])) && !WAITS.has(wordOf(tokens[to]));
  return goesOnBehind || words.some((token) => WAITS.has(wordOf(token))) ? 'kept' : undefined;
};

/** `, then blorps`, `and 5 blorps`: what he does, that cannot be read. */
const aDeedThatCannotBeRead: Rule = ({ opener, word, one, two, before, tokens, from }) =>
  (opener === ',' && word === 'then' && isUnknown(two)) || (isUnknown(one) && isPlayer(before) && ['and', 'then', ','].includes(wordOf(tokens[from - 2]))) ? 'kept' : undefined;

/** `and waves 2 through`, `and looks up the floor`: a word or a look moves nobody. `and we look inside right away`: the looks say it. */
const wordsAndLooks: Rule = ({ isJoined, word, two, ends, said }) => {
  if (!isJoined) return undefined;
  return TALKS.has(word) || (word === 'we' && ends && /^(look|want|hope|try|like|read|see)$/.test(wordOf(two)) && !said.some(isPlayer)) ? 'said' : undefined;
};

const anotherLink: Rule = ({ isJoined, opener }) => (isJoined && opener !== ',' ? 'kept' : undefined);

const theSafety: Rule = ({ words }) => (words.some((token) => /^(safety|safety-valve)$/.test(wordOf(token))) ? 'kept' : undefined);

/** `across the lane`, `up the sideline`: which way, where the clause says where to. */
const whichWay: Rule = (span) => {
  const { word, said, two } = span;
  if (word === 'over the top' || word === 'across the lane' || word === 'along the baseline') return saidIf(place(span));
  const isAlong = /^(up|down|along|across|through|around)$/.test(word) && said.length === 2 && /^(lane|lane line|baseline|sideline|line|arc|top|free-throw line|key|paint|three-point|perimeter|circle|elbow|outside|wing|middle)$/.test(wordOf(two));
  return isAlong && place(span) ? 'said' : undefined;
};

/** Before a look's colon only what the looker is doing; one unknown word may be the shot. */
const wordsOfALook: Rule = ({ isLook, isBeforeTheColon, tokens, word, one, said }) => {
  if (!isLook || !isBeforeTheColon) return undefined;
  const hasColon = tokens.some(({ image }) => image === ':');
  return hasColon ? (DOING.has(word) ? undefined : 'kept') : isUnknown(one) && said.length === 1 ? 'kept' : undefined;
};

/** `out of nowhere`; `swaps with 3 on the wing`: the place is the other's. */
const outOfWhatAndSwapped: Rule = ({ one, said, before, word }) => ((one!.image === 'out of' && said.slice(1).every(isUnknown)) || (verbOf(before?.image ?? '')?.base === 'swap' && /^(on|in|at)$/.test(word)) ? 'said' : undefined);

/** A man, a time or a deed may be meant, unless the words speak of others: `to keep X2 busy`. */
const aManOrADeed: Rule = ({ word, two, said }) => {
  if ((word === 'to' || word === 'up to') && OF_OTHERS.has(wordOf(two))) return undefined;
  const isMan = said.some((token) => isPlayer(token) || (isMeasure(token) && token.tokenType.name !== 'NUMBER')) && !/^(in|looking|facing|ready|towards)$/.test(word);
  return isMan || said.slice(1).some((token, index) => isAction(token, said[index])) ? 'kept' : undefined;
};

const whatFor: Rule = ({ word, two, ends }) => ((word === 'to' || word === 'up to') && two !== undefined && PURPOSES.has(wordOf(two).split(' ')[0]!) ? saidIf(ends) : undefined);

/** A place that cannot be read is no manner. */
const whereTo: Rule = (span) => {
  const { word, two, said } = span;
  if (!/^(to|into|toward|up to|via|onto|until|at)$/.test(word) || (word === 'at' && MANNER.has(wordOf(two)))) return undefined;
  return !/^(to|up to)$/.test(word) && place(span) && said.length > 1 && !said.some(isPlace) ? 'unread' : 'kept';
};

const handOffsAndScreens: Rule = ({ said, word }) => (said.some(({ image }) => /^(hand off|handoff|shoulder|hip)$/.test(image) || (word === 'for' && verbOf(image)?.class === 'screen')) ? 'kept' : undefined);

/** `for an easy catch`; but `passes to 5 for a layup` is what happens next, or a chance, and whom it is done for is no aside. */
const forWhat: Rule = ({ word, before, two, said }) => {
  if (word !== 'for') return undefined;
  if ((isPlayer(before) && /^(layup|lay-up|lay-in|layin|dunk|jumper|three|shot|hook)$/.test(wordOf(two))) || /^(him|them|hand|ball|double drag|drag|stagger|double)$/.test(wordOf(two))) return 'kept';
  return saidIf(said.length > 1);
};

/** `as a decoy`, `as hard as he can`; `as` may begin a wait. */
const asWhat: Rule = ({ word, text, one, two, said }) => {
  if (word !== 'as') return undefined;
  const behind = text.slice(one!.startOffset);
  const isLikeness = /\bas (an?|the|if|though|fast|hard|wide|far|quick|quickly|late|early|soon|long|high|low|deep|his|our)\b/i.test(behind);
  const isShort = ROLES.has(wordOf(two)) || said.length <= 4 || /\bas (fast|hard|wide|far|quick|quickly|late|early|high|low|deep) as\b/i.test(behind);
  return saidIf(isLikeness && isShort && two !== undefined);
};

const doingWhat: Rule = ({ word, ends, said }) => (DOING.has(word) ? saidIf(ends && !said.some(({ image }) => image === 'off')) : undefined);

/** `with his left`, `on two feet` */
const inWhatManner: Rule = (span) => {
  const { word, two, said, behindVerb } = span;
  if (!/^(with|on|in|under|at|off|from)$/.test(word) || said.length < 2 || !(isUnknown(two) || MANNER.has(wordOf(two)))) return undefined;
  if (said.some(isPlace)) return 'kept';
  if (said.slice(1).some((token) => MANNER.has(wordOf(token)))) return 'said';
  return /^(in|on|at)$/.test(word) && behindVerb && !place(span) ? 'kept' : 'unread';
};

const nearTheBall: Rule = (span) => (NEAR.has(span.word) && wordOf(span.said.at(-1)) === 'ball' ? saidIf(place(span)) : undefined);

const theLineItself: Rule = (span) => (span.said.length === 1 && /^(lane line|arc|line|perimeter)$/.test(span.word) && place(span) ? 'said' : undefined);

const aPlaceInIt: Rule = ({ said }) => (said.some(isPlace) ? 'kept' : undefined);

const adverb: Rule = ({ said, word, tokens, from }) => (said.length === 1 && ADVERBS.has(word) ? saidIf(!isMeant(word, tokens, from)) : undefined);

const nearWhom: Rule = (span) => {
  const { word, said, behindVerb } = span;
  if (!NEAR.has(word)) return undefined;
  if (said.some((token) => DEFENCE.has(wordOf(token)))) return place(span) ? 'said' : 'unread';
  return isUnknown(said.at(-1)) && (place(span) || !behindVerb) ? 'unread' : 'kept';
};

const beforeWhat: Rule = ({ word, said }) => (word === 'before' ? saidIf(said.length > 1) : undefined);

/** Behind the verb itself stands what it is done to: a word of which the line would be nothing without. */
const whatItIsDoneTo: Rule = (span) => {
  const { behindVerb, isJoined, before, word, one } = span;
  if (!behindVerb || isJoined || /^(seal|seals|ducks in|duck in|posts up|post up|pins|holds|hold|stands|stand|turns|turn|faces up|squares up|keeps going)$/.test(before!.image) || /^(his|her|hard|real)$/.test(word)) return undefined;
  if (/ly$/.test(word)) return 'said';
  // `run a two-man game` is no way to go.
  if (verbOf(before!.image)?.base === 'run') return 'kept';
  return place(span) && isUnknown(one) && !/ing$/.test(word) ? 'unread' : 'kept';
};

const anyWord: Rule = ({ one, isJoined }) => (isUnknown(one) || (isJoined && verbOf(one!.image)?.number !== 'singular') ? 'unread' : 'kept');

const RULES: readonly Rule[] = [
  anotherLook, knownByThemselves, inCase, sideBehindThePlace, whereTheVerbStands, howTheLookerStands, whereHisDefenderIs, whereThePassGoes, soThat, why, whatCanBeDoneThere, notSo, likeWhat, placeOfTheSide, whatTurnsItRound,
  // What stands behind a joint, if they begin with one.
  anotherChance, noLinkOfItsOwn, aDeedThatCannotBeRead, wordsAndLooks, anotherLink, theSafety, whichWay, wordsOfALook, outOfWhatAndSwapped, aManOrADeed,
  whatFor, whereTo, handOffsAndScreens, forWhat, asWhat, doingWhat, inWhatManner, nearTheBall, theLineItself, aPlaceInIt, adverb, nearWhom, beforeWhat, whatItIsDoneTo, anyWord,
];

/** Of the tokens from, up to and not including to; nothing where they are not passed over. */
export function sortOfAside(tokens: readonly LineToken[], from: number, to: number, text: string, isWhole: boolean): AsideSort | undefined {
  const words = tokens.slice(from, to);
  if (words.length === 0) return undefined;
  const opener = wordOf(words[0]);
  const isLook = tokens[0]!.image === 'look';
  const colon = isLook ? tokens.findIndex(({ image }) => image === ':') : -1;
  const isJoined = opener === ',' || opener === 'and' || opener === 'then';
  const said = isJoined ? words.slice(1) : words;
  const before = tokens[from - 1];
  const span: Span = {
    tokens, from, to, text, isWhole, words, opener, before, behindVerb: before !== undefined && verbOf(before.image) !== undefined,
    isLook, isBehindTheColon: isLook && colon >= 0 && from > colon, isBeforeTheColon: isLook && (colon < 0 || from < colon), ends: to === tokens.length || ENDS.has(wordOf(tokens[to])),
    isJoined, said, one: said[0], two: said[1], word: wordOf(said[0]),
  };
  for (const rule of RULES) {
    const verdict = rule(span);
    if (verdict !== undefined) return verdict === 'kept' ? undefined : verdict;
  }
  return undefined;
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
