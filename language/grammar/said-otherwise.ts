import { message, type Message } from '../message/message.ts';
import { endOf, isPlayer, reads, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { saidOfHeads } from './said-of-heads.ts';
import { saidOfLooks } from './said-of-looks.ts';
import { saidOfMoves } from './said-of-moves.ts';
import { commaAfter, inNumber, isAttacker, isDefender, word, writing, type Recogniser, type SaidOtherwise } from './saying.ts';
import { otherNumber, verbOf, verbs } from './verbs.ts';

const RECOGNISERS: readonly Recogniser[] = [
  ...saidOfHeads, ...saidOfLooks, ...saidOfMoves,
  dependsOnTheDefence, before, onTheCatch, waitsWithoutFor, waitsForAScreen, isAFake, getsTheBall, takesHisMan, setsUpHisMan, oneThenTheOther, ballGoesTo, startsAt, whichZone, isDoing, eitherReceiver,
  doublesFor, clearsASide, picksUpAMan, countsTo, highOrLow, theBigs, placesWithoutFrom, andOutTo, followsHisPass, doubleBy, facesUp, getsTo, atForTo,
];

/** The first of the sayings that fits. Each mend keeps what the coach meant; where none can, the message says what can be written. */
export function saidOtherwise(broken: Broken): SaidOtherwise | undefined {
  for (const recognise of RECOGNISERS) {
    const found = recognise(broken);
    if (found) return found;
  }
  return undefined;
}

/** `if X4 switches, 4 slips`, `unless X2 denies, …`: a line happens always. Leaving out `unless` would turn it round. */
function dependsOnTheDefence(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const saying = word(tokens[index]);
  if (saying !== 'if' && saying !== 'unless') return undefined;
  const end = commaAfter(broken, index);
  const clause = written(broken, index + 1, end);
  const found = { code: 'unknown-word', from: index, to: index + 1, fixes: [] } as const;
  if (clause && reads(`step "A" when ${clause}`)) {
    const shown = isDefender(tokens[index + 1]) ? `step "…" instead of "…" when ${clause}` : 'step "…" instead of "…" when X4 switches';
    if (isDefender(tokens[index + 1])) return { ...found, message: message('A line happens whatever the defence does. What depends on it is a step of its own: {shown}.', { shown }) };
  }
  if (/^(is|are) (open|free)$/.test(word(tokens[index + 2])) || word(tokens[index + 1]) === 'nothing')
    return { ...found, message: message('Whether somebody is open is seen in the game: that is a look. For example: look 4: layup.') };
  if (saying === 'if' && clause && reads(`3 holds when ${clause}`)) return undefined;
  return { ...found, message: message('"{saying}" makes a choice, and a line always happens. What the defence decides is a step (step "…" instead of "…" when X4 switches), what is open is a look (look 4: layup).', { saying }) };
}

/** `before 1 passes, 2 cuts` is `once 2 cuts, 1 passes`. */
function before(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index, text } = broken;
  if (word(tokens[index]) !== 'before') return undefined;
  const isFirst = index === 0;
  const end = isFirst ? commaAfter(broken, 0) : tokens.length;
  const later = written(broken, index + 1, end);
  const earlier = isFirst ? written(broken, end + 1, tokens.length) : written(broken, 0, index).replace(/,\s*$/, '');
  const line = `once ${earlier}, ${later}`;
  const edit = { at: tokens[0]!.startOffset, to: endOf(tokens.at(-1)!), text: line };
  const fix = later && earlier && text ? tried(broken, message('Write "{words}"', { words: line }), [edit]) : undefined;
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('"before" cannot be waited for. Say it the other way round: "{words}".', { words: fix ? line : 'once 2 cuts, 1 passes' }), fixes: [fix] };
}

const WHOSE: ReadonlyMap<string, string> = new Map(Object.entries({
  catch: 'once 2 catches', handoff: 'once 2 catches', pass: 'as 1 passes', passes: 'as 1 passes', cut: 'as 3 cuts', roll: 'as 5 rolls', drive: 'as 1 drives', screen: 'once 4 is set', 'hand off': 'once 2 catches', 'hand-off': 'once 2 catches', shot: 'once 3 shoots', dribble: 'as 1 dribbles',
}));

/** `on the catch, 5 dives`: whose? */
function onTheCatch(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => ['on', 'after', 'off', 'at'].includes(word(tokens[i])) && WHOSE.has(word(tokens[i + 1])) && (i === 0 || word(tokens[i - 1]) === ',' || tokens[i + 2] === undefined || [',', ':'].includes(word(tokens[i + 2]))));
  if (at === undefined) return undefined;
  const noun = word(tokens[at + 1]);
  return { code: 'misplaced-word', from: at, to: at + 2, message: message('"{words}" does not say whose. Say who does it: "{noun}".', { words: written(broken, at, at + 2), noun: WHOSE.get(noun)! }), fixes: [] };
}

/** `2 waits 2 seconds` */
function waitsWithoutFor(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const time = tokens[index - 1];
  if (time?.tokenType.name !== 'SECONDS' || verbOf(word(tokens[index - 2]))?.class !== 'hold') return undefined;
  const text = `for ${written(broken, index - 1)}`;
  const fix = writing(broken, index - 1, index, text);
  return fix && { code: 'missing-word', from: index - 1, to: index, message: message('A word is missing before "{words}". Did you mean "{text}"?', { words: written(broken, index - 1), text }), fixes: [fix] };
}

/** `2 waits for 5 to set the screen`, `1 waits for the screen` */
function waitsForAScreen(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = index - 1;
  if (word(tokens[at]) !== 'for' || verbOf(word(tokens[at - 1]))?.class !== 'hold') return undefined;
  if (isAttacker(tokens[index])) {
    const rest = tokens.slice(index + 1, commaAfter(broken, index)).map(word);
    const joint = rest.findIndex((each) => each === 'and' || each === 'then');
    const said = joint < 0 ? rest : rest.slice(0, joint);
    if (said.length > 0 && !said.some((each) => /screen|pick|set/.test(each))) return undefined;
    const to = index + 1 + said.length;
    const text = `until ${written(broken, index)} is set`;
    return { code: 'misplaced-word', from: at, to, message: message('Say what he waits for: "{text}", or "until {words} catches".', { text, words: written(broken, index) }), fixes: [writing(broken, at, to, text)] };
  }
  if (!/screen|pick/.test(word(tokens[index]))) return undefined;
  return { code: 'misplaced-word', from: at, to: index + 1, message: message('Whose screen does he wait for? Say the screener: "until 4 is set".'), fixes: [] };
}

/** A fake moves nobody: it is left to a note, and what he does then stays. */
function isAFake(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(fakes?|jabs?|feints?|pump-fakes?|shot-fakes?)$/.test(word(tokens[index]))) return undefined;
  const next = tokens.findIndex((token, i) => i > index && (token.image === 'and' || token.image === 'then' || token.image === ','));
  const rest = next < 0 ? -1 : tokens.findIndex((token, i) => i >= next && verbOf(token.image) !== undefined);
  const player = tokens[index - 1];
  const on = rest > 0 ? tried(broken, message('Write only "{words}"', { words: `${written(broken, index - 1)} ${written(broken, rest, tokens.length)}` }), [{ at: tokens[index]!.startOffset, to: tokens[rest]!.startOffset, text: '' }]) : undefined;
  const words = written(broken, index, tokens.length).replaceAll(/["“”]/g, '');
  const whole = index === 1 && isAttacker(player) ? `note ${written(broken, 0)} "${words}"` : undefined;
  const note = whole === undefined ? undefined : tried(broken, message('Write {words}', { words: whole }), [{ at: tokens[0]!.startOffset, to: endOf(tokens.at(-1)!), text: whole }]);
  const told = whole === undefined ? message('A fake is not drawn. Write it as a note, and what he does then as his action.') : message('A fake is not drawn. Write it as a note ({note}), and what he does then as his action.', { note: whole });
  return { code: 'unknown-word', from: index, to: index + 1, message: told, fixes: [on, note] };
}

/** `1 gets the ball back from 5` is 5's pass. */
function getsTheBall(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  // `1 takes` is a shot until the hand-off comes.
  const index = /^hand[ -]?offs?$/.test(word(tokens[broken.index])) && broken.index === 2 ? 1 : broken.index;
  if (!/^(gets?|receives?|catches|catch|takes?)$/.test(word(tokens[index])) || index !== 1 || !isAttacker(tokens[0])) return undefined;
  const from = tokens.findIndex((token, i) => i > index && i <= index + 4 && token.image === 'from');
  const passer = tokens[from + 1];
  const ofThePasser = (text: string): Message => message('Say it of the man who passes: "{text}".', { text });
  if (from < 0 || !isAttacker(passer)) return /^(gets?|receives?)$/.test(word(tokens[index])) && /^(ball|pass|it|hand[ -]?off)$/.test(word(tokens[index + 1])) ? { code: 'unknown-word', from: index, to: index + 1, message: ofThePasser(`4 passes to ${written(broken, 0)}`), fixes: [] } : undefined;
  const isHandOff = tokens.slice(index, from).some((token) => /^hand[ -]?offs?$/.test(word(token)));
  const text = `${written(broken, from + 1)} ${isHandOff ? 'hands off' : 'passes'} to ${written(broken, 0)}`;
  return { code: 'unknown-word', from: index, to: index + 1, message: ofThePasser(text), fixes: [writing(broken, 0, from + 2, text)] };
}

/** `2 takes X2 to the corner`: he clears, his man follows. */
function takesHisMan(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const man = tokens[index];
  if (!/^takes?$/.test(word(tokens[index - 1])) || !(isDefender(man) || word(man) === 'man')) return undefined;
  const text = inNumber(broken, index - 1, 'clears');
  return { code: 'misplaced-word', from: index - 1, to: index + 1, message: message('Who guards him goes with him by himself: write "{text}".', { text }), fixes: [writing(broken, index - 1, index + 1, text)] };
}

function setsUpHisMan(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^sets?$/.test(word(tokens[index])) || word(tokens[index + 1]) !== 'up') return undefined;
  const to = index + 2 + (word(tokens[index + 2]) === 'man' || isDefender(tokens[index + 2]) ? 1 : 0);
  const text = inNumber(broken, index, 'v-cuts');
  return { code: 'unknown-word', from: index, to, message: message('A man who sets up his defender goes one way to come back: write "{text}".', { text }), fixes: [writing(broken, index, to, text)] };
}

/** `5, then 4, screen for 2` */
function oneThenTheOther(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index]) !== 'then' || !isAttacker(tokens[index + 1]) || !isAttacker(tokens[index - 2])) return undefined;
  const verb = tokens.findIndex((token, i) => i > index + 1 && verbOf(token.image) !== undefined);
  const isScreen = verbOf(word(tokens[verb]))?.class === 'screen';
  if (verb < 0 || verb > index + 3 || !isScreen) return undefined;
  const text = `${written(broken, index - 2)} and ${written(broken, index + 1)} stagger`;
  return { code: 'misplaced-word', from: index - 2, to: verb + 1, message: message('Two screens one behind the other are a stagger: "{text}".', { text }), fixes: [writing(broken, index - 2, verb + 1, text)] };
}

function ballGoesTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const ball = [index - 1, index - 2].find((i) => word(tokens[i]) === 'ball');
  if (ball === undefined || !/^(goes|is|comes|gets to)$/.test(word(tokens[ball + 1]))) return undefined;
  const player = tokens.findIndex((token, i) => i > ball + 1 && i <= ball + 3 && isAttacker(token));
  if (player >= 0) {
    const text = `${written(broken, player)} catches`;
    return { code: 'misplaced-word', from: ball, to: player + 1, message: message('Say it of the man who gets the ball: "{text}".', { text }), fixes: [writing(broken, ball, player + 1, text)] };
  }
  if (word(tokens[ball + 1]) === 'is') return undefined;
  const to = ball + 2 + (word(tokens[ball + 2]) === 'to' ? 1 : 0);
  return { code: 'misplaced-word', from: ball, to, message: message('The ball "reaches" a place: "when the ball reaches the right wing".'), fixes: [writing(broken, ball + 1, to, 'reaches')] };
}

function startsAt(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (index !== 0 || !/^(start|starts|begin|run|go)$/.test(word(tokens[0])) || word(tokens[1]) !== 'at') return undefined;
  const fix = writing(broken, 0, 2, 'call with');
  return fix && { code: 'misplaced-word', from: 0, to: 2, message: message('When a play is called, its "call" line says: "call with {words}".', { words: written(broken, 2, tokens.length) }), fixes: [fix] };
}

function whichZone(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'against' || word(tokens[index]) !== 'zone') return undefined;
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('Which zone? Say its shape, for example "against 2-3".'), fixes: ['2-3', '3-2', '1-3-1'].map((shape) => writing(broken, index, index + 1, shape)) };
}

/** `X2 is overplaying 2` */
function isDoing(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = /ing$/.test(word(tokens[index])) && /^(is|are)$/.test(word(tokens[index - 1])) ? index - 1 : /^(is|are)$/.test(word(tokens[index])) && /ing$/.test(word(tokens[index + 1])) ? index : undefined;
  if (at === undefined) return undefined;
  const stem = word(tokens[at + 1]).slice(0, -3);
  const forms = [stem, `${stem}e`, stem.replace(/(.)\1$/, '$1')];
  const found = [...verbs].find(([verb, { number }]) => number === 'plural' && forms.includes(verb))?.[0];
  const one = found === undefined ? undefined : otherNumber.get(found);
  if (one === undefined) return undefined;
  const text = inNumber(broken, at, one);
  const fix = writing(broken, at, at + 2, text);
  return fix && { code: 'misplaced-word', from: at, to: at + 2, message: message('Write "{text}".', { text }), fixes: [fix] };
}

/** `1 passes to 2 or 3`: whoever is open is a look. */
function eitherReceiver(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const isWhoever = /^(whoever|whichever|whomever)$/.test(word(tokens[index]));
  const receivers = word(tokens[index]) === 'or' && word(tokens[index - 2]) === 'to' && isAttacker(tokens[index - 1]) && isAttacker(tokens[index + 1]);
  if (!isWhoever && !receivers) return undefined;
  const look = receivers ? `look ${written(broken, index - 1)} or ${written(broken, index + 1)}` : 'look 2 or 3';
  const isWhole = receivers && index === 4 && tokens.length === 6;
  return { code: isWhoever ? 'unknown-word' : 'misplaced-word', from: index, to: index + 1, message: message('Who is open is seen in the game: that is a look. For example: {look}.', { look }), fixes: isWhole ? [writing(broken, 0, tokens.length, look)] : [] };
}

/** `4 and 5 double for 2`: a double is the defence's trap. */
function doublesFor(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index]) !== 'for' || !/^doubles?$/.test(word(tokens[index - 1])) || isDefender(tokens[index - 2])) return undefined;
  const text = inNumber(broken, index - 1, 'double-screens');
  return { code: 'misplaced-word', from: index - 1, to: index, message: message('Two defenders double a man; two screeners "{text}".', { text }), fixes: [writing(broken, index - 1, index, text)] };
}

const OPPOSITE: ReadonlyMap<string, string> = new Map(Object.entries({
  'left side': 'right side', 'right side': 'left side', 'ball-side': 'weak side', 'strong-side': 'weak side', 'weak-side': 'ball side', 'near side': 'far side', 'far side': 'near side',
}));

/** `everyone clears the right side` leaves it; `clears to` would send them there. */
function clearsASide(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const side = OPPOSITE.get(word(tokens[index]));
  if (side === undefined || verbOf(word(tokens[index - 1]))?.base !== 'clear') return undefined;
  const text = `to the ${side}`;
  return { code: 'missing-word', from: index, to: index + 1, message: message('Say where they go: to empty the {place}, write "{words}".', { place: written(broken, index), words: `${written(broken, index - 1)} ${text}` }), fixes: [tried(broken, message('Write "{words}"', { words: text }), [{ at: endOf(tokens[index - 1]!), to: endOf(tokens[index]!), text: ` ${text}` }])] };
}

function picksUpAMan(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!isPlayer(tokens[index]) || verbOf(word(tokens[index - 1]))?.base !== 'pick up' || !isDefender(tokens[index - 2])) return undefined;
  const text = inNumber(broken, index - 1, 'guards');
  return { code: 'misplaced-word', from: index - 1, to: index, message: message('"picks up" is said of the dribble. A defender "guards": "{text} {words}".', { text, words: written(broken, index) }), fixes: [writing(broken, index - 1, index, text)] };
}

const NUMBERS: readonly string[] = ['zero', 'one', 'two', 'three', 'four', 'five'];

function countsTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^counts?$/.test(word(tokens[index])) || word(tokens[index + 1]) !== 'to') return undefined;
  const said = word(tokens[index + 2]);
  const seconds = NUMBERS.includes(said) ? NUMBERS.indexOf(said) : Number(said);
  if (!(seconds > 0)) return undefined;
  const text = `${inNumber(broken, index, 'holds')} for ${seconds} ${seconds === 1 ? 'second' : 'seconds'}`;
  return { code: 'unknown-word', from: index, to: index + 3, message: message('A count is a time: write "{text}".', { text }), fixes: [writing(broken, index, index + 3, text)] };
}

const HEIGHTS: ReadonlyMap<string, readonly string[]> = new Map(Object.entries({ long: ['to the rim', 'to the corner'], high: ['to the top', 'to the high post'], low: ['to the block', 'to the short corner'], wide: ['to the corner', 'to the wing'], deep: ['to the corner', 'to the block'] }));

/** `2 cuts high`: left out, a cut goes to the rim. */
function highOrLow(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const ways = HEIGHTS.get(word(tokens[index]));
  const verb = verbOf(word(tokens[index - 1]));
  if (!ways || !verb || !['move', 'screen', 'seal', 'dribble'].includes(verb.class)) return undefined;
  const places = verb.class === 'screen' || verb.base === 'post up' ? ways.map((way) => way.replace('to the', 'at the')) : ways;
  return { code: 'unknown-word', from: index, to: index + 1, message: message('"{place}" can be many places. Say which: "{words}".', { place: written(broken, index), words: `${written(broken, index - 1)} ${places[0]!}` }), fixes: places.map((text) => writing(broken, index, index + 1, text)) };
}

function theBigs(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^bigs$/.test(word(tokens[i])));
  if (at === undefined) return undefined;
  return { code: 'unknown-word', from: at, to: at + 1, message: message('Say the players by their numbers: "4 and 5".'), fixes: [tried(broken, message('Write "4 and 5"'), [{ at: startWithArticles(broken, at), to: endOf(tokens[at]!), text: '4 and 5' }])] };
}

/** `1 at the left slot, 5 on the left block`: where a play starts is its `from` line. */
function placesWithoutFrom(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  if (!isAttacker(tokens[0]) || broken.index < 3) return undefined;
  const fix = tried(broken, message('Put "from" before it'), [{ at: tokens[0]!.startOffset, to: tokens[0]!.startOffset, text: 'from ' }]);
  return fix && { code: 'missing-word', from: 0, to: 1, message: message('Where the five stand at the start is the "from" line of the play: put "from" before it.'), fixes: [fix] };
}

/** `1 cuts to the rim and out to the corner` */
function andOutTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const and = [index, index - 1].find((i) => word(tokens[i]) === 'and');
  if (and === undefined || and < 1) return undefined;
  const to = and + (/^(out|back|up|over|down)$/.test(word(tokens[and + 1])) ? 2 : 1);
  if (!/^(to|off|for)$/.test(word(tokens[to]))) return undefined;
  const fix = tried(broken, message('Write ", then {words}"', { words: written(broken, to) }), [{ at: endOf(tokens[and - 1]!), to: tokens[to]!.startOffset, text: ', then ' }]);
  return fix && { code: 'misplaced-word', from: and, to: to + 1, message: message('The same man goes on: write ", then {words}".', { words: written(broken, to) }), fixes: [fix] };
}

function followsHisPass(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^follows?$/.test(word(tokens[index - 1])) || word(tokens[index]) !== 'pass') return undefined;
  const text = `${inNumber(broken, index - 1, 'cuts')} to the ball`;
  return { code: 'misplaced-word', from: index - 1, to: index + 1, message: message('Say where he goes: "{text}".', { text }), fixes: [writing(broken, index - 1, index + 1, text)] };
}

/** `off a double screen by 4 and 5` */
function doubleBy(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const noun = /^(double-screens?|staggers?|stagger-screens?)$/.test(word(tokens[index]));
  if (!noun || word(tokens[index - 1]) !== 'off' || !/^(by|of|from|with)$/.test(word(tokens[index + 1])) || !isAttacker(tokens[index + 2])) return undefined;
  const both = `${written(broken, index + 2)} and ${written(broken, index + 4)}`;
  const text = word(tokens[index]).startsWith('double') ? `the double of ${both}` : `${written(broken, index + 2)} then ${written(broken, index + 4)}`;
  return { code: 'misplaced-word', from: index, to: index + 2, message: message('Write "off {text}".', { text }), fixes: [tried(broken, message('Write "off {text}"', { text }), [{ at: tokens[index - 1]!.startOffset, to: endOf(tokens[index + 4] ?? tokens[index + 2]!), text: `off ${text}` }])] };
}

/** `5 turns and faces` */
function facesUp(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^faces?$/.test(word(tokens[index]))) return undefined;
  const text = inNumber(broken, index, 'faces up');
  const fix = writing(broken, index, index + 1, text);
  return fix && { code: 'unknown-word', from: index, to: index + 1, message: message('Did you mean "{text}"?', { text }), fixes: [fix] };
}

/** `2 gets to the corner`: in a trigger an event, else a move. */
function getsTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^gets? to$/.test(word(tokens[index]))) return undefined;
  const text = `${inNumber(broken, index, 'moves')} to`;
  const fix = writing(broken, index, index + 1, text);
  return fix && { code: 'misplaced-word', from: index, to: index + 1, message: message('Did you mean "{text}"?', { text }), fixes: [fix] };
}

/** `1 drives at the rim`: at a man, to a place. */
function atForTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(at|on|in)$/.test(word(tokens[index - 1])) || verbOf(word(tokens[index - 2]))?.class !== 'dribble') return undefined;
  const fix = writing(broken, index - 1, index, 'to');
  return fix && { code: 'misplaced-word', from: index - 1, to: index, message: message('A dribble goes "to" a place: write "to".'), fixes: [fix] };
}
