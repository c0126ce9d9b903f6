// What coaches say of what is waited for, and of choices, that a line says in other words.
import { message } from '../../message/message.ts';
import { endOf, endOfWords, reads, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { commaAfter, inNumber, isAttacker, isDefender, rewriting, word, writing, type SaidOtherwise } from './saying.ts';
import { isPlayer } from '../line-token.ts';
import { singular, verbOf } from '../verbs.ts';
import { lookInstead } from './said-of-looks.ts';
import { BEGINS_A_WAIT } from '../waits.ts';

/** `if X4 switches, 4 slips`, `unless X2 denies, …`: a line happens always. Leaving out `unless` would turn it round. */
export function dependsOnTheDefence(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const saying = word(tokens[index]);
  if (saying !== 'if' && saying !== 'unless') return undefined;
  return makesAChoice(broken, index, saying);
}

/** `cuts behind his man if X3 turns his head`: what cannot be read before it is the smaller trouble. */
export function choosesLater(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!isAttacker(tokens[0])) return undefined;
  const at = tokens.findIndex((token, i) => i >= index && /^(if|unless)$/.test(word(token)));
  return at < 0 ? undefined : makesAChoice(broken, at, word(tokens[at]));
}

function makesAChoice(broken: Broken, index: number, saying: string): SaidOtherwise | undefined {
  const { tokens } = broken;
  const end = commaAfter(broken, index);
  const clause = written(broken, index + 1, end);
  const left = saying === 'if' ? whatIsLeft(broken, index, end, clause) : undefined;
  if (left) return left;
  const found = { code: 'unknown-word', from: index, to: index + 1, fixes: [] } as const;
  if (clause && reads(`step "A" when ${clause}`)) {
    const shown = isDefender(tokens[index + 1]) ? `step "…" instead of "…" when ${clause}` : 'step "…" instead of "…" when X4 switches';
    if (isDefender(tokens[index + 1])) return { ...found, message: message('A line happens whatever the defence does. What depends on it is a step of its own: {shown}.', { shown }) };
  }
  if (/^(is|are) (open|free)$/.test(word(tokens[index + 2])) || word(tokens[index + 1]) === 'nothing')
    return { ...found, message: message('Whether somebody is open is seen in the game: that is a look. For example: look 4: layup.'), fixes: [lookInstead(broken)] };
  if (saying === 'if' && clause && reads(`3 holds when ${clause}`)) return undefined;
  return { ...found, message: message('"{saying}" makes a choice, and a line always happens. What the defence decides is a step (step "…" instead of "…" when X4 switches), what is open is a look (look 4: layup).', { saying }) };
}

/** `4 clears if he doesn't get it`, `5 dives if nothing is there`: what follows a look is done once it is passed up. */
function whatIsLeft(broken: Broken, index: number, end: number, clause: string): SaidOtherwise | undefined {
  if (!/\b(not|nothing|nobody|covered|denied|guarded|taken away)\b|n['’]t\b/i.test(clause)) return undefined;
  // What the defence does not do is its choice as well: `slips if they don't switch`.
  if (isDefender(broken.tokens[index + 1]) || /^(they(?!['’]re (?:both )?(?:covered|denied|guarded))|(the |his |her )?(defen[cs]e|defenders?|man|help|zone))\b/i.test(clause)) return undefined;
  const words = written(broken, index, end);
  const { tokens } = broken;
  const edit = index === 0 ? { at: tokens[0]!.startOffset, to: tokens[end + 1]?.startOffset ?? endOf(tokens.at(-1)!), text: '' } : { at: endOf(tokens[index - 1]!), to: endOf(tokens[end - 1]!), text: '' };
  const fix = tried(broken, message('Leave out "{words}"', { words }), [edit]);
  return fix && { code: 'extra-word', from: index, to: end, message: message('What comes next when nobody is open stands below the look, without an "if": there the look has been passed up. Leave out "{words}".', { words }), fixes: [fix] };
}

/** `3, once 4 is set, cut to the rim`: the wait stands first, and then who does it. */
export function waitsWhenSpokenTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (index !== 2 || !isAttacker(tokens[0]) || word(tokens[1]) !== ',' || !BEGINS_A_WAIT.has(word(tokens[2]))) return undefined;
  const comma = commaAfter(broken, 2);
  let verb = comma + 1;
  while (/^(you|then|just)$/.test(word(tokens[verb]))) verb++;
  const plain = tokens[verb];
  if (plain === undefined || verbOf(plain.image) === undefined) return undefined;
  const behind = broken.text.slice(endOf(plain), endOfWords(broken));
  const text = `${written(broken, 2, comma)}, ${written(broken, 0)} ${singular(plain.image)}${behind}`;
  return { code: 'word-order', from: 2, to: comma, message: message('When it is done stands first, and then who does it: "{text}".', { text }), fixes: [rewriting(broken, text)] };
}

/** `on her heels, 4 peels off`, `right behind him`: how long after? */
export function onHisHeels(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const noun = tokens.findIndex((token, i) => i >= index - 1 && i <= index + 3 && /^(heels?|tail)$/.test(word(token)));
  const from = tokens.findLastIndex((token, i) => i < noun && i >= noun - 4 && /^(on|at|behind)$/.test(word(token)));
  if (noun < 0 || from < 0) return undefined;
  const begin = /^(right|hard|hot)$/.test(word(tokens[from - 1])) ? from - 1 : from;
  const times = ['at the same time', 'half a second later'];
  return { code: 'unknown-word', from: begin, to: noun + 1, message: message('Close behind somebody is a time: "at the same time", or "half a second later".'), fixes: times.map((text) => writing(broken, begin, noun + 1, text)) };
}

function nobodyWaits(broken: Broken, from: number, to: number, words: string, edit: Parameters<typeof tried>[2][number]): SaidOtherwise {
  return { code: 'misplaced-word', from, to, message: message('No line waits for a defender. Leave out "{words}", or write what happens only then as a step of its own: step "…" instead of "…" when X4 switches.', { words }), fixes: [tried(broken, message('Leave out "{words}"', { words }), [edit])] };
}

/** `swings it back on the close-out`, `slips on the switch`: nobody can wait for a defender. */
export function onWhatADefenderDoes(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const noun = [index, index + 1].find((i) => /^(close[ -]?outs?|switch|help|rotation|trap|hedge|recovery|double|show|stunt)$/.test(word(tokens[i])) && /^(on|off|after|with|at|against)$/.test(word(tokens[i - 1])));
  if (noun === undefined || !(tokens[noun + 1] === undefined || /^(,|and|then|:)$/.test(word(tokens[noun + 1])))) return undefined;
  const from = noun - 1;
  const words = written(broken, from, noun + 1);
  const edit = from === 0 ? { at: tokens[0]!.startOffset, to: tokens[noun + 2]?.startOffset ?? endOf(tokens[noun]!), text: '' } : { at: endOf(tokens[from - 1]!), to: endOf(tokens[noun]!), text: '' };
  return nobodyWaits(broken, from, noun + 1, words, edit);
}

const OF_THE_DEFENCE = /^(zone|defence|defense|defenders?|press|help|trap|guards?|man|big|middle man|low man)$/;

/** `5 flashes to the middle when the top guard commits to 1` */
function whenADefender(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const wait = tokens.findLastIndex((token, at) => at > 0 && at <= index && /^(while|whilst|as|as soon as|once|when|after|until)$/.test(word(token)));
  const who = tokens.findIndex((token, at) => at > wait && at <= wait + 3 && OF_THE_DEFENCE.test(word(token)));
  if (wait < 2 || who < 0 || tokens.slice(wait + 1, who).some((token) => isPlayer(token)) || !isAttacker(tokens[0])) return undefined;
  const words = written(broken, wait, tokens.length);
  return nobodyWaits(broken, wait, tokens.length, words, { at: endOf(tokens[wait - 1]!), to: endOf(tokens.at(-1)!), text: '' });
}

/** `while the zone is still shifting, 1 drifts`, `when X2 gets to him, 4 swings it` */
export function whileTheZone(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const trailing = whenADefender(broken);
  if (trailing !== undefined) return trailing;
  const isDefence = isDefender(tokens[1]) || /^(zone|defence|defense|defenders|press|help|trap)$/.test(word(tokens[1]));
  if (index > commaAfter(broken, 0) || !isDefence || !/^(while|whilst|as|as soon as|once|when|after)$/.test(word(tokens[0]))) return undefined;
  const end = commaAfter(broken, 0);
  const words = written(broken, 0, end);
  const edit = { at: tokens[0]!.startOffset, to: tokens[end + 1]?.startOffset ?? endOf(tokens.at(-1)!), text: '' };
  return nobodyWaits(broken, 0, end, words, edit);
}

/** `before 1 passes, 2 cuts` is `once 2 cuts, 1 passes`. */
export function before(broken: Broken): SaidOtherwise | undefined {
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
export function onTheCatch(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => ['on', 'after', 'off', 'at'].includes(word(tokens[i])) && WHOSE.has(word(tokens[i + 1])) && (i === 0 || word(tokens[i - 1]) === ',' || tokens[i + 2] === undefined || [',', ':'].includes(word(tokens[i + 2]))));
  if (at === undefined) return undefined;
  const noun = word(tokens[at + 1]);
  return { code: 'misplaced-word', from: at, to: at + 2, message: message('"{words}" does not say whose. Say who does it: "{noun}".', { words: written(broken, at, at + 2), noun: WHOSE.get(noun)! }), fixes: [] };
}

/** `on the slap, 4 screens`: a step begins with its first lines. */
export function onTheSignal(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (index > 2 || word(tokens[0]) !== 'on' || !/^(slap|call|whistle|signal|go|ready|snap|clap|hand)$/.test(word(tokens[1]))) return undefined;
  const comma = tokens.findIndex(({ image }) => image === ',');
  const next = tokens[comma < 0 ? 2 : comma + 1];
  const fix = next && tried(broken, message('Leave out "{words}"', { words: written(broken, 0, comma < 0 ? 2 : comma) }), [{ at: startWithArticles(broken, 0), to: next.startOffset, text: '' }]);
  return { code: 'extra-word', from: 0, to: comma < 0 ? 2 : comma, message: message('The first lines of the first step begin with the call, or as the thrower gets the ball: that need not be said.'), fixes: [fix] };
}

/** `2 waits 2 seconds` */
export function waitsWithoutFor(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const time = tokens[index - 1];
  if (time?.tokenType.name !== 'SECONDS' || verbOf(word(tokens[index - 2]))?.class !== 'hold') return undefined;
  const text = `for ${written(broken, index - 1)}`;
  const fix = writing(broken, index - 1, index, text);
  return fix && { code: 'missing-word', from: index - 1, to: index, message: message('A word is missing before "{words}". Did you mean "{text}"?', { words: written(broken, index - 1), text }), fixes: [fix] };
}

/** `2 waits for 5 to set the screen`, `1 waits for the screen` */
export function waitsForAScreen(broken: Broken): SaidOtherwise | undefined {
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

const NUMBERS: readonly string[] = ['zero', 'one', 'two', 'three', 'four', 'five'];

export function countsTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^counts?$/.test(word(tokens[index])) || word(tokens[index + 1]) !== 'to') return undefined;
  const said = word(tokens[index + 2]);
  const seconds = NUMBERS.includes(said) ? NUMBERS.indexOf(said) : Number(said);
  if (!(seconds > 0)) return undefined;
  const text = `${inNumber(broken, index, 'holds')} for ${seconds} ${seconds === 1 ? 'second' : 'seconds'}`;
  return { code: 'unknown-word', from: index, to: index + 3, message: message('A count is a time: write "{text}".', { text }), fixes: [writing(broken, index, index + 3, text)] };
}
