// What coaches say of defenders, and of what a play has no line for, that a line says in other words.
import { message, type Message } from '../../message/message.ts';
import { endOf, tried, written, type Broken } from './broken-line.ts';
import { isPlayer } from '../line-token.ts';
import { commaAfter, inNumber, isAttacker, isDefender, rewriting, unquoted, wholeLine, word, writing, type SaidOtherwise } from './saying.ts';
import { verbOf } from '../verbs.ts';

/** `X1 ices the screen`: he sends the dribbler away from it. */
export function icesTheScreen(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(ices?|iced|blues?|downs?|push-under|blitz|blitzes|weaks?)$/.test(word(tokens[i])));
  if (at === undefined || !isDefender(tokens[at - 1])) return undefined;
  if (/^blitz/.test(word(tokens[at]))) return { code: 'unknown-word', from: at, to: at + 1, message: message('To blitz is to trap: "X1 and X5 trap 1".'), fixes: [writing(broken, at, at + 1, inNumber(broken, at, 'traps'))] };
  return { code: 'unknown-word', from: at, to: at + 1, message: message('To ice a screen is to send the dribbler away from it; no defender can be told that yet. In a step\'s condition put it in quotes (when "they ice it"), or say what the screener\'s man does: "X5 drops".'), fixes: [] };
}

export function whichZone(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'against' || word(tokens[index]) !== 'zone') return undefined;
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('Which zone? Say its shape, for example "against 2-3".'), fixes: ['2-3', '3-2', '1-3-1'].map((shape) => writing(broken, index, index + 1, shape)) };
}

export function picksUpAMan(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!isPlayer(tokens[index]) || verbOf(word(tokens[index - 1]))?.base !== 'pick up' || !isDefender(tokens[index - 2])) return undefined;
  const text = inNumber(broken, index - 1, 'guards');
  return { code: 'misplaced-word', from: index - 1, to: index, message: message('"picks up" is said of the dribble. A defender "guards": "{text} {words}".', { text, words: written(broken, index) }), fixes: [writing(broken, index - 1, index, text)] };
}

/** `3 draws two`: what the defence does then is a step of its own. */
export function drawsTwo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(draws?|attracts?|collapses?|occup(y|ies)|freezes?|pulls?)$/.test(word(tokens[index])) || index < 1 || /^(it|ball|back|away|off|up)$/.test(word(tokens[index + 1]))) return undefined;
  const before = tokens[index - 1];
  const from = before && ['and', ',', 'then'].includes(before.image) ? index - 1 : index;
  const fix = from === index ? undefined : tried(broken, message('Leave out "{words}"', { words: written(broken, from, tokens.length) }), [{ at: endOf(tokens[from - 1]!), to: endOf(tokens.at(-1)!), text: '' }]);
  return { code: 'unknown-word', from: index, to: Math.min(index + 2, tokens.length), message: message('What a defender does then is a line of his ("X2 helps at rim"), or a step of its own: step "…" instead of "…" when X2 helps.'), fixes: [fix] };
}

/** `X1 fouls 1 at 5 on the clock`: it stops the play. */
export function fouls(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(fouls?|hacks?|fouled)$/.test(word(tokens[index]))) return undefined;
  return asNote(broken, index, message('A foul stops the play, and nothing of it is drawn. Write it as a note; where the play is over with it, write "ends with no shot".'));
}

/** `makes a block` and `makes way` are deeds. */
const SHOT_OR_NOTHING = /^(|it|ball|shot|jumper|three|two|layup|lay-up|dunk|both|one|first|second|free|basket|on|and|then|,|again|everything|put-back)$/;

/** `1 misses on purpose`, `1 makes both`: whether a shot goes in is nobody’s line. */
export function makesOrMisses(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(misses|miss|makes|make|scores?)$/.test(word(tokens[index])) || !isAttacker(tokens[index - 1]) || !SHOT_OR_NOTHING.test(word(tokens[index + 1]))) return undefined;
  return asNote(broken, index, message('Whether a shot goes in, no line says. Who goes for the ball after a miss stands behind the look, as in "look 1: jumper, on a miss 4 crashes"; the rest is a note.'));
}

/** `1 shoots a free throw` */
export function shootsAFreeThrow(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(free[ -]throws?|foul shots?)$/.test(word(tokens[i])));
  if (at === undefined || !/^(shoots?|takes?|has)$/.test(word(tokens[at - 1]))) return undefined;
  return asNote(broken, at - 1, message('A free throw is not drawn. Begin the play with the ball in the hands of the man who gets it after the throw, and write the throw as a note.'));
}

/** `X1 covers the passing lane to 1`, `X2 faceguards 2`, `X4 plays behind 4`: how he guards him. */
export function guardsHim(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(faceguards?|face-guards?|plays?|covers?|takes? away|takes?|smothers?|pressures?)$/.test(word(tokens[i])) && isDefender(tokens[i - 1]));
  if (at === undefined) return undefined;
  const man = tokens.findIndex((token, i) => i > at && i < commaAfter(broken, at) && isAttacker(token));
  if (man < 0) return undefined;
  const verb = /^(face-?guards?|takes?)/.test(word(tokens[at])) || tokens.slice(at, man).some((token) => /lane/.test(word(token))) ? 'denies' : 'guards';
  const text = `${inNumber(broken, at, verb)} ${written(broken, man)}`;
  return { code: 'unknown-word', from: at, to: man + 1, message: message('Of a defender say whom he guards, or keeps from the ball: "{text}".', { text }), fixes: [writing(broken, at, man + 1, text)] };
}

/** `X5 comes out to 3` */
export function comesOutTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const verb = tokens.findLastIndex((token, i) => i < index && i >= index - 3 && /^(comes?|steps?|gets?|goes)/.test(word(token)));
  if (verb < 1 || !isDefender(tokens[verb - 1]) || !isAttacker(tokens[index])) return undefined;
  const text = `${inNumber(broken, verb, 'closes out')} on ${written(broken, index)}`;
  // Nobody waits for a defender: what depends on him is a step.
  if (/^(when|once|as|after|if)$/.test(word(tokens[0]))) return { code: 'misplaced-word', from: 0, to: index + 1, message: message('A line happens whatever the defence does. What depends on it is a step of its own: {shown}.', { shown: `step "…" instead of "…" when ${written(broken, verb - 1)} ${text}` }), fixes: [] };
  return { code: 'misplaced-word', from: verb, to: index + 1, message: message('A defender who runs out at a man with the ball closes out: "{text}".', { text }), fixes: [writing(broken, verb, index + 1, text)] };
}

/** `4 flashes to the soft spot of the zone`: which place that is, its form decides. */
export function whereItIsSoft(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1, index + 1].find((i) => /^(soft|gaps?|seams?|holes?|pockets?|window)$/.test(word(tokens[i])) && /^(to|into|in|toward|at|finds?|hits?)$/.test(word(tokens[i - 1])));
  if (at === undefined) return undefined;
  return { code: 'unknown-word', from: at, to: at + 1, message: message('Where a zone is soft, its form decides: say the place, for example "to nail", "to right short corner" or "to between X1 and X2".'), fixes: [] };
}

/** `4 flashes to the high post between the guards`: which of them, the form of the zone decides. */
export function betweenWhom(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index - 1]) !== 'between' || !/^(two|both|guards?|bigs?|wings?|forwards?|defenders?|men|top|bottom|back|front|them)$/.test(word(tokens[index]))) return undefined;
  return { code: 'misplaced-word', from: index - 1, to: index + 1, message: message('Say between which two, by their numbers: "between X1 and X2" of the defence, "between 4 and 5" of your own.'), fixes: [] };
}

/** `against box and one` */
export function boxAndOne(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[0]) !== 'against' || !/^(box|diamond|triangle|junk|match-?up|box-and-one|diamond-and-one|triangle-and-two)$/.test(word(tokens[index]))) return undefined;
  return { code: 'misplaced-word', from: index, to: tokens.length, message: message('Half zone, half man is not drawn yet. Write "against man" and a line for each who guards otherwise: "X2 denies 2", "X5 helps at rim".'), fixes: [writing(broken, index, tokens.length, 'man')] };
}

/** `1 dribbles down the clock to 8 seconds`, `1 runs the clock down`: he keeps the ball until then. */
export function runsTheClockDown(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const clock = tokens.findIndex((token, i) => i >= index - 1 && i <= index + 3 && /^(clock|time)$|clock$/.test(word(token)));
  const verb = tokens.findLastIndex((token, i) => i <= index && verbOf(word(token)) !== undefined);
  // `at the same time` is no clock.
  if (/^(same( time)?|this)$/.test(word(tokens[clock - 1])) || /same time/.test(word(tokens[clock]))) return undefined;
  if (clock < 0 || verb < 1 || !isAttacker(tokens[verb - 1]) || !['dribble', 'move', 'hold'].includes(verbOf(word(tokens[verb]))!.class)) return undefined;
  const seconds = /\d+(\.\d+)?/.exec(written(broken, clock, tokens.length))?.[0];
  const text = `${inNumber(broken, verb, 'keeps his dribble')} until ${seconds ?? '8'} on the clock`;
  return { code: 'misplaced-word', from: verb, to: tokens.length, message: message('Who lets the clock run keeps the ball until then: "{text}".', { text }), fixes: seconds === undefined ? [] : [writing(broken, verb, tokens.length, text)] };
}

/** The message, and the whole line as a note for a mend. */
function asNote(broken: Broken, at: number, told: Message): SaidOtherwise {
  return { code: 'unknown-word', from: at, to: at + 1, message: told, fixes: [rewriting(broken, `note "${unquoted(wholeLine(broken))}"`)] };
}
