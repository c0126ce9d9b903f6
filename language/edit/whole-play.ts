// Changes of a whole play: two players swapped, left and right swapped.
import { message } from '../message/message.ts';
import type { BlockEdit } from '../checks/finding.ts';
import { mirroredPlay } from '../play/copied-play.ts';
import { OFFENCE, type Action, type Play, type Place, type PlayerNumber } from '../play/play.ts';
import { actionsOf, faultOn, firstThatMeans, linesOf, refuse, samePlace, type Candidate, type Editable } from './editable.ts';
import type { Intent, Outcome } from './intent.ts';

/** Two players change their places at the start. */
export function swapPlayers(editable: Editable, { a, b }: Extract<Intent, { kind: 'swap' }>): Outcome {
  const { play, places } = editable.reading;
  const { start } = play;
  const fault = faultOn(editable, 'from');
  if (fault !== undefined) return refuse(fault);
  if (a === b) return refuse(message('These are not two players.'));
  if ([a, b].some((player) => start.places[player].origin === 'copied')) return refuse(message('The start is copied from another play or step. Change it there, or write it out here.'));
  const thrower = start.throwIn?.by.value;
  if (thrower === a || thrower === b) return refuse(message('{thrower} throws the ball in: change who does in the throw-in line.', { thrower }));
  const words = `${a} and ${b} swapped`;
  const means = (after: Play) => samePlace(after.start.places[a].value, start.places[b].value) && samePlace(after.start.places[b].value, start.places[a].value);
  const [one, other] = [places.get(`from#${a}`), places.get(`from#${b}`)];
  const candidates: Candidate[] = [];
  if (one !== undefined && other !== undefined && one.to > one.at && other.to > other.at && one.line === other.line && one.at !== other.at) {
    const line = linesOf(editable)[one.line] ?? '';
    candidates.push({ edits: [{ ...one, text: line.slice(other.at, other.to) }, { ...other, text: line.slice(one.at, one.to) }], words });
  }
  const from = places.get('from');
  if (from !== undefined && from.to > from.at) {
    const line = linesOf(editable)[from.line] ?? '';
    for (const written of [`${a} and ${b} swapped`, `${b} and ${a} swapped`]) {
      const at = line.indexOf(`, ${written}`);
      if (at >= 0) candidates.push({ edits: [{ line: from.line, at, to: at + written.length + 2, text: '' }], words: message('back in their places') });
    }
    candidates.push({ edits: [{ line: from.line, at: from.to, to: from.to, text: `, ${words}` }], words });
  } else candidates.push({ edits: [{ line: 1, at: 0, to: 0, text: `  from 5-out, ${words}`, newLine: true }], words });
  return firstThatMeans(editable, candidates, { start: [a, b] }, means) ?? refuse(message('I cannot swap {a} and {b} in this line. Write “{words}” in the from line yourself.', { a, b, words }));
}

/** Every left becomes right and every right left. */
export function mirrorPlay(editable: Editable): Outcome {
  const { block, reading: { play, places } } = editable;
  if (block.lines.some(({ parsed }) => parsed.fault !== undefined)) return refuse(message('A line of this play cannot be read as it stands. Mend it first.'));
  if (actionsOf(play).some(({ origin }) => origin === 'copied') || play.start.alignment.origin === 'copied') return refuse(message('Part of this play is copied from another play or step. Change it there, or write it out here.'));
  const wanted = mirroredPlay(play);
  const turned = linesOf(editable).flatMap((line, at) => turnedWords(line, at));
  const alignment = places.get('from#alignment');
  const candidates: Candidate[] = [turned, ...(alignment === undefined ? [] : [[...turned, ...turnedAlignment(linesOf(editable)[alignment.line] ?? '', alignment)]])].map((edits) => ({ edits, words: message('left and right swapped') }));
  const means = (after: Play) =>
    OFFENCE.every((who) => samePlace(after.start.places[Number(who) as PlayerNumber].value, wanted.start.places[Number(who) as PlayerNumber].value)) &&
    meaning(actionsOf(after)) === meaning(actionsOf({ ...play, ...wanted }));
  return firstThatMeans(editable, candidates, 'all', means) ?? refuse(message('A side in this play follows from its numbers or its alignment. Write the sides out, or write a play that mirrors it.'));
}

const otherSide: Readonly<Record<string, string>> = { left: 'right', right: 'left', Left: 'Right', Right: 'Left', LEFT: 'RIGHT', RIGHT: 'LEFT' };

/** Side words and coordinates outside of quotes and remarks. */
function turnedWords(line: string, at: number): readonly BlockEdit[] {
  const edits: BlockEdit[] = [];
  for (const match of line.matchAll(/"[^"]*"|“[^“”"]*”|#.*$|\b(left|right)\b|\(\s*(-?[\d.]+)\s*,/gi)) {
    const [whole, side, x] = match;
    if (side !== undefined && otherSide[side] !== undefined && !/^\s*on\b|^\s*after a miss/.test(line.slice(match.index + side.length)) && !isTimeLeft(line, match.index)) {
      edits.push({ line: at, at: match.index, to: match.index + side.length, text: otherSide[side] });
    }
    if (x !== undefined && Number(x) !== 0) {
      const start = match.index + whole.indexOf(x);
      edits.push({ line: at, at: start, to: start + x.length, text: x.startsWith('-') ? x.slice(1) : `-${x}` });
    }
  }
  return edits;
}

/** `8 seconds left`, `12 left` tell of the clock. */
function isTimeLeft(line: string, at: number): boolean {
  return /(\d|\b(seconds?|secs?|s|are|is))\s+$/i.test(line.slice(0, at));
}

/** An alignment that leans to a side leans to the other. */
function turnedAlignment(line: string, { line: at, at: from, to }: { readonly line: number; readonly at: number; readonly to: number }): readonly BlockEdit[] {
  const written = /\s+mirrored\b/i.exec(line.slice(from, to));
  if (written !== null) return [{ line: at, at: from + written.index, to: from + written.index + written[0].length, text: '' }];
  return [{ line: at, at: to, to, text: ' mirrored' }];
}

function meaning(actions: readonly Action[]): string {
  return JSON.stringify(actions, (key, value: unknown) => {
    if (key === 'origin' || key === 'line') return undefined;
    return isPlace(value) ? Object.fromEntries(Object.entries(value).filter(([, of]) => of !== undefined).toSorted(([a], [b]) => (a < b ? -1 : 1))) : value;
  });
}

function isPlace(value: unknown): value is Place {
  return typeof value === 'object' && value !== null && 'kind' in value && !Array.isArray(value);
}
