// What coaches say of movement, screens and passes that a line says in other words.
import { message, oneOf, type Message } from '../message/message.ts';
import { endOf, isPlayer, reads, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { commaAfter, inNumber, isAttacker, isDefender, rewriting, word, writing, type Recogniser, type SaidOtherwise } from './saying.ts';
import { otherNumber, verbOf } from './verbs.ts';

export const saidOfMoves: readonly Recogniser[] = [pickAndRoll, setsAnAdjectiveScreen, icesTheScreen, probes, theHandOffTold, anOpponentsCount, drawsTwo, upTheSideline, behindTheBall, oppositeOfWhat, otherVerb, refuses, offMissing, onTheSignal, forSafety, getsAHandOff, passToAPlace, whichOfTheZone, fillsALane, atTheDefence, anOpenPlace, someonesSpot, throughTheGate, shutsTheGate];

/** Verbs that one line says with others: [words, what is meant, why]. Common usage, no source. */
const OTHER_VERBS: readonly (readonly [said: RegExp, singular: string, why: Message])[] = [
  [/^(isolates?|isos?)$/, 'keeps his dribble', message('Alone with his man he first keeps his dribble; the others clear.')],
  [/^(rim-runs?|runs-to-the-rim)$/, 'dives', message('To run to the rim is a dive.')],
  [/^(ghosts?|ghost-screens?)$/, 'slips', message('A screen that is never set is a slip.')],
  [/^(short-rolls?)$/, 'rolls to the nail', message('A short roll stops at the free-throw line.')],
  [/^opens?(-up)?$/, 'seals', message('To open up is to turn and show the hands.')],
  [/^(spaces-out|spreads|spread)$/, 'spaces', message('Say "spaces", or where to.')],
];

function otherVerb(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  // `5 rim` is a place until `runs` comes.
  const index = isAttacker(tokens[broken.index - 1]) || /^(and|then|,)$/.test(word(tokens[broken.index - 1])) ? broken.index : broken.index - 1;
  const both = `${word(tokens[index])}-${word(tokens[index + 1])}`;
  const found = OTHER_VERBS.find(([said]) => said.test(both) || said.test(word(tokens[index]).replaceAll(' ', '-')));
  if (!found || !(isAttacker(tokens[index - 1]) || /^(and|then|,)$/.test(word(tokens[index - 1])))) return undefined;
  // `opens up to the ball`: the two words go together.
  const to = index + (found[0].test(both) || word(tokens[index + 1]) === 'up' || word(tokens[index + 1]) === 'up to' ? 2 : 1);
  const text = inNumber(broken, index, found[1]);
  const fix = writing(broken, index, to, text) ?? writing(broken, index, commaAfter(broken, index), text);
  return { code: 'unknown-word', from: index, to, message: message('{why} Write "{text}".', { why: found[2], text }), fixes: [fix] };
}

/** `4 sets a high ball screen for 1`: how high it stands, the place says; `messages.ts` knows the bare screen. */
function setsAnAdjectiveScreen(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(sets?|gives?|makes?|puts?)$/.test(word(tokens[i])) || (/^(into|with)$/.test(word(tokens[i])) && i > 1));
  if (at === undefined || at < 1) return undefined;
  const noun = tokens.findIndex((token, i) => i > at && i <= at + 3 && verbOf(word(token))?.class === 'screen');
  const isInto = /^(into|with)$/.test(word(tokens[at]));
  if (noun < 0 || (!isInto && noun === at + 1)) return undefined;
  const from = isInto ? at - 1 : at;
  const kind = word(tokens[noun]) === 'pick' ? 'screen' : word(tokens[noun]);
  const text = inNumber(broken, from, otherNumber.get(kind) !== undefined && verbOf(kind)?.number === 'plural' ? otherNumber.get(kind)! : kind);
  return { code: 'noun-for-verb', from, to: noun + 1, message: message('Say it with the verb alone: "{text}". Where it stands is worked out, or said with "at": "{text} at the top".', { text }), fixes: [writing(broken, from, noun + 1, text)] };
}

/** `X1 ices the screen`: he sends the dribbler away from it. */
function icesTheScreen(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(ices?|iced|blues?|downs?|push-under|blitz|blitzes|weaks?)$/.test(word(tokens[i])));
  if (at === undefined || !isDefender(tokens[at - 1])) return undefined;
  if (/^blitz/.test(word(tokens[at]))) return { code: 'unknown-word', from: at, to: at + 1, message: message('To blitz is to trap: "X1 and X5 trap 1".'), fixes: [writing(broken, at, at + 1, inNumber(broken, at, 'traps'))] };
  const remark = word(tokens[0]) === 'step' ? tokens.findIndex((token) => /^(when|if)$/.test(token.image)) : -1;
  const words = remark < 0 ? '' : written(broken, remark + 1, tokens.length);
  const fix = remark < 0 ? undefined : tried(broken, message('Put "{words}" in quotes', { words }), [{ at: tokens[remark + 1]!.startOffset, to: endOf(tokens.at(-1)!), text: `"${words}"` }]);
  return { code: 'unknown-word', from: at, to: at + 1, message: message('To ice a screen is to send the dribbler away from it; no defender can be told that yet. In a step\'s condition put it in quotes (when "they ice it"), or say what the screener\'s man does: "X5 drops".'), fixes: [fix] };
}

/** `1 probes`, `1 probes the lane`: a dribble, to somewhere. */
function probes(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(probes?|snakes?)$/.test(word(tokens[index])) || !isAttacker(tokens[index - 1])) return undefined;
  const hasPlace = ['to', 'into'].includes(word(tokens[index + 1]));
  const end = hasPlace ? index + 1 : commaAfter(broken, index);
  const texts = hasPlace ? [inNumber(broken, index, 'dribbles')] : [inNumber(broken, index, 'keeps his dribble'), `${inNumber(broken, index, 'dribbles')} to the nail`];
  return { code: 'unknown-word', from: index, to: end, message: message('He dribbles and looks: write "{words}", or say where he goes ("dribbles to the nail").', { words: texts[0]! }), fixes: texts.map((text) => writing(broken, index, end, text)) };
}

/** `3 takes the handoff and turns the corner`, `1 comes back for a handoff from 4`: told of the man who gives it. */
function theHandOffTold(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const noun = [index, index - 1, index + 1].find((i) => /^hand[ -]?offs?$/.test(word(tokens[i])));
  if (noun === undefined || !isAttacker(tokens[0])) return undefined;
  const giver = tokens[noun + 1]?.image === 'from' && isAttacker(tokens[noun + 2]) ? tokens[noun + 2] : undefined;
  const verb = noun - 1;
  const isFor = word(tokens[verb]) === 'for';
  if (!isFor && !/^(takes?|gets?|receives?|catches|catch)$/.test(word(tokens[verb]))) return undefined;
  const gives = `${giver?.image ?? '5'} hands off to ${tokens[0]!.image}`;
  const told = message('A hand-off is told of the man who gives it: "{gives}". The taker comes by himself.', { gives });
  const found = { code: 'misplaced-word', from: verb, to: noun + (giver ? 3 : 1), message: told } as const;
  const at = endOf(tokens[verb - 1]!);
  if (giver && isFor) return { ...found, fixes: [tried(broken, message('Write ", {gives}"', { gives }), [{ at, to: endOf(tokens[noun + 2]!), text: `, ${gives}` }])] };
  const joint = tokens[noun + 1];
  if (giver || !joint || !['and', 'then', ','].includes(joint.image) || !tokens[noun + 2]) return giver ? undefined : { ...found, fixes: [] };
  return { ...found, fixes: [tried(broken, message('Leave out "{words}"', { words: written(broken, verb, noun + 2) }), [{ at: tokens[verb]!.startOffset, to: tokens[noun + 2]!.startOffset, text: '' }])] };
}

/** `1 attacks 2 on 1 with 5` */
function anOpponentsCount(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => isPlayer(tokens[i]) && word(tokens[i + 1]) === 'on' && isPlayer(tokens[i + 2]));
  const verb = at === undefined ? undefined : verbOf(word(tokens[at - 1]));
  if (at === undefined || (verb?.class !== 'dribble' && verb?.class !== 'move' && !/^plays?$/.test(word(tokens[at - 1])))) return undefined;
  const text = `${inNumber(broken, at - 1, 'drives')} to the rim`;
  return { code: 'misplaced-word', from: at - 1, to: at + 3, message: message('How many defenders are left is seen in the game. Say where he goes: "{text}"; whom he may pass to is a look.', { text }), fixes: [writing(broken, at - 1, commaAfter(broken, at), text)] };
}

/** `3 draws two`: what the defence does then is a step of its own. */
function drawsTwo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(draws?|attracts?|collapses?|occup(y|ies)|freezes?|pulls?)$/.test(word(tokens[index])) || index < 1) return undefined;
  const before = tokens[index - 1];
  const from = before && ['and', ',', 'then'].includes(before.image) ? index - 1 : index;
  const fix = from === index ? undefined : tried(broken, message('Leave out "{words}"', { words: written(broken, from, tokens.length) }), [{ at: endOf(tokens[from - 1]!), to: endOf(tokens.at(-1)!), text: '' }]);
  return { code: 'unknown-word', from: index, to: Math.min(index + 2, tokens.length), message: message('What a defender does then is a line of his ("X2 helps at rim"), or a step of its own: step "…" instead of "…" when X2 helps.'), fixes: [fix] };
}

/** `1 dribbles up the sideline`, `1 runs the far sideline`: the sideline itself is out of bounds. */
function upTheSideline(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const line = tokens.findIndex((token, i) => i >= index && i <= index + 3 && /^(sideline|touchline|side line)$/.test(token.image));
  const verb = tokens.findLastIndex((token, i) => i < line && verbOf(token.image) !== undefined);
  if (line < 0 || verb < 1 || line - verb > 3 || !['move', 'dribble'].includes(verbOf(word(tokens[verb]))!.class) || ['to', 'at', 'on'].includes(word(tokens[line - 1]))) return undefined;
  const side = tokens.slice(verb, line).map(word).find((each) => /^(left|right|near|far|ball-side|weak-side)$/.test(each));
  const texts = side === undefined ? ['to right hash', 'to left hash'] : [`to ${side} hash`];
  return { code: 'misplaced-word', from: verb + 1, to: line + 1, message: message('Say where he ends: "{words}" is by the sideline, in bounds. The sideline itself is out.', { words: texts.join('" or "') }), fixes: texts.map((text) => tried(broken, message('Write "{text}"', { text }), [{ at: endOf(tokens[verb]!), to: endOf(tokens.at(line)!), text: ` ${text}` }]) ?? tried(broken, message('Write "{text}"', { text }), [{ at: endOf(tokens[verb]!), to: endOf(tokens.at(-1)!), text: ` ${text}` }])) };
}

/** `3 steps in behind the ball` */
function behindTheBall(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index]) !== 'ball' || !/^(behind|beside|in front of|around|over)$/.test(word(tokens[index - 1]))) return undefined;
  const from = index - 1;
  return { code: 'misplaced-word', from, to: index + 1, message: message('Say which man has it then: "{words} 2".', { words: word(tokens[from]) }), fixes: ['1', '2', '3'].map((who) => tried(broken, message('Write "{words} {who}"', { words: word(tokens[from]), who }), [{ at: tokens[from]!.startOffset, to: endOf(tokens[index]!), text: `${word(tokens[from])} ${who}` }])) };
}

/** `1 spots up opposite` */
function oppositeOfWhat(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(opposite|weak-side|ball-side|strong-side)$/.test(word(tokens[i])) && (tokens[i + 1] === undefined || [',', 'and', 'then'].includes(tokens[i + 1]!.image)));
  const verb = at === undefined ? undefined : verbOf(word(tokens[at - 1]));
  if (at === undefined || !['move', 'hold', 'seal'].includes(verb?.class ?? '')) return undefined;
  const joint = verb?.class === 'hold' || /up$/.test(verb?.base ?? '') ? 'in' : 'to';
  const texts = ['corner', 'wing'].map((place) => `${joint === 'in' && place === 'wing' ? 'on' : joint} the ${word(tokens[at])} ${place}`);
  return { code: 'misplaced-word', from: at, to: at + 1, message: message('Say which place of that side: "{words}".', { words: texts.join('" or "') }), fixes: texts.map((text) => writing(broken, at, at + 1, text)) };
}

/** `1 rejects the screen`: he goes where the screen does not stand. */
function refuses(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(rejects?|refuses?|splits?)$/.test(word(tokens[index])) || !isAttacker(tokens[index - 1])) return undefined;
  return { code: 'unknown-word', from: index, to: index + 1, message: message('Who does not use the screen drives somewhere else: say where ("drives to left elbow"). If the defence brings it about, it is a step of its own.'), fixes: [] };
}

/** `1 and 4 run pick and roll` */
function pickAndRoll(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const isOneWord = (i: number): boolean => /^pick-(and|n)-(rolls?|pops?)$/.test(word(tokens[i]));
  const at = [index, index - 1, index + 1, index + 2].find((i) => isOneWord(i) || (word(tokens[i]) === 'pick' && word(tokens[i + 1]) === 'and' && /^(rolls?|pops?)$/.test(word(tokens[i + 2]))));
  if (at === undefined) return undefined;
  const second = /pop/.test(word(tokens[isOneWord(at) ? at : at + 2])) ? 'pops' : 'rolls';
  const [one, other] = tokens.filter(isAttacker).map(({ image }) => image);
  const [user, screener] = one !== undefined && other !== undefined ? [one, other].sort() : ['1', '4'];
  return { code: 'misplaced-word', from: at, to: isOneWord(at) ? at + 1 : at + 3, message: message('Say what each does: "{screener} ball-screens for {user}, then {second}", and on a line of its own "{user} drives off {screener}".', { screener: screener!, user: user!, second }), fixes: [other === undefined ? undefined : rewriting(broken, `${screener!} ball-screens for ${user!}, then ${second}`)] };
}

/** `2 curls the screen` */
function offMissing(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const noun = tokens[index];
  if (!noun || verbOf(word(tokens[index - 1]))?.class !== 'move' || !/^(screen|pick|pin down|pindown|.*-screen)$/.test(word(noun))) return undefined;
  const at = endOf(tokens[index - 1]!);
  const fix = tried(broken, message('Put "off" before "{words}"', { words: written(broken, index) }), [{ at, to: at, text: ' off' }]);
  return fix && { code: 'missing-word', from: index, to: index + 1, message: message('A word is missing before "{words}". Did you mean "off the {words}"?', { words: written(broken, index) }), fixes: [fix] };
}

/** `on the slap, 4 screens`: a step begins with its first lines. */
function onTheSignal(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (index > 2 || word(tokens[0]) !== 'on' || !/^(slap|call|whistle|signal|go|ready|snap|clap|hand)$/.test(word(tokens[1]))) return undefined;
  const comma = tokens.findIndex(({ image }) => image === ',');
  const next = tokens[comma < 0 ? 2 : comma + 1];
  const fix = next && tried(broken, message('Leave out "{words}"', { words: written(broken, 0, comma < 0 ? 2 : comma) }), [{ at: startWithArticles(broken, 0), to: next.startOffset, text: '' }]);
  return { code: 'extra-word', from: 0, to: comma < 0 ? 2 : comma, message: message('The first lines of the first step begin with the call, or as the thrower gets the ball: that need not be said.'), fixes: [fix] };
}

/** `2 steps back to the top for safety` */
function forSafety(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(for|as)$/.test(word(tokens[i])) && /^(safety|outlet|protection)$/.test(word(tokens[i + 1])));
  if (at === undefined || !isAttacker(tokens[0])) return undefined;
  const to = tokens.findLastIndex((token, i) => i < at && /^(to|at|on|in)$/.test(token.image));
  const text = `${written(broken, 0)} is the safety${to < 0 ? '' : ` at ${written(broken, to + 1, at)}`}`;
  return { code: 'misplaced-word', from: at, to: at + 2, message: message('The safety is told in one line: "{text}". He gets the ball when the looks are passed up.', { text }), fixes: [rewriting(broken, text)] };
}

/** `3 steps in and gets a handoff from 5`: it is 5 who hands off. */
function getsAHandOff(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (index < 2 || !/^(gets?|receives?|takes?|catches|catch)$/.test(word(tokens[index]))) return undefined;
  const from = tokens.findIndex((token, i) => i > index && i <= index + 4 && token.image === 'from');
  const joint = tokens.findLastIndex((token, i) => i < index && ['and', 'then', ','].includes(token.image));
  if (from < 0 || joint < 1 || !isAttacker(tokens[from + 1]) || !isAttacker(tokens[0])) return undefined;
  const verb = tokens.slice(index, from).some((token) => /^(hand[ -]?offs?)$/.test(word(token))) ? 'hands off' : 'passes';
  const text = `${written(broken, from + 1)} ${verb} to ${written(broken, 0)}`;
  const fix = tried(broken, message('Write ", {text}"', { text }), [{ at: endOf(tokens[joint - 1]!), to: endOf(tokens[from + 1]!), text: `, ${text}` }]);
  return { code: 'unknown-word', from: index, to: from + 2, message: message('Say it of the man who gives the ball: "{text}".', { text }), fixes: [fix] };
}

/** `1 swings it to the weak side` */
function passToAPlace(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const verb = tokens.slice(0, index).findLast((token) => verbOf(token.image) !== undefined);
  if (word(tokens[index - 1]) !== 'to' || verbOf(word(verb))?.class !== 'pass' || !broken.wanted.every(({ token }) => /PLAYER|him|them/.test(token))) return undefined;
  const place = written(broken, index, commaAfter(broken, index));
  if (!reads(`2 cuts to ${place}`)) return undefined;
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('A pass goes to a man. Say who is there: "{words}".', { words: `${written(broken, index - 1)} 3 on the ${place.replace(/^the /i, '')}` }), fixes: [] };
}

/** `4 screens the bottom man of the zone` */
function whichOfTheZone(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const rest = tokens.slice(index, index + 5).map(word);
  if (verbOf(word(tokens[index - 1]))?.class !== 'screen' || !rest.some((each) => /^(man|defender|guy|zone|defence|defense)$/.test(each))) return undefined;
  if (isAttacker(tokens[index])) return undefined;
  return { code: tokens[index]?.tokenType.name === 'UNKNOWN' ? 'unknown-word' : 'misplaced-word', from: index, to: index + 1, message: message('Say which defender is screened, by his number: "screens X4", or for whom: "screens for 2". Where each of a zone stands, the picture shows.'), fixes: [] };
}

/** `5 runs the right lane`: a strip of the open floor; the lane of the notation is the key. */
function fillsALane(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1, index + 1].find((i) => /^(lanes?|floor)$/.test(word(tokens[i])));
  const verb = at === undefined ? -1 : tokens.findLastIndex((token, i) => i < at && ['run', 'sprint', 'fill', 'jog'].includes(verbOf(token.image)?.base ?? ''));
  if (at === undefined || verb < 0 || at - verb > 3) return undefined;
  const side = tokens.slice(verb + 1, at).map(word).find((each) => /^(left|right|middle|centre|center)$/.test(each));
  const places = side === 'left' || side === 'right' ? [`${side} corner`, `${side} wing`] : side === undefined ? ['right corner', 'left corner'] : ['rim'];
  const texts = places.map((place) => `${inNumber(broken, verb, 'sprints')} to ${place}`);
  return { code: 'misplaced-word', from: verb, to: at + 1, message: message('In the open floor say where he ends: {words}. "lane" is the key here.', { words: oneOf(texts.map((text) => `"${text}"`)) }), fixes: texts.map((text) => writing(broken, verb, at + 1, text)) };
}

/** `3 dribbles at the defence` */
function atTheDefence(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index - 1]) !== 'at' || !/^(defence|defense|defender|zone|press|trap|man|gap|gaps|seam|seams|hole|lane|baseline)$/.test(word(tokens[index]))) return undefined;
  return { code: 'unknown-word', from: index, to: index + 1, message: message('Say where he dribbles to ("to top"), or at which of his own men ("at 2").'), fixes: [tried(broken, message('Write "to top"'), [{ at: tokens[index - 1]!.startOffset, to: endOf(tokens[index]!), text: 'to top' }])] };
}

/** `1 fills the open corner` */
function anOpenPlace(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(open|empty|vacated|vacant|open window|open gap)$/.test(word(tokens[i])));
  if (at === undefined || at < 1) return undefined;
  const from = /^(to|into)$/.test(tokens[at - 1]?.image ?? '') ? at - 1 : at;
  const fix = ['the open spot', 'to the open spot'].map((text) => tried(broken, message('Write "{text}"', { text }), [{ at: startWithArticles(broken, from), to: endOf(tokens[Math.min(at + 1, tokens.length - 1)]!), text }])).find((each) => each !== undefined);
  return fix && { code: 'unknown-word', from: at, to: Math.min(at + 2, tokens.length), message: message('Which place is empty is worked out: write "the open spot", or say its side.'), fixes: [fix] };
}

/** `4 rotates up to 2's spot` */
function someonesSpot(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1, index + 1].find((i) => word(tokens[i]) === "'s" && /^(spot|place|position|old|corner|wing|slot)$/.test(word(tokens[i + 1])));
  const verb = at === undefined ? -1 : tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  if (at === undefined || verb < 1 || !isAttacker(tokens[at - 1])) return undefined;
  const text = `${inNumber(broken, verb, 'fills')} for ${written(broken, at - 1)}`;
  const to = word(tokens[at + 1]) === 'old' ? Math.min(at + 3, tokens.length) : at + 2;
  return { code: 'misplaced-word', from: verb, to, message: message(`To take a man's place is to fill for him: "{text}".`, { text }), fixes: [writing(broken, verb, to, text)] };
}

/** `4 and 5 form a gate`, `2 runs through the gate`: it is one once somebody goes between them. */
function throughTheGate(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const gate = tokens.findIndex((token, i) => i >= index && i <= index + 2 && /gate|elevator/.test(word(token)));
  if (gate < 0 || /^(closes?|shuts?)$/.test(word(tokens[index]))) return undefined;
  const from = word(tokens[gate - 1]) === 'through' ? gate - 1 : index;
  return { code: 'unknown-word', from, to: gate + 1, message: message('A gate is two men apart, and a man who goes between them: "4 and 5 move to the slots", "2 cuts between 4 and 5 to top", then "4 and 5 close behind him".'), fixes: word(tokens[from]).startsWith('through') ? [writing(broken, from, gate + 1, 'between 4 and 5')] : [] };
}

/** `4 and 5 close the gate` */
function shutsTheGate(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(closes?|shuts?)$/.test(word(tokens[index])) || !/^(gates?|doors?|gap|elevator|it)$/.test(word(tokens[index + 1]))) return undefined;
  const isNamed = word(tokens[index + 2]) === 'behind' && isAttacker(tokens[index + 3]);
  const text = `${inNumber(broken, index, 'closes behind')} ${isNamed ? written(broken, index + 3) : 'him'}`;
  if (isNamed) return { code: 'unknown-word', from: index, to: index + 4, message: message('Write "{text}", below the line of the man who goes between them.', { text }), fixes: [writing(broken, index, index + 4, text)] };
  return { code: 'unknown-word', from: index, to: index + 2, message: message('Say behind whom: "{text}", below the line of the man who goes between them.', { text }), fixes: [writing(broken, index, index + 2, text)] };
}
