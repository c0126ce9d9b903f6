// What coaches say of movement, screens and passes that a line says in other words.
import { message, oneOf, type Message } from '../message/message.ts';
import { endOf, reads, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { commaAfter, inNumber, isAttacker, rewriting, word, writing, type Recogniser, type SaidOtherwise } from './saying.ts';
import { verbOf } from './verbs.ts';

export const saidOfMoves: readonly Recogniser[] = [otherVerb, refuses, pickAndRoll, offMissing, onTheSignal, forSafety, getsAHandOff, passToAPlace, whichOfTheZone, fillsALane, atTheDefence, anOpenPlace, someonesSpot, shutsTheGate];

/** Verbs that one line says with others: [words, what is meant, why]. Common usage, no source. */
const OTHER_VERBS: readonly (readonly [said: RegExp, singular: string, why: Message])[] = [
  [/^(isolates?|isos?)$/, 'keeps his dribble', message('Alone with his man he first keeps his dribble; the others clear.')],
  [/^(rim-runs?|runs-to-the-rim)$/, 'dives', message('To run to the rim is a dive.')],
  [/^(ghosts?|ghost-screens?)$/, 'slips', message('A screen that is never set is a slip.')],
  [/^(short-rolls?)$/, 'rolls to the nail', message('A short roll stops at the free-throw line.')],
  [/^(spaces-out|spreads|spread)$/, 'spaces', message('Say "spaces", or where to.')],
];

function otherVerb(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  // `5 rim` is a place until `runs` comes.
  const index = isAttacker(tokens[broken.index - 1]) ? broken.index : broken.index - 1;
  const both = `${word(tokens[index])}-${word(tokens[index + 1])}`;
  const found = OTHER_VERBS.find(([said]) => said.test(both) || said.test(word(tokens[index]).replaceAll(' ', '-')));
  if (!found || !isAttacker(tokens[index - 1])) return undefined;
  const to = index + (found[0].test(both) ? 2 : 1);
  const text = inNumber(broken, index, found[1]);
  const fix = writing(broken, index, to, text) ?? writing(broken, index, commaAfter(broken, index), text);
  return { code: 'unknown-word', from: index, to, message: message('{why} Write "{text}".', { why: found[2], text }), fixes: [fix] };
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
  const at = [index, index - 1, index + 1].find((i) => word(tokens[i]) === 'pick' && word(tokens[i + 1]) === 'and' && /^(rolls?|pops?)$/.test(word(tokens[i + 2])));
  if (at === undefined) return undefined;
  const second = word(tokens[at + 2]).startsWith('pop') ? 'pops' : 'rolls';
  const [one, other] = tokens.filter(isAttacker).map(({ image }) => image);
  const [user, screener] = one !== undefined && other !== undefined ? [one, other].sort() : ['1', '4'];
  return { code: 'misplaced-word', from: at, to: at + 3, message: message('Say what each does: "{screener} ball-screens for {user}, then {second}", and on a line of its own "{user} drives off {screener}".', { screener: screener!, user: user!, second }), fixes: [other === undefined ? undefined : rewriting(broken, `${screener!} ball-screens for ${user!}, then ${second}`)] };
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
  if (word(tokens[index - 1]) !== 'at' || !/^(defence|defense|defender|zone|press|trap|man)$/.test(word(tokens[index]))) return undefined;
  return { code: 'unknown-word', from: index, to: index + 1, message: message('Say where he dribbles to ("to top"), or at which of his own men ("at 2").'), fixes: [tried(broken, message('Write "to top"'), [{ at: tokens[index - 1]!.startOffset, to: endOf(tokens[index]!), text: 'to top' }])] };
}

/** `1 fills the open corner` */
function anOpenPlace(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(open|empty|vacated|vacant)$/.test(word(tokens[i])));
  if (at === undefined || at < 1) return undefined;
  const from = tokens[at - 1]?.image === 'to' ? at - 1 : at;
  const fix = ['the open spot', 'to the open spot'].map((text) => tried(broken, message('Write "{words}"', { words: text }), [{ at: startWithArticles(broken, from), to: endOf(tokens[Math.min(at + 1, tokens.length - 1)]!), text }])).find((each) => each !== undefined);
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

/** `4 and 5 close the gate` */
function shutsTheGate(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(closes?|shuts?)$/.test(word(tokens[index])) || !/^(gates?|doors?|gap|elevator|it)$/.test(word(tokens[index + 1]))) return undefined;
  const text = `${inNumber(broken, index, 'closes behind')} him`;
  return { code: 'unknown-word', from: index, to: index + 2, message: message('Say behind whom: "{text}", below the line of the man who goes between them.', { text }), fixes: [writing(broken, index, index + 2, text)] };
}
