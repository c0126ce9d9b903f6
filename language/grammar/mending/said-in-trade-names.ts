// Deeds told by a name of the trade, or as one tells them whose language is another, that a line says in other words: `screens` for who stands beside a defender,
// `off the screen` for a block that is dribbled over.
import { message } from '../../message/message.ts';
import { endOf, tried, written, type Broken } from './broken-line.ts';
import { inNumber, isAttacker, isDefender, rewriting, wholeLine, word, writing, type Recogniser, type SaidOtherwise } from './saying.ts';
import { JOINTS } from '../rewording/rewording.ts';
import { otherNumber, verbOf } from '../verbs.ts';

export const saidInTradeNames: readonly Recogniser[] = [intoTheHandOff, besideADefender, touchesADefender, overTheBlock, rollsOff, aCutByName, behindTheMiddleMan, intoTheGapOfASide, aSecondDeed];

/** `4 pins down for 3 into the zoom with 2`: 3 takes the hand-off. */
function intoTheHandOff(broken: Broken): SaidOtherwise | undefined {
  const [, screen, who, user, giver] = /^(([1-5]) \S{1,20}(?: \S{1,20})? for ([1-5])),? (?:in)?to (?:an? |the )?(?:zoom|hand[ -]?off|handoff|dho)(?: action)? (?:with|from) ([1-5])$/i.exec(wholeLine(broken)) ?? [];
  if (screen === undefined || who === undefined || giver === who || user === giver) return undefined;
  const line = `${screen}, ${user!} comes off ${who} to beside ${giver!}, ${giver!} hands off to ${user!}`;
  const fix = rewriting(broken, line);
  return fix && { code: 'misplaced-word', from: 3, to: broken.tokens.length, message: message('Say what each does: "{line}".', { line }), fixes: [fix] };
}

/** `5 stands next to the man who guards 1`: what for, if not to screen him? */
function besideADefender(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1, index + 1].find((i) => /^(next|close|beside|near|in front of)$/.test(word(tokens[i])) && isDefender(tokens[word(tokens[i + 1]) === 'to' ? i + 2 : i + 1]));
  if (at === undefined || at < 2 || tokens.slice(0, at).some(isDefender)) return undefined;
  const man = word(tokens[at + 1]) === 'to' ? at + 2 : at + 1;
  const stands = verbOf(word(tokens[at - 1]))?.class === 'hold';
  const text = inNumber(broken, at - 1, 'screens');
  const fix = tried(broken, message('Write "{words}"', { words: text }), [{ at: stands ? tokens[at - 1]!.startOffset : tokens[at]!.startOffset, to: endOf(tokens[man - 1]!), text: stands ? text : `and ${text}` }]);
  const beside = tried(broken, message('Write "{words}"', { words: 'to beside' }), [{ at: tokens[at]!.startOffset, to: endOf(tokens[man - 1]!), text: 'to beside' }]);
  const from = stands ? at - 1 : at;
  return fix && { code: 'misplaced-word', from, to: man + 1, message: message('Who stands in a defender\'s way screens him: "{text} {who}".', { text, who: word(tokens[man]).toUpperCase() }), fixes: [fix, beside] };
}

/** `4 touches the defender of 1` */
function touchesADefender(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(touch(es)?|bumps?|nudges?|obstructs?|blocks?)$/.test(word(tokens[index])) || !isDefender(tokens[index + 1]) || isDefender(tokens[0])) return undefined;
  const text = inNumber(broken, index, 'screens');
  return { code: 'unknown-word', from: index, to: index + 1, message: message('Who stands in a defender\'s way screens him: "{text} {who}".', { text, who: word(tokens[index + 1]).toUpperCase() }), fixes: [writing(broken, index, index + 1, text)] };
}

/** `1 dribbles over the block on the right side`, `1 attacks the block by the right`: where the screen is called a block. */
function overTheBlock(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const block = tokens.findIndex((token, at) => at > 1 && at <= index + 1 && word(token) === 'block');
  const verb = tokens.slice(0, Math.max(block, 0)).findLastIndex((token) => verbOf(token.image) !== undefined);
  const between = block < 0 ? '' : tokens.slice(verb + 1, block).map(word).join(' ');
  const side = /^(?:(?:on|by|to|at|from|toward) )?(left|right)(?: side)?$/.exec(tokens.slice(block + 1).map(word).join(' '))?.[1];
  if (verb < 1 || !['dribble', 'move'].includes(verbOf(word(tokens[verb]))!.class) || !/^(over|around|past|by|)$/.test(between) || (between === '' && verbOf(word(tokens[verb]))!.base !== 'drive') || (side === undefined && tokens[block + 1] !== undefined)) return undefined;
  if (between === '' && side === undefined) return undefined;
  const does = verbOf(word(tokens[verb]))!.class === 'dribble' ? inNumber(broken, verb, 'dribbles') : written(broken, verb);
  const text = `${does} off the screen${side === undefined ? '' : ` to the ${side}`}`;
  const place = side === undefined || between !== '' ? undefined : writing(broken, verb + 1, tokens.length, `${side} block`);
  return { code: 'misplaced-word', from: verb, to: tokens.length, message: message('A block is a place here. What a team-mate sets is a screen: "{text}".', { text }), fixes: [writing(broken, verb, tokens.length, text), place] };
}

/** `4 rolls off`: to the rim, as a roll does. */
function rollsOff(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const off = index - 1;
  if (broken.token !== undefined || word(tokens[off]) !== 'off' || verbOf(word(tokens[off - 1]))?.base !== 'roll') return undefined;
  const text = written(broken, off - 1);
  const fix = tried(broken, message('Leave out "{words}"', { words: written(broken, off) }), [{ at: endOf(tokens[off - 1]!), to: endOf(tokens[off]!), text: '' }]);
  return fix && { code: 'line-unfinished', from: off, to: off + 1, message: message('Say off whom, or only "{text}": a roll goes to the rim by itself.', { text }), fixes: [fix] };
}

/** They would turn the cut round. */
const NO_NAME = /^(never|not|no|barely|hardly|almost|nearly|only|fakes?|jabs?|maybe|doesn'?t|don'?t|won'?t|can'?t|must|may|should|could|would|if|or|without)$/;

/** `2 Somebody cuts over 5 and 4 to the left wing`: a cut with a name that nobody here knows, and where it goes behind it. */
function aCutByName(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (tokens[index]?.tokenType.name !== 'UNKNOWN' || !isAttacker(tokens[index - 1]) || verbOf(word(tokens[index + 1]))?.base !== 'cut' || !/^(to|into|over|off|through|via|across|along the baseline|around|between|down the lane|up the lane)$/.test(word(tokens[index + 2])) || NO_NAME.test(word(tokens[index]))) return undefined;
  const words = written(broken, index);
  const fix = tried(broken, message('Leave out "{words}"', { words }), [{ at: tokens[index]!.startOffset, to: tokens[index + 1]!.startOffset, text: '' }]);
  return fix && { code: 'unknown-word', from: index, to: index + 1, message: message('A cut is told by its way, not by a name: leave out "{words}".', { words }), fixes: [fix] };
}

/** `5 ducks in behind the middle man`: of a zone he is X5. */
function behindTheMiddleMan(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const middle = [index, index + 1, index - 1].find((i) => word(tokens[i]) === 'middle' && /^(man|defender|guy)$/.test(word(tokens[i + 1])));
  if (middle === undefined || verbOf(word(tokens[middle - 1]))?.class === 'seal') return undefined;
  const from = /^(behind|on|against|in front of|inside)$/.test(word(tokens[middle - 1])) ? middle - 1 : middle;
  if (verbOf(word(tokens[from - 1]))?.class !== 'seal') return undefined;
  const text = `${inNumber(broken, from - 1, 'seals')} X5`;
  const to = /^zone$/.test(word(tokens[middle + 3])) ? middle + 4 : middle + 2;
  return { code: 'misplaced-word', from: from - 1, to, message: message('Say which defender he seals, by his number: "seals X5", who stands in the middle of a 2-3. Where each of a zone stands, the picture shows.'), fixes: [writing(broken, from - 1, to, text)] };
}

/** `4 flashes ball side into the gap`: of the places there the elbow is nearest to the middle. */
function intoTheGapOfASide(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const side = [index, index - 1, index + 1].find((i) => /^(ball-side|weak-side|strong-side)$/.test(word(tokens[i])) && /^(into|in|to)$/.test(word(tokens[i + 1])) && /^(gap|seam|hole|window|pocket)$/.test(word(tokens[i + 2])));
  if (side === undefined || verbOf(word(tokens[side - 1]))?.class !== 'move') return undefined;
  const texts = ['elbow', 'block', 'wing'].map((place) => `to the ${word(tokens[side])} ${place}`);
  return { code: 'misplaced-word', from: side, to: side + 3, message: message('Where the gap is, the form of the zone decides. Say the place: "{words}".', { words: texts[0]! }), fixes: texts.map((text) => writing(broken, side, side + 3, text)) };
}

/** `5 keeps it post up on the left block`: two deeds, and nothing between them. */
function aSecondDeed(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index, token } = broken;
  const verb = verbOf(word(token));
  const before = tokens[index - 1];
  if (token === undefined || verb === undefined || verb.class === 'event' || index < 2 || !isAttacker(tokens[0]) || before === undefined || JOINTS.has(word(before)) || before.tokenType.name === 'UNKNOWN') return undefined;
  // What stands right behind him is his verb; behind a little word it is a noun.
  if (isAttacker(before) || !/^(it|ball|back|rim|basket|corner|wing|elbow|block|top|slot|nail|keeps it|keeps the ball|corners|wings)$/.test(word(before))) return undefined;
  const does = inNumber(broken, index, verb.number === 'plural' ? (otherNumber.get(word(token)) ?? word(token)) : word(token));
  const joined = { at: endOf(before), to: endOf(token), text: ` and ${does}` };
  let next = index + 1;
  while (tokens[next]?.tokenType.name === 'UNKNOWN' || word(tokens[next]) === 'man') next++;
  const unread = next > index + 1 ? [{ at: endOf(token), to: endOf(tokens[next - 1]!), text: '' }] : [];
  const title = message('Write "{words}"', { words: `and ${does}` });
  // Who has the ball seals nobody with it: the man he is at goes.
  const withBall = /^(it|ball|keeps it|keeps the ball)$/.test(word(before)) && unread.length > 0 ? tried(broken, title, [joined, ...unread]) : undefined;
  const fix = withBall ?? tried(broken, title, [joined]) ?? tried(broken, title, [joined, ...unread]);
  return fix && { code: 'missing-word', from: index, to: index + 1, message: message('What he does next stands behind "and" or a comma: "{text}".', { text: `and ${does}` }), fixes: [fix] };
}
