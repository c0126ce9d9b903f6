import { message, type Message } from '../../message/message.ts';
import { endOf, endOfWords, isVerb, said, singularAt, startWithArticles, tried, wants, written, type Broken } from './broken-line.ts';
import { isPlayer } from '../line-token.ts';
import type { FaultCode, LineFault, LineFix } from '../line-fault.ts';
import { isBegun, mends, quotes, type Mend } from './mend.ts';
import { otherNumber, singular } from '../verbs.ts';
import { toldInOwnWords } from './said-in-a-look.ts';
import { saidOtherwise } from './said-otherwise.ts';
import type { SaidOtherwise } from './saying.ts';
import { describeWanted } from './wanted-words.ts';
import { whatThereIs } from './what-there-is.ts';

const LINE_BEGINS = message('A line begins with a player and what he does ("3 cuts to rim") or with a word like step, look, note, from or call.');

type Recogniser = (broken: Broken) => LineFault | undefined;
/** Mistakes that have a message of their own, the surest first. */
const RECOGNISERS: readonly Recogniser[] = [
  openQuote, formationWithoutHyphens, goesOnWithNobody, otherWords, noSuchPlayer, verbFirst, articleAsName, unfinished, whoDoesIt, noVerb, unitMissing, nameWithoutQuotes,
];

/** What is wrong with a line that the parser refused: the exact place, what was wanted there, and what would mend it. */
export function faultOf(broken: Broken): LineFault {
  for (const recognise of RECOGNISERS) {
    const fault = recognise(broken);
    if (fault) return fault;
  }
  return generalFault(broken);
}

function fault(code: FaultCode, at: number, to: number, message: Message, fixes: readonly (LineFix | undefined)[] = [], params: LineFault['params'] = {}, isUnfinished = false): LineFault {
  return { code, at, to, message, params, fixes: fixes.filter((fix) => fix !== undefined), unfinished: isUnfinished };
}

/** Columns of the token that does not fit, or of the line's last word. */
function place(broken: Broken): { at: number; to: number } {
  if (broken.token) return { at: broken.token.startOffset, to: endOf(broken.token) };
  const last = broken.tokens.at(-1);
  return last ? { at: last.startOffset, to: endOf(last) } : { at: 0, to: broken.text.length };
}

function openQuote(broken: Broken): LineFault | undefined {
  const { openQuote: at } = broken.lexed;
  if (at === undefined || broken.token?.startOffset !== at) return undefined;
  const end = broken.text.trimEnd().length;
  const fixes: LineFix[] = [];
  // Behind the first word that makes a readable line, else at the line's end.
  const ends = [...broken.text.slice(at + 1, end).matchAll(/[^\s:,](?=[\s:,](?!#)|$)/g)].map((match) => at + 2 + match.index).slice(0, 12);
  for (const to of [...ends, end]) {
    const fix = tried(broken, message('Close the quote behind "{words}"', { words: broken.text.slice(at + 1, to) }), [{ at: to, to, text: '"' }]);
    if (fix && !fixes.some((other) => other.edits[0]!.at === to)) fixes.push(fix);
    if (fixes.length === 2) break;
  }
  return fault('open-quote', at, end, message('This quote is never closed. Put a " behind the last word that belongs to it.'), fixes, {}, true);
}

function otherWords(broken: Broken): LineFault | undefined {
  const said = saidOtherwise(broken);
  // Of a look a saying that has no mend, or leaves words out, says less than the look put together anew.
  const look = said?.fixes.some((fix) => fix !== undefined && fix.edits.some(({ text }) => text !== '')) === true ? undefined : toldInOwnWords(broken);
  if (look) return { ...faultSaid(broken, look), unfinished: !broken.token || isBegun(broken) };
  return said && faultSaid(broken, said);
}

function faultSaid(broken: Broken, { code, from, to, message, fixes }: SaidOtherwise): LineFault {
  const last = broken.tokens[to - 1] ?? broken.tokens.at(-1)!;
  return fault(code, (broken.tokens[from] ?? last).startOffset, endOf(last), message, fixes, { found: written(broken, from, to) }, !broken.token);
}

function noSuchPlayer(broken: Broken): LineFault | undefined {
  const players = (token: Broken['token']): boolean => token !== undefined && (token.tokenType.name === 'NUMBER' || (token.tokenType.name === 'UNKNOWN' && /^[xX]\d+$/.test(token.image)));
  const first = broken.tokens[0];
  // `6 "Bo"` is a line of a roster, so that `6 cuts` fails only at the verb.
  const wrong = players(broken.token) && wants(broken.wanted, 'PLAYER', 'XPLAYER', 'SUBJECT') && !wants(broken.wanted, 'NUMBER') ? broken.token : broken.index <= 1 && players(first) && broken.tokens.length > 1 ? first : undefined;
  if (!wrong) return undefined;
  const shown = broken.text.slice(wrong.startOffset, endOf(wrong));
  const told = message('There is no player {player}. The offence is 1 to 5, the defence X1 to X5.', { player: shown.toUpperCase() });
  return fault('no-such-player', wrong.startOffset, endOf(wrong), told, [], { player: shown });
}

/** `then rolls`, `, then rolls` as a line of its own: who goes on stands in the line above. */
function goesOnWithNobody({ text, tokens }: Broken): LineFault | undefined {
  const at = tokens.findIndex(({ image }) => !['then', 'and', ','].includes(image));
  const verb = tokens[at];
  if (at < 1 || verb === undefined || !isVerb(verb)) return undefined;
  const end = endOf(verb);
  const told = message('Who {verb}? What goes on stands behind the line above, "4 ball-screens for 1, then {verb}", or names its player: "4 {verb}".', { verb: singular(verb.image) });
  return fault('verb-first', tokens[0]!.startOffset, end, told, [], { verb: text.slice(verb.startOffset, end) });
}

function verbFirst(broken: Broken): LineFault | undefined {
  const [verb, who] = broken.tokens;
  if (broken.index !== 0 || !verb || !isVerb(verb)) return undefined;
  const at = verb.startOffset;
  const shown = written(broken, 0);
  if (!isPlayer(who)) return fault('verb-first', at, endOf(verb), message('Who {verb}? Say the player first: "3 {verb} …".', { verb: singular(verb.image) }), [], { verb: shown }, broken.tokens.length === 1);
  const player = written(broken, 1);
  const words = `${player} ${singular(verb.image)}`;
  const fix = tried(broken, message('Write "{words}"', { words }), [{ at, to: endOf(who!), text: words }]);
  return fault('verb-first', at, endOf(who!), message('The player comes first: "{words} …".', { words }), [fix], { verb: shown, player });
}

function unfinished(broken: Broken): LineFault | undefined {
  const { token, tokens, index } = broken;
  if (token && (index !== tokens.length - 1 || !isBegun(broken))) return undefined;
  if (!token && broken.follow.canEnd(broken.walk.configs)) return undefined;
  const { at, to } = place(broken);
  const wanted = describeWanted(broken.wanted);
  const before = written(broken, Math.max(0, index - 2), index);
  const follows = before ? message('After "{before}" comes {wanted}.', { before, wanted }) : message('The line begins with {wanted}.', { wanted });
  if (!token && onlySaysWhen(broken)) return fault('line-unfinished', at, to, message('So far the line only says when. Write a comma behind it, and who does what: "once 4 is set, 3 cuts off 4".'), [], { wanted }, true);
  if (!token) return fault('line-unfinished', at, to, message('The line stops too early. {follows}', { follows }), endings(broken), { wanted }, true);
  const [mend] = mends(broken);
  if (mend && mend.kind !== 'quote' && mend.kind !== 'leave out') return { ...generalFault(broken), unfinished: true };
  return fault('line-unfinished', at, to, message('"{words}" is only the beginning of a word. {follows}', { words: written(broken, index), follows }), [], { found: written(broken, index), wanted }, true);
}

/** `once 4 is set`, `1 passes to 2, and as he catches it`: what comes then is still missing. */
function onlySaysWhen({ wanted }: Broken): boolean {
  return wanted.some(({ token, path }) => token === ',' && /^Statement$|>LedClause$/.test(path.at(-1) ?? ''));
}

/** Where only one of a few words can end the line: each of them behind it. */
function endings(broken: Broken): LineFix[] {
  if (broken.wanted.some(({ isKeyword }) => !isKeyword)) return [];
  const wanted = broken.wanted.filter(({ isKeyword, token }) => isKeyword && /\w/.test(token)).map(({ token }) => token);
  // A number alone that the clock shows is the period clock's.
  const words = new Set(wanted.includes('on the clock') ? ['on the clock'] : wanted);
  const at = endOf(broken.tokens.at(-1)!);
  return words.size > 3 ? [] : [...words].flatMap((word) => tried(broken, message('Write "{word}" behind it', { word }), [{ at, to: at, text: ` ${word}` }]) ?? []);
}

/** `1 passes to 2 cuts`: 1 or 2? */
function whoDoesIt(broken: Broken): LineFault | undefined {
  const { token, index } = broken;
  const before = broken.tokens[index - 1];
  if (!token || !isVerb(token) || before?.tokenType.name !== 'SUBJECT' || index < 2) return undefined;
  const player = written(broken, index - 1);
  const verb = written(broken, index);
  const end = endOf(before);
  const fixes = [
    tried(broken, message('Write "{player} and {verb}": he goes on', { player, verb }), [{ at: end, to: end, text: ' and' }]),
    tried(broken, message('Write "{player}, {player} {verb}": it is {player} who {one}', { player, verb, one: singular(token.image) }), [{ at: end, to: end, text: `, ${player}` }]),
    tried(broken, message('Put "," before "{player} {verb}"', { player, verb }), [{ at: endOf(broken.tokens[index - 2]!), to: endOf(broken.tokens[index - 2]!), text: ',' }]),
  ];
  if (!fixes.some(Boolean)) return undefined;
  return fault('who-does-it', token.startOffset, endOf(token), message('Who {one}? Put "and" before "{verb}" if the same player goes on, or say the player after a comma.', { one: singular(token.image), verb }), fixes, { verb, player });
}

/** `3 to rim`, `4 for 2`: the player and what belongs to a verb, but no verb. */
function noVerb(broken: Broken): LineFault | undefined {
  const { token, index } = broken;
  const before = broken.tokens[index - 1];
  if (!token || token.tokenType.name === 'UNKNOWN' || !isPlayer(before) || !broken.wanted.some(({ path }) => path.at(-1)?.endsWith('Verb') === true)) return undefined;
  const at = token.startOffset;
  const one = singularAt(broken, index);
  const likely = ['for', 'down', 'up', 'across', 'away', 'on'].includes(token.image) ? ['screens', 'cuts'] : ['cuts', 'passes', 'screens', 'dribbles'];
  const verbs = likely.map((verb) => (one ? verb : otherNumber.get(verb)!));
  const fixes = verbs.map((verb) => tried(broken, message('Write "{words}"', { words: `${verb} ${written(broken, index)}` }), [{ at, to: at, text: `${verb} ` }])).filter((fix) => fix !== undefined);
  if (!fixes.length) return undefined;
  return fault('verb-missing', before!.startOffset, endOf(token), message('A verb is missing before {words}. For example "{example} …".', { words: said(written(broken, index)), example: fixes[0]!.title.params['words']! }), fixes, { found: written(broken, index) });
}

/** `2 above left elbow`, `leave 4`: a bare number where a measure is meant. */
function unitMissing(broken: Broken): LineFault | undefined {
  const { token, index } = broken;
  const isNumber = (word: Broken['token']): boolean => word !== undefined && ['PLAYER', 'SUBJECT', 'NUMBER'].includes(word.tokenType.name);
  const number = isNumber(token) && wants(broken.wanted, 'LENGTH', 'SECONDS') ? token : undefined;
  if (!number) return undefined;
  const shown = written(broken, index);
  const units = wants(broken.wanted, 'LENGTH') ? ['ft', 'm'] : ['seconds'];
  const fixes = units.map((unit) => tried(broken, message('Write "{words}"', { words: `${shown} ${unit}` }), [{ at: number.startOffset, to: endOf(number), text: `${shown} ${unit}` }]));
  if (!fixes.some(Boolean)) return undefined;
  const told = units.length > 1 ? message('A distance needs its unit: "{shown} ft" or "{shown} m".', { shown }) : message('A time needs its unit: "{shown} seconds".', { shown });
  return fault('unit-missing', number.startOffset, endOf(number), told, fixes, { found: shown });
}

/** `against 23` */
function formationWithoutHyphens(broken: Broken): LineFault | undefined {
  const { token, index } = broken;
  if (token?.tokenType.name !== 'NUMBER' || !/^\d{2,4}$/.test(token.image) || !wants(broken.wanted, 'FORM')) return undefined;
  const words = [...written(broken, index)].join('-');
  const fix = tried(broken, message('Write "{words}"', { words }), [{ at: token.startOffset, to: endOf(token), text: words }]);
  return fix && fault('misplaced-word', token.startOffset, endOf(token), message('A formation has hyphens: "{words}".', { words }), [fix], { found: written(broken, index), suggestion: words });
}

/** `step "B" after A`: the name is an article to the lexer. */
function articleAsName(broken: Broken): LineFault | undefined {
  if (!wants(broken.wanted, 'STRING')) return undefined;
  // `to the`: a place is still coming.
  if (!broken.token && !broken.wanted.every(({ token }) => token === 'STRING')) return undefined;
  const at = startWithArticles(broken, broken.index);
  const to = broken.text.slice(0, broken.token?.startOffset ?? endOfWords(broken)).trimEnd().length;
  if (at >= to) return undefined;
  const words = broken.text.slice(at, to);
  const fix = tried(broken, message('Put "{words}" in quotes', { words }), [{ at, to, text: `"${words}"` }]);
  return fix && fault('name-without-quotes', at, to, message('A name or a text stands in quotes: "{words}".', { words }), [fix], { found: words });
}

function nameWithoutQuotes(broken: Broken): LineFault | undefined {
  if (!broken.token || !broken.wanted.every(({ token }) => token === 'STRING')) return undefined;
  const [mend] = [...quotes(broken)];
  if (!mend) return undefined;
  const { at, to } = mend.fix.edits[0]!;
  return fault('name-without-quotes', at, to, message('A name or a text stands in quotes: "{words}".', { words: mend.words }), [mend.fix], { found: mend.words });
}

function generalFault(broken: Broken): LineFault {
  const { token, index } = broken;
  const found = written(broken, index);
  const { at, to } = place(broken);
  if (!token) return fault('line-not-read', 0, broken.text.trimEnd().length, message('I cannot read this line. Say one thing on it.'));
  const ways = mends(broken);
  const fixes = ways.map(({ fix }) => fix);
  const [best] = ways;
  // To leave a word out, or to make it a name, is no help to one who looks for a word.
  const there = best === undefined || best.kind === 'leave out' || best.isOwnName === true ? whatThereIs(broken) : undefined;
  if (there) return fault('unknown-word', at, to, there.message, [...there.fixes, ...(best?.kind === 'quote' ? [] : fixes)], { found });
  const params = { found, ...(best ? { suggestion: best.words } : { wanted: describeWanted(broken.wanted) }) };
  if (best) return { ...fault(codeOf(best, broken), at, to, mended(best, broken), fixes, params), ...columnsOf(best, broken) };
  const wanted = describeWanted(broken.wanted);
  const isUnknown = token.tokenType.name === 'UNKNOWN';
  const after = index > 0 ? message('after "{words}"', { words: written(broken, Math.max(0, index - 2), index) }) : message('at the beginning of a line');
  const can = index > 0 ? message('What can stand here: {wanted}.', { wanted }) : LINE_BEGINS;
  const told = isUnknown ? message('{found} is no word I know here. {can}', { found: said(found), can }) : message('{found} does not fit {after}. {can}', { found: said(found), after, can });
  // What no line can say may still be a remark to the team.
  const words = broken.text.slice(0, endOfWords(broken)).trim();
  const note = index === 0 && words.includes(' ') && !words.includes('"') ? tried(broken, message('Make it a note'), [{ at: startWithArticles(broken, 0), to: endOfWords(broken), text: `note "${words}"` }]) : undefined;
  return fault(isUnknown ? 'unknown-word' : 'misplaced-word', at, to, note ? message('{told} What is only said to the team stands in a note: note "…".', { told }) : told, note ? [note] : [], params);
}

function codeOf(mend: Mend, broken: Broken): FaultCode {
  if (mend.kind === 'insert') return 'missing-word';
  if (mend.kind === 'swap') return 'word-order';
  if (mend.kind === 'quote' && !mend.isOwnName) return 'name-without-quotes';
  if (broken.token!.tokenType.name === 'UNKNOWN') return 'unknown-word';
  return mend.kind === 'leave out' ? 'extra-word' : 'misplaced-word';
}

function columnsOf(mend: Mend, broken: Broken): { at: number; to: number } {
  return { at: broken.tokens[mend.from]!.startOffset, to: endOf(broken.tokens[mend.to - 1]!) };
}

function mended(mend: Mend, broken: Broken): Message {
  const found = said(written(broken, mend.from, mend.to));
  const meant = said(mend.words);
  const isUnknown = broken.token!.tokenType.name === 'UNKNOWN';
  switch (mend.kind) {
    case 'insert':
      return message('A word is missing before {words}. Did you mean {meant}?', { words: said(written(broken, mend.from)), meant });
    case 'swap':
      return message('{found} is the wrong way round. Did you mean {meant}?', { found, meant });
    case 'quote':
      if (mend.isOwnName) return message('{found} is no word I know here. A name of your own stands in quotes: "{words}".', { found, words: mend.words });
      return message('A name or a text stands in quotes: "{words}".', { words: mend.words });
    case 'leave out':
      return isUnknown ? message('{found} is no word I know here. Without it I can read the line.', { found }) : message('{found} does not fit here. Without it I can read the line.', { found });
    default:
      return isUnknown ? message('{found} is no word I know here. Did you mean {meant}?', { found, meant }) : message('{found} does not fit here. Did you mean {meant}?', { found, meant });
  }
}
