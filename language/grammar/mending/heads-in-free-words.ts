// A line of a play's head in a coach's own words: how they stand, when it is called, who goes to the boards. What is told is told by a few words,
// wherever in the line they stand; the rest is kept as a remark. Common usage, no source.
import { message, type Message } from '../../message/message.ts';
import { reads, type Broken } from './broken-line.ts';
import { verbOf, type VerbClass } from '../verbs.ts';
import { isSlip } from './mend.ts';
import { isAttacker, rewriting, wholeLine, word, type Recogniser, type SaidOtherwise } from './saying.ts';

export const headsInFreeWords: readonly Recogniser[] = [headInFreeWords];

/** The surest first. */
const SORTS: readonly ((broken: Broken, said: string) => SaidOtherwise | undefined)[] = [howTheyStand, throwerByHisWords, leaveByItsWords, reboundByItsWords, callByItsSeconds];

function headInFreeWords(broken: Broken): SaidOtherwise | undefined {
  const said = plainly(broken);
  if (said === undefined) return undefined;
  for (const hear of SORTS) {
    const found = hear(broken, said);
    if (found) return found;
  }
  return undefined;
}

/** A sentence for the team is not a line of a head. */
const longest = 200;

/** In small letters, without the full stop and with the short words written out. */
function plainly(broken: Broken): string | undefined {
  const said = wholeLine(broken).trim().toLowerCase().replace(/[.!]+$/, '');
  if (said.length > longest || /["“”]/.test(said) || /^(look|step|note|play|section|once|as|when|after \d|until(?! \d+ ?s)|on a miss)\b/.test(said) || isBegunRightly(broken)) return undefined;
  return said.replace(/\bw\/?(?=\s)/g, 'with').replace(/\sn\s/g, ' and ').replace(/\s+/g, ' ');
}

/** A line that begins as it should and then stops, or has a slip of the pen: that is what is wrong with it. */
function isBegunRightly(broken: Broken): boolean {
  const { tokens, index } = broken;
  if (index === 0 || !/^(?:from|call|ball with|rebound|[1-5])$/.test(word(tokens[0]))) return false;
  return broken.token === undefined || (index === tokens.length - 1 && /\b(?:on(?: the)?(?: \w{0,4})?|get)$/.test(wholeLine(broken).trim())) || (!isAttacker(tokens[0]) && isSlip(broken));
}

function told(broken: Broken, line: string, words: (line: string) => Message): SaidOtherwise | undefined {
  const bare = line.replace(/\s*#.*$/, '');
  const fix = reads(bare) ? rewriting(broken, line) : undefined;
  return fix && { code: 'missing-word', from: 0, to: broken.tokens.length, message: words(bare), fixes: [fix] };
}

/** Words that nothing of the line is made of stand behind it, as a remark. */
const withRemark = (line: string, rest: readonly string[]): string => {
  const said = rest.map((words) => words.replace(/^[\s,;:.-]+|[\s,;:.-]+$/g, '')).filter((words) => words !== '');
  return said.length === 0 ? line : `${line} # ${said.join('; ')}`;
};

const squeezed = (words: string): string => words.replace(/[,;:.]/g, ' ').replace(/\s+/g, ' ').trim();

const doesOneOf = (words: string, classes: readonly VerbClass[]): boolean => {
  const atoms = words.replace(/free[- ]throw/g, '').match(/[a-z-]+/g) ?? [];
  return atoms.some((atom, at) => [verbOf(atom), verbOf(`${atom} ${atoms[at + 1]}`)].some((verb) => verb !== undefined && classes.includes(verb.class)));
};

// ---- how they stand ----------------------------------------------------------------------------------------------

const LEAD = /^(?:(?:the |this )?(?:play|set|team|everybody|everyone|all|we|they|girls|boys)? ?(?:is |are )?(?:starts?|starting|begins?|lines? up|sets? up|start)? ?(?:from|in|out of|with|as)? ?(?:an? |the )?)/;
const WITH_THE_BALL = /\b(?:who )?(?:starts? |brings? )?(?:with|has|have|holds?|holding|on|brings|gets?) (?:the |a )?(?:ball|it|rock)(?: up| in (?:his|her|the) hands?)?\b/;
const EACH_WITH_THE_BALL = new RegExp(WITH_THE_BALL, 'g');
const WHO_HAS_IT = /\b(?:the )?(?:ball|rock)(?: (?:has|with|by|is with|is to|is by|starts with|starts by|belongs to|to|goes to|for|in the hands of|at)|:) ?([1-5])\b/;
const MEN = /(?<!\d)((?:[1-5](?: ?(?:,|and|&|\+) ?(?:and )?| (?=[1-5]\b)))*[1-5])\b:? ?([^1-5]*)/g;
const OTHER_FORMATIONS: readonly (readonly [said: RegExp, name: string])[] = [
  [/^(?:five|5|all five|all) (?:outside|out|around)$/, '5-out'], [/^four (?:outside|out|around)$/, '4-out'], [/^three (?:outside|out)$/, '3-out'], [/^(?:a )?four[- ]out$/, '4-out'], [/^(?:a )?five[- ]out$/, '5-out'],
];

interface Standing {
  /** As a from line says them: `2 right wing`. */
  readonly placed: readonly string[];
  readonly rest: readonly string[];
  readonly ball: string | undefined;
  readonly men: number;
}

/** `1 is up top with the ball, 2 left side, 5 at the free throw line`, `box, 4 and 5 up, 2 and 3 down`, `start from horns, the ball has 1` */
function howTheyStand(broken: Broken, all: string): SaidOtherwise | undefined {
  let said = all;
  // With its own word before it the coach's words can stay.
  if (reads(`from ${wholeLine(broken)}`) || !/\b[1-5]\b/.test(said) || doesOneOf(said.replaceAll(EACH_WITH_THE_BALL, ' '), ['pass', 'dribble', 'screen', 'hand-off', 'throw-in', 'shot', 'rebound'])) return undefined;
  const [owned, by] = WHO_HAS_IT.exec(said) ?? [];
  const isFirst = owned !== undefined && said.startsWith(owned);
  if (owned !== undefined) said = said.replace(owned, ' ').replace(/\s+/g, ' ').trim();
  const { base, rest, behind } = baseOf(said);
  const standing = standingIn(behind, base);
  // What is said of nobody is another line's, where it has a number, else a remark.
  const besides = behind.replaceAll(MEN, ' ').replace(/^[\s,]*(?:and|with)?[\s,]*/, '');
  if (standing === undefined || /\d/.test(besides)) return undefined;
  const ball = by ?? standing.ball;
  // Behind its own word nothing is put aside: what is wrong there is told.
  if (/^from\b/.test(said) && (standing.rest.length > 0 || squeezed(besides) !== '')) return undefined;
  if (base === undefined && standing.men === 0 && standing.rest.length === 0 && ball !== undefined && (squeezed(rest) === '' || (isFirst && rest.length < 30))) return told(broken, withRemark(`ball with ${ball}`, [rest]), (text) => message('Who has the ball at the start: write "{text}".', { text }));
  if (base === undefined ? standing.men < 3 : standing.men === 0 && ball === undefined) return undefined;
  const line = `from ${[...(base === undefined ? [] : [base]), ...standing.placed, ...(ball === undefined ? [] : [`ball with ${ball}`])].join(', ')}`;
  return told(broken, withRemark(line, [rest, besides, ...standing.rest]), (text) => message('How the five stand at the start is the "from" line of the play: "{line}".', { line: text }));
}

/** The alignment it begins with, and what stands behind that. */
function baseOf(said: string): { readonly base?: string; readonly rest: string; readonly behind: string } {
  const [, lead = '', behind = ''] = /^(.*?)(?:[:,.]\s*|(?:^|\s)(?=[1-5] (?:is|has|with|at|on|in|left|right|top|l|r)\b)|$)(.*)$/.exec(said) ?? [];
  const name = lead.replace(LEAD, '').replace(/ (?:set|formation|alignment|look|floor)$/, '').trim();
  const other = OTHER_FORMATIONS.find(([words]) => words.test(name))?.[1];
  const base = other ?? (name !== '' && !/^[1-5](?: |$)/.test(name) && reads(`from ${name}`) ? name : undefined);
  if (base !== undefined) return { base, rest: '', behind };
  // What stands before the first man and is no alignment is a remark.
  const [before = ''] = /^[^1-5]*/.exec(said) ?? [];
  return { rest: before.replace(LEAD, ''), behind: said.slice(before.length) };
}

function standingIn(said: string, base: string | undefined): Standing | undefined {
  const placed: string[] = [];
  const rest: string[] = [];
  let ball: string | undefined;
  let count = 0;
  for (const [whole, men = '', words = ''] of said.matchAll(MEN)) {
    const who = men.match(/[1-5]/g)!;
    const hasIt = WITH_THE_BALL.test(words);
    if (hasIt && who.length === 1) ball ??= who[0];
    const [spot, ...besides] = words.replace(WITH_THE_BALL, ' ').replace(/^\s*,/, '').split(',');
    const place = placeIn(spot!, { isPair: who.length > 1, hasBall: hasIt, isGuard: men === '1', base });
    if (place === '') continue;
    const line = place === undefined ? undefined : `${who.join(' and ')} ${place}`;
    if (line !== undefined && reads(`from ${line}`)) {
      placed.push(line);
      count += who.length;
      rest.push(...besides.filter((each) => /[a-z]/.test(each.replace(/\band\b/, ''))));
    } else rest.push(whole);
  }
  return rest.length > placed.length + Number(base !== undefined) ? undefined : { placed, rest, ball, men: count };
}

const FILLERS = /\b(?:is|are|starts?|stands?|begins?|waits?|sits?|lines? up|at|in|on|the|an?|of|to|standing|her|his|over|and|while|both|out|position|spot|area|also|trailing)\b/g;
const PLACE_NAMES: readonly (readonly [said: RegExp, name: string])[] = [
  [/^(?:middle )?(?:free[- ]throw|foul|ft)(?: line)?$/, 'free-throw line'], [/^(?:low )?post$|^(?:under|by|below|near) (?:basket|hoop|rim|ring)$|^low$/, 'low post'], [/^blocks?$|^box(?:es)?$/, 'block'], [/^high(?: post)?$/, 'high post'],
  [/^(?:deep )?corners?$/, 'corner'], [/^short corners?$/, 'short corner'], [/^elbows?$/, 'elbow'], [/^wings?$|^side$/, 'wing'], [/^slots?$|^guard$/, 'slot'], [/^dunkers?$/, 'dunker spot'], [/^mid[- ]post$/, 'mid-post'], [/^nail$/, 'nail'],
  [/^(?:up )?top(?: key)?$|^point$|^(?:up )?front$/, 'top'],
];
const SHORT_PLACES: Readonly<Record<string, string>> = { rw: 'right wing', lw: 'left wing', rc: 'right corner', lc: 'left corner', re: 'right elbow', le: 'left elbow', rb: 'right block', lb: 'left block' };

/** The spot that is meant; empty where nothing is said of one. */
function placeIn(words: string, { isPair, hasBall, isGuard, base }: { readonly isPair: boolean; readonly hasBall: boolean; readonly isGuard: boolean; readonly base: string | undefined }): string | undefined {
  const said = squeezed(squeezed(words).replace(FILLERS, ' '));
  if (said === '') return '';
  if (SHORT_PLACES[said] !== undefined) return SHORT_PLACES[said];
  const side = /\b(left|right|l|r)(?:hand)?\b(?: side)?/.exec(said);
  const name = squeezed(side === null ? said : said.replace(side[0], ' ')) || 'side';
  const where = side === null ? '' : side[1]!.startsWith('l') ? 'left ' : 'right ';
  if (where === '' && /^(?:middle|centre|center|up)$/.test(name) && !isPair) return hasBall || isGuard ? 'top' : undefined;
  if (base === 'box' && isPair && /^(?:up|high|down|low)$/.test(name)) return /up|high/.test(name) ? 'elbows' : 'blocks';
  const spot = PLACE_NAMES.find(([pattern]) => pattern.test(name))?.[1];
  if (spot === undefined || (spot === 'wing' && where === '' && name === 'side')) return undefined;
  if (where === '' && isPair && /^(?:corner|elbow|wing|slot|block)$/.test(spot)) return `${spot}s`;
  return `${where}${where === '' && spot === 'low post' ? 'rim' : spot}`;
}

// ---- who throws in -----------------------------------------------------------------------------------------------

const THROWS_IN = /\b([1-5]) (?:takes|throws|has|gets|brings|inbounds|passes)?(?: (?:it|the ball|ball))?(?: (?:in|out))?(?: of bounds)?$|\bthrower:? ([1-5])$/;

/** `baseline throw-in, right of the basket, 3 takes it out`, `press break, after their basket, 4 takes it out` */
function throwerByHisWords(broken: Broken, said: string): SaidOtherwise | undefined {
  if (!/\b(?:throw-?in|throws?(?: it)? in|inbounds?|side ?out|out of bounds|takes (?:it|the ball) out|press break)\b/.test(said)) return undefined;
  const men = said.match(/\b[1-5]\b/g) ?? [];
  const [, one, other] = THROWS_IN.exec(said) ?? [];
  const who = one ?? other;
  if (men.length !== 1 || who === undefined) return undefined;
  const isFar = /\bpress|their (?:basket|score|make)|made basket/.test(said);
  const line = isFar ? 'far baseline' : /\b(?:base ?line|end ?line|under (?:the )?(?:basket|hoop|rim))\b/.test(said) ? 'baseline' : /\bside ?(?:line)?\b/.test(said) ? 'sideline' : undefined;
  const [side] = /\b(?:left|right)\b/.exec(said) ?? [];
  if (line === undefined || (!isFar && side === undefined)) return undefined;
  return told(broken, `${who} inbounds from the ${side === undefined ? '' : `${side} `}${line}`, (text) => message('Say who throws in, and where: "{line}".', { line: text }));
}

// ---- the boards --------------------------------------------------------------------------------------------------

const BOARDS = /\b(?:rebound\w*|rebs?|boards?|crash(?:es)?|glass|put-?backs?|go(?:es)? and gets? it)\b/;
const BACK = /\b(?:back|bk|home|safe|safety|balance|secure|protect|defend|defen[cs]e|defensive|retreat|half(?: ?court)?)\b/;
/** Said of who goes to the boards, and changes nothing of it; whatever else is said is kept as a remark. */
const AROUND_A_REBOUND = /\b(?:rebound\w*|rebs?|boards?|crash(?:es)?|glass|offensive|put-?backs?|go(?:es)?|gets?|runs?|stays?|are|is|and|it|the|to|too|also|as well|at|in|on|of|with|him|them|helps?|takes?|long|one|mid|middle|corner|after|shots?|while|our|basket|down|behind|back|bk|home|safe|safety|balance|secure|protects?|defend|defen[cs]e|defensive|retreat|half(?: ?court)?|from|then|everybody|everyone|else|others|rest|if it doesn.t|for)\b/g;
const THE_OTHERS = /\b(?:everybody else|everyone else|(?:the )?others|(?:the )?rest|all others)\b/;
const NOT_OF_A_REBOUND: readonly VerbClass[] = ['pass', 'dribble', 'screen', 'hand-off', 'throw-in', 'seal'];

/** `3, 4, 5 board, 1 and 2 back`, `rebound 3, 4 and 5, 1 and 2 run back`, `to the rebound go 3, 4, 5, back go 1, 2`, `boards 4 and 5, everybody else back` */
function reboundByItsWords(broken: Broken, all: string): SaidOtherwise | undefined {
  const said = all.replace(/\bhits? the glass\b/g, 'crash').replace(/^(\D*\b(?:[1-5] ?)+) ?, ?(?=(?:[1-5] )+\D+$)|(\band [1-5]),(?= [1-5])/g, '$1$2 ;');
  const [others] = THE_OTHERS.exec(said) ?? [];
  if (!BOARDS.test(said) || new Set(said.match(/\b[1-5]\b/g)).size < (others === undefined ? 3 : 1) || /\bbut\b|\bnobody\b|\bno ?one\b|^(?:from|call|ball)\b|\bball with\b/.test(said) || doesOneOf(said, NOT_OF_A_REBOUND)) return undefined;
  const end = others === undefined ? said.length : said.indexOf(others);
  if (others !== undefined && !BACK.test(said.slice(end))) return undefined;
  const lists = listsIn(said.slice(0, end));
  const [crash, back]: [string[], string[]] = [[], []];
  for (const { who, what } of lists) {
    // Of two words the first says where he goes: `back in case of a long rebound`.
    const goesBack = BACK.test(what) && !(BOARDS.test(what) && what.search(BOARDS) < what.search(BACK));
    (goesBack ? back : crash).push(...who.match(/[1-5]/g)!);
  }
  const does = (men: readonly string[], one: string, many: string): string[] => (men.length === 0 ? [] : [`${men.join(', ')} ${men.length > 1 ? many : one}`]);
  const rest = others === undefined ? does(back, 'gets back', 'get back') : ['others get back'];
  if (crash.length === 0 || (others !== undefined && back.length > 0) || new Set([...crash, ...back]).size < crash.length + back.length) return undefined;
  const isMore = squeezed(said.replace(/[1-5&+]/g, ' ').replace(AROUND_A_REBOUND, ' ')) !== '';
  const line = `rebound ${[...does(crash, 'crashes', 'crash'), ...rest].join(', ')}`;
  return told(broken, withRemark(line, isMore ? [wholeLine(broken).trim()] : []), (text) => message('Who goes to the boards when the shot goes up, and who gets back, is the "rebound" line: "{line}".', { line: text }));
}

/** Men, and what is said of them: behind them, or before them where the line ends with a man. */
function listsIn(said: string): readonly { readonly who: string; readonly what: string }[] {
  if (/[1-5] ?;? *$/.test(said)) return [...said.matchAll(/([^1-5]+)((?:[1-5](?: ?(?:,|and|&) ?(?:and )?| )?)+)/g)].map(([, what = '', who = '']) => ({ who, what }));
  const lists = [...said.matchAll(MEN)].map(([, who = '', what = '']) => ({ who, what }));
  // `rebound 3, 4 and 5; 1 and 2 run back`: of whom nothing is said behind, the first word is.
  const [first = ''] = /^[^1-5]*/.exec(said) ?? [];
  return lists.map(({ who, what }) => ({ who, what: /[a-z]/.test(what.replace(/\band\b/g, '')) ? what : first }));
}

// ---- what is left ------------------------------------------------------------------------------------------------

/** `want 3 left if we miss`, `save 4 for the board` */
function leaveByItsWords(broken: Broken, said: string): SaidOtherwise | undefined {
  const [, seconds] = /^(?:we )?(?:want|save|keep|have|need)(?: at least| about)? (\d{1,2})(?: ?s(?:ec(?:ond)?s?)?)?(?: left)? (?:if we miss|after a miss|after the missed shot|for the (?:rebounds?|boards?|put-?back|tip-?in|second chance)s?)$/.exec(said) ?? [];
  if (seconds === undefined) return undefined;
  return told(broken, `leave ${seconds} seconds`, (line) => message('Here this is said so: "{line}".', { line }));
}

// ---- when it is called -------------------------------------------------------------------------------------------

const UNIT = /\d ?(?:s|secs?|seconds?)\b|\bon (?:the )?(?:game )?clock\b|\bleft\b|\bor (?:more|less)\b|\band (?:under|below|less|more|up)\b|\bat (?:least|most)\b|\bmin(?:imum)?\b|\bplayable\b|\bto (?:go|play)\b/;
/** What is needed without one may be points. */
const BEGINS_A_CALL = /^(?:call|announce|ask|run it|use it|dial)\b/;
/** Said besides, and nothing of it changes. */
const AROUND_A_CALL = /\b(?:call|dial|announce|ask|run|use|play|good|ok|okay|fine|best|need|needs|we|it|this|one|with|at|from|until|till|when|there|are|is|about|around|for|to|on|the|game|period|clock|left|or|more|less|and|under|below|up|than|not|at least|least|at most|most|min|minimum|max|maximum|go|playable|seconds?|secs?|s|remaining|early|only|if|have|has|you|be|of|time)\b/g;

/** Two numbers and what joins them. */
const RANGE = /^\D*\d+(?:[^\d,]*(?:,? ?(?:or|to|not less than|at least|at most)|-|–| and) ?(?:at least |at most )?\d+)+\D*$/;

/** `we need about 15 seconds for this one`, `good with 3 to 8 seconds left`, `until 11 seconds playable`, `7 secs ok` */
function callByItsSeconds(broken: Broken, said: string): SaidOtherwise | undefined {
  if ((!UNIT.test(said) && !BEGINS_A_CALL.test(said)) || /shot clock|half ?court|time-?out|\bafter\b|\blater\b|\bshot\b|\bfouls?\b/.test(said)) return undefined;
  const [head, ...reasons] = said.split(/,? (?=because\b|so that\b|since\b)|, (?=\D+$)/);
  const numbers = [...new Set((head!.match(/(?<![\w.-])\d{1,2}(?:\.\d)?(?![\w.]|-\d-)|(?<=\d-)\d{1,2}\b|\b\d{1,2}(?=-\d{1,2}\b)/g) ?? []).map(Number))].sort((a, b) => a - b);
  const besides = squeezed(head!.replace(/\d+(?:\.\d)?/g, ' ').replace(AROUND_A_CALL, ' ').replace(/[-–,]/g, ' '));
  if (numbers.length === 0 || numbers.length > 3 || besides !== '' || (numbers.length > 1 && !RANGE.test(head!))) return undefined;
  const range = numbers.length === 1 ? `${numbers[0]}` : `${numbers[0]} to ${numbers.at(-1)}`;
  return told(broken, withRemark(`call with ${range} on the clock`, reasons), (line) => message('How much is left when it is called has a line of its own: "{line}".', { line }));
}
