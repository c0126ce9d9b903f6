// What coaches say of how men move, and of where to, that a line says in other words.
import { message, oneOf } from '../../message/message.ts';
import { endOf, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { commaAfter, inNumber, isAttacker, isDefender, word, writing, type SaidOtherwise } from './saying.ts';
import { verbOf } from '../verbs.ts';

/** `2 takes X2 to the corner`: he clears, his man follows. */
export function takesHisMan(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const man = tokens[index];
  if (!/^takes?$/.test(word(tokens[index - 1])) || !(isDefender(man) || word(man) === 'man')) return undefined;
  const text = inNumber(broken, index - 1, 'clears');
  return { code: 'misplaced-word', from: index - 1, to: index + 1, message: message('Who guards him goes with him by himself: write "{text}".', { text }), fixes: [writing(broken, index - 1, index + 1, text)] };
}

/** `1 dribbles up the sideline`, `1 runs the far sideline`: the sideline itself is out of bounds. */
export function upTheSideline(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const line = tokens.findIndex((token, i) => i >= index && i <= index + 3 && /^((far )?sideline|touchline|side line)$/.test(token.image));
  const verb = tokens.findLastIndex((token, i) => i < line && verbOf(token.image) !== undefined);
  if (line < 0 || verb < 1 || line - verb > 3 || !['move', 'dribble'].includes(verbOf(word(tokens[verb]))!.class) || ['to', 'at', 'on'].includes(word(tokens[line - 1]))) return undefined;
  const side = tokens.slice(verb, line + 1).flatMap((token) => word(token).split(' ')).find((each) => /^(left|right|near|far|ball-side|weak-side)$/.test(each));
  const texts = side === undefined ? ['to right hash', 'to left hash'] : [`to ${side} hash`];
  return { code: 'misplaced-word', from: verb + 1, to: line + 1, message: message('Say where he ends: "{words}" is by the sideline, in bounds. The sideline itself is out.', { words: texts.join('" or "') }), fixes: texts.map((text) => tried(broken, message('Write "{text}"', { text }), [{ at: endOf(tokens[verb]!), to: endOf(tokens.at(line)!), text: ` ${text}` }]) ?? tried(broken, message('Write "{text}"', { text }), [{ at: endOf(tokens[verb]!), to: endOf(tokens.at(-1)!), text: ` ${text}` }])) };
}

/** `1 spots up opposite` */
export function oppositeOfWhat(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(opposite|weak-side|ball-side|strong-side)$/.test(word(tokens[i])) && (tokens[i + 1] === undefined || [',', 'and', 'then'].includes(tokens[i + 1]!.image)));
  const verb = at === undefined ? undefined : verbOf(word(tokens[at - 1]));
  if (at === undefined || !['move', 'hold', 'seal'].includes(verb?.class ?? '')) return undefined;
  const joint = verb?.class === 'hold' || /up$/.test(verb?.base ?? '') ? 'in' : 'to';
  const texts = ['corner', 'wing'].map((place) => `${joint === 'in' && place === 'wing' ? 'on' : joint} the ${word(tokens[at])} ${place}`);
  return { code: 'misplaced-word', from: at, to: at + 1, message: message('Say which place of that side: "{words}".', { words: texts.join('" or "') }), fixes: texts.map((text) => writing(broken, at, at + 1, text)) };
}

/** `5 runs the right lane`: a strip of the open floor; the lane of the notation is the key. */
export function fillsALane(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1, index + 1].find((i) => /^(lanes?|floor)$/.test(word(tokens[i])));
  const verb = at === undefined ? -1 : tokens.findLastIndex((token, i) => i < at && ['run', 'sprint', 'fill', 'jog'].includes(verbOf(token.image)?.base ?? ''));
  if (at === undefined || verb < 0 || at - verb > 3) return undefined;
  const side = tokens.slice(verb + 1, at).map(word).find((each) => /^(left|right|middle|centre|center)$/.test(each));
  const places = side === 'left' || side === 'right' ? [`${side} corner`, `${side} wing`] : side === undefined ? ['right corner', 'left corner'] : ['rim'];
  const texts = places.map((place) => `${inNumber(broken, verb, 'sprints')} to ${place}`);
  return { code: 'misplaced-word', from: verb, to: at + 1, message: message('In the open floor say where he ends: {words}. "lane" is the key here.', { words: oneOf(texts.map((text) => `"${text}"`)) }), fixes: texts.map((text) => writing(broken, verb, at + 1, text)) };
}

/** `1 fills the open corner` */
export function anOpenPlace(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(open|empty|vacated|vacant|open window|open gap)$/.test(word(tokens[i])));
  if (at === undefined || at < 1) return undefined;
  const from = /^(to|into)$/.test(tokens[at - 1]?.image ?? '') ? at - 1 : at;
  const fix = ['the open spot', 'to the open spot'].map((text) => tried(broken, message('Write "{text}"', { text }), [{ at: startWithArticles(broken, from), to: endOf(tokens[Math.min(at + 1, tokens.length - 1)]!), text }])).find((each) => each !== undefined);
  return fix && { code: 'unknown-word', from: at, to: Math.min(at + 2, tokens.length), message: message('Which place is empty is worked out: write "the open spot", or say its side.'), fixes: [fix] };
}

/** `4 rotates up to 2's spot` */
export function someonesSpot(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1, index + 1].find((i) => word(tokens[i]) === "'s" && /^(spot|place|position|old|corner|wing|slot)$/.test(word(tokens[i + 1])));
  const verb = at === undefined ? -1 : tokens.findLastIndex((token, i) => i < at && verbOf(token.image) !== undefined);
  if (at === undefined || verb < 1 || !isAttacker(tokens[at - 1])) return undefined;
  const text = `${inNumber(broken, verb, 'fills')} for ${written(broken, at - 1)}`;
  const to = word(tokens[at + 1]) === 'old' ? Math.min(at + 3, tokens.length) : at + 2;
  return { code: 'misplaced-word', from: verb, to, message: message(`To take a man's place is to fill for him: "{text}".`, { text }), fixes: [writing(broken, verb, to, text)] };
}

const OPPOSITE: ReadonlyMap<string, string> = new Map(Object.entries({
  'left side': 'right side', 'right side': 'left side', 'ball-side': 'weak side', 'strong-side': 'weak side', 'weak-side': 'ball side', 'near side': 'far side', 'far side': 'near side',
}));

/** `everyone clears the right side` leaves it; `clears to` would send them there. */
export function clearsASide(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const side = OPPOSITE.get(word(tokens[index]));
  if (side === undefined || verbOf(word(tokens[index - 1]))?.base !== 'clear') return undefined;
  const text = `to the ${side}`;
  return { code: 'missing-word', from: index, to: index + 1, message: message('Say where they go: to empty the {place}, write "{words}".', { place: written(broken, index), words: `${written(broken, index - 1)} ${text}` }), fixes: [tried(broken, message('Write "{words}"', { words: text }), [{ at: endOf(tokens[index - 1]!), to: endOf(tokens[index]!), text: ` ${text}` }])] };
}

const HEIGHTS: ReadonlyMap<string, readonly string[]> = new Map(Object.entries({ long: ['to the rim', 'to the corner'], high: ['to the top', 'to the high post'], low: ['to the block', 'to the short corner'], wide: ['to the corner', 'to the wing'], deep: ['to the corner', 'to the block'] }));

/** `2 cuts high`: left out, a cut goes to the rim. */
export function highOrLow(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const ways = HEIGHTS.get(word(tokens[index]));
  const verb = verbOf(word(tokens[index - 1]));
  if (!ways || !verb || !['move', 'screen', 'seal', 'dribble'].includes(verb.class)) return undefined;
  if (/^(to|into|at)$/.test(word(tokens[index + 1]))) {
    const place = { words: written(broken, index), place: written(broken, index + 1, commaAfter(broken, index)) };
    const fix = tried(broken, message('Leave out "{words}"', { words: place.words }), [{ at: endOf(tokens[index - 1]!), to: endOf(tokens[index]!), text: '' }]);
    return fix && { code: 'extra-word', from: index, to: index + 1, message: message('How far he goes, "{place}" says: leave out "{words}".', place), fixes: [fix] };
  }
  const places = verb.class === 'screen' || verb.base === 'post up' ? ways.map((way) => way.replace('to the', 'at the')) : ways;
  return { code: 'unknown-word', from: index, to: index + 1, message: message('"{place}" can be many places. Say which: "{words}".', { place: written(broken, index), words: `${written(broken, index - 1)} ${places[0]!}` }), fixes: places.map((text) => writing(broken, index, index + 1, text)) };
}

/** `1 cuts to the rim and out to the corner` */
export function andOutTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const and = [index, index - 1].find((i) => word(tokens[i]) === 'and');
  if (and === undefined || and < 1) return undefined;
  const to = and + (/^(out|back|up|over|down)$/.test(word(tokens[and + 1])) ? 2 : 1);
  if (!/^(to|off|for)$/.test(word(tokens[to]))) return undefined;
  const fix = tried(broken, message('Write ", then {words}"', { words: written(broken, to) }), [{ at: endOf(tokens[and - 1]!), to: tokens[to]!.startOffset, text: ', then ' }]);
  return fix && { code: 'misplaced-word', from: and, to: to + 1, message: message('The same man goes on: write ", then {words}".', { words: written(broken, to) }), fixes: [fix] };
}

/** `5 turns and faces` */
export function facesUp(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^faces?$/.test(word(tokens[index]))) return undefined;
  const text = inNumber(broken, index, 'faces up');
  const fix = writing(broken, index, index + 1, text);
  return fix && { code: 'unknown-word', from: index, to: index + 1, message: message('Did you mean "{text}"?', { text }), fixes: [fix] };
}

/** `everyone rotates up one spot`: round the arc each takes the place of the next. */
export function rotatesASpot(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const verb = tokens.findIndex((token, i) => i >= index - 1 && i <= index && /^(rotates?|moves?|shifts?|slides?|bumps?)$/.test(word(token)));
  const rest = verb < 0 ? '' : written(broken, verb + 1, commaAfter(broken, verb));
  if (verb < 1 || !/^(up |down |over |back )?(one|a|1) (spot|place|position)s?( up| down| over)?$/i.test(rest)) return undefined;
  const end = commaAfter(broken, verb);
  const text = `${inNumber(broken, verb, 'fills')} the open spot`;
  // Which spot is open is clear for one man only.
  const fix = verb === 1 && isAttacker(tokens[0]) ? writing(broken, verb, end, text) : undefined;
  return { code: 'misplaced-word', from: verb, to: end, message: message('Say whose place each takes: "3 fills for 2", "2 fills for 1"; of one man "fills the open spot".'), fixes: [fix] };
}

/** `1 drives the other way` */
export function whichWay(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const from = [index, index - 1].find((i) => /^(other|opposite)$/.test(word(tokens[i])) && /^(way|direction)$/.test(word(tokens[i + 1])));
  const verb = from === undefined ? -1 : tokens.findLastIndex((token, i) => i < from && verbOf(token.image) !== undefined);
  if (from === undefined || verb < 1) return undefined;
  const texts = ['to the left', 'to the right'];
  return { code: 'unknown-word', from, to: from + 2, message: message('Say which way, or where to: {words}.', { words: oneOf(texts.map((text) => `"${text}"`)) }), fixes: texts.map((text) => tried(broken, message('Write "{text}"', { text }), [{ at: endOf(tokens[verb]!), to: endOf(tokens[from + 1]!), text: ` ${text}` }])) };
}

/** `3 lifts one pass away` */
export function passesAway(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(one|two|1|2)$/.test(word(tokens[i])) && /^pass(es)?$/.test(word(tokens[i + 1])) && word(tokens[i + 2]) === 'away');
  if (at === undefined) return undefined;
  return { code: 'misplaced-word', from: at, to: at + 3, message: message('Where "{words}" is, the ball decides. Say the place: "{example}".', { words: written(broken, at, at + 3), example: 'to the left wing' }), fixes: [] };
}
