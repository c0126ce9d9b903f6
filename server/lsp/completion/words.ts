// All other words that can stand at the cursor: openers, headers that are still missing, joints, shots, alignments, times.
import type { Expected } from '../../../language/grammar/expected.ts';
import type { BodyId } from '../../../language/play/play.ts';
import { laysItIn } from './chances.ts';
import type { Choice } from './choice.ts';
import { has, type Line } from './line.ts';
import { isPlaceWord } from './places.ts';

/** What begins a line, in the order a coach writes a play; only these fit into each kind of block. */
const starts: Readonly<Record<string, readonly string[]>> = {
  file: ['notation', 'level', 'rules', 'use', 'spot', 'play', 'alignment', 'roster', 'book'],
  play: ['from', 'against', 'call', 'shot', 'leave', 'tags', 'situation', 'already set', 'ball with', 'clock', 'inbound', 'spot', 'level', 'rules', 'rebound', 'note', 'must', 'allow', 'step', 'play'],
  step: ['look', 'step', 'ends', 'note', 'rebound', 'must', 'allow', 'as', 'once', 'when', 'at', 'everyone', 'both', 'play'],
  alignment: ['play', 'alignment', 'roster', 'book'],
  roster: ['play', 'alignment', 'roster', 'book'],
  book: ['section', 'play', 'alignment', 'roster', 'book'],
};
/** Words that open something: a name or more follows. */
const alone = new Set(['already set', 'it', 'ball', 'early', 'mirrored', 'otherwise', 'man', 'press', 'before the horn', 'swapped', 'on the clock', 'after a miss', 'of the start', 'of the call']);
const signs = /^[^\p{L}\p{N}]+$/u;
const joints = new Set(['and', 'then', 'or']);
const leading = ['to', 'for', 'off', 'at', 'via', 'on', 'with', 'from', 'in'];
const opening = new Set([...leading, 'then', 'and', 'or', 'as', 'once', 'when', 'until', 'after', 'instead of', 'between', 'beside', 'behind', 'through to', 'into', 'double of', 'with', 'within']);

/** Where some words are written far more often than the others, in this order. */
const aheadIn: readonly { readonly rule: string; readonly texts: readonly string[] }[] = [
  { rule: 'StepHead', texts: ['instead of', 'after', 'when', 'first', 'again from', 'repeats', 'mirrors', 'otherwise'] },
  { rule: 'LookPin', texts: ['on', 'coming', 'off', 'as', 'once', 'at', 'when'] },
  { rule: 'Call', texts: ['with'] },
  { rule: 'Against', texts: ['man'] },
];

export function wordChoices(line: Line, items: readonly Expected[]): readonly Choice[] {
  return items.filter((item) => item.kind === 'keyword' && item.class === undefined && !signs.test(item.text) && !isPlaceWord(item)).flatMap((item) => {
    if (line.prefix.slice(0, line.expected.from).trim() === '') return startChoice(line, item);
    // Where a number is meant a pronoun is only finished, never proposed.
    if (/^(him|them)$/.test(item.text) && line.expected.typed === '') return [];
    return [wordChoice(line, item)];
  });
}

function startChoice(line: Line, item: Expected): readonly Choice[] {
  const place = line.block.kind === 'play' && line.step !== undefined ? 'step' : line.block.kind;
  const order = starts[place] ?? [];
  const rank = order.indexOf(item.text);
  if (rank < 0) return [];
  // A header stands once in a play.
  const again = place === 'play' && rank < 12 && line.block.lines.some(({ parsed }, at) => at !== line.at && new RegExp(`^\\s*${item.text}\\b${item.text === 'ball with' ? '|^\\s*from\\b.*\\bball with\\b' : ''}`, 'i').test(parsed.text));
  if (again || (item.text === 'inbound' && !line.standing.out)) return [];
  return [{ text: item.text, kind: 'word', rank: 50 + rank, ...(!alone.has(item.text) && { more: true }) }];
}

/** A deed that is written and a comma: then comes his next one, or another man. */
const goesOn = /\s\S+,\s*$/;

/** Nothing of the move is written: `look 4 on ` goes on with `the roll`. */
const onMove = /\son\s+$/i;

const usualPins = ['roll', 'cut', 'pop', 'slip', 'curl', 'catch', 'drive', 'seal', 'flash', 'lob'];

/** What a look is read on: first what its man has just done. */
function rankOfPin({ prefix, standing }: Line, move: string): number {
  const who = /^\s*look\s+(?:for\s+)?([1-5])\b/i.exec(prefix)?.[1] as BodyId | undefined;
  if (who !== undefined && standing.lastDid[who]?.verb === move) return 8;
  const usual = /\son\s+(?:the\s+)?\S*$/i.test(prefix) ? usualPins.indexOf(move) : -1;
  return usual >= 0 ? 9 + usual / 10 : 150;
}

const usualShots = ['jumper', 'layup', 'three', 'dunk', 'hook', 'tip in'];

function wordChoice(line: Line, item: Expected): Choice {
  const { text } = item;
  if (text === 'layup' && laysItIn(line)) return { text, kind: 'shot', rank: 9 };
  if (has(item, 'ShotKindName')) return { text, kind: 'shot', rank: usualShots.includes(text) ? 10 + usualShots.indexOf(text) : 40 };
  if (has(item, 'PassKindName')) return { text, kind: 'shot', rank: 22 };
  if (has(item, 'AlignmentName')) return { text, kind: 'alignment', rank: 10 + rankOfAlignment(text) / 10 };
  if (has(item, 'LevelName') || has(item, 'RuleSetName')) return { text, kind: 'value', rank: 10 };
  if (text === 'then' && goesOn.test(line.prefix.slice(0, line.expected.from))) return { text, kind: 'word', rank: 25, more: true };
  if (joints.has(text)) return { text, kind: 'word', rank: line.expected.acting?.verb === undefined ? 300 : isWhole(line) ? 15 : 30, ...(opening.has(text) && { more: true }) };
  if (item.path.at(-1) === 'move' && has(item, 'LookPin')) return { text: onMove.test(line.prefix) ? `the ${text}` : text, kind: 'word', rank: rankOfPin(line, text) };
  if (/^(him|them)$/.test(text)) return { text, kind: 'word', rank: 400 };
  if (has(item, 'Subjects')) return { text, kind: 'word', rank: 210 };
  const ahead = aheadIn.find(({ rule, texts }) => has(item, rule) && texts.includes(text));
  if (ahead !== undefined) return { text, kind: 'word', rank: 15 + ahead.texts.indexOf(text) / 10, ...(opening.has(text) && { more: true }) };
  // A wait on what stands above the line opens with the same words as a place.
  const first = has(item, 'ClauseTrigger') && !has(item, 'Trigger') ? -1 : leading.indexOf(text);
  const rank = has(item, 'Event') ? 70 : first >= 0 ? 20 + first / 10 : has(item, 'ClauseTrigger') || has(item, 'Trigger') ? 40 : 34;
  // Behind `and` a verb is likelier than a wait for what comes behind it; an ending and another look mostly have their own line.
  const late = text === 'ends' || text === 'look' ? 320 : has(item, 'LedClause') ? 160 : 0;
  return { text, kind: 'word', rank: rank + late, ...(opening.has(text) && { more: true }) };
}

const usualAlignments = ['horns', 'box', 'stack', '5-out', '4-out 1-in', '1-4 high', '1-4 low', '3-out 2-in', 'diamond', 'spread'];
const rankOfAlignment = (name: string): number => (usualAlignments.includes(name) ? usualAlignments.indexOf(name) : usualAlignments.length);

/** Whether the link being typed says already where it goes, or for whom: then the next link is likelier than more of this one. */
const isWhole = ({ prefix }: Line): boolean => /(?:^|[\s,])(?:to|for|off|at|via)\s(?:(?!,|\s(?:and|then)\s).)*\s$/i.test(prefix);
